"""Paper sizes and imposition, each row with its source beside it."""

from fractions import Fraction as F

import pytest

from stillroom.core.paper.sheets import (
    CARD_SIZES,
    PAPERS,
    Size,
    impose,
    label_sheet,
    named_size,
    places,
)  # fmt: skip
from stillroom.core.words.problems import Unreadable

ISO = "ISO 216"
Y14 = "ANSI/ASME Y14.1, 8.5 x 11 in x 25.4"
ID1 = "ISO/IEC 7810"


@pytest.mark.parametrize(
    ("size", "width", "height", "source"),
    [
        pytest.param(PAPERS["a4"], F(210), F(297), ISO, id="A4"),
        pytest.param(PAPERS["a5"], F(148), F(210), ISO, id="A5"),
        pytest.param(PAPERS["letter"], F("8.5") * F("25.4"), 11 * F("25.4"), Y14, id="Letter"),
        pytest.param(CARD_SIZES["a7"], F(105), F(74), ISO, id="A7 lying"),
        pytest.param(CARD_SIZES["folded-a6"], F(105), F(148), ISO, id="A6"),
        pytest.param(CARD_SIZES["id-1"], F("85.60"), F("53.98"), ID1, id="ID-1"),
    ],
)
def test_size_is_the_standards(size: Size, width: F, height: F, source: str) -> None:
    assert (size.width_mm, size.height_mm) == (width, height), source


A6 = Size("A6", F(105), F(148), ISO)
A7 = CARD_SIZES["a7"]  # lying


@pytest.mark.parametrize(
    ("paper", "box", "margin", "per_page"),
    [
        # reference.md section 11, "Imposition checks (computed)"
        pytest.param("a4", PAPERS["a5"].turned(), 0, 2, id="A4 is 2 A5"),
        pytest.param("a4", A6, 0, 4, id="A4 is 4 A6"),
        pytest.param("a4", A7, 0, 8, id="A4 is 8 A7"),
        pytest.param("a4", CARD_SIZES["id-1"], 0, 10, id="10 ID-1 on A4"),
        pytest.param("a4", CARD_SIZES["id-1"], 10, 10, id="10 ID-1 on A4, 10 mm margins"),
        pytest.param("letter", CARD_SIZES["id-1"], 0, 10, id="10 ID-1 on Letter"),
        pytest.param("letter", CARD_SIZES["id-1"], 10, 8, id="8 ID-1 on Letter, 10 mm margins"),
        # issue 2, point 7: eight to an A4 page and to a US Letter page
        pytest.param("a4", CARD_SIZES["90x65"], 5, 8, id="8 cards on A4"),
        pytest.param("letter", CARD_SIZES["90x65"], 5, 8, id="8 cards on Letter"),
    ],
)
def test_how_many_on_a_sheet(paper: str, box: Size, margin: int, per_page: int) -> None:
    assert impose(PAPERS[paper], box, margin_mm=F(margin)).per_page == per_page


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("size", ["90x65", "a7", "id-1"])
def test_boxes_stand_inside_the_paper_and_apart(paper: str, size: str) -> None:
    grid = impose(PAPERS[paper], CARD_SIZES[size])
    seen = places(grid, grid.per_page)
    for place in seen:
        assert place.x_mm >= 0
        assert place.x_mm + grid.box.width_mm <= grid.paper.width_mm
        assert place.y_mm + grid.box.height_mm <= grid.paper.height_mm
    assert len({(p.x_mm, p.y_mm) for p in seen}) == grid.per_page


def test_a_back_lies_behind_its_front_when_turned_on_the_long_edge() -> None:
    grid = impose(PAPERS["letter"], CARD_SIZES["90x65"])
    front, back = grid.place(0), grid.place(0, back=True)
    assert back.y_mm == front.y_mm
    assert back.x_mm == grid.paper.width_mm - front.x_mm - grid.box.width_mm


def test_start_position_on_a_half_used_sheet_flows_on_to_the_next_page() -> None:
    grid = impose(PAPERS["a4"], CARD_SIZES["90x65"])
    got = [(p.page, p.row, p.column) for p in places(grid, 5, start_at=6)]
    assert got == [(0, 2, 1), (0, 3, 0), (0, 3, 1), (1, 0, 0), (1, 0, 1)]


@pytest.mark.parametrize(("count", "start"), [(0, 1), (-1, 1), (2001, 1), (1, 0), (1, 9)])
def test_impossible_counts_and_starts_are_refused(count: int, start: int) -> None:
    with pytest.raises(Unreadable):
        places(impose(PAPERS["a4"], CARD_SIZES["90x65"]), count, start_at=start)


LABEL = Size("label", F("63.5"), F("38.1"), "typed")


def _sheet(**changes: object) -> dict[str, object]:
    typed: dict[str, object] = {
        "columns": 3, "rows": 7, "left_mm": F("7.2"), "top_mm": F("15.1"),
        "pitch_x_mm": F("66.0"), "pitch_y_mm": F("38.1"),
    }  # fmt: skip
    return typed | changes


def test_label_sheet_from_typed_measures() -> None:
    grid = label_sheet(PAPERS["a4"], LABEL, **_sheet())  # type: ignore[arg-type]
    assert grid.per_page == 21
    assert grid.place(20).x_mm == F("139.2")
    assert grid.place(20).y_mm == F("243.7")


@pytest.mark.parametrize(
    "wrong",
    [{"left_mm": F(30)}, {"top_mm": F(40)}, {"pitch_x_mm": F(60)}, {"pitch_y_mm": F(30)},
     {"columns": 0}, {"left_mm": F(-1)}],
    ids=["off right", "off bottom", "overlap across", "overlap down", "none", "off left"],
)  # fmt: skip
def test_impossible_label_sheets_are_refused(wrong: dict[str, object]) -> None:
    with pytest.raises(Unreadable):
        label_sheet(PAPERS["a4"], LABEL, **_sheet(**wrong))  # type: ignore[arg-type]


def test_an_unknown_size_names_the_nearest() -> None:
    with pytest.raises(Unreadable, match='Did you mean "letter"'):
        named_size("lettr", PAPERS)


def test_too_large_a_box_says_so() -> None:
    with pytest.raises(Unreadable, match="does not go on US Letter"):
        impose(PAPERS["letter"], PAPERS["a4"])
