"""The fourteen of Annex II, each by its own word, in the eleven languages that lines are read in.

"100 g wheat" told of no allergen, and Dutch "krab" was sticks of white fish (30 November 2026): the
very words of the law must tell of what they name, whatever else of a line is not known. The words
and where they were read stand in annex_two.yml.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
import yaml

from stillroom.core.larder.packet_parts import read_part
from stillroom.core.larder.shelves import all_staples, common_larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of

WORDS = yaml.safe_load(Path(__file__).with_name("annex_two.yml").read_text(encoding="utf-8"))
CASES = [
    (allergen, language, word.strip())
    for allergen, rows in WORDS.items()
    for language, words in rows.items()
    for word in words.split(",")
]


def allergens_of(line: str, language: str) -> frozenset[str]:
    larder = replace(common_larder(), language=language)
    reading = food_of(find_foods(read_ingredient(line, "metric", language), larder, "metric"))
    return frozenset(name for food in reading.named for name in food.allergens)


@pytest.mark.parametrize(("allergen", "language", "word"), CASES)
def test_its_own_word_tells_of_an_allergen(allergen: str, language: str, word: str) -> None:
    for line in (word, f"100 g {word}"):
        told = allergens_of(line, language)
        assert allergen in told, line
        # and of no other of the fourteen that the word does not name
        assert told <= {allergen, *_ALSO.get(word, ())}, line


# Swedish and Danish "soja" is most often the sauce, which is brewed with wheat
_ALSO = {"soja": ("wheat",)}


@pytest.mark.parametrize(
    ("line", "language", "free_of"),
    [
        ("100 g buckwheat", "en", "wheat"),
        ("100 g grano saraceno", "it", "wheat"),
        ("3 grani di pepe", "it", "wheat"),
        ("granos de pimienta", "es", "wheat"),
        ("200 g crab apples", "en", "crustaceans"),
        ("200 g soy wax flakes", "en", "soya"),
        ("1 tsp mace", "en", "nuts"),
        ("100 g Boekweit", "nl", "wheat"),
        ("1 Muskatnuss", "de", "nuts"),
    ],
)
def test_a_word_within_another_names_none(line: str, language: str, free_of: str) -> None:
    assert free_of not in allergens_of(line, language)


def test_the_parts_of_a_compound_show_each_of_its_allergens() -> None:
    """Soy sauce listed "wheat" among its parts, and nothing marked it as an allergen."""
    hidden = {}
    compounds = [food for food in all_staples().values() if food.parts and food.allergens]
    for food in compounds:
        readings = [read_part(part, common_larder()) for part in food.parts]
        shown = {
            name
            for one in readings
            for part in (*one.foods, *one.hinted)
            for name in part.allergens
        }
        if set(food.allergens) - shown:
            hidden[food.name] = set(food.allergens) - shown
    assert len(compounds) > 100
    assert hidden == {}
