"""axe-core finds nothing to mend (WCAG 2.2 A and AA), by day and by night, on phone and desk."""

from __future__ import annotations

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

from sampling import is_whole

PAGES = (
    "/", "/browse/", "/year/", "/print-room/", "/about/", "/safely/", "/writing/",
    "/r/quince-ratafia/", "/r/felted-bauble/", "/r/layered-soup-mix/",
)  # fmt: skip
RULES = {
    "runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    "resultTypes": ["violations"],
}


def told(violations: list[dict[str, object]]) -> list[str]:
    """Say what is wrong and where, so that a failing test can be mended from its message."""
    return [
        f"{violation['id']}: {node['target']} {node['html'][:160]}"
        for violation in violations
        for node in violation["nodes"]  # type: ignore[attr-defined]
    ]


# test_every_page.py looks at each page in one of the other ways; of these two each page is seen
# in one, and in both when the whole is asked
@pytest.mark.sampled
@pytest.mark.parametrize(("turn", "width", "scheme"), [(0, 360, "light"), (1, 1280, "dark")])
def test_axe_finds_nothing(
    browser: Browser, book_address: str, turn: int, scheme: str, width: int
) -> None:
    context = browser.new_context(
        color_scheme=scheme,  # type: ignore[arg-type]
        viewport={"width": width, "height": 900},
    )
    page = context.new_page()
    found = {}
    for path in PAGES if is_whole() else PAGES[turn::2]:
        page.goto(book_address + path)
        violations = told(Axe().run(page, options=RULES).response["violations"])
        if violations:
            found[path] = violations
    context.close()
    assert found == {}


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
