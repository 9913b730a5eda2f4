"""Which allergens a recipe contains, may contain, and what only its maker can tell.

What is strained out still counts: an infusion takes its allergens along. Leaves out which allergens
a country's law lists and what they are called: allergen_laws.py, whose functions are offered here
too.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from stillroom.core.allergens.avoided import (
    EATEN,
    IN_OILS,
    Avoided,
    Diet,
    is_pressed,
    is_said_to_keep,
)
from stillroom.core.allergens.avoiding import allergens_called
from stillroom.core.allergens.laws import Allergen, List, all_allergens, law_of, say_allergen
from stillroom.core.allergens.sentences import avoided_by_name, read_avoided
from stillroom.core.larder.packet_parts import read_part
from stillroom.core.larder.shelves import common_larder
from stillroom.core.larder.staple import NOT_ANIMAL, Staple
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import food_of, name_of, not_known_of, parts_of
from stillroom.core.method.foods_in_method import foods_in_method
from stillroom.core.method.working import makes_alcohol
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex, late_regex

__all__ = [
    "Allergen",
    "Answer",
    "Known",
    "List",
    "all_allergens",
    "answer_avoid",
    "answer_avoided",
    "contains",
    "know_ingredient",
    "know_recipe",
    "law_of",
    "may_contain",
    "say_allergen",
]
Answer = Literal["contains", "may contain", "free", "not known"]
# a food that differs from maker to maker
PACKET = "read-its-packet"
# a flavouring of which only its bottle tells what carries it: "2 tsp vanilla"
MAY_BE_IN_ALCOHOL = "may-be-in-alcohol"
_SAID_FREE = late_regex(r"\b(\w+)[ -]free\b", re.IGNORECASE)
# what other makers dry with sulphur dioxide
_UNTREATED = clause_regex(
    r"\b(?:unsul(?:ph|f)ur\w*|ungeschwefelt\w*|(?:no|without) sul(?:ph|f)\w*"
    r"|non[- ]souf[ré]\w*|non (?:solforat|solfit)\w*|sin sulfit\w*|sans sulfit\w*"
    r"|ongezwaveld\w*)\b",
    re.IGNORECASE,
)
# "unsulphured if you can": it may be treated all the same
_ONLY_WISHED = late_regex(
    r"\b(?:if|when|where|ideal\w*|prefer\w*|possibl[ey]|try|(?:is|are) best|optional\w*"
    r"|or (?:\w+ )?unsul\w*|wenn|falls|möglichst|am besten|si possible|de préférence|idéalement"
    r"|idealmente|si es posible|se possibile|indien|liefst|bij voorkeur)\b"
    r"|\bunsul\w* or (?:not|sul\w*)\b",
    re.IGNORECASE,
)
_OR = late_regex(r"\b(?:or|oder|ou|o|of)\b", re.IGNORECASE)
_WORSE: tuple[Answer, ...] = ("free", "may contain", "not known", "contains")


@dataclass(frozen=True)
class Known:
    """What is known of one ingredient: its staples, its allergens, the words nobody knows."""

    ingredient: Ingredient
    staples: tuple[Staple, ...]
    contains: frozenset[str]
    may_contain: frozenset[str]
    unknown: tuple[str, ...]

    @property
    def packets(self) -> tuple[str, ...]:
        """The names of foods that are bought ready-made: only the packet says all they hold."""
        return tuple(food.name for food in self.staples if PACKET in food.tags)

    @property
    def open(self) -> bool:
        """Whether something in it is not known, or only its packet knows."""
        return bool(self.unknown or self.packets)

    def open_to(self, names: frozenset[str] = frozenset()) -> bool:
        """Whether something in it is not known, or only its packet knows: nothing is free then.

        The packet of an oil tells which plant it is of: it hides no milk and no egg, but nuts.
        """
        packets = [food for food in self.staples if PACKET in food.tags]
        hides = any(not is_pressed(food) or names & IN_OILS for food in packets)
        return bool(self.unknown or hides)


def know_ingredient(ingredient: Ingredient) -> Known:
    """Return what is known of an ingredient; its own written parts win over its staple's.

    Every food of the line counts: "butter or margarine" holds what either holds. Of a line that is
    not known, what its words name is contained ("almond biscuits"), or may be ("shea butter").
    """
    reading = food_of(ingredient)
    named = (*reading.foods, *reading.hinted)
    doubted = reading.doubted
    unknown = tuple(filter(None, (not_known_of(ingredient),)))
    found = named
    if ingredient.parts:
        opened = parts_of(ingredient)
        pairs = zip(ingredient.parts, opened, strict=True)
        unknown = tuple(part for part, known in pairs if not known.known)
        found = tuple(food for known in opened for food in (*known.foods, *known.hinted))
        doubted = tuple(food for known in opened for food in known.doubted)
        # an allergen in the thing's own name stays: "almond paste" is almond whatever its parts say
        found += tuple(food for food in named if not food.parts)
    staples = tuple(dict.fromkeys(found))
    contains = frozenset(name for food in staples for name in food.allergens)
    traces = {name for food in (*staples, *named) for name in food.may_contain}
    traces |= {name for food in doubted for name in (*food.allergens, *food.may_contain)}
    if not ingredient.parts:
        traces |= {name for food in staples for name in _held_by_parts(food)}
    written = f"{ingredient.item} {ingredient.note}"
    if _UNTREATED.search(written):
        if _ONLY_WISHED.search(written):
            traces |= (
                {"sulphites"} if any(_UNTREATED.search(one.name) for one in staples) else set()
            )
        elif len(staples) == 1 or not _OR.search(written):  # "unsulphured raisins or sultanas"
            traces -= {"sulphites"}
    denied = contains & _said_free_from(name_of(ingredient)) if unknown else frozenset()
    contains, traces = contains - denied, traces | denied
    return Known(ingredient, staples, contains, frozenset(traces) - contains, unknown)


def _said_free_from(words: str) -> frozenset[str]:
    """Return the allergens that the words of a bought thing deny: "gluten-free pizza"."""
    said = (read_avoided(word) for word in _SAID_FREE.findall(words))
    return frozenset(name for one in said if one is not None for name in one.allergens)


@lru_cache(maxsize=4096)
def is_flavouring_in_spirit(food: Staple) -> bool:
    """Whether a flavouring of a bottle is made of a spirit: vanilla paste, by its extract."""
    if "flavouring" not in food.tags:
        return False
    inside = (one for part in food.parts for one in read_part(part, common_larder()).foods)
    return any("alcohol" in one.tags for one in inside)


@lru_cache(maxsize=4096)
def _held_by_parts(food: Staple) -> frozenset[str]:
    """Return the allergens of what a bought compound is usually made of; its maker may differ."""
    inside = [food for part in food.parts for food in read_part(part, common_larder()).foods]
    return frozenset(name for one in inside for name in (*one.allergens, *one.may_contain))


@once_a_recipe  # asked a dozen times for each recipe of a book
def know_recipe(recipe: Recipe) -> tuple[Known, ...]:
    """Return what is known of everything that goes into the food; tools and wrappings left out.

    What only the method names stands behind the list.
    """
    only_told = (one.ingredient for one in foods_in_method(recipe))
    known = [know_ingredient(ingredient) for ingredient in (*recipe.ingredients, *only_told)]
    if not recipe.kind.is_eaten:
        return tuple(known)
    return tuple(one for one in known if not _is_a_tool(one))


def _is_a_tool(known: Known) -> bool:
    """Whether all of it is a tool or a wrapping; shellac and beeswax are eaten."""
    return bool(known.staples) and all(
        "craft" in staple.tags and set(staple.animal) <= NOT_ANIMAL for staple in known.staples
    )


def contains(known: Iterable[Known], law: List) -> tuple[Allergen, ...]:
    """Return the listed allergens contained, in the order of the list."""
    found = {name for one in known for name in one.contains}
    return tuple(a for a in all_allergens().values() if a.name in found and a.heading(law))


def may_contain(known: Iterable[Known], law: List) -> tuple[Allergen, ...]:
    """Return the listed allergens that may be there in traces and are not contained outright."""
    rows = tuple(known)
    held = {allergen.heading(law) for allergen in contains(rows, law)}
    traces = {name for one in rows for name in one.may_contain}
    return tuple(
        a
        for a in all_allergens().values()
        if a.name in traces
        and a.heading(law)
        and (a.heading(law) not in held or a.name == "other-nuts")
    )


def answer_avoid(recipe: Recipe, avoid: str) -> Answer:
    """Say whether a recipe contains what somebody avoids.

    `avoid` is an allergen id or heading ("almond", "nuts", "gluten"), a word of avoided.yml
    ("lactose", "vegan": what they would not eat), or the name of a food. With an ingredient nobody
    knows, "free" is never said.
    """
    known = know_recipe(recipe)
    word = avoid.strip().lower()
    # a label's heading is told apart from a household's wider word: "nuts" is no peanut there
    if names := allergens_called(word):
        return _allergen(known, names)
    return answer_avoided(recipe, avoided_by_name(avoid))


def answer_avoided(recipe: Recipe, avoided: Avoided) -> Answer:
    """Say whether a recipe contains a thing avoided, by the label's rules."""
    known = know_recipe(recipe)
    answers: list[Answer] = [answer_avoided(recipe, one) for one in avoided.of]
    if avoided.diet == "alcohol":
        answers.append(_alcohol(recipe, known))
    elif avoided.diet:
        answers.append(_diet(known, avoided.diet))
    if avoided.but or avoided.little:
        answers.append(_measured(known, avoided))
    elif avoided.allergens:
        answers.append(_allergen(known, avoided.allergens, traces=avoided.traces))
    answers += [_ingredient(known, avoided)] if avoided.is_ingredient else []
    return max(answers, key=_WORSE.index, default="free")


def nuts_beside(names: frozenset[str]) -> frozenset[str]:
    """Return what may be one of these nuts: nuts of no sort, or each sort where none is named."""
    nuts = frozenset(a.name for a in all_allergens().values() if a.us == "tree nuts")
    no_sort = frozenset({"nuts", "other-nuts"})
    return (no_sort if names & nuts else frozenset()) | (nuts if names & no_sort else frozenset())


def _allergen(known: tuple[Known, ...], names: frozenset[str], traces: bool = True) -> Answer:
    perhaps = names | nuts_beside(names)
    if any(names & one.contains for one in known):
        return "contains"
    if any(one.unknown for one in known):
        return "not known"
    # "mixed nuts" may be any of them
    if any(perhaps & (one.contains | (one.may_contain if traces else set())) for one in known):
        return "may contain"
    return "not known" if any(one.open_to(names) for one in known) else "free"


def _measured(known: tuple[Known, ...], avoided: Avoided) -> Answer:
    """Say it of what some foods hold only a trace of, or none: lactose, a coeliac's gluten."""
    answers: set[Answer] = {"free"}
    for one in known:
        named = {name for food in one.staples for name in food.allergens}
        answers |= {avoided.measures(food, avoided.allergens) for food in one.staples}
        if avoided.allergens & (one.contains - named):
            answers.add("contains")
        if avoided.traces and avoided.allergens & one.may_contain:
            answers.add("may contain")
        if one.open_to(avoided.allergens):
            answers.add("not known")
    return max(answers, key=_WORSE.index)


def _alcohol(recipe: Recipe, known: tuple[Known, ...]) -> Answer:
    tags = {tag for one in known for staple in one.staples for tag in staple.tags}
    if "alcohol" in tags or makes_alcohol(recipe, frozenset(tags)):
        return "contains"
    if any(is_flavouring_in_spirit(food) for one in known for food in one.staples):
        return "contains"
    if recipe.kind.is_("living"):
        return "may contain"
    # a flavouring in a bought sweet is a trace; a spoonful of it from its own bottle is not
    named = (food for one in known for food in food_of(one.ingredient).foods)
    if any(MAY_BE_IN_ALCOHOL in food.tags for food in named):
        return "not known"
    return "not known" if any(one.open_to() for one in known) else "free"


def _diet(known: tuple[Known, ...], diet: Diet) -> Answer:
    allowed = EATEN[diet]
    kept: set[bool | None] = set()
    for one in known:
        of_it = {staple.comes_from(allowed) for staple in one.staples}
        if is_said_to_keep(one.ingredient.item, diet):
            of_it.discard(None)
        elif any(PACKET in food.tags and not is_pressed(food) for food in one.staples):
            of_it.add(None)
        kept |= of_it | ({None} if one.unknown else set())
    if False in kept:
        return "contains"
    return "not known" if None in kept else "free"


def _ingredient(known: tuple[Known, ...], avoided: Avoided) -> Answer:
    answers: set[Answer] = {"free"}
    for one in known:
        words = ", ".join((one.ingredient.item, *one.ingredient.parts))
        if not any(food.name in avoided.but for food in one.staples):
            answers.add(avoided.said_in(words))
        answers |= {avoided.held_by(food) for food in one.staples}
        packets = (food for food in one.staples if PACKET in food.tags)
        if one.unknown or any(avoided.packet_may_hold(food) for food in packets):
            answers.add("not known")
    return max(answers, key=_WORSE.index)
