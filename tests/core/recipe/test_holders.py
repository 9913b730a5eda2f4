"""What is made, made in and given in, with its size as the book's language writes numbers."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import System
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.holders import read_container, read_makes, read_vessel
from stillroom.core.size.scaling import Measures, scale_recipe
from stillroom.core.size.targets import ByFactor
from stillroom.core.words.problems import ProblemsFound, Unreadable


def show(amount: Any) -> str:
    if not isinstance(amount, Amount):
        return ""
    ends = [str(amount.low)] if amount.low == amount.high else [str(amount.low), str(amount.high)]
    return f"{'-'.join(ends)} {amount.unit or amount.noun}".strip()


# text, language, name, size, closure
CONTAINERS = [
    ("bottle, 100 ml, cork", "en_GB", "bottle", "100 ml", "cork"),
    ("100 ml bottle", "en_GB", "bottle", "100 ml", ""),
    ("bottle,750ml", "en_GB", "bottle", "750 ml", ""),
    ("jar (200 ml)", "en_GB", "jar", "200 ml", ""),
    ("jar of 200 ml", "en_GB", "jar", "200 ml", ""),
    ("half-pint jar", "en_GB", "jar", "1/2 imp_pint", ""),
    ("wide mouth quart jar", "en_GB", "wide mouth jar", "1 imp_quart", ""),
    ("clean gallon jar", "en_GB", "clean jar", "1 imp_gallon", ""),
    ("1-quart (40 fl oz) wide-mouth glass jar", "en_GB", "wide-mouth glass jar", "1 imp_quart", ""),
    ("bottiglie da 0,5 litri", "it_IT", "bottiglie", "1/2 l", ""),
    ("bocal de 500 ml", "fr_FR", "bocal", "500 ml", ""),
    ("botella de 70 cl", "es_ES", "botella", "70 cl", ""),
    ("bottle, 1 000 ml", "en_GB", "bottle", "1000 ml", ""),
    ("bottle, 1\u202f500 ml", "en_GB", "bottle", "1500 ml", ""),
    ("tin: 24 cm round", "en_GB", "tin", "24 cm", ""),
    ("bottle, 1,5 l", "de_DE", "bottle", "3/2 l", ""),
    ("Glas, 0,5 l, Bügel", "de_DE", "Glas", "1/2 l", "Bügel"),
    ("Flasche 0,75 l", "de_DE", "Flasche", "3/4 l", ""),
    ("Flasche, 1.000 ml", "de_DE", "Flasche", "1000 ml", ""),
    ("bouteille de 0,7 l", "fr_FR", "bouteille", "7/10 l", ""),
    ("bouteille, 1 500 ml", "fr_FR", "bouteille", "1500 ml", ""),
]


@pytest.mark.parametrize("row", CONTAINERS, ids=lambda row: f"{row[1]}: {row[0]}")
def test_a_container_is_read_with_its_size(row: tuple[str, ...]) -> None:
    text, language, name, size, closure = row
    found = read_container(text, "metric", language)
    assert (found.name, show(found.size), found.closure) == (name, size or "", closure)


MADE = [
    ("1 000 ml", "en_GB", "1000 ml", "", ""),
    ("1 kg 500 g", "en_GB", "3/2 kg", "", ""),
    ("2 kg/4½lb", "en_GB", "2 kg", "", ""),
    ("1 or 2 l", "en_GB", "1-2 l", "", ""),
    ("500 ml (2 cups)", "en_GB", "500 ml", "", ""),
    ("1,5 l", "de_DE", "3/2 l", "", ""),
    ("6 jars of 200 ml", "en_GB", "6", "jars", "200 ml"),
    ("6 small jars of 200 ml", "en_GB", "6", "small jars", "200 ml"),
    ("6 x 200 ml jars", "en_GB", "6", "jars", "200 ml"),
    ("6 jars, 200 ml each", "en_GB", "6", "jars", "200 ml"),
    ("about 4 jars (200 ml each)", "en_GB", "4", "jars", "200 ml"),
    ("3 half-pint jars", "en_GB", "3", "jars", "1/2 imp_pint"),
    ("2 bottles of 0,75 l", "de_DE", "2", "bottles", "3/4 l"),
    ("24 biscuits", "en_GB", "24", "biscuits", ""),
    ("2 dozen biscuits", "en_GB", "24", "biscuits", ""),
    ("about 40 small biscuits", "en_GB", "40", "small biscuits", ""),
]


@pytest.mark.parametrize("row", MADE, ids=lambda row: f"{row[1]}: {row[0]}")
def test_what_is_made_is_read_with_all_its_parts(row: tuple[str, ...]) -> None:
    text, language, amount, things, each = row
    found = read_makes(text, "metric", language)
    assert (show(found.amount), found.things, show(found.each)) == (amount, things, each)


VESSELS = [
    ("1.5 l clip-top jar", "en_GB", "3/2 l"),
    ("clip-top jar, 1.5 l", "en_GB", "3/2 l"),
    ("clip-top jar of 1.5 l", "en_GB", "3/2 l"),
    ("5-litre crock", "en_GB", "5 l"),
    ("2 x 1 l jars", "en_GB", "2 l"),
    ("3 000 ml bowl", "en_GB", "3000 ml"),
    ("1,5 l Bügelglas", "de_DE", "3/2 l"),
    ("Bügelglas, 1,5 l", "de_DE", "3/2 l"),
    ("20 cm tin", "en_GB", ""),
    ("a big pan", "en_GB", ""),
]


@pytest.mark.parametrize("row", VESSELS, ids=lambda row: f"{row[1]}: {row[0]}")
def test_a_vessel_is_read_with_its_size(row: tuple[str, ...]) -> None:
    assert show(read_vessel(row[0], "metric", row[1]).capacity) == row[2]


# in an English book "1,5" is one and a half or fifteen, and neither is guessed
@pytest.mark.parametrize("system", ["metric", "us", "imperial"])
@pytest.mark.parametrize("read", [read_container, read_makes, read_vessel])
@pytest.mark.parametrize("text", ["1,5 l jar", "1 500 ml jar", "0,5 l jar", "1.000 ml jar"])
def test_what_could_be_two_sizes_is_asked(read: Any, text: str, system: System) -> None:
    if read is read_makes and text == "1 500 ml jar":  # as "6 300 ml jars" are six
        assert show(read(text, system).each) == "500 ml"
        return
    with pytest.raises(Unreadable) as asked:
        read(text, system)
    assert asked.value.mend.startswith("Write ")


@pytest.mark.parametrize(
    ("read", "text"),
    [
        (read_container, "bottle, 1,5 l"),
        (read_container, "jar, 0,5 l, clip-top"),
        (read_container, "2 x 500 ml bottles"),
        (read_makes, "1 litre and 12 biscuits"),
        (read_makes, "2 kg/9lb"),
        (read_makes, "0 ml"),
        (read_vessel, "jar, 1,5 l"),
    ],
)
def test_a_size_that_is_not_sure_is_asked(read: Any, text: str) -> None:
    with pytest.raises(Unreadable):
        read(text, "metric")


RECIPE = """---
title: Zwetschgen
kind: preserve
makes: 1,5 kg
containers: Glas, 0,25 l
vessels: Topf, 2,5 l
ingredients:
  - 1,5 kg Zwetschgen
  - item: Zucker
    amount: 1.000 g
  - Wasser: 0,5 l
---

## Method

1. Cook {0,25 l Wasser} with {1,5 kg Zwetschgen} and {Zucker}.
"""


def test_a_books_language_reaches_every_number_of_a_recipe() -> None:
    recipe = read_recipe(RECIPE, "zwetschgen.md", "zwetschgen", "metric", None, "de_DE")
    assert [show(one.amount) for one in recipe.ingredients] == ["3/2 kg", "1000 g", "1/2 l"]
    assert show(recipe.makes.amount) == "3/2 kg"
    assert show(recipe.containers[0].size) == "1/4 l"
    assert recipe.vessel
    assert show(recipe.vessel.capacity) == "5/2 l"


def test_an_english_book_asks_about_each_of_them() -> None:
    with pytest.raises(ProblemsFound) as found:
        read_recipe(RECIPE, "zwetschgen.md", "zwetschgen")
    lines = {problem.line for problem in found.value.problems}
    assert {4, 5, 6, 8, 9, 11} <= lines


def test_an_amount_of_its_own_keeps_its_second_measure_and_its_packs() -> None:
    butter = read_ingredient({"item": "butter", "amount": "225g/8oz"}, "metric")
    assert [show(again) for again in butter.also] == ["8 oz"]
    tins = read_ingredient({"item": "tomatoes", "amount": "2 x 400 g tins"}, "metric")
    assert (show(tins.amount), tins.each_g) == ("2 tin", Fraction(400))


def test_a_second_measure_is_shown_and_said_to_be_for_the_recipe_as_written() -> None:
    text = RECIPE.replace("1,5 kg Zwetschgen\n  -", "225g/8oz plums, stoned\n  -").replace(
        "{1,5 kg Zwetschgen}", "{plums}"
    )
    recipe = read_recipe(text, "plums.md", "plums", "metric", None, "de_DE")
    written, doubled = (
        scale_recipe(recipe, ByFactor(Fraction(times)), Measures("metric")).lines[0].note
        for times in (1, 2)
    )
    assert written == "that is 8 oz, stoned"
    assert doubled == "that is 8 oz, stoned (for the recipe as written)"


# forms as recipes of the United States and of Britain name them: some were refused
SIDES = [
    "9x13 inch pan",
    "9x13 pan",
    "13x9x2-inch baking dish",
    "9 x 13-inch tin",
    "20x30 cm tray",
    "20cm x 20cm tin",
    "two 9x5 loaf pans",
    '9"x13" pan',
    "30 × 20 cm tin, lined",
    "a 23 x 33cm roasting tin",
    "loaf tin, 23x13x7cm",
]


@pytest.mark.parametrize("words", SIDES)
def test_the_sides_of_a_form_are_no_size_of_what_it_holds(words: str) -> None:
    vessel = read_vessel(words, "metric")
    assert (vessel.words, vessel.capacity) == (words, None)
    box = read_container(words, "metric")
    assert (box.name, box.size) == (words, None)


def test_so_many_vessels_of_a_size_are_no_sides() -> None:
    assert show(read_vessel("3 x 1 l bottles", "metric").capacity) == "3 l"
    with pytest.raises(Unreadable, match="more than one container"):
        read_container("3 x 250 ml jars", "metric")
