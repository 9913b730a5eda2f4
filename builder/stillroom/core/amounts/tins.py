"""A tin with a size among the vessels, and which tin another batch wants to stand as high in.

By area: the browser's tins.js says the same. Leaves out volume: what_stays.py.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.said import Said

_say = Said("stillroom.core.amounts", "amounts")

_TIN = late_regex(
    r"^(?:an? |one )?(?P<across>\d{1,9}(?:\.\d{1,9})?)"
    r"(?:\s*(?:cm)?\s*(?:x|×|by)\s*(?P<along>\d{1,9}(?:\.\d{1,9})?))?"
    r"[\s-]*(?P<unit>cm|inch(?:es)?|in)\b[\s-]*(?P<words>.*\b(?:tin|pan|dish|mould|tray)\b.*)$",
    re.IGNORECASE,
)
QUARTER_CIRCLE = Fraction(math.pi).limit_denominator(10**6) / 4
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


def read_own_tin(text: str) -> Tin | None:
    """Read the tin a cook has: "24 cm round tin", or shorter "24 cm round"; None for no tin."""
    return read_tin(text) or read_tin(_say("tin", size=text.strip()))


def area_cm2(tin: Tin) -> Fraction:
    """Return the area of a tin's bottom; one across is round when its words say so, else square.

    >>> round(float(area_cm2(read_tin("20 cm round tin"))))
    314
    """
    cm = Fraction(254, 100) if tin.unit == "inch" else Fraction(1)
    if "round" in tin.words.lower() and not tin.along:
        return QUARTER_CIRCLE * (tin.across * cm) ** 2
    return tin.across * (tin.along or tin.across) * cm**2


def pan_factor(own: Tin, other: Tin) -> Fraction:
    """Return by how much a recipe grows to stand as high in another tin.

    >>> pan_factor(read_tin("20 cm square tin"), read_tin("30 x 20 cm tin"))
    Fraction(3, 2)
    """
    return area_cm2(other) / area_cm2(own)


def tin_note(tin: Tin | None, factor: Fraction) -> str:
    """Say what tin a batch wants to stand as high as written; "" for the same tin.

    >>> tin_note(read_tin("20 cm round tin"), Fraction(2))
    'To stand as high it wants 2 times the area of the 20 cm round tin: 2 of them, or one of 28 cm.'
    """
    if tin is None or factor == 1:
        return ""
    choices = [_say("of_them", count=factor)] if factor.denominator == 1 else []
    if tin.along:
        square = _say("square_cm" if tin.unit == "cm" else "square_inches")
        per = 1 if tin.unit == "cm" else Fraction(254, 100) ** 2
        area = show_decimal(area_cm2(tin) * factor / per, 0)
        choices.append(_say("one_of", size=area, unit=square))
    else:
        across = _across(tin, factor)
        if across == tin.across:
            return ""
        if across:
            choices.append(_say("one_of", size=across, unit=tin.unit))
    if not choices:
        choices.append(_say("share_it"))
    return _say(
        "to_stand_as_high", times=show_decimal(factor), tin=tin.words,
        choices=_say("or_else").join(choices),
    )  # fmt: skip


def _across(tin: Tin, factor: Fraction) -> int:
    """Return the nearest whole size of the same shape; 0 when no oven takes it."""
    for size in range(1, WIDEST[tin.unit] + 1):
        if factor <= pan_factor(tin, replace(tin, across=size + Fraction(1, 2))):
            return size
    return 0
