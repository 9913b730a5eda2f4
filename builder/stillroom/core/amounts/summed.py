"""An amount said in two measures, "1 lb 6 oz", as one; a plain amount as it is.

Leaves out the lines of recipes, which say such things in more ways: core/lines.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from stillroom.core.amounts.quantities import Amount, parse_leading_amount
from stillroom.core.amounts.units import System, base_size, convert, size_of
from stillroom.core.words.problems import Unreadable

MOST: Final = 1_000_000  # g, ml or pieces: a tonne


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


def refuse_too_much(amount: Amount, said: str, where: str = "a house holds") -> None:
    """Raise Unreadable for more than a tonne of anything: a slip of the pen.

    >>> refuse_too_much(Amount(Fraction(5), Fraction(5), "kg"), "5 kg")
    """
    if amount.high * base_size(amount.unit) > MOST:
        what = f'"{said}" is more than {where}.'
        raise Unreadable(what, "Look whether it has too many noughts.")


_MEASURED = ("mass", "volume")
