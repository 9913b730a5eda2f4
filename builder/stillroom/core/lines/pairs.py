"""Whether a second measure is the first one again: "225g/8oz" is, "225g/80oz" is told.

Leaves out how the measures are read: line_amounts.py.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from stillroom.core.amounts.quantities import Amount, show_amount
from stillroom.core.amounts.units import all_units, convert, size_of
from stillroom.core.words.problems import Unreadable

# Published British pairs round 25 g to an ounce (28.35 g) and 5 g to a quarter of one (7.1 g): the
# BBC's and the Guild of Food Writers' conversions, as printed in recipes (common practice, no
# published source). Wider than this is no rounding.
_ROUNDED_SHARE = Fraction(16, 100)
_ROUNDED_LEAST = {"mass": Fraction(5), "volume": Fraction(8), "length": Fraction(6)}


# side by side with no sign between, "2oz 50g": nearer than this they are one amount said twice
_SAID_TWICE = (Fraction(7, 10), Fraction(10, 7))


def same_again(first: Amount, other: Amount) -> bool:
    """Whether a measure beside another, in another system's unit, is the same once more.

    >>> ounces, grams = (Fraction(8), Fraction(225))
    >>> same_again(Amount(ounces, ounces, "oz"), Amount(grams, grams, "g"))
    True
    >>> same_again(Amount(ounces, ounces, "lb"), Amount(grams, grams, "g"))
    False
    """
    share = convert(other.middle, other.unit, first.unit) / first.middle if first.middle else 0
    return _SAID_TWICE[0] <= share <= _SAID_TWICE[1]


def compare(first: Amount, also: Iterable[Amount]) -> None:
    """Refuse a second measure that is not the first one again."""
    if not first.unit:
        return
    for other in also:
        if not other.unit or size_of(other.unit) != size_of(first.unit):
            continue
        again = convert(other.middle, other.unit, first.unit)
        least = _ROUNDED_LEAST[size_of(first.unit)] / all_units()[first.unit].in_base
        if abs(again - first.middle) > max(first.middle * _ROUNDED_SHARE, least):
            raise Unreadable(
                f'"{show_amount(first)}" and "{show_amount(other)}" are not the same amount.',
                "Write the one that is right, or correct the other.",
            )
