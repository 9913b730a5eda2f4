"""Giving days by name or by rule: dates, movable feasts, "the Saturday before Christmas".

A rule is one of

* a date: "2027-12-18" (once) or "24 June" (every year);
* a feast by name: "Christmas", "Easter", "Mothering Sunday", "Midsummer", "Diwali" ...;
* a public holiday of the book's country by the name its list gives it: "Canada Day";
* a day near one: "the Saturday before Christmas", "2 weeks before Easter", "the day after
  Christmas", "the first Sunday after 1 May"; or "the third Sunday in June".

Easter and what hangs on it come from python-dateutil; feasts of other calendars (Hanukkah, Eid,
Diwali, Lunar New Year) from the `holidays` library, by the country where they are public
holidays, whose own notes mark estimated Islamic dates. The names are data
(staples/giving_days.yml). What is not here: today (an argument) and the dates of a batch.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date, timedelta
from functools import cache, lru_cache
from typing import Any, Final

from dateutil.easter import EASTER_ORTHODOX, EASTER_WESTERN, easter
from dateutil.relativedelta import relativedelta

from stillroom.core.when.days_spoken import plain_name, spoken
from stillroom.core.when.spans import ORDINALS, SPAN_PATTERN, parse_span, tidy
from stillroom.core.words.data_files import read_data
from stillroom.core.words.day_words import DAY_NAMES, MONTH_NAMES
from stillroom.core.words.nearest import nearest
from stillroom.core.words.problems import Unreadable

YEARS_AHEAD: Final = 8
FIRST_YEAR: Final = 1900
LAST_YEAR: Final = 2900
_DAYS: Final = {name.lower(): number for number, name in enumerate(DAY_NAMES)}
_MONTHS: Final = {name.lower(): number for number, name in enumerate(MONTH_NAMES, start=1)}
_DAY_PATTERN: Final = "|".join(_DAYS)
_MEND: Final = 'Write a date ("24 June", "2027-12-18") or e.g. "the Saturday before Christmas".'


@cache
def _feasts() -> dict[str, Mapping[str, Any]]:
    known: dict[str, Mapping[str, Any]] = {}
    for row in read_data("giving_days.yml"):
        for name in (row["name"], *row.get("also", [])):
            known[plain_name(name)] = row
    return known


def known_feasts() -> tuple[str, ...]:
    """Return every feast that can be named, in the order of the data file."""
    return tuple(dict.fromkeys(str(row["name"]) for row in _feasts().values()))


@lru_cache(maxsize=512)
def find_day(rule: str, after: date, country: str = "GB") -> date:
    """Return the first day a rule falls on, on or after `after`; a full date is returned as it is.

    Raises:
        Unreadable: (a ValueError) when it is no day, with the nearest known name.

    >>> find_day("the Saturday before Christmas", date(2027, 1, 1))
    datetime.date(2027, 12, 18)
    """
    if re.fullmatch(r"\d{4}-\d{2}-\d{2}", rule.strip()):
        return _iso(rule.strip())
    for year in range(after.year, after.year + YEARS_AHEAD):
        day = day_in_year(rule, year, country)
        if day is not None and day >= after:
            return day
    raise Unreadable(f'"{rule}" does not come round within {YEARS_AHEAD} years.', _MEND)


def day_in_year(rule: str, year: int, country: str = "GB") -> date | None:
    """Return the day of a rule in one year; None when that year has none (29 February, say).

    Raises:
        Unreadable: when the rule is no day.
    """
    words = spoken(rule)
    for read in (_fixed, _weekday_beside, _nth_weekday, _span_beside):
        match, day = read(words, year, country)
        if match:
            return day
    if (name := plain_name(words)) in _feasts():
        return _feast(_feasts()[name], year, country)
    listed, day = _public_holiday(words, year, country)
    if listed:
        return day
    near = nearest(name, _feasts())
    called = _feasts()[near]["name"] if near else ""
    raise Unreadable(f'"{rule}" is not a day.', f'Did you mean "{called}"?' if near else _MEND)


_Read = tuple[bool, date | None]


def _iso(text: str) -> date:
    try:
        day = date.fromisoformat(text)
        if not FIRST_YEAR <= day.year <= LAST_YEAR:
            raise ValueError
        return day
    except ValueError:
        raise Unreadable(
            f'"{text}" is not a date of our time.', 'Write year-month-day: "2027-12-18".'
        ) from None


def _fixed(words: str, year: int, country: str) -> _Read:
    """Read "2027-12-18", "24 June", "the 24th of June" or "June 24"."""
    if re.fullmatch(r"\d{4}-\d{2}-\d{2}", words):
        day = _iso(words)
        return True, day if day.year == year else None
    months = "|".join(_MONTHS)
    match = re.fullmatch(rf"(\d{{1,2}})(?:st|nd|rd|th)? (?:of )?({months})", words)
    other = re.fullmatch(rf"({months}) (\d{{1,2}})(?:st|nd|rd|th)?", words)
    if not (match or other):
        return False, None
    number, name = (match[1], match[2]) if match else (other[2], other[1])  # type: ignore[index]
    month = _MONTHS[name]
    try:
        date(2028, month, int(number))  # a leap year, so that 29 February is a day
    except ValueError:
        raise Unreadable(f'"{words}" is not a day of the year.', _MEND) from None
    if (month, int(number)) == (2, 29) and not _is_leap(year):
        return True, None
    return True, date(year, month, int(number))


def _is_leap(year: int) -> bool:
    return year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)


def _weekday_beside(words: str, year: int, country: str) -> _Read:
    """Read "Saturday before Christmas", "first Sunday after 1 May", "Friday nearest 24 June"."""
    order = "|".join([*ORDINALS, "last"])
    match = re.fullmatch(
        rf"(?:({order}) )?({_DAY_PATTERN}) "
        r"(before|after|on or before|on or after|nearest(?: to)?) (.+)",
        words,
    )
    if not match:
        return False, None
    anchor = day_in_year(match[4], year, country)
    if anchor is None:
        return True, None
    count = ORDINALS.get(match[1] or "first", 1)
    wanted, side = _DAYS[match[2]], match[3]
    back = (anchor.weekday() - wanted) % 7
    if side.startswith("nearest"):
        return True, anchor - timedelta(days=back if back <= 3 else back - 7)
    if side.endswith("before"):
        back = back or (0 if side.startswith("on") else 7)
        return True, anchor - timedelta(days=back + 7 * (count - 1))
    forward = (wanted - anchor.weekday()) % 7 or (0 if side.startswith("on") else 7)
    return True, anchor + timedelta(days=forward + 7 * (count - 1))


def _nth_weekday(words: str, year: int, country: str) -> _Read:
    """Read "third Sunday in June", "last Monday of May"."""
    order = "|".join([*list(ORDINALS)[:5], "last"])
    match = re.fullmatch(rf"({order}) ({_DAY_PATTERN}) (?:in|of) ({'|'.join(_MONTHS)})", words)
    if not match:
        return False, None
    month, wanted = _MONTHS[match[3]], _DAYS[match[2]]
    if match[1] == "last":
        end = date(year, month, 1) + relativedelta(months=1, days=-1)
        return True, end - timedelta(days=(end.weekday() - wanted) % 7)
    first = date(year, month, 1)
    day = first + timedelta(days=(wanted - first.weekday()) % 7 + 7 * (ORDINALS[match[1]] - 1))
    return True, day if day.month == month else None


def _span_beside(words: str, year: int, country: str) -> _Read:
    """Read "2 weeks before Easter", "the day after Christmas"."""
    match = re.fullmatch(rf"({SPAN_PATTERN}) (before|after) (.+)", words)
    if not match:
        return False, None
    anchor = day_in_year(match[3], year, country)
    if anchor is None:
        return True, None
    span = parse_span(match[1])
    if span.unit not in ("day", "week"):
        raise Unreadable(f'"{words}" is not counted in days or weeks.', _MEND)
    days = span.high * (7 if span.unit == "week" else 1)
    return True, anchor + timedelta(days=-days if match[2] == "before" else days)


def _feast(row: Mapping[str, Any], year: int, country: str) -> date | None:
    if "ask" in row:
        return _by_country(row, year, country)
    if "rule" in row:
        return day_in_year(row["rule"], year, country)
    if "easter" in row:
        return easter(year, EASTER_WESTERN) + timedelta(days=int(row["easter"]))
    if "orthodox_easter" in row:
        return easter(year, EASTER_ORTHODOX) + timedelta(days=int(row["orthodox_easter"]))
    return _from_library(row["library"], year, country)


def _by_country(row: Mapping[str, Any], year: int, country: str) -> date | None:
    """Return the day on which a country keeps a feast; where nobody says, ask for it."""
    for rule, countries in row["days"].items():
        if country in countries:
            return day_in_year(rule, year, country)
    moved = row.get("moved", {}).get(country)
    if moved is None:
        raise Unreadable(
            f'The book does not know when {row["name"]} is in "{country}". {row["ask"]}',
            'Write the day itself: "24 June" or "the second Sunday in May".',
        )
    day = day_in_year(moved["rule"], year, country)
    gives_way = day == day_in_year(moved["unless"], year, country)
    return day_in_year(moved["then"], year, country) if gives_way else day


@cache
def _calendar(country: str, categories: tuple[str, ...], year: int) -> Mapping[date, str]:
    import holidays  # late: what the library knows of the world takes as long as reading a recipe

    listed = holidays.country_holidays(
        country, years=year, language="en_US", categories=categories or None
    )
    return dict(listed.items())


def _public_holiday(words: str, year: int, country: str) -> _Read:
    """Find a day by the name that its country's own list gives it: "Canada Day", "Anzac Day"."""
    import holidays  # late: most rules need no country's list

    if country not in holidays.list_supported_countries():
        return False, None
    named = {
        tidy(name): day
        for day, names in sorted(_calendar(country, (), year).items(), reverse=True)
        for name in names.split("; ")
    }
    # a day that a later law made is on no list of an earlier year
    known = words in named or any(
        words in map(tidy, names.split("; ")) for names in _calendar(country, (), year + 1).values()
    )
    return known, named.get(words)


def _from_library(where: Mapping[str, Any], year: int, country: str) -> date | None:
    """Return the first day of the feast that begins in that year by a country's list."""
    source = country if country in where.get("own", []) else where["country"]
    categories = tuple(where.get("categories", []))
    # the year before is read too: a feast of eight days may run into January
    found = {
        day
        for listed in (_calendar(source, categories, year - 1), _calendar(source, categories, year))
        for day, name in listed.items()
        if where["named"] in name
    }
    begins = [d for d in sorted(found) if d - timedelta(days=1) not in found and d.year == year]
    return begins[0] + timedelta(days=int(where.get("shift", 0))) if begins else None
