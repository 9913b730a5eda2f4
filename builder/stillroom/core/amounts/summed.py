"""An amount said in two measures, "1 lb 6 oz", as one; a plain amount as it is.

Leaves out the lines of recipes, which say such things in more ways: core/lines.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from stillroom.core.amounts.quantities import Amount, parse_leading_amount
from stillroom.core.amounts.units import System, convert, size_of


def take_amount(text: str, system: System = "metric") -> tuple[Amount | None, str]:
    """Split "1 lb 6 oz butter" into its amount, in the first measure, and what follows.

    The second is of the same sort and less than one of the first: else it is none of the amount.

    >>> take_amount("1 kg 200 g sugar")
    (Amount(low=Fraction(6, 5), high=Fraction(6, 5), unit='kg', noun='', about=False), 'sugar')
    >>> take_amount("500 g 2 eggs")[1]
    '2 eggs'
    """
    amount, rest = parse_leading_amount(text, system)
    if amount is None or not rest[:1].isdecimal() or size_of(amount.unit) not in _MEASURED:
        return amount, rest
    finer, behind = parse_leading_amount(rest, system)
    if finer is None or finer.low != finer.high or size_of(finer.unit) != size_of(amount.unit):
        return amount, rest
    more = convert(finer.low, finer.unit, amount.unit)
    if not 0 < more < Fraction(1):
        return amount, rest
    return replace(amount, low=amount.low + more, high=amount.high + more), behind


_MEASURED = ("mass", "volume")
