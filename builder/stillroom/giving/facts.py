"""What a recipe holds that may harm somebody, read from the staples of its ingredients.

Everything that touches the making counts, also what is strained out again and what is optional,
but not tools. An ingredient that no staple is found for makes every answer "not known", which
is never safe. This is the first check of a gift; second_check.py reads the label instead.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from stillroom.core.allergens.avoided import EATEN, Avoided, Diet, is_said_to_keep
from stillroom.core.allergens.of_foods import MAY_BE_IN_ALCOHOL, nuts_beside
from stillroom.core.allergens.sentences import avoided_by_name
from stillroom.core.care.unchecked import unknown_foods_of
from stillroom.core.label.sugar import Sugar, sugar_in_one
from stillroom.core.larder.packet_parts import read_part
from stillroom.core.larder.shelves import common_larder
from stillroom.core.larder.staple import NOT_ANIMAL
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import food_of, parts_of
from stillroom.core.lines.staple_table import Staple
from stillroom.core.method.foods_in_method import foods_in_method
from stillroom.core.method.working import makes_alcohol
from stillroom.core.recipe.model import Recipe
from stillroom.giving.answers import WORSE, Answer, is_taken_in

# who eats no insect: carmine and shellac are in bought sweets of which only the packet tells
_NO_INSECTS = frozenset({"vegan", "vegetarian", "source known"})


@dataclass(frozen=True)
class Held:
    """One ingredient and every staple in it, its compound's parts too; None is not known.

    `loose` are parts of a food of the larder that no food explains ("spices"): its own facts say
    what allergens it has, and not which spices. `opened` are compounds whose parts the line itself
    tells: what their makers may differ in is told with them.
    """

    ingredient: Ingredient
    staples: tuple[Staple | None, ...]
    stays: bool
    loose: tuple[str, ...] = ()
    opened: tuple[Staple, ...] = ()

    @property
    def is_a_tool(self) -> bool:
        """Whether all of it is a tool or a wrapping; shellac and beeswax are no tools."""
        return bool(self.staples) and all(
            food and "craft" in food.tags and set(food.animal) <= NOT_ANIMAL
            for food in self.staples
        )


@dataclass(frozen=True)
class GiftFacts:
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
            tags = frozenset(tag for staple in known for tag in staple.tags)
            return "contains" if makes_alcohol(self.recipe, tags) else "not known"
        named = (food for held in self.held for food in food_of(held.ingredient).foods)
        carried = any(MAY_BE_IN_ALCOHOL in food.tags for food in named)
        return "not known" if carried or self.unread else "free"

    def answer(self, avoid: Avoided) -> Answer:
        """Say whether the recipe is free of something avoided, by its foods and their parts."""
        answers: list[Answer] = [self.answer(one) for one in avoid.of]
        if avoid.diet == "alcohol":
            answers.append(self.alcohol)
        elif avoid.diet:
            answers.append(self._diet(avoid.diet))
        answers += [self._allergens(avoid)] if avoid.allergens else []
        answers += [self._ingredient(avoid)] if avoid.is_ingredient else []
        return max(answers, key=WORSE.index, default="free")

    @property
    def unread(self) -> bool:
        """Whether something in it is not known that could matter to whoever has it."""
        return None in self.staples and is_taken_in(self.recipe)

    def _allergens(self, avoid: Avoided) -> Answer:
        known = [staple for staple in self.staples if staple]
        found: set[Answer] = {avoid.measures(staple, avoid.allergens) for staple in known}
        # "mixed nuts" may be any of them
        traces = nuts_beside(avoid.allergens)
        if any(traces & {*staple.may_contain, *staple.allergens} for staple in known):
            found.add("may contain")
        if self.unread:
            found.add("not known")
        return max(found, key=WORSE.index, default="free")

    def _diet(self, diet: Diet) -> Answer:
        found: set[Answer] = {"not known" if self.unread else "free"}
        for held in self.held:
            said = is_said_to_keep(held.ingredient.item, diet)
            for food in held.staples:
                kept = food.comes_from(EATEN[diet]) if food else True
                if kept and diet in _NO_INSECTS and food and _may_be_coloured_with_insects(food):
                    kept = None
                if kept is False:
                    found.add("contains")
                elif kept is None and not said and food not in held.opened:
                    found.add("not known")
        return max(found, key=WORSE.index)

    def _ingredient(self, avoid: Avoided) -> Answer:
        plain = bool(avoid.foods) and not avoid.allergens
        loose = plain and any(held.loose for held in self.held)
        found: set[Answer] = {"not known" if self.unread or loose else "free"}
        for held in self.held:
            # a jelly bag holds no jelly
            if self.recipe.kind.is_eaten and held.is_a_tool:
                continue
            names = (held.ingredient.item, *held.ingredient.parts)
            if not any(staple and staple.name in avoid.but for staple in held.staples):
                found.add(avoid.said_in(" ".join(names)))
            found |= {avoid.held_by(staple) for staple in held.staples if staple}
        return max(found, key=WORSE.index)

    @property
    def unknown(self) -> tuple[str, ...]:
        """The foods that the book does not know: what is made of them could not be checked."""
        return unknown_foods_of(self.recipe)

    @property
    def sugar(self) -> Sugar | None:
        """How much sugar is in one of what it makes; None where nobody can tell."""
        return sugar_in_one(self.recipe)

    @property
    def strength(self) -> Fraction:
        """The strongest % vol of what goes in; 0 without alcohol."""
        return max(
            (held.ingredient.strength or Fraction(0) for held in self.held), default=Fraction(0)
        )


def _may_be_coloured_with_insects(food: Staple) -> bool:
    """Whether a bought sweet may hold carmine or shellac; its packet tells, and nothing else."""
    named = (avoided_by_name(word) for word in ("carmine", "shellac"))
    return "read-its-packet" in food.tags and any(one.held_by(food) != "free" for one in named)


@lru_cache(maxsize=4096)
def facts_of(recipe: Recipe) -> GiftFacts:
    """Read what a recipe holds; tools of a craft (used once per batch) are left out."""
    craft = not recipe.kind.is_eaten
    listed = tuple(
        _held(ingredient, recipe.stays_in(ingredient))
        for ingredient in recipe.ingredients
        if not (craft and ingredient.scales == "per batch")
    )
    told = tuple(_held(one.ingredient, True) for one in foods_in_method(recipe))
    return GiftFacts(recipe, (*listed, *told))


def _held(ingredient: Ingredient, stays: bool) -> Held:
    """Return every staple that a line names, and those of its parts; None for what is not known."""
    reading = food_of(ingredient)
    found: list[Staple | None] = [*reading.foods, *reading.hinted]
    if not reading.known and not ingredient.parts:
        found.append(None)
    waiting = [(part, True) for part in parts_of(ingredient)]
    own = reading.larder.own
    for staple in reading.foods:
        waiting += [(read_part(part, common_larder()), staple in own) for part in staple.parts]
    loose: list[str] = []
    seen: set[str] = set()
    while waiting:
        part, written = waiting.pop()
        if part.text in seen:
            continue
        seen.add(part.text)
        found += [*part.foods, *part.hinted]
        if not part.known and written:
            found.append(None)
        elif not part.known:
            loose.append(part.text)
        inner = [name for staple in part.foods for name in staple.parts]
        waiting += [(read_part(name, common_larder()), False) for name in inner]
    opened = reading.foods if ingredient.parts else ()
    return Held(ingredient, tuple(found), stays, tuple(loose), tuple(opened))
