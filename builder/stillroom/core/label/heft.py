"""About what a line weighs that no table weighs: for its place in the contents list alone.

A vinegar of no table is still about as heavy as water, twenty walnuts are more than three cloves.
The figures are heft.yml. Leaves out what is shown and reckoned with: batch/contents.py.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import Any

from stillroom.core.amounts.units import convert, size_of
from stillroom.core.batch.contents import Content, middle_of
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import counted_noun
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.data_files import read_data


def about_weighs(
    ingredient: Ingredient, content: Content | None, recipe: Recipe
) -> Fraction | None:
    """Return about how many grams a measured or counted line has; None where nobody could tell."""
    measured = middle_of(ingredient, recipe)
    if content is None or measured is None:
        return None
    value, unit = measured
    tags = content.staple.tags if content.staple else frozenset()
    if size_of(unit) == "volume":
        poured = _first("liquids", tags) or Fraction(1)
        return convert(value, unit, "ml") * (poured if content.liquid else Fraction(1, 2))
    if size_of(unit) != "count":
        return None
    one = _nouns().get(counted_noun(ingredient).lower()) or _first("one", tags)
    return value * one if one else None


def _first(group: str, tags: frozenset[str]) -> Fraction | None:
    """Return the figure of the first tag of a group that a food has."""
    rows: dict[str, Any] = _table()[group]
    return next((Fraction(str(rows[tag])) for tag in rows if tag in tags), None)


@cache
def _table() -> dict[str, Any]:
    table: dict[str, Any] = read_data("heft.yml", "label")
    return table


@cache
def _nouns() -> dict[str, Fraction]:
    return {
        str(noun).lower(): Fraction(str(grams))
        for grams, nouns in _table()["nouns"].items()
        for noun in nouns
    }
