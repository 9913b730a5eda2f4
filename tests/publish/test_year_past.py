"""On the year's page, what is past of this month is said to be past, and nothing else is."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from bs4 import BeautifulSoup

from stillroom.beginning.book import Answers, begin_book
from stillroom.core.book import open_book
from stillroom.publish.library import Library
from stillroom.publish.year_page import YearLeaf, year_of


def _starts(folder: Path, today: date) -> tuple[str, str]:
    begin_book(folder, Answers(title="Tried", giving_day="24 December"))
    book = open_book(folder / "mkdocs.yml")
    library = Library(book, book.load(), today)
    page = YearLeaf().body(library, "", lambda uri: uri, "")
    rows = BeautifulSoup(page, "html.parser").select(".year-table tbody tr")
    cells = [" ".join(row.select("td")[0].get_text(" ", strip=True).split()) for row in rows]
    return cells[0], " ".join(cells[1:])


def test_what_is_past_is_said(tmp_path: Path) -> None:
    first = _starts(tmp_path / "early", date(2026, 11, 1))
    starts = " ".join(first)
    assert "Vanilla sugar" in starts
    assert "(past)" not in starts
    # on the last day of the same month, all that was to be begun in it before
    this, later = _starts(tmp_path / "late", date(2026, 11, 30))
    assert this.count("(past)") == this.count("Vanilla sugar") == 1
    assert "(past)" not in later


SOAP = """---
title: Rosemary soap
kind: craft
makes: 8 bars
ingredients:
  - 500 g soap base
---

## Method

1. Leave the bars to cure for 6 weeks.
"""


def test_what_is_too_late_stands_in_the_next_year(tmp_path: Path) -> None:
    """Soap that wanted a start by 10 November is not given this Christmas, as its page says."""
    begin_book(tmp_path, Answers(title="Tried", giving_day="24 December"))
    (tmp_path / "recipes" / "rosemary-soap.md").write_text(SOAP, encoding="utf-8")
    book = open_book(tmp_path / "mkdocs.yml")
    loaded = book.load()
    given = {}
    for today in (date(2026, 11, 2), date(2026, 11, 29)):
        year = year_of(Library(book, loaded, today))
        given[today.day] = [
            band.occasion.day.year for band in year.bands if band.slug == "rosemary-soap"
        ]
        assert all(
            band.timeline.start >= today for band in year.bands if band.slug == "rosemary-soap"
        )
    assert given == {2: [2026], 29: [2027]}
