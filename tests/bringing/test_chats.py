"""A recipe in the messages of a chat: hours and names are on no page, nor what the others say.

Shapes as telephones export them (from memory, and after a paper that a stranger brought in); names
and recipes invented.
"""

from __future__ import annotations

from typing import Final

import pytest

from bringing.drafts import asked, brought, fact, listed, steps
from stillroom.bringing.chat import messages_in

SAID: Final = [
    ("Auntie Jo", "ok so the plum chutney"),
    ("Auntie Jo", "450ml malt vinegar"),
    ("Auntie Jo", "1 kg plums"),
    ("Me", "salt?"),
    ("Auntie Jo", "2 tsp"),
    ("Me", "doctor says hello"),
    ("Auntie Jo", "boil it all for an hour till thick"),
    ("Auntie Jo", "put it in hot jars"),
    ("Me", "thank you!! xx"),
]
SHAPES: Final = {
    "brackets": "[12/11/2023, 18:04:11] {name}: {said}",
    "dash": "12/11/2023, 18:04 - {name}: {said}",
    "german": "12.11.23, 18:04 - {name}: {said}",
    "american": "11/12/23, 6:04 PM - {name}: {said}",
    "iso": "2023-11-12, 18:04 - {name}: {said}",
    "clock": "18:04 {name}: {said}",
    "above": "{name}  18:04\n{said}",
    "above with day": "{name}, [12.11.2023 18:04]\n{said}",
}
LEFT: Final = "Names and hours of the messages are left out"


@pytest.mark.parametrize("shape", SHAPES)
def test_hours_names_and_what_the_others_say_are_on_no_page(shape: str) -> None:
    text = "\n".join(SHAPES[shape].format(name=name, said=said) for name, said in SAID)
    (found,) = brought(text)
    assert fact(found, "title") == "Plum chutney"
    assert listed(found) == ["450ml malt vinegar", "1 kg plums", "2 tsp salt"]
    assert steps(found) == ["Boil it all for an hour till thick", "Put it in hot jars"]
    page = "\n".join(row for row in found.text.split("\n") if not row.startswith("# ?"))
    assert not any(word in page for word in ("18:04", "6:04", "Jo", "2023", "doctor", "thank"))
    assert LEFT in asked(found)


def test_names_alone_before_what_is_said_go_too() -> None:
    text = "\n".join(f"{name.split()[-1]}: {said}" for name, said in SAID)
    (found,) = brought(text)
    assert listed(found) == ["450ml malt vinegar", "1 kg plums", "2 tsp salt"]
    assert "Jo" not in found.text
    assert LEFT in asked(found)


def test_a_message_of_several_lines_is_whole_and_what_was_not_said_is_none() -> None:
    text = (
        "12.11.23, 18:03 - Messages are end-to-end encrypted.\n12.11.23, 18:04 - Jo: Plum jam\n"
        "12.11.23, 18:04 - Jo: 1 kg plums\n800 g sugar\n12.11.23, 18:05 - Jo: <Media omitted>\n"
        "12.11.23, 18:05 - Jo: Boil them together.\nPour into jars.\n"
    )
    (found,) = brought(text)
    assert fact(found, "title") == "Plum jam"
    assert listed(found) == ["1 kg plums", "800 g sugar"]
    assert steps(found) == ["Boil them together.", "Pour into jars."]
    assert "mitted" not in found.text


@pytest.mark.parametrize(
    "text",
    [
        "Plum jam\n\n1 kg plums\n800 g sugar\n\nBoil: it\nPour: it\nSeal: it\nKeep: it",
        "8:00 Dough: knead it\n9:00 Loaf: shape it\n10:00 Oven: bake it",
        "Title: Plum jam\nMakes: 6 jars\nTime: 20 min\nIngredients: plums\nMethod: boil",
        "Day 1: soak\nDay 2: boil\nDay 3: pot",
        "Sugar: 1 kg\nSugar: 800 g\nSugar: 3 kg\nSugar: 4 kg",
    ],
)
def test_what_is_no_chat_is_none(text: str) -> None:
    assert messages_in(text.split("\n")) == []


@pytest.mark.parametrize("title", ["Hello Dolly", "Hello Dollies", "Ciao Bella bars"])
def test_a_biscuit_that_is_called_as_one_greets_keeps_its_title(title: str) -> None:
    (found,) = brought(
        f"{title}\n\n1 cup sugar\n2 cups flour\n\nMix them.\nBake for ten minutes.\n"
    )
    assert fact(found, "title") == title
    assert "letter" not in asked(found)


@pytest.mark.parametrize(
    ("line", "who"),
    [
        ("From:  E. Hofilich, December 2, 1966", "E. Hofilich"),
        ("From: M.A. Whitmer", "M.A. Whitmer"),
        ("From: Lulu Witt, Northville Fair", "Lulu Witt, Northville Fair"),
        ("Von: Oma Else (1960)", "Oma Else"),
    ],
)
def test_whose_it_is_behind_its_label_is_taken_whole(line: str, who: str) -> None:
    (found,) = brought(
        f"Plum jam\n{line}\n\n1 kg plums\n800 g sugar\n\nBoil them.\nPour into jars.\n"
    )
    assert fact(found, "title") == "Plum jam"
    assert fact(found, "author").strip('"') == who


@pytest.mark.parametrize(
    ("line", "title", "who"),
    [
        ("Recept van oma: Speculoosjes", "Speculoosjes", "oma"),
        ("Rezept von Tante Else: Zimtsterne", "Zimtsterne", "Tante Else"),
        ("Recette de Mamie: Gelée de coings", "Gelée de coings", "Mamie"),
        ("Ann's recipe: Plum jam", "Plum jam", "Ann"),
    ],
)
def test_a_title_that_says_whose_it_is_is_parted(line: str, title: str, who: str) -> None:
    below = "1 kg plums\n800 g sugar\n\nBoil them.\nPour into jars.\n\nTip van oma: keep dry.\n"
    text = f"{line}\n\n{below}"
    (found,) = brought(text)
    assert fact(found, "title") == title
    assert fact(found, "author") == who
    assert steps(found) == ["Boil them.", "Pour into jars."]
