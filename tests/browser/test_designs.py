"""Designs in the browser: places of a half-used sheet are clicked and passed over."""

from __future__ import annotations

from playwright.sync_api import Page

from .conftest import wait_until
from .test_printing import open_page


def test_places_that_are_gone_are_clicked_and_passed_over(page: Page, book_address: str) -> None:
    open_page(page, f"{book_address}/print-room/?recipe=rosemary-salt&count=2")
    wait_until(page, "document.querySelectorAll('.print-room-places input').length === 8")
    page.click(".print-room-labels summary")
    for place in (0, 2, 3):
        page.check(f".print-room-places [data-place='{place}']")
    corners = page.eval_on_selector_all(
        ".print-room-preview .sheet-place",
        "all => all.map((one) => one.style.left)",
    )
    assert len(corners) >= 2
    assert corners[0].startswith("105mm")  # the second place is the upper right one
    assert "15mm" in corners[1]  # the fifth is on the left again
