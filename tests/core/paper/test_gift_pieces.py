"""The pieces as they are drawn: where they lie on a page, what is cut and what is folded."""

from __future__ import annotations

import pytest

from stillroom.core.paper.gift_pieces import (
    box_pieces,
    label_pieces,
    lid_pieces,
    lines_of,
    place_on,
)
from stillroom.core.paper.sheets import PAPERS
from stillroom.core.words.problems import Unreadable


def test_the_words_hold_every_measure() -> None:
    [cloth] = lid_pieces(82, 14, 2, bow=False)
    # 82 + 2 x 14 + 2 x 30; twice pi x 82 = 515.2, up to 516, and a knot of 60
    assert cloth.words == (
        "A square of cloth, 170 by 170 mm, for a lid 82 mm across, and 576 mm of ribbon to go "
        "twice round and knot."
    )


def test_a_long_label_is_turned_and_glued_at_its_foot() -> None:
    [label] = label_pieces(60, 70)
    placed = place_on(label, PAPERS["a4"])
    assert placed is not None
    assert (placed.width_mm, placed.height_mm, placed.turned) == (66, 196.5, True)
    assert lines_of(placed).folds == (((0, 188.5), (66, 188.5)),)


@pytest.mark.parametrize(("lid", "goes"), [(100, True), (101, False)])
def test_what_is_too_large_for_the_page(lid: float, goes: bool) -> None:
    # A4 is 210 mm wide: a cloth of 190 mm goes between margins of 10 mm
    assert (place_on(lid_pieces(lid)[0], PAPERS["a4"]) is not None) == goes


def test_a_net_is_cut_round_its_tabs_and_folded_beside_them() -> None:
    box, lid = box_pieces(80, 60, 40, 20)
    lines = lines_of(box)
    assert (box.width_mm, box.height_mm) == (160, 140)
    assert (lid.width_mm, lid.height_mm) == (122, 102)
    assert len(lines.folds) == 8  # round the base, and one for each of four tabs
    edges = zip(lines.outline, (*lines.outline[1:], lines.outline[0]), strict=True)
    assert not {frozenset(edge) for edge in edges} & {frozenset(fold) for fold in lines.folds}
    assert min(x for x, _y in lines.outline) == 0
    assert max(y for _x, y in lines.outline) == 140


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        (lambda: lid_pieces(0), "A lid's diameter of 0 mm is not possible. Write 1 to 2000."),
        (lambda: lid_pieces(70, -1), "A lid's height of -1 mm is not possible. Write 0 to 2000."),
        (lambda: box_pieces(80, 60, 20, 40), "The lid is deeper than its box."),
        (lambda: box_pieces(80, 60, 40, 4), "A wall of 4 mm holds no tab to glue."),
        (lambda: label_pieces(52, 18), "A straight wall of 18 mm holds no readable label."),
    ],
    ids=["no lid", "height below nothing", "deep lid", "low wall", "low label"],
)
def test_refusals_are_plain(asked: object, says: str) -> None:
    with pytest.raises(Unreadable, match=says):
        asked()  # type: ignore[operator]
