"""Heads that say how, yields said by a verb, what a thing is for, farewells in more languages.

Shapes after papers that strangers brought in (a Spanish page of polvorones, German notes of
Kipferl, a Portuguese mail, a page that a browser saved as a letter); words changed, recipes
invented.
"""

from __future__ import annotations

from typing import Final

import pytest

from bringing.drafts import asked, brought, fact, listed, steps
from stillroom.bringing.papers import bring
from stillroom.core.method.keeping_said import may_say_keeping
from stillroom.core.recipe.settings import BookSettings

LIST: Final = "1 kg plums\n800 g sugar\n"
METHOD: Final = "Boil the plums with the sugar.\nPour into jars.\n"
STEPS: Final = METHOD.strip().split("\n")


@pytest.mark.parametrize(
    "head",
    [
        "Cómo elaborar la receta de Polvorones:",
        "Come si prepara il nocino:",
        "Wie du die Kipferl machst:",
        "So werden die Kekse gemacht:",
        "Så gör du pepparkakor:",
        "Sådan laver du brunkager:",
        "Comment préparer la gelée :",
        "Jak zrobić konfiturę:",
        "Como fazer o licor:",
    ],
)
def test_words_that_say_how_head_the_method_and_are_no_step(head: str) -> None:
    (found,) = brought(f"Plum jam\n\n{LIST}\n{head}\n{METHOD}")
    assert steps(found) == STEPS
    assert listed(found) == LIST.strip().split("\n")
    assert "no known part" not in asked(found)


def test_work_that_begins_so_stays_a_step() -> None:
    said = "So lange kochen, bis es fest ist:"
    (found,) = brought(f"Plum jam\n\n{LIST}\nMethod\n{STEPS[0]}\n{said} ten minutes.\n")
    assert len(steps(found)) == 2


@pytest.mark.parametrize(
    ("line", "makes"),
    [
        ("Salen unos 40", "about 40 biscuits"),
        ("Salen unas 40 unidades", "unas 40 unidades"),
        ("Rinde 24", "24 biscuits"),
        ("Da circa 30 biscotti", "circa 30 biscotti"),
        ("Ger 40 kakor", "40 kakor"),
        ("Giver 40 stk", "40 stk"),
        ("Wychodzi 40 sztuk", "40 sztuk"),
    ],
)
@pytest.mark.parametrize("gap", ["\n", "\n\n"])
def test_a_verb_and_a_number_are_the_yield_and_no_title(line: str, makes: str, gap: str) -> None:
    (found,) = brought(f"Plum biscuits{gap}{line}\n\n{LIST}\n{METHOD}")
    assert fact(found, "title") == "Plum biscuits"
    assert fact(found, "makes") == makes
    assert "\n---\n\n## Method" in found.text


@pytest.mark.parametrize(
    ("line", "thing"),
    [
        ("Zum Wälzen: 150 g Puderzucker", "150 g Puderzucker, zum Wälzen"),
        ("For rolling: 150 g icing sugar", "150 g icing sugar, for rolling"),
        ("Pour le décor : 50 g sucre glace", "50 g sucre glace, pour le décor"),
    ],
)
@pytest.mark.parametrize("head", ["Ingredients\n", ""])
def test_what_a_thing_is_for_stands_behind_it(line: str, thing: str, head: str) -> None:
    (found,) = brought(f"Plum jam\n\n{head}{LIST}{line}\n\n{METHOD}")
    assert listed(found) == [*LIST.strip().split("\n"), thing]
    assert steps(found) == STEPS


FAREWELLS: Final = [
    "Beijinhos\nLena", "bjs\nLena", "Beijos, Lena", "Um abraço,\nLena", "Całuję\nLena",
    "Buziaki, Lena", "Pozdrawiam\nLena", "Kærlig hilsen\nLena", "Klem fra Lena", "Knus Lena",
    "S pozdravem\nLena", "Üdv,\nLena", "Terveisin\nLena",
]  # fmt: skip


@pytest.mark.parametrize("farewell", FAREWELLS)
def test_a_farewell_in_any_of_these_is_no_step(farewell: str) -> None:
    (found,) = brought(f"Hi Ann,\n\nPlum jam\n\n{LIST}\n{METHOD}\n{farewell}\n")
    assert steps(found) == STEPS
    assert "Lena" not in found.text


def test_a_page_that_a_browser_saved_as_a_letter_was_sent_by_nobody() -> None:
    page = (
        "From: <Saved by Blink>\nSnapshot-Content-Location: https://x.example/jam\n"
        "Subject: Plum jam\nMIME-Version: 1.0\nContent-Type: text/html; charset=utf-8\n\n"
        "<html><body><h1>Plum jam</h1><p>Ours since 1950.</p><ul><li>1 kg plums</li>"
        "<li>800 g sugar</li></ul><ol><li>Boil the plums with the sugar.</li>"
        "<li>Pour into jars.</li></ol></body></html>"
    )
    (found,) = bring("saved.mht", page.encode(), BookSettings()).recipes
    assert fact(found, "author") == ""
    assert "https://x.example/jam" in found.text
    assert "Saved by" not in found.text
    assert "words of whoever published them" in asked(found)


@pytest.mark.parametrize(
    ("said", "span"),
    [
        ("Die Mischung hält 3 Monate.", "3 months"),
        ("In einer Blechdose hält es bis zu 6 Monate.", "6 months"),
        ("Håller 2 månader i burk.", "2 months"),
    ],
)
def test_how_long_it_holds_is_taken_and_asked_about(said: str, span: str) -> None:
    (found,) = brought(f"Plum jam\n\n{LIST}\nMethod\n{METHOD}\n{said}\n")
    assert f"unopened: {span}\n" in found.text
    assert "is taken for how long it keeps unopened" in asked(found)


@pytest.mark.parametrize(
    "said", ["Den Teig 2 Tage kühl halten.", "Die Form hält 2 Liter.", "Zieht 3 Monate."]
)
def test_what_holds_no_thing_says_no_keeping(said: str) -> None:
    assert may_say_keeping(said) is None


@pytest.mark.parametrize("mark", ["", "## "])
@pytest.mark.parametrize("head", ["Damson jelly", "DAMSON JELLY"])
@pytest.mark.parametrize(
    "behind", ["Lemon curd\n\n4 lemons\n200 g butter\n\nMelt them.\nStir.\n", ""]
)
def test_a_recipe_told_in_sentences_behind_one_with_a_list_is_its_own(
    head: str, behind: str, mark: str
) -> None:
    told = "Boil 2 kg damsons with 1 l water until soft. Boil the juice with 800 g sugar."
    behind = f"{mark}{behind}" if behind else ""
    text = f"{mark}Plum jam\n\n{LIST}\n{METHOD}\n{mark}{head}\n\n{told}\n\n{behind}"
    found = brought(text)
    titles = ["Plum jam", "Damson jelly", *(["Lemon curd"] if behind else [])]
    assert [fact(one, "title") for one in found] == titles
    assert steps(found[0]) == STEPS
    assert listed(found[1]) == ["2 kg damsons", "1 l water", "800 g sugar"]
    assert steps(found[1]) == [told]
    assert 'It is told in sentences behind "Plum jam"' in asked(found[1])


@pytest.mark.parametrize(
    "part",
    [
        "Plum and ginger jam\n\nAs above, but add 50 g ginger to the pan with the sugar.",
        "Filling the jars\n\nWarm 6 jars at 120 °C. Fill them with 200 ml of jam each.",
        "Plum syrup\n\nBoil the other 200 g plums with 100 g of the sugar. Strain it into a jug.",
    ],
)
def test_a_part_or_another_way_of_a_recipe_is_none_of_its_own(part: str) -> None:
    assert len(brought(f"Plum jam\n\n{LIST}\n{METHOD}\n{part}\n")) == 1
