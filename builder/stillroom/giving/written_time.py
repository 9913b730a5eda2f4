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
from stillroom.core.amounts.summed import take_amount
from stillroom.core.amounts.units import convert, size_of
from stillroom.core.words.nearest import did_you_mean, nearest
from stillroom.core.words.problems import Unreadable, say_written
from stillroom.giving.written import read_day, weekdays_said
from stillroom.giving.written_hours import hours_said

WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_MOST_DAYS_OFF = 366
_OUNCE_G = Fraction("28.35")
_SPAN = re.compile(
    r"^(?:from |vom |von |du |dal |del |van |från |fra )?(?P<first>.+?)"
    r"(?:\s+(?:to|until|till|–|-|bis|au|al|tot|t/m|til|a)\s+|\s*(?:\.\.|–)\s*|(?<=^\d)-"
    r"|(?<=^\d\d)-(?!\d+-)|(?<=\d\.)\s*-\s*(?=\d)|(?<=\.\d{4})-(?=\d))(?P<last>.+)$",
    re.IGNORECASE,
)

_NUMBERS = re.compile(r"\d{1,2}(?P<rest>([./-])\d{1,2}(?P<year>\2\d{4}))")
_DAY_MONTH = re.compile(r"(\d{1,2}[./-]\d{1,2})[./-]?")


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
        whole = _weekdays_named(name)
        if name not in ("every day", "other days") and not whole:
            raise Unreadable(f'"{key}" is not a day of the week.', did_you_mean(name, WEEKDAYS))
        said |= dict.fromkeys(whole or ["every day"], _hours(hours, 24, mend))
    usual = said.get("every day", Fraction(0))
    return {number: said.get(name, usual) for number, name in enumerate(WEEKDAYS)}


def _weekdays_named(said: str) -> list[str]:
    """Return the weekdays that a key names: "sat", "weekends", "samedi", "monday and friday"."""
    if said.rstrip("s") in ("weekend", "week-end"):
        return list(WEEKDAYS[5:])
    if said.rstrip("s") in ("weekday", "working day"):
        return list(WEEKDAYS[:5])
    found: list[str] = []
    for word in re.split(r"\s*(?:,|&|\band\b|\bund\b|\bet\b)\s*", said):
        whole = [day for day in WEEKDAYS if len(word) > 2 and day.startswith(word.rstrip("s."))]
        elsewhere = weekdays_said().get(word.rstrip("."))
        if len(whole) != 1 and elsewhere is None:
            return []
        found.append(whole[0] if len(whole) == 1 else WEEKDAYS[elsewhere or 0])
    return found


def _hours(value: Any, most: int, mend: str) -> Fraction:
    hours = hours_said(value)
    if hours is None or not 0 <= hours <= most:
        raise Unreadable(f"{say_written(value)} is not hours.", mend)
    return hours


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
    bare = re.sub(r"(?:\.|er|st|nd|rd|th)$", "", first)
    if bare.isdecimal() and len(said) >= 3 and said[0].rstrip(".").isdecimal():
        return " ".join([bare, *said[1:]])
    numbers = _NUMBERS.fullmatch(last)
    if bare.isdecimal() and numbers:  # "1.-14.3.2028"
        return f"{bare}{numbers['rest']}"
    if numbers and (both := _DAY_MONTH.fullmatch(first)):  # "1.3. bis 14.3.2028"
        return f"{both[1]}{numbers['year']}"
    year = re.search(r"\d{4}$", last)
    return f"{first} {year[0]}" if year and not re.search(r"\d{4}", first) else first


def read_weight(value: Any) -> Fraction:
    """Return grams.

    >>> read_weight("1.5 kg"), read_weight("350 g"), read_weight("1 kg 200 g")
    (Fraction(1500, 1), Fraction(350, 1), Fraction(1200, 1))
    """
    # a comma before one or two figures parts no thousands
    said = re.sub(r"^(\d{1,3}),(\d{1,2})(?!\d)", r"\1.\2", str(value).strip())
    amount, rest = take_amount(said)
    if amount is None or rest or amount.low != amount.high or size_of(amount.unit) != "mass":
        raise Unreadable(f"{say_written(value)} is not a weight.", 'Write "350 g" or "1.5 kg".')
    if amount.unit in ("oz", "lb"):  # a scale in ounces shows no finer, and 16 of them are a pound
        return convert(amount.low, amount.unit, "oz") * _OUNCE_G
    return convert(amount.low, amount.unit, "g")


def read_filled(value: Any) -> Fraction:
    """Return the grams of a thing that is given, which weighs something."""
    grams = read_weight(value)
    if grams <= 0:
        what = f"{say_written(value)} is nothing at all."
        raise Unreadable(what, 'Write what one weighs with its jar: "350 g".')
    return grams


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
        if two := _TWO_LETTERS_OF_TWO.get(name.upper()):
            raise Unreadable(f"{say_written(line)} can be two.", f'Write "{two[0]}" or "{two[1]}".')
        code = name.upper() if name.upper() in _names().values() else _names().get(_plain(name))
        if code is None:
            near = nearest(_plain(name), _names(), 0.8)
            mend = f'Did you mean "{near.title()}"?' if near else 'Write its name: "France".'
            raise Unreadable(f"{say_written(line)} is not a country.", mend)
        found.append(code)
    return tuple(dict.fromkeys(found))


def _plain(name: str) -> str:
    return name.lower().removeprefix("the ").strip()


# what is no country, though it has two letters of its own
_NO_COUNTRY = frozenset({"EU", "EZ", "UN", "QO", "XA", "XB", "ZZ", "XK"})
_TWO_LETTERS_OF_TWO = {"NI": ("Northern Ireland", "Nicaragua")}


@cache
def _names() -> dict[str, str]:
    """Return the two letters of every country by its name in six languages, small."""
    names: dict[str, str] = {}
    for language in ("nl", "it", "es", "fr", "de", "en"):
        territories = Locale(language).territories
        names |= {
            _plain(name): code
            for code, name in territories.items()
            if code.isalpha() and code not in _NO_COUNTRY
        }
    home = {word: "GB" for word in ("uk", "england", "scotland", "wales", "great britain")}
    home |= {word: "GB" for word in ("schottland", "écosse", "angleterre", "inglaterra")}
    home |= {"holland": "NL", "hollande": "NL", "holanda": "NL", "olanda": "NL", "eire": "IE"}
    home |= {"éire": "IE", "republic of ireland": "IE", "u.s.a.": "US", "u.s.": "US"}
    return names | home | {"usa": "US", "america": "US", "northern ireland": "GB"}
