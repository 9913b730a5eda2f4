"""A letter's farewell and anybody's number are left out and told; a recipe's own words stay."""

from __future__ import annotations

import pytest

from stillroom.bringing import bring
from stillroom.core.recipe.settings import BookSettings

JAM = """Plum jam

1 kg plums
800 g sugar
2 tbsp lemon juice

Cook the plums soft with the juice.
Add the sugar and boil it until it sets.
Fill jars boiling hot.
"""
KEPT = [
    "1. Cook the plums soft with the juice.",
    "2. Add the sugar and boil it until it sets.",
    "3. Fill jars boiling hot.",
]
HEADS = {
    "pasted.txt": "",
    "greeted.txt": "Dear Ann,\n\nHere is what you asked for.\n\n",
    "letter.eml": "From: b@x.example\nTo: a@x.example\nSubject: Jam\n\n",
}
FAREWELL, NUMBER = "farewell is left out", "e-mail address is left out"


def _method(name: str, text: str) -> tuple[list[str], str, str]:
    (recipe,) = bring(name, text.encode(), BookSettings()).recipes
    body = recipe.text.partition("## Method")[2].partition("## ")[0]
    told = " ".join(question.what for question in recipe.questions)
    return [line for line in body.split("\n") if line], told, recipe.text


# how letters of a family end, as the reviewer's and as those of a letter writer's manual do (from
# memory); the numbers are of the ranges that are kept for stories
@pytest.mark.parametrize("name", HEADS)
@pytest.mark.parametrize(
    ("end", "told", "gone"),
    [
        ("Love to Ken and the boys.\nJoan xx\n07700 900123\n", [FAREWELL, NUMBER], ["Ken", "077"]),
        ("Ring Margaret on 01326 555 0123.\nJoan xx\n", [NUMBER, FAREWELL], ["Margaret", "0132"]),
        ("Best wishes from us all\nTom\ntom@vane.example\n", [FAREWELL, NUMBER], ["Tom", "vane"]),
        ("See you at Easter!\n\nNan\nP.S. Bring Tim along.\n", [FAREWELL], ["Easter", "Tim"]),
        ("Many thanks for the jars, Mrs. Pell\n(207) 555-0142\n", [FAREWELL, NUMBER], ["Pell"]),
        ("Liebe Grüße an Karl\nOma\n", [FAREWELL], ["Karl", "Oma"]),
    ],
)
def test_what_was_for_one_person_is_left_out_and_told(
    name: str, end: str, told: list[str], gone: list[str]
) -> None:
    steps, said, text = _method(name, f"{HEADS[name]}{JAM}\n{end}")
    assert steps == KEPT
    assert all(one in said for one in told)
    assert not any(word in text for word in gone)


@pytest.mark.parametrize(
    "end",
    [
        "Keep it in the dark: it is best after a month.",
        "Best with a strong cheese.",
        "Thanks to the pectin it sets fast.",
        "Serve with love on toast.",
        "Love this on hot scones.",
        "Boil it at 104 C for 10-12 minutes, as in 1998.",
    ],
)
def test_a_last_step_that_takes_no_leave_stays(end: str) -> None:
    steps, said, _ = _method("pasted.txt", JAM + end)
    assert steps == [*KEPT, f"4. {end}"]
    assert "left out" not in said


def test_a_title_that_begins_as_a_farewell_keeps_its_recipe() -> None:
    text = "From my aunt\n\nLove apples\n\n6 apples\n200 g sugar\n\nBoil the sugar and dip them.\n"
    steps, said, _ = _method("pasted.txt", text)
    assert any("Boil the sugar" in step for step in steps)
    assert "left out" not in said


def test_a_name_alone_ends_a_letter_and_no_other_text() -> None:
    assert _method("a.txt", f"{HEADS['greeted.txt']}{JAM}\nJoan\n")[0] == KEPT
    assert _method("a.txt", f"{JAM}\nJoan\n")[0] == [*KEPT, "4. Joan"]
