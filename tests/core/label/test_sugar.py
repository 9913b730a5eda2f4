"""Sugar in one of what is made, against sums by hand with USDA's figures; and where nobody knows.

Figures in 100 g of ABBREV.txt, USDA SR: granulated sugar 99.8 (19335), turbinado 99.19 (19908),
condensed milk 54.4 (01095), whole milk 5.05 (01077), flour 0.27 (20081), strawberries 4.89 (09316),
honey 82.12 (19296), dark chocolate 23.99 to 54.5 (19904, 19080), desiccated coconut 7.35 (12108).
"""

from __future__ import annotations

from typing import Any

import pytest

from care_cases import recipe_of
from stillroom.core.label.sugar import sugar_in_one


def _text(makes: str, lines: list[str], kind: str = "bake", step: str = "Mix and bake.") -> str:
    written: dict[str, Any] = {"title": "X", "kind": kind, "makes": makes, "ingredients": lines}
    found = sugar_in_one(recipe_of({**written, "method": [step]}))
    if found is None:
        return ""
    return found.text + ("" if found.is_serving else ", of all of it")


@pytest.mark.parametrize(
    ("makes", "lines", "kind", "text"),
    [
        # dailymail.co.uk, Festive fudge: 216 + 7.8 + 446.4 + 0.1 = 670 g in 36
        (
            "36 squares",
            ["397g can sweetened condensed milk", "150ml milk", "450g demerara sugar"],
            "confection",
            "about 19 g in one square",
        ),
        # 59.9 + 0.7 + 0.1 g in 20
        (
            "20 biscuits",
            ["250 g plain flour", "125 g butter", "60 g granulated sugar"],
            "bake",
            "about 3 g in one biscuit",
        ),
        # 998 + 48.9 g in 1,200 ml, a spoon is an eightieth
        (
            "6 jars of 200 ml",
            ["1 kg strawberries", "1 kg granulated sugar"],
            "preserve",
            "about 13 g in a tablespoon (15 ml)",
        ),
        # what is dissolved is not strained out again: 199.6 g in 800 ml
        (
            "800 ml",
            ["700 ml vodka, 40% vol", "200 g granulated sugar"],
            "infusion",
            "about 4 g in a tablespoon (15 ml)",
        ),
        ("8 servings", ["400 g granulated sugar"], "dry mix", "about 50 g in one serving"),
        # either of two: 82 g or 100 g in 10
        (
            "10 pieces",
            ["100 g granulated sugar or honey", "1 tsp salt"],
            "confection",
            "8 to 10 g in one piece",
        ),
        # what is sold under one name differs: 24 to 55 g in 10
        ("10 truffles", ["100 g dark chocolate"], "confection", ""),
        (
            "10 truffles",
            ["100 g dark chocolate", "50 g granulated sugar"],
            "confection",
            "7 to 10 g in one truffle",
        ),
        (
            "10 mints",
            ["100 g xylitol", "1 drop peppermint oil"],
            "confection",
            "less than half a gram in one mint",
        ),
        # coconut that is not sweetened: 22 g, not 110
        ("10 balls", ["300 g desiccated coconut"], "confection", "about 2 g in one ball"),
        # a whole cake or a weight is no serving, and it is said
        ("1 cake", ["200 g granulated sugar"], "bake", "about 200 g in one cake, of all of it"),
        ("500 g", ["250 g granulated sugar"], "bake", "about 50 g in 100 g of it, of all of it"),
        # spices and salt to taste bring next to none
        (
            "10 biscuits",
            ["50 g granulated sugar", "salt, to taste", "ground cinnamon, to taste"],
            "bake",
            "about 5 g in one biscuit",
        ),
    ],
)
def test_sugar_in_one_is_what_the_published_figures_come_to(makes, lines, kind, text):
    assert _text(makes, lines, kind) == text


@pytest.mark.parametrize(
    ("makes", "lines", "kind", "step"),
    [
        ("4 jars", ["500 g granulated sugar"], "preserve", "Boil."),  # how much is a jar?
        ("10 biscuits", ["100 g flour", "sugar, to taste"], "bake", "Bake."),
        ("10 biscuits", ["100 g zorple", "10 g sugar"], "bake", "Bake."),
        ("10 biscuits", ["1 bag sweets", "10 g sugar"], "bake", "Bake."),
        # what only the method names has no amount
        ("10 truffles", ["100 g butter"], "confection", "Roll in icing sugar."),
        # what ferments eats its sugar
        ("4 l", ["1.5 kg honey", "4 l water", "5 g wine yeast"], "ferment", "Ferment."),
        ("10 wraps", ["100 g beeswax"], "craft", "Melt."),
        ("800 ml", ["500 g plums", "700 ml vodka"], "infusion", "Steep and strain."),
    ],
)
def test_where_one_thing_is_not_known_nothing_is_said(makes, lines, kind, step):
    if kind == "infusion":  # 50 g of the plums' sugar may be in it, and may be strained out
        assert _text(makes, lines, kind, step) in ("", "0 to 1 g in a tablespoon (15 ml)")
        return
    assert _text(makes, lines, kind, step) == ""


def test_a_span_is_said_to_be_one():
    lines = ["100 g granulated sugar or honey"]
    written = {"title": "X", "kind": "confection", "ingredients": lines, "method": ["Boil."]}
    assert sugar_in_one(recipe_of(written | {"makes": "10 pieces"})).is_span
    plain = written | {"makes": "10 pieces", "ingredients": ["100 g granulated sugar"]}
    assert not sugar_in_one(recipe_of(plain)).is_span


def test_figures_of_its_own_are_usdas_numbers():
    from stillroom.core.words.data_files import read_data

    for name, row in read_data("sugar_of_foods.yml", "label").items():
        assert all(len(one.strip()) == 5 for one in row["usda"].split(",")), name
