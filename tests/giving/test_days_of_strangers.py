"""Days, hours, weights and countries as strangers write them: as meant, or one question.

Written before they were tried (29 November 2026). Read as another thing then, in silence: "Monday
24 December 2027" (a Friday), "NI" (Nicaragua), "EU" (a country).
"""

from __future__ import annotations

from datetime import date
from fractions import Fraction as F

import pytest

from stillroom.core.words.problems import Unreadable
from stillroom.giving.written import read_day, read_hours
from stillroom.giving.written_time import (
    read_countries,
    read_day_hours,
    read_days_off,
    read_few_hours,
    read_weight,
)

EVE = date(2027, 12, 24)
EVES = """24 December 2027; 24th December 2027; 24th of December, 2027; December 24, 2027;
Dec 24th 2027; Dec. 24, 2027; 24 Dec 2027; 24/12/2027; 24.12.2027; 24. Dezember 2027; 24. Dez. 2027;
24 déc. 2027; le 24 décembre 2027; 24 Decembre 2027; 24 de diciembre de 2027; 24 dicembre 2027;
24 december 2027; 24-12-2027; 2027/12/24; 2027.12.24; 12/24/2027; Christmas Eve 2027;
Hanukkah 2027; first night of Hanukkah 2027; Chanukka 2027; Hanoucca 2027;
Friday 24 December 2027; Fri 24 Dec 2027; Freitag, 24. Dezember 2027; vendredi 24 décembre 2027"""
NO_DAYS = """12/11/2027; 11-12-2027; 24 December; 24/12/27; 24 Dec '27; 31 November 2027;
29 February 2027; next Saturday; 24 Decmber 2027; mid December 2027; Monday 24 December 2027;
lundi 24 décembre 2027"""
HOURS = {"1h30": F(3, 2), "1 h 30": F(3, 2), "1:30": F(3, 2), "1 hour 30 minutes": F(3, 2),
    "90 minutes": F(3, 2), "90 min": F(3, 2), "half an hour": F(1, 2), "an hour": F(1),
    "1 1/2": F(3, 2), "1½": F(3, 2), "1,5": F(3, 2), "1.5 h": F(3, 2), "two hours": F(2),
    "3 Stunden": F(3), "3 heures": F(3), "3 uur": F(3), "3 ore": F(3), "3 horas": F(3),
    "none": F(0)}  # fmt: skip
NO_HOURS = ["2-3", "about 3", "a few", "-1", "1 day", "evening", "1h75", "6 hours a week", True]
SPANS = """1-14 August 2027; 1 August - 14 August 2027; 1 to 14 August 2027;
from 1 August 2027 to 14 August 2027; 1. bis 14. August 2027; du 1er au 14 août 2027;
2027-08-01 to 2027-08-14; 2027-08-01..2027-08-14"""


def _each(text: str) -> list[str]:
    return [" ".join(one.split()) for one in text.split(";")]


@pytest.mark.parametrize("said", _each(EVES))
def test_a_day_is_read(said):
    assert read_day(said) == EVE


@pytest.mark.parametrize("said", _each(NO_DAYS))
def test_no_day_or_one_of_two_meanings_is_asked_about(said):
    with pytest.raises(Unreadable) as asked:
        read_day(said)
    assert asked.value.mend


def test_half_a_year_is_asked_for_with_the_whole_of_it():
    with pytest.raises(Unreadable, match="not a day") as asked:
        read_day("24/12/27")
    assert asked.value.mend == 'Write all of the year: "24/12/2027".'


@pytest.mark.parametrize("said", HOURS)
def test_hours_are_read_alike_of_a_week_and_of_a_month(said):
    assert read_few_hours(said) == HOURS[said]
    assert read_hours({"every month": said})[1] == HOURS[said]


@pytest.mark.parametrize("said", NO_HOURS)
def test_what_is_no_hours_is_asked_about(said):
    for read in (read_few_hours, lambda said: read_hours({"every month": said})):
        with pytest.raises(Unreadable):
            read(said)


def test_days_and_months_are_called_as_one_calls_them():
    assert read_day_hours({"weekends": 3})[6] == 3
    assert read_day_hours({"Samstag": 3, "monday and friday": 1})[4] == 1
    assert read_hours({"dec": 10, "août": 2})[8] == 2


@pytest.mark.parametrize("said", _each(SPANS))
def test_days_off_are_read_in_a_span(said):
    days = read_days_off([said])
    assert (len(days), min(days), max(days)) == (14, date(2027, 8, 1), date(2027, 8, 14))


@pytest.mark.parametrize(
    ("said", "code"),
    [
        ("Frankreich", "FR"),
        ("Allemagne", "DE"),
        ("Holland", "NL"),
        ("Schottland", "GB"),
        ("Éire", "IE"),
        ("Österreich", "AT"),
        ("U.S.A.", "US"),
        ("no", "NO"),
        ("Spagna", "ES"),
    ],
)
def test_a_country_is_known_in_six_languages(said, code):
    assert read_countries(said) == (code,)


@pytest.mark.parametrize("said", ["NI", "EU", "Europe", "abroad", "Korea"])
def test_what_is_no_country_or_two_is_asked_about(said):
    with pytest.raises(Unreadable):
        read_countries(said)


def test_a_comma_before_a_tenth_of_a_kilo_is_read_and_a_bare_number_is_no_weight():
    assert read_weight("0,35 kg") == 350
    with pytest.raises(Unreadable):
        read_weight("350")


@pytest.mark.parametrize("said", ["Lucia", "St Lucia's Day", "Santa Lucia", "Luciadagen"])
def test_the_day_of_st_lucy_has_her_names(said):
    assert read_day(f"{said} 2027") == date(2027, 12, 13)
