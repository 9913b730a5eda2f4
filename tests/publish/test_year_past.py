"""On the year's page, what is past of this month is said to be past, and nothing else is."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from bs4 import BeautifulSoup

from stillroom.beginning.book import Answers, begin_book
from stillroom.core.book import open_book
from stillroom.publish.library import Library
from stillroom.publish.year_page import YearLeaf


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
