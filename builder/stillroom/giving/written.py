"""Small things as a person writes them on a giving list: ages, days, hours, stock lines.

Each reader raises Unreadable with what to write instead.
"""

from __future__ import annotations

import re
from datetime import date
from fractions import Fraction
from typing import Any

from stillroom.core.amounts.quantities import Amount, parse_leading_amount, parse_number
from stillroom.core.recipe.model import MONTHS
from stillroom.core.when.giving_days import FIRST_YEAR, LAST_YEAR
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.problems import Unreadable, say_written


def read_day(value: Any) -> date:
    """Return a day written year first.

    >>> read_day("2027-12-18")
    datetime.date(2027, 12, 18)
    """
    if isinstance(value, date):
        return value
    try:
        day = date.fromisoformat(str(value).strip())
        if not FIRST_YEAR <= day.year <= LAST_YEAR:
            raise ValueError
        return day
    except ValueError:
        raise Unreadable(
            f"{say_written(value)} is not a day of the calendar.",
            'Write year, month, day: "2027-12-18".',
        ) from None


def read_hours(value: Any) -> dict[int, Fraction]:
    """Return the hours of each month (1-12); a month not named takes "every month", else none.

    An empty mapping sets no limit.

    >>> read_hours({"every month": 6, "december": 10})[12]
    Fraction(10, 1)
    """
    if not isinstance(value, dict):
        raise Unreadable(f"{say_written(value)} is not hours by month.", 'Write "every month: 6".')
    known = ["every month", *(name.lower() for name in MONTHS)]
    for key in value:
        if str(key).lower() not in known:
            raise Unreadable(f'"{key}" is not a month.', did_you_mean(str(key), known))
    said = {str(key).lower(): _hours(hours) for key, hours in value.items()}
    if not said:
        return {}
    usual = said.get("every month", Fraction(0))
    return {number: said.get(name, usual) for number, name in enumerate(known[1:], start=1)}


def _hours(value: Any) -> Fraction:
    hours = parse_number(str(value)) if isinstance(value, str | int | float) else None
    if hours is None or hours > 744:
        raise Unreadable(
            f"{say_written(value)} is not hours of a month.", 'Write "every month: 6".'
        )
    return hours


def read_stock_line(value: Any) -> tuple[Amount, str]:
    """Return the amount and the ingredient of a line such as "500 g caster sugar".

    >>> read_stock_line("500 g caster sugar")[1]
    'caster sugar'
    """
    amount, item = parse_leading_amount(str(value))
    if amount is None or not item or amount.low != amount.high:
        raise Unreadable(
            f"{say_written(value)} is not a line of stock.", 'Write "500 g caster sugar".'
        )
    return amount, re.sub(r"^of\s+", "", item)
