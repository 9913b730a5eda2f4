"""A method in a language that is not read is not told as its neighbour's: Polish is no Swedish.

The sentences of the first table are of public Polish, Danish, Norwegian and Portuguese kitchens.
"""

from __future__ import annotations

import pytest

from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.method.tongue import is_english, tongue_of
from stillroom.core.reading.recipe_file import read_recipe


@pytest.mark.parametrize(
    ("text", "language"),
    [
        ("Miód i masło włożyć, podgrzewać, aż się rozpuści i ostudzić.", ""),
        ("Włożyć do garnka i gotować na małym ogniu. Przełożyć do słoików i zakręcić.", ""),
        ("De tages op og lægges en time. De koges i en gryde.", ""),
        ("Sæt en gryde over og steg dine svampe ved lav varme i 10 minutter.", ""),
        ("Ha i sukker, la det koke litt og rør.", ""),
        ("Coloque numa tigela a farinha de milho fina e o cacau em pó.", ""),
        ("Adicione o suco de gengibre e misture.", ""),
        ("Sekoita ja lisää maito.", ""),
        ("Lägg i burkar och häll på lag.", "sv"),
        ("Koka upp och låt svalna i kylen.", "sv"),
        ("Giet de melk in een pan en laat het koken.", "nl"),
        ("bak de pijnboompitten op hoog vuur", "nl"),
        ("Garnir de romarin et envelopper de lard.", "fr"),
        ("Añadir la leche y dejar reposar.", "es"),
        ("Scaldare il latte e unire lo zucchero.", "it"),
        ("Milch und Zucker und Mehl mischen.", "de"),
        ("Mix it with a spoon of honey, on a low heat.", ""),
    ],
)
def test_only_a_language_that_is_read_is_told(text: str, language: str) -> None:
    assert tongue_of(text) == language


def test_english_stays_english() -> None:
    assert is_english("Mix the sugar with a spoon of honey, on a low heat as it melts.")
    assert not is_english("Cozinhe a macaxeira com a água, depois esmague a macaxeira.")


@pytest.mark.parametrize(
    ("language", "line", "method", "food"),
    [
        ("pl", "100 g cukru", "Miód i masło włożyć, aż się rozpuści i ostudzić.", "sugar"),
        ("da", "2 dl eddike", "De tages op og lægges en time. De koges i en gryde.", "vinegar"),
        ("pt", "100 g de manteiga", "Adicione a manteiga de leite e misture o suco.", "butter"),
        ("sv", "2 dl socker", "Lägg i burkar och häll på lag.", "sugar"),
    ],
)
def test_a_list_is_read_in_the_language_of_its_book(
    language: str, line: str, method: str, food: str
) -> None:
    front = f"title: A try\nkind: bake\nmakes: 20 biscuits\ningredients:\n  - {line}\n"
    text = f"---\n{front}---\n\n## Method\n\n1. {method}\n"
    recipe = read_recipe(text, "a-try.md", "a-try", "metric", Larder(language=language), language)
    found = food_of(recipe.ingredients[0]).food
    assert found is not None
    assert food in found.name
