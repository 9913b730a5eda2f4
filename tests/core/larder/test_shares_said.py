"""How fat, sour or dark a food is, as packets and recipes of ten languages say it.

The lines say what recipe pages and packets do, from memory. Tried on 30 November 2026, "Sahne (30 %
Fett)", "aceto al 6% di acidità", "alcool al 95%" and "1 l mjölk 3%" were foods that nobody knew, or
were asked about.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from stillroom.core.larder.shelves import common_larder
from stillroom.core.lines.ingredient import Ingredient, read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of
from stillroom.core.words.problems import Unreadable


def read(line: str, language: str) -> Ingredient:
    larder = replace(common_larder(), language=language)
    return find_foods(read_ingredient(line, "metric", language), larder)


@pytest.mark.parametrize(
    ("language", "line", "food"),
    [
        ("de", "200 ml Sahne (30 % Fett)", "cream"),
        ("de", "Sahne 30%", "cream"),
        ("de", "30%ige Sahne", "cream"),
        ("de", "Milch 1,5 % Fett, lauwarm", "milk"),
        ("de", "200 g Quark 20%", "quark"),
        ("de", "100 g Käse (45 % Fett i. Tr.)", "cheese"),
        ("de", "Essig (5% Säure)", "vinegar"),
        ("de", "Essig mit 5% Säure", "vinegar"),
        ("de", "Essig 5%", "vinegar"),
        ("de", "1 l 5-prozentiger Essig", "vinegar"),
        ("de", "500 ml Weißweinessig (6 % Säure)", "white wine vinegar"),
        ("de", "Schokolade (70% Kakao)", "chocolate"),
        ("de", "100 g Kuvertüre, mind. 60 % Kakaoanteil", "chocolate"),
        ("fr", "20 cl de crème liquide (30 % de MG)", "cream"),
        ("fr", "200 g de chocolat noir à 70 % de cacao", "dark chocolate"),
        ("fr", "1 l de vinaigre d'alcool (8% d'acidité)", "white vinegar"),
        ("it", "1 l aceto di vino al 6% di acidità", "wine vinegar"),
        ("it", "panna al 35%", "cream"),
        ("it", "100 g di cioccolato fondente al 70%", "dark chocolate"),
        ("es", "1 l de vinagre de vino (6% de acidez)", "wine vinegar"),
        ("es", "nata con 35% de grasa", "cream"),
        ("es", "chocolate con 70% de cacao", "chocolate"),
        ("nl", "250 ml slagroom (35% vet)", "whipping cream"),
        ("nl", "azijn van 5%", "vinegar"),
        ("nl", "chocolade met 70% cacao", "chocolate"),
        ("sv", "3 dl grädde (36 % fetthalt)", "cream"),
        ("sv", "2 dl vispgrädde 40%", "double cream"),
        ("sv", "1 l mjölk 3%", "milk"),
        ("sv", "choklad med 70% kakao", "chocolate"),
        ("da", "1 l eddike 5%", "vinegar"),
        ("da", "100 g mørk chokolade (70% kakao)", "dark chocolate"),
        ("pt", "1 l de vinagre (4% de acidez)", "vinegar"),
        ("pt", "chocolate com 70% de cacau", "chocolate"),
        ("pl", "200 ml śmietanki 36 % tł.", "cream"),
        ("pl", "1 l octu 10%", "vinegar"),
        ("pl", "100 g czekolady (70% kakao)", "chocolate"),
        ("en", "2 cups vinegar (at least 5% acetic acid)", "vinegar"),
        ("en", "dark chocolate with 70% cocoa", "dark chocolate"),
        ("en", "80% lean ground beef", "ground beef"),
    ],
)
def test_a_share_of_fat_acid_or_cocoa_leaves_a_food_the_same(
    language: str, line: str, food: str
) -> None:
    one = read(line, language)
    reading = food_of(one)
    assert ([found.name for found in reading.foods], reading.known) == ([food], True)
    assert one.strength is None


@pytest.mark.parametrize(
    ("language", "line", "percent"),
    [
        ("it", "500 ml alcool al 95%", 95),
        ("it", "1 l alcool al 95°", 95),
        ("es", "1 l alcohol con 96°", 96),
        ("fr", "1 l vodka avec 40°", 40),
        ("nl", "1 l brandewijn met 35°", 35),
        ("es", "1 l alcohol de 96%", 96),
        ("de", "1 l Wodka mit 40%", 40),
        ("de", "1 l Korn mit mind. 38 %", 38),
        ("de", "500 ml 40-prozentiger Rum", 40),
        ("nl", "1 l brandewijn met 35%", 35),
        ("sv", "7 dl vodka på 40%", 40),
        ("pt", "500 ml de álcool a 90%", 90),
        ("pl", "500 ml wódki o mocy 40%", 40),
        ("fr", "vodka à au moins 40%", 40),
        ("en", "750 ml vodka of at least 40%", 40),
    ],
)
def test_a_share_of_a_spirit_is_its_strength(language: str, line: str, percent: int) -> None:
    one = read(line, language)
    assert one.strength == percent
    assert food_of(one).known


@pytest.mark.parametrize(
    ("line", "named"),
    [
        ("50% cocoa nibs", None),
        ("milk chocolate (min 30% cocoa solids, hazelnuts)", "hazelnuts"),
        ("Zucker 10%", None),
        ("rum chocolate 30% hazelnuts", "hazelnuts"),
    ],
)
def test_what_else_bears_a_share_is_not_passed_over(line: str, named: str | None) -> None:
    reading = food_of(read(line, "en"))
    assert not reading.known
    assert named is None or named in [food.name for food in reading.named]


def test_a_share_of_the_whole_is_asked_about() -> None:
    with pytest.raises(Unreadable, match="is a share"):
        read("10% Zucker", "de")
