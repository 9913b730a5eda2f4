"""The book in Firefox: every page whole, every picture in sight, nothing wider than a telephone."""

from __future__ import annotations

import base64
import io
from pathlib import Path

import pdfplumber
import pytest

from browser.firefox import Firefox
from sampling import share

ERRORS = """
    window.wrongs = [];
    addEventListener("error", (event) => window.wrongs.push(String(event.message)));
    addEventListener("unhandledrejection", (event) => window.wrongs.push(String(event.reason)));
    addEventListener("securitypolicyviolation", (event) => window.wrongs.push(event.blockedURI));"""
WIDER = "document.documentElement.scrollWidth - innerWidth"
SMALL = """[...document.images].filter((image) => image.checkVisibility()
    && (image.clientWidth < 8 || image.clientHeight < 8)).map((image) => image.src)"""
SETTLED = """(async () => {
    for (const image of document.images) image.loading = "eager";
    await Promise.all([...document.images].map((image) => image.decode().catch(() => null)));
    return true;
})()"""


def pages_of(site: Path) -> list[str]:
    paths = (path.relative_to(site).as_posix() for path in site.rglob("index.html"))
    return sorted(path.removesuffix("index.html") for path in paths)


def leads_on(folder: Path) -> bool:
    return 'http-equiv="refresh"' in (folder / "index.html").read_text(encoding="utf-8")


def some_pages_of(site: Path) -> list[str]:
    pages = pages_of(site)
    recipes = [path for path in pages if path.startswith("r/") and not leads_on(site / path)]
    left_out = {*recipes} - {*recipes[:: share(4, 1)]}
    return [path for path in pages if path not in left_out]


@pytest.mark.sampled
def test_every_page_is_whole_in_firefox(
    firefox: Firefox, built_book: Path, book_address: str
) -> None:
    """Each is opened as wide as a desk or as a telephone, in turn, and then made the other.

    Of the recipes' own pages, which one template makes, a run opens a quarter; their pictures are
    all on the page that lists them.
    """
    seen = moved = 0
    widths = [1280, 320]
    with firefox.before_each_page(ERRORS):
        for path in some_pages_of(built_book):
            firefox.resize(widths[0], 900)
            # what leads on to another page is asked nothing: it may go at any moment
            leads = leads_on(built_book / path)
            (firefox.goto_moved if leads else firefox.goto)(f"{book_address}/{path}")
            moved += leads
            assert firefox.evaluate(SETTLED)
            seen += firefox.evaluate("document.images.length")
            for width in widths:
                firefox.resize(width, 900)
                assert firefox.evaluate("innerWidth") == width
                assert firefox.evaluate(SMALL) == [], (path, width)
                assert firefox.evaluate(WIDER) <= 0, (path, width)
            assert firefox.evaluate("window.wrongs") == [], path
            widths.reverse()
    assert seen > 50
    assert moved >= 1


def test_a_recipe_s_picture_is_on_firefox_s_paper(firefox: Firefox, book_address: str) -> None:
    firefox.goto(f"{book_address}/r/quince-chutney/")
    printed = firefox.print()
    with pdfplumber.open(io.BytesIO(printed)) as pdf:
        drawn = pdf.pages[0].curves
    # the drawing is hundreds of curves; a page without it has the few of its rules
    assert len(drawn) > 50


def test_firefox_s_picture_of_a_page_is_a_picture(firefox: Firefox, book_address: str) -> None:
    firefox.goto(f"{book_address}/")
    assert firefox.screenshot().startswith(base64.b64decode("iVBORw0KGgo="))


def test_the_book_reads_from_a_folder_in_firefox(firefox: Firefox, built_book: Path) -> None:
    firefox.goto((built_book / "r" / "quince-chutney" / "index.html").as_uri())
    assert "EB Garamond" in firefox.evaluate("getComputedStyle(document.body).fontFamily")
    assert firefox.evaluate(SETTLED)
    assert firefox.evaluate("document.querySelector('.opening__picture img').naturalWidth") > 0
