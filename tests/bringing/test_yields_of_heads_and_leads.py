"""How much is made: in a list's head, behind "enough for", on a line below the title.

The phrases are from pages in ten languages (blogs, growers' pages, mailed recipes; read
30 November 2026); expectations were written before the code was asked.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed

DE = ("Quittengelee", "1 kg Quitten\n500 g Zucker\n1 l Wasser", "Zutaten", "Zubereitung", "de_DE")
FR = (
    "Gelée de coings",
    "1 kg de coings\n500 g de sucre",
    "Ingrédients",
    "Préparation",
    "fr_FR",
)
NL = ("Appelgelei", "1 kg appels\n500 g suiker\n1 l water", "Ingrediënten", "Bereiding", "nl_NL")
IT = ("Gelatina di mele", "1 kg di mele\n500 g di zucchero", "Ingredienti", "Preparazione", "it_IT")
ES = (
    "Jalea de manzana",
    "1 kg de manzanas\n1 kg de azúcar",
    "Ingredientes",
    "Preparación",
    "es_ES",
)
PT = (
    "Geleia de morango",
    "1 kg de morangos\n500 g de açúcar",
    "Ingredientes",
    "Modo de preparo",
    "pt_PT",
)
DA = ("Æblegelé", "1 kg æbler\n500 g sukker", "Ingredienser", "Fremgangsmåde", "da_DK")
NB = ("Eplegelé", "1 kg epler\n500 g sukker", "Ingredienser", "Fremgangsmåte", "nb_NO")
PL = ("Galaretka z jabłek", "1 kg jabłek\n500 g cukru", "Składniki", "Przygotowanie", "pl_PL")
EN = ("Damson jelly", "2 lb damsons\n1 lb sugar", "Ingredients", "Method", "en_GB")


def _paper(of: tuple[str, str, str, str, str], line: str, head: bool) -> tuple[str, str]:
    title, things, listing, method, language = of
    top = line if head else f"{line}\n\n{listing}"
    return f"{title}\n\n{top}\n{things}\n\n{method}\n1. Boil it all.\n2. Fill it.\n", language


@pytest.mark.parametrize(
    ("of", "line", "makes"),
    [
        (DE, "Zutaten: ca. 1 kg", "ca. 1 kg"),
        (DE, "Zutaten für zwei Flaschen (0,7 l):", "zwei Flaschen 0,7 l"),
        (FR, "Ingrédients : environ 1 kg", "environ 1 kg"),
        (IT, "Ingredienti: per 4 vasetti", "4 vasetti"),
        (NL, "INGREDIËNTEN (genoeg gelei voor 4 grote potten van 500g)", "4 grote potten van 500g"),
        (PL, "Składniki na 6 słoików (po 250 ml):", "6 słoików po 250 ml"),
        (EN, "Ingredients (enough for 3 pint jars):", "3 pint jars"),
        (DA, "Ingredienser (ca. 150 stykker):", "ca. 150 stykker"),
        (NL, "Ingrediënten (ongeveer 40 stuks):", "ongeveer 40 stuks"),
    ],
)
def test_the_head_of_a_list_says_how_much(
    of: tuple[str, str, str, str, str], line: str, makes: str
) -> None:
    (one,) = brought(*_paper(of, line, head=True))
    assert fact(one, "makes").strip('"') == makes
    assert listed(one) == of[1].split("\n")
    assert fact(one, "title") == of[0]


@pytest.mark.parametrize(
    ("of", "line", "makes"),
    [
        (EN, "36 squares", "36 squares"),
        (EN, "About 2 dozen", "About 2 dozen"),
        (EN, "Makes enough jam for two pint jars", "two pint jars"),
        (EN, "Enough to fill 3 one-pint jars", "3 one-pint jars"),
        (EN, "Batch makes 12 bars of soap", "12 bars of soap"),
        (FR, "Pour deux kilos de gelée de coings :", "deux kilos"),
        (ES, "Para unas 20 galletas pequeñas", "about 20 galletas pequeñas"),
        (PT, "Rende 4 frascos de 300 g", "4 frascos de 300 g"),
        (DA, "Til sådan cirka 8 l. marmelade", "cirka 8 l"),
        (NB, "Antall porsjoner = 4", "4 servings"),
        (NB, "Gir to store glass", "2 store glass"),
        (PL, "Z tej porcji wychodzą 4 słoiki", "4 słoiki"),
        (PL, "Porcja: 3 słoiki", "3 słoiki"),
        (DA, "Opskriften giver 4 glas à 250 ml.", "4 glas à 250 ml"),
        (NB, "Oppskriften gir 4 glass.", "4 glass"),
        (IT, "Con queste dosi si ottengono 4 vasetti.", "4 vasetti"),
        (ES, "Los ingredientes indicados son para obtener 20 unidades.", "20 unidades"),
    ],
)
def test_a_line_below_the_title_says_how_much(
    of: tuple[str, str, str, str, str], line: str, makes: str
) -> None:
    (one,) = brought(*_paper(of, line, head=False))
    assert fact(one, "makes").strip('"') == makes
    assert listed(one) == of[1].split("\n")


@pytest.mark.parametrize(
    ("of", "line"),
    [
        (EN, "For 2 kg of damsons:"),
        (FR, "Pour 2 kg de coings :"),
        (DE, "Für 2 kg Quitten:"),
        (DE, "Für 1 Stunde"),
        (EN, "Enough for all of us"),
    ],
)
def test_what_it_is_made_of_and_how_long_is_no_yield(
    of: tuple[str, str, str, str, str], line: str
) -> None:
    (one,) = brought(*_paper(of, line, head=False))
    assert fact(one, "makes") == ""
    assert "how much it makes" in asked(one)


@pytest.mark.parametrize(
    ("title", "named", "makes"),
    [
        (
            "Strawberry-Rhubarb Jam (about 6 half-pints)",
            "Strawberry-Rhubarb Jam",
            "about 6 half-pints",
        ),
        ("Damson jam, 6 jars", "Damson jam", "6 jars"),
        ("Damson jam – 2 litres", "Damson jam", "2 litres"),
    ],
)
def test_how_much_stands_behind_the_title(title: str, named: str, makes: str) -> None:
    (one,) = brought(f"{title}\n\n2 lb damsons\n1 lb sugar\n\nBoil it all until it sets.\n")
    assert (fact(one, "title"), fact(one, "makes")) == (named, makes)
