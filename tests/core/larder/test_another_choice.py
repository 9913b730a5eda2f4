"""What may be taken instead, with an amount of its own: each of them counts."""

from __future__ import annotations

import pytest

from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of


# everyday lines of ours, as pages write them; "of" hid the second food, "g" and "tbsp" were no food
@pytest.mark.parametrize(
    ("line", "locale", "foods"),
    [
        ("50g butter, or 50g margarine", "en_GB", ["butter", "margarine"]),
        ("50g butter or 3 tbsp oil", "en_GB", ["butter", "oil"]),
        ("100 g butter or 100 g of ground almonds", "en_GB", ["butter", "ground almonds"]),
        ("1 kg apples or 2 pounds of pears", "en_GB", ["apple", "pear"]),
        ("100 ml milk or 1 cup of oat milk", "en_GB", ["milk", "oat milk"]),
        ("a pint of brandy, or of rum", "en_GB", ["brandy", "rum"]),
        ("1 cup sugar or 200g", "en_GB", ["granulated sugar"]),
        ("60 g almonds or 1/2 cup", "en_GB", ["almonds"]),
        ("100 g de noisettes ou 100 g d'amandes", "fr_FR", ["hazelnuts", "almonds"]),
        ("100 ml de leche, o 100 ml de nata", "es_ES", ["milk", "cream"]),
        ("50 g di burro, oppure 50 g di strutto", "it_IT", ["butter", "lard"]),
        ("100 g Haselnüsse oder 100 g Mandeln", "de_DE", ["hazelnuts", "almonds"]),
        ("4 gelatine leaves, soaked in cold water", "en_GB", ["gelatine"]),
        ("2 tbsp kirsch or other fruit brandy", "en_GB", ["kirsch", "fruit brandy"]),
    ],
)
def test_a_second_choice_counts_with_its_own_amount(
    line: str, locale: str, foods: list[str]
) -> None:
    larder = Larder(language=locale[:2])
    reading = food_of(find_foods(read_ingredient(line, "metric", locale), larder))
    assert reading.known
    assert [one.name for one in reading.foods] == foods
