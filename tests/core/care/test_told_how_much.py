"""What stands behind an amount in a method and is no food: how much is left, what is done with it.

A food that nobody knows takes away a refusal's answer, so it must be none but a food. Forms as
jelly and cordial papers have them in seven languages (common forms, from memory); what must go on
being unknown stands beside them.
"""

import pytest
import yaml

from stillroom.core.method.foods_in_method import foods_in_method
from stillroom.core.reading.loading import read_recipe

_LISTS = {
    "de_DE": ["1 kg Himbeeren", "500 g Zucker"],
    "fr_FR": ["1 kg de cassis", "500 g de sucre"],
    "es_ES": ["1 kg de frambuesas", "500 g de azúcar"],
    "it_IT": ["1 kg di lamponi", "500 g di zucchero"],
    "nl_NL": ["1 kg frambozen", "500 g suiker"],
    "sv_SE": ["1 kg hallon", "500 g socker"],
    "en_GB": ["1 kg raspberries", "500 g sugar"],
    "en_CA": ["500 g sugar", "2 cups vinegar"],
    "en_US": ["2 lb beets", "2 cups vinegar"],
}


def brought_in(language: str, method: str) -> list[str]:
    front = {"title": "Thing", "kind": "preserve", "makes": "1 l", "ingredients": _LISTS[language]}
    text = (
        f"---\n{yaml.safe_dump(front, allow_unicode=True)}---\n\nX.\n\n## Method\n\n1. {method}\n"
    )
    recipe = read_recipe(text, "recipes/t.md", "t", language=language)
    return [one.ingredient.item for one in foods_in_method(recipe)]


@pytest.mark.parametrize(
    ("language", "method"),
    [
        ("de_DE", "Mit Wasser auf 500 ml auffüllen."),
        ("de_DE", "Kochen, es sollten 0,8 l Saft zusammenkommen."),
        ("de_DE", "Es ergibt etwa 500 ml Flüssigkeit."),
        ("de_DE", "Bis auf 300 ml reduzieren."),
        ("de_DE", "Es müssen 1,5 l übrig bleiben."),
        ("fr_FR", "Ajouter de l'eau jusqu'à obtenir 1 l environ."),
        ("fr_FR", "Il doit rester 500 ml environ."),
        ("fr_FR", "Mesurer 500 ml de liquide."),
        ("es_ES", "Completar hasta 1 l añadiendo agua."),
        ("es_ES", "Reducir a 300 ml más o menos."),
        ("es_ES", "Deben quedar 800 ml de zumo."),
        ("it_IT", "Aggiungere acqua fino a ottenere 500 ml circa."),
        ("it_IT", "Portare a 1 l aggiungendo acqua."),
        ("it_IT", "Si devono ottenere 800 ml di succo."),
        ("nl_NL", "Met water tot 500 ml aanvullen."),
        ("nl_NL", "Er moet 800 ml sap overblijven."),
        ("sv_SE", "Koka ihop till 3 dl ungefär."),
        ("sv_SE", "Det ska bli 8 dl saft."),
        ("en_GB", "Top up to 1 litre using water."),
        ("en_GB", "Boil until 500 ml remain."),
        ("en_GB", "There should be 500 ml left, then pot."),
        ("en_GB", "You should have 800 ml juice."),
        ("en_GB", "Add enough water to make 1 litre total."),
        ("en_US", "Cut 2 lb sm. beets in half."),
    ],
)
def test_no_food_is_told(language: str, method: str) -> None:
    assert brought_in(language, method) == []


@pytest.mark.parametrize(
    ("language", "method", "item"),
    [
        ("de_DE", "500 ml Frobelsaft zugeben.", "Frobelsaft zugeben"),
        ("en_GB", "Add 500 ml frooble.", "frooble"),
        ("en_GB", "Add 500 ml remaining frooble juice.", "remaining frooble"),
        ("en_CA", "Add 2 cups juice.", "juice"),  # of which fruit, where none is listed
        ("fr_FR", "Ajouter 500 ml de froublin.", "froublin"),
        ("en_GB", "Top up to 1 litre using brandy.", "brandy"),
        ("de_DE", "Mit 200 ml Rum auffüllen.", "Rum"),
    ],
)
def test_what_may_be_a_food_is_still_asked_about(language: str, method: str, item: str) -> None:
    assert brought_in(language, method) == [item]
