"""Allergens told in languages that the larder does not speak, in a book of any language.

The words and their sources: tests/data/allergen_words.tsv.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from stillroom.core.allergens.of_foods import know_ingredient
from stillroom.core.larder.allergen_words import told_elsewhere
from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods

WORDS = Path(__file__).parents[2] / "data" / "allergen_words.tsv"
ROWS = [line.split("\t") for line in WORDS.read_text(encoding="utf-8").splitlines()]
TOLD = [
    (row[0], word)
    for row in ROWS
    if len(row) == 2 and row[0] != "allergen"
    for word in row[1].split("; ")
]


def _held(line: str, language: str) -> tuple[frozenset[str], bool]:
    ingredient = read_ingredient(line, "metric", language)
    known = know_ingredient(find_foods(ingredient, Larder(language=language[:2])))
    return known.contains | known.may_contain, known.open


@pytest.mark.parametrize("language", ["en_GB", "fi_FI", "de_DE"])
@pytest.mark.parametrize(("allergen", "word"), TOLD, ids=[f"{a}-{w}" for a, w in TOLD])
def test_the_fourteen_are_seen_in_any_book(allergen: str, word: str, language: str) -> None:
    held, _ = _held(f"100 g {word}", language)
    assert allergen in held, word


# foods beside which such a word is told: not known, and no longer free of it
@pytest.mark.parametrize(
    ("line", "allergen"),
    [
        ("200 g flour, hasselnødder", "hazelnut"),
        ("200 g Mehl, Nüsse", "nuts"),
        ("sal, nueces", "walnut"),
        ("Salt, peber og nødder efter smag", "nuts"),
        ("11 dl mjöl, gärna rågsikt", "rye"),  # carlrobert/carlrobert.github.io, matrecept.md
    ],
)
def test_a_word_in_a_note_leaves_the_food_open(line: str, allergen: str) -> None:
    held, open_ = _held(line, "en_GB")
    assert allergen in held
    assert open_


@pytest.mark.parametrize(
    "line",
    [
        "200 g kokosmælk",
        "2 dl kookosmaitoa",
        "mleko kokosowe",
        "kokusztej",
        "lapte de cocos",
        "kakaosmør",
        "manteiga de cacau",
        "mąka ryżowa",
        "burgonyaliszt",
        "muskatnød",
        "szerecsendió",
        "noix de coco",
        "Muskatnüsse",
        "Butternusskürbis",
        "melkefri margarin",
        "uden mælk",
        "bez mleka",
        "rybíz",
        "offline browsing of all routes",  # a line of a page's menu: "ows" is in it, and no oats
        "friskrevet",  # fresh grated, and no "krevet"
        "larghi",
        "muslin bag",
        "a walnussgroßes Stück Ingwer",
    ],
)
def test_nothing_else_is_told(line: str) -> None:
    assert told_elsewhere(line, Larder()) == ()


@pytest.mark.parametrize(
    ("line", "language"),
    [
        ("50 g parmesan, friskrevet", "da_DK"),  # mikkelrask/Opskrifter
        ("1 walnussgroßes Stück frischer Ingwer", "de_DE"),  # fschloesser/Rezepte
        ("butter, not with hasselnødder", "en_GB"),
    ],
)
def test_a_harmless_note_changes_nothing(line: str, language: str) -> None:
    ingredient = read_ingredient(line, "metric", language)
    assert not know_ingredient(find_foods(ingredient, Larder(language=language[:2]))).unknown


def test_oat_and_almond_drinks_hold_no_milk() -> None:
    for line, allergen in (
        ("havremelk", "oats"),
        ("mandelmælk", "almond"),
        ("soijamaitoa", "soya"),
    ):
        held, _ = _held(line, "fi_FI")
        assert allergen in held
        assert "milk" not in held, line


@pytest.mark.parametrize(
    ("language", "phrase", "held"),
    [
        ("da_DK", "kiks uden nødder, men med mælk", {"milk", "wheat"}),
        ("da_DK", "chokolade uden mælk, med hasselnødder", {"hazelnut", "soya"}),  # chocolate's
        ("nb_NO", "plommer uten noe, mandler", {"almond"}),
        ("pl_PL", "czarny bez, migdały", {"almond"}),  # elder, and no "without"
        ("pt_PT", "bolachas sem glúten, com leite", {"milk"}),
        ("pt_PT", "bolachas sem farinha de trigo", set()),
        ("cs_CZ", "švestek bez pecek, mandle", {"almond"}),
        ("da_DK", "kage uden mel (med mandler)", {"almond"}),
    ],
)
def test_a_denial_reaches_no_further_than_what_it_denies(
    language: str, phrase: str, held: set[str]
) -> None:
    """Phrases made up on 2026-11-30, the expectation before the rule."""
    reading = read_food(phrase, Larder(language=language))
    assert {name for food in (*reading.foods, *reading.hinted) for name in food.allergens} == held


def test_a_denial_that_lists_allergens_goes_on_over_its_commas() -> None:
    assert told_elsewhere("bez mleka, jajek i masła", Larder()) == ()
