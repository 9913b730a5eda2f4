"""The sheet and the year as Firefox prints them, and as a telephone's browser would."""

from __future__ import annotations

import io

import pdfplumber
import pytest
from playwright.sync_api import Browser

from browser.firefox import Firefox

from .conftest import wait_until
from .test_designs import sides_of
from .test_kitchen_sheet import READY

BUTTON = ".print-room-form button[type=submit]"
MM = 72 / 25.4
MARGIN_MM = 15
PAPERS = {"A4": (210, 297), "US Letter": (215.9, 279.4)}
PRESS = """[...document.querySelectorAll("button")]
    .find((one) => one.textContent.includes("Print the kitchen sheet")).click()"""
CHOOSE = """(() => { const paper = document.querySelector("[data-share=paper]");
    paper.value = [...paper.options].find((one) => one.label === "%s").value;
    paper.dispatchEvent(new Event("change", { bubbles: true })); return true; })()"""
PRINTING = "document.body.classList.contains('printing-kitchen-sheet')"


def edges_of(made: bytes) -> list[tuple[float, float, float, float]]:
    """Return each page's width and height and where its words begin and end across, in mm."""
    with pdfplumber.open(io.BytesIO(made)) as pdf:
        return [
            (
                float(page.width) / MM,
                float(page.height) / MM,
                min(char["x0"] for char in page.chars) / MM,
                max(char["x1"] for char in page.chars) / MM,
            )
            for page in pdf.pages
        ]


def widest_rule(made: bytes) -> float:
    with pdfplumber.open(io.BytesIO(made)) as pdf:
        return max(one["width"] for page in pdf.pages for one in page.rects) / MM


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("slug", ["heather-mead", "quince-chutney"])
def test_firefox_prints_the_kitchen_sheet_at_its_true_size(
    firefox: Firefox, book_address: str, slug: str, paper: str
) -> None:
    width, height = PAPERS[paper]
    firefox.goto(f"{book_address}/r/{slug}/")
    firefox.evaluate("window.print = () => {}")
    firefox.wait_for(f"({READY})()")
    assert firefox.evaluate(CHOOSE % paper)
    firefox.evaluate(PRESS)
    firefox.wait_for(PRINTING)
    made = firefox.print(width_mm=width, height_mm=height)
    found = edges_of(made)
    assert 1 <= len(found) <= 2
    for wide, high, left, right in found:
        assert (wide, high) == pytest.approx((width, height), abs=0.5)
        assert left == pytest.approx(MARGIN_MM, abs=0.6)
        assert right <= width - MARGIN_MM + 0.6
    # what is ruled from margin to margin is as wide as the paper leaves room for
    assert widest_rule(made) == pytest.approx(width - 2 * MARGIN_MM, abs=0.5)


@pytest.mark.parametrize("paper", PAPERS)
def test_firefox_prints_the_year_at_its_true_size(
    firefox: Firefox, book_address: str, paper: str
) -> None:
    width, height = PAPERS[paper]
    firefox.goto(f"{book_address}/year/")
    found = edges_of(firefox.print(width_mm=width, height_mm=height))
    for wide, _high, left, right in found:
        assert wide == pytest.approx(width, abs=0.5)
        assert left == pytest.approx(MARGIN_MM, abs=0.6)
        assert right <= width - MARGIN_MM + 0.6


def test_a_telephone_prints_the_sheet_that_a_desk_prints(
    browser: Browser, book_address: str
) -> None:
    made = []
    for held in (
        {"viewport": {"width": 1280, "height": 900}},
        {
            "viewport": {"width": 390, "height": 844},
            "device_scale_factor": 3,
            "is_mobile": True,
            "has_touch": True,
        },
    ):
        context = browser.new_context(**held)  # type: ignore[arg-type]
        page = context.new_page()
        page.goto(f"{book_address}/r/heather-mead/")
        page.evaluate("window.print = () => {}")
        wait_until(page, READY)
        page.select_option("[data-share=paper]", label="A4")
        page.evaluate(PRESS)
        page.wait_for_selector("body.printing-kitchen-sheet", state="attached")
        made.append(page.pdf(prefer_css_page_size=True))
        context.close()
    desk, telephone = (edges_of(one) for one in made)
    assert len(desk) == len(telephone)
    for one, other in zip(desk, telephone, strict=True):
        assert other == pytest.approx(one, abs=0.3)


def test_a_telephone_prints_the_cards_that_a_desk_prints(
    browser: Browser, book_address: str
) -> None:
    """At their true size; a dialog that shrinks shrinks them, and the ruler with them."""
    made = []
    for held in (
        {"viewport": {"width": 1280, "height": 900}},
        {
            "viewport": {"width": 390, "height": 844},
            "device_scale_factor": 3,
            "is_mobile": True,
            "has_touch": True,
        },
    ):
        context = browser.new_context(**held)  # type: ignore[arg-type]
        page = context.new_page()
        page.goto(f"{book_address}/print-room/?recipe=rosemary-salt&count=2")
        page.evaluate("window.print = () => {}")
        wait_until(page, "!document.querySelector('.print-room-form').hidden")
        wait_until(page, "!!document.querySelector('.print-room-preview .sheet-page')")
        page.tap(BUTTON) if "has_touch" in held else page.click(BUTTON)
        page.wait_for_selector("body.printing-sheets", state="attached")
        made.append(page.pdf(prefer_css_page_size=True))
        if "has_touch" in held:
            made.append(page.pdf(format="A4", scale=0.94))
        context.close()
    desk, telephone, shrunk = (sides_of(one, (90, 65)) for one in made)
    assert len(desk) == len(telephone) == 8
    for one, other in zip(desk, telephone, strict=True):
        assert other == pytest.approx(one, abs=0.1)
        assert other == pytest.approx((90, 65), abs=0.3)
    assert {round(wide) for wide, _ in shrunk} <= {85}
