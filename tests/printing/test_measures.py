"""What is cut or folded, measured in the PDF from outside: every length against its nominal.

All measures are in mm from the paper's top left corner. Flat cards are measured in
test_cards_pdf.py; here stand folded cards, tags, gift pieces, the ruler and the booklet.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from itertools import combinations, pairwise
from typing import Any

import pdfplumber
import pytest
from fontTools.ttLib import TTFont

from stillroom.core.paper.sheets import PAPERS
from stillroom.core.paper.tag_shapes import Shape, tag_shape
from stillroom.looks import PAPER_FONTS
from stillroom.printing.booklet import impose_booklet
from stillroom.printing.cards import CardJob, SheetOptions, print_cards, print_tags
from stillroom.printing.cut_sheet import GiftMeasures, print_cuts
from stillroom.printing.typesetting import TEMPLATES

from .conftest import MM, open_pdf

TOLERANCE_MM = 0.2  # issue 6
LEAST_PT = {"serif": 9, "plain": 8.5}
"""As test_cards_pdf.py and test_book_pages.py measure it in what is set."""


@dataclass(frozen=True)
class Drawn:
    """A drawn line or outline: its left and top edge and its size in mm."""

    left: float
    top: float
    width: float
    height: float
    dashed: bool
    corners: int

    @property
    def middle(self) -> tuple[float, float]:
        return self.left + self.width / 2, self.top + self.height / 2


def near(*nominal: float) -> Any:
    return pytest.approx(nominal, abs=TOLERANCE_MM)


def drawn_on(page: pdfplumber.page.Page) -> list[Drawn]:
    """Return all that is stroked on a page and longer than 3 mm: no tick, no leaf of an emblem."""
    found = [
        Drawn(
            one["x0"] / MM,
            one["top"] / MM,
            one["width"] / MM,
            one["height"] / MM,
            bool(one["dash"] and one["dash"][0]),
            len(one["pts"]),
        )
        for one in (*page.lines, *page.rects, *page.curves)
        if one["stroke"]
    ]
    return [one for one in found if max(one.width, one.height) > 3]


@pytest.mark.parametrize(
    ("paper", "left"),
    [("a4", 0), ("letter", (215.9 - 210) / 2)],  # ISO 216; ANSI/ASME Y14.1, from memory
)
def test_a_folded_card_opens_to_a5_and_folds_in_its_middle(
    jobs: list[CardJob], paper: str, left: float
) -> None:
    """ISO 216: A6 is 105 x 148 mm, two side by side are A5 lying, 210 x 148 mm."""
    made = print_cards(jobs[-1:], "folded-a6", SheetOptions(paper=PAPERS[paper]))
    with open_pdf(made) as pdf:
        assert len(pdf.pages) == 2
        found = drawn_on(pdf.pages[0])
    uprights = sorted(one.left for one in found if one.height > 200)
    levels = sorted(one.top for one in found if one.width > 200)
    assert uprights == near(left, left + 210)
    assert len(levels) > 1
    gaps = [after - before for before, after in pairwise(levels)]
    assert gaps == near(*[148] * len(gaps))
    folds = [one for one in found if one.dashed]
    assert [one.left for one in folds] == near(*[left + 105] * len(folds))
    tops, ends = sorted(one.top for one in folds), sorted(one.top + one.height for one in folds)
    # the marks begin at the card's head and end at its foot
    assert tops[0] == pytest.approx(levels[0], abs=TOLERANCE_MM)
    assert ends[-1] == pytest.approx(levels[0] + 148, abs=TOLERANCE_MM)


# the outline across and down, and where its size is from
SHAPES: dict[Shape, tuple[float, float]] = {
    "rectangle": (75, 50),  # maker's own
    "luggage": (95, 50),  # maker's own
    "round": (56, 56),  # a lid of 62 less a rim of 6: common practice, no published source
    # round 52 (pi x 52 = 163.4) with 8 to glue; wall of 70 less 2 above and below: common practice
    "wrap": (math.pi * 52 + 8, 66),
}


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("shape", SHAPES)
def test_a_tag_is_cut_at_its_nominal_size(jobs: list[CardJob], shape: Shape, paper: str) -> None:
    chosen = tag_shape(shape, lid_mm=62, bottle_mm=52, wall_mm=70)
    made = print_tags(jobs[-1:], chosen, SheetOptions(paper=PAPERS[paper]))
    with open_pdf(made) as pdf:
        page = pdf.pages[0]
        outline = max(drawn_on(page), key=lambda one: one.width * one.height)
        words = [char for char in page.chars if char["text"].strip()]
    assert (outline.width, outline.height) == near(*SHAPES[shape])
    assert outline.left > 0
    assert outline.left + outline.width < float(PAPERS[paper].width_mm)
    assert min(char["x0"] for char in words) / MM > outline.left
    assert max(char["x1"] for char in words) / MM < outline.left + outline.width
    assert min(char["top"] for char in words) / MM > outline.top
    assert max(char["bottom"] for char in words) / MM < outline.top + outline.height


def test_a_luggage_tag_has_a_hole_for_a_ribbon_and_no_word_in_it(jobs: list[CardJob]) -> None:
    """A hole of 4 mm, its middle 8 mm from the end and halfway up: maker's own."""
    with open_pdf(print_tags(jobs[-1:], tag_shape("luggage"), SheetOptions())) as pdf:
        outline, hole = sorted(drawn_on(pdf.pages[0]), key=lambda one: -one.width)
        words = [char for char in pdf.pages[0].chars if char["text"].strip()]
    assert (hole.width, hole.height) == near(4, 4)
    assert hole.middle == near(outline.left + 8, outline.middle[1])
    assert min(char["x0"] for char in words) / MM > hole.left + hole.width


def test_no_word_of_a_round_label_lies_outside_its_circle(jobs: list[CardJob]) -> None:
    chosen = tag_shape("round", lid_mm=80)
    for job in jobs:
        with open_pdf(print_tags([job], chosen, SheetOptions())) as pdf:
            page = pdf.pages[0]
            circle = max(drawn_on(page), key=lambda one: one.width)
            middle_x, middle_y = circle.middle
            for char in page.chars:
                if not char["text"].strip():
                    continue
                # the line's box is taller than its letters: half its height is their middle
                level = (char["top"] + char["bottom"]) / 2 / MM - middle_y
                for x in (char["x0"] / MM, char["x1"] / MM):
                    assert math.hypot(x - middle_x, level) < circle.width / 2, job.card.title


# the size of what is drawn; allowances: common practice, no published source
PIECES = {
    "cloth": (160, 160),  # lid 70, twice its height of 15, twice an overhang of 30
    "box": (80 + 2 * 40, 60 + 2 * 40),  # inside 80 x 60, walls of 40
    "its lid": (82 + 2 * 20, 62 + 2 * 20),  # 1 mm of play on each side, walls of 20
}


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("name", PIECES)
def test_a_gift_piece_is_drawn_at_its_true_size(name: str, paper: str) -> None:
    """It lies on whichever sheet has room for it, perhaps on its side."""
    width, height = PIECES[name]
    made = print_cuts(GiftMeasures.read(70, "80,60,40,20"), PAPERS[paper])
    with open_pdf(made) as pdf:
        assert len(pdf.pages) <= 3
        pages = [(drawn_on(page), page.width / MM, page.height / MM) for page in pdf.pages]
    for _, *size in pages:
        assert size == near(float(PAPERS[paper].width_mm), float(PAPERS[paper].height_mm))
    found, outline = next(
        (found, one)
        for found, *_ in pages
        for one in found
        if one.corners > 3 and sorted((one.width, one.height)) == near(*sorted((width, height)))
    )
    ruler = max(
        (one for one in found if one.height < 0.1 and not one.dashed), key=lambda one: one.top
    )
    assert ruler.width == pytest.approx(50, abs=TOLERANCE_MM)  # a ruler's own 50 mm
    assert outline.top + outline.height < ruler.top
    inside = [one for one in found if one.dashed and _within(one, outline)]
    if name == "cloth":  # the lid lies in its middle
        assert [(one.width, one.height) for one in inside] == [near(70, 70)]
        assert inside[0].middle == near(*outline.middle)
    else:  # a base of four folds stands in the middle of its walls
        wall = 40 if name == "box" else 20
        base = [one for one in inside if max(one.width, one.height) > wall + 1]
        left = min(one.left for one in base)
        right = max(one.left + one.width for one in base)
        assert left - outline.left == pytest.approx(wall, abs=TOLERANCE_MM)
        assert outline.left + outline.width - right == pytest.approx(wall, abs=TOLERANCE_MM)


def _within(one: Drawn, outer: Drawn) -> bool:
    return (
        outer.left - 0.5 <= one.left
        and outer.top - 0.5 <= one.top
        and one.left + one.width <= outer.left + outer.width + 0.5
        and one.top + one.height <= outer.top + outer.height + 0.5
    )


def test_labels_lie_close_together_and_never_over_one_another() -> None:
    made = print_cuts(GiftMeasures.read(bottle="52,70"), PAPERS["a4"], copies=6)
    with open_pdf(made) as pdf:
        labels = [
            [one for one in drawn_on(page) if one.corners > 3 and min(one.width, one.height) > 60]
            for page in pdf.pages
        ]
    assert [len(page) for page in labels] == [3, 3]
    for page in labels:
        for one, other in combinations(page, 2):
            apart = (
                one.left + one.width < other.left
                or other.left + other.width < one.left
                or one.top + one.height < other.top
                or other.top + other.height < one.top
            )
            assert apart


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_ruler_under_cards_is_fifty_millimetres(jobs: list[CardJob], paper: str) -> None:
    options = SheetOptions(paper=PAPERS[paper], ruler=True, cut_lines=False)
    with open_pdf(print_cards(jobs[-1:], "id-1", options)) as pdf:
        (said,) = pdf.pages[-1].search("50 mm when printed")
        ruled = [
            line
            for page in pdf.pages
            for line in page.lines
            if line["height"] < 0.1 and line["width"] / MM > 45 and line["top"] / MM > 200
        ]
        ticks = [line for line in pdf.pages[-1].lines if line["width"] < 0.1]
    assert [line["width"] / MM for line in ruled] == near(50)
    assert {round(char["size"], 2) for char in said["chars"]} == {LEAST_PT["plain"]}
    xs = sorted({round(tick["x0"] / MM, 2) for tick in ticks if tick["top"] / MM > 200})
    assert len(xs) == 51
    assert max(abs(x - xs[0] - place) for place, x in enumerate(xs)) < TOLERANCE_MM


@pytest.mark.parametrize(
    ("face", "name"), [("serif", "EBGaramond-Regular"), ("plain", "AlegreyaSans-Regular")]
)
def test_the_least_types_small_letters_are_as_high_as_on_a_label(face: str, name: str) -> None:
    """Regulation (EU) No 1169/2011, Art. 13(2) and Annex IV: 1.2 mm (from memory)."""
    theme = (TEMPLATES / "theme.typ").read_text(encoding="utf-8")
    (least,) = re.findall(rf"#let least-{face} = ([\d.]+)pt\n", theme)
    assert float(least) == LEAST_PT[face]
    font = TTFont(PAPER_FONTS / f"{name}.ttf")
    height = font["OS/2"].sxHeight / font["head"].unitsPerEm * float(least) * 25.4 / 72
    assert 1.2 <= height < 1.4


def framed_pages(count: int) -> bytes:
    """Return A5 pages (ISO 216: 148 x 210 mm) that each have a frame at their very edge."""
    from stillroom.printing.typesetting import _typst

    source = (
        '#set document(title: "Frames")\n#set page(width: 148mm, height: 210mm, margin: 0mm)\n'
        f"#for n in range({count}) {{ if n > 0 {{ pagebreak() }}; "
        "rect(width: 148mm, height: 210mm, stroke: 0.1mm) }"
    )
    made = _typst().Compiler(input=source.encode()).compile(format="pdf")
    assert isinstance(made, bytes)
    return made


def test_each_half_of_a_booklets_side_is_one_whole_a5_page() -> None:
    """Two A5 pages are 296 of A4's 297 mm (ISO 216): the fold is in the middle, 0.5 mm is left."""
    made = impose_booklet(framed_pages(8), 8, "Frames", ("en", "GB"))
    with open_pdf(made) as pdf:
        for page in pdf.pages:
            left, right = sorted(drawn_on(page), key=lambda one: one.left)
            assert (page.width / MM, page.height / MM) == near(297, 210)
            assert (left.width, left.height) == near(148, 210)
            assert (right.width, right.height) == near(148, 210)
            assert (left.left, left.top) == near(0.5, 0)
            assert (right.left, right.top) == near(148.5, 0)  # from the fold, 297 / 2
