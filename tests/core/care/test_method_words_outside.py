"""Methods of outside kitchens: words of the making that only look like a food, and foods.

The sentences follow what some 13,000 lines of public French, German, Spanish, Italian, Dutch,
Danish, Norwegian and Portuguese methods were found to say; each with what goes in.
"""

from __future__ import annotations

from hashlib import sha256

import pytest

from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.method.foods_in_method import foods_in_method
from stillroom.core.reading.recipe_file import read_recipe

_SENTENCES = """
fr | La pâte doit être souple mais pas molle. |
fr | Ajouter le maïs et le lait. | corn; milk
fr | Plier la pâte en 4, une fois pliée la laisser reposer. |
fr | Ajouter les carottes de sable. | carrot
fr | Mettre à cuire 20 à 25 minutes l'eau bouillante et les pommes de terre. | potato
fr | Tapisser un moule à cake de 900 g de contenance. |
fr | Verser 900 g de farine. | flour
fr | Presser 2 oranges. | orange
de | 20 Minuten Milch kochen. | milk
de | 2 Orangen auspressen. | orange
fr | Former une galette, à température basse. |
fr | Ajouter le thé vert. | green tea
fr | Ajouter les feuilles de menthe. | mint
fr | Faire fondre la feuille de chocolat. | chocolate
fr | Façonner les boules en forme de poire. |
fr | Ajouter la poire et la crème. | pear; cream
fr | Remuer avec la noisette de beurre fondant. | butter
de | Bei Ober und Unterhitze backen. |
de | In Form einer Birne kneten. |
de | Mit dem Obers bestreichen. | cream
es | Hornear hasta que esté dorada. |
es | Cuando hay espuma, te lo dice el secreto. |
es | Añadir la leche y los huevos. | milk; egg
nl | Zet op laag vuur en smelt de boter, elk kwartier. | butter
nl | Voeg de melk en de mosterd toe. | milk; mustard
da | Tilsæt mælk og smør. | milk; butter
da | Smelt smørret og hæld det over. | butter
da | Lad det hvile let tildækket og lav en fed saucer. |
da | Pisk æggene, fløden og valnødderne. | egg; cream; walnut
da | Lad dejen hvile under panden i ovnen. |
nb | Visp eggene, fløten og mandlene. | egg; cream; almond
nb | La deigen hvile i bollen. |
da | Bland hasselnødder og mel. | hazelnut; flour
nb | Rør inn melk og smør. | milk; butter
nb | Ha det i et fat. |
nb | Bland inn hasselnøtter. | hazelnut
pt | Adicione o leite e a manteiga. | milk; butter
pt | Mexa na panela com a colher de madeira. |
pt | Junte as nozes picadas. | walnut
pt | Deite na manga de pasteleiro. |
pt | Junte as passas. | raisin
pl | Dodaj masło i mleko. | butter; milk
pl | Dodaj orzechy i siekane migdały. | nut; almond
da | Tilsæt hvede, byg og fisk, og hak nødderne. | wheat; barley; fish; nut
da | Bland sukkermængden og de hjemmeristede løg til pocheringen. | onion
da | Kog uden fisk. |
nb | Strø over sild eller reker. | herring; prawn
pt | Coloque o pão e as castanhas. | bread; nut
pt | No futuro, misture bem. |
fi | Lisää maito, kananmunat ja hasselpähkinät. | milk; egg; hazelnut
fi | Sekoita ilman maitoa. |
cs | Přidej mléko a vejce. | milk; egg
ro | Adaugă lapte și nuci. | milk; walnut
tr | Süt ve fındık ekleyin. | milk; hazelnut
hu | Adj hozzá tejet és mogyorót. | milk; hazelnut
en_GB | Tilsæt hasselnødder og hvede, rør godt. | hazelnut; flour
en_GB | Lisää hasselpähkinät ja maito. | hazelnut; milk
en_GB | Stir until the characteristic smell of the gathering comes. |
en_GB | Boil. A characteristic smell. |
"""


def _rows() -> list[object]:
    rows = [[part.strip() for part in line.split("|")] for line in _SENTENCES.strip().splitlines()]
    return [
        pytest.param(language, method, [one for one in foods.split("; ") if one], id=method)
        for language, method, foods in rows
    ]


@pytest.mark.parametrize(("language", "method", "expected"), _rows())
def test_only_the_foods_of_the_sentence_are_found(
    language: str, method: str, expected: list[str]
) -> None:
    found = _found(language, method, "200 g sugar")
    missing = [food for food in expected if not any(food in one for one in found)]
    more = [one for one in found if not any(food in one for food in expected)]
    assert (missing, more) == ([], [])


@pytest.mark.parametrize(
    ("language", "method", "item", "expected"),
    [
        ("en_GB", "Beat the 3 egg yolks well.", "3 eggs", []),
        ("fr", "Battre les 3 jaunes d'oeufs.", "3 oeufs", []),
        ("de", "Die 3 Eigelb schlagen.", "3 Eier", []),
        ("en_GB", "Beat the 3 egg yolks well.", "200 g sugar", ["egg yolk"]),
        ("en_GB", "Add 1 egg yolk.", "200 g butter", ["egg yolk"]),
    ],
)
def test_parts_of_the_eggs_of_the_list_are_no_more_eggs(
    language: str, method: str, item: str, expected: list[str]
) -> None:
    assert _found(language, method, item) == expected


def _found(language: str, method: str, item: str) -> list[str]:
    front = f"title: A try\nkind: bake\nmakes: 20 biscuits\ningredients:\n  - {item}\n"
    text = f"---\n{front}---\n\n## Method\n\n1. {method}\n"
    name = f"a-try-{sha256(text.encode()).hexdigest()[:12]}"
    recipe = read_recipe(text, f"{name}.md", name, "metric", Larder(language=language), language)
    readings = [food_of(one.ingredient) for one in foods_in_method(recipe)]
    return [reading.food.name for reading in readings if reading.food]
