"""Whether baking soda is more than raises a dough, where it would be drunk or take the acid away.

Leaves out other alkalis: they are lye and lime, by their tags.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from stillroom.core.care.acid import Weighed
from stillroom.core.recipe.kinds import Kind

SODA = frozenset({"bicarbonate of soda", "bicarbonate soda", "potassium bicarbonate"})
# a tablespoon; and in a preserve or a pickle a teaspoon or two, beside the acid that keeps it
_DRUNK_G = 12
_PRESERVE_G = 8
_SUGAR_SHARE = Fraction(3, 5)
# a dry mix is weighed without the milk or water that will thin it
_WITHOUT_ITS_LIQUID = Fraction(5, 3)


def soda_is_much(rows: Sequence[Weighed], kind: Kind, most_to_the_kilo: int) -> bool:
    """Say whether soda passes what is usual; among sugar alone it is honeycomb, and foams away.

    Soda of which nobody says how much is a pinch.
    """
    soda = _sum([row for row in rows if row.staple and row.staple.name in SODA])
    whole = _sum(rows)
    if not soda or not whole:
        return False
    if kind.is_("drink"):
        return soda >= _DRUNK_G
    if kind.is_("put up") and any("acid" in row.tags for row in rows):
        return soda >= _PRESERVE_G
    most = most_to_the_kilo * (_WITHOUT_ITS_LIQUID if kind.is_("dry") else 1)
    sugar = _sum([row for row in rows if row.tags & {"sugar", "syrup", "honey"}])
    return soda * 1000 > most * whole and sugar < _SUGAR_SHARE * whole


def _sum(rows: Sequence[Weighed]) -> Fraction:
    return sum((row.grams or Fraction(0) for row in rows), Fraction(0))
