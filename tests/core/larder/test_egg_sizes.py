"""An egg weighs by its size and its country's classes."""

from __future__ import annotations

import pytest

from stillroom.core.larder.shelves import common_larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods

# words of the line, system of measures, g without the shell
EGGS = [
    ("large eggs", "us", 50),
    ("large eggs", "metric", 59),
    ("large eggs", "imperial", 59),
    ("medium free-range eggs", "metric", 50),
    ("medium eggs", "us", 44),
    ("extra large eggs", "us", 56),
    ("very large eggs", "metric", 66),
    ("eggs, small", "us", 38),
    ("eggs", "us", 50),
    ("eggs", "metric", 50),
    ("egg yolks from large eggs", "metric", 17),
]


@pytest.mark.parametrize(("words", "system", "grams"), EGGS, ids=[f"{e[0]}-{e[1]}" for e in EGGS])
def test_an_egg_weighs_by_its_size_and_country(words: str, system: str, grams: int) -> None:
    line = read_ingredient(f"3 {words}", "metric")
    found = find_foods(line, common_larder(), system).found
    assert found is not None
    assert found.food is not None
    assert found.food.each_g == grams
