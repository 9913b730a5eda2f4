"""The months in which produce is to be had, as cooks name them: "September to November", "Sept".

What names no month ("autumn" lies half a year apart on the two halves of the earth) is refused.
Leaves out what a season does to dates: when/season.py.
"""

from __future__ import annotations

import re
from typing import Any, Final

from stillroom.core.words.day_words import MONTH_NAMES, months_through
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable, say_written

_SHORT: Final = "|".join(name[:3] for name in MONTH_NAMES)
_DAY: Final = r"(?:\d{1,2}(?:st|nd|rd|th)?)"
_MONTH: Final = (
    r"(?:(?:the|early|mid|late|beginning of|end of|middle of)[ -])*"
    rf"(?:{_DAY} (?:of )?)?({_SHORT})([a-z]*)\.?(?: {_DAY})?"
)
_ONE: Final = late_regex(_MONTH, re.IGNORECASE)
_RANGE: Final = late_regex(
    rf"(?:from )?{_MONTH}\s*(?:-|–|—|\bto\b|\buntil\b|\btill\b|\bthrough\b)\s*{_MONTH}",
    re.IGNORECASE,
)
_BETWEEN: Final = late_regex(r"\s*[,;/&]\s*(?:and\s+|or\s+)?|\s+(?:and|or)\s+", re.IGNORECASE)
_ALL: Final = late_regex(r"all (?:the )?year(?: round)?|any (?:time|month)|always", re.IGNORECASE)
_MEND: Final = 'Write the months: "September, October", or "September to November".'


def months_listed(value: Any) -> list[Any]:
    """Return months one by one, where they are named as a range or several in one line.

    >>> months_listed("September to November"), months_listed(["Dec - Feb", "June"])
    (['September', 'October', 'November'], ['December', 'January', 'February', 'June'])
    >>> months_listed("autumn")
    ['autumn']
    """
    if isinstance(value, list):
        return [month for one in value for month in months_listed(one)]
    text = value.strip() if isinstance(value, str) else ""
    if _ALL.fullmatch(text):
        return list(MONTH_NAMES)
    found = [_months_of(piece) for piece in _BETWEEN.split(text)]
    if not text or not all(found):
        return [value]
    return list(dict.fromkeys(month for months in found for month in months))


def read_month(value: Any) -> int:
    """Return the number of a month, January being 1.

    Raises:
        Unreadable: it is none.
    """
    if not isinstance(value, str) or value not in MONTH_NAMES:
        raise Unreadable(f"{say_written(value)} is not a month.", _MEND)
    return MONTH_NAMES.index(value) + 1


def _months_of(piece: str) -> list[str]:
    """Return the months of one piece of a line; none of what names none."""
    if one := _ONE.fullmatch(piece):
        name = _name(one[1], one[2])
        return [name] if name else []
    ends = _RANGE.fullmatch(piece)
    first, last = (_name(ends[1], ends[2]), _name(ends[3], ends[4])) if ends else ("", "")
    if not first or not last:
        return []
    begin, end = (MONTH_NAMES.index(name) + 1 for name in (first, last))
    return [MONTH_NAMES[month - 1] for month in months_through(begin, end)]


def _name(short: str, more: str) -> str:
    """Return a month by its name or by a shortened one; "" for "Septembre" or "Marching"."""
    said = f"{short}{more}".lower()
    whole = next(name for name in MONTH_NAMES if name.lower().startswith(short.lower()))
    is_it = said == whole.lower() or (len(said) <= 4 and whole.lower().startswith(said))
    return whole if is_it else ""
