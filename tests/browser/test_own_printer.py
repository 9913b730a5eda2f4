"""A reader's own printer and bought sheets in the print room, beside what the command prints."""

from __future__ import annotations

import io
import json
from datetime import date
from itertools import pairwise
from pathlib import Path
from random import Random
from typing import Any

import pdfplumber
import pytest
from playwright.sync_api import Page

from stillroom.core.book import open_book
from stillroom.core.label.labelling import make_card
from stillroom.core.paper.sheets import CARD_SIZES, PAPERS, free_places, impose
from stillroom.printing.cards import CardJob, SheetOptions, print_cards
from stillroom.printing.feed_sheet import print_feed_sheet

from .conftest import wait_until
from .test_printing import MM, open_page, print_page

ROOT = Path(__file__).resolve().parents[2]
TOLERANCE_MM = 0.2  # issue 6
STORE = "({...localStorage})"


def open_room(page: Page, address: str, asked: str = "recipe=rosemary-salt&count=8") -> None:
    open_page(page, f"{address}/print-room/?{asked}")
    wait_until(page, "document.querySelector('.print-room-form [name=stock]').length > 0")
    for summary in page.locator(".print-room-labels summary").all():
        summary.click()


def write_feed(page: Page, across: str, down: str) -> None:
    page.fill("[name=feedAcross]", across)
    page.fill("[name=feedDown]", down)


def cut_at(pdf: pdfplumber.PDF, page: int = 0) -> tuple[list[float], list[float]]:
    """Return where the lines to cut by stand, in mm from the paper's left and upper edge."""
    points = [
        point
        for curve in (*pdf.pages[page].curves, *pdf.pages[page].lines)
        if curve["height"] > 700 or curve["width"] > 550
        for point in curve["pts"]
    ]
    edges = pdf.pages[page]
    xs = {round(x / MM, 1) for x, _ in points}
    ys = {round(y / MM, 1) for _, y in points}
    inner_x = sorted(x for x in xs if 1 < x < edges.width / MM - 1)
    return inner_x, sorted(y for y in ys if 1 < y < edges.height / MM - 1)


def command_s_sheet(shift: tuple[float, float]) -> pdfplumber.PDF:
    book = open_book(ROOT / "mkdocs.yml")
    recipe = next(one for one in book.load() if one.slug == "rosemary-salt")
    card = make_card(recipe, book.settings, date(2026, 11, 12), url="https://a.example/r/b/")
    made = print_cards([CardJob(card, recipe, 8)], "90x65", SheetOptions(shift_mm=shift))
    return pdfplumber.open(io.BytesIO(made))


@pytest.mark.parametrize(("across", "down"), [("0", "0"), ("1.2", "-0.5"), ("-2", "3.25")])
def test_a_printer_s_miss_moves_cards_as_the_command_does(
    page: Page, book_address: str, across: str, down: str
) -> None:
    open_room(page, book_address)
    write_feed(page, across, down)
    page.click(".print-room-form button[type=submit]")
    here = cut_at(print_page(page))
    there = cut_at(command_s_sheet((-float(across), -float(down))))
    assert len(here[0]) == 3
    assert len(here[1]) == 5
    assert here[0] == pytest.approx(there[0], abs=TOLERANCE_MM)
    assert here[1] == pytest.approx(there[1], abs=TOLERANCE_MM)


def test_the_miss_is_kept_for_the_next_time_and_for_the_recipe_s_own_page(
    page: Page, book_address: str
) -> None:
    open_room(page, book_address)
    write_feed(page, "1.5", "-2")
    open_room(page, book_address)
    assert page.input_value("[name=feedAcross]") == "1.5"
    assert page.input_value("[name=feedDown]") == "-2"
    open_page(page, f"{book_address}/r/rosemary-salt/")
    page.click("stillroom-card button[type=submit]")
    xs, ys = cut_at(print_page(page))
    assert xs == pytest.approx([15 - 1.5, 105 - 1.5, 195 - 1.5], abs=TOLERANCE_MM)
    assert ys[0] == pytest.approx(18.5 + 2, abs=TOLERANCE_MM)


def test_backs_are_moved_the_way_their_fronts_are(page: Page, book_address: str) -> None:
    """A sheet is fed the same way for either side: both miss to the same side of the feeder."""
    open_room(page, book_address, "recipe=layered-soup-mix&count=1")
    places = "document.querySelectorAll('.print-room-preview .sheet-place')"
    where = f"[...{places}].map((one) => one.style.left)"
    before = [float(left[:-2]) for left in page.evaluate(where)]
    write_feed(page, "3", "0")
    after = [float(left[:-2]) for left in page.evaluate(where)]
    assert len(before) == 2
    assert [one - other for one, other in zip(before, after, strict=True)] == [3, 3]


@pytest.mark.parametrize("typed", ["12", "-10", "e"])
def test_what_no_printer_misses_by_is_told(page: Page, book_address: str, typed: str) -> None:
    open_room(page, book_address)
    page.focus("[name=feedAcross]")
    page.keyboard.press("Control+A")
    page.keyboard.type(typed)
    said = page.inner_text(".print-room-status")
    assert said.startswith("What is too far right: write the millimetres")
    assert page.locator(".sheet-page").count() == 0
    kept = json.loads(page.evaluate(STORE).get("stillroom-printer-feed", "{}"))
    assert abs(kept.get("across", 0)) < 10  # the first figure of 12 may be kept, and no other


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_test_sheet_is_the_command_s(page: Page, book_address: str, paper: str) -> None:
    open_room(page, book_address)
    page.select_option(".print-room-form [name=paper]", paper)
    write_feed(page, "1.2", "-0.5")
    page.click("[data-test-sheet]")
    here = print_page(page)
    there = pdfplumber.open(io.BytesIO(print_feed_sheet(PAPERS[paper], (-1.2, 0.5))))
    for pdf in (here, there):
        assert len(pdf.pages) == 1
        xs, ys = cut_at(pdf)
        assert pytest.approx(min(xs, key=lambda x: abs(x - 18.8)), abs=TOLERANCE_MM) == 18.8
        assert pytest.approx(min(ys, key=lambda y: abs(y - 20.5)), abs=TOLERANCE_MM) == 20.5
    said, wanted = (" ".join(pdf.pages[0].extract_text().split()) for pdf in (here, there))
    for words in ("take 20 mm off;", "the paper goes in crooked", "50 mm when printed"):
        assert words in said
        assert words in wanted


MEASURES = {
    "columns": "3", "rows": "7", "left": "8", "top": "16", "pitchX": "65", "pitchY": "38",
    "labelWidth": "63.5", "labelHeight": "38",
}  # fmt: skip


def test_a_bought_sheet_is_kept_under_a_name_and_forgotten(page: Page, book_address: str) -> None:
    open_room(page, book_address)
    assert page.is_disabled("[data-forget]")
    for name, figure in MEASURES.items():
        page.fill(f".print-room-form [name={name}]", figure)
    page.click("[data-keep]")
    assert page.inner_text("[data-said-kept]") == "Write a name for these measures."
    page.fill("[name=stockName]", "little ones")
    page.click("[data-keep]")
    told = page.inner_text("[data-said-kept]")
    # as --label-sheet and the book's settings have it
    assert told == "Kept in this browser as “little ones”: 3,7,8,16,65,38,63.5,38."
    page.evaluate("sessionStorage.clear()")
    open_room(page, book_address)
    assert not page.is_checked("[name=own]")
    page.select_option("[name=thing]", "rectangle")
    page.select_option("[name=stock]", "little ones")
    assert page.is_checked("[name=own]")
    assert not page.is_checked(".print-room-form [name=cut]")
    shown = {name: page.input_value(f".print-room-form [name={name}]") for name in MEASURES}
    assert shown == MEASURES
    assert page.locator(".print-room-places input").count() == 21
    page.click("[data-forget]")
    assert "little ones" not in page.inner_text("[name=stock]")
    open_room(page, book_address)
    assert page.locator("[name=stock] option").all_inner_texts() == ["none of these"]


@pytest.mark.parametrize("kept", ['{"a": "1,2"}', '{"a": 7}', "[1]", "{not ours", '"x"'])
def test_what_is_kept_and_is_no_sheet_is_not_offered(
    page: Page, book_address: str, kept: str
) -> None:
    page.goto(f"{book_address}/print-room/")
    page.evaluate(
        """(kept) => {
          localStorage.setItem('stillroom-label-sheets', kept);
          localStorage.setItem('stillroom-printer-feed', kept);
        }""",
        kept,
    )
    open_room(page, book_address)
    assert page.locator("[name=stock] option").all_inner_texts() == ["none of these"]
    assert page.input_value("[name=feedAcross]") == "0"
    assert page.inner_text(".print-room-status").startswith("8 on")


def test_the_book_s_own_sheets_are_offered(fresh_page: Page, book_address: str) -> None:
    """What the settings keep under `labels` comes with the page."""
    fresh_page.route(
        "**/print-room/*",
        lambda route: route.fulfill(
            response=(answer := route.fetch()),
            body=answer.text().replace(
                '"labels": []',
                '"labels": [{"name": "the shop\'s", "measures": "2, 4,15,18.5,90,65"}]',
            ),
        ),
    )
    open_room(fresh_page, book_address)
    assert fresh_page.locator("[name=stock] option").all_inner_texts() == [
        "none of these", "the shop's",
    ]  # fmt: skip
    fresh_page.select_option("[name=stock]", "the shop's")
    assert fresh_page.input_value(".print-room-form [name=top]") == "18.5"
    assert fresh_page.is_disabled("[data-forget]")  # it is the book's


def test_free_places_are_the_same_in_both(scripts_page: Page) -> None:
    grid = impose(PAPERS["a4"], CARD_SIZES["90x65"])
    rng = Random(17)
    asked: list[tuple[int, int, list[int]]] = []
    for _ in range(60):
        gone = sorted(rng.sample(range(1, 9), rng.randrange(0, 8)))
        asked.append((rng.randrange(1, 30), rng.randrange(1, 9), gone))
    expected = [list(free_places(grid, count, start, gone)) for count, start, gone in asked]
    got: Any = scripts_page.evaluate(
        """async (asked) => {
          const { freePlaces } = await import('/assets/stillroom/js/paper/paper.js');
          return asked.map(([count, start, gone]) =>
            freePlaces(count, start, new Set(gone.map((place) => place - 1))));
        }""",
        asked,
    )
    assert got == expected
    assert any(b - a > 1 for row in expected for a, b in pairwise(row))
