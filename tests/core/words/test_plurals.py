"""One and many: kitchen nouns both ways, and words that have no other form."""

from __future__ import annotations

from pathlib import Path

import pytest

from stillroom.core.words.plurals import plural, singular

TABLE = Path(__file__).parents[2] / "data" / "one_and_many.tsv"
PAIRS = [
    tuple(line.split("\t"))
    for line in TABLE.read_text(encoding="utf-8").splitlines()
    if not line.startswith("#")
]


def test_there_are_more_than_three_hundred_pairs() -> None:
    assert len(PAIRS) > 300


def test_one_and_many_lead_to_each_other() -> None:
    # what is many or one already stays as it is
    made = [(plural(one), singular(many), plural(many), singular(one)) for one, many in PAIRS]
    assert made == [(many, one, many, one) for one, many in PAIRS]


@pytest.mark.parametrize(
    "word",
    [
        "molasses",
        "asparagus",
        "hummus",
        "couscous",
        "swiss",
        "citrus",
        "greens",
        "muslin",
        "thread",
        "scissors",
        "hops",
        "cassis",
        "octopus",
        "hibiscus",
        "watercress",
        "schnapps",
        "haggis",
        "bitters",
        "fish",
        "monkfish",
        "salmon",
    ],
)
def test_what_looks_like_many_is_left_alone(word: str) -> None:
    assert singular(word) == word


# (as written, one, many)
ITEMS = [
    ("muslin pouches", "muslin pouch", "muslin pouches"),
    ("small glasses", "small glass", "small glasses"),
    ("Seville oranges", "Seville orange", "Seville oranges"),
    ("sheets of baking paper", "sheet of baking paper", "sheets of baking paper"),
    ("Bay leaves", "Bay leaf", "Bay leaves"),
    ("star anise", "star anise", "star anises"),
    ("loaves, sliced", "loaf, sliced", "loaves, sliced"),
    ("LEAVES", "LEAF", "LEAVES"),
]


@pytest.mark.parametrize(("written", "one", "many"), ITEMS, ids=[row[0] for row in ITEMS])
def test_the_last_word_before_of_is_the_one_counted(written: str, one: str, many: str) -> None:
    assert singular(written).lower() == one.lower()
    assert plural(singular(written)).lower() == many.lower()


@pytest.mark.parametrize("item", ["Stück", "Eigelb", "Plätzchen", "Mürbchen", "Kipferl", "Eiweiß"])
def test_a_word_of_another_language_gets_no_english_plural(item: str) -> None:
    assert (plural(item), singular(item)) == (item, item)
