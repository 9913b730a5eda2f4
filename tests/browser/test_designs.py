"""Every design in the browsers: its true size, its border, places that are gone."""

from __future__ import annotations

import io
from itertools import pairwise

import pdfplumber
import pytest
from playwright.sync_api import Page

from browser.firefox import Firefox
from sampling import is_whole, share
from stillroom.core.paper.tag_shapes import tag_shape
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


BOX = tag_shape("rectangle").box
# what is chosen in the print room, and the sides of one of it in mm
THINGS = {
    "card": ("card", "90x65", (90, 65)),
    "folded card": ("card", "folded-a6", (210, 148)),
    "tag": ("rectangle", "90x65", (float(BOX.width_mm), float(BOX.height_mm))),
}
PAIRS = [(name, thing) for name in designs_of() for thing in THINGS]
FEW = [("leaves", "card"), ("winter", "folded card"), ("photograph", "tag")]


def sides_of(made: bytes, sides: tuple[float, float]) -> list[tuple[float, float]]:
    """Return the sides, in mm, of the boxes cut out of the first sheet; not its margins."""
    with pdfplumber.open(io.BytesIO(made)) as pdf:
        page = pdf.pages[0]
        drawn = [one for one in (*page.curves, *page.lines, *page.rects) if one["stroke"]]
    long = [one for one in drawn if one["height"] > 700 or one["width"] > 550]
    if not long:  # tags are cut round, each by itself
        return [
            (one["width"] / MM, one["height"] / MM)
            for one in drawn
            if one["width"] > 30 * MM and one["height"] > 20 * MM
        ]
    xs = sorted({round(x / MM, 2) for one in long for x, _ in one["pts"]})
    ys = sorted({round(y / MM, 2) for one in long for _, y in one["pts"]})
    across, down = (
        [after - before for before, after in pairwise(found) if abs(after - before - side) < 3]
        for found, side in zip((xs, ys), sides, strict=True)
    )
    return [(wide, high) for wide in across for high in down]


@pytest.mark.sampled
def test_firefox_prints_every_design_at_its_true_size(firefox: Firefox, book_address: str) -> None:
    measured = {}
    firefox.goto(f"{book_address}/print-room/?recipe=rosemary-salt&count=2")
    firefox.evaluate("window.print = () => {}")
    firefox.wait_for("!!document.querySelector('.print-room-preview .sheet-page')", 120)
    for name, thing in PAIRS if is_whole() else FEW:
        chosen, size, sides = THINGS[thing]
        if designs_of()[name].large and thing == "card":
            continue  # large type takes a larger card: the fold, which is measured
        firefox.evaluate(
            f"""(async () => {{
              const {{ elements, ownerDocument }} = document.querySelector(".print-room-form");
              elements.thing.value = "{chosen}";
              elements.size.value = "{size}";
              elements.design.value = "{name}";
              elements.design.dispatchEvent(new Event("input", {{ bubbles: true }}));
              elements.design.form.requestSubmit();
              return true;
            }})()"""
        )
        firefox.wait_for("document.body.classList.contains('printing-sheets')", 60)
        made = firefox.print(width_mm=210, height_mm=297)
        found = sides_of(made, sides)
        measured[f"{name} {thing}"] = found
        assert found, (name, thing)
        for wide, high in found:
            assert (wide, high) == pytest.approx(sides, abs=0.3), (name, thing, found)
        firefox.evaluate("dispatchEvent(new Event('afterprint')) && true")
    print(measured)  # what a closing note cites: pytest -s
    assert len(measured) >= len(FEW)
