"""When a recipe can be begun by the season of its produce: by its own word, else by its foods'.

What a recipe states stands over all. Else the months are those in which all of its main fresh
produce is to be had in the book's country (core/larder/seasons.yml); what is little beside the
rest is no reason to wait. Leaves out which day is best: starting.py.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from stillroom.core.batch.contents import content_of
from stillroom.core.larder.seasons import ALL_YEAR, FoodSeason, season_of_food
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.countries import in_country
from stillroom.core.words.day_words import MONTH_NAMES, say_month
from stillroom.core.words.joining import join_and
from stillroom.core.words.plurals import plural
from stillroom.giving.model import GivingList

_PRODUCE = frozenset({"fruit", "vegetable", "flower"})
_LITTLE = Fraction(1, 5)
"""What weighs less than so much of the heaviest produce is beside it: common practice, no
published source."""


@dataclass(frozen=True)
class ProduceSeason:
    """The months, from 1, in which a recipe is begun with fresh produce; none: it may be any.

    `foods` are those that say so, none where the recipe states its season. `unknown` are
    fresh foods of which nobody knows when they are to be had; `apart`: no month has all of them.
    """

    months: tuple[int, ...] = ()
    foods: tuple[FoodSeason, ...] = ()
    unknown: tuple[str, ...] = ()
    apart: bool = False

    def has(self, month: int) -> bool:
        """Whether it may be begun in a month with what is fresh then."""
        return not self.months or month in self.months

    @property
    def said(self) -> str:
        """What it goes by, where the recipe does not say: "sloes (September to November)"."""
        return join_and([f"{plural(one.food)} ({say_months(one.months)})" for one in self.foods])


ANY_MONTH = ProduceSeason()


def say_months(months: tuple[int, ...]) -> str:
    """Return months in words.

    >>> say_months((12, 1, 2)), say_months((1, 2)), say_months((10,))
    ('December to February', 'January and February', 'October')
    """
    names = [say_month(month) for month in months]
    runs = all(one % 12 + 1 == two for one, two in pairwise(months))
    return f"{names[0]} to {names[-1]}" if runs and len(names) > 2 else join_and(names)


def season_of(
    recipe: Recipe, country: str, in_the_house: frozenset[str] = frozenset()
) -> ProduceSeason:
    """Return when a recipe can be begun, in a country, by the season of its produce.

    What is `in_the_house`, by its food's name, waits for no season: sloes in the freezer.
    """
    if recipe.season:
        return ProduceSeason(recipe.season)
    found = tuple(_main_produce(recipe, country, in_the_house))
    known = tuple(one for one in found if one.months)
    unknown = tuple(dict.fromkeys(one.food for one in found if not one.months))
    months = [set(one.months) for one in known]
    together = set.intersection(*months) if months else set(ALL_YEAR)
    in_order = tuple(m for m in known[0].months if m in together) if known else ()
    return ProduceSeason(in_order, known, unknown, apart=not together)


def why_begun(recipe: Recipe, season: ProduceSeason, country: str, month: int) -> str:
    """Say what a start goes by where the recipe states no season; "" where there is nothing."""
    where = in_country(country)
    if season.unknown:
        foods = join_and([plural(food) for food in season.unknown])
        return (
            f"{recipe.title}: when {foods} are to be had fresh {where} is not known here. See to "
            f"it for {MONTH_NAMES[month - 1]}, or write the months in the recipe (season)."
        )
    if season.apart:
        return f"{recipe.title}: {season.said} are not to be had fresh in one month."
    if not season.foods or not season.has(month):
        return ""
    sources = "; ".join(dict.fromkeys(one.source for one in season.foods))
    return f"{recipe.title} goes by the season of {season.said} {where}. Source: {sources}."


def foods_in_the_house(giving: GivingList) -> frozenset[str]:
    """Return the names of the foods that a list's stock holds."""
    found = (find_staple(item) for _, item in giving.stock.ingredients)
    return frozenset(food.name for food in found if food)


def _main_produce(
    recipe: Recipe, country: str, in_the_house: frozenset[str]
) -> Iterator[FoodSeason]:
    """Yield the season of each fresh food, once; not of what is little beside other produce."""
    rows = [
        (food_of(line).food, line, content_of(recipe, line))
        for line in recipe.ingredients
        if not line.optional
    ]
    grams = {
        line: content.grams
        for food, line, content in rows
        if food and food.tags & _PRODUCE and content and content.grams
    }
    heaviest = max(grams.values(), default=Fraction(0))
    seen = set(in_the_house)
    for food, line, _ in rows:
        if food is None or food.name in seen or grams.get(line, heaviest) < heaviest * _LITTLE:
            continue
        if season := season_of_food(food, f"{line.item} {line.note}", country):
            seen.add(food.name)
            yield season
