"""A list told in a sentence of what one needs, in eleven languages, and its last two things parted.

The sentences are in the form of cooks' pages in their languages, from memory; the Portuguese and
Polish ones were found by a judge of this house. Expectations written before the code, 30 November
2026.
"""

from __future__ import annotations

import pytest

from bringing.drafts import brought, listed, steps
from stillroom.bringing.one_line import said_in_prose, things_on

TOLD = [
    (
        "es_ES",
        "Necesitamos 4 naranjas, 500 g de azúcar, 1 litro de aguardiente y una rama de canela.",
        ["4 naranjas", "500 g de azúcar", "1 litro de aguardiente", "una rama de canela"],
        "Pelar las naranjas. Añadir el azúcar y filtrar.",
    ),
    (
        "it_IT",
        "Servono 4 arance, 500 g di zucchero, 1 litro di grappa e una stecca di cannella.",
        ["4 arance", "500 g di zucchero", "1 litro di grappa", "una stecca di cannella"],
        "Sbucciare le arance. Aggiungere lo zucchero e filtrare.",
    ),
    (
        "pt_PT",
        "Vai precisar de 4 laranjas, 500 g de açúcar, 1 litro de aguardente e um pau de canela.",
        ["4 laranjas", "500 g de açúcar", "1 litro de aguardente", "um pau de canela"],
        "Descasque as laranjas. Junte o açúcar e filtre.",
    ),
    (
        "sv_SE",
        "Du behöver 4 apelsiner, 500 g socker, 1 liter brännvin och en kanelstång.",
        ["4 apelsiner", "500 g socker", "1 liter brännvin", "en kanelstång"],
        "Skala apelsinerna. Tillsätt sockret och sila.",
    ),
    (
        "da_DK",
        "Du skal bruge 4 appelsiner, 500 g sukker, 1 liter brændevin og en kanelstang.",
        ["4 appelsiner", "500 g sukker", "1 liter brændevin", "en kanelstang"],
        "Skræl appelsinerne. Tilsæt sukkeret og si.",
    ),
    (
        "nb_NO",
        "Du trenger 4 appelsiner, 500 g sukker, 1 liter brennevin og en kanelstang.",
        ["4 appelsiner", "500 g sukker", "1 liter brennevin", "en kanelstang"],
        "Skrell appelsinene. Tilsett sukkeret og sil.",
    ),
    (
        "pl_PL",
        "Potrzebujemy 1 kg pigwy, 500 g cukru, pół litra spirytusu i laskę cynamonu.",
        ["1 kg pigwy", "500 g cukru", "pół litra spirytusu", "laskę cynamonu"],
        "Pigwę pokroić. Zalać spirytusem i przefiltrować.",
    ),
]


@pytest.mark.parametrize(("language", "told", "things", "method"), TOLD)
def test_what_one_needs_is_the_list_and_no_step(
    language: str, told: str, things: list[str], method: str
) -> None:
    (recipe,) = brought(f"Likör\n\n{told}\n\n{method}\n", language)
    assert listed(recipe) == things
    assert steps(recipe) == [method]


@pytest.mark.parametrize(
    "text",
    [
        "You need 2 hours, 3 pans and patience. Boil it.",
        "Man braucht 3 Stunden, 2 Töpfe und etwas Geduld.",
        "Det behövs 3 timmar, 2 kastruller och tålamod.",
    ],
)
def test_hours_and_pans_are_no_list(text: str) -> None:
    assert said_in_prose(text) is None


@pytest.mark.parametrize(
    ("line", "things"),
    [
        (
            "1 kg plums, 500 g sugar, 1 cinnamon stick and the juice of 1 lemon",
            ["1 kg plums", "500 g sugar", "1 cinnamon stick", "the juice of 1 lemon"],
        ),
        (
            "1 kg de abóbora, 800 g de açúcar, 2 paus de canela e o sumo de 1 limão",
            ["1 kg de abóbora", "800 g de açúcar", "2 paus de canela", "o sumo de 1 limão"],
        ),
        (
            "1 kg mele, 500 g zucchero, 1 limone e 2 chiodi di garofano",
            ["1 kg mele", "500 g zucchero", "1 limone", "2 chiodi di garofano"],
        ),
        (
            "3 eggs, 200 g sugar, 1 tsp salt and pepper",
            ["3 eggs", "200 g sugar", "1 tsp salt and pepper"],
        ),
        (
            "2 äpplen, 1 dl socker, 1 citron i skivor",
            ["2 äpplen", "1 dl socker", "1 citron i skivor"],
        ),
    ],
)
def test_the_last_two_of_a_line_are_parted_where_both_are_things(
    line: str, things: list[str]
) -> None:
    assert things_on(line) == things
