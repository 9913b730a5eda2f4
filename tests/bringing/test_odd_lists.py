"""Lists whose lines set the amount behind, in cells or in columns: read, and none shifted.

In the forms of public recipes (1 December 2026): goniec.net ("Mąka — 2 szklanki,"),
leichtgekocht.at (a table of three columns without a rule), aldeiadareigada.blogspot.com ("Pau de
canela    1") and Project Gutenberg-DE ("5 Gramm in Stücke / gebrochener Zimt").
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, listed, steps

MIX = "\n\nMix it well for ten minutes. Bake it until it is brown.\n"
LISTS = [
    (
        "it_IT",
        "Biscotti della nonna\n\nFarina gr 300\nzucchero gr 150\nuova n. 3\nburro gr "
        "100\n\nImpastare il tutto e cuocere a 180°.\n",
        ["300 gr Farina", "150 gr zucchero", "3 uova", "100 gr burro"],
    ),
    (
        "pl_PL",
        "Ciastka\n\nMąka — 2 szklanki,\n\nCukier — 1 szklanka,\n\nJajka — 2,\n\nMasło "
        "— 1 kostka.\n\nWszystko zagnieść i piec 20 minut.\n",
        ["2 szklanki Mąka", "1 szklanka Cukier", "2 Jajka", "1 kostka Masło"],
    ),
    (
        "pt_PT",
        "Compota\n\nIngredientes:\n\nAçúcar amarelo      750 gr\n\nAbóbora      1 "
        "kg\n\nPau de canela      1\n\nCravinho      1\n\n"
        "Descasca a abóbora e corta em pedaços. Leva a lume brando para cozer.\n",
        ["Açúcar amarelo 750 gr", "Abóbora 1 kg", "1 Pau de canela", "1 Cravinho"],
    ),
    (
        "de_DE",
        "Kekse\n\n| Menge | Maßeinheit | Zutat |\n| 120 | Gramm | Puderzucker |\n| 250 "
        "| Gramm | Butter |\n| 360 | Gramm | Mehl |\n\n"
        "Die Butter mit dem Mehl und dem Zucker verkneten und backen.\n",
        ["120 Gramm Puderzucker", "250 Gramm Butter", "360 Gramm Mehl"],
    ),
    (
        "de_DE",
        "Marmelade\n\n1 Kilogramm Birnen, 1 Kilogramm Zucker und 5 Gramm in "
        "Stücke\ngebrochener Zimt. Die Früchte werden geschält und mit dem"
        "\nZucker gekocht.\n",
        ["1 Kilogramm Birnen", "1 Kilogramm Zucker", "5 Gramm in Stücke gebrochener Zimt"],
    ),
    (
        "en_GB",
        f"Scrub\n\nSugar\n200g\nCoconut oil\n100g\nLemon\n1{MIX}",
        ["200g Sugar", "100g Coconut oil", "1 Lemon"],
    ),
]  # fmt: skip


@pytest.mark.parametrize(("language", "text", "things"), LISTS)
def test_amounts_go_with_their_own_food(language: str, text: str, things: list[str]) -> None:
    (one,) = brought(text, language)
    found = [" ".join(line.split()) for line in listed(one)]
    assert found == things


def test_several_columns_of_amounts_are_asked_about() -> None:
    rows = "Plums | 500 g | 1 kg\nSugar | 200 g | 400 g\nOnions | 2 | 4\n"
    (one,) = brought(f"Plum chutney\n\nIngredient | Small batch | Large batch\n{rows}{MIX}")
    assert listed(one) == ["500 g Plums", "200 g Sugar", "2 Onions"]
    assert 'gives amounts for "Small batch" and "Large batch"' in asked(one)


def test_a_step_with_a_number_behind_is_no_food() -> None:
    told = "1. Weigh the sugar.\n2. Boil it.\n3. Go on as in step 1\n"
    (one,) = brought(f"Plum jam\n\nPlums 1 kg\nSugar 500 g\n\nMethod\n\n{told}")
    assert listed(one) == ["Plums 1 kg", "Sugar 500 g"]
    assert len(steps(one)) == 3


def test_coffee_spoons_are_counted_and_asked_about() -> None:
    (one,) = brought(
        "Broas\n\nIngredientes\n\n500 g de farinha\n250 g de mel\n1 colher (café) de canela\n\n"
        "Amassar tudo e levar ao forno durante 15 minutos.\n",
        "pt_PT",
    )
    assert "holds 2 ml to 5 ml" in asked(one)


def test_numbered_things_that_are_needed_are_no_steps() -> None:
    needed = "You will need:\n\n1. Flour\n2. Brown sugar\n3. Chocolate chips\n\n"
    told = "Method:\n\n1. Put the flour in the jar.\n2. Add the sugar.\n3. Top with the chips.\n"
    (one,) = brought(f"Cookie mix\n\n{needed}{told}")
    assert listed(one) == ["Flour", "Brown sugar", "Chocolate chips"]
    assert len(steps(one)) == 3
