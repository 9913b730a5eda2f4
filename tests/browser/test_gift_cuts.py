"""What is cut for a gift: the browser's pieces against Python's, and what its print measures."""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import asdict
from itertools import product
from typing import Any

import pdfplumber
import pytest
from playwright.sync_api import Page, expect

from stillroom.core.paper.gift_pieces import (
    Piece,
    box_pieces,
    cuts_data,
    label_pieces,
    lid_pieces,
    lines_of,
    place_on,
)
from stillroom.core.paper.sheets import PAPERS
from stillroom.core.words.problems import Unreadable

MM = 72 / 25.4
TOLERANCE_MM = 0.2  # issue 6
LENGTHS = (-1, 0, 0.5, 12, 18.75, 31.5, 43, 58.333, 70, 100, 101, 239, 1999.99, 2001)


def _questions() -> Iterator[tuple[str, dict[str, Any]]]:
    for lid, high, turns, bow in product(LENGTHS, (-2, 0, 14.5, 15), (1, 3), (True, False)):
        yield "lid", {"lid": lid, "lidHeight": high, "turns": turns, "bow": bow}
    for bottle, wall, share in product(LENGTHS, LENGTHS, ("1", "1/2", "1/3", "1/4")):
        yield "label", {"bottle": bottle, "wall": wall, "share": share}
    for long, wide, high, lid in product(LENGTHS[1::2], LENGTHS[2::3], LENGTHS[3::2], (4, 5, 20.1)):
        yield "box", {"length": long, "width": wide, "height": high, "boxLid": lid}


def _answer(what: str, asked: dict[str, Any]) -> Any:
    try:
        if what == "lid":
            found = lid_pieces(asked["lid"], asked["lidHeight"], asked["turns"], bow=asked["bow"])
        elif what == "label":
            found = label_pieces(asked["bottle"], asked["wall"], asked["share"])
        else:
            found = box_pieces(*asked.values())
    except Unreadable as error:
        return str(error)
    return [_told(piece) for piece in found]


def _told(piece: Piece) -> dict[str, Any]:
    lines = lines_of(piece)
    places = [place_on(piece, PAPERS[name]) for name in ("a4", "letter")]
    return {
        **{key.removesuffix("_mm"): value for key, value in asdict(piece).items()},
        "outline": [list(point) for point in lines.outline],
        "folds": [[list(point) for point in fold] for fold in lines.folds],
        "circle": lines.circle_mm,
        "placed": [place and [place.width_mm, place.height_mm, place.turned] for place in places],
    }


def test_python_and_chromium_agree_to_the_digit(page: Page, book_address: str) -> None:
    questions = list(_questions())
    assert len(questions) > 1000
    papers = [
        {"width": float(PAPERS[name].width_mm), "height": float(PAPERS[name].height_mm)}
        for name in ("a4", "letter")
    ]
    page.goto(f"{book_address}/print-room/")
    said = page.evaluate(
        """async ([data, questions, papers]) => {
            const { lidPieces, labelPieces, boxPieces, linesOf, placeOn } =
                await import("/assets/stillroom/js/paper/gift-cuts.js");
            const makers = { lid: lidPieces, label: labelPieces, box: boxPieces };
            return questions.map(([what, asked]) => {
                try {
                    return makers[what](data, asked).map((one) => ({
                        ...one, ...linesOf(one, data),
                        placed: papers.map((paper) => placeOn(one, paper, data))
                            .map((at) => at && [at.width, at.height, at.turned]),
                    }));
                } catch (error) {
                    if (error.constructor.name !== "Unreadable") throw error;
                    return error.message;
                }
            });
        }""",
        [cuts_data(), questions, papers],
    )
    expected = [_answer(what, asked) for what, asked in questions]
    differing = [row for row in zip(questions, expected, said, strict=True) if row[1] != row[2]]
    assert differing == []
    assert 100 < sum(isinstance(one, str) for one in expected) < len(expected) * 2 / 3


def _open(page: Page, address: str) -> None:
    page.goto(f"{address}/print-room/")
    page.evaluate("window.print = () => {}")
    page.locator("#to-cut").scroll_into_view_if_needed()  # its script comes when it is near
    page.wait_for_selector(".gift-cuts-form:not([hidden])")


# what is printed, the size of its outline in mm, worked by hand: cloth 70 + 30 + 60; label of
# 52 mm pi x 52 + 8 = 171.4 by 70 - 4; box 80 + 2 x 40 by 60 + 2 x 40, its lid 82 + 40 by 62 + 40
PRINTED = [
    ("Print the cloth", [(160, 160)]),
    ("Print the label", [(171.4, 66)]),
    ("Print the box and its lid", [(160, 140), (122, 102)]),
]


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize(("button", "sizes"), PRINTED, ids=[row[0] for row in PRINTED])
def test_the_print_has_true_sizes_and_a_ruler(
    page: Page, book_address: str, button: str, sizes: list[tuple[float, float]], paper: str
) -> None:
    _open(page, book_address)
    page.select_option(".gift-cuts-form select[name=paper]", paper)
    page.get_by_role("button", name=button, exact=True).click()
    pdf = pdfplumber.open(io.BytesIO(page.pdf(prefer_css_page_size=True)))
    assert len(pdf.pages) == len(sizes)
    for sheet, (width, height) in zip(pdf.pages, sizes, strict=True):
        lines = [one for one in (*sheet.curves, *sheet.rects) if one["stroke"]]
        drawn = max(lines, key=lambda one: one["width"] * one["height"])
        assert drawn["width"] / MM == pytest.approx(width, abs=TOLERANCE_MM)
        assert drawn["height"] / MM == pytest.approx(height, abs=TOLERANCE_MM)
        across = [one["width"] / MM for one in (*sheet.lines, *sheet.curves)]
        rulers = [width for width in across if abs(width - 50) < 1]
        assert rulers
        assert rulers[0] == pytest.approx(50, abs=TOLERANCE_MM)
        assert drawn["bottom"] < sheet.height - 15 * MM
        assert drawn["x0"] > 9 * MM


def test_bad_numbers_and_large_pieces_are_told(page: Page, book_address: str) -> None:
    _open(page, book_address)
    part = page.locator('[data-cut="lid"]')
    part.locator("[name=lid]").fill("")
    expect(part.locator("[data-said]")).to_have_text("Write every measure in millimetres.")
    expect(part.get_by_role("button")).to_be_disabled()
    part.locator("[name=lid]").fill("-3")
    expect(part.locator("[data-said]")).to_contain_text("A lid's diameter of -3 mm is not possible")
    part.locator("[name=lid]").fill("300")
    expect(part.locator("[data-said]")).to_contain_text("390 by 390 mm")
    expect(part.locator("[data-said]")).to_contain_text("Too large for the page: draw it by these")
    part.get_by_role("button").click()
    text = pdfplumber.open(io.BytesIO(page.pdf(prefer_css_page_size=True))).pages[0].extract_text()
    assert "Too large for the page" in text


def test_without_script_usual_lids_stand_in_a_table(page: Page, book_address: str) -> None:
    page.goto(f"{book_address}/print-room/")
    rows = page.locator(".gift-cuts-lids tbody tr").all_inner_texts()
    assert len(rows) == 5
    assert rows[3].split("\t") == ["70 mm", "160 by 160 mm", "600 mm"]
