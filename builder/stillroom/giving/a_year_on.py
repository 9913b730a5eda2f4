"""The days of a list, a year on: last posting days, days off, the day a household opens its basket.

Each moves by 52 weeks, as giving day does, so that the weekday stays; but who opens theirs on
Christmas Eve opens it on Christmas Eve. Nobody has named next year's: the head of the new list says
that they are to be looked up. Leaves out the closing: closing.py.
"""

from __future__ import annotations

from datetime import date, timedelta
from itertools import pairwise
from typing import Any, Final

from stillroom.giving.list_words import said_key
from stillroom.giving.model import GivingList
from stillroom.giving.written import read_day_near
from stillroom.giving.written_time import read_days_off

_A_YEAR: Final = timedelta(weeks=52)
_ONE: Final = timedelta(days=1)
# Saint Nicholas, Christmas and the days about it, New Year, Epiphany: month and day
_FEASTS: Final = frozenset({(12, 6), (12, 24), (12, 25), (12, 26), (12, 31), (1, 1), (1, 6)})


def has_days(giving: GivingList) -> bool:
    """Whether a list names days that move."""
    posting = any(service.last_day for service in giving.posting)
    return posting or bool(giving.days_off) or any(one.opens for one in giving.households)


def move_days(data: Any, households: list[Any], giving_day: date, country: str) -> None:
    """Move the days in the data of a list that was read; `giving_day` is the old one."""
    posting = data.get(said_key("list", data, "posting"))
    for row in _rows(posting):
        if row.get(key := said_key("service", row, "last day")):
            row[key] = read_day_near(row[key], giving_day, country) + _A_YEAR
    for row in _rows(households):
        if row.get(key := said_key("household", row, "opens")):
            row[key] = open_a_year_on(read_day_near(row[key], giving_day, country))
    off = said_key("list", data, "days off")
    if data.get(off):
        data[off] = _spans(sorted(read_days_off(data[off], country)))


def open_a_year_on(day: date) -> date:
    """Return the day on which a basket is opened, a year on: a feast stays on its own.

    >>> open_a_year_on(date(2027, 12, 24)), open_a_year_on(date(2027, 12, 19))
    (datetime.date(2028, 12, 24), datetime.date(2028, 12, 17))
    """
    return day.replace(year=day.year + 1) if (day.month, day.day) in _FEASTS else day + _A_YEAR


def _rows(written: Any) -> list[Any]:
    rows = list(written.values()) if isinstance(written, dict) else written
    return [row for row in rows if isinstance(row, dict)] if isinstance(rows, list) else []


def _spans(days: list[date]) -> list[Any]:
    """Return days a year on, each run of them as one line.

    >>> _spans([date(2027, 8, 2), date(2027, 8, 3), date(2027, 9, 26)])
    ['31 July 2028 to 1 August 2028', datetime.date(2028, 9, 24)]
    """
    begins = [days[0], *(later for one, later in pairwise(days) if later - one > _ONE)]
    ends = [*(one for one, later in pairwise(days) if later - one > _ONE), days[-1]]
    return [_span(one + _A_YEAR, other + _A_YEAR) for one, other in zip(begins, ends, strict=True)]


def _span(first: date, last: date) -> Any:
    if first == last:
        return first
    return " to ".join(f"{day.day} {day:%B %Y}" for day in (first, last))
