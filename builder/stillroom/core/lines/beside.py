"""What stands close beside a measure: "or two", "plus a pinch", "¼-inch-thick", "30 cm x 30 cm".

Leaves out the measures themselves: line_measures.py, and their sums and pairs: line_amounts.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import System, counted_nouns, size_of
from stillroom.core.lines.measures import OR_MORE, read_noun, read_qualifier, read_unit
from stillroom.core.lines.numbers import Marks, read_number
from stillroom.core.words.patterns import late_regex

_OR_TWO = late_regex(r"\s+or\s+(?:(?P<two>two|2)|(?P<three>three|3))\b", re.IGNORECASE)
_A_PINCH = late_regex(
    r"\s+(?:plus|and|\+|&)\s+(?:a|an|another)\s+(?:(?:good|generous|large|big|small|scant|little|tiny)\s+)?"
    r"(?:pinch|dash|knob|splash|drop|handful|sprinkle|sprinkling|squeeze|drizzle|grating|bit|smidgen)\b(?!,)",
    re.IGNORECASE,
)
_SIZE = r"(?:small|medium|large|big|fat|thick|thin|regular-sized?|medium-sized|extra-large)"
_STATE = (
    rf"(?:{_SIZE}|fresh|dried|dry|frozen|canned|tinned|bottled|cooked|uncooked"
    r"|raw|ripe|whole|ground|salted)"
)
# "1 medium or 2 small onions", "1 tablespoon fresh or 1 teaspoon dried thyme"
_OR_SMALLER = late_regex(
    rf"(?P<said>(?:\s+{_STATE})+\s+or\s+(?:[0-9½⅓⅔¼¾⅛][\w½⅓⅔¼¾⅛./ -]{{0,28}}?"
    rf"|one|two|three|four|six)\s+{_STATE}(?:\s+{_STATE})*)(?=\s+[a-z])",
    re.IGNORECASE,
)
# "6 ¼-inch-thick slices" are six, "1 ½-inch piece" is one of an inch and a half
_CUT = late_regex(
    r"(?P<count>\d+)\s+(?P<size>(?:[½⅓⅔¼¾⅛]|\d+/\d+))-(?P<unit>inch|in|cm)(?P<thick>-(?:thick|long|wide|square))?(?:\s*\([^)]*\))?\s+"
    r"(?=(?P<rest>[a-z].*))",
    re.IGNORECASE,
)
_CLOTH = late_regex(
    r"(?P<said>\d+(?:[.,]\d+)?\s*(?P<unit>cm|mm|m|inches|inch|in)\s*(?:[x×]|by)\s*"
    r"\d+(?:[.,]\d+)?\s*(?:cm|mm|m|inches|inch|in)\b)(?=\s+[a-z])",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class Beside:
    """An amount with what stood beside it, and where that ends."""

    amount: Amount
    end: int
    said: str = ""
    each: Amount | None = None


def read_said_beside(text: str, at: int, amount: Amount) -> Beside | None:
    """Read "a sprig or two", "1 cup or more", "1 tsp plus a pinch", "1 medium or 2 small"."""
    two = _OR_TWO.match(text, at) if amount.low == amount.high == 1 else None
    if two and (amount.noun or amount.unit):
        high = Fraction(2 if two["two"] else 3)
        return Beside(replace(amount, high=high), two.end())
    for pattern in (OR_MORE, _A_PINCH):
        found = pattern.match(text, at)
        if found:
            return Beside(amount, found.end(), " ".join(found[0].split()))
    smaller = _OR_SMALLER.match(text, at)
    if smaller:
        return Beside(amount, smaller.end(), " ".join(smaller["said"].split()))
    return None


def read_cut_to_size(text: str, at: int, system: System, marks: Marks) -> Beside | None:
    """Read "6 ¼-inch-thick slices" as six; what follows says whether they are several."""
    cut = _CUT.match(text, at)
    if cut is None:
        return None
    words = cut["rest"].split(",")[0].split()
    nouns = counted_nouns()
    counted = next((word for word in words if word.lower() in nouns), words[0])
    one = nouns.get(counted.lower(), ("", ""))[0]
    several = counted.lower() != one if one else counted.lower().endswith("s")
    count = Fraction(int(cut["count"]))
    if not (several and count > 1) and not (count == 1 and cut["thick"]):
        return None
    size = read_number(text, cut.start("size"), marks)
    unit = read_unit(text, cut.start("unit"), system)
    assert size is not None
    assert unit is not None
    each = Amount(size[0], size[0], unit[0])
    between = read_qualifier(text, cut.end())
    noun = read_noun(text, between.end if between else cut.end())
    said = between.said if between else ""
    if noun is None:
        return Beside(Amount(count, count), cut.end(), "", each)
    return Beside(Amount(count, count, noun=noun[0]), noun[1], said, each)


def read_sized_cloth(text: str, at: int, system: System, marks: Marks) -> Beside | None:
    """Read "30 cm x 30 cm cotton cloth": one piece, its size said of it."""
    cloth = _CLOTH.match(text, at)
    unit = read_unit(text, cloth.start("unit"), system) if cloth else None
    if cloth is None or unit is None or size_of(unit[0]) != "length":
        return None
    noun = read_noun(text, cloth.end() + 1)
    one = Fraction(1)
    if noun:
        return Beside(Amount(one, one, noun=noun[0]), noun[1], cloth["said"])
    return Beside(Amount(one, one), cloth.end(), cloth["said"])
