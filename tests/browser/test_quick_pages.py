"""What browsers print is read by one pattern as pdfminer reads it sign by sign."""

from __future__ import annotations

from playwright.sync_api import Page

from browser.firefox import Firefox
from printing.test_quick_pages import quick_behind, read_both_ways  # noqa: F401

RATAFIA = "/r/quince-ratafia/"


def test_what_chromium_prints(page: Page, book_address: str) -> None:
    page.goto(f"{book_address}{RATAFIA}")
    read_both_ways(page.pdf(prefer_css_page_size=True))


def test_what_firefox_prints(firefox: Firefox, book_address: str) -> None:
    firefox.goto(f"{book_address}{RATAFIA}")
    read_both_ways(firefox.print())
