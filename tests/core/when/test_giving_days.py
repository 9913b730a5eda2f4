"""Giving days against an independent algorithm and against dates that governments published."""

from __future__ import annotations

import re
from datetime import date, timedelta

import holidays
import pytest

from stillroom.core.when.giving_days import day_in_year, find_day, known_feasts
from stillroom.core.words.problems import Unreadable


def _easter_by_meeus(year: int) -> date:
    """Gregorian Easter by J. Meeus, Astronomical Algorithms (1991), chapter 8 (Butcher, 1876)."""
    a, (b, c) = year % 19, divmod(year, 100)
    d, e = divmod(b, 4)
    g = (b - (b + 8) // 25 + 1) // 3
    h = (19 * a + b - d - g + 15) % 30
    i, k = divmod(c, 4)
    weekday = (32 + 2 * e + 2 * i - h - k) % 7
    m = (a + 11 * h + 22 * weekday) // 451
    month, day = divmod(h + weekday - 7 * m + 114, 31)
    return date(year, month, day + 1)


def test_easter_of_two_centuries() -> None:
    years = range(1900, 2100)
    assert [day_in_year("Easter", y) for y in years] == [_easter_by_meeus(y) for y in years]


# Extremes and turns in that span, from the table of the Book of Common Prayer's method as printed
# in the Explanatory Supplement to the Astronomical Ephemeris (from memory), and reference.md 12
EASTERS = [(1913, (3, 23)), (1943, (4, 25)), (2008, (3, 23)), (2024, (3, 31)), (2025, (4, 20)),
           (2026, (4, 5)), (2027, (3, 28)), (2035, (3, 25)), (2038, (4, 25))]  # fmt: skip


@pytest.mark.parametrize(("year", "day"), EASTERS, ids=str)
def test_easter_of_a_printed_table(year: int, day: tuple[int, int]) -> None:
    assert day_in_year("Easter", year) == date(year, *day)


# reference.md 12 (computed there with dateutil and the rules beside it)
GIFT_DATES = {
    "Shrove Tuesday": [(2, 17), (2, 9), (2, 29), (2, 13), (3, 5)],
    "Mothering Sunday": [(3, 15), (3, 7), (3, 26), (3, 11), (3, 31)],
    "Good Friday": [(4, 3), (3, 26), (4, 14), (3, 30), (4, 19)],
    "Pentecost": [(5, 24), (5, 16), (6, 4), (5, 20), (6, 9)],
    "Father's Day": [(6, 21), (6, 20), (6, 18), (6, 17), (6, 16)],
    "Thanksgiving": [(11, 26), (11, 25), (11, 23), (11, 22), (11, 28)],
    "Stir-up Sunday": [(11, 22), (11, 21), (11, 26), (11, 25), (11, 24)],
    "Advent Sunday": [(11, 29), (11, 28), (12, 3), (12, 2), (12, 1)],
    "Orthodox Easter": [(4, 12), (5, 2), (4, 16), (4, 8), (4, 28)],
}


@pytest.mark.parametrize("feast", sorted(GIFT_DATES))
def test_gift_dates(feast: str) -> None:
    for year, day in zip(range(2026, 2031), GIFT_DATES[feast], strict=True):
        country = "US" if feast == "Thanksgiving" else "GB"
        assert day_in_year(feast, year, country) == date(year, *day)


BY_COUNTRY = [
    ("Mother's Day", "GB", 2027, (3, 7)),
    ("Mother's Day", "US", 2027, (5, 9)),  # reference.md 12
    ("Thanksgiving", "CA", 2027, (10, 11)),  # reference.md 12
    ("Midsummer", "GB", 2027, (6, 24)),
    ("Midsummer", "SE", 2027, (6, 26)),  # the Saturday between 20 and 26 June, Swedish law
    ("Midsummer", "FI", 2026, (6, 20)),
    # published lists of dates around the world, as public pages restate them (read 2026-11-28)
    ("Mother's Day", "NO", 2011, (2, 13)),
    ("Mother's Day", "HU", 2011, (5, 1)),
    ("Mother's Day", "PL", 2027, (5, 26)),
    ("Mother's Day", "MX", 2027, (5, 10)),
    ("Mother's Day", "IE", 2011, (4, 3)),
    ("Father's Day", "DE", 2011, (6, 2)),
    ("Father's Day", "AT", 2012, (6, 10)),
    ("Father's Day", "AU", 2027, (9, 5)),
    ("Father's Day", "NZ", 2027, (9, 5)),
    ("Father's Day", "IT", 2027, (3, 19)),
    ("Father's Day", "UY", 2012, (7, 8)),
    # France: the last Sunday of May was Pentecost in 2023 (28 May), so the feast was on 4 June
    ("Mother's Day", "FR", 2023, (6, 4)),
    ("Mother's Day", "FR", 2027, (5, 30)),
]


@pytest.mark.parametrize(("feast", "country", "year", "day"), BY_COUNTRY, ids=str)
def test_the_country_matters(feast: str, country: str, year: int, day: tuple[int, int]) -> None:
    assert day_in_year(feast, year, country) == date(year, *day)


# the holidays library's own lists of these countries: an independent reader of their law
LISTED = [
    ("Mother's Day", ["FI", "LV", "LT", "US", "CR", "PA", "GE", "SV"]),
    ("Father's Day", ["FI", "LT", "US", "SV"]),
    ("Midsummer", ["SE", "FI", "LV", "EE"]),
]


@pytest.mark.parametrize(
    ("feast", "country"), [(feast, one) for feast, countries in LISTED for one in countries]
)
def test_the_library_says_the_same(feast: str, country: str) -> None:
    named = "Midsummer Day" if feast == "Midsummer" else feast
    for year in range(2025, 2031):
        listed = holidays.country_holidays(
            country,
            years=year,
            language="en_US",
            categories=tuple(holidays.country_holidays(country).supported_categories),
        )
        ours = day_in_year(feast, year, country)
        assert ours is not None
        assert named in listed.get(ours, ""), (year, ours)


@pytest.mark.parametrize(
    ("feast", "country"),
    [
        ("Midsummer", "AU"),
        ("Midsummer", "NZ"),
        ("Midsummer", "ZA"),
        ("Thanksgiving", "GB"),
        ("Mother's Day", "IL"),
        ("Father's Day", "BG"),
    ],
)
def test_a_day_nobody_knows_is_asked(feast: str, country: str) -> None:
    with pytest.raises(Unreadable, match="does not know when") as asked:
        day_in_year(feast, 2027, country)
    assert asked.value.mend


# Dates governments published (from memory, except where noted):
# Lunar New Year 2024 10 Feb, 2025 29 Jan, 2026 17 Feb: State Council of China's yearly notices;
# Diwali 2024 31 Oct, 2025 20 Oct: India's central government holiday circulars (DoPT);
# Eid al-Fitr 2024 10 Apr, 2025 30 Mar: Turkey's Presidency of Religious Affairs calendar;
# Hanukkah (first evening) 2024 25 Dec, 2025 14 Dec; 2026 4 Dec and 2027 24 Dec: reference.md 12
PUBLISHED = [
    ("Lunar New Year", [(2024, 2, 10), (2025, 1, 29), (2026, 2, 17), (2027, 2, 6)]),
    ("Diwali", [(2024, 10, 31), (2025, 10, 20)]),
    ("Eid al-Fitr", [(2024, 4, 10), (2025, 3, 30)]),
    ("Hanukkah", [(2024, 12, 25), (2025, 12, 14), (2026, 12, 4), (2027, 12, 24)]),
]


@pytest.mark.parametrize(("feast", "days"), PUBLISHED, ids=[row[0] for row in PUBLISHED])
def test_feasts_of_other_calendars(feast: str, days: list[tuple[int, int, int]]) -> None:
    assert [day_in_year(feast, day[0]) for day in days] == [date(*day) for day in days]


AFTER = date(2026, 11, 25)
RULES = [
    ("the Saturday before Christmas", date(2026, 12, 19)),  # spec: 2026-12-19, 2027-12-18
    ("24 June", date(2027, 6, 24)),
    ("June 24th", date(2027, 6, 24)),
    ("2027-12-18", date(2027, 12, 18)),
    ("29 February", date(2028, 2, 29)),
    ("the day after Christmas", date(2026, 12, 26)),
    ("2 weeks before Easter", date(2027, 3, 14)),
    ("the last Monday of May", date(2027, 5, 31)),
    ("last Sunday before Christmas", date(2026, 12, 20)),
    ("the first Sunday after 1 May", date(2027, 5, 2)),
    ("the Friday nearest 24 June", date(2027, 6, 25)),
    ("the second Saturday before Christmas", date(2026, 12, 12)),
]


@pytest.mark.parametrize(("rule", "day"), RULES, ids=[rule for rule, _ in RULES])
def test_rule(rule: str, day: date) -> None:
    assert find_day(rule, AFTER) == day


def test_the_saturday_before_christmas_is_never_christmas_day() -> None:
    for year in range(2020, 2060):
        day = day_in_year("the Saturday before Christmas", year)
        assert day is not None
        assert day.weekday() == 5
        assert timedelta(days=1) <= date(year, 12, 25) - day <= timedelta(days=7)


REFUSED = [
    ("Chrismas", 'Did you mean "Christmas"?'),
    ("2027-02-30", "is not a date"),
    ("31 June", "is not a day of the year"),
    ("sometime", "is not a day"),
    ("2 months before Easter", "not counted in days or weeks"),
]


@pytest.mark.parametrize(("rule", "says"), REFUSED, ids=[rule for rule, _ in REFUSED])
def test_refused_rule(rule: str, says: str) -> None:
    with pytest.raises(ValueError, match=re.escape(says)):
        find_day(rule, AFTER)


def test_every_feast_comes_round() -> None:
    for feast in known_feasts():
        assert find_day(feast, AFTER, "US") >= AFTER


@pytest.mark.parametrize(
    ("rule", "country", "day"),
    [
        ("Labor Day", "US", "2027-09-06"),
        ("the Saturday before Labor Day", "US", "2027-09-04"),
        ("Canada Day", "CA", "2027-07-01"),
        ("Matariki", "NZ", "2027-06-25"),
        ("Anzac Day", "AU", "2027-04-25"),
        ("the 4th of July", "US", "2027-07-04"),
        ("St. Patrick's Day", "IE", "2027-03-17"),
        ("Mardi Gras", "US", "2027-02-09"),
    ],
)
def test_a_public_holiday_goes_by_its_countrys_own_list(rule: str, country: str, day: str) -> None:
    assert str(find_day(rule, date(2027, 1, 1), country)) == day


@pytest.mark.parametrize(("rule", "country"), [("Canada Day", "GB"), ("Labor Day", "XX")])
def test_another_countrys_holiday_is_asked(rule: str, country: str) -> None:
    with pytest.raises(Unreadable, match="is not a day"):
        find_day(rule, date(2027, 1, 1), country)
