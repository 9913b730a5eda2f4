"""Which tin another batch wants: areas by hand, tins of one size read, others left alone."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from stillroom.core.amounts.tins import (
    Tin,
    area_cm2,
    find_tin,
    pan_factor,
    read_own_tin,
    read_tin,
    tin_note,
)
from stillroom.core.reading.loading import load_recipe
from stillroom.core.size.scalable import scalable_of
from stillroom.core.size.scaling import scale_recipe
from stillroom.core.size.targets import read_target
from stillroom.core.size.what_stays import notes_on_scaling
from stillroom.core.words.problems import Unreadable

RECIPES = Path(__file__).resolve().parents[3] / "recipes"

# vessel, factor, what the sentence ends with: geometry, a round or square grows by the square root
ENDS = [
    (
        "20 cm round tin",
        "2",
        "2 times the area of the 20 cm round tin: 2 of them, or one of 28 cm.",
    ),
    ("20 cm square tin", "3/2", "1.5 times the area of the 20 cm square tin: one of 24 cm."),
    ("20 cm round tin", "1/2", ": one of 14 cm."),
    ("20 cm round tin", "4", ": 4 of them, or one of 40 cm."),
    ("20 cm round tin", "5", ": 5 of them."),
    ("20 cm round tin", "5.5", ": share it among several."),
    ("18 x 28 cm tin", "2", ": 2 of them, or one of 1008 cm²."),
    ("8-inch square pan", "2", ": 2 of them, or one of 11 inch."),
    ("9 by 13 inch dish", "1/2", ": one of 59 square inches."),
]


@pytest.mark.parametrize(("vessel", "factor", "end"), ENDS)
def test_tin_of_another_batch(vessel: str, factor: str, end: str) -> None:
    assert tin_note(read_tin(vessel), Fraction(factor)).endswith(end)


# an inch is 2.54 cm; geometry
@pytest.mark.parametrize(
    ("words", "area"),
    [
        ("8 inch round tin", 324.3),
        ("8 inch square tin", 412.9),
        ("9 x 13 inch tin", 754.8),
        ("18 x 28 cm tin", 504),
    ],
)
def test_area_of_a_tin(words: str, area: float) -> None:
    tin = read_tin(words)
    assert tin is not None
    assert float(area_cm2(tin)) == pytest.approx(area, abs=0.05)


def test_nothing_is_said_of_the_same_tin() -> None:
    assert tin_note(read_tin("20 cm round tin"), Fraction(1)) == ""
    assert tin_note(read_tin("20 cm round tin"), Fraction("1.02")) == ""
    assert tin_note(None, Fraction(2)) == ""


@pytest.mark.parametrize(
    "vessel",
    ["3 l heavy pan", "two 20 cm tins", "0 cm tin", "20 cm string", "tin", "two oven racks"],
)
def test_a_vessel_that_is_no_tin_of_one_size(vessel: str) -> None:
    assert find_tin([vessel]) is None


def test_the_toffee_tells_of_its_tin() -> None:
    toffee = scalable_of(load_recipe(RECIPES / "salted-honey-toffee.md"))
    assert notes_on_scaling(toffee, Fraction(2))[-1].endswith(": 2 of them, or one of 28 cm.")
    assert not any("tin" in note for note in notes_on_scaling(toffee, Fraction(1)))


def tin(words: str) -> Tin:
    found = read_own_tin(words)
    assert found is not None
    return found


def test_pans_compare_by_area() -> None:
    """A round tin of 20 cm is very nearly a square one of 18 cm (common practice)."""
    assert float(pan_factor(tin("18 cm square"), tin("20 cm round"))) == pytest.approx(
        0.97, abs=0.005
    )
    assert float(pan_factor(tin("20 cm square"), tin("8 inch square"))) == pytest.approx(
        (8 * 2.54 / 20) ** 2
    )


# the cook's own tin for the toffee, which is set in one of 20 cm square: by geometry
@pytest.mark.parametrize(
    ("own", "factor"), [("30 x 20 cm", 1.5), ("20 cm round tin", 0.7854), ("9 x 13 inch", 1.887)]
)
def test_a_batch_for_the_tin_a_cook_has(own: str, factor: float) -> None:
    toffee = load_recipe(RECIPES / "salted-honey-toffee.md")
    batch = scale_recipe(toffee, read_target({"vessel": own}, "metric"))
    assert float(batch.factor) == pytest.approx(factor, abs=1e-3)
    assert not any("To stand as high" in note for note in batch.notes)


def test_a_recipe_without_a_tin_has_none_to_compare() -> None:
    ratafia = load_recipe(RECIPES / "quince-ratafia.md")
    with pytest.raises(Unreadable, match="no tin of its own"):
        scale_recipe(ratafia, read_target({"vessel": "24 cm round"}, "metric"))
