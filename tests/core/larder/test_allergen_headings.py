"""Everyday foods under each allergen heading: none of them is ever silently free of it.

`tests/data/allergen_foods.tsv` lists them, independent of the larder. Each must contain
its heading's allergen, or say that it may, or that only its packet tells, or not be known at all.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from stillroom.core.allergens.of_foods import PACKET
from stillroom.core.larder.food_reading import FoodReading, read_food
from stillroom.core.larder.index import split_list
from stillroom.core.words.data_files import read_data

LIST = Path(__file__).parents[2] / "data" / "allergen_foods.tsv"
ALLERGENS = read_data("allergens.yml")
LINES = [line for line in LIST.read_text(encoding="utf-8").splitlines() if line[0] != "#"]
ROWS = [(line.partition("\t")[0], split_list(line.partition("\t")[2])) for line in LINES[1:]]
FEWEST = 15


def _ids(heading: str) -> set[str]:
    own = {
        "tree nuts (US)": lambda row: row.get("us") == "tree nuts",
        "wheat (US)": lambda row: row.get("us") == "wheat",
    }.get(heading, lambda row: row.get("eu") == heading)
    return {name for name, row in ALLERGENS.items() if own(row)}


def _said(reading: FoodReading, ids: set[str]) -> str:
    if not reading.known:
        return "unknown"
    if any(ids & set(food.allergens) for food in reading.foods):
        return "contains"
    if any(ids & set(food.may_contain) for food in reading.foods):
        return "may contain"
    return "packet" if any(PACKET in food.tags for food in reading.foods) else "free"


def test_every_heading_of_the_law_has_its_foods() -> None:
    headings = {row["eu"] for row in ALLERGENS.values() if "eu" in row}
    assert headings <= {heading for heading, _ in ROWS}
    assert all(_ids(heading) for heading, _ in ROWS)
    assert all(len(foods) >= FEWEST for heading, foods in ROWS if "(US)" not in heading)


@pytest.mark.parametrize(("heading", "foods"), ROWS, ids=[heading for heading, _ in ROWS])
def test_no_food_of_a_heading_is_silently_free_of_it(heading: str, foods: list[str]) -> None:
    ids = _ids(heading)
    said = {food: _said(read_food(food), ids) for food in foods}
    assert [food for food, what in said.items() if what == "free"] == []
    sure = [food for food, what in said.items() if what in ("contains", "may contain")]
    assert len(sure) >= (FEWEST if "(US)" not in heading else 8)


# foods whose names hold the word of an allergen, and what they must neither contain nor be said to
INNOCENT = [
    ("coconut", "nuts"),
    ("nutmeg", "nuts"),
    ("butternut squash", "nuts"),
    ("water chestnut", "nuts"),
    ("tiger nuts", "nuts"),
    ("doughnut peach", "nuts"),
    ("chestnuts", "nuts"),
    ("buckwheat", "milk"),
    ("cream of tartar", "milk"),
    ("cocoa butter", "milk"),
    ("shea butter", "milk"),
    ("apple butter", "milk"),
    ("butter beans", "milk"),
    ("butter lettuce", "milk"),
    ("coconut milk", "milk"),
    ("creamed coconut", "milk"),
    ("custard apple", "milk"),
    ("lactic acid", "milk"),
    ("milk thistle", "milk"),
    ("buttercup squash", "milk"),
    ("eggplant", "eggs"),
    ("oyster mushrooms", "molluscs"),
    ("crab apples", "crustaceans"),
    ("crab apple jelly", "crustaceans"),
    ("lobster mushroom", "crustaceans"),
    ("ginger beer", "cereals containing gluten"),
    ("glutinous rice", "cereals containing gluten"),
    ("gluten-free flour", "cereals containing gluten"),
    ("cornflour", "cereals containing gluten"),
    ("tamari", "cereals containing gluten"),
    ("star anise", "celery"),
    ("sesame-free", "sesame"),
    ("butterfly pea flower", "milk"),
    ("cider vinegar", "mustard"),
    ("monkfish", "molluscs"),
    ("pea protein", "peanuts"),
    ("black-eyed peas", "peanuts"),
    ("poppy seeds", "sesame"),
    ("fennel", "celery"),
    ("parsley", "celery"),
]


@pytest.mark.parametrize(("food", "heading"), INNOCENT, ids=[row[0] for row in INNOCENT])
def test_a_word_inside_a_name_brings_no_allergen(food: str, heading: str) -> None:
    assert _said(read_food(food), _ids(heading)) in ("free", "packet", "unknown")
