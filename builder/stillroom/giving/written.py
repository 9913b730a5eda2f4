"""Small things as a person writes them on a giving list: ages, days, hours, stock lines.

Each reader raises Unreadable with what to write instead.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from datetime import date
from fractions import Fraction
from functools import lru_cache
from typing import Annotated, Any, Literal

from babel import Locale, UnknownLocaleError
from babel.dates import get_day_names, get_month_names
from pydantic import AfterValidator

from stillroom.core.amounts.money import knows_currency, knows_language
from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.summed import refuse_too_much, take_amount
from stillroom.core.amounts.units import System
from stillroom.core.when.days_spoken import own_rule
from stillroom.core.when.giving_days import FIRST_YEAR, LAST_YEAR, day_in_year
from stillroom.core.words.day_words import MONTH_NAMES
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.problems import Unreadable, say_written
from stillroom.giving.written_hours import hours_said


def read_day(value: Any, country: str = "GB") -> date:
    """Return a day of a stated year: year first, or as one says it.

    >>> read_day("2027-12-18"), read_day("24 December 2026"), read_day("Christmas Eve 2026")
    (datetime.date(2027, 12, 18), datetime.date(2026, 12, 24), datetime.date(2026, 12, 24))
    """
    if isinstance(value, date):
        return value
    text = " ".join(str(value).strip().split())
    found = _said_day(text, country)
    if found is not None and (day := _weekday_of(text)) is not None and day != found.weekday():
        what = f"{say_written(value)} falls on a {WEEKDAYS[found.weekday()]}."
        raise Unreadable(what, "Look at the calendar: the weekday or the day is another.")
    if found is not None and FIRST_YEAR <= found.year <= LAST_YEAR:
        return found
    numbers = _SLASHES.fullmatch(_after_weekday(text))
    mend = 'Write year, month, day: "2027-12-18".'
    short = re.fullmatch(r"(.+[ ./-])'?(\d\d)", text)
    if short and _said_day(f"{short[1]}20{short[2]}", country):
        mend = f'Write all of the year: "{short[1]}20{short[2]}".'
    elif numbers and len(days := _days_meant(numbers, country)) == 2:
        what = f"{say_written(value)} can be two days."
        one, two = (f"{day.day} {MONTH_NAMES[day.month - 1]} {day.year}" for day in days)
        raise Unreadable(what, f'Write "{one}" or "{two}".')
    elif _without_year(text, country):
        mend = f'Say the year as well: "{text} 2027".'
    raise Unreadable(f"{say_written(value)} is not a day of the calendar.", mend)


def with_own_day(
    data: dict[str, Any], own: OwnDays, country: str, key: str = "giving day"
) -> dict[str, Any]:
    """Return a list's facts with the book's own giving day in place of its name and year.

    >>> own = [("Christmas", "the Saturday before Christmas")]
    >>> with_own_day({"giving day": "Xmas 2027"}, own, "GB")
    {'giving day': datetime.date(2027, 12, 18)}
    """
    said = re.fullmatch(r"\s*(.+?),?\s+(\d{4})\s*", str(data.get(key)))
    rule = own_rule(said[1], own) if said else ""
    if said is None or rule == said[1]:
        return data
    day = day_in_year(rule, int(said[2]), country)
    return {**data, key: day} if day else data


def read_day_near(value: Any, near: date | None, country: str = "GB") -> date:
    """Return a day; of one without a year that which lies nearest to the giving day.

    >>> read_day_near("18 December", date(2026, 12, 24)), read_day_near("2 Jan", date(2026, 12, 24))
    (datetime.date(2026, 12, 18), datetime.date(2027, 1, 2))
    """
    text = " ".join(str(value).strip().split())
    if near is None or not isinstance(value, str) or not _without_year(text, country):
        return read_day(value, country)
    years = (_said_day(f"{text} {near.year + by}", country) for by in (-1, 0, 1))
    return min((day for day in years if day), key=lambda day: abs((day - near).days))


_YEAR_FIRST = re.compile(r"^(\d{4})[./](\d\d)[./](\d\d)$")
_SLASHES = re.compile(r"(\d{1,2})[./-](\d{1,2})[./-](\d{4})")
_WITH_YEAR = re.compile(r"^(?P<rule>.+?),?(?: de)? (?P<year>\d{4})$")
_MONTH_FIRST = re.compile(r"^([a-z]{3,9})\.? (\d{1,2})(?:st|nd|rd|th)?$", re.IGNORECASE)
# "Fr., 24.12.2027"; two letters are a weekday before a figure alone
_WEEKDAY = re.compile(r"^(?P<day>[^\W\d]{3,}|[^\W\d]{2}(?=[.,]* \d))[.,]* (?=\S)")
_ARTICLE = re.compile(r"^(?:le|the|on|el|il|la|am|den|dem|op|på) (?=\w)", re.IGNORECASE)
WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
OwnDays = Iterable[tuple[str, str]]
"""The book's own giving days: the name and the rule of each."""
_LANGUAGES = ("en", "de", "fr", "es", "it", "nl", "sv", "da", "nb")
_WIDTHS: tuple[Literal["wide", "abbreviated"], ...] = ("wide", "abbreviated")
# "24. Dezember", "24 de diciembre", "1er janvier"
_ORDINAL = re.compile(r"(?<=\d)(?:\.|er|º)?(?: de)? +")
_ENDINGS = re.compile(r"\b(\d{1,2})(?:st|nd|rd|th)\b(?: of)?|(?<=\d) of\b", re.IGNORECASE)


def _said_day(text: str, country: str) -> date | None:
    """Return a day as written with its year; None for what is none, or has two meanings."""
    try:
        return date.fromisoformat(_YEAR_FIRST.sub(r"\1-\2-\3", text))
    except ValueError:
        pass
    bare = _after_weekday(text)
    if numbers := _SLASHES.fullmatch(bare):
        days = _days_meant(numbers, country)
        weekday = _weekday_of(text)
        # of two days the weekday tells which; one that fits neither is told of where it is read
        fitting = [day for day in days if day.weekday() == weekday] if len(days) > 1 else days
        return fitting[0] if len(fitting) == 1 else None
    for one in dict.fromkeys((bare, _ARTICLE.sub("", text), text)):
        if (said := _WITH_YEAR.match(one)) and (day := _by_rule(said, country)):
            return day
    return None


def _by_rule(said: re.Match[str], country: str) -> date | None:
    bare = _ENDINGS.sub(r"\1", said["rule"]).strip()
    # "2nd Sunday of May" is a rule as it stands
    for rule in (_whole_month(_MONTH_FIRST.sub(r"\2 \1", bare)), said["rule"]):
        try:
            return day_in_year(rule, int(said["year"]), country)
        except Unreadable:
            continue
    return None


def _days_meant(numbers: re.Match[str], country: str) -> list[date]:
    """Return every day that "12/6/2027" may be, the day before the month first.

    No language puts dots between a month and the day behind it (CLDR, all its short dates); where
    the month goes first with strokes, somebody may.
    """
    one, two, year = (int(part) for part in numbers.groups())
    dotted = numbers[0].count(".") == 2 and not _month_goes_first(country)
    pairs = [(one, two)] if dotted else dict.fromkeys(((one, two), (two, one)))
    days = (_date(year, month, day) for day, month in pairs)
    return [day for day in days if day]


@lru_cache
def weekdays_said() -> dict[str, int]:
    """Return the weekdays of the languages whose foods are known, Monday 0: "dienstag" is 1.

    >>> weekdays_said()["samedi"], weekdays_said()["fr"], weekdays_said()["tues"]
    (5, 4, 1)
    """
    said = {"tues": {1}, "weds": {2}, "thur": {3}, "thurs": {3}}
    for language in _LANGUAGES:
        for width in _WIDTHS:
            for number, name in get_day_names(width, locale=language).items():
                said.setdefault(name.lower().rstrip("."), set()).add(number)
    return {name: min(days) for name, days in said.items() if len(days) == 1}


def _weekday_of(text: str) -> int | None:
    found = _WEEKDAY.match(_ARTICLE.sub("", text))
    return weekdays_said().get(found["day"].lower()) if found else None


def _after_weekday(text: str) -> str:
    """Return a day without what stands before it in any of the languages.

    >>> _after_weekday("Freitag, den 24. Dezember 2027"), _after_weekday("le samedi 18/12/2027")
    ('24. Dezember 2027', '18/12/2027')
    """
    bare = _ARTICLE.sub("", text)
    found = _WEEKDAY.match(bare)
    if found and found["day"].lower() in weekdays_said():
        return _ARTICLE.sub("", bare[found.end() :])
    return bare if re.match(r"\d", bare) else text


@lru_cache
def _months_abroad() -> dict[str, str]:
    """Return the months of the languages whose foods are known: "dezember", "décembre"."""
    said: dict[str, set[str]] = {}
    for language in _LANGUAGES:
        for width in _WIDTHS:
            for number, name in get_month_names(width, locale=language).items():
                plain = unicodedata.normalize("NFD", name.lower().rstrip("."))
                bare = "".join(one for one in plain if not unicodedata.combining(one))
                for word in (name.lower().rstrip("."), bare):
                    said.setdefault(word, set()).add(MONTH_NAMES[number - 1])
    return {word: min(months) for word, months in said.items() if len(months) == 1}


def _whole_month(rule: str) -> str:
    """Return "24 Dec." and "24. Dezember" as "24 December"."""
    first, _, last = _ORDINAL.sub(" ", rule.rstrip(".")).rpartition(" ")
    last = _months_abroad().get(last.lower(), last)
    whole = [
        name for name in MONTH_NAMES if name.lower().startswith(last.lower()) and len(last) > 2
    ]
    return f"{first} {whole[0]}" if first.isdecimal() and whole else rule


@lru_cache
def _month_goes_first(country: str) -> bool:
    """Whether a country's own short dates begin with the month.

    >>> _month_goes_first("US"), _month_goes_first("GB"), _month_goes_first("DE")
    (True, False, False)
    """
    try:
        short = str(Locale.parse(f"und_{country}").date_formats["short"].pattern)
    except (UnknownLocaleError, ValueError):
        return True
    return not 0 <= short.find("d") < short.find("M")


def _date(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def _without_year(text: str, country: str) -> bool:
    return not re.search(r"\d{4}", text) and _said_day(f"{text} 2028", country) is not None


ALL_OF_A_MONTH = 744  # hours


def read_hours(value: Any) -> dict[int, Fraction]:
    """Return the hours of each month (1-12); a month not named takes "every month", else none.

    An empty mapping sets no limit.

    >>> read_hours({"every month": 6, "december": 10})[12]
    Fraction(10, 1)
    """
    if not isinstance(value, dict):
        raise Unreadable(f"{say_written(value)} is not hours by month.", 'Write "every month: 6".')
    known = ["every month", *(name.lower() for name in MONTH_NAMES)]
    said: dict[str, Fraction] = {}
    for key, hours in value.items():
        name = _whole_month(f"1 {str(key).strip().lower()}").removeprefix("1 ").lower()
        if name not in known:
            raise Unreadable(f'"{key}" is not a month.', did_you_mean(str(key), known))
        said[name] = _hours(hours)
    if not said:
        return {}
    usual = said.get("every month", Fraction(0))
    return {number: said.get(name, usual) for number, name in enumerate(known[1:], start=1)}


def _hours(value: Any) -> Fraction:
    hours = hours_said(value)
    if hours is None or not 0 <= hours <= ALL_OF_A_MONTH:
        raise Unreadable(
            f"{say_written(value)} is not hours of a month.", 'Write "every month: 6".'
        )
    return hours


def read_stock_line(value: Any, units: System = "metric") -> tuple[Amount, str]:
    """Return the amount and the ingredient of a line such as "500 g caster sugar".

    >>> read_stock_line("500 g caster sugar")[1]
    'caster sugar'
    """
    amount, item = take_amount(str(value), units)
    if amount is None or not item or amount.low != amount.high:
        raise Unreadable(
            f"{say_written(value)} is not a line of stock.", 'Write "500 g caster sugar".'
        )
    refuse_too_much(amount, str(value))
    return amount, re.sub(r"^of\s+", "", item)


def _language(value: str) -> str:
    """Return a language by which prices are written; raises Unreadable for one that is none."""
    if value and not knows_language(value):
        what = f"{say_written(value)} is not a language whose prices can be read."
        raise Unreadable(what, 'Write "en_GB" or "de"; without it the book\'s counts.')
    return value


def _currency(value: str) -> str:
    """Return a currency; raises Unreadable for what is none. Two signs are of one each."""
    value = {"£": "GBP", "€": "EUR"}.get(value, value)
    if value and not knows_currency(value):
        what = f"{say_written(value)} is not a currency."
        raise Unreadable(what, 'Write its three capitals: "GBP"; without it the book\'s counts.')
    return value


Language = Annotated[str, AfterValidator(_language)]
Currency = Annotated[str, AfterValidator(_currency)]


def packs_written(value: Any) -> Any:
    """Return a list of packs; the comma of "[12 für 6,60]" parted a price, and no two packs.

    >>> packs_written(["12 für 6", 60, "1 kg for 1.15"])
    ['12 für 6,60', '1 kg for 1.15']
    >>> packs_written(["1 kg for £2", "500.00"])
    ['1 kg for £2,500.00']
    """
    found: list[Any] = []
    for one in value if isinstance(value, list | tuple) else [value]:
        thousands = re.fullmatch(r"\d{3}(?:[.,]\d\d)?", str(one))
        cents = thousands or (
            re.fullmatch(r"\d\d\b.*", str(one)) and not re.search(r"\d\D+\d", str(one))
        )
        if found and cents and re.search(r"\s\D{0,3}\d[\d.’']*$", str(found[-1])):
            found[-1] = f"{found[-1]},{one}"
        else:
            found.append(one)
    return found
