"""A recipe in another language than its book's: each food as the recipe's language means it.

Prunes are dried plums in English and fresh ones in French; the same with raisins (grapes), citron
(lemon) and Spanish manteca, which may be lard or butter: any dictionary.
"""

from __future__ import annotations

import pytest

from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.reading.loading import read_recipe

FRENCH = "Laver les fruits. Ajouter le sucre et mettre en pots."
ENGLISH = "Wash the fruit, add it to the pan with the sugar and boil until it sets."
SPANISH = "Poner la manteca en un bol y mezclar con el azúcar."
GERMAN = "Die Früchte waschen und mit dem Zucker in einem Topf kochen."


@pytest.mark.parametrize(
    ("language", "method", "foods"),
    [
        ("en_GB", FRENCH, ["plum", "grape", "lemon", "blackcurrant"]),
        ("de_DE", FRENCH, ["plum", "grape", "lemon", "blackcurrant"]),
        ("fr_FR", FRENCH, ["plum", "grape", "lemon", "blackcurrant"]),
        ("en_GB", ENGLISH, ["prunes", "raisins", "citron", "blackcurrant"]),
        ("fr_FR", ENGLISH, ["prunes", "raisins", "citron", "blackcurrant"]),
        # too few words tell no language: the book's goes
        ("en_GB", "Stir.", ["prunes", "raisins", "citron", "blackcurrant"]),
        ("fr_FR", "Mélanger.", ["plum", "grape", "lemon", "blackcurrant"]),
    ],
)
def test_a_food_is_what_the_recipe_s_language_calls_it(
    language: str, method: str, foods: list[str]
) -> None:
    lines = ("1 kg prunes", "500 g raisins", "2 citrons", "100 g cassis")
    assert foods_of(lines, language, method) == foods


@pytest.mark.parametrize(
    ("language", "method", "known"),
    [("en_GB", SPANISH, None), ("en_GB", ENGLISH, "manteca"), ("en_GB", GERMAN, "manteca")],
)
def test_a_name_of_two_foods_in_the_recipe_s_language_is_asked_about(
    language: str, method: str, known: str | None
) -> None:
    assert foods_of(("200 g manteca",), language, method) == [known]


def foods_of(lines: tuple[str, ...], language: str, method: str) -> list[str | None]:
    listed = "".join(f"  - {line}\n" for line in lines)
    text = f"---\ntitle: Thing\nkind: preserve\nmakes: 1 kg\ningredients:\n{listed}---\n\n"
    recipe = read_recipe(
        f"{text}## Method\n\n{method}\n", "a.md", "a", "metric", Larder(language=language), language
    )
    found = [food_of(one).food for one in recipe.ingredients]
    return [food.name if food else None for food in found]
