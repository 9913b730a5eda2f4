"""A word that no larder knows in a list of foods is asked about; a list of known foods is not.

The lists are those of herb salts, chutneys, pickles, terrines and trail mixes on public pages in
ten languages, read on 30 November 2026, fixed before the code; "frobnicate" stands in for each food
of them in turn.
"""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from stillroom.core.larder.food_reading import FoodReading
from stillroom.core.larder.shelves import common_larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of

LISTS = [
    ("en_GB", "raisins, currants, sultanas"),
    ("en_GB", "Rum, Brandy or Whisky"),
    ("en_GB", "almonds, cashews, and peanuts"),
    ("en_GB", "nuts (almonds, walnuts, pecans)"),
    ("en_GB", "seeds (pumpkin, sunflower, sesame)"),
    ("en_GB", "dried fruit (cranberries, apricots, cherries)"),
    ("en_GB", "cinnamon, ginger, and cloves"),
    ("en_GB", "vinegar, salt, mustard seeds and peppercorns"),
    ("en_GB", "salt, pepper, thyme and bay leaves"),
    ("en_US", "pistachios, cacao nibs, dried cherries, almonds, cashews, and sunflower seeds"),
    ("de_DE", "Rosmarin, Oregano, Lavendel oder Salbei"),
    ("de_DE", "Salbei, Pfefferminze, Kamille, Rosmarin oder Thymian"),
    ("de_DE", "Salz, Pfeffer, Majoran, Knoblauch"),
    ("de_DE", "Gewürze (Zimt, Nelken, Sternanis)"),
    ("de_DE", "Nougat, Tee und Marzipan"),
    ("fr_FR", "thym, poivre en grains, clous de girofle"),
    ("fr_FR", "thym, romarin, sel, poivre"),
    ("fr_FR", "fruits secs (raisins secs, amandes, noisettes)"),
    ("fr_FR", "sel, poivre, gingembre, muscade"),
    ("fr_FR", "vanille, cannelle, cardamome et poivre long"),
    ("it_IT", "salvia, menta, rosmarino, erba cipollina, basilico"),
    ("it_IT", "sale, pepe, noce moscata"),
    ("it_IT", "spezie (cannella, chiodi di garofano, anice stellato)"),
    ("es_ES", "sal, azúcar, aceite o vinagre"),
    ("es_ES", "sal, pimienta, orégano y comino"),
    ("es_ES", "frutos secos (almendras, nueces de pecán, avellanas)"),
    ("pt_PT", "sal, vinagre, alho, louro"),
    ("pt_PT", "canela, cravo-da-índia e noz-moscada"),
    ("nl_NL", "tamarinde, gember, mosterdzaad, knoflook, peper en ui"),
    ("nl_NL", "kaneelstokje, kruidnagels, steranijs of nootmuskaat"),
    ("nl_NL", "zout, peper, tijm"),
    ("sv_SE", "timjan, salvia, rosmarin och lagerblad"),
    ("sv_SE", "dill, persilja, mynta"),
    ("sv_SE", "kryddor (kanel, kardemumma, nejlikor)"),
    ("da_DK", "æble, løg, ingefær og salt"),
    ("da_DK", "salt, peber, timian"),
    ("nb_NO", "Basilikum, persille, dill og gressløk"),
    ("nb_NO", "salt, pepper, kanel"),
    ("pl_PL", "sól, pieprz, majeranek"),
    ("pl_PL", "cynamon, goździki i imbir"),
    ("fi_FI", "suola, sokeri, kaneli"),
    ("fi_FI", "timjami, rosmariini ja salvia"),
]
_JOINTS = r"(, and |, | or | and | oder | und | et | ou | e | o | y | en | of | och | og | i | ja )"


def read(line: str, language: str) -> FoodReading:
    ingredient = read_ingredient(line, "metric", language)
    return food_of(find_foods(ingredient, replace(common_larder(), language=language)))


def with_one_unknown(line: str) -> list[str]:
    inner = re.fullmatch(r"(.*\()(.*)(\))", line)
    before, listed, behind = inner.groups() if inner else ("", line, "")
    parts = re.split(_JOINTS, listed)
    return [
        before + "".join([*parts[:at], "frobnicate", *parts[at + 1 :]]) + behind
        for at in range(0, len(parts), 2)
    ]


@pytest.mark.parametrize(("language", "line"), LISTS)
def test_a_list_of_known_foods_is_not_asked_about(language: str, line: str) -> None:
    assert read(line, language).leftover == ()


@pytest.mark.parametrize(
    ("language", "line"),
    [(language, strange) for language, line in LISTS for strange in with_one_unknown(line)],
)
def test_an_unknown_food_in_a_list_is_asked_about(language: str, line: str) -> None:
    assert not read(line, language).known


@pytest.mark.parametrize(
    ("line", "allergens"),
    [
        ("raisins, frobnicates and walnuts", {"walnut"}),
        ("walnuts, frobnicates, mustard", {"walnut", "mustard"}),
        ("spices (celery seed, frobnicate and mustard)", {"celery", "mustard"}),
        ("nuts such as walnuts, frobnicates and pecans", {"nuts", "walnut", "pecan"}),
    ],
)
def test_the_allergens_of_the_others_are_still_told(line: str, allergens: set[str]) -> None:
    reading = read(line, "en_GB")
    assert not reading.known
    assert {name for food in reading.named for name in food.allergens} >= allergens


@pytest.mark.parametrize(
    ("language", "line", "known"),
    [
        ("en_GB", "salt, frobnicates", False),
        ("de_DE", "Salz, Frobnikat", False),
        ("en_GB", "200 g walnuts, frobnicates", False),
        ("de_DE", "200 g Walnüsse, Frobnikat", False),
        ("en_GB", "200 g walnuts, halves", True),
        ("en_GB", "6 jars, with lids", True),
        ("de_DE", "250 g Kichererbsen, getrocknete oder aus dem Glas", True),
        ("de_DE", "200 g dunkle Schokolade (80% Kakaoanteil)", True),
        ("de_DE", "Salz, Pfeffer, Paprika", False),  # the vegetable, or the spice
        ("sv_SE", "600 g fryst torsk, krumelur eller alaska pollock (tinad)", False),
        ("en_US", "Optional: candied fruit, nuts, currents etc.", False),
        # what is said of a food, and no food
        ("en_GB", "butter, softened, chopped", True),
        ("en_GB", "apples (Bramley), peeled, deribbed", True),
        ("en_US", "1/2 vanilla bean, split (or 1/2 tsp vanilla extract, added later)", True),
        ("en_US", "3/4 cup caster sugar (granulated/regular ok too, Note 4)", True),
        ("en_GB", "1.5 kg apples (I used 750 g cookers, 500 g cox, 250 g windfalls)", True),
        ("en_GB", "borax (no detergent!) or table salt", True),
        ("de_DE", "Butter, Zimmertemperatur", True),
        ("de_DE", "Puderzucker, Deko", True),
        ("nl_NL", "SCHIL VAN 1 CITROEN, in reepjes", True),
        ("sv_SE", "färsk dill och gräslök, fint hackad (1–2 tsk av varje)", True),
        ("sv_SE", "salladslök, trimmad och tunt skivad (1 knippe, uppdelat)", True),
    ],
)
def test_a_list_is_told_from_what_is_said_of_a_food(language: str, line: str, known: bool) -> None:
    assert read(line, language).known is known
