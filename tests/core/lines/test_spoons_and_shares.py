"""Spoons called after drinks, one bare spoon, sizes before a food, and ratios, in many languages.

Lines in the forms of public recipes (30 November 2026): redgol.cl ("café instantáneo"),
adrianosferreira/afrodite.json (Portuguese), mikkelrask/Opskrifter (Danish), dziennikwschodni.pl
(Polish); the others are the same in their own languages. Expectations written before the code.
"""

from __future__ import annotations

import pytest

from stillroom.core.amounts.quantities import Amount
from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of, not_known_of
from stillroom.core.words.problems import Unreadable

# line: language, number, unit or noun, item, the foods
LINES = [
    ("3 cucharaditas de café instantáneo", "es_ES", "3", "tsp", ["instant coffee"]),
    ("2 cucharaditas de té verde", "es_ES", "2", "tsp", ["green tea"]),
    ("1 cucharadita de café de canela", "es_ES", "1", "tsp", ["canela"]),
    ("2 colheres de café solúvel", "pt_BR", "2", "colher", ["instant coffee"]),
    ("1 xícara de chá preto", "pt_BR", "1", "xícara", ["tea"]),
    ("1 colher de chá de mel", "pt_BR", "1", "tsp", ["honey"]),
    ("1 colher (sopa cheia) de cream cheese", "pt_BR", "1", "tbsp", ["soft cheese"]),
    ("1 colher (café ) de sal", "pt_BR", "1", "colher de café", ["salt"]),
    ("1 colher ( sopa )essência de baunilha", "pt_BR", "1", "tbsp", ["vanilla essence"]),
    ("500 gramas de açúcar", "pt_BR", "500", "g", ["granulated sugar"]),
    ("Um quilo de manga", "pt_BR", "1", "kg", ["mango"]),
    ("Meio quilo de açúcar", "pt_PT", "1/2", "kg", ["granulated sugar"]),
    ("łyżeczka sody oczyszczonej", "pl_PL", "1", "tsp", ["bicarbonate of soda"]),
    ("2 płaskie łyżeczki proszku do pieczenia", "pl_PL", "2", "tsp", ["baking powder"]),
    ("sok z 2 cytryn", "pl_PL", "2", "", ["lemon juice"]),
    ("skórka otarta z 1 cytryny", "pl_PL", "1", "", ["lemon peel"]),
    ("500 ml przegotowanej, ostudzonej wody", "pl_PL", "500", "ml", ["water"]),
    ("Teelöffel Salz", "de_DE", "1", "tsp", ["salt"]),
    ("tesked salt", "sv_SE", "1", "tsp", ["salt"]),
    ("tablespoon honey", "en_GB", "1", "tbsp", ["honey"]),
    ("2 strøkne ts bakepulver", "nb_NO", "2", "tsp", ["baking powder"]),
    ("2 store, modne bananer", "da_DK", "2", "", ["banana"]),
    ("2 belles, grosses pommes", "fr_FR", "2", "", ["apple"]),
    ("500 g rabarber i bitar", "sv_SE", "500", "g", ["rhubarb"]),
    ("1 lök i ringar", "sv_SE", "1", "", ["onion"]),
    ("1 glas water", "nl_NL", "1", "glas", ["water"]),
    ("1 garrafa de rum (70 cl)", "pt_PT", "70", "cl", ["rum"]),
    ("1 butelka rumu (0,7 l)", "pl_PL", "7/10", "l", ["rum"]),
    ("3 a 4 cravinhos", "pt_PT", "3", "", ["cloves"]),
    ("a casca de 1 laranja", "pt_PT", "1", "", ["orange peel"]),
    ("et stykke ingefær", "da_DK", "1", "stykke", ["ginger"]),
    ("1 molho de tomilho", "pt_PT", "1", "molho", ["thyme"]),
]


@pytest.mark.parametrize(("line", "language", "number", "unit", "foods"), LINES)
def test_a_line_of_another_kitchen(
    line: str, language: str, number: str, unit: str, foods: list[str]
) -> None:
    read = find_foods(read_ingredient(line, "metric", language), Larder(language=language[:2]))
    amount = read.amount
    assert isinstance(amount, Amount)
    assert (str(amount.low), amount.unit or amount.noun) == (number, unit)
    assert [one.name for one in food_of(read).foods] == foods
    assert not not_known_of(read)


def test_what_only_says_its_size_is_not_the_item() -> None:
    assert read_ingredient("2 grandi, mature banane", "metric", "it_IT").item != "grandi"


@pytest.mark.parametrize(
    "line", ["Esslöffel und Teelöffel", "łyżki miodu", "2 cucharadas de café de"]
)
def test_spoons_themselves_and_spoons_without_their_number_are_no_one_spoon(line: str) -> None:
    language = "pl_PL" if "ł" in line else "de_DE" if "ö" in line else "es_ES"
    read = read_ingredient(line, "metric", language)
    assert not isinstance(read.amount, Amount) or read.amount.low != 1


@pytest.mark.parametrize(
    ("line", "language"),
    [
        ("1 part honey to 2 parts water", "en_GB"),
        ("1 part de miel pour 2 parts d'eau", "fr_FR"),
        ("1 parte de mel para 2 partes de água", "pt_PT"),
        ("1 część miodu na 2 części wody", "pl_PL"),
        ("1 del honning til 2 deler vann", "nb_NO"),
        ("1 Teil Honig, 2 Teile Wasser", "de_DE"),
    ],
)
def test_parts_of_two_foods_are_a_ratio(line: str, language: str) -> None:
    with pytest.raises(Unreadable, match="ratio"):
        read_ingredient(line, "metric", language)


@pytest.mark.parametrize("line", ["2 parts gin", "1 part honey, warmed", "3 Teile Mehl"])
def test_parts_of_one_food_are_none(line: str) -> None:
    assert read_ingredient(line, "metric", "en_GB").item


@pytest.mark.parametrize(
    ("line", "language", "foods"),
    [
        (
            "Jengibre molido, canela y clavo de olor.",
            "es_ES",
            ["ground ginger", "canela", "cloves"],
        ),
        ("amandes hachées, noix et noisettes", "fr_FR", ["almonds", "walnuts", "hazelnuts"]),
        ("Zimt gemahlen, Nelken und Muskat", "de_DE", ["ground cinnamon", "cloves", "nutmeg"]),
        ("100 g Nüsse (z. B. Walnüsse, Haselnüsse)", "de_DE", ["nut", "walnuts", "hazelnuts"]),
        ("1 dl olja (t.ex. jordnötsolja)", "sv_SE", ["vegetable oil", "peanut oil"]),
    ],
)
def test_a_list_behind_what_is_done_loses_no_food(
    line: str, language: str, foods: list[str]
) -> None:
    read = find_foods(read_ingredient(line, "metric", language), Larder(language=language[:2]))
    assert [one.name for one in food_of(read).foods] == foods


@pytest.mark.parametrize(
    ("line", "language"),
    [
        ("4 oranges pour 125 gr d'alcool", "fr_FR"),
        ("125 gr d'alcool pour 1 litre de vin", "fr_FR"),
        ("12 g pectine pour 1 kg de fruits", "fr_FR"),
        ("7 dl socker/l avrunnen saft", "sv_SE"),
        ("800 g Zucker auf 1 Liter Saft", "de_DE"),
        ("800 g Zucker je Liter Saft", "de_DE"),
        ("1 kg di zucchero per ogni litro di succo", "it_IT"),
        ("500 g suiker per liter sap", "nl_NL"),
        ("1 kg azúcar por cada litro de zumo", "es_ES"),
        ("800 g sukker pr. liter saft", "da_DK"),
        ("800 g sukker per liter saft", "nb_NO"),
        ("1 kg cukru na 1 litr soku", "pl_PL"),
        ("1 kg de açúcar por litro de sumo", "pt_PT"),
        ("500 g sugar for 1 litre of juice", "en_GB"),
        ("3/4 lb sugar per lb fruit", "en_GB"),
    ],
)
def test_so_much_to_another_thing_is_asked(line: str, language: str) -> None:
    """After "Vin d'orange" and "Lingongelé" as home cooks write them down; the rest likewise."""
    with pytest.raises(Unreadable, match="so much to another thing"):
        read_ingredient(line, "metric", language)


@pytest.mark.parametrize(
    ("line", "language"),
    [
        ("200 ml water for the syrup", "en_GB"),
        ("1 l milk for yoghurt", "en_GB"),
        ("1/2 kg flour/semolina", "en_GB"),
        ("1 litre/1¾ pints vegetable stock", "en_GB"),
        ("1 stick/113 g butter", "en_US"),
        ("1 cup/250 ml water", "en_US"),
        ("1 packet of pectin for 1 kg of fruit", "en_GB"),  # says how much the packet is for
        ("1 Päckchen Vanillepuddingpulver für 500 ml Milch", "de_DE"),
        ("2 l Wasser für den Sud", "de_DE"),
        ("1 l de vin pour 6 personnes", "fr_FR"),
        ("100 g de beurre pour le moule", "fr_FR"),
        ("500 g di farina per dolci", "it_IT"),
        ("200 g socker till lagen", "sv_SE"),
    ],
)
def test_what_a_thing_is_for_is_no_ratio(line: str, language: str) -> None:
    assert isinstance(read_ingredient(line, "metric", language).amount, Amount)
