"""What axe does not see: width on a phone, touch targets, where the first stop leads."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page

PAGES = (
    "/", "/browse/", "/year/", "/print-room/", "/about/", "/safely/", "/writing/", "/send/",
    "/r/quince-ratafia/", "/r/felted-bauble/", "/r/layered-soup-mix/",
)  # fmt: skip


@pytest.mark.parametrize("path", PAGES)
def test_nothing_is_wider_than_a_narrow_phone(page: Page, book_address: str, path: str) -> None:
    # WCAG 2.2 SC 1.4.10: no scrolling in two directions at 320 CSS px (from memory)
    page.set_viewport_size({"width": 320, "height": 800})
    page.goto(book_address + path)
    assert page.evaluate("document.documentElement.scrollWidth") <= 320


def test_what_can_be_pressed_is_large_enough(page: Page, book_address: str) -> None:
    # WCAG 2.2 SC 2.5.8: 24 by 24 CSS px; links within a sentence are excepted
    page.goto(f"{book_address}/r/quince-ratafia/")
    small = page.evaluate(
        """() => [...document.querySelectorAll("article :is(button, input, select), nav a")]
          .filter((one) => one.offsetParent)
          .map((one) => [one.outerHTML.slice(0, 90), one.getBoundingClientRect()])
          .filter(([, box]) => box.width < 24 || box.height < 24)
          .map(([html]) => html)"""
    )
    assert small == []


def test_the_skip_link_leads_to_the_page(page: Page, book_address: str) -> None:
    page.goto(f"{book_address}/r/quince-ratafia/")
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.classList.contains('md-skip')")
    page.keyboard.press("Enter")
    assert page.evaluate("location.hash") == "#leaf"
