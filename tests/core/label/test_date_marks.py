"""Date marks in the form of Annex X of Regulation (EU) No 1169/2011."""

from __future__ import annotations

from datetime import date

import pytest

from stillroom.core.label.date_marks import annex_mark, mark_date, say_date
from stillroom.core.when.spans import parse_span

E9 = "Reg. (EU) 1169/2011 Annex X 1(c), as worked in reference.md E9"
CLAMP = "reference.md 6.3: clamp to the end of the month"

# (made on, keeps, mark, ISO date, source)
MARKS = [
    (date(2026, 11, 25), "3 weeks", "Best before 16 December", "2026-12-16", E9),
    (date(2026, 11, 25), "3 months", "Best before 25 February 2027", "2027-02-25", E9),
    (date(2026, 11, 25), "4 months", "Best before end March 2027", "2027-03-25", E9),
    (date(2026, 11, 25), "18 months", "Best before end May 2028", "2028-05-25", E9),
    (date(2026, 11, 25), "19 months", "Best before end 2028", "2028-06-25", E9),
    (date(2027, 1, 31), "1 month", "Best before 28 February", "2027-02-28", E9),
    (date(2027, 8, 31), "6 months", "Best before end February 2028", "2028-02-29", CLAMP),
    (
        date(2026, 11, 25),
        "2-3 months",
        "Best before 25 January 2027",
        "2027-01-25",
        "the short end",
    ),
    (date(2027, 12, 31), "90 days", "Best before 30 March 2028", "2028-03-30", E9),
    (date(2027, 12, 31), "95 days", "Best before end April 2028", "2028-04-04", E9),
]


@pytest.mark.parametrize(("made_on", "keeps", "text", "iso", "source"), MARKS)
def test_best_before_has_the_form_of_annex_x(
    made_on: date, keeps: str, text: str, iso: str, source: str
) -> None:
    mark = annex_mark("best before", parse_span(keeps), made_on, "en_GB", "")
    assert (mark.text, mark.iso) == (text, iso), source


FINER = "Reg. (EU) 1169/2011 Art. 2(2)(r): the date until which it retains its properties"

# (made on, keeps, mark, ISO date, source): a card's month and year lie wholly within the keeping
CARDS = [
    *(row for row in MARKS if " end " not in row[2] or row[3].endswith("02-29")),
    (date(2026, 11, 25), "4 months", "Best before end February 2027", "2027-03-25", FINER),
    (date(2026, 11, 25), "18 months", "Best before end April 2028", "2028-05-25", FINER),
    (date(2027, 12, 31), "95 days", "Best before end March 2028", "2028-04-04", FINER),
    (date(2026, 8, 31), "4 months", "Best before end December 2026", "2026-12-31", FINER),
    (date(2026, 9, 1), "4 months", "Best before end December 2026", "2027-01-01", FINER),
    (date(2026, 11, 25), "19 months", "Best before end May 2028", "2028-06-25", FINER),
    (date(2026, 11, 25), "3 years", "Best before end October 2029", "2029-11-25", FINER),
    (date(2026, 11, 30), "3 years", "Best before end November 2029", "2029-11-30", FINER),
    (date(2027, 1, 25), "2 years", "Best before end December 2028", "2029-01-25", FINER),
    (date(2026, 12, 1), "3 years", "Best before end November 2029", "2029-12-01", FINER),
    (date(2026, 12, 31), "3 years", "Best before end 2029", "2029-12-31", FINER),
    (date(2026, 2, 28), "2 years", "Best before end January 2028", "2028-02-28", "a leap year"),
]


@pytest.mark.parametrize(("made_on", "keeps", "text", "iso", "source"), CARDS)
def test_a_card_promises_no_year_that_runs_past_the_keeping(
    made_on: date, keeps: str, text: str, iso: str, source: str
) -> None:
    mark = mark_date("best before", parse_span(keeps), made_on, "en_GB", "")
    assert (mark.text, mark.iso) == (text, iso), source


def test_use_by_always_shows_the_day_and_the_year() -> None:
    mark = mark_date("use by", parse_span("2 weeks"), date(2026, 11, 25), "en_GB", "")
    assert mark.text == "Use by 9 December 2026"


@pytest.mark.parametrize(
    ("term", "keeps", "text"),
    [
        ("best before", "3 months", "Best by February 25, 2027"),
        ("best before", "4 months", "Best by the end of February 2027"),
        ("use by", "4 days", "Use by November 29, 2026"),
    ],
)
def test_an_american_book_words_it_as_there(term: str, keeps: str, text: str) -> None:
    mark = mark_date(term, parse_span(keeps), date(2026, 11, 25), "en_US", "")  # type: ignore[arg-type]
    assert mark.text == text


def test_without_a_day_of_making_it_counts_from_it() -> None:
    mark = mark_date("best before", parse_span("6 months"), None, "en_GB", "why")
    assert mark.text == "Best before: 6 months from the day it was made"
    assert mark.iso == ""


def test_no_date_says_why() -> None:
    mark = mark_date("none", None, date(2026, 11, 25), "en_GB", "It is not food.")
    assert (mark.text, mark.why) == ("", "It is not food.")


def test_days_are_said_in_the_books_language() -> None:
    assert say_date(date(2026, 11, 25), "de_DE") == "25. November 2026"
