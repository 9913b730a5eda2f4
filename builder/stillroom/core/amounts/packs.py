"""A pack as a shop sells it: "700 ml for 14.50", "50 or more for 0.48 each".

Leaves out what is bought of them: buying.py.
"""

from __future__ import annotations

import re
from fractions import Fraction

from stillroom.core.amounts.money import parse_money
from stillroom.core.amounts.quantities import Amount, parse_leading_amount
from stillroom.core.amounts.units import System, base_size
from stillroom.core.words.problems import Unreadable, say_written

_PACK = re.compile(
    r"^(?P<size>.+?)(?:\s+(?:for|für|pour|por|voor)\s+|\s*=\s*)(?P<price>\S.*?)"
    r"(?P<each>\s+(?:each|apiece|je))?$",
    re.IGNORECASE,
)
_AT_LEAST = re.compile(r"^(?P<count>\d{1,9})\s+or\s+more(?:\s+of\s+(?P<size>.+))?$", re.IGNORECASE)
_HOW_TO_WRITE = 'Write "700 ml for 14.50", "12 for 7.20" or "50 or more for 0.48 each".'
_LARGEST_PACK = 1_000_000  # g, ml or pieces: a tonne


def parse_pack(
    written: object, currency: str = "GBP", system: System = "metric", language: str = "en_GB"
) -> tuple[Amount, Fraction, int]:
    """Read a pack as typed: its amount, its price, and from how many on the price holds.

    The price is read as its language writes money, and so is the size: "0,7 l für 14,50".

    >>> amount, price, at_least = parse_pack("700 ml for 14.50")
    >>> (amount.low, amount.unit, price, at_least)
    (Fraction(700, 1), 'ml', Fraction(29, 2), 1)
    >>> parse_pack("50 or more for 0.48 each")[1:]
    (Fraction(12, 25), 50)
    """
    text = str(written) if isinstance(written, str | int | float) else ""
    found = _PACK.match(" ".join(text.split()))
    if not found:
        raise Unreadable(f"{say_written(written)} is not a pack with its price.", _HOW_TO_WRITE)
    several = _AT_LEAST.match(found["size"])
    at_least = int(several["count"]) if several else 1
    size_text = (several["size"] or "1") if several else found["size"]
    if bool(found["each"]) != bool(several) or at_least < 1:
        raise Unreadable(f'"{text}" does not say for how many it holds.', _HOW_TO_WRITE)
    amount, rest = parse_leading_amount(_with_point(size_text), system)
    if amount is None or rest or amount.low <= 0 or amount.low != amount.high:
        raise Unreadable(f'"{size_text}" is not the size of a pack.', _HOW_TO_WRITE)
    if amount.low * base_size(amount.unit) > _LARGEST_PACK or at_least > _LARGEST_PACK:
        raise Unreadable(
            f'"{size_text}" is more than a shop sells.', "Look whether it has too many noughts."
        )
    return amount, parse_money(found["price"], currency, language), at_least


def _with_point(size: str) -> str:
    """Return "0,7 l" as "0.7 l": no shop sells packs by the thousand."""
    return re.sub(r"^(\d{1,3}),(\d{1,2})(?!\d)", r"\1.\2", size)
