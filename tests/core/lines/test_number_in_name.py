"""Foods whose names begin with a number in words: every one that the larder holds."""

from __future__ import annotations

import pytest

from stillroom.core.amounts.quantities import Amount, Unmeasured
from stillroom.core.larder.shelves import common_larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("five spice", "five spice"),
        ("Five spice powder, to taste", "five spice"),
        ("seven spice", "seven spice"),
        ("thousand island dressing", "thousand island dressing"),
        ("half and half", "half and half"),
    ],
)
def test_a_number_in_a_name_counts_nothing(line: str, food: str) -> None:
    one = find_foods(read_ingredient(line, "metric"), common_larder())
    assert isinstance(one.amount, Unmeasured)
    assert [found.name for found in food_of(one).foods] == [food]


@pytest.mark.parametrize(
    ("line", "many"),
    [
        ("five eggs", 5),
        ("ten peppercorns", 10),
        ("two and a half pounds of plums", 2.5),
        ("two or three pounds of plums", 2),
        ("two dozen plums", 24),
    ],
)
def test_any_other_number_counts(line: str, many: float) -> None:
    one = read_ingredient(line, "metric")
    assert isinstance(one.amount, Amount)
    assert one.amount.low == many
