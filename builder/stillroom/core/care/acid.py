"""Whether what is sour is enough for what is not, by weight and not by the word.

Proportions: vinegar or lemon juice at least as much as the water that covers, and at least a
quarter of the low-acid food; or those of a published process (processes.yml). What cannot be
weighed counts against the recipe. Leaves out pH, and where it is kept: the rules.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import Protocol

from stillroom.core.care.processes import Filling, find_process
from stillroom.core.staple_table import Staple

LOW_ACID = frozenset({"low-acid-vegetable", "low-acid-fruit", "cooked-pulse", "fish"})
_LEAST_OF_FOOD = Fraction(1, 4)


class Weighed(Protocol):
    """One line of a recipe, as far as acid is concerned."""

    @property
    def staple(self) -> Staple | None:
        """What it is known as."""

    @property
    def tags(self) -> frozenset[str]:
        """What the rules look for in it."""

    @property
    def grams(self) -> Fraction | None:
        """Its weight in a batch; None when it is not known."""


def too_little_acid(things: Iterable[Weighed]) -> bool:
    """Say whether low-acid food lies in too little acid; True when it cannot be weighed."""
    rows = tuple(things)
    low = [row for row in rows if row.tags & LOW_ACID]
    if any(row.grams is None for row in low):
        return True
    low_g = _sum(low)
    acid_g = _sum(row for row in rows if "acid" in row.tags)
    water = [row for row in rows if "water" in row.tags]
    if any(row.grams is None for row in water):
        return True
    if acid_g >= _LEAST_OF_FOOD * low_g and acid_g >= _sum(water) and acid_g > 0:
        return False
    return find_process(_filling(rows)) is None


def _filling(rows: tuple[Weighed, ...]) -> Filling:
    foods: dict[str, Fraction] = {}
    for row in rows:
        if row.staple and row.tags & (LOW_ACID | {"fruit", "vegetable"}):
            foods[row.staple.name] = foods.get(row.staple.name, Fraction(0)) + (row.grams or 0)
    vinegar = [row for row in rows if "vinegar" in row.tags]
    return Filling(
        foods=foods,
        vinegar_g=_sum(vinegar),
        lemon_g=_sum(row for row in rows if "acid" in row.tags and row not in vinegar),
        water_g=_sum(row for row in rows if "water" in row.tags),
        sugar_g=_sum(row for row in rows if "sugar" in row.tags),
    )


def _sum(rows: Iterable[Weighed]) -> Fraction:
    return sum((row.grams or Fraction(0) for row in rows), Fraction(0))
