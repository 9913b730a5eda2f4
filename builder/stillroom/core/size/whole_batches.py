"""The nearest batch at which everything counted comes out whole.

Fixed counts (six oranges) must be exactly whole, or halves where a cook halves them; ranges and
ratios need only a whole number inside. Leaves out what is weighed: a scale takes any amount.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.size.scalable import Scalable, ScaleLine
from stillroom.core.size.targets import written_range

_REACH = 24  # steps tried to either side; beyond that the hint would be of no use


@dataclass(frozen=True)
class Fit:
    """A factor at which whole counts fit exactly."""

    factor: Fraction


def nearest_fit(recipe: Scalable, factor: Fraction) -> Fit | None:
    """Return the nearest factor at which every count is whole, or None when none is near.

    Of two as near the larger.
    """
    counted = [
        (line, *written_range(recipe, line))
        for line in recipe.lines
        if line.form != "words" and not line.unit and line.scales == "with the batch"
    ]
    if not counted:
        return None
    fitting = [
        choice for choice in _choices(counted, factor) if all(_fits(row, choice) for row in counted)
    ]
    if not fitting:
        return None
    return Fit(min(fitting, key=lambda choice: (abs(choice - factor), -choice)))


def _choices(
    counted: list[tuple[ScaleLine, Fraction, Fraction]], factor: Fraction
) -> list[Fraction]:
    fixed = [_grain(line, low) for line, low, high in counted if low == high]
    if fixed:
        step = _common_step(fixed)
        middle = (factor / step).__floor__()
        return [step * n for n in range(max(middle - _REACH, 1), middle + _REACH + 2)]
    found = []
    for _line, low, high in counted:
        one = 2 / (low + high)
        middle = (factor / one).__floor__()
        found += [one * n for n in range(max(middle - _REACH, 1), middle + _REACH + 2)]
    return found


def _grain(line: ScaleLine, count: Fraction) -> Fraction:
    """Return the factor that brings a fixed count to one (or to a half where halves are used)."""
    return (Fraction(1, 2) if line.halves else Fraction(1)) / count


def _common_step(steps: list[Fraction]) -> Fraction:
    """Return the least factor that is a whole multiple of every step."""
    bottom = math.gcd(*(step.denominator for step in steps))
    return Fraction(math.lcm(*(step.numerator for step in steps)), bottom)


def _fits(row: tuple[ScaleLine, Fraction, Fraction], factor: Fraction) -> bool:
    line, low, high = row
    grain = Fraction(1, 2) if line.halves else Fraction(1)
    return (high * factor / grain).__floor__() >= max((low * factor / grain).__ceil__(), 1)
