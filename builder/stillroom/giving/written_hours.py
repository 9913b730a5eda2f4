"""Hours as a person says them: "2", "1h30", "90 minutes", "half an hour", "3 Stunden".

Leaves out of which week or month: written.py and written_time.py.
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Any

from stillroom.core.amounts.quantities import parse_number
from stillroom.core.words.problems import Unreadable

_HOUR = r"(?:h|hrs?|hours?|std\.?|stunden?|heures?|horas?|or[ae]|uur|uren)"
_MINUTE = r"(?:m|mins?\.?|minutes?|minuten|minutos?|minut[io]|')"
# "1h30", "1 hour 30 minutes", "1:30"
_BOTH = re.compile(
    rf"^(?P<hours>\d{{1,3}})\s*(?:{_HOUR}|:)\s*(?:and\s+|und\s+|et\s+)?(?P<minutes>[0-5]\d)"
    rf"\s*(?:{_MINUTE})?$",
    re.IGNORECASE,
)
_HOURS = re.compile(rf"^(?P<number>.+?)\s*{_HOUR}$", re.IGNORECASE)
_MINUTES = re.compile(rf"^(?P<number>\d{{1,4}})\s*{_MINUTE}$", re.IGNORECASE)
_SAID = {
    "half an hour": Fraction(1, 2),
    "an hour": Fraction(1),
    "an hour and a half": Fraction(3, 2),
    "eine halbe stunde": Fraction(1, 2),
    "anderthalb stunden": Fraction(3, 2),
    "une demi-heure": Fraction(1, 2),
    "una hora y media": Fraction(3, 2),
    "mezz'ora": Fraction(1, 2),
    "een half uur": Fraction(1, 2),
    "none": Fraction(0),
}
_NUMBERS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


def hours_said(value: Any) -> Fraction | None:
    """Return hours, None for what is none; a comma before one figure stands before the tenth.

    >>> [str(hours_said(said)) for said in ("1h30", "90 min", "two hours", "1,5", 3)]
    ['3/2', '3/2', '2', '3/2', '3']
    >>> hours_said("a few"), hours_said("2-3")
    (None, None)
    """
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        return None
    text = " ".join(str(value).split()).lower().replace("’", "'")
    if text in _SAID:
        return _SAID[text]
    if both := _BOTH.match(text):
        return int(both["hours"]) + Fraction(int(both["minutes"]), 60)
    if minutes := _MINUTES.match(text):
        return Fraction(int(minutes["number"]), 60)
    hours = _HOURS.match(text)
    number = hours["number"] if hours else text
    if hours and number in _NUMBERS:
        return Fraction(_NUMBERS.index(number) + 1)
    try:
        return parse_number(re.sub(r"^(\d{1,3}),(\d)$", r"\1.\2", number))
    except Unreadable:
        return None
