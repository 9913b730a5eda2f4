"""The tables of foods: their shape, and what must follow from a food and what must not."""

from __future__ import annotations

import re

import pytest

from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.index import (
    COLUMNS,
    build_index,
    load_index,
    read_table,
    split_list,
)
from stillroom.core.larder.index_file import HOUSE
from stillroom.core.larder.shelves import all_staples
from stillroom.core.larder.words import normal_form
from stillroom.core.words.data_files import read_data

TABLES = sorted((HOUSE / "foods").glob("*.tsv"))
ROWS = [(path.name, row) for path in TABLES for row in read_table(path)]
ORIGINS = {
    "plant",
    "mineral",
    "fungus",
    "milk",
    "egg",
    "honey",
    "beeswax",
    "gelatine",
    "fish",
    "meat",
}
ORIGINS |= {"calf rennet", "wool", "crustacean", "mollusc", "insect", "unknown"}


def test_there_are_foods_enough() -> None:
    index = load_index()
    assert len(index["rows"]) >= 9500
    assert len(index["names"]) >= 10500


@pytest.mark.parametrize("path", TABLES, ids=lambda path: path.stem)
def test_every_row_keeps_to_the_columns(path: object) -> None:
    for name, row in ROWS:
        if name != getattr(path, "name", ""):
            continue
        assert tuple(row) == COLUMNS
        assert row["name"] == row["name"].strip(), row
        assert set(split_list(row["from"])) <= ORIGINS, row
        assert set(split_list(row["allergens"])) <= set(read_data("allergens.yml")), row
        assert set(split_list(row["may_contain"])) <= set(read_data("allergens.yml")), row
        assert row["acidity"] in ("", "acid", "borderline", "low", "dry"), row
        assert row["source"], row


def test_no_name_stands_for_two_foods() -> None:
    seen: dict[str, str] = {}
    for _, row in ROWS:
        for name in (row["name"], *split_list(row["also"])):
            form = normal_form(name)
            assert form not in seen, (name, seen.get(form), row["name"])
            seen[form] = row["name"]


def test_the_index_is_current() -> None:
    held = load_index()
    made = build_index()
    assert held["of"] == made["of"]
    assert held["names"] == made["names"]


# name, what its own row must say it contains, what it must not
ALLERGENS = [
    ("white chocolate", {"milk"}, {"almond"}),
    ("cashew butter", {"cashew"}, {"milk"}),
    ("shea butter", set(), {"milk"}),
    ("cocoa butter", set(), {"milk"}),
    ("apple butter", set(), {"milk"}),
    ("peanut butter", {"peanut"}, {"milk"}),
    ("coconut milk", set(), {"milk"}),
    ("coconut cream", set(), {"milk"}),
    ("almond milk", {"almond"}, {"milk"}),
    ("oat milk", {"oats"}, {"milk"}),
    ("soya milk", {"soya"}, {"milk"}),
    ("rice milk", set(), {"milk"}),
    ("malted milk powder", {"milk", "barley", "wheat"}, set()),
    ("vegan butter", set(), {"milk"}),
    ("buckwheat flour", set(), {"wheat"}),
    ("gluten-free flour", set(), {"wheat"}),
    ("rice flour", set(), {"wheat"}),
    ("gram flour", set(), {"wheat"}),
    ("self-raising flour", {"wheat"}, set()),
    ("spelt flour", {"wheat"}, set()),
    ("semolina", {"wheat"}, set()),
    ("couscous", {"wheat"}, set()),
    ("bulgur wheat", {"wheat"}, set()),
    ("panko", {"wheat"}, set()),
    ("seitan", {"wheat"}, set()),
    ("pearl barley", {"barley"}, set()),
    ("malt vinegar", {"barley"}, set()),
    ("rye flour", {"rye"}, set()),
    ("nutmeg", set(), {"nuts", "almond"}),
    ("water chestnut", set(), {"nuts"}),
    ("coconut", set(), {"nuts"}),
    ("pine nuts", {"pine-nut"}, set()),
    ("butternut squash", set(), {"nuts", "walnut"}),
    ("marzipan", {"almond"}, set()),
    ("amaretti", {"almond"}, set()),
    ("gianduja", {"hazelnut"}, set()),
    ("pesto", {"milk"}, set()),
    ("tahini", {"sesame"}, set()),
    ("hummus", {"sesame"}, set()),
    ("za'atar", {"sesame"}, set()),
    ("celeriac", {"celery"}, set()),
    ("celery salt", {"celery"}, set()),
    ("dijon mustard", {"mustard"}, set()),
    ("worcestershire sauce", {"fish"}, set()),
    ("fish sauce", {"fish"}, set()),
    ("anchovy", {"fish"}, set()),
    ("prawns", {"crustaceans"}, set()),
    ("shrimp paste", {"crustaceans"}, set()),
    ("squid", {"molluscs"}, set()),
    ("oyster sauce", {"molluscs"}, set()),
    ("oyster mushroom", set(), {"molluscs"}),
    ("soy sauce", {"soya", "wheat"}, set()),
    ("tamari", {"soya"}, {"wheat"}),
    ("tofu", {"soya"}, set()),
    ("miso", {"soya"}, set()),
    ("edamame", {"soya"}, set()),
    ("mayonnaise", {"eggs"}, set()),
    ("meringue", {"eggs"}, set()),
    ("advocaat", {"eggs"}, set()),
    ("egg noodles", {"eggs", "wheat"}, set()),
    ("ghee", {"milk"}, set()),
    ("paneer", {"milk"}, set()),
    ("whey powder", {"milk"}, set()),
    ("goat's cheese", {"milk"}, set()),
    ("lupin flour", {"lupin"}, set()),
    ("dried apricots", {"sulphites"}, set()),
    ("red wine", {"sulphites"}, set()),
    ("cream of tartar", set(), {"milk"}),
    ("butter beans", set(), {"milk"}),
    ("ginger beer", set(), {"barley"}),
    ("stout", {"barley"}, set()),
    ("oatcakes", {"oats"}, set()),
    ("groundnut oil", {"peanut"}, set()),
    ("walnut oil", {"walnut"}, set()),
]


@pytest.mark.parametrize(("name", "must", "must_not"), ALLERGENS, ids=[row[0] for row in ALLERGENS])
def test_allergens_follow_from_the_whole_name(
    name: str, must: set[str], must_not: set[str]
) -> None:
    food = read_food(name).food
    assert food is not None
    assert must <= set(food.allergens)
    assert not must_not & set(food.allergens)


# what outside recipes call a food, and the one food it is: a nearer name is never another's
OWN_NAMES = [
    ("green onions", {"green onion"}),
    ("semi-skimmed milk", {"semi-skimmed milk"}),
    ("milk, skimmed", {"skimmed milk"}),
    ("watermelon", {"watermelon"}),
    ("gazpacho", {"gazpacho"}),
    ("vegetable oil", {"vegetable oil"}),
    ("bitter almonds", {"bitter almond"}),
    ("spelt", {"spelt"}),
    ("jam sugar", {"jam sugar"}),
    ("ground ivy", {"ground ivy"}),
    ("ivy", {"ivy"}),
    ("cuckoo pint", {"arum"}),
    ("fresh cheese", {"fresh cheese"}),
    ("orange chocolate", {"orange chocolate"}),
    ("apple cider", {"apple cider"}),
    ("hard cider", {"cider"}),
    ("unsifted flour", {"flour"}),
    ("medium-size onions", {"onion"}),
    ("frozen all-butter puff pastry", {"all-butter puff pastry"}),
    ("lime zest and juice", {"lime zest", "lime juice"}),
    ("iceberg or bibb lettuce", {"iceberg lettuce", "bibb lettuce"}),
    ("button or cremini mushrooms", {"button mushroom", "cremini mushroom"}),
    ("fresh or dried bay laurel leaf", {"bay leaf"}),
    ("green and yellow courgettes", {"courgette", "yellow courgette"}),
    ("olive or sunflower or walnut oil", {"olive oil", "sunflower oil", "walnut oil"}),
    ("canned green chiles", {"tinned green chilli"}),
    ("green potatoes", {"green potato"}),
    ("chocolate bar", {"chocolate bar"}),
]


@pytest.mark.parametrize(("phrase", "foods"), OWN_NAMES, ids=[row[0] for row in OWN_NAMES])
def test_a_nearer_name_is_a_food_of_its_own(phrase: str, foods: set[str]) -> None:
    reading = read_food(phrase)
    assert reading.known
    assert {food.name for food in reading.foods} == foods


# phrases that hold a known food's name with a word that may make it another
STAY_UNKNOWN = [
    "goat's milk cheese",
    "almond cheese",
    "vegan cheddar cheese",
    "white chocolate liqueur",
    "Chinese gooseberry",
    "Mexican tea",
    "young coconut",
    "red garlic",
    "baby oil",
    "sweet white bread",
    "canned goldfish",
    "moon butter",
]


@pytest.mark.parametrize("phrase", STAY_UNKNOWN)
def test_a_word_that_may_make_it_another_leaves_it_unknown(phrase: str) -> None:
    assert not read_food(phrase).known


# named after honey and holding none: fruit, flowers, the look of a comb
NO_HONEY = (
    r"honey ?mango|honeyberr|honeydew|honeysuckle|honeycomb t|^(?:chocolate )?honeycomb$|mead yeast"
)


def test_a_food_named_after_honey_holds_it() -> None:
    named = [food for name, food in all_staples().items() if re.search("honey|mead\\b", name)]
    held = {food.name for food in named if "honey" in food.tags and "honey" in food.animal}
    rest = {food.name for food in named} - held
    assert held >= {"honey liqueur", "honey mustard", "honey-roast ham", "honey vinegar", "mead"}
    assert [name for name in sorted(rest) if not re.search(NO_HONEY, name)] == []


def test_what_the_law_calls_an_allergen_from_an_animal_is_never_vegan() -> None:
    held = {"milk", "eggs", "fish", "crustaceans", "molluscs"}
    assert [
        food.name for food in all_staples().values() if held & set(food.allergens) and food.vegan
    ] == []


def test_oil_of_krill_is_of_a_crustacean() -> None:
    food = read_food("krill oil").food
    assert food is not None
    assert (food.allergens, food.animal) == (("crustaceans",), ("crustacean",))


@pytest.mark.parametrize(("part", "food"), [
    ("dried peel of 2 oranges", "dried orange peel"), ("dried zest of 1 lemon", "dried lemon zest"),
    ("candied peel of 1 orange", "candied orange peel"), ("peel of 2 oranges", "orange peel"),
    ("young leaves of rhubarb", "rhubarb leaf"), ("kernels of 5 apricots", "apricot kernel"),
    # what no food is called stays unknown, and is never the fruit itself
    ("stones of 20 cherries", None), ("cores of 6 apples", None), ("pips of 2 lemons", None),
])  # fmt: skip
def test_how_a_part_is_stays_with_the_part(part: str, food: str | None) -> None:
    found = read_food(part).food
    assert (found.name if found else None) == food
