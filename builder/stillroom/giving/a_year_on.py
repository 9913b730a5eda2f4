"""The days of a list, a year on: last posting days, days off, the day a household opens its basket.

Each moves by 52 weeks, as giving day does, so that the weekday stays. Nobody has named next year's:
the head of the new list says that they are to be looked up. Leaves out the closing: closing.py.
"""

from __future__ import annotations

from datetime import date, timedelta
from itertools import pairwise
from typing import Any, Final

from stillroom.giving.as_written import said_key
from stillroom.giving.model import GivingList
from stillroom.giving.written import read_day
from stillroom.giving.written_time import read_days_off

_A_YEAR: Final = timedelta(weeks=52)
_ONE: Final = timedelta(days=1)


def has_days(giving: GivingList) -> bool:
    """Whether a list names days that move."""
    posting = any(service.last_day for service in giving.posting)
    return posting or bool(giving.days_off) or any(one.opens for one in giving.households)


def move_days(data: Any, households: list[Any], country: str) -> None:
    """Move the days in the data of a list that was read."""
    posting = data.get(said_key("list", data, "posting"))
    rows = [(row, said_key("service", row, "last day")) for row in _rows(posting)]
    rows += [(row, said_key("household", row, "opens")) for row in _rows(households)]
    for row, key in rows:
        if row.get(key):
            row[key] = read_day(row[key], country) + _A_YEAR
    off = said_key("list", data, "days off")
    if data.get(off):
        data[off] = _spans(sorted(read_days_off(data[off], country)))


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
