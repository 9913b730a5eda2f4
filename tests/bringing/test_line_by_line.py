"""What each line of a paper became: told from where its words stand, and never guessed."""

from __future__ import annotations

from itertools import pairwise

import pytest

from bringing.drafts import asked, brought, fact
from bringing.papers import LETTER, PAGE, TEXT, TITLE
from stillroom.bringing.in_draft import MOST_BESIDE, boxes_of, paper_of_each
from stillroom.bringing.line_by_line import Became, say_left_out, what_became
from stillroom.bringing.overlap import words_in

TWO = """Sloe cordial

1 kg sloes
600 g sugar

Simmer the sloes with the sugar for an hour. Strain it and bottle it.

Rosehip syrup

1 kg rosehips
500 g sugar

Boil the rosehips and strain them twice. Boil the juice with the sugar.
"""


def became(text: str, name: str = "a.txt") -> list[Became]:
    (recipe,) = brought(text, name=name)
    return what_became(recipe.came, boxes_of(recipe.text))


def parts(lines: list[Became]) -> dict[str, str]:
    return {one.words: one.box for one in lines if one.words}


@pytest.mark.parametrize(("paper", "name"), [(TEXT, "a.txt"), (PAGE, "a.html"), (LETTER, "a.eml")])
def test_of_a_plain_recipe_every_line_is_what_it_is(paper: str, name: str) -> None:
    lines = parts(became(paper, name))
    left = {words for words, box in lines.items() if not box}
    assert left == ({"for the baskets"} if name == "a.eml" else set())
    assert lines[TITLE] == "title"
    assert lines["Makes 4 jars of 200 ml"] == "makes"
    assert lines["Ingredients"] == lines["Method"] == "head"
    assert {
        box for words, box in lines.items() if words.startswith(("1 kg", "about", "1 tsp"))
    } == {"ingredients"}
    assert sum(box == "method" for box in lines.values()) == 3


def test_what_stands_nowhere_is_left_out_and_nothing_else_is() -> None:
    lines = parts(
        became(
            "Dear Jo,\nTom is better, says the doctor.\n\nPlum jam\n\n1 kg plums\n800 g sugar\n\n"
            "Boil both until it sets.\nMakes 4 jars.\n\nLove, May\n"
        )
    )
    left = [words for words, box in lines.items() if not box]
    assert left == ["Dear Jo,", "Tom is better, says the doctor.", "Love, May"]


def test_a_part_of_a_line_that_stands_nowhere_is_told() -> None:
    texts = {"title": "Plum jam", "method": "Boil the plums with the sugar until it sets."}
    (line,) = what_became(["Boil the plums with the sugar until it sets. Kiss Tom from me."], texts)
    assert (line.box, line.left) == ("method", "Kiss Tom from me")


@pytest.mark.parametrize(
    ("row", "texts", "left"),
    [
        (
            "1.5 kg plums, stoned and halved",
            {"ingredients": "15 kg plums, stoned and halved"},
            "1.5",
        ),
        ("2 large eggs from our hens", {"ingredients": "large eggs from our hens"}, "2"),
        ("3. Boil it for 20 minutes.", {"method": "Boil it for 2 minutes."}, "20 minutes"),
        ("3. Boil it for a long while.", {"method": "Boil it for a long while."}, ""),
        ("Makes about 4 jars", {"makes": "about 4 jars"}, ""),
        ("Yield: 4 to 6 jars of it", {"makes": "6 jars of it"}, "Yield: 4 to"),
    ],
)
def test_a_figure_that_stands_nowhere_is_told(row: str, texts: dict[str, str], left: str) -> None:
    (line,) = what_became([row], texts)
    assert line.left == left


@pytest.mark.parametrize(("paper", "name"), [(TEXT, "a.txt"), (PAGE, "a.html"), (LETTER, "a.eml")])
def test_no_word_of_a_draft_is_made_up(paper: str, name: str) -> None:
    for recipe in brought(paper, name=name):
        own = {one.said for line in recipe.came for one in words_in(line)}
        boxes = boxes_of(recipe.text)
        for box in ("title", "makes", "ingredients", "method"):
            assert {one.said for one in words_in(boxes[box])} <= own, box


def test_a_line_whose_words_stand_for_another_is_said_to_be_the_same() -> None:
    texts = {"ingredients": "1 kg plums\nsugar", "method": "Boil them."}
    first, second = what_became(["1 kg plums", "1 kg plums"], texts)
    assert (first.box, first.again, second.box, second.again) == (
        "ingredients", False, "ingredients", True,
    )  # fmt: skip
    assert not second.pieces


@pytest.mark.parametrize(
    ("row", "box"),
    [
        ("Salt", "ingredients"),  # a word alone is looked for as a whole line,
        ("bottle", ""),  # and not within others
        ("sugar, 600 g", "ingredients"),  # put otherwise
        ("Mix", "method"),
        ("It keeps for years.", ""),
        ("1½ tsp Ginger", "ingredients"),
        ("GINGER, 1 1/2 tsp", "ingredients"),
    ],
)
def test_short_lines_and_those_put_otherwise(row: str, box: str) -> None:
    texts = {
        "ingredients": "600 g sugar\nsalt\n1 1/2 tsp ginger",
        "method": "Mix.\nPour it into a bottle for a year.",
    }
    (line,) = what_became([row], texts)
    assert line.box == box


def test_of_several_recipes_each_has_its_own_lines_and_those_between() -> None:
    first, second = brought(TWO)
    assert first.came[0] == "Sloe cordial"
    assert second.came[0] == "Rosehip syrup"
    assert not {one for one in first.came if one} & {one for one in second.came if one}
    between = TWO.replace("Rosehip", "See you at Easter, Jo.\n\nRosehip", 1).split("\n")
    for came in paper_of_each(between, [first.text, second.text]):
        assert "See you at Easter, Jo." in came, "it stands in neither"


def test_no_line_is_lost_of_what_belongs_beside_a_draft() -> None:
    rows = [one.strip() for one in TWO.splitlines() if one.strip()]
    kept = [one for recipe in brought(TWO) for one in recipe.came if one]
    assert kept == rows


def test_far_above_and_far_below_it_is_told_how_much_there_is() -> None:
    talk = [f"Day {number}" for number in range(90)]
    (came,) = paper_of_each([*talk, *TEXT.split("\n"), *talk], [brought(TEXT)[0].text])
    assert came[:2] == (f"… {90 - MOST_BESIDE} lines more above", "Day 30")
    assert came[-2:] == ("Day 58", "… 31 lines more below")  # an empty line stands below it, too


def test_a_recipe_in_the_books_own_form_has_no_paper() -> None:
    (recipe,) = brought(brought(TEXT)[0].text)
    assert recipe.came == ()


@pytest.mark.parametrize("paper", [TEXT, TWO, LETTER])
def test_the_words_that_a_line_became_are_its_own(paper: str) -> None:
    for recipe in brought(paper):
        boxes = boxes_of(recipe.text)
        lines = what_became(recipe.came, boxes)
        taken = [
            (piece.box, at) for line in lines for piece in line.pieces
            for at in range(piece.first, piece.last)
        ]  # fmt: skip
        assert len(taken) == len(set(taken)), "no letter stands for two lines"
        for line in lines:
            own = {one.said for one in words_in(line.words)}
            for piece in line.pieces:
                said = boxes[piece.box][piece.first : piece.last]
                assert {one.said for one in words_in(said)} <= own, (line.words, said)


def test_the_order_of_the_lines_is_the_papers() -> None:
    (recipe,) = brought(TEXT)
    places = [TEXT.index(line) for line in recipe.came if line]
    assert all(above < below for above, below in pairwise(places))


def test_what_is_left_out_is_named_in_a_few_words() -> None:
    lines = [Became("a" * 200, "", "a" * 200), Became("b", "", "b"), Became("c", "", "c")]
    said = say_left_out(lines, 2)
    assert said.endswith('· "b" and 1 more')
    assert len(said) < 150


STATED = """<html><body><main><h1>Oat biscuits</h1><script type="application/ld+json">
{"@context": "https://schema.org", "@type": "Recipe", "name": "Oat biscuits",
"recipeIngredient": ["200 g oats", "100 g sugar"], "recipeInstructions": "Mix and bake."}</script>
<ul><li>200 g oats</li><li>100 g sugar</li>%s</ul><p>Mix and bake.</p></main></body></html>"""


@pytest.mark.parametrize("line", ["150 g hazelnuts", "2 tbsp tahini", "1 egg"])
def test_a_line_that_a_page_shows_and_does_not_state_is_asked(line: str) -> None:
    """What is left out of a list may be what somebody must not have."""
    (recipe,) = brought(STATED % f"<li>{line}</li>", name="a.html")
    assert f'stands nowhere: "{line}"' in asked(recipe)


@pytest.mark.parametrize("line", ["", "<li>12 comments</li>", "<li>4 Mill Lane</li>"])
def test_what_is_no_food_is_not_asked_for_the_list(line: str) -> None:
    (recipe,) = brought(STATED % line, name="a.html")
    assert "stands nowhere" not in asked(recipe)


def test_what_is_written_from_a_line_besides_is_told() -> None:
    texts = {
        "title": "Plum jam",
        "makes": "about 40 pots",
        "ingredients": "2 kg plums",
        "intro": "Here is our Plum jam of old.",
        "method": "Boil 2 kg plums until they set.",
    }
    rows = ["Here is our Plum jam of old.", "Environ 40 pots :", "Boil 2 kg plums until they set."]
    story, makes, work = what_became(rows, texts)
    assert (story.box, story.also_in, story.left) == ("intro", ("title",), "")
    assert (makes.box, makes.left) == ("makes", "")
    assert (work.box, work.also_in) == ("method", ("ingredients",))
    assert work.said == "what you do, and what goes in"


@pytest.mark.parametrize("head", ["0 comments:", "Verhaal", "Notes"])
def test_a_head_of_which_nothing_stands_is_left_out(head: str) -> None:
    (line,) = what_became([head], {"title": "Plum jam", "method": "Boil them."})
    assert (line.box, line.left) == ("", head)


def test_a_kind_is_not_guessed_from_the_story() -> None:
    text = (
        "Winter walnuts\n\nI do not like to bake, and my oven is old.\n\nIngredients\n\n"
        "2 cups walnuts\n1 cup honey\n\nMethod\n\n1. Put them in a tin.\n"
    )
    (recipe,) = brought(text)
    assert fact(recipe, "kind") != "bake"
