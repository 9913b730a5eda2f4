"""Plants by their botanical names, and what only a maker knows of wines.

The botanical names of spices and flavourings are those of the United States' list (21 CFR 182.10,
182.20 and 172.510, read in November 2026 as the e-CFR and docslib.org have them); those of plants
that foragers gather are from memory.
"""

from __future__ import annotations

import pytest

from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.index import load_index
from stillroom.core.larder.shelves import staple_named

# phrase, the food it is
PLANTS = [
    ("Pimenta officinalis", "allspice"),
    ("Melissa officinalis, fresh", "lemon balm"),
    ("Calendula officinalis petals", "calendula"),
    ("Illicium verum", "star anise"),
    ("Prunus spinosa fruit", "sloe"),
    ("Marrubium vulgare", "horehound"),
    ("Sambucus nigra flowers", "elderflower"),
    ("Taraxacum officinale root", "dandelion root"),
    ("Artemisia absinthium", "wormwood"),
    ("Silybum marianum", "milk thistle"),
]
# of these one part is eaten and another is not, or the plant is nothing to eat
NEVER_ALONE = ["Sambucus nigra", "Taraxacum officinale", "Apium graveolens", "Althaea officinalis"]
POISON = ["Conium maculatum", "Digitalis purpurea", "Taxus baccata"]


@pytest.mark.parametrize(("phrase", "name"), PLANTS, ids=[row[0] for row in PLANTS])
def test_a_botanical_name_is_its_plant(phrase: str, name: str) -> None:
    reading = read_food(phrase)
    assert reading.known, reading.leftover
    assert reading.food is not None
    assert reading.food.name == name


@pytest.mark.parametrize("phrase", NEVER_ALONE)
def test_a_plant_of_several_parts_is_asked(phrase: str) -> None:
    assert not read_food(phrase).known


@pytest.mark.parametrize("phrase", POISON)
def test_a_poisonous_plant_is_known_as_one(phrase: str) -> None:
    food = read_food(phrase).food
    assert food is not None
    assert "toxic" in food.tags


# names of one food that hold another's, of which nothing follows
NOT_ITS_WORD = [
    ("milk thistle seeds", "milk thistle seed", set()),
    ("nut brown ale", "nut brown ale", {"barley"}),
    ("lemon drops", "lemon drop", set()),
    ("wheatgerm oil", "wheatgerm oil", {"wheat"}),
    ("milk kefir grains", "milk kefir grain", {"milk"}),
]


@pytest.mark.parametrize(
    ("phrase", "name", "contains"), NOT_ITS_WORD, ids=[row[0] for row in NOT_ITS_WORD]
)
def test_a_word_in_a_name_is_not_that_food(phrase: str, name: str, contains: set[str]) -> None:
    reading = read_food(phrase)
    assert reading.food is not None
    assert reading.food.name == name
    assert set(reading.food.allergens) == contains


def test_of_every_wine_and_beer_only_its_maker_knows_whether_it_is_vegan() -> None:
    """Wines and beers may be cleared with isinglass, egg white, milk or gelatine.

    Common practice, no published source read; sake and rice wines are left out.
    """
    names = set(load_index()["names"].values())
    brewed = [
        food
        for food in map(staple_named, names)
        if "wine" in food.tags
        or (
            "alcohol" in food.tags
            and {"barley"} <= set(food.allergens)
            and "cocktail" not in food.name
        )
    ]
    assert len(brewed) > 80
    assert [food.name for food in brewed if food.vegan is True] == []
    assert staple_named("gin").vegan is True
