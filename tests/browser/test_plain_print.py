"""The print room printed by a browser without JavaScript: its cards alone, at their true size."""

from __future__ import annotations

import io
import re

import pdfplumber
import pytest
from playwright.sync_api import Browser

MM = 72 / 25.4
TOLERANCE_MM = 0.2  # issue 6
WIDE, HIGH = 90, 65  # core/paper/sheets.py: eight to an A4 and to a US Letter page
LINE = 0.1  # mm: the frame's line lies within the box
PAPER_MM = {"A4": (210, 297), "Letter": (215.9, 279.4)}  # ISO 216; ANSI/ASME Y14.1

SAID = """() => [...document.querySelectorAll('.print-room-cards .usage-card')].map((card) => [
  ...card.querySelectorAll('.card-head > p:not([hidden]), dt, dd, .card-foot')
].map((part) => part.textContent).join(' '))"""

TOO_FULL = """() => [...document.querySelectorAll('.print-room-cards .card-face:not([hidden])')]
  .filter((face) => face.scrollHeight > face.clientHeight + 1
    || face.scrollWidth > face.clientWidth + 1)
  .map((face) => face.closest('[data-title]').dataset.title)"""


@pytest.fixture(scope="module", params=PAPER_MM)
def plain_print(
    request: pytest.FixtureRequest, browser: Browser, book_address: str
) -> tuple[str, pdfplumber.PDF, list[str], list[str], list[int]]:
    """Return the paper, its PDF, the words of each card, the cards too full, and their sides."""
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{book_address}/print-room/")
    pdf = pdfplumber.open(io.BytesIO(page.pdf(format=request.param)))
    page.emulate_media(media="print")
    said, full = page.evaluate(SAID), page.evaluate(TOO_FULL)
    sides = page.evaluate(
        "[...document.querySelectorAll('.plain-place')].map((place) => +place.dataset.sides)"
    )
    context.close()
    return request.param, pdf, said, full, sides


def frames(page: pdfplumber.page.Page) -> list[tuple[float, float, float, float]]:
    """Return left, top, width and height in mm of what is cut out, to the lines' outer edges."""
    return sorted(
        (
            one["x0"] / MM - LINE / 2,
            one["top"] / MM - LINE / 2,
            one["width"] / MM + LINE,
            one["height"] / MM + LINE,
        )
        for one in page.rects
        if one["height"] / MM > HIGH - 1
    )


def test_every_card_is_whole_and_of_its_true_size(
    plain_print: tuple[str, pdfplumber.PDF, list[str], list[str], list[int]],
) -> None:
    paper, pdf, _said, full, sides = plain_print
    assert full == []
    cut = [(sheet, frame) for sheet in pdf.pages for frame in frames(sheet)]
    assert len(cut) == len(sides) == 20
    width, height = PAPER_MM[paper]
    for _sheet, (left, top, wide, high) in cut:
        assert min(abs(wide - WIDE), abs(wide - 2 * WIDE)) < TOLERANCE_MM
        assert high == pytest.approx(HIGH, abs=TOLERANCE_MM)
        assert min(left, top) > 5  # a home printer's own margin
        assert left + wide < width - 5
        assert top + high < height - 5
    strips = [wide for _sheet, (_left, _top, wide, _high) in cut if wide > WIDE + 1]
    assert len(strips) == sides.count(2) > 0


def test_eight_places_to_a_sheet_and_none_laid_over_another(
    plain_print: tuple[str, pdfplumber.PDF, list[str], list[str], list[int]],
) -> None:
    _paper, pdf, _said, _full, sides = plain_print
    assert len(pdf.pages) == -(-sum(sides) // 8)  # no gap is left unfilled
    for sheet in pdf.pages:
        cut = frames(sheet)
        for number, (left, top, wide, high) in enumerate(cut):
            for other_left, other_top, other_wide, other_high in cut[number + 1 :]:
                across = min(left + wide, other_left + other_wide) - max(left, other_left)
                down = min(top + high, other_top + other_high) - max(top, other_top)
                assert min(across, down) < TOLERANCE_MM


def test_every_word_is_printed_and_nothing_but_the_cards(
    plain_print: tuple[str, pdfplumber.PDF, list[str], list[str], list[int]],
) -> None:
    _paper, pdf, said, _full, _sides = plain_print
    squeeze = lambda text: re.sub(r"\s", "", text).lower()  # noqa: E731
    boxes = [
        sheet.crop((at * MM, top * MM, (at + WIDE) * MM, (top + high) * MM))
        for sheet in pdf.pages
        for left, top, wide, high in frames(sheet)
        for at in ((left, left + WIDE) if wide > WIDE + 1 else (left,))
    ]
    printed = squeeze(" ".join(box.extract_text(x_tolerance=1.5) for box in boxes))
    missing = [word for card in said for word in card.split() if squeeze(word) not in printed]
    assert missing == []
    inked = sum(len([c for c in box.chars if c["text"].strip()]) for box in boxes)
    assert inked == sum(len([c for c in sheet.chars if c["text"].strip()]) for sheet in pdf.pages)
