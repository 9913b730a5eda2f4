"""The days of a giving list, as its model takes them: each read as the book's country says it.

Leaves out how a day is read: written.py.
"""

from __future__ import annotations

from datetime import date
from typing import Annotated, Any

from pydantic import PlainValidator, ValidationInfo, WithJsonSchema

from stillroom.core.words.problems import Unreadable
from stillroom.giving.written import read_day, read_day_near
from stillroom.giving.written_time import read_days_off


def _country(info: ValidationInfo) -> str:
    return str((info.context or {}).get("country", "GB"))


def _day(value: Any, info: ValidationInfo) -> date:
    if isinstance(value, list):
        what = f"{len(value)} days are no one day." if value else "No day is said."
        mend = 'Write one: "2027-12-18". Where you give on several, make a list for each.'
        raise Unreadable(what, mend)
    return read_day(value, _country(info))


def _day_near(value: Any, info: ValidationInfo) -> date:
    return read_day_near(value, (info.context or {}).get("giving day"), _country(info))


def read_off_days(value: Any, info: ValidationInfo) -> frozenset[date]:
    """Return the days on which nothing is done; raises Unreadable."""
    return read_days_off(value, _country(info))


_A_DAY = WithJsonSchema({"type": "string", "format": "date"})
Day = Annotated[date, PlainValidator(_day), _A_DAY]
DayNear = Annotated[date, PlainValidator(_day_near), _A_DAY]
"""A day about the giving day: its year need not be said."""
