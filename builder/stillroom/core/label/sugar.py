"""How much sugar is in one piece, one serving or one spoonful of what a batch makes.

Sugar is neither lost nor won by boiling, so all that goes in and stays is shared out over what the
batch makes. Where a food has no figure, or one from memory, it is taken for as little and as much
as it can hold: what is said then is a span, and nothing where that is wide. What ferments eats its
sugar, and nobody knows how much. Leaves out starch, which counts to a diabetic as well.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import convert, size_of
from stillroom.core.batch.contents import Content, content_of
from stillroom.core.larder.staple import Staple
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.method.foods_in_method import foods_in_method
from stillroom.core.method.working import makes_alcohol
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.plurals import singular

# 21 CFR 101.12(b), Table 2, read in a copy: jams, jellies, honey, chutneys and the like 1 tbsp
SPOON_ML = Fraction(15)
_WIDEST = Fraction(2)  # a wider span says too little
_LEAST_G = Fraction(1)  # "0 to 1 g" says enough
_MEMORY = (Fraction(17, 20), Fraction(23, 20))  # what a figure from memory may be off by
_DENSEST = Fraction(3, 2)  # honey, the heaviest of kitchens, is 1.43 (USDA SR 19296)
# so little of these is taken "to taste" that it brings less than half a gram of sugar
_NEXT_TO_NONE = frozenset(
    {"salt", "water", "spice", "herb", "dried-herb", "fresh-herb", "oil", "spirit", "vinegar"}
    | {"colouring", "flavouring", "craft", "essential-oil"}
)
PER_100_G = "100 g of it"
_MOST = Fraction(100)
_VESSEL = late_regex(
    r"\b(?:jars?|bottles?|tins?|bags?|boxe?s?|pots?|glasse?s?|tubs?|packets?|parcels?|gläser|glas"
    r"|flaschen?|bocaux|bocal|bouteilles?|tarros?|botellas?|vasetti|batch(?:es)?|gifts?|hampers?"
    r"|recipe)\b",
    re.IGNORECASE,
)
# one of these is for several: how many have it nobody says
_FOR_SEVERAL = late_regex(
    r"\b(?:loa(?:f|ves)|cakes?|puddings?|pies?|tarts?|stollen|panettoni?|logs?|wreaths?|blocks?"
    r"|slabs?|houses?|kuchen|brote?|pains?|tortas?|christmas cake|trays?|pans?|sheets?|rolls?"
    r"|(?:\d+ ?(?:cm|inch))\b.*)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class Sugar:
    """The grams of sugar in one of what is made: no fewer than `low`, no more than `high`.

    `of` is that one: "one square", "a tablespoon (15 ml)"; `is_serving` whether that is what
    somebody has of it at a time, and not a whole jar or a cake.
    """

    low: Fraction
    high: Fraction
    of: str
    is_serving: bool

    @property
    def is_span(self) -> bool:
        """Whether it is no one number: a food in it has no published figure, or several."""
        return _whole(self.low) != _whole(self.high)

    @property
    def text(self) -> str:
        """Say it in words, in whole grams: "about 11 g in one square"."""
        low, high = _whole(self.low), _whole(self.high)
        if high == 0:
            return f"less than half a gram in {self.of}"
        grams = f"about {high} g" if not self.is_span else f"{low} to {high} g"
        return f"{grams} in {self.of}"


def _whole(grams: Fraction) -> int:
    return math.floor(grams + Fraction(1, 2))


@once_a_recipe
def sugar_in_one(recipe: Recipe) -> Sugar | None:
    """Return how much sugar is in one of what a recipe makes; None where nobody can tell.

    A count is of pieces or servings; what is measured by volume goes by the spoon, by weight by
    100 g.
    """
    held = _sugar_in_all(recipe)
    shared = _one_of(recipe) if held else None
    if held is None or shared is None:
        return None
    count, name, is_serving = shared
    low, high = held[0] / count, held[1] / count
    if name == PER_100_G:
        if low > _MOST:
            return None  # it is said to weigh less than the sugar in it
        high = min(high, _MOST)
    if high - low > _LEAST_G and high > low * _WIDEST:
        return None
    return Sugar(low, high, name, is_serving)


def _sugar_in_all(recipe: Recipe) -> tuple[Fraction, Fraction] | None:
    """Return the least and the most grams of sugar that one batch holds; None for no bound."""
    tags = frozenset(tag for food in _foods_of(recipe) for tag in food.tags)
    if not recipe.kind.is_eaten or recipe.kind.is_("living") or makes_alcohol(recipe, tags):
        return None
    if any(
        not _brings_none(food) for one in foods_in_method(recipe) for food in _named(one.ingredient)
    ):
        return None
    low = high = Fraction(0)
    for ingredient in recipe.ingredients:
        bounds = _of_line(ingredient, content_of(recipe, ingredient))
        if bounds is None:
            return None
        low += bounds[0] if _stays(recipe, ingredient) else 0
        high += bounds[1]
    return low, high


def _stays(recipe: Recipe, ingredient: Ingredient) -> bool:
    """Whether a line's sugar is all in what is given: dissolved sugar is not strained out."""
    content = content_of(recipe, ingredient)
    melted = content is not None and (content.dissolves or content.liquid)
    return recipe.stays_in(ingredient) or (melted and ingredient.left_in is None)


def _of_line(ingredient: Ingredient, content: Content | None) -> tuple[Fraction, Fraction] | None:
    """Return the least and the most grams of sugar of one line; None where it has no weight."""
    foods = _named(ingredient)
    most_g = None if ingredient.scales == "per container" else _most_grams(ingredient, content)
    if content is None or most_g is None:
        little = bool(foods) and all(_brings_none(food) for food in foods)
        return (Fraction(0), Fraction(0)) if little else None
    # "sugar or honey" is as little as either holds, and as much
    shares = [_share(food) for food in foods] or [(Fraction(0), Fraction(1))]
    if ingredient.parts:  # "chocolate (sugar, cocoa)": what it is, its packet tells
        shares = [_share(content.staple) if content.staple else (Fraction(0), Fraction(1))]
    low, high = min(share[0] for share in shares), max(share[1] for share in shares)
    return (content.grams or 0) * low, most_g * high


def _most_grams(ingredient: Ingredient, content: Content | None) -> Fraction | None:
    """Return what a line weighs; of what is measured by volume and has no density, the most."""
    if content is None or content.grams is not None:
        return content.grams if content else None
    amount = ingredient.amount
    if isinstance(amount, Amount) and amount.unit and size_of(amount.unit) == "volume":
        return convert(amount.high, amount.unit, "ml") * _DENSEST
    return None


def _share(food: Staple) -> tuple[Fraction, Fraction]:
    """Return the least and the most of a food that is sugar, from 0 to 1."""
    held = food.composition
    if published := _figures().get(food.name) or _figures().get(food.kind_of):
        return published
    if held is None:
        return Fraction(0), Fraction(1)
    others = sum(
        (part or Fraction(0) for part in (held.water, held.fat, held.alcohol)), Fraction(0)
    )
    most = max(100 - others, Fraction(0))
    if held.sugar is None:
        return Fraction(0), most / 100
    if "from memory" in food.sources.get("composition", "").split(";")[0]:
        low, high = (held.sugar * share for share in _MEMORY)
        return low / 100, min(high, max(most, held.sugar)) / 100
    return held.sugar / 100, held.sugar / 100


@cache
def _figures() -> dict[str, tuple[Fraction, Fraction]]:
    """Return the least and the most sugar, from 0 to 1, of foods that have a figure here."""
    rows = read_data("sugar_of_foods.yml", "label")
    figures: dict[str, tuple[Fraction, Fraction]] = {}
    for name, row in rows.items():
        both = row["sugar"] if isinstance(row["sugar"], list) else [row["sugar"], row["sugar"]]
        figures[name] = (Fraction(str(both[0])) / 100, Fraction(str(both[1])) / 100)
    return figures


def _brings_none(food: Staple) -> bool:
    """Whether a food brings next to no sugar, however much a cook takes of it to taste."""
    if food.composition and food.composition.sugar is not None and food.composition.sugar <= 1:
        return True
    sweet = food.tags & {"sugar", "syrup", "honey", "confectionery", "liqueur", "dried-fruit"}
    return bool(food.tags & _NEXT_TO_NONE) and not sweet


def _named(ingredient: Ingredient) -> tuple[Staple, ...]:
    reading = food_of(ingredient)
    return (*reading.foods, *reading.hinted) if reading.known else ()


def _foods_of(recipe: Recipe) -> Iterator[Staple]:
    for ingredient in recipe.ingredients:
        yield from food_of(ingredient).foods


def _one_of(recipe: Recipe) -> tuple[Fraction, str, bool] | None:
    """Return how many of what is made share the sugar, and what one of them is called."""
    makes = recipe.makes
    total = makes.total
    size = size_of(total.unit) if total.unit else ""
    if size == "volume":
        return convert(total.middle, total.unit, "ml") / SPOON_ML, "a tablespoon (15 ml)", True
    if size == "mass":
        return convert(total.middle, total.unit, "g") / 100, PER_100_G, False
    if size or not makes.things:
        return None
    things = makes.things.strip(" .,")
    if _VESSEL.search(things):
        return None
    name = singular(things.split(",")[0].strip())
    return makes.amount.middle, f"one {name}", not _FOR_SEVERAL.search(things)
