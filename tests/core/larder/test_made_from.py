"""What a food is made from, in English lines: two-sided.

Sources are of the fourteen of Annex II of Regulation (EU) No 1169/2011; the lines are our own.
Until 1 December 2026 whatever stood behind "from" was taken for a place.
"""

from __future__ import annotations

import pytest

from stillroom.core.larder.food_reading import read_food

HELD = [
    ("lactic acid from whey", "milk"),
    ("glucose syrup from wheat", "wheat"),
    ("starch from wheat", "wheat"),
    ("lecithin from egg", "eggs"),
    ("lecithin (derived from egg)", "eggs"),
    ("gelatine from fish", "fish"),
    ("gelatine (from fish)", "fish"),
    ("vinegar from malt", "barley"),
    ("flour made from almonds", "almond"),
    ("flavouring made with hazelnuts", "hazelnut"),
    ("butter, made from cashews", "cashew"),
    ("margarine (made with buttermilk)", "milk"),
    ("breadcrumbs from a rye loaf", "rye"),
    ("pesto (made with walnuts)", "walnut"),
]


@pytest.mark.parametrize(("text", "allergen"), HELD)
def test_what_a_food_is_made_from_is_told(text: str, allergen: str) -> None:
    reading = read_food(text)
    assert allergen in {one for food in reading.named for one in food.allergens}


@pytest.mark.parametrize(
    ("text", "food"),
    [
        ("honey from a local beekeeper", "honey"),
        ("eggs from free-range hens", "eggs"),
        ("butter from grass-fed cows", "butter"),
        ("chocolate from Belgium", "chocolate"),
        ("cream from the top of the milk", "cream"),
        ("milk from goats", "milk"),
        ("jam from last year", "jam"),
        ("sugar from the total", "granulated sugar"),
        ("dark chocolate, made without milk", "dark chocolate"),
        ("egg yolks (from the eggs above)", "egg yolk"),
        ("juice from 2 limes", "lime juice"),
        ("extract from almonds", "almond extract"),
        ("gelatine from fish", "fish gelatine"),
        ("vinegar from malt", "malt vinegar"),
        ("milk (from oats)", "oat milk"),
    ],
)
def test_where_a_food_is_from_changes_nothing(text: str, food: str) -> None:
    reading = read_food(text)
    assert reading.known
    assert [one.name for one in reading.named] == [food]
