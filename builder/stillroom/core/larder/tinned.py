"""What lies in a tin: "chickpeas from a tin", "peach slices in light syrup".

Leaves out where a phrase is cut: food_reading.py.
"""

from __future__ import annotations

from typing import Final

from stillroom.core.larder.phrases import Words, forms, phrase_words
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import normal_form

_POURED: Final = frozenset({"juice", "syrup"})
_HOW: Final = frozenset(
    {"in", "own", "its", "it", "their", "natural", "fruit", "light", "heavy", "extra", "thick"}
    | {"thin", "sugar", "unsweetened", "grape", "pear", "apple", "pineapple"}
)


def tinned_by(food: Staple, tail: Words, larder: Larder) -> Staple | None:
    """Return what a food is by what is said behind it: "from a tin", "in juice"; None if neither.

    A food that the larder knows of no tin stays what it is in one, and is not known in a syrup.
    """
    plain = forms(tail)
    if phrase_words("tins") & set(plain):
        return tinned_of(food, larder) or food
    if plain[0] == "in" and plain[-1] in _POURED and set(plain[:-1]) <= _HOW:
        return tinned_of(food, larder)
    return None


def tinned_of(food: Staple, larder: Larder) -> Staple | None:
    """Return the tinned form of a food, itself where it is one; None where none is known."""
    words = sorted(phrase_words("tinned"))
    if normal_form(food.name).partition(" ")[0] in words:
        return food
    names = (f"{word} {name}" for name in (food.name, food.kind_of) if name for word in words)
    return next(filter(None, (larder.named(normal_form(name)) for name in names)), None)
