"""The staples, as the computations ask for them: by an item's words or an ingredient.

What is known of foods and how their names are read lies in larder/; this is its counter.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.shelves import all_staples, staples_tagged
from stillroom.core.larder.staple import Composition, Staple
from stillroom.core.lines.ingredient_food import food_of, name_of

if TYPE_CHECKING:
    from stillroom.core.lines.ingredient import Ingredient

__all__ = [
    "Composition",
    "Staple",
    "all_staples",
    "find_staple",
    "name_of",
    "staple_of",
    "staples_named",
    "staples_of",
    "staples_tagged",
]


def find_staple(item: str) -> Staple | None:
    """Return the staple that the whole of an item's words names, or None.

    >>> find_staple("unwaxed Seville oranges, thinly peeled").name
    'seville orange'
    >>> find_staple("almond biscuits") is None
    True
    """
    return read_food(item).food


def staples_named(item: str) -> tuple[Staple, ...]:
    """Return every staple that an item names, for careful reading; of an unknown item too.

    >>> [staple.name for staple in staples_named("oatmeal and honey")]
    ['oatmeal', 'honey']
    """
    return read_food(item).named


def staple_of(ingredient: Ingredient) -> Staple | None:
    """Return an ingredient's staple: the one it says it is, or the one its words and note name."""
    return food_of(ingredient).food


def staples_of(ingredient: Ingredient) -> tuple[Staple, ...]:
    """Return every staple that an ingredient's line names: of "butter or margarine" both."""
    return food_of(ingredient).foods
