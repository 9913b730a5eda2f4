"""Days and lengths of time in words, the same whatever the machine's own language is.

What is not here: words for a whole timeline (timeline_words.py); date marks on labels
(labelling.py follows the law's forms).
"""

from __future__ import annotations

from datetime import date
from typing import Final

DAY_NAMES: Final = (
    "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday",
)  # fmt: skip
MONTH_NAMES: Final = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def say_day(day: date) -> str:
    """Return a day in full.

    >>> say_day(date(2027, 12, 18))
    'Saturday 18 December 2027'
    """
    return f"{DAY_NAMES[day.weekday()]} {day.day} {MONTH_NAMES[day.month - 1]} {day.year}"


def say_day_short(day: date) -> str:
    """Return a day without its weekday, the month cut to three letters ("Sept" but for one).

    >>> say_day_short(date(2027, 12, 18))
    '18 Dec 2027'
    """
    return f"{day.day} {short_month(day.month)} {day.year}"


def short_month(month: int) -> str:
    """Return a month's short name: "Jan", "Sept"."""
    name = MONTH_NAMES[month - 1]
    return name if len(name) <= 4 else ("Sept" if month == 9 else name[:3])


def say_minutes(minutes: int) -> str:
    """Return hands-on time as a cook says it, hours and quarters.

    >>> say_minutes(95), say_minutes(40), say_minutes(60)
    ('1 h 35 min', '40 min', '1 h')
    """
    hours, rest = divmod(minutes, 60)
    parts = ([f"{hours} h"] if hours else []) + ([f"{rest} min"] if rest or not hours else [])
    return " ".join(parts)
