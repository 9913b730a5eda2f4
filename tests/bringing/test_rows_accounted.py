"""Each row of a paper is in its draft, told to be left out, or asked about; and where it belongs.

Lines from unseen papers (judged in this house); the recipes around them are invented.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, listed, steps
from stillroom.bringing.accounted import tell_lost
from stillroom.bringing.found import Recipe, Row
from stillroom.core.lines.reader import read_line

JAM = "Plum jam\n\nIngredients\n1 kg plums\n800 g sugar\n\nMethod\n"


def test_a_row_that_is_in_no_recipe_is_named() -> None:
    recipe = Recipe(title="Plum jam", ingredients=[("", "1 kg plums")], steps=[("", "Boil them.")])
    rows = [Row("Plum jam"), Row("1 kg plums"), Row("Boil them."), Row("Wash the jars in soda.")]
    tell_lost([recipe], rows)
    assert [what for _, what, _ in recipe.doubts] == [
        'Left out, as no known part of a recipe: "Wash the jars in soda".'
    ]


@pytest.mark.parametrize(
    "row", ["Plum  JAM", "Prep time: 20 minutes", "Share this", "From Ann Bell", "Makes 4 jars"]
)
def test_a_row_that_is_read_is_not_asked_about(row: str) -> None:
    recipe = Recipe(title="Plum jam", steps=[("", "Boil them.")])
    tell_lost([recipe], [Row(row), Row("Boil them.")])
    assert recipe.doubts == []


def test_rows_below_other_recipes_and_comments_are_not_asked_about() -> None:
    recipe = Recipe(title="Plum jam", steps=[("", "Boil them.")])
    rows = [Row("Boil them."), Row("Comments", "heading", 2), Row("I made it with figs instead.")]
    tell_lost([recipe], rows)
    assert recipe.doubts == []


@pytest.mark.parametrize(
    ("row", "is_lost"),
    [
        ("Wash the jars in soda.", True),  # two of five words stand in the recipe, apart
        ("Plums in the old pan.", False),  # four of five
        ("Soda crystals.", False),  # too short to tell
    ],
)
def test_a_row_of_which_half_the_words_are_there_is_not_asked_about(
    row: str, is_lost: bool
) -> None:
    recipe = Recipe(title="Plum jam", steps=[("", "Boil the plums in a pan.")])
    tell_lost([recipe], [Row(row)])
    assert bool(recipe.doubts) is is_lost


def test_of_many_lost_rows_four_are_named_and_the_rest_counted() -> None:
    recipe = Recipe(title="Plum jam", steps=[("", "Boil them.")])
    lost = [f"Wash {one} with soda." for one in ("jars", "lids", "spoons", "cloths", "bowls")]
    tell_lost([recipe], [Row(one) for one in lost])
    ((_, what, _),) = recipe.doubts
    assert '"Wash cloths with soda" and 1 more.' in what
    assert "bowls" not in what


@pytest.mark.parametrize("rest", ["(if you have them) new.", '"new" ones.', "“new” ones."])
def test_a_wrapped_line_may_go_on_with_a_sign(rest: str) -> None:
    (found,) = brought(
        f"{JAM}Boil the plums, and put the jam into jars with lids that are\n{rest}\n"
    )
    assert len(steps(found)) == 1


def test_a_line_in_brackets_belongs_to_the_one_above() -> None:
    page = (
        "<html><body><h1>Candles</h1><h2>Ingredients</h2><ul><li>200 g beeswax</li>"
        "<li>1 wick</li></ul><h2>Method</h2><p>Melt the wax.<br>Pour it round the wick."
        "<br>(this will prevent the wick from rising)<br>Let it set.</p></body></html>"
    )
    (found,) = brought(page, name="a.html")
    assert [one.split(" (")[0] for one in steps(found)] == [
        "Melt the wax.",
        "Pour it round the wick.",
        "Let it set.",
    ]


@pytest.mark.parametrize(
    ("head", "things", "work", "language"),
    [
        ("Equipment needed", "2 jars\na pan", "Boil the plums.\nFill the jars.", "en_GB"),
        ("You also need:", "2 jars\na pan", "Boil the plums.\nFill the jars.", "en_GB"),
        ("attrezzature varie:", "uno 'mbuto\nfiltri", "Cuocete le prugne.\nVersate.", "it_IT"),
    ],
)
def test_work_behind_the_tools_is_the_method(
    head: str, things: str, work: str, language: str
) -> None:
    (found,) = brought(f"Plum\n\n1 kg plums\n800 g sugar\n\n{head}\n{things}\n\n{work}\n", language)
    assert steps(found) == work.split("\n")


@pytest.mark.parametrize(
    ("head", "language"),
    [("Anwendung", "de_DE"), ("How to use", "en_GB"), ("Modo de uso", "es_ES")],
)
def test_how_it_is_used_is_no_step_and_its_head_no_name(head: str, language: str) -> None:
    told = f"{JAM}1. Boil it.\n2. Stir it.\n3. Pot it.\n\n{head}\nA spoon of it in a warm bath.\n"
    (found,) = brought(told, language)
    assert steps(found) == ["Boil it.", "Stir it.", "Pot it."]
    assert f"## {head}" in found.text
    assert "Names that stood" not in asked(found)


def test_a_measure_alone_begins_a_line_of_a_list() -> None:
    (found,) = brought(
        "Konfitura\n\nszklanka płatków róży\nszklanka cukru\nłyżeczka soku cytryny\n\n"
        "Płatki utrzeć z cukrem i sokiem w misce.\nPrzełożyć do słoika.\n",
        "pl_PL",
    )
    assert listed(found) == ["szklanka płatków róży", "szklanka cukru", "łyżeczka soku cytryny"]
    assert len(steps(found)) == 2


def test_a_german_thing_ends_before_what_is_done_with_it() -> None:
    (found,) = brought(
        "Quittenpaste\n\n1 Kilo Quitten schälen und schneiden. Mit 600 g Zucker kochen und 200 g "
        "Butter schaumig rühren. Alles in die Gläser füllen.\n",
        "de_DE",
    )
    assert listed(found) == ["1 Kilo Quitten", "600 g Zucker", "200 g Butter"]


@pytest.mark.parametrize(
    ("line", "thing"),
    [
        ("bis zu 100 ml Wasser", "Wasser"),
        ("até 100 ml água", "água"),
        ("op til 100 ml vand", "vand"),
        ("2 stk. æbler", "æbler"),
        ("3 szt. jajek", "jajek"),
    ],
)
def test_up_to_and_pieces_are_read_in_other_languages(line: str, thing: str) -> None:
    assert read_line(line).item == thing


@pytest.mark.parametrize(
    ("said", "is_asked"),
    [
        ("Store it in a dark place for at least 1 month.", False),
        ("Store it in a dark place for up to 1 month.", True),
    ],
)
def test_at_least_is_a_wait(said: str, is_asked: bool) -> None:
    (found,) = brought(f"{JAM}Boil the plums with the sugar.\n{said}\n")
    assert ("How long it keeps may stand here" in asked(found)) is is_asked or (
        is_asked and "keeps:" in found.text
    )


@pytest.mark.parametrize(
    ("paper", "line"),
    [
        (
            "Himbeergeist\n\nZutaten\n500 g Himbeeren\n0,7 l Korn\n\nZubereitung\nDie Beeren mit "
            "dem Korn in die Flasche geben und auf der Fensterbank ziehen lassen.\n",
            "0.7 l Korn",
        ),
        ("Jam\n\nIngredients\n1 kg plums\n1,5 kg sugar\n\nMethod\nBoil it.\n", "1,5 kg sugar"),
    ],
)
def test_one_decimal_is_read_as_the_papers_language_writes_it(paper: str, line: str) -> None:
    (found,) = brought(paper)
    assert line in listed(found)
    assert ("wrong sign" in asked(found)) is ("," in line)


def test_labels_below_the_steps_are_notes_like_the_first() -> None:
    (found,) = brought(
        f"{JAM}1. Boil the plums.\n2. Stir in the sugar.\n3. Pot the jam.\n\n"
        "**Storage:** A cool shelf is best.\n\n**Picking:** Wear gloves and use scissors.\n",
        name="a.md",
    )
    assert len(steps(found)) == 3
    assert "scissors" in found.text.partition("## Notes")[2]


def test_what_a_note_program_marks_is_its_words() -> None:
    (found,) = brought(
        "# Chili rub #gifts #food\n\n> [!note] For the hampers\n\n## Ingredients\n"
        "- 2 tbsp [[smoked paprika]]\n- ==1 teaspoon== salt\n- 1 tsp [[Cumin|ground cumin]]\n\n"
        "## Method\n1. Mix all of it.\n",
        name="a.md",
    )
    assert found.title == "Chili rub"
    assert listed(found) == ["2 tbsp smoked paprika", "1 teaspoon salt", "1 tsp ground cumin"]
    assert "[!note]" not in found.text
    assert "For the hampers" in found.text


def test_heads_in_a_stated_list_are_groups() -> None:
    page = (
        '<script type="application/ld+json">{"@type": "Recipe", "name": "Kake", "recipeIngredient":'
        ' ["Deig:", "200 g mel", "Pynt:", "50 g sukker"], "recipeInstructions": ["Stek den."]}'
        "</script><body><p>Kake</p></body>"
    )
    (found,) = brought(f"<html>{page}</html>", "nb_NO", "a.html")
    assert [row.rstrip(":") for row in listed(found)] == [
        "Deig",
        "200 g mel",
        "Pynt",
        "50 g sukker",
    ]


@pytest.mark.parametrize(
    "row",
    [
        "Page 7 of 24",
        "Seite 3",
        "Viel Spaß beim Backen, Genießen und Verschenken.",
        "Buon divertimento!",
    ],
)
def test_a_page_number_and_a_wish_go_nowhere_unasked(row: str) -> None:
    (found,) = brought(f"{JAM}1. Boil the plums.\n2. Stir in the sugar.\n3. Pot it.\n\n{row}\n")
    assert row.split(",")[0] not in found.text
    assert "part of the method?" not in asked(found)
    assert len(steps(found)) == 3


def test_joined_letters_of_a_printer_are_letters() -> None:
    (found,) = brought(f"{JAM}Boil the plums with the ﬂesh and ﬁll the jars.\n")
    assert steps(found) == ["Boil the plums with the flesh and fill the jars."]
