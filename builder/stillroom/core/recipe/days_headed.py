"""Days that a method is headed by or goes on with: "Day 3:", "Tag 2:", "Le lendemain, égoutter".

The nights between them are waited for, though no length is said. Leaves out what else is said of
waiting there: method_times.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Any, Final

from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import any_word, late_regex

_MOST: Final = 60
# "am 2. Tag": no sentence ends there
NUMBERED_DAY: Final = late_regex(r"\b(\d{1,2})\.\s*(Tag|dagen|dag|Woche|uke)\b", re.IGNORECASE)
_WEEK: Final = 7
_LIST_MARKS: Final = r"[\s*_#>•–—-]*"
_SET_APART: Final = r"(?=\s*(?:$|[:.,*_()–—-]|[^\W\d_]))"
_NEXT_LEAD: Final = r"(?:(?:then|and|dann|und|puis|et|luego|y|poi|e|dan|en|sedan|och)\s+)?"


@dataclass
class Calendar:
    """The day under whose heading a method stands, and how many days its waits were by then."""

    day: int = 1
    last: int = 1
    waited: int = 0
    heading: str = ""

    def nights_before(self, heading: str, sentence: str, waits: bool, waited: int) -> int:
        """Return the nights to count before a sentence, beyond those that its method waits.

        `heading` is that of its step, `waited` the days that all waits before it take together; a
        sentence that `waits` itself says its own length.
        """
        days = headed_days(heading) if heading != self.heading else None
        days = headed_days(sentence) or days
        self.heading = heading
        if days is None and (waits or not goes_on_next_day(sentence)):
            return 0
        nights = (days[0] if days else self.day + 1) - self.day - (waited - self.waited)
        self.day, self.last = days or (self.day + 1, max(self.last, self.day + 1))
        self.waited = waited + max(nights, 0)
        return nights

    def nights_left(self, waited: int) -> int:
        """Return the nights of the last heading that no wait below it takes."""
        return self.last - self.day - (waited - self.waited)


def headed_days(sentence: str) -> tuple[int, int] | None:
    """Return the first and last day of which a sentence is or begins the heading; None for others.

    >>> headed_days("Day 3"), headed_days("**Tag 2**"), headed_days("Days 2-5"), headed_days("Boil")
    ((3, 3), (2, 2), (2, 5), None)
    >>> headed_days("Deuxième jour"), headed_days("Week 2"), headed_days("3 days later")
    ((2, 2), (8, 8), None)
    """
    found = _heading().match(sentence)
    if found is None:
        return None
    parts = found.groupdict()
    number = parts["number"] or parts["first"]
    low = int(number) if number else _ordinals()[(parts["ordinal"] or "").lower()]
    high = int(parts["last"]) if parts["last"] else low
    if not 0 < low <= high <= _MOST:
        return None
    if (parts["unit"] or parts["unit_behind"]).lower() in _list("weeks"):
        return (low - 1) * _WEEK + 1, (high - 1) * _WEEK + 1
    return low, high


def goes_on_next_day(sentence: str) -> bool:
    """Whether a sentence tells what is done on the next day, and not how it is by then.

    >>> goes_on_next_day("Next day, drain"), goes_on_next_day("Am nächsten Tag abgießen")
    (True, True)
    >>> goes_on_next_day("It is better the next day"), goes_on_next_day("The next day it is best")
    (False, False)
    """
    return bool(_next_day().search(sentence)) and not _any_of("by_then").search(sentence)


@cache
def _heading() -> re.Pattern[str]:
    units = "|".join(map(re.escape, (*_list("days"), *_list("weeks"))))
    ordinals = "|".join(map(re.escape, sorted(_ordinals(), key=len, reverse=True)))
    lead = "|".join(map(re.escape, _list("lead")))
    return re.compile(
        rf"{_LIST_MARKS}(?:(?:{lead})\s+)?(?:(?P<unit>{units})\s+(?P<first>\d{{1,2}})"
        rf"(?:\s*(?:[-–]|to|bis|à|a|tot|till)\s*(?P<last>\d{{1,2}}))?\b"
        rf"|(?:(?P<number>\d{{1,2}})(?:st|nd|rd|th|er|re|e|ème|eme|º|°|de|ste|:a|:e)"
        rf"|(?P<ordinal>{ordinals}))\s+(?P<unit_behind>{units})\b){_SET_APART}",
        re.IGNORECASE,
    )


@cache
def _next_day() -> re.Pattern[str]:
    said = "|".join(map(re.escape, sorted(_list("next_day"), key=len, reverse=True)))
    return re.compile(
        rf"(?:^|[,;]\s|\s(?=(?:and|und|et|y|e|en|och)\s)){_LIST_MARKS}{_NEXT_LEAD}(?:{said})\b",
        re.I,
    )


@cache
def _ordinals() -> dict[str, int]:
    return {word: number for number, words in _table()["ordinals"].items() for word in words}


@cache
def _table() -> dict[str, Any]:
    table: dict[str, Any] = read_data("days_headed.yml")
    return table


def _list(name: str) -> list[str]:
    return list(_table()[name])


@cache
def _any_of(name: str) -> re.Pattern[str]:
    return any_word(_list(name))
