"""The size of a thing beside its name, which is no amount of it.

"6 lbs of 4- to 5-inch pickling cucumbers", "2- to 2½-inch diameter beets", "1-inch slices".
Leaves out lengths that are amounts, "20 cm ribbon": line_amounts.py.
"""

from __future__ import annotations

import re
from dataclasses import replace

from stillroom.core.amounts.quantities import Unmeasured
from stillroom.core.amounts.units import counted_nouns, size_of
from stillroom.core.lines.amounts import Measured
from stillroom.core.lines.parts_of_line import LineReading, after_of, split_food
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

_NUMBER = r"(?:\d+(?:[.,]\d+)?(?:[\s-]\d/\d+|\s?[½⅓⅔¼¾⅛])?|\d/\d+|[½⅓⅔¼¾⅛])"
_ENDS = rf"{_NUMBER}(?:-?\s*(?:to|or|by|–|-|x|×)\s*{_NUMBER})?"
_ACROSS = r"(?:in\s+diameter|diameter|long|thick|wide|across|square|round|deep)"
_SIZE_FIRST = late_regex(
    rf"(?P<size>{_ENDS}-?\s?(?:inch(?:es)?|cm|mm|in)\b(?:[-\s]{_ACROSS})?)\s+(?=[a-z])",
    re.IGNORECASE,
)
_SIZE_LAST = late_regex(
    rf"\s+(?P<size>{_ENDS}\s*(?:inch(?:es)?|cm|mm)(?:\s+{_ACROSS})?)$", re.IGNORECASE
)
_BEGINS_IN_SIZE = late_regex(rf"{_ENDS}-?\s?(?:inch|cm|mm|in)\b", re.IGNORECASE)
_OF_IT = late_regex(rf"\s*{_ACROSS}\b", re.IGNORECASE)
_FEW = 6  # "20 cm ribbons" are no twenty
_COUNT_GLUED = late_regex(r"(?P<count>\d+)(?P<part>[½⅓⅔¼¾⅛])-(?:inch|cm)", re.IGNORECASE)


def put_size_apart(reading: LineReading) -> LineReading:
    """Put the size of a thing into the note: "6 lbs of 4- to 5-inch pickling cucumbers"."""
    if not re.search(r"\d|[½⅓⅔¼¾⅛]", reading.item):
        return reading
    size = _SIZE_FIRST.match(reading.item) or _SIZE_LAST.search(reading.item)
    if size is None:
        return reading
    note = ", ".join(part for part in (size["size"], reading.note) if part)
    item = f"{reading.item[: size.start()]} {reading.item[size.end() :]}".strip()
    return replace(reading, item=item, note=note)


def read_size_alone(text: str, measured: Measured) -> LineReading | None:
    """Read "4- to 5-inch cucumbers": of such a size, how many is not said. Raises Unreadable."""
    one = measured.each or measured.amount
    if not one.unit or size_of(one.unit) != "length":
        return None
    written = text[measured.start : measured.end]
    counted = measured.amount.high > 1 or not _BEGINS_IN_SIZE.match(written)
    if measured.each and counted:  # "six 10-inch tortillas"
        return None
    across = _OF_IT.match(text, measured.end)
    end = across.end() if across else measured.end
    reading = split_food(text, after_of(text, end, True), None)
    noun = measured.amount.noun
    several = _is_several(written, noun) if noun else _names_several(reading.item)
    if not reading.item or not several:
        return None
    if not ("-" in written or across):
        _refuse_count_or_size(text, measured)
        return None
    glued = _COUNT_GLUED.match(written)
    if glued:
        raise Unreadable(
            f'"{text.strip()}" could be {glued["count"]} of them or a size of '
            f"{glued['count']}{glued['part']}.",
            f'Write "{glued["count"]} pieces, {glued["part"]} inch thick", and what they are of.',
        )
    note = ", ".join(part for part in (text[measured.start : end].strip(), reading.note) if part)
    return replace(reading, amount=Unmeasured("as needed"), note=note)


def _refuse_count_or_size(text: str, measured: Measured) -> None:
    """Ask about "3 inch cinnamon sticks": three of an inch, or some of three inches."""
    own = measured.amount
    joined = re.match(r"\s+(?:of|de|di|van)\b|\s*[,;(]", text[measured.end :])
    if measured.each or measured.also or joined or own.low != own.high or own.low.denominator > 1:
        return
    if own.low > _FEW or not re.match(r"\s*\d+\s+(?:inch|cm)\b", text[measured.start :]):
        return
    said = text[measured.start : measured.end].strip()
    raise Unreadable(
        f'"{said}" could be how many or how long.',
        f'Write "{own.low} pieces of cinnamon, 1 inch", or "1 piece of cinnamon, {said}".',
    )


def _is_several(written: str, noun: str) -> bool:
    one, many = counted_nouns()[noun]
    return one != many and written.lower().endswith(many.lower())


def _names_several(item: str) -> bool:
    head = re.split(r"\s(?:of|from|with|in)\s", item)[0]
    return bool(re.search(r"[^s]s$", head))
