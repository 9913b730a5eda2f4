"""Lines of a list that were cells, wrapped capitals, parts named twice, writers and books.

Shapes after papers that strangers brought in (a scanned card of pickled beets, a Portuguese page of
biscuits, an elderflower cordial with its book below it); words changed, recipes invented.
"""

from __future__ import annotations

from typing import Final

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

LIST: Final = "1 kg plums\n800 g sugar\n"
METHOD: Final = "Boil the plums with the sugar.\nPour into jars.\n"
STEPS: Final = ["Boil the plums with the sugar.", "Pour into jars."]


@pytest.mark.parametrize(
    ("cells", "lines"),
    [
        ("1 Qt Vinegar|1 Pint Water|6 Cups Sugar|2 TBL Spice", 4),
        ("1 l Essig|500 g Zucker|2 EL Salz", 3),
        ("1½ dl vand|200 g sukker|1 tsk salt", 3),
        ("2 kg prugne|500 g zucchero", 2),
        ("½ cup sugar|1/2 tsp salt|1 1/2 cups flour", 3),
    ],
)
@pytest.mark.parametrize("head", ["Ingredients\n\n", ""])
def test_number_unit_and_food_on_three_lines_are_one(cells: str, lines: int, head: str) -> None:
    rows = [row.replace("1 1/2", "1_1/2").split(" ") for row in cells.split("|")]
    text = "\n".join(cell.replace("_", " ") for row in rows for cell in row)
    (found,) = brought(f"Plum relish\n\n{head}{text}\n\n{METHOD}")
    assert listed(found) == cells.split("|")
    assert len(listed(found)) == lines
    assert steps(found) == STEPS


def test_a_food_without_a_unit_among_such_lines_has_its_number() -> None:
    cells = "1\nQt\nVinegar\n2\nLemons\n6\nCups\nSugar"
    (found,) = brought(f"Plum relish\n\n{cells}\n\n{METHOD}")
    assert listed(found) == ["1 Qt Vinegar", "2 Lemons", "6 Cups Sugar"]


def test_numbers_alone_above_steps_stay_numbers() -> None:
    (found,) = brought(f"Plum jam\n\n{LIST}\nMethod\n1\n{STEPS[0]}\n2\n{STEPS[1]}\n")
    assert listed(found) == LIST.strip().split("\n")
    assert steps(found) == STEPS


@pytest.mark.parametrize(
    ("first", "line"),
    [
        ("for 2 kg of plums", "2 kg of plums"),
        ("per 2 lt di alcool a 95°", "2 lt di alcool a 95°"),
        ("für 1 kg Pflaumen", "1 kg Pflaumen"),
        ("pour 500 g de prunes", "500 g de prunes"),
    ],
)
def test_what_a_list_is_for_is_its_first_line_where_that_is_a_food(first: str, line: str) -> None:
    (found,) = brought(f"Plum jam\n\n{first}\n800 g sugar*\n1 lemon **\n\n{METHOD}")
    assert listed(found) == [line, "800 g sugar", "1 lemon"]
    assert steps(found) == STEPS


@pytest.mark.parametrize("made", ["for 2 kg of plum jam", "für 2 kg Marmelade", "pour 6 pots"])
def test_what_is_made_is_no_line_of_the_list(made: str) -> None:
    (found,) = brought(f"Plum jam\n\n{made}\n{LIST}\n{METHOD}")
    assert listed(found) == LIST.strip().split("\n")
    assert fact(found, "makes")


CAPITALS: Final = """COLD JARS MAY SHATTER WHEN ADDING HOT LIQUIDS, AS WILL
HOT JARS ON GRANITE, HEAT JARS TO USE AND USE A WOOD
CUTTING BOARD FOR HOT JARS."""


@pytest.mark.parametrize("above", ["IMPORTANT\n", "Achtung:\n", "Uwaga!\n", ""])
def test_a_sentence_in_capitals_over_three_lines_is_one_step(above: str) -> None:
    (found,) = brought(f"Plum jam\n\n{LIST}\nMethod\n{STEPS[0]}\n{above}{CAPITALS}\n{STEPS[1]}\n")
    label = above.strip().rstrip(":!")
    said = " ".join(CAPITALS.split("\n"))
    assert steps(found) == [STEPS[0], f"{label}: {said}" if label else said, STEPS[1]]


def test_short_lines_in_capitals_stay_apart() -> None:
    text = (
        f"PLUM JAM\n\nINGREDIENTS\n{LIST}\nMETHOD\nBOIL THE PLUMS WITH THE SUGAR\nPOUR INTO JARS\n"
    )
    (found,) = brought(text)
    assert steps(found) == ["BOIL THE PLUMS WITH THE SUGAR", "POUR INTO JARS"]


@pytest.mark.parametrize(("one", "two"), [("Alfajor", "Ganache"), ("Boden", "Für oben")])
@pytest.mark.parametrize("gap", ["", "\n"])
@pytest.mark.parametrize("sign", ["", ":"])
def test_words_that_stand_in_list_and_method_head_the_parts_of_both(
    one: str, two: str, gap: str, sign: str
) -> None:
    parts = f"{one}{sign}\n100 g flour\n75 g sugar\n{gap}{two}{sign}\n200 g honey\n"
    done = f"{one}{sign}\nMix flour and sugar.\nBake them.\n{gap}{two}{sign}\nWarm the honey.\n"
    (found,) = brought(f"Biscuits\n\nIngredients\n{parts}\nMethod\n{done}")
    assert listed(found) == [f"{one}:", "100 g flour", "75 g sugar", f"{two}:", "200 g honey"]
    assert steps(found) == ["Mix flour and sugar.", "Bake them.", "Warm the honey."]
    assert f"### {one}" in found.text
    assert f"### {two}" in found.text


def test_one_food_without_an_amount_that_the_method_has_alone_too_is_no_head() -> None:
    (found,) = brought(
        f"Jam\n\nIngredients\n{LIST}Salt\n\nMethod\n{METHOD}Salt\nStir it well now.\n"
    )
    assert "Salt" in listed(found)
    assert "### Salt" not in found.text


@pytest.mark.parametrize(
    ("line", "who"),
    [
        ("from Sherry", "Sherry"),
        ("(from Sherry)", "Sherry"),
        ("by Sherry Vane", "Sherry Vane"),
        ("von Oma Else", "Oma Else"),
        ("di nonna Rosa", "nonna Rosa"),
        ("van oma", "oma"),
        ("av farmor Elsa", "farmor Elsa"),
        ("de Mamie", "Mamie"),
    ],
)
@pytest.mark.parametrize("gap", ["\n", "\n\n"])
def test_whose_a_recipe_is_is_not_glued_to_its_title(line: str, who: str, gap: str) -> None:
    (found,) = brought(f"Swedish Gingerbread{gap}{line}\n\n{LIST}\n{METHOD}")
    assert fact(found, "title") == "Swedish Gingerbread"
    assert fact(found, "author") == who


@pytest.mark.parametrize("rest", ["from windfalls", "with ginger", "di prugne", "from the garden"])
def test_what_a_thing_is_made_of_stays_in_its_title(rest: str) -> None:
    (found,) = brought(f"Swedish Gingerbread\n{rest}\n\n{LIST}\n{METHOD}")
    assert fact(found, "title") == f"Swedish Gingerbread {rest}"
    assert not fact(found, "author")


BOOKS: Final = [
    'from Ann Vane, " Grow herbs: An inspiring guide"', "from Ann Vane, Grow herbs",
    "(from Ann Vane's Book of Jam)", "aus: Das große Buch der Marmeladen",
    'dal libro "Le conserve della nonna"', "d'après le livre de ma tante",
    "ur boken Sylt och saft", "z książki Domowe konfitury", "uit het boek Jam van Els",
]  # fmt: skip


@pytest.mark.parametrize("book", BOOKS)
@pytest.mark.parametrize("gap", ["", "\n"])
def test_the_book_a_recipe_is_from_is_a_note_and_never_a_step(book: str, gap: str) -> None:
    (found,) = brought(f"Plum jam\n\nIngredients\n{LIST}\nMethod\n{METHOD}{gap}{book}\n")
    assert steps(found) == STEPS
    assert book.strip("()")[1:] in found.text
    assert "may end above" not in asked(found)


@pytest.mark.parametrize(
    "step",
    ["From the pan, pour it into jars.", "Aus dem Topf in Gläser füllen.", "De la casserole."],
)
def test_work_that_begins_so_stays_a_step(step: str) -> None:
    (found,) = brought(f"Plum jam\n\nIngredients\n{LIST}\nMethod\n{STEPS[0]}\n{step}\n")
    assert steps(found) == [STEPS[0], step]


@pytest.mark.parametrize(
    "caption",
    [
        "Na foto acima, o licor da minha avó.",
        "Pictured above: the jars in my kitchen.",
        "In the photo below you see the jars.",
        "Auf dem Bild oben: die Gläser.",
        "På bilden ovan: burkarna.",
        "Nella foto in alto: i vasetti.",
    ],
)
def test_a_caption_typed_as_a_line_is_neither_introduction_nor_step(caption: str) -> None:
    for text in (f"{caption}\n\n{LIST}\n{METHOD}", f"{LIST}\n{METHOD}\n{caption}\n"):
        (found,) = brought(f"Plum jam\n\n{text}")
        assert steps(found) == STEPS
        assert caption not in found.text.split("## Method")[0]


NEEDED: Final = [
    "Du skal bruge:", "Det skal du bruge", "Du trenger:", "Je hebt nodig:", "Necesitamos:",
    "Ti servono:", "Precisas de:", "Vai precisar de:", "Potrzebujesz:", "Vous avez besoin de :",
    "Benötigt werden:", "Hvad du skal bruge:", "Vad du behöver",
]  # fmt: skip


@pytest.mark.parametrize("head", NEEDED)
def test_what_is_needed_heads_the_list(head: str) -> None:
    (found,) = brought(f"Plum jam\n\n{head}\n{LIST}\nMethod\n{METHOD}")
    assert listed(found) == LIST.strip().split("\n")
    assert head.strip(" :") not in found.text
