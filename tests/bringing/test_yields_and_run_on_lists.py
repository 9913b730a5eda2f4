"""Yields behind one word or two, titles asked as questions, lists run together, things as points.

Shapes after papers that strangers brought in (a Swedish page of toffee, a Spanish mail of almond
biscuits, a mail about mead, a German craft); words changed, recipes invented.
"""

from __future__ import annotations

from typing import Final

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

LIST: Final = "200 g sugar\n1 dl cream\n"
METHOD: Final = "Boil the cream with the sugar.\nPour into cases.\n"


@pytest.mark.parametrize(
    ("line", "makes"),
    [
        ("Portioner/mängd: Ca 25-35 stycken", "Ca 25-35 stycken"),
        ("Portions/quantity: 25 biscuits", "25 biscuits"),
        ("Portionen/Menge: 4 Gläser", "4 Gläser"),
        ("Servings / yield: 4 jars", "4 jars"),
        ("Mängd och portioner: 4 burkar", "4 burkar"),
        ("Makes & serves: 24 biscuits", "24 biscuits"),
        ("Antal: 25 st", "25 st"),
        ("Stückzahl: 30 Stück", "30 Stück"),
        ("Quantidade: 6 frascos", "6 frascos"),
        ("Ilość: 6 słoików", "6 słoików"),
        ("Udbytte: 4 glas", "4 glas"),
        ("Porcje: 8", "8 servings"),
        ("Antal portioner: 8", "8 servings"),
        ("Número de raciones: 6", "6"),
    ],
)
def test_how_much_is_made_stands_behind_one_label_or_two(line: str, makes: str) -> None:
    (found,) = brought(f"Plum jam\n{line}\n\n{LIST}\n{METHOD}")
    assert fact(found, "makes").removesuffix(" servings") == makes.removesuffix(" servings")
    assert line not in found.text
    assert len(listed(found)) == 2


@pytest.mark.parametrize(
    "line",
    ["Antal dagar: 2", "Menge und Zeit: 2 Tage", "Udbytte og smag: god"],
)
def test_what_is_no_yield_is_none(line: str) -> None:
    (found,) = brought(f"Plum jam\n{line}\n\n{LIST}\n{METHOD}")
    assert not fact(found, "makes")


@pytest.mark.parametrize(
    ("line", "title"),
    [
        ("Söt och seg knäck – julens mest traditionella godis?", "Söt och seg knäck"),
        ("Plum jam - the best there is?", "Plum jam"),
    ],
)
@pytest.mark.parametrize("head", ["Ingredients\n", ""])
def test_a_title_asked_as_a_question_is_the_title_and_asked(
    line: str, title: str, head: str
) -> None:
    (found,) = brought(f"{line}\n\n{head}{LIST}\n{METHOD}")
    assert fact(found, "title") == title
    assert "is taken for the title, without what it asks" in asked(found)
    assert line not in found.text.split("\n---\n")[1]


def test_a_question_above_a_title_is_no_title() -> None:
    (found,) = brought(f"Who wants biscuits?\n\nPlum biscuits\n\n{LIST}\n{METHOD}")
    assert fact(found, "title") == "Plum biscuits"


@pytest.mark.parametrize(
    "row",
    [
        "75 gr. de almendra molida.75 gr. de azúcar.200 gr. de harina.1 Huevo.",
        "75 g ground almonds. 75 g sugar. 200 g flour. 1 egg.",
        "75 g gemahlene Mandeln.75 g Zucker. 200 g Mehl.1 Ei",
    ],
)
@pytest.mark.parametrize("head", ["Ingredients\n\n", ""])
def test_a_list_run_together_by_stops_is_one_and_no_step(row: str, head: str) -> None:
    (found,) = brought(f"Almond cakes\n\n{head}{row}\n\nMix all and bake for ten minutes.\n")
    assert len(listed(found)) == 4
    assert listed(found)[0] == row.partition(".7")[0].partition(". 7")[0]
    assert steps(found) == ["Mix all and bake for ten minutes."]


def test_sentences_that_begin_with_numbers_are_no_list() -> None:
    said = "Boil it. 10 minutes are enough. 20 minutes are too long."
    (found,) = brought(f"Almond cakes\n\n{LIST}\nMethod\n{said}\nPour into cases.\n")
    assert steps(found)[0] == said


def test_a_point_of_the_method_that_is_a_thing_is_of_the_list() -> None:
    text = "1. 3 lb honey\n2. Add 2 litres of water and heat.\n3. Let it ferment for a month.\n"
    (found,) = brought(f"Mead\n\n{text}")
    assert listed(found) == ["3 lb honey", "2 litres of water"]
    assert steps(found) == ["Add 2 litres of water and heat.", "Let it ferment for a month."]


@pytest.mark.parametrize(
    "head", ["Material", "Materialien:", "Materials", "Materiały", "Materiaal"]
)
def test_what_a_craft_needs_heads_its_list_and_its_author_is_named(head: str) -> None:
    things = "500 g sea salt\n10 drops lavender oil\n"
    text = (
        f"Bath salt\nAutorin: Doris M.\n\n{head}\n{things}\nMethod\n1. Mix it.\n2. Fill the jars.\n"
    )
    (found,) = brought(text)
    assert fact(found, "title") == "Bath salt"
    assert fact(found, "author") == "Doris M."
    assert listed(found) == things.strip().split("\n")
    assert head.strip(":") not in found.text
    assert "M.." not in found.text
