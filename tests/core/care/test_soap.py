"""Lye that no fat takes, water onto lye, soap used too soon: refused or told, and nothing else.

Grams of lye a fat takes: Certified Lye, Chart of saponification values, 2 November 2010, in a copy
on docslib.org; Herbal Bear, Saponification value chart. Recipes 2 and 6 are within both by hand
(500 x 0.1353 + 300 x 0.191 = 125; 1000 x 0.1353 = 135, as potash 190).
"""

from __future__ import annotations

import pytest

from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.reading.loading import read_recipe

BOOK = BookSettings()
ALL = {"lye-left-over", "water-onto-lye", "soap-young"}
INTO_WATER = "Stir the lye into the water, little by little. Mix with the oils. "

SOAPS = [
    (["1 kg olive oil", "400 g caustic soda", "100 g water"],
     "Pour the water onto the caustic soda. Mix. Ready in 2 days.", ALL),
    (["500 g olive oil", "300 g coconut oil", "110 g sodium hydroxide", "260 g water"],
     "Add the lye to the water, never the water to the lye. Cure for six weeks.", set()),
    (["800 g sunflower oil", "240 g lye", "300 g water"],
     f"{INTO_WATER}Use the next day.", {"lye-left-over", "soap-young"}),
    (["1 kg tallow", "138 g lye", "350 g water"],
     "Put the water in a jug and add the lye. Leave for 24 hours, cut, leave for 5 weeks.", set()),
    (["1 kg coconut oil", "180 g lye", "350 g water"], f"{INTO_WATER}Cure for a month.", set()),
    (["1 kg olive oil", "190 g potassium hydroxide", "400 g water"],
     "Stir it into the water. Cook for 3 hours in a slow cooker.", set()),
    (["1 kg olive oil", "250 g potassium hydroxide", "400 g water"],
     "Stir it into the water. Cook for 3 hours in a slow cooker.", {"lye-left-over"}),
    (["1 kg lard", "2 tins lye", "400 g water"], f"{INTO_WATER}Cure for a month.", set()),
    (["500 g soap base", "10 drops lavender oil"], "Melt, pour, use the next day.", set()),
    (["1 l olive oil", "120 g NaOH", "300 g water"],
     "Slowly pour the water over the NaOH. Cure for six weeks.", {"water-onto-lye"}),
    (["1 kg Olivenöl", "128 g Ätznatron", "300 g Wasser"],
     "Das Wasser auf das Ätznatron giessen. 6 Wochen reifen lassen.", {"water-onto-lye"}),
]  # fmt: skip


@pytest.mark.parametrize(("lines", "method", "found"), SOAPS)
def test_lye_is_held_against_the_fats_and_the_method(
    lines: list[str], method: str, found: set[str]
) -> None:
    listed = "".join(f"  - {line}\n" for line in lines)
    head = f"---\ntitle: Soap\nkind: craft\nmakes: 10 bars\ningredients:\n{listed}---\n"
    recipe = read_recipe(f"{head}\n## Method\n\n{method}\n", "recipes/s.md", "s")
    box = assess_safety(recipe, BOOK)
    assert {one.rule for one in (*box.refusals, *box.cautions)} & ALL == found
