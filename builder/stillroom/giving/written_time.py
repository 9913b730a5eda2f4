"""Time and post as a person writes them on a giving list: hours, days off, weights, countries.

Each reader raises Unreadable with what to write instead.
"""

from __future__ import annotations

import re
from datetime import date, timedelta
from fractions import Fraction
from functools import cache
from typing import Any

from babel import Locale

from stillroom.core.amounts.money import parse_money
from stillroom.core.amounts.quantities import parse_leading_amount, parse_number
from stillroom.core.amounts.units import convert, size_of
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.problems import Unreadable, say_written
from stillroom.giving.written import read_day

WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_MOST_DAYS_OFF = 366
_SPAN = re.compile(r"^(?P<first>.+?)\s+(?:to|until|till|–|-|bis|au)\s+(?P<last>.+)$", re.IGNORECASE)


def read_few_hours(value: Any) -> Fraction:
    """Return hours of a week.

    >>> read_few_hours("4 1/2")
    Fraction(9, 2)
    """
    return _hours(value, 168, 'Write the hours as a number: "hours a week: 6".')


def read_day_hours(value: Any) -> dict[int, Fraction]:
    """Return the hours of each weekday, Monday 0; a day not named takes "every day", else none.

    >>> read_day_hours({"every day": 1, "saturday": 6})[5], read_day_hours(2)[0]
    (Fraction(6, 1), Fraction(2, 1))
    """
    mend = 'Write "hours a day: 2" or "hours a day: {every day: 1, saturday: 6}".'
    if not isinstance(value, dict):
        return dict.fromkeys(range(7), _hours(value, 24, mend))
    said: dict[str, Fraction] = {}
    for key, hours in value.items():
        name = str(key).strip().lower()
        whole = [day for day in WEEKDAYS if len(name) > 2 and day.startswith(name.rstrip("s."))]
        if name not in ("every day", "other days") and len(whole) != 1:
            raise Unreadable(f'"{key}" is not a day of the week.', did_you_mean(name, WEEKDAYS))
        said[whole[0] if whole else "every day"] = _hours(hours, 24, mend)
    usual = said.get("every day", Fraction(0))
    return {number: said.get(name, usual) for number, name in enumerate(WEEKDAYS)}


def _hours(value: Any, most: int, mend: str) -> Fraction:
    plain = isinstance(value, str | int | float) and not isinstance(value, bool)
    hours = _number(str(value).strip().removesuffix("hours").strip()) if plain else None
    if hours is None or not 0 <= hours <= most:
        raise Unreadable(f"{say_written(value)} is not hours.", mend)
    return hours


def _number(text: str) -> Fraction | None:
    try:
        return parse_number(text)
    except Unreadable:
        return None


def read_days_off(value: Any, country: str = "GB") -> frozenset[date]:
    """Return every day of days and spans of days, the last of each with it.

    >>> len(read_days_off(["24 December 2027", "1 August 2027 to 3 August 2027"]))
    4
    """
    lines = value if isinstance(value, list | tuple) else re.split(r"[,;]", str(value))
    days: set[date] = set()
    for line in (one for one in lines if str(one).strip()):
        span = _SPAN.match(str(line).strip())
        if span is None:
            days.add(read_day(line, country))
            continue
        last = read_day(span["last"], country)
        first = read_day(_with_month_and_year(span["first"], span["last"]), country)
        length = (last - first).days
        if not 0 <= length <= _MOST_DAYS_OFF:
            raise Unreadable(
                f"{say_written(line)} does not run from a day to a later one.",
                'Write "3 August 2027 to 17 August 2027".',
            )
        days |= {first + timedelta(days=n) for n in range(length + 1)}
    return frozenset(days)


def _with_month_and_year(first: str, last: str) -> str:
    """Return "3" of "3 to 17 August 2027" with its month and year."""
    said = last.split()
    if first.isdecimal() and len(said) == 3:
        return " ".join([first, *said[1:]])
    year = re.search(r"\d{4}$", last)
    return f"{first} {year[0]}" if year and not re.search(r"\d{4}", first) else first


def read_weight(value: Any) -> Fraction:
    """Return grams.

    >>> read_weight("1.5 kg"), read_weight("350 g")
    (Fraction(1500, 1), Fraction(350, 1))
    """
    amount, rest = parse_leading_amount(str(value).strip())
    if amount is None or rest or amount.low != amount.high or size_of(amount.unit) != "mass":
        raise Unreadable(f"{say_written(value)} is not a weight.", 'Write "350 g" or "1.5 kg".')
    return convert(amount.low, amount.unit, "g")


def read_bands(
    value: Any, currency: str = "GBP", language: str = "en_GB"
) -> tuple[tuple[Fraction, Fraction], ...]:
    """Return what postage costs up to each weight in grams, the lightest first.

    >>> read_bands({"2 kg": "5.60", "1 kg": "3.70"})[0]
    (Fraction(1000, 1), Fraction(37, 10))
    """
    if not isinstance(value, dict) or not value:
        raise Unreadable(
            f"{say_written(value)} is not postage by weight.", 'Write "bands: {1 kg: 3.70}".'
        )
    rows = ((read_weight(weight), parse_money(price, currency, language))
            for weight, price in value.items())  # fmt: skip
    return tuple(sorted(rows))


def read_countries(value: Any) -> tuple[str, ...]:
    """Return the two letters of each country: "France, IE" is FR and IE.

    >>> read_countries("France, IE"), read_countries("England")
    (('FR', 'IE'), ('GB',))
    """
    lines = value if isinstance(value, list | tuple) else re.split(r"[,;]", str(value))
    found = []
    for line in lines:
        # an unquoted NO is read as "no": nobody else writes that for a country
        name = "NO" if line is False else str(line).strip()
        code = name.upper() if name.upper() in _names().values() else _names().get(_plain(name))
        if code is None:
            known = [name.title() for name in _names()]
            raise Unreadable(f"{say_written(line)} is not a country.", did_you_mean(name, known))
        found.append(code)
    return tuple(dict.fromkeys(found))


def _plain(name: str) -> str:
    return name.lower().removeprefix("the ").strip()


@cache
def _names() -> dict[str, str]:
    """Return the two letters of every country by its English name, small."""
    territories = Locale("en").territories
    names = {_plain(name): code for code, name in territories.items() if code.isalpha()}
    home = {word: "GB" for word in ("uk", "england", "scotland", "wales", "great britain")}
    return names | home | {"usa": "US", "america": "US", "northern ireland": "GB"}
