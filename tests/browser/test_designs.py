"""Every design in the browsers: its true size, its border, places that are gone."""

from __future__ import annotations

import io
from itertools import pairwise

import pdfplumber
import pytest
from playwright.sync_api import Page

from browser.firefox import Firefox
from sampling import share
from stillroom.looks.card_designs import designs_of

from .conftest import wait_until
from .test_printing import MM, TOLERANCE_MM, gaps, open_page, print_page

FLAT = [name for name, design in designs_of().items() if not design.large]
SAMPLE = FLAT[: share(3, len(FLAT))]  # plain, the drawing large, the leaves; all in the whole run


@pytest.mark.sampled
@pytest.mark.parametrize("name", SAMPLE)
def test_cards_of_every_design_print_at_their_true_size(
    page: Page, book_address: str, name: str
) -> None:
    open_page(page, f"{book_address}/r/rosemary-salt/")
    page.select_option("stillroom-card select[name=design]", name)
    page.click("stillroom-card button[type=submit]")
    across, down = gaps(print_page(page))
    assert max(abs(gap - 90) for gap in across) < TOLERANCE_MM
    assert max(abs(gap - 65) for gap in down) < TOLERANCE_MM


def test_large_type_takes_a_larger_card_by_itself_and_says_so(
    page: Page, book_address: str
) -> None:
    open_page(page, f"{book_address}/r/cocoa-marshmallow-mix/")
    page.check("stillroom-card input[name=large]")
    wait_until(page, "document.querySelector('.card-status').textContent.includes('large type')")
    page.click("stillroom-card button[type=submit]")
    pdf = print_page(page)
    chars = [char for one in pdf.pages for char in one.chars if char["text"].strip()]
    sizes = {round(char["size"], 1) for char in chars}
    assert min(sizes) >= 11.9


def test_a_border_is_on_paper_in_its_own_colours(page: Page, book_address: str) -> None:
    open_page(page, f"{book_address}/r/rosemary-salt/")
    counts = {}
    for name in ("plain", "leaves"):
        page.select_option("stillroom-card select[name=design]", name)
        page.click("stillroom-card button[type=submit]")
        pdf = print_page(page)
        counts[name] = len(pdf.pages[0].curves) + len(pdf.pages[0].images)
        page.evaluate("dispatchEvent(new Event('afterprint'))")
    assert counts["leaves"] > counts["plain"]


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


@pytest.mark.sampled
def test_firefox_prints_a_card_of_every_border_at_its_true_size(
    firefox: Firefox, book_address: str
) -> None:
    firefox.goto(f"{book_address}/r/rosemary-salt/")
    for name in ["leaves", *FLAT][: share(1, len(FLAT) + 1)]:
        firefox.evaluate(
            f"""(async () => {{
              window.print = () => {{}};
              const form = document.querySelector("stillroom-card form");
              while (form.hidden) await new Promise((go) => setTimeout(go, 20));
              form.elements.design.value = "{name}";
              form.dispatchEvent(new Event("input", {{ bubbles: true }}));
              form.requestSubmit();
              return true;
            }})()"""
        )
        with pdfplumber.open(io.BytesIO(firefox.print())) as pdf:
            first = pdf.pages[0]
            points = [
                point
                for curve in (*first.curves, *first.lines, *first.rects)
                if curve["height"] > 700 or curve["width"] > 550
                for point in curve["pts"]
            ]
            xs = sorted({round(x / MM, 1) for x, _ in points})
        assert any(abs(b - a - 90) < 0.3 for a, b in pairwise(xs)), (name, xs)
        firefox.evaluate("dispatchEvent(new Event('afterprint')) && true")
