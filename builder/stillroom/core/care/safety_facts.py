"""What the safety rules may ask of a recipe: its things, their weights, its words, its keeping.

Reads a recipe once into frozen facts. Uses contents.py for weights. Leaves out the rules
themselves (staples/hazards.yml) and how they are judged (safety_rules.py).
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from functools import cached_property

from stillroom.core.allergens.of_foods import know_ingredient
from stillroom.core.batch.contents import Content, content_of, contents_by_place
from stillroom.core.batch.strength import USUAL_SPIRIT
from stillroom.core.care.acid import low_acid_tag
from stillroom.core.care.alternatives import alternatives_of
from stillroom.core.care.drained import drained_rows, drained_sour
from stillroom.core.care.filling import filled_hot
from stillroom.core.care.garnish import laid_on_when_served
from stillroom.core.care.plant_parts import is_no_plant, of_the_part, poison_by_its_part
from stillroom.core.care.spirit_heat import DRIVES_OFF, spirit_meets_heat
from stillroom.core.care.told import TOLD
from stillroom.core.care.toxic_words import toxic_plants_in
from stillroom.core.care.unknown_lines import low_acid_of, seen_in_unknown
from stillroom.core.care.weights import weigh_at_most, weigh_for_rules
from stillroom.core.larder.phrases import without_makes
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.lines.staple_table import Staple, name_of, staple_of
from stillroom.core.method.drying import dried_through
from stillroom.core.method.foods_in_method import PROTECTS, MethodFood, foods_in_method
from stillroom.core.method.heat import boiled_apart, cooked_places, named_later
from stillroom.core.method.keeping_said import Place, kept_at
from stillroom.core.method.not_put_in import sentences_of_the_maker
from stillroom.core.method.said_elsewhere import in_english_too
from stillroom.core.method.sentences import affirmed_clauses, split_sentences
from stillroom.core.method.who import said_for_infants, said_for_pets, said_near_young_or_pets
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.spans import Span
from stillroom.core.words.patterns import clause_regex

_HEAT = clause_regex(
    r"\b(bak(?:e[ds]?|ing)|boil\w*|simmer\w*|cook\w*|fry|fried|roast\w*|melt\w*|scald\w*|caramel\w*"
    r"|poach\w*|steam\w*|oven|hob|stove|heat(?:ed|ing)?|water bath|[6-9]\d ?c|1\d\d ?c"
    r"|over (?:a (?:pan|bowl|saucepan) of )?hot water|bain[- ]marie|double boiler)\b",
    re.IGNORECASE,
)
# boiling these cooks no food
_NOT_FOOD = clause_regex(
    r"\b(?:boil|scald|heat|steam|sterilis)\w*\s+(?:(?:the|your|a|clean|empty"
    r"|filled|washed|glass)\s+)*"
    r"(?:jars?|bottles?|lids?|muslin|cloths?|funnel|jelly bag|tins?)\b",
    re.IGNORECASE,
)
# spirit by the spoonful is a flavouring
_A_POUR = Fraction(80)
# and from here on no spoonful is too small to catch fire
_LIKE_PETROL = 60
# one said to be stronger than most
_STRONGER = clause_regex(
    r"\b(?:over[- ]?proof|cask strength|barrel strength|barrel proof|navy strength|full proof"
    r"|still strength|high[- ]proof)\b"
)
# what must be told even when it only stands among the parts of a bought compound
_TELLS_IN_A_COMPOUND = frozenset(
    {"honey", "alcohol", "sulphites", "caffeine", "liquorice", "grapefruit", "xylitol"}
    | {"toxic", "grave", "cyanide-kernel"}
)
# and what a garnish, laid on when it is served, does not bring into the jar
_OF_WHAT_IS_SEALED = frozenset(
    {"fresh-herb", "garlic", "low-acid-vegetable", "low-acid", "citrus-peel", "mushroom"}
)

_HARMS_IN_A_CRAFT = frozenset(
    {"essential-oil", "wick", "candle", "wax", "battery", "magnet", "solvent", "epoxy", "caustic"}
    | {"toxic", "grave", "hot-glue", "industrial-alcohol", "sensitiser", "needle", "borax"}
)


@dataclass(frozen=True)
class Thing:
    """One ingredient: its words, its staple, grams in a batch (None unknown), whether it stays.

    `place` is its line in the recipe, counted from 0, what only the method names behind them;
    `unknown` are words that no food explains; `drained` is water poured off before filling;
    `at_most_g` is the most that a counted vegetable without `grams` can weigh.
    """

    item: str
    words: str
    staple: Staple | None
    tags: frozenset[str]
    grams: Fraction | None
    abv: Fraction | None
    stays: bool
    place: int
    unknown: tuple[str, ...] = ()
    drained: bool = False
    at_most_g: Fraction | None = None


@dataclass(frozen=True)
class SafetyFacts:
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
    cooked: frozenset[int] = frozenset()
    infants: str = ""
    young: str = ""
    pets: str = ""
    dried: str = ""
    hot_in_glass: str = ""
    boiled_apart: Mapping[str, frozenset[int]] = field(default_factory=dict, hash=False)
    named_later: Mapping[str, frozenset[int]] = field(default_factory=dict, hash=False)
    is_sure: bool = False

    @cached_property
    def with_english(self) -> tuple[tuple[str, str], ...]:
        """Each clause, and again with the English of what it says in another language."""
        return tuple((clause, in_english_too(clause)) for clause in self.clauses)

    @cached_property
    def sure(self) -> SafetyFacts:
        """The same where only what is sure counts."""
        return self if self.is_sure else replace(self, is_sure=True)

    @cached_property
    def heated(self) -> bool:
        """Whether anything in the method is cooked, baked, boiled or melted."""
        return bool(self.recipe.oven) or any(
            _HEAT.search(_NOT_FOOD.sub("", english)) for _, english in self.with_english
        )

    def told(self, name: str) -> str:
        """Return the words on which a fact of care/told.py stands, "" where it does not hold."""
        return TOLD[name](self.recipe, self.tags)

    @cached_property
    def tags(self) -> frozenset[str]:
        """The tags of all things together."""
        return frozenset().union(*(thing.tags for thing in self.things))

    @cached_property
    def called(self) -> tuple[tuple[Thing, tuple[str, ...]], ...]:
        """What each thing is called: by its words, and by these with the name of its food."""
        return tuple(
            (one, (one.words, f"{one.words} ({one.staple.name})") if one.staple else (one.words,))
            for one in self.things
        )

    @cached_property
    def total_g(self) -> Fraction:
        """The weight of everything that is eaten, as far as it is known."""
        eaten = (thing for thing in self.things if "craft" not in thing.tags)
        known = (thing.grams for thing in eaten if not thing.drained)
        return sum((grams for grams in known if grams), Fraction(0))

    def tagged(self, tags: Iterable[str]) -> tuple[Thing, ...]:
        """Return the things that carry any of the tags."""
        wanted = set(tags)
        return tuple(thing for thing in self.things if wanted & thing.tags)

    def share(self, tags: Iterable[str]) -> Fraction | None:
        """Return the percent by weight of things with any of the tags; None when unknown."""
        grams = self.grams(tags)
        if not grams:
            return grams
        return grams * 100 / self.total_g

    def grams(self, tags: Iterable[str]) -> Fraction | None:
        """Return what things with any of the tags weigh together; None when unknown."""
        found = self.tagged(tags)
        if any(thing.grams is None for thing in found):
            return None
        return sum((thing.grams or Fraction(0) for thing in found), Fraction(0))

    def share_at_most(self, tags: Iterable[str]) -> Fraction | None:
        """Return the percent that things with any of the tags can come to; None when unknown."""
        most = [
            thing.at_most_g if thing.grams is None else thing.grams for thing in self.tagged(tags)
        ]
        known = [grams for grams in most if grams is not None]
        if len(known) < len(most) or not self.total_g:
            return None
        return sum(known, Fraction(0)) * 100 / self.total_g

    @cached_property
    def drinks(self) -> tuple[Thing, ...]:
        """All that holds alcohol, a spoonful too, but for essences."""
        return tuple(one for one in self.tagged(["alcohol"]) if "flavouring" not in one.tags)

    def spirits(self) -> tuple[Thing, ...]:
        """Return the spirits used by more than the spoonful, strongest first.

        One spirit on two lines is weighed as one.
        """
        drinks = self.drinks
        together: dict[str, Fraction] = {}
        for one in drinks:
            name = one.staple.name if one.staple else one.item
            grams = one.grams if one.grams is not None else one.at_most_g or _A_POUR
            together[name] = together.get(name, Fraction(0)) + grams
        poured = [
            one
            for one in drinks
            if together[one.staple.name if one.staple else one.item] >= _A_POUR
            or (one.abv or 0) >= _LIKE_PETROL
        ]
        return tuple(sorted(poured, key=lambda thing: thing.abv or 0, reverse=True))

    def spirit_and_heat(self, by_the_spoon: bool = False) -> tuple[str, ...]:
        """Return the sentences in which a spirit stands in heat or goes into something hot."""
        spirits = self.drinks if by_the_spoon else self.spirits()
        names = {one.item.lower() for one in spirits}
        names |= {word for one in spirits if one.staple for word in one.staple.name.split()}
        if not spirits:
            return ()
        if self.recipe.larder.language[:2] == "pl":  # "500 ml spirytusu", "zalać spirytusem"
            stems = {stem for one in names for stem in (one, one[:-1])}
            names |= {f"{stem}{end}" for stem in stems for end in ("", *"aęąiyu", "em", "ie")}
        english = {in_english_too(sentence): sentence for sentence in self.sentences}
        return tuple(english[one] for one in spirit_meets_heat(tuple(english), frozenset(names)))

    def boils_spirit(self) -> str:
        """Return the sentence in which spirit or wine is boiled or set alight, "" for none."""
        return next(filter(DRIVES_OFF.search, self.spirit_and_heat()), "")

    def toxic_in_method(self) -> tuple[str, ...]:
        """Return the poisonous plants that the method names without forbidding them."""
        return toxic_plants_in(self.clauses)


def gather_facts(
    recipe: Recipe, strength: Fraction | None, allergens: tuple[str, ...]
) -> SafetyFacts:
    """Read a recipe into facts; `strength` is the finished % vol, None when unknown."""
    return replace(_read_facts(recipe), strength=strength, allergens=allergens)


@once_a_recipe  # the safety box and how long it keeps are both decided by them
def _read_facts(recipe: Recipe) -> SafetyFacts:
    written = [sentence for step in recipe.method for sentence in split_sentences(step.text)]
    sentences = [_affirmed(sentence) for sentence in written]
    clauses = [clause for sentence in written for clause in affirmed_clauses(sentence)]
    said = " . ".join(
        (recipe.title, recipe.summary, recipe.card.what, recipe.card.use, recipe.makes.things)
    )
    return SafetyFacts(
        recipe=recipe,
        things=_things(recipe, tuple(clauses)),
        sentences=tuple(sentence for sentence in sentences if sentence),
        clauses=tuple(clauses),
        said=" . ".join(affirmed_clauses(said)),
        vessels=" . ".join(vessel.words for vessel in recipe.vessels).lower(),
        place=kept_at(recipe),
        strength=None,
        allergens=(),
        cooked=cooked_places(recipe),
        infants=said_for_infants(recipe),
        young=said_near_young_or_pets(recipe),
        pets=said_for_pets(recipe),
        dried=dried_through(clauses),
        hot_in_glass=filled_hot(_of_the_maker(recipe), _in_a_jar(recipe)),
        boiled_apart=boiled_apart(recipe),
        named_later=named_later(recipe),
    )


def _of_the_maker(recipe: Recipe) -> list[str]:
    """Return the clauses without what only whoever is given it does: "To bake: ..."."""
    return [clause for one in sentences_of_the_maker(recipe) for clause in affirmed_clauses(one)]


def _in_a_jar(recipe: Recipe) -> bool:
    return recipe.kind.is_("put up") and kept_at(recipe) == "room"


def _affirmed(sentence: str) -> str:
    return ", ".join(affirmed_clauses(sentence))


def _things(recipe: Recipe, clauses: tuple[str, ...]) -> tuple[Thing, ...]:
    """Return one thing for each line, by its place: the same food on two lines is two things."""
    rows = zip(recipe.ingredients, contents_by_place(recipe), strict=True)
    things = [
        _thing(recipe, place, ingredient, content)
        for place, (ingredient, content) in enumerate(rows)
    ]
    things = [
        replace(thing, tags=thing.tags - _OF_WHAT_IS_SEALED)
        if laid_on_when_served(thing.item, thing.words, clauses)
        else thing
        for thing in things
    ]
    for place, one in enumerate(foods_in_method(recipe), len(things)):
        things.append(_only_told(recipe, one, place))
    water = [(thing.grams or Fraction(0)) if "water" in thing.tags else None for thing in things]
    sour = [bool("acid" in thing.tags and "fruit" not in thing.tags) for thing in things]
    drained = drained_rows(water, clauses) | drained_sour(sour, clauses)
    things = [replace(thing, drained=True) if thing.place in drained else thing for thing in things]
    for place, line in enumerate(recipe.ingredients):
        things += [
            _other_of(things[place], other, told, recipe) for other, told in alternatives_of(line)
        ]
    return tuple(things)


def _other_of(thing: Thing, other: Staple, told: frozenset[str], recipe: Recipe) -> Thing:
    """Return what a line offers or lists beside its first food, of which no line says how much.

    It is no more than the line weighs; where both are low in acid, the first has counted for both.
    """
    low = low_acid_tag(other, other.tags, recipe.kind.name)
    at_most = thing.at_most_g if thing.grams is None else thing.grams
    if low & thing.tags and at_most is not None:
        at_most = Fraction(0)
    return replace(
        thing,
        item=other.name,
        staple=other,
        tags=told | low,
        grams=None,
        at_most_g=at_most,
        unknown=(),
    )


def _only_told(recipe: Recipe, one: MethodFood, place: int) -> Thing:
    """Return the thing that a food of the method is; it lies in what is made, strained or not."""
    thing = _thing(recipe, place, one.ingredient, content_of(recipe, one.ingredient))
    return replace(
        thing,
        words=f"{thing.words} ({one.clause})".lower(),
        tags=thing.tags if one.measured else thing.tags - PROTECTS,
        grams=thing.grams if one.grams is None else one.grams,
        stays=True,
    )


def _thing(recipe: Recipe, place: int, ingredient: Ingredient, content: Content | None) -> Thing:
    staple = staple_of(ingredient)
    known = know_ingredient(ingredient)
    hidden = {tag for other in known.staples for tag in other.tags}
    tags = (staple.tags if staple else frozenset()) | (hidden & _TELLS_IN_A_COMPOUND)
    if any("sulphites" in food.allergens for food in known.staples):
        tags |= {"sulphites"}
    if not recipe.kind.is_eaten and known.unknown:
        # "peppermint pure essential oil": in a craft what its words name may do its harm
        named = {tag for food in food_of(ingredient).doubted for tag in food.tags} | hidden
        made = {"toxic", "grave"} if is_no_plant(ingredient.item) else set()
        tags |= (named & _HARMS_IN_A_CRAFT) - made
    words = without_makes(f"{ingredient.item} {ingredient.note}").lower()
    tags = of_the_part(words, tags)
    if staple is None:
        tags |= seen_in_unknown(ingredient)
        tags |= poison_by_its_part(ingredient.item, recipe.larder)
        # "pipe tobacco": what it is stays unknown, but a poisonous plant is named
        tags |= {"perhaps-toxic"} if toxic_plants_in([ingredient.item]) else set()
    tags |= low_acid_of(recipe, ingredient, staple, tags)
    grams = content.grams if content else None
    return Thing(
        item=name_of(ingredient),
        words=words,
        staple=staple,
        tags=tags,
        grams=weigh_for_rules(ingredient, tags, recipe) if grams is None else grams,
        abv=ingredient.strength or _usual_strength(words, staple, tags),
        stays=recipe.stays_in(ingredient)
        or bool(content and (content.liquid or content.dissolves)),
        place=place,
        unknown=known.unknown,
        at_most_g=weigh_at_most(ingredient, recipe),
    )


def _usual_strength(words: str, staple: Staple | None, tags: frozenset[str]) -> Fraction | None:
    """Return the strength of a line that says none: of a spirit never less than is usual."""
    if "spirit" in tags and _STRONGER.search(words):
        return Fraction(_LIKE_PETROL)
    usual = staple.strength if staple else None
    return Fraction(USUAL_SPIRIT) if usual is None and "spirit" in tags else usual


def days_of(span: Span | None) -> int | None:
    """Return a span's longest length in days, months of 30."""
    return span.minutes() // 1440 if span else None
