"""A fragrance oil is no essential oil, whatever it smells of; an armful is counted, as a bunch is.

The candle and the wreath are a newcomer's papers; the rest from memory of such lists.
"""

import pytest

from stillroom.core.amounts.quantities import Amount
from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import Ingredient, read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of


def _read(line: str, language: str = "en") -> Ingredient:
    return find_foods(read_ingredient(line, "metric", language), Larder((), language))


@pytest.mark.parametrize(
    "line",
    [
        "40 ml cinnamon and orange fragrance oil",
        "10 ml lavender fragrance oil",
        "20 ml Christmas spice fragrance",
        "20 ml vanilla perfume oil",
    ],
)
def test_what_it_smells_of_is_not_in_it(line: str) -> None:
    read = food_of(_read(line))
    assert read.known
    assert [food.name for food in read.foods] == ["fragrance oil"]
    assert all("essential-oil" not in food.tags for food in read.foods)


@pytest.mark.parametrize("line", ["10 ml lavender essential oil", "10 ml orange essential oil"])
def test_an_essential_oil_is_one(line: str) -> None:
    assert any("essential-oil" in food.tags for food in food_of(_read(line)).foods)


def test_free_of_fragrance_is_none() -> None:
    assert "fragrance oil" not in [one.name for one in food_of(_read("5 g fragrance free")).foods]


@pytest.mark.parametrize("line", ["4 old teacups", "4 vintage tea cups", "3 chipped mugs"])
def test_what_a_candle_is_poured_into_is_known(line: str) -> None:
    assert food_of(_read(line)).known


@pytest.mark.parametrize(
    ("language", "line", "noun", "item"),
    [
        ("en", "an armful of ivy", "armful", "ivy"),
        ("en", "armful of ivy", "armful", "ivy"),
        ("en", "2 armfuls of holly", "armful", "holly"),
        ("en", "1 basketful of apples", "basketful", "apples"),
        ("de", "1 Armvoll Efeu", "Armvoll", "Efeu"),
    ],
)
def test_an_armful_is_counted(language: str, line: str, noun: str, item: str) -> None:
    read = _read(line, language)
    assert isinstance(read.amount, Amount)
    assert (read.amount.noun, read.item) == (noun, item)


@pytest.mark.parametrize(
    ("line", "food"),
    [("1 kg Schweinenacken", "pork"), ("1 kg Rehkeule", "venison"), ("1 kg Rinderhüfte", "beef")],
)
def test_a_cut_of_meat_is_that_meat(line: str, food: str) -> None:
    assert [one.name for one in food_of(_read(line)).foods] == [food]
