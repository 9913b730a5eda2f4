"""Days as they are typed in haste, and the book's own giving days before others of their name.

What each must be was written before the first run (55 sayings, counted on from 1 June 2027 in the
United Kingdom); None is refused, with what to write.
"""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner

from stillroom.beginning.book import Answers, begin_book
from stillroom.cli import main
from stillroom.core.when.giving_days import find_day
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.reading import read_giving_list
from stillroom.giving.starter.answers import read_giving_day

OWN = (("Christmas", "the Saturday before Christmas"), ("Midsummer", "24 June"))
TODAY = date(2027, 6, 1)
SAID: dict[str, str | None] = {
    "xmas": "2027-12-25",
    "X-mas": "2027-12-25",
    "Xmas day": "2027-12-25",
    "xmas eve": "2027-12-24",
    "week before xmas": "2027-12-18",
    "a week before Christmas": "2027-12-18",
    "the week before Christmas": "2027-12-18",
    "one week before Xmas": "2027-12-18",
    "two weeks before xmas": "2027-12-11",
    "a fortnight before Christmas": "2027-12-11",
    "2 weeks before christmas day": "2027-12-11",
    "the day before Christmas": "2027-12-24",
    "24 dec": "2027-12-24",
    "dec 24": "2027-12-24",
    "24th Dec": "2027-12-24",
    "24 Dec.": "2027-12-24",
    "Dec. 24th": "2027-12-24",
    "24/12": "2027-12-24",
    "24.12.": "2027-12-24",
    "12/24": "2027-12-24",
    "5/6": None,
    "sat before christmas": "2027-12-18",
    "last sat before Xmas": "2027-12-18",
    "Saturday before xmas": "2027-12-18",
    "new years eve": "2027-12-31",
    "mothers day": "2028-03-26",
    "valentines day": "2028-02-14",
    "Valentines": "2028-02-14",
    "st patricks day": "2028-03-17",
    "st nicholas": "2027-12-06",
    "halloween": "2027-10-31",
    "hannukah": "2027-12-24",
    "hanukah": "2027-12-24",
    "easter sunday": "2028-04-16",
    "Easter": "2028-04-16",
    "a couple of weeks before Christmas": "2027-12-11",
    "the weekend before Christmas": None,
    "sometime in December": None,
    "Christmas week": None,
    "12 days before Christmas": "2027-12-13",
    "first of December": "2027-12-01",
    "the first of December": "2027-12-01",
    "1st December": "2027-12-01",
    "1 Dec": "2027-12-01",
    "fortnight before Easter": "2028-04-02",
    "Crimbo": None,
    "the Saturday before Christmas": "2027-12-18",
    "third Sunday in Dec": "2027-12-19",
    "3rd Sunday in December": "2027-12-19",
    "boxing day": "2027-12-26",
    "May 1": "2028-05-01",
    "marvellous day": None,
    "2027-12-24": "2027-12-24",
    "fri before xmas eve": "2027-12-17",
    "Thanksgiving": None,
}


@pytest.mark.parametrize(("said", "day"), SAID.items(), ids=SAID)
def test_a_day_as_it_is_typed(said: str, day: str | None) -> None:
    if day is None:
        with pytest.raises(ValueError, match=r"Write|Did you mean"):
            find_day(said, TODAY, "GB")
    else:
        assert find_day(said, TODAY, "GB").isoformat() == day


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("Christmas", "2027-12-18"),
        ("xmas", "2027-12-18"),
        ("Christmas 2028", "2028-12-23"),
        ("Christmas Day", "2027-12-25"),
        ("Christmas Eve", "2027-12-24"),
        ("week before xmas", "2027-12-18"),
        ("midsummer", "2027-06-24"),
        ("25 December", "2027-12-25"),
    ],
)
def test_the_books_own_day_of_a_name_goes_first(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, said: str, day: str
) -> None:
    begin_book(tmp_path / "book", Answers(title="Ours", giving_day=OWN[0][1]))
    monkeypatch.chdir(tmp_path / "book")
    words = ["dates", "recipes/vanilla-sugar.md", "--today", "2027-06-01", "--give", said, "--json"]
    done = CliRunner().invoke(main, words)
    assert done.exit_code == 0, done.output
    assert f'"{day}"' in done.output
    assert read_giving_day(said, TODAY, "GB", OWN).isoformat() == day


LIST = """giving list: Ours
giving day: {day}
baskets: {{small: {{eat: 1}}}}
makes: [{{recipe: plum-jam, per batch: 4}}]
households: [{{name: Wren, basket: small}}]
"""


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("Christmas 2027", "2027-12-18"),
        ("xmas 2027", "2027-12-18"),
        ("Christmas Day 2027", "2027-12-25"),
        ("Easter 2028", "2028-04-16"),
        ("24 Dec 2027", "2027-12-24"),
    ],
)
def test_so_it_does_on_the_giving_list(said: str, day: str) -> None:
    read = read_giving_list(LIST.format(day=said), "ours.yml", own_days=OWN)
    assert read.giving.giving_day.isoformat() == day
    other = read_giving_list(LIST.format(day="Christmas 2027"), "ours.yml")
    assert other.giving.giving_day.isoformat() == "2027-12-25", "a book without such a day"


def test_a_day_without_its_year_is_asked_on_the_giving_list() -> None:
    with pytest.raises(ProblemsFound, match='Say the year as well: "Christmas 2027"'):
        read_giving_list(LIST.format(day="Christmas"), "ours.yml", own_days=OWN)
