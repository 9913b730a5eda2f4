"""Whether a food is acid, low in acid or dry, where its row does not say so itself.

Acid: pH 4.6 or below as sold (21 CFR 114.3 draws that line). Borderline: ripe fruit may lie on
either side of it. Low: above it. Dry: too little water for pH to be the question, or none at all.
The rules are read in order from acidity.yml; where none holds, nothing is known.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Literal

from stillroom.core.larder.data import read_larder_data

Acidity = Literal["acid", "borderline", "low", "dry"]
ACIDITIES: tuple[Acidity, ...] = ("acid", "borderline", "low", "dry")


@dataclass(frozen=True)
class _Rule:
    """One line of acidity.yml; a bound on water holds only where the water is known."""

    acidity: Acidity
    tags: frozenset[str]
    water_to: int | None
    water_from: int | None

    def holds(self, tags: frozenset[str], water: Fraction | None) -> bool:
        if self.tags and not self.tags & tags:
            return False
        if self.water_to is not None and (water is None or water > self.water_to):
            return False
        return self.water_from is None or (water is not None and water >= self.water_from)


@cache
def _rules() -> tuple[_Rule, ...]:
    return tuple(
        _Rule(row["is"], frozenset(row.get("tags", ())), row.get("water_to"), row.get("water_from"))
        for row in read_larder_data("acidity.yml")
    )


def acidity_by_tags(tags: frozenset[str], water: Fraction | None) -> Acidity | None:
    """Return the acidity that the first fitting rule gives; `water` in g per 100 g, if known.

    >>> acidity_by_tags(frozenset({"fruit", "high-acid-fruit"}), Fraction(84))
    'acid'
    >>> acidity_by_tags(frozenset({"pectin"}), Fraction(90)) is None
    True
    """
    return next((rule.acidity for rule in _rules() if rule.holds(tags, water)), None)
