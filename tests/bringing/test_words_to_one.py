"""A letter that begins with a name alone, with a few words to somebody, or greets in any language.

What stands above its recipe was for one person: on no page, and told. Notes as people type them
(some after papers that were brought in by strangers, names changed); recipes invented.
"""

from __future__ import annotations

from email.message import EmailMessage
from typing import Final

import pytest

from bringing.drafts import asked, brought, fact, listed, steps
from stillroom.bringing import BroughtRecipe
from stillroom.bringing.callings import calls, is_signed, without_words_to_one
from stillroom.bringing.found import Row
from stillroom.bringing.papers import bring
from stillroom.core.recipe.settings import BookSettings

WITH_HEADS: Final = """Lemon biscuits

Ingredients
200 g flour
100 g butter

Method
1. Rub the butter into the flour.
2. Bake for ten minutes.
"""
BARE: Final = """Lemon biscuits

200 g flour
100 g butter

Rub the butter into the flour.
Bake for ten minutes.
"""
TOLD: Final = "Boil 1 kg plums with 800 g sugar for ten minutes. Pour it into jars and seal them."
SECRET: Final = "Here is the recipe you asked for. The doctor says that Tom is better."
LEFT: Final = "What the letter says before its recipe is left out"


def mailed(text: str) -> BroughtRecipe:
    mail = EmailMessage()
    mail["From"], mail["To"], mail["Subject"] = "Nan Old <n@h.example>", "Pat <p@h.example>", "x"
    mail.set_content(text)
    (found,) = bring("a.eml", mail.as_bytes(), BookSettings()).recipes
    return found


NAMES: Final = [
    "Anna,", "Anna -", "Anna:", "Anna!", "Anna and Tom,", "Mum,", "Anna Maria,", "A.,", "Haniu,",
    "Sally & Jim,", "Anna dear,", "Hi", "Hi there", "Hi all", "Hello!", "Good morning",
    "Hi Anna x", "Hei Liv,", "Olá Ana", "Oi,", "Cześć", "Cześć Kasiu,", "Droga Kasiu,", "Ahoj,",
    "Kære Ane", "Kjære lille Ane,", "Milá Jano,", "Kedves Anna!", "Dzień dobry,", "Bom dia Ana,",
]  # fmt: skip


@pytest.mark.parametrize("head", NAMES)
@pytest.mark.parametrize("recipe", [WITH_HEADS, BARE, TOLD])
def test_what_follows_a_name_or_a_greeting_is_on_no_page(head: str, recipe: str) -> None:
    (found,) = brought(f"{head}\n\n{SECRET}\n\n{recipe}")
    assert "doctor" not in found.text
    assert head not in found.text
    assert LEFT in asked(found)
    assert len(listed(found)) == 2
    assert steps(found) == ([TOLD] if recipe == TOLD else BARE.strip().split("\n")[-2:])
    assert fact(found, "title") == ("" if recipe == TOLD else "Lemon biscuits")


NOTES: Final = [
    "Pili, te la copio tal cual. Un beso, T.", "Pat, here it is as I have it. Love, T.",
    "Pat, as promised!", "Here you go Pat. Love, J.", "Anna, hier ist es. LG J",
    "Tante Anna, wie versprochen.", "Pat - copied straight from the card. x J",
    "Cześć Kasiu,\nobiecałem, więc wysyłam.", "Olá Ana,\n\naqui vai a receita.",
    "Kære Anna\n\nHer er opskriften.", "Hola Pili\n\nAhí va", "Witaj Kasiu,\n\nwysyłam przepis",
]  # fmt: skip


@pytest.mark.parametrize("note", NOTES)
@pytest.mark.parametrize("recipe", [WITH_HEADS, BARE, TOLD])
@pytest.mark.parametrize("is_mail", [True, False])
def test_a_line_to_somebody_above_a_recipe_is_on_no_page(
    note: str, recipe: str, is_mail: bool
) -> None:
    text = f"{note}\n\n{recipe}"
    found = mailed(text) if is_mail else brought(text)[0]
    assert not any(line and line in found.text for line in note.split("\n"))
    assert LEFT in asked(found)
    assert len(listed(found)) == 2
    assert len(steps(found)) == (1 if recipe == TOLD else 2)


@pytest.mark.parametrize("note", ["The doctor rang. More on Sunday.", "Found at last, doctor!"])
@pytest.mark.parametrize("recipe", [WITH_HEADS, BARE, TOLD])
def test_whatever_measures_nothing_above_a_letters_recipe_is_left_out(
    note: str, recipe: str
) -> None:
    found = mailed(f"{note}\n\n{recipe}")
    assert "doctor" not in found.text
    assert LEFT in asked(found)
    assert len(listed(found)) == 2


@pytest.mark.parametrize(
    "head",
    [
        "Plums,\nPears and Apples",  # a title broken off
        "My nan made these each year, and we had them on the train to the sea.",
        "Makes 24 biscuits.",
        "Best ever!",
    ],
)
def test_a_paper_that_speaks_to_nobody_has_nothing_left_out(head: str) -> None:
    (found,) = brought(f"{head}\n\n{WITH_HEADS}")
    assert LEFT not in asked(found)
    assert len(steps(found)) == 2
    assert head != "Makes 24 biscuits." or fact(found, "makes") == "24 biscuits"


def test_a_letters_title_yield_and_writer_stay() -> None:
    found = mailed(f"Makes 24 biscuits.\nFrom Sherry Vane\n\n{WITH_HEADS}")
    assert fact(found, "title") == "Lemon biscuits"
    assert fact(found, "makes") == "24 biscuits"
    assert len(steps(found)) == 2


def test_a_letter_that_begins_with_its_work_keeps_it() -> None:
    found = mailed(f"Wash and stone the plums.\n\n{TOLD}")
    assert steps(found) == ["Wash and stone the plums.", TOLD]


@pytest.mark.parametrize(
    ("line", "is_called"),
    [
        ("Elsie – recipe as promised", True),
        ("Elsie – Recipe of the year", False),
        ("Nonna, here it is", True),
        ("Nonna, the best of all", False),
        ("Elsie,", True),
        ("Christmas,", False),
    ],
)
def test_a_name_alone_or_with_words_behind_it_that_lead_to_a_recipe_calls(
    line: str, is_called: bool
) -> None:
    assert calls(Row(line), [Row("Plum jam", gap=True), Row("1 kg plums")]) is is_called


@pytest.mark.parametrize(
    ("row", "stays"),
    [
        ("From Nan", True),
        ("From Nan, as promised", False),
        ("Makes 2 jars.", True),
        ("Dear all. x J", False),
        ("Dear Ann, lovely to see you. Tom is better.", False),
    ],
)
def test_a_fact_above_a_letters_recipe_stays_unless_it_is_said_to_one(
    row: str, stays: bool
) -> None:
    rows = [Row(row), Row("Lemon biscuits"), Row("200 g flour")]
    assert (rows[0] in without_words_to_one(rows, is_letter=True)) is stays


def test_a_leave_taken_above_a_letters_title_is_no_title_however_long_the_letter() -> None:
    told = [Row(f"The doctor rang on day {one}.") for one in ("A", "B", "C", "D", "E", "F")]
    recipe = [Row("Lemon biscuits"), Row("200 g flour")]
    assert without_words_to_one([*told, Row("Hugs, Nan"), *recipe], is_letter=True) == (*recipe,)
    assert without_words_to_one([*told, *recipe], is_letter=False) == (*told, *recipe)


@pytest.mark.parametrize(
    ("text", "takes_leave"),
    [
        ("As promised! Love, T.", True),
        ("Here it is. Love, J. x", True),
        ("Found it. Love, T. J.", True),
        ("Stir in 200 g sugar. Love, T.", False),
        ("Boil the plums.", False),
    ],
)
def test_a_line_that_measures_takes_no_leave(text: str, takes_leave: bool) -> None:
    assert is_signed(text) is takes_leave
