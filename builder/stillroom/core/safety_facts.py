"""What the safety rules may ask of a recipe: its things, their weights, its words, its keeping.

Reads a recipe once into frozen facts. Uses contents.py for weights. Leaves out the rules
themselves (staples/hazards.yml) and how they are judged (safety_rules.py).
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from typing import Literal

from stillroom.core.allergens import know_ingredient
from stillroom.core.contents import contents_of
from stillroom.core.recipe import Recipe
from stillroom.core.spans import Span
from stillroom.core.staple_table import Staple, name_of, staple_of, staples_tagged

Place = Literal["room", "fridge", "freezer"]

_BRACE = re.compile(r"[{}*_`]")
_SENTENCE = re.compile(r"(?<=[.;!?])\s+")
_CLAUSE = re.compile(r"\s*[,:();.!?]\s*|\s+but\s+", re.IGNORECASE)
_NEGATED = re.compile(
    r"\b(never|not|no|nor|without|n't|don't|cannot|avoid|instead of|away from|far from|clear of)\b",
    re.IGNORECASE,
)
_HEAT = re.compile(
    r"\b(bak(?:e[ds]?|ing)|boil\w*|simmer\w*|cook\w*|fry|fried|roast\w*|melt\w*|scald\w*|caramel\w*"
    r"|poach\w*|steam\w*|oven|hob|stove|heat(?:ed|ing)?|water bath|[6-9]\d ?c|1\d\d ?c)\b",
    re.IGNORECASE,
)
# boiling these cooks no food
_NOT_FOOD = re.compile(
    r"\b(?:boil|scald|heat|steam|sterilis)\w*\s+(?:(?:the|your|a|clean|empty|filled|washed|glass)\s+)*"
    r"(?:jars?|bottles?|lids?|muslin|cloths?|funnel|jelly bag|tins?)\b",
    re.IGNORECASE,
)
_ALL_BUT = re.compile(r"\b(all|everything) (?:but|except) (?:the )?\w+", re.IGNORECASE)
_HOT = re.compile(r"\b(warm|heat\w*|hot|boil\w*|simmer\w*|hob|stove|flame|oven)\b", re.IGNORECASE)
_FREEZER = re.compile(r"\b(freezer|frozen)\b")
_FRIDGE = re.compile(r"\b(fridge|refrigerat\w*|chilled)\b")
_ONCE_OPENED = re.compile(r"[^,.;]*\bonce opened\b[^,.;]*")

# what must be told even when it only stands among the parts of a bought compound
_TELLS_IN_A_COMPOUND = frozenset(
    {"honey", "alcohol", "sulphites", "caffeine", "liquorice", "grapefruit", "xylitol"}
    | {"toxic", "grave", "cyanide-kernel"}
)


@dataclass(frozen=True)
class Thing:
    """One ingredient: its words, its staple, grams in a batch (None unknown), whether it stays."""

    item: str
    words: str
    staple: Staple | None
    tags: frozenset[str]
    grams: Fraction | None
    abv: Fraction | None
    stays: bool


@dataclass(frozen=True)
class Facts:
    """A recipe as the rules see it; a clause that denies or forbids is left out of its words."""

    recipe: Recipe
    things: tuple[Thing, ...]
    sentences: tuple[str, ...]
    clauses: tuple[str, ...]
    said: str
    vessels: str
    place: Place
    strength: Fraction | None
    allergens: tuple[str, ...]

    @property
    def heated(self) -> bool:
        """Whether anything in the method is cooked, baked, boiled or melted."""
        return bool(self.recipe.oven) or any(
            _HEAT.search(_NOT_FOOD.sub("", clause)) for clause in self.clauses
        )

    @property
    def total_g(self) -> Fraction:
        """The weight of everything that is eaten, as far as it is known."""
        known = (thing.grams for thing in self.things if "craft" not in thing.tags)
        return sum((grams for grams in known if grams), Fraction(0))

    def tagged(self, tags: Iterable[str]) -> tuple[Thing, ...]:
        """Return the things that carry any of the tags."""
        wanted = set(tags)
        return tuple(thing for thing in self.things if wanted & thing.tags)

    def share(self, tags: Iterable[str]) -> Fraction | None:
        """Return the percent by weight of things with any of the tags; None when unknown."""
        found = self.tagged(tags)
        if not found:
            return Fraction(0)
        if any(thing.grams is None for thing in found) or not self.total_g:
            return None
        return (
            sum((thing.grams or Fraction(0) for thing in found), Fraction(0)) * 100 / self.total_g
        )

    def spirits(self) -> tuple[Thing, ...]:
        """Return the spirits used by more than the spoonful, strongest first."""
        found = [
            thing
            for thing in self.tagged(["alcohol"])
            if "flavouring" not in thing.tags and (thing.grams is None or thing.grams >= 80)
        ]
        return tuple(sorted(found, key=lambda thing: thing.abv or 0, reverse=True))

    def spirit_and_heat(self) -> tuple[str, ...]:
        """Return the sentences in which a spirit stands beside something hot."""
        names = {"spirit", "alcohol"} | {
            word
            for thing in self.spirits()
            for word in (thing.item.lower(), *(thing.staple.name.split() if thing.staple else ()))
            if len(word) > 2 and word not in ("dark", "white", "high", "proof")
        }
        spirit = re.compile(rf"\b(?:{'|'.join(map(re.escape, sorted(names)))})\b", re.IGNORECASE)
        return tuple(
            sentence
            for sentence in self.sentences
            if spirit.search(sentence) and _HOT.search(sentence)
        )

    def toxic_in_method(self) -> tuple[str, ...]:
        """Return the poisonous plants that the method names without forbidding them."""
        named = [clause for clause in self.clauses if _any_toxic().search(clause)]
        return tuple(
            word
            for word in (_toxic_names() if named else ())
            if any(_as_word(word).search(clause) for clause in named)
        )


@cache
def _toxic_names() -> tuple[str, ...]:
    return tuple(name for staple in staples_tagged("toxic") for name in (staple.name, *staple.also))


@cache
def _any_toxic() -> re.Pattern[str]:
    return _as_word(*_toxic_names())


def _as_word(*names: str) -> re.Pattern[str]:
    either = "|".join(re.escape(name) for name in names)
    return re.compile(rf"\b(?:{either})(?:s|es)?\b", re.IGNORECASE)


def gather_facts(recipe: Recipe, strength: Fraction | None, allergens: tuple[str, ...]) -> Facts:
    """Read a recipe into facts; `strength` is the finished % vol, None when unknown."""
    steps = _ALL_BUT.sub(r"\1", " ".join(_BRACE.sub("", step.text) for step in recipe.method))
    sentences = [_affirmed(sentence) for sentence in _SENTENCE.split(steps)]
    clauses = [
        clause for sentence in _SENTENCE.split(steps) for clause in _clauses(sentence) if clause
    ]
    said = " . ".join(
        (recipe.title, recipe.summary, recipe.card.what, recipe.card.use, recipe.makes.things)
    )
    return Facts(
        recipe=recipe,
        things=_things(recipe),
        sentences=tuple(sentence for sentence in sentences if sentence),
        clauses=tuple(clauses),
        said=" . ".join(_clauses(said)),
        vessels=" . ".join(vessel.words for vessel in recipe.vessels).lower(),
        place=kept_at(recipe),
        strength=strength,
        allergens=allergens,
    )


def _clauses(sentence: str) -> list[str]:
    parts = _CLAUSE.split(re.sub(r"(\d)\.(\d)", r"\1·\2", sentence))
    return [part.replace("·", ".") for part in parts if not _NEGATED.search(part)]


def _affirmed(sentence: str) -> str:
    return ", ".join(_clauses(sentence))


def _things(recipe: Recipe) -> tuple[Thing, ...]:
    everything = recipe.model_copy(
        update={
            "ingredients": tuple(
                replace(ingredient, scales="with the batch") for ingredient in recipe.ingredients
            )
        }
    )
    held = {
        content.ingredient.item + content.ingredient.note: content
        for content in contents_of(everything)
    }
    things = []
    for ingredient in recipe.ingredients:
        staple = staple_of(ingredient)
        content = held.get(ingredient.item + ingredient.note)
        hidden = {tag for other in know_ingredient(ingredient).staples for tag in other.tags}
        tags = (staple.tags if staple else frozenset()) | (hidden & _TELLS_IN_A_COMPOUND)
        things.append(
            Thing(
                item=name_of(ingredient),
                words=f"{ingredient.item} {ingredient.note}".lower(),
                staple=staple,
                tags=tags,
                grams=content.grams if content else None,
                abv=ingredient.strength or (staple.strength if staple else None),
                stays=recipe.stays_in(ingredient)
                or bool(content and (content.liquid or content.dissolves)),
            )
        )
    return tuple(things)


def kept_at(recipe: Recipe) -> Place:
    """Return where the unopened thing is kept, by the recipe's own words."""
    words = _ONCE_OPENED.sub("", f"{recipe.keeps.where}".lower())
    if _FRIDGE.search(words):
        return "fridge"
    return "freezer" if _FREEZER.search(words) else "room"


def days_of(span: Span | None) -> int | None:
    """Return a span's longest length in days, months of 30."""
    return span.minutes() // 1440 if span else None
