"""Foods whose names hold another's: none is taken for it, none loses or gains an allergen."""

from __future__ import annotations

from pathlib import Path

import pytest

from stillroom.core.allergens.of_foods import Known, know_ingredient
from stillroom.core.amounts.units import counted_nouns
from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.index import split_list
from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods

LIST = Path(__file__).parents[2] / "data" / "names_within_names.tsv"
LINES = [line for line in LIST.read_text(encoding="utf-8").splitlines() if line[0] != "#"]
ROWS = [tuple(line.split("\t")) for line in LINES[1:]]


def _known(name: str, language: str) -> Known:
    ours = {"en": "en_GB"}.get(language, language)
    line = read_ingredient(f"100 g {name}", "metric", ours)
    return know_ingredient(find_foods(line, Larder(language=ours)))


@pytest.mark.parametrize(
    ("name", "language", "contains", "may", "known", "vegan"),
    ROWS,
    ids=[f"{row[1]}-{row[0]}" for row in ROWS],
)
def test_a_name_within_a_name_is_its_own_food(
    name: str, language: str, contains: str, may: str, known: str, vegan: str
) -> None:
    found = _known(name, language)
    if found.unknown:
        assert known == "perhaps"
    else:
        assert set(split_list(contains)) - set(split_list(may)) <= found.contains
    assert found.contains <= set(split_list(contains)) | set(split_list(may))
    if vegan == "no" and not found.unknown:
        assert any(food.vegan is False for food in found.staples)
    if vegan == "yes":
        assert all(food.vegan for food in found.staples)


# an empty vessel and a tool are no food, whatever they are named for
@pytest.mark.parametrize(
    "name",
    [
        *("egg carton", "egg boxes", "milk carton", "wine bottle", "beer bottle", "yogurt pot"),
        *(
            "ice cream tub",
            "nut milk bag",
            "biscuit tin",
            "wine corks",
            "butter muslin",
            "cake tin",
        ),
        *("garlic press", "chocolate box", "bread bag", "egg cup", "jam pan", "cotton wool"),
    ],
)
def test_a_vessel_named_for_a_food_is_not_that_food(name: str) -> None:
    read = read_food(name)
    assert read.food is None or "craft" in read.food.tags
    assert read.food is None or not read.food.allergens


# counted by a vessel it is the food, however the words stand
@pytest.mark.parametrize("food", ["wine", "milk", "eggs", "butter", "biscuits"])
def test_what_a_vessel_holds_is_never_a_tool(food: str) -> None:
    tools = []
    for noun in counted_nouns():
        found = find_foods(read_ingredient(f"2 {noun} of {food}", "metric"), Larder())
        if any("craft" in staple.tags for staple in know_ingredient(found).staples):
            tools.append(noun)
    assert tools == []


# the same words before a food, or in a note, still hold it
@pytest.mark.parametrize(
    ("phrase", "food"),
    [
        ("carton of eggs", "eggs"),
        ("bottle wine", "wine"),
        ("milk, 1 carton", "milk"),
        ("black tea bags", "tea"),
        ("bunch of parsley", "parsley"),
        ("E 120", "e120"),
        ("INS 322", "e322"),
        ("ungeschwefelte Rosinen", "raisins"),
        ("egg whites (3 eggs)", "egg white"),
        ("mixed spice, or 4 teaspoons pumpkin pie spice", "mixed spice"),
    ],
)
def test_what_comes_in_a_vessel_is_the_food(phrase: str, food: str) -> None:
    assert getattr(read_food(phrase).food, "name", None) == food


def test_milk_of_choice_may_be_of_plants() -> None:
    found = _known("milk of choice", "en")
    assert found.unknown
    assert "milk" not in found.contains
    assert "milk" in found.may_contain
