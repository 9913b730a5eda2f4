"""What a recipe holds that may harm somebody, read from the staples of its ingredients.

Everything that touches the making counts, also what is strained out again and what is optional,
but not tools. An ingredient that no staple is found for makes every answer "not known", which
is never safe. The label's rules (core/allergens/of_foods.py) answer too; the worse answer counts.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Literal

from stillroom.core.allergens.avoiding import EATEN, Avoided
from stillroom.core.allergens.of_foods import answer_avoid, nuts_beside
from stillroom.core.care.unchecked import unknown_foods_of
from stillroom.core.larder.packet_parts import read_part
from stillroom.core.larder.shelves import common_larder
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import food_of, parts_of
from stillroom.core.lines.staple_table import Staple
from stillroom.core.method.foods_in_method import foods_in_method
from stillroom.core.recipe.model import Recipe

Answer = Literal["free", "may contain", "contains", "not known"]
_WORSE: tuple[Answer, ...] = ("free", "may contain", "not known", "contains")
_NOT_FOR_UNDER = re.compile(r"not for children under (\d+|three|five)", re.IGNORECASE)
_SPELT = {"three": 3, "five": 5}


@dataclass(frozen=True)
class Held:
    """One ingredient and every staple in it, its compound's parts too; None is not known."""

    ingredient: Ingredient
    staples: tuple[Staple | None, ...]
    stays: bool


@dataclass(frozen=True)
class Facts:
    """What the planner's rules ask of a recipe."""

    recipe: Recipe
    held: tuple[Held, ...]

    @property
    def staples(self) -> tuple[Staple | None, ...]:
        """Return every staple of the recipe."""
        return tuple(staple for held in self.held for staple in held.staples)

    @property
    def alcohol(self) -> Answer:
        """Whether it holds alcohol; a yeast ferment makes it, another ferment is not known."""
        known = [staple for staple in self.staples if staple]
        if any((held.ingredient.strength or 0) > 0 for held in self.held):
            return "contains"
        if any(staple.tags & {"alcohol", "spirit", "wine"} for staple in known):
            return "contains"
        # over 1.2 % vol counts as alcohol (Reg. (EU) 1169/2011 art. 9(1)(k)), a vinegar's trace not
        if any((s.composition.alcohol or 0) > 1 for s in known if s.composition):
            return "contains"
        if self.recipe.kind.is_("living"):
            return "contains" if any("yeast" in s.tags for s in known) else "not known"
        return "not known" if None in self.staples else "free"

    def answer(self, avoid: Avoided) -> Answer:
        """Say whether the recipe is free of something avoided: the worse of two readings.

        One is made here from the staples, the other by the label's own rules.
        """
        return max(self._own(avoid), _labelled(self.recipe, avoid), key=_WORSE.index)

    def _own(self, avoid: Avoided) -> Answer:
        if avoid.diet == "alcohol":
            return self.alcohol
        if avoid.diet:
            return self._diet(EATEN[avoid.diet])
        answers = [self._allergens(avoid.allergens)] if avoid.allergens else []
        answers += [self._ingredient(avoid)] if avoid.is_ingredient else []
        return max(answers, key=_WORSE.index)

    def _allergens(self, allergens: frozenset[str]) -> Answer:
        known = [staple for staple in self.staples if staple]
        if any(allergens & set(staple.allergens) for staple in known):
            return "contains"
        if None in self.staples:
            return "not known"
        # "mixed nuts" may be any of them
        traces = allergens | nuts_beside(allergens)
        if any(traces & {*staple.may_contain, *staple.allergens} for staple in known):
            return "may contain"
        return "free"

    def _diet(self, allowed: frozenset[str]) -> Answer:
        known = [staple for staple in self.staples if staple]
        if any(not set(staple.animal) <= allowed for staple in known):
            return "contains"
        if None in self.staples or any(staple.vegan_note for staple in known):
            return "not known"
        return "free"

    def _ingredient(self, avoid: Avoided) -> Answer:
        found: set[Answer] = {"not known" if None in self.staples else "free"}
        for held in self.held:
            names = " ".join((held.ingredient.item, *held.ingredient.parts))
            found.add(avoid.said_in(names))
            found |= {avoid.held_by(staple) for staple in held.staples if staple}
        return max(found, key=_WORSE.index)

    @property
    def unknown(self) -> tuple[str, ...]:
        """The foods that the book does not know: what is made of them could not be checked."""
        return unknown_foods_of(self.recipe)

    @property
    def youngest_months(self) -> int:
        """The age in months under which the maker's own cautions say it is not for children."""
        ages = [
            12 * int(_SPELT.get(found[1].lower(), found[1]))
            for caution in self.recipe.cautions
            if (found := _NOT_FOR_UNDER.search(caution))
        ]
        return max(ages, default=0)

    @property
    def strength(self) -> Fraction:
        """The strongest % vol of what goes in; 0 without alcohol."""
        return max(
            (held.ingredient.strength or Fraction(0) for held in self.held), default=Fraction(0)
        )


@cache
def _labelled(recipe: Recipe, avoid: Avoided) -> Answer:
    words = sorted(avoid.allergens) if not avoid.is_ingredient else []
    return max((answer_avoid(recipe, word) for word in words or [avoid.word]), key=_WORSE.index)


def facts_of(recipe: Recipe) -> Facts:
    """Read what a recipe holds; tools of a craft (used once per batch) are left out."""
    craft = not recipe.kind.is_eaten
    listed = tuple(
        Held(ingredient, tuple(_staples_in(ingredient)), recipe.stays_in(ingredient))
        for ingredient in recipe.ingredients
        if not (craft and ingredient.scales == "per batch")
    )
    told = tuple(
        Held(one.ingredient, tuple(_staples_in(one.ingredient)), True)
        for one in foods_in_method(recipe)
    )
    return Facts(recipe, (*listed, *told))


def _staples_in(ingredient: Ingredient) -> list[Staple | None]:
    """Return every staple that a line names, and those of its parts; None for what is not known."""
    reading = food_of(ingredient)
    found: list[Staple | None] = [*reading.foods, *reading.hinted]
    if not reading.known and not ingredient.parts:
        found.append(None)
    waiting = [*parts_of(ingredient)]
    common = [part for staple in reading.foods for part in staple.parts]
    waiting += [read_part(part, common_larder()) for part in common]
    seen: set[str] = set()
    while waiting:
        part = waiting.pop()
        if part.text in seen:
            continue
        seen.add(part.text)
        found += [*part.foods, *part.hinted, *([] if part.known else [None])]
        inner = [name for staple in part.foods for name in staple.parts]
        waiting += [read_part(name, common_larder()) for name in inner]
    return found
