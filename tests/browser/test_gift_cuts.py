"""What is cut for a gift: the browser's pieces against Python's, and what its print measures."""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import asdict
from itertools import product
from random import Random
from typing import Any

import pdfplumber
import pytest
from playwright.sync_api import Page, expect

from stillroom.core.paper.cut_layout import lay_pieces, layout_measures
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
from stillroom.printing.cut_sheet import GiftMeasures, print_cuts

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


def test_python_and_chromium_agree_to_the_digit(scripts_page: Page) -> None:
    questions = list(_questions())
    assert len(questions) > 1000
    papers = [
        {"width": float(PAPERS[name].width_mm), "height": float(PAPERS[name].height_mm)}
        for name in ("a4", "letter")
    ]
    said = scripts_page.evaluate(
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
    expect(part.get_by_role("button")).to_be_disabled()  # refused, and no blank sheet printed
    told = page.locator("[data-said-all]")
    expect(told).to_have_text(
        "Too large for the page: Cloth and ribbon. "
        "Write 0 for how many, and draw it by its measures with a ruler."
    )
    expect(page.locator("[data-all]")).to_be_disabled()
    part.locator("[name=copies]").fill("0")
    expect(told).to_have_text("3 pieces in all, on 2 sheets.")
    expect(page.locator("[data-all]")).to_be_enabled()
    for other in ("label", "box"):
        page.locator(f'[data-cut="{other}"] [name=copies]').fill("0")
    expect(told).to_have_text("Nothing is to be printed: write how many of each.")
    expect(page.locator("[data-all]")).to_be_disabled()


# what is laid: pieces of many sizes, those that go on only turned, one that goes on no paper
LAID = {
    "labels of a small bottle": [label_pieces(30, 40)[0]] * 24,
    "labels round thick bottles": [*label_pieces(62, 90), *label_pieces(60, 70)] * 4,
    "a cloth and labels": [*lid_pieces(70), *label_pieces(52, 70), *label_pieces(52, 70, "1/2")],
    "boxes": [*box_pieces(80, 60, 40, 20), *box_pieces(40, 30, 20, 10)] * 2,
    "small boxes": list(box_pieces(24, 18, 12, 6)) * 9,
    "turned alone": list(label_pieces(73.8, 188)),
    "too large": list(label_pieces(110, 80)),
    "none": [],
}


def _laid(pieces: list[Piece], paper: str) -> Any:
    try:
        sheets = lay_pieces(pieces, PAPERS[paper])
    except Unreadable:
        return None
    return [
        [
            [one.x_mm, one.y_mm, one.box_width_mm, one.box_height_mm, one.turned, one.piece.turned]
            for one in sheet
        ]
        for sheet in sheets
    ]


def test_pieces_lie_alike_in_python_and_in_the_browser(scripts_page: Page) -> None:
    rng = Random(17)
    asked = dict(LAID)
    for number in range(30):
        many = rng.randrange(1, 16)
        sizes = [(rng.randrange(200, 1100) / 10, rng.randrange(190, 900) / 10) for _ in range(many)]
        asked[f"by chance {number}"] = [Piece("label", "A", "b", *size) for size in sizes]
    papers = {
        name: {"width": float(PAPERS[name].width_mm), "height": float(PAPERS[name].height_mm)}
        for name in ("a4", "letter")
    }
    expected = {
        f"{name}, {paper}": _laid(pieces, paper)
        for name, pieces in asked.items()
        for paper in papers
    }
    got = scripts_page.evaluate(
        """async ([data, asked, papers]) => {
            const { layPieces } = await import("/assets/stillroom/js/paper/cut-layout.js");
            const found = {};
            for (const [name, pieces] of Object.entries(asked)) {
                for (const [paper, size] of Object.entries(papers)) {
                    found[`${name}, ${paper}`] = layPieces(pieces, size, data)?.map((sheet) =>
                        sheet.map((one) => [one.x, one.y, one.boxWidth, one.boxHeight,
                            one.turned, one.piece.turned])) ?? null;
                }
            }
            return found;
        }""",
        [
            cuts_data() | {"layout": layout_measures()},
            {
                name: [
                    {key.removesuffix("_mm"): value for key, value in asdict(one).items()}
                    for one in pieces
                ]
                for name, pieces in asked.items()
            },
            papers,
        ],
    )
    assert got == expected
    assert expected["too large, a4"] is None
    assert any(one[5] for one in expected["turned alone, a4"][0])
    assert max(len(sheets) for sheets in expected.values() if sheets) > 1


def _drawn(sheet: pdfplumber.page.Page) -> list[tuple[float, float, float, float]]:
    """Return where the outlines stand, in mm from the upper left: left, top, width, height."""
    found = [
        tuple(round(one[name] / MM, 1) for name in ("x0", "top", "width", "height"))
        for one in (*sheet.curves, *sheet.rects)
        if one["stroke"] and one["width"] > 40 * MM and one["height"] > 15 * MM
    ]
    return sorted(set(found))  # type: ignore[arg-type]


def test_pieces_print_where_the_pdf_of_the_command_has_them(page: Page, book_address: str) -> None:
    _open(page, book_address)
    page.locator('[data-cut="lid"] [name=copies]').fill("0")
    page.locator('[data-cut="label"] [name=bottle]').fill("30")
    page.locator('[data-cut="label"] [name=copies]').fill("4")
    page.locator('[data-cut="box"] [name=copies]').fill("4")
    for name, size in (("length", 40), ("width", 30), ("height", 20), ("boxLid", 10)):
        page.locator(f'[data-cut="box"] [name={name}]').fill(str(size))
    page.locator("[data-all]").click()
    browser = pdfplumber.open(io.BytesIO(page.pdf(prefer_css_page_size=True)))
    measures = GiftMeasures.read(box="40,30,20,10", bottle="30,70")
    ours = pdfplumber.open(io.BytesIO(print_cuts(measures, PAPERS["a4"], copies=4)))
    said = page.inner_text("[data-said-all]")
    assert said == f"12 pieces in all, on {len(ours.pages)} sheets."
    assert len(browser.pages) == len(ours.pages)
    count = 0
    for mine, theirs in zip(browser.pages, ours.pages, strict=True):
        here, there = _sizes(_drawn(mine)), _sizes(_drawn(theirs))
        count += len(here)
        assert here == pytest.approx(there, abs=TOLERANCE_MM)
        # every piece has its words
        assert mine.extract_text().count("A label 102.2 by 66") == theirs.extract_text().count(
            "A label 102.2 by 66"
        )
    assert count == 12


def _sizes(drawn: list[tuple[float, float, float, float]]) -> list[float]:
    return sorted(area for _x, _y, wide, high in drawn for area in (wide * high,))


def test_without_script_usual_lids_stand_in_a_table(page: Page, book_address: str) -> None:
    page.goto(f"{book_address}/print-room/")
    rows = page.locator(".gift-cuts-lids tbody tr").all_inner_texts()
    assert len(rows) == 5
    assert rows[3].split("\t") == ["70 mm", "160 by 160 mm", "600 mm"]
