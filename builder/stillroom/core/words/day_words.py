"""Days and lengths of time in words, the same whatever the machine's own language is.

What is not here: words for a whole timeline (timeline_words.py); date marks on labels
(labelling.py follows the law's forms).
"""

from __future__ import annotations

from datetime import date
from typing import Final

from stillroom.core.words.kept_apart import kept_apart
from stillroom.core.words.said import OWN, Said, read_room, spoken

_say: Final = Said("stillroom.core.words", "words")
# names by which a day or a month may be written in a book's settings, whatever is said
DAY_NAMES: Final = tuple(read_room("stillroom.core.words", OWN)["words"]["weekdays"])
MONTH_NAMES: Final = tuple(read_room("stillroom.core.words", OWN)["words"]["months"])


# a book names the same days on every page
_DAYS: Final = 4096


def months_through(first: int, last: int) -> tuple[int, ...]:
    """Return the months, from 1, from one to another, over the turn of the year if need be.

    >>> months_through(7, 9), months_through(12, 2), months_through(10, 10)
    ((7, 8, 9), (12, 1, 2), (10,))
    """
    return tuple((first - 1 + step) % 12 + 1 for step in range((last - first) % 12 + 1))


def say_month(month: int) -> str:
    """Return a month's name, counted from 1.

    >>> say_month(9)
    'September'
    """
    return str(_say.phrases["months"][month - 1])


def short_month(month: int) -> str:
    """Return a month's short name: "Jan", "Sept"."""
    return str(_say.phrases["months_short"][month - 1])


@kept_apart(spoken, _DAYS)
def say_day(day: date) -> str:
    """Return a day in full.

    >>> say_day(date(2027, 12, 18))
    'Saturday 18 December 2027'
    """
    weekday = _say.phrases["weekdays"][day.weekday()]
    return _say("day", weekday=weekday, day=day.day, month=say_month(day.month), year=day.year)


@kept_apart(spoken, _DAYS)
def say_day_short(day: date) -> str:
    """Return a day without its weekday, the month cut short.

    >>> say_day_short(date(2027, 12, 18))
    '18 Dec 2027'
    """
    return _say("day_short", day=day.day, month=short_month(day.month), year=day.year)


@kept_apart(spoken, _DAYS)
def say_day_and_month(day: date) -> str:
    """Return a day without its year.

    >>> say_day_and_month(date(2027, 12, 18))
    '18 Dec'
    """
    return _say("day_and_month", day=day.day, month=short_month(day.month))


def say_minutes(minutes: int) -> str:
    """Return hands-on time as a cook says it, hours and quarters.

    >>> say_minutes(95), say_minutes(40), say_minutes(60)
    ('1 h 35 min', '40 min', '1 h')
    """
    hours, rest = divmod(minutes, 60)
    if not hours:
        return _say("minutes", minutes=rest)
    if not rest:
        return _say("hours", hours=hours)
    return _say("hours_and_minutes", hours=hours, minutes=rest)
