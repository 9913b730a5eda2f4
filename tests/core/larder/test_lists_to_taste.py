"""What stands in a list that ends with "to taste" or "etc" counts, in every language.

"Sal, ajo y comino al gusto": iberi22/ComoCocinar; "Sesam, Kuemmel etc": fschloesser/Rezepte; the
others are after them. Each was read as its first food alone, and its mustard was free of mustard.
"""

from __future__ import annotations

import pytest

from stillroom.core.allergens.of_foods import know_ingredient
from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods


@pytest.mark.parametrize(
    ("line", "language", "foods"),
    [
        ("Sal, ajo y comino al gusto", "es_ES", "salt, garlic, cumin seeds"),
        ("Lechuga, tomate y cebolla al gusto", "es_ES", "lettuce, tomato, onion"),
        ("Sal, mostaza y apio al gusto", "es_ES", "salt, mustard, celery"),
        ("Sel, poivre et moutarde au goût", "fr_FR", "salt, black pepper, moutarde"),
        ("Sale, pepe e senape q.b.", "it_IT", "salt, black pepper, mustard"),
        ("sale, senape q.b.", "it_IT", "salt, mustard"),
        ("Salz, Pfeffer, Senf nach Geschmack", "de_DE", "salt, black pepper, mustard"),
        ("Salz, Senf etc.", "de_DE", "salt, mustard"),
        ("salt, senap och selleri efter smak", "sv_SE", "salt, mustard, celery"),
        ("Sal, mostarda e aipo a gosto", "pt_PT", "salt, mustard, celery"),
        ("salt, mustard etc", "en_GB", "salt, mustard"),
        ("Sesame, caraway etc", "en_GB", "sesame, caraway seeds"),
        # what leaves it to the cook adds nothing to one food
        ("sugar, to taste", "en_GB", "granulated sugar"),
        ("Salz, nach Geschmack", "de_DE", "salt"),
        ("chilli flakes, more or less to taste", "en_GB", "chilli flakes"),
    ],
)
def test_every_food_of_the_list_counts(line: str, language: str, foods: str) -> None:
    ingredient = read_ingredient(line, "metric", language)
    known = know_ingredient(find_foods(ingredient, Larder(language=language[:2])))
    assert [food.name for food in known.staples] == foods.split(", ")
    assert not known.unknown


@pytest.mark.parametrize(
    ("line", "language", "allergen"),
    [
        ("Salz, Senf und Sellerie nach Belieben", "de_DE", "celery"),
        ("zout, mosterd en selderij naar smaak", "nl_NL", "mustard"),
        ("Sal, pimienta y nueces al gusto", "es_ES", "walnut"),
    ],
)
def test_what_is_not_known_in_it_leaves_it_open(line: str, language: str, allergen: str) -> None:
    ingredient = read_ingredient(line, "metric", language)
    known = know_ingredient(find_foods(ingredient, Larder(language=language[:2])))
    assert allergen in known.contains | known.may_contain
    assert known.unknown or allergen == "mustard"
