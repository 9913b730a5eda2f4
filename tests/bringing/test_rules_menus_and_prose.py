"""A circular's sections between rules, a menu that holds the page, amounts told in sentences.

The shapes are those of three papers that judges brought in on 1 December 2026: a mailing list's
orange liqueur (its recipe below two rules of underscores was taken for a signature), a family's
cookie page whose one wrapper is called "body-navigation-container", and a French book of drinks of
1944 ("2 litres 250 d'alcool à 90°"). The recipes here are invented.
"""

from __future__ import annotations

import pytest

from bringing.drafts import brought, fact, listed, one_of, steps
from stillroom.bringing.prose import measured_in_prose

# ruff: noqa: E501 - a line of a letter or a book reads best in one line

RULE = "_" * 50
CIRCULAR = f"""From: nan <nan_at_example.org>
To: recipes
Subject: Clementine liqueur
Content-Type: text/plain; charset="utf-8"

{RULE}

                 A WORD OF THE WEEK
{RULE}

Two geese and a fox met at a gate.

{RULE}

Clementine liqueur

1 cup brandy
1 cup clementine segments
1 cup sugar

Combine it all in a jar and let it stand for 3 weeks. Strain and bottle.
"""
SIGNED = f"""From: Nan <nan@example.org>
To: me@example.org
Subject: Clementine liqueur
Content-Type: text/plain; charset="utf-8"

Clementine liqueur

1 cup brandy
1 cup clementine segments
1 cup sugar

Combine it all in a jar and let it stand for 3 weeks. Strain and bottle.

{RULE}
This letter was scanned for 3 kinds of harm.
"""
PAGE = """<html><head><title>Rum balls</title></head><body>
<div class="body-navigation-container">
<div class="navigation"><a href="a.html"><p>Fudge</p></a><a href="b.html"><p>Toffee</p></a></div>
<div class="box"><h2>Rum balls</h2><div class="body"><p>3 cups biscuits, ground</p>
<p>1 cup walnuts, ground</p><p>1/2 cup rum</p>
<p>Mix it all well. Form balls the size of a walnut.</p></div></div></div></body></html>"""


@pytest.mark.parametrize("letter", [CIRCULAR, SIGNED])
def test_a_rule_ends_a_letter_only_where_no_list_follows(letter: str) -> None:
    recipe = one_of("a.eml", letter.encode())
    assert fact(recipe, "title") == "Clementine liqueur"
    assert listed(recipe) == ["1 cup brandy", "1 cup clementine segments", "1 cup sugar"]
    assert len(steps(recipe)) == 1
    assert "scanned" not in recipe.text


def test_a_hidden_address_is_nobodys_name() -> None:
    assert "example.org" not in one_of("a.eml", CIRCULAR.encode()).text


def test_a_wrapper_called_after_its_menu_holds_the_page() -> None:
    recipe = one_of("a.html", PAGE.encode())
    assert fact(recipe, "title") == "Rum balls"
    assert listed(recipe) == ["3 cups biscuits, ground", "1 cup walnuts, ground", "1/2 cup rum"]
    assert "Toffee" not in recipe.text


@pytest.mark.parametrize(
    ("told", "things"),
    [
        (
            "Faire macérer, dans 2 litres 250 d'alcool à 90°, 4 grs de cannelle.",
            ["2 litres 250 d'alcool à 90°", "4 grs de cannelle"],
        ),
        ("On mélangera avec 2 litres d'alcool à 60°.", ["2 litres d'alcool à 60°"]),
        (
            "Le jus d'un kilog de framboises, un quart de litre d'eau, deux litres de vinaigre.",
            ["un kilog de framboises", "un quart de litre d'eau", "deux litres de vinaigre"],
        ),
        ("Zwei Liter Wasser mit einem halben Liter Rum.", ["Zwei Liter Wasser", "einem halben Liter Rum"]),
        ("Mettere due litri di acqua e mezzo litro di rum.", ["due litri di acqua", "mezzo litro di rum"]),
        (
            "Use one and one-fourth cups sugar, one-half cup plus two tablespoons of cocoa.",
            ["one and one fourth cups sugar", "one half cup plus two tablespoons of cocoa"],
        ),
        (
            "Sift in one teaspoon each of cinnamon, nutmeg and cloves.",
            ["one teaspoon cinnamon", "one teaspoon nutmeg", "one teaspoon cloves"],
        ),
        (
            "one cup of plain flour one-half cup of cocoa, a spoonful of milk one and one-fourth cups sugar",
            ["one cup of plain flour", "one half cup of cocoa", "a spoonful of milk", "one and one fourth cups sugar"],
        ),
        ("Boil it for one half hour in two thirds of the pan, at 60° or 140°.", []),
        ("Laisser deux jours dans un grand bocal.", []),
    ],
)  # fmt: skip
def test_what_sentences_measure_in_words(told: str, things: list[str]) -> None:
    assert measured_in_prose([told]) == things


def test_the_strength_told_in_a_sentence_is_the_recipes() -> None:
    text = "Liqueur de groseille\n\nMélanger un litre de jus de groseilles et 500 g de sucre avec 2 litres d'alcool à 60°."
    (recipe,) = brought(text, "fr_FR")
    assert "2 litres d'alcool à 60°" in listed(recipe)
