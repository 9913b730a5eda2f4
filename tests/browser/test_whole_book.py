"""The whole book on one page: what stands on it, what does not, and how browsers print it."""

from __future__ import annotations

import io
import json
import re
from datetime import date
from pathlib import Path
from typing import Any
from unicodedata import normalize

import pdfplumber
import pytest
from bs4 import BeautifulSoup
from playwright.sync_api import Page

from browser.firefox import Firefox
from stillroom.core.book import open_book
from stillroom.publish import whole_book
from stillroom.publish.library import Library

ROOT = Path(__file__).resolve().parents[2]
MM = 72 / 25.4
MARGIN_MM = 15
TITLES = {
    path.stem: re.search(r"^title: (.+)$", path.read_text(encoding="utf-8"), re.M)[1].strip()  # type: ignore[index]
    for path in sorted((ROOT / "recipes").glob("*.md"))
}

READ = ".ingredients li, .steps li, .take-care__caution p, .take-care__defer"


@pytest.fixture(scope="module")
def whole(built_book: Path) -> BeautifulSoup:
    page = (built_book / "whole-book" / "index.html").read_text(encoding="utf-8")
    return BeautifulSoup(page, "html.parser")


def test_every_recipe_is_on_it_whole_and_no_card_is(whole: BeautifulSoup, built_book: Path) -> None:
    assert whole.select(".usage-card, stillroom-card, stillroom-print-room") == []
    assert {one.get_text() for one in whole.select(".whole-recipe h2")} >= set(TITLES.values())
    names = [str(one["id"]) for one in whole.select("[id]")]
    assert len(names) == len(set(names))
    for link in whole.select('.leaf a[href^="#"], .leaf [aria-labelledby]'):
        target = str(link.get("href", "")).removeprefix("#") or str(link.get("aria-labelledby"))
        assert set(target.split()) <= set(names)
    regions = [str(one["aria-labelledby"]) for one in whole.select("section[aria-labelledby]")]
    assert len(regions) == len(set(regions)), "no two are called alike"
    for slug in TITLES:
        own = (built_book / "r" / slug / "index.html").read_text(encoding="utf-8")
        page = BeautifulSoup(own, "html.parser")
        part = whole.find(id=f"{slug}-{slug}").find_parent(class_="whole-recipe")  # type: ignore[union-attr]
        said = " ".join(part.get_text(" ").split())  # type: ignore[union-attr]
        for one in page.select(
            ".ingredients li, .steps li, .take-care__caution p, .take-care__defer"
        ):
            assert " ".join(one.get_text(" ").split()) in said, (slug, one.get_text())


def test_no_search_finds_it(whole: BeautifulSoup, built_book: Path) -> None:
    index = json.loads((built_book / "search" / "search_index.json").read_text(encoding="utf-8"))
    assert [one["location"] for one in index["docs"] if one["location"].startswith("whole")] == []
    assert whole.select_one('meta[name="robots"]')["content"] == "noindex"  # type: ignore[index]
    assert "whole-book" not in (built_book / "sitemap.xml").read_text(encoding="utf-8")
    room = (built_book / "print-room" / "index.html").read_text(encoding="utf-8")
    assert 'href="../whole-book/"' in room
    recipe = BeautifulSoup(
        (built_book / "r" / "quince-ratafia" / "index.html").read_bytes(), "html.parser"
    )
    assert recipe.select('meta[name="robots"]') == []


@pytest.mark.parametrize("width", [320, 1280])
def test_it_fits_a_telephone_and_a_desk(page: Page, book_address: str, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    page.goto(f"{book_address}/whole-book/")
    assert page.evaluate("document.documentElement.scrollWidth") <= width


def check_print(made: bytes, wide_mm: float) -> None:
    """Each recipe begins a sheet of the paper's size, and no word stands in the margins."""
    with pdfplumber.open(io.BytesIO(made)) as pdf:
        tops = []
        for sheet in pdf.pages:
            assert float(sheet.width) / MM == pytest.approx(wide_mm, abs=0.3)
            words = sheet.chars
            assert min(one["x0"] for one in words) / MM >= MARGIN_MM - 0.6
            assert max(one["x1"] for one in words) / MM <= wide_mm - MARGIN_MM + 0.6
            top = normalize("NFKC", sheet.extract_text_lines()[0]["text"])
            # Firefox draws "ff" as one sign and does not tell in its file what letters that is
            tops.append(re.escape(top).replace("\ufffd", "f[fil]{1,2}"))
        pictures = sum(len(sheet.curves) > 20 for sheet in pdf.pages)
    missing = [one for one in TITLES.values() if not any(re.fullmatch(top, one) for top in tops)]
    assert missing == []
    assert pictures >= 19


def test_chromium_prints_each_recipe_on_a_sheet_of_its_own(page: Page, book_address: str) -> None:
    page.goto(f"{book_address}/whole-book/")
    check_print(page.pdf(prefer_css_page_size=True, format="A4"), 210)


def test_firefox_prints_each_recipe_on_a_sheet_of_its_own(
    firefox: Firefox, book_address: str
) -> None:
    firefox.goto(f"{book_address}/whole-book/")
    check_print(firefox.print(width_mm=210, height_mm=297), 210)


def test_a_long_book_is_parted_and_each_part_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(whole_book, "MOST_ON_PAGE", 7)
    book = open_book(ROOT / "mkdocs.yml")
    library = Library(book, book.load(), date(2026, 11, 28))
    first, *parts = whole_book.list_wholes(library)
    assert [len(part.recipes) for part in parts] == [7, 7, 6]
    named = [one.slug for part in parts for one in part.recipes]
    assert sorted(named) == sorted(TITLES)

    def link(uri: str) -> Any:
        return f"../{uri}"

    said = BeautifulSoup(first.body(library, "", link, ""), "html.parser")
    assert [str(one["href"]) for one in said.select(".whole-parts a")] == [
        f"../whole-book/{number}.md" for number in (1, 2, 3)
    ]
    assert said.select(".whole-recipe") == []
    made = BeautifulSoup(parts[2].body(library, "", link, ""), "html.parser")
    assert len(made.select(".whole-recipe")) == 6
