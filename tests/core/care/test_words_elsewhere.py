"""Words of a method in the book's own language that only look like a food, and where it keeps.

The sentences are of families' recipes in five languages, read beside what the larder calls alike;
the languages from memory.
"""

from __future__ import annotations

from hashlib import sha256

import pytest

from care_cases import recipe_of
from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.method.foods_in_method import foods_in_method
from stillroom.core.method.keeping_said import kept_at
from stillroom.core.reading.recipe_file import read_recipe
from stillroom.core.recipe.model import Recipe


def _recipe(language: str, method: str, item: str = "200 g sugar", title: str = "A try") -> Recipe:
    front = f"title: {title}\nkind: bake\nmakes: 20 biscuits\ningredients:\n  - {item}\n"
    text = f"---\n{front}---\n\n## Method\n\n1. {method}\n"
    name = f"a-try-{sha256(text.encode()).hexdigest()[:12]}"
    return read_recipe(text, f"{name}.md", name, "metric", Larder(language=language), language)


@pytest.mark.parametrize(
    ("language", "method", "foods"),
    [
        ("fr", "Laver les bocaux.", []),  # laver is a seaweed
        ("fr", "Verser la pâte dans un moule.", []),  # pâté; mussels
        ("fr", "Former des boules dans une terrine.", []),
        ("fr", "Ajouter du lait et du beurre.", ["milk", "butter"]),
        ("it", "Condire con un filo d'olio.", []),  # filo pastry
        ("it", "Togliere dal fuoco e versare nella coppa.", []),
        ("it", "Date una mescolata e unite il latte.", ["milk"]),
        ("es", "Dejar reposar la masa. Añadir la leche.", ["milk"]),
        ("nl", "Leg ze op een rooster en voeg melk toe.", ["milk"]),
        ("en_GB", "Stir in the rest when milk warm.", []),
        ("en_GB", "Let it stand till new-milk warm.", []),
        ("en_GB", "Warm the milk.", ["milk"]),
        ("en_GB", "Stir in blood warm milk.", ["milk"]),
        ("en_GB", "Toast the laver.", ["laver"]),
        # a French method in an English book; "wine, champagne or mead yeast" on a page about mead
        ("en_GB", "Laver les pots. Remplir, et fermer les pots de la confiture.", []),
        ("en_GB", "Add it; wine, champagne or mead yeast all work.", ["mead yeast"]),
        # what stands before a "without" goes in, and so does what is taken instead
        ("de", "Die Mandeln mit der Sahne ohne Klümpchen verrühren.", ["almonds", "cream"]),
        ("de", "Die Mandeln (ohne Schale) zu dem Mus geben.", ["almonds"]),
        ("de", "Statt der Butter das Mandelmus nehmen.", ["almond butter"]),
        ("de", "Ohne Butter und Milch mischen.", []),
        ("de", "Die Milch nicht verwenden.", []),
        ("es", "Añadir las almendras sin piel.", ["almonds"]),
        ("es", "Mezclar la masa sin leche.", []),
        ("fr", "Ajouter les amandes sans la peau.", ["almonds"]),
        ("it", "Unire le mandorle senza pelle.", ["almonds"]),
        ("nl", "Voeg de amandelen zonder vel toe.", ["almonds"]),
        ("nl", "Meng het deeg zonder melk.", []),
        ("en_GB", "Stir in the cream or malt vinegar.", ["cream", "malt vinegar"]),
        ("en_GB", "Rinse it with wine, cider or malt vinegar.", ["malt vinegar"]),
    ],
)
def test_a_word_that_only_looks_like_a_food_brings_none(
    language: str, method: str, foods: list[str]
) -> None:
    named = (food_of(one.ingredient).food for one in foods_in_method(_recipe(language, method)))
    found = [food.name for food in named if food]
    assert [food for food in found if food != "oil"] == foods


@pytest.mark.parametrize(
    ("title", "item", "method", "foods"),
    [
        # an oil of the list is the oil of the method, but never where it brings an allergen
        ("Tomaten", "400 ml olive oil", "Die Tomaten in das Glas geben und mit Öl bedecken.", []),
        (
            "Tomaten",
            "400 ml olive oil",
            "Das Glas mit Erdnussöl bedecken und lassen.",
            ["Erdnussöl"],
        ),
        ("Tomaten", "400 ml Erdnussöl", "Das Glas mit dem Erdnussöl bedecken.", []),
        # a title's food is no second one, but where it brings an allergen it is named
        (
            "Zwetschgen und Walnüsse",
            "1 kg plums",
            "Die Walnüsse mit dem Mus mischen.",
            ["Walnüsse"],
        ),
        ("Zwetschgen", "1 kg plums", "Die Zwetschgen mit dem Zucker mischen.", ["Zucker"]),
    ],
)
def test_what_brings_an_allergen_is_no_food_of_the_list_or_the_title(
    title: str, item: str, method: str, foods: list[str]
) -> None:
    recipe = _recipe("en_GB", method, item, title)
    assert [
        one.ingredient.item
        for one in foods_in_method(recipe)
        if "Tomaten" not in one.ingredient.item
    ] == foods


@pytest.mark.parametrize(
    ("last", "place"),
    [
        ("In Flaschen füllen und im Kühlschrank 4 Wochen aufbewahren.", "fridge"),
        ("Conserver au réfrigérateur.", "fridge"),
        ("Conservare in frigorifero per una settimana.", "fridge"),
        ("Guardar en la nevera.", "fridge"),
        ("Bewaar in de koelkast.", "fridge"),
        ("Conserver au congélateur.", "freezer"),
        # a night in it, what is opened, and what is denied, is the shelf
        ("Über Nacht im Kühlschrank ruhen lassen.", "room"),
        ("Nach dem Öffnen im Kühlschrank aufbewahren.", "room"),
        ("Nicht im Kühlschrank aufbewahren.", "room"),
        ("Laisser au réfrigérateur 2 heures.", "room"),
        ("Une fois ouvert, conserver au frigo.", "room"),
        ("Conservar en la nevera una vez abierto.", "room"),
        ("Na opening in de koelkast bewaren.", "room"),
        ("Kühl und dunkel lagern.", "room"),
    ],
)
def test_the_place_it_keeps_at_is_read_in_five_languages(last: str, place: str) -> None:
    written = {
        "title": "A try",
        "kind": "liqueur",
        "ingredients": ["300 ml cream", "200 g sugar"],
        "method": ["Mix.", last],
    }
    assert kept_at(recipe_of(written)) == place
