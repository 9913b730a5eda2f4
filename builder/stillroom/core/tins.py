"""A tin with a size among the vessels, and which tin another batch wants to stand as high in.

By area, exactly: the browser's tins.js says the same. Leaves out volume: what_stays.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.quantities import show_decimal

_TIN = re.compile(
    r"^(?:an? |one )?(?P<across>\d+(?:\.\d+)?)"
    r"(?:\s*(?:cm)?\s*(?:x|×|by)\s*(?P<along>\d+(?:\.\d+)?))?"
    r"[\s-]*(?P<unit>cm|inch(?:es)?|in)\b[\s-]*(?P<words>.*\b(?:tin|pan|dish|mould|tray)\b.*)$",
    re.IGNORECASE,
)
WIDEST = {"cm": 40, "inch": 16}  # what goes into a household oven: common practice, no source


@dataclass(frozen=True)
class Tin:
    """One tin: across and, when it is oblong, along, in `unit` ("cm" or "inch")."""

    words: str
    unit: str
    across: Fraction
    along: Fraction | None = None


def read_tin(words: str) -> Tin | None:
    """Read "20 cm round tin" or "18 x 28 cm tin"; None for a vessel that is none of one size."""
    found = _TIN.match(words.strip())
    if not found or not Fraction(found["across"]):
        return None
    unit = "cm" if found["unit"].lower() == "cm" else "inch"
    along = Fraction(found["along"]) if found["along"] else None
    return Tin(words.strip(), unit, Fraction(found["across"]), along)


def find_tin(vessels: Sequence[str]) -> Tin | None:
    """Return the first tin with a size among the words of the vessels."""
    return next((tin for tin in map(read_tin, vessels) if tin), None)


def tin_note(tin: Tin | None, factor: Fraction) -> str:
    """Say what tin a batch wants to stand as high as written; "" for the same tin.

    >>> tin_note(read_tin("20 cm round tin"), Fraction(2))
    'To stand as high it wants 2 times the area of the 20 cm round tin: 2 of them, or one of 28 cm.'
    """
    if tin is None or factor == 1:
        return ""
    choices = [f"{factor} of them"] if factor.denominator == 1 else []
    if tin.along:
        area = show_decimal(tin.across * tin.along * factor, 0)
        choices.append(f"one of {area} {'cm²' if tin.unit == 'cm' else 'square inches'}")
    else:
        across = _across(tin, factor)
        if across == tin.across:
            return ""
        if across:
            choices.append(f"one of {across} {tin.unit}")
    if not choices:
        choices.append("share it among several")
    start = f"To stand as high it wants {show_decimal(factor)} times the area of the {tin.words}"
    return f"{start}: {', or '.join(choices)}."


def _across(tin: Tin, factor: Fraction) -> int:
    """Return the nearest whole size of the same shape; 0 when no oven takes it."""
    wanted = tin.across**2 * factor
    for size in range(1, WIDEST[tin.unit] + 1):
        if wanted <= (size + Fraction(1, 2)) ** 2:
            return size
    return 0
