"""Cloth, ribbon, wrap labels and nets: worked by hand beside each row."""

import math

import pytest

from stillroom.core.paper.gift_cuts import (
    Rectangle,
    box_net,
    cloth_square_mm,
    ribbon_mm,
    wrap_label_mm,
)  # fmt: skip
from stillroom.core.words.problems import Unreadable


def test_cloth_covers_the_lid_its_side_and_hangs_down() -> None:
    assert cloth_square_mm(82, 14) == 82 + 28 + 60  # allowances: common practice


def test_ribbon_goes_round_and_ties() -> None:
    assert ribbon_mm(100) == 315 + 380  # pi x 100 = 314.16, rounded up
    assert ribbon_mm(100, turns=2, bow=False) == 629 + 60


@pytest.mark.parametrize("diameter", [20, 31.5, 48, 75, 110])
def test_a_full_wrap_label_is_the_girth_and_the_overlap(diameter: float) -> None:
    label = wrap_label_mm(diameter, 60)
    assert label.width_mm == pytest.approx(math.pi * diameter + 8, abs=0.05)
    assert label.height_mm == 56


def test_half_a_wrap_needs_no_overlap() -> None:
    assert wrap_label_mm(50, 60, share=0.5).width_mm == pytest.approx(math.pi * 25, abs=0.05)


def test_a_lid_slips_over_its_box() -> None:
    net = box_net(100, 70, 50, 20)
    assert net.base_flat == Rectangle(200, 170)
    assert net.lid_flat == Rectangle(142, 112)
    assert net.lid_length_mm > net.base_length_mm


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: cloth_square_mm(0),
        lambda: cloth_square_mm(-70),
        lambda: ribbon_mm(float("nan")),
        lambda: cloth_square_mm(float("inf")),
        lambda: cloth_square_mm(1e308),
        lambda: box_net(80, 60, 1e308, 20),
        lambda: ribbon_mm(50, turns=0),
        lambda: wrap_label_mm(50, 12),
        lambda: wrap_label_mm(50, 60, share=1.5),
        lambda: box_net(10, 10, 10, 20),
        lambda: box_net(9000, 10, 10, 5),
    ],
)
def test_impossible_measures_are_refused(wrong: object) -> None:
    with pytest.raises(Unreadable):
        wrong()  # type: ignore[operator]
