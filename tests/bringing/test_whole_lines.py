"""Lines that a machine broke are one line to choose of, and what a page shows around is kept."""

from __future__ import annotations

import pytest

from bringing.drafts import brought
from bringing.papers import TEXT
from stillroom.bringing.around_page import MOST_AROUND
from stillroom.bringing.in_draft import became_of

WRAPPED = """Dear Jo,
it was so good to see you all at Easter, and Tom says that he will
come again in June if the doctor lets him.

Plum chutney

2 lb plums, stoned and cut into
quarters
1 lb sugar
3 tbsp vinegar

Boil the plums with the vinegar in a wide pan, stirring now and
then so that nothing catches. Add the sugar and boil it for a quar-
ter of an hour.
Put it into hot jars. Shut them at once and keep them
in the dark for two months before you open one.

Equipment
A wide pan

Notes
It sets late, so do not worry when it is
still thin.
"""


def lines(text: str, name: str = "a.txt") -> dict[str, str]:
    (recipe,) = brought(text, name=name)
    return {one.words: one.said for one in became_of(recipe) if one.words}


def test_a_sentence_or_a_thing_over_several_lines_is_one() -> None:
    found = lines(WRAPPED)
    whole = [
        "it was so good to see you all at Easter, and Tom says that he will come again in June if"
        " the doctor lets him.",
        "2 lb plums, stoned and cut into quarters",
        "Boil the plums with the vinegar in a wide pan, stirring now and then so that nothing"
        " catches. Add the sugar and boil it for a quarter of an hour.",
        "Put it into hot jars. Shut them at once and keep them in the dark for two months before"
        " you open one.",
        "It sets late, so do not worry when it is still thin.",
    ]
    assert set(whole) <= set(found)
    assert found["1 lb sugar"] == found["3 tbsp vinegar"] == "what goes in"


def test_no_word_is_lost_or_doubled_when_lines_are_joined() -> None:
    (recipe,) = brought(WRAPPED)
    said = " ".join(" ".join(recipe.came).split())
    assert said == " ".join(WRAPPED.split()).replace("quar- ter", "quarter")


@pytest.mark.parametrize(
    "paper",
    [
        TEXT,
        "Tea\n\nsugar\nflour\nbutter\n\nMix it\nBake it\nEat it\n",
        "Plum gin\n\n1 kg plums\n1 l gin\n\nPrick the plums.\nCover them with gin.\n",
    ],
)
def test_lines_that_are_whole_stay_apart(paper: str) -> None:
    (recipe,) = brought(paper)
    kept = [one for one in recipe.came if one]
    assert kept == [one.strip() for one in paper.splitlines() if one.strip()]


def test_paragraphs_of_a_page_stay_apart() -> None:
    page = (
        "<html><body><h1>Plum jam</h1><ul><li>1 kg plums</li><li>800 g sugar</li></ul>"
        "<p>Boil the plums with the sugar in a wide pan until all of it</p><p>is thick.</p>"
        "</body></html>"
    )
    assert "is thick." in lines(page, "a.html")


def test_headings_within_a_part_are_called_so() -> None:
    found = lines(
        "Cake\n\nIngredients\nFor the dough:\n200 g flour\n2 eggs\nFor the icing:\n100 g sugar\n\n"
        "Method\nFor the dough:\n1. Mix flour and eggs.\n2. Bake it for an hour.\n"
        "For the icing:\n3. Stir the sugar with water.\n"
    )
    heads = [said for words, said in found.items() if words.startswith("For the icing")]
    assert heads
    assert set(heads) <= {"heads a part of what goes in", "heads a part of what you do"}


def test_what_stands_under_a_heading_below_the_recipe_is_called_so() -> None:
    found = lines(WRAPPED)
    assert found["A wide pan"] == "under “Equipment”, below the recipe"
    assert found["Equipment"] == "a heading below the recipe"


def test_title_and_yield_are_facts_among_several_drafts_too() -> None:
    """Their boxes bear the number of their draft there."""
    first, second = brought(
        "Sloe gin\nMakes 1 litre\n\n500 g sloes\n1 l gin\n\nPrick the sloes and cover them.\n\n"
        "Rosehip syrup\nMakes 2 bottles\n\n1 kg rosehips\n500 g sugar\n\nBoil and strain them.\n"
    )
    assert [one for one in first.came if one][:2] == ["Sloe gin", "Makes 1 litre"]
    assert [one for one in second.came if one][:2] == ["Rosehip syrup", "Makes 2 bottles"]


PAGE = """<html><head><title>Plum jam - Our shop</title></head><body>
<nav><ul><li><a href="/">Home</a></li><li><a href="/a">About me and the dog</a></li></ul></nav>
<main><h1>Plum jam</h1><ul><li>1 kg plums</li><li>800 g sugar</li></ul>
<ol><li>Boil the plums with the sugar until it sets, stirring all the while.</li>
<li>Fill the hot jars to the brim and shut them at once. Keep them cool and dark.</li></ol></main>
<div id="comments"><p>Ring me on 0123, says Tom.</p><p>Boil the plums</p></div>
<script>var hidden = "not seen";</script><footer>All rights kept</footer></body></html>"""


def test_what_a_page_shows_around_is_told_and_nothing_of_the_recipe() -> None:
    (recipe,) = brought(PAGE, name="a.html")
    assert recipe.around == (
        "Home",
        "About me and the dog",
        "Ring me on 0123, says Tom.",
        "All rights kept",
    )
    assert not set(recipe.around) & set(recipe.came)


def test_of_a_long_page_it_is_told_how_much_more_there_is() -> None:
    many = "".join(f"<p>Comment number {number}</p>" for number in range(MOST_AROUND + 5))
    (recipe,) = brought(PAGE.replace("<p>Ring", f"{many}<p>Ring"), name="a.html")
    assert len(recipe.around) == MOST_AROUND + 1
    assert recipe.around[-1] == "… 9 lines more"


def test_other_papers_have_nothing_around() -> None:
    (recipe,) = brought(WRAPPED)
    assert recipe.around == ()


@pytest.mark.parametrize(
    "sentence",
    [
        "Slowly add flour 1 cup at a time till it comes away from the bowl.",
        "Stir in flour until the dough pulls away from the sides of the pan.",
    ],
)
def test_what_comes_away_from_a_vessel_keeps_its_clause(sentence: str) -> None:
    """An open blog's shortbread: its flour was on no card, and nobody was asked."""
    (recipe,) = brought(f"Shortbread\n\n1 lb butter\n1 cup sugar\n\nMix both.\n{sentence}\nBake.\n")
    assert '"flour"' in " ".join(one.what for one in recipe.questions)


def test_a_pages_own_title_that_it_shows_stands_there_once() -> None:
    (recipe,) = brought(PAGE, name="a.html")
    assert recipe.came.count("Plum jam") == 1
