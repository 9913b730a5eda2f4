"""Notes as they are typed into a telephone, old books' titles with a stop, and letters of nothing.

The notes' shape is of a page of notes on a telephone (short lines, no heads, no stops), the words
are our own; the titles and first words of the old page stand in a cookery book of 1851 (Widdifield,
open text), shortened; the row of heads is that of recipes passed on by mail in the nineties.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps
from stillroom.bringing import bring
from stillroom.bringing.found import Row
from stillroom.bringing.typed_notes import with_notes_told
from stillroom.core.larder.shelves import Larder
from stillroom.core.recipe.settings import BookSettings

GIN = (["500g damsons", "250g sugar", "70cl gin"], ["Prick them and put all in a jar"])
OIL = (
    ["300ml oil", "2 tbsp chilli flakes"],
    ["Warm oil gently with the flakes", "Cool and strain"],
)


def test_two_short_notes_are_two_recipes_and_work_is_no_food() -> None:
    told = [*GIN[1], "Shake daily till the sugar is gone", "Leave 3 months", "Strain and bottle"]
    gin = "\n".join(["Damson gin", *GIN[0], *told])
    oil = "\n".join(["Chilli oil", *OIL[0], *OIL[1]])
    first, second = brought(f"{gin}\n\n{oil}\n")
    assert (fact(first, "title"), listed(first), steps(first)) == ("Damson gin", GIN[0], told)
    assert (fact(second, "title"), listed(second), steps(second)) == ("Chilli oil", *OIL)
    assert "Equipment" not in first.text + second.text


@pytest.mark.parametrize(
    ("language", "title", "things", "told"),
    [
        (
            "de_DE",
            "Zimtsterne",
            ["300 g Mandeln", "3 Eiweiß", "Zimt"],
            ["Eiweiß steif schlagen", "Mandeln unterheben", "150 Grad 15 min backen"],
        ),
        (
            "fr_FR",
            "Sirop de menthe",
            ["1 l eau", "1 kg sucre", "50 g menthe"],
            ["faire bouillir eau + sucre", "verser sur la menthe", "laisser infuser 24 h"],
        ),
        (
            "en_GB",
            "Christmas salt",
            ["200g sea salt", "rosemary", "lemon zest"],
            ["mix well", "dry in oven at 60C 1 hr"],
        ),
    ],
)
def test_notes_are_told_by_their_words_of_work(
    language: str, title: str, things: list[str], told: list[str]
) -> None:
    (one,) = brought("\n".join([title, *things, *told]), language)
    assert (fact(one, "title"), listed(one), steps(one)) == (title, things, told)


def test_what_a_note_says_in_no_known_words_is_asked_about() -> None:
    (one,) = brought("\n".join(["Damson gin", *GIN[0], *GIN[1], "keeps yrs"]))
    assert '"keeps yrs"' in asked(one)
    assert "keeps yrs" in steps(one)


def test_lines_that_a_machine_broke_off_are_no_notes() -> None:
    broken = [
        "Wash and trim the plums. Cut them into pieces. Put the plums, water",
        "and sugar into a saucepan and bring to a boil. Let it cool in the",
        "pan, then boil it again.",
    ]
    (one,) = brought("\n".join(["Plum jam", "1 kg plums", "800 g sugar", "", *broken]))
    assert len(steps(one)) == 1


OLD = [
    ("Spruce Beer.", "Boil some spruce boughs with wheat bran; strain it, put two\n"
     "quarts of molasses to half a barrel; when it is nearly cold, put in half a pint of yeast."),
    ("To Make Two Gallons of Beer.", "Put two pounds of brown sugar in a jug, with a pint of\n"
     "strong hop tea; pour in a gallon and a half of warm water, and leave out the cork a day."),
]  # fmt: skip


@pytest.mark.parametrize("indent", ["", "      "])
def test_titles_with_a_stop_begin_recipes_of_their_own(indent: str) -> None:
    page = "page 152\n\n" + "\n\n".join(f"{indent}{title}\n{said}" for title, said in OLD)
    first, second = brought(page)
    assert [fact(one, "title") for one in (first, second)] == ["Spruce Beer", "Two Gallons of Beer"]
    assert (len(steps(first)), len(steps(second))) == (1, 1)
    assert "152" not in first.text + second.text


def test_a_short_sentence_is_no_old_title() -> None:
    said = "Put two pounds of sugar into a pan with a quart of water, and boil it for an hour."
    (one,) = brought(f"Syrup\n\n{said}\n\nStrain and bottle.\n\n{said}\n\nCool it well.\n\n{said}")
    assert "Strain and bottle." in steps(one)


@pytest.mark.parametrize(
    "head",
    [
        "Amount  Measure       Ingredient -- Preparation Method",
        "Amount   Ingredient",
        "Menge   Zutat",
    ],
)
def test_heads_of_typed_columns_are_no_words_of_the_recipe(head: str) -> None:
    columns = "  4      pounds  rhubarb\n  3      pounds  sugar\n"
    (one,) = brought(
        f"Rhubarb Preserves\n\n{head}\n--------\n{columns}\nBoil it.\n\nPour it into jars.\n"
    )
    assert fact(one, "title") == "Rhubarb Preserves"
    assert [word for word in head.split()[:2] if word in one.text] == []


@pytest.mark.parametrize("name", ["a.eml", "a.txt"])
@pytest.mark.parametrize(
    "body",
    ["Hi Al,\n\nsee attached!\n\nJo\n", "Hi Al,\n", "Hi Al\n\nOn Mon, Jo wrote:\n> hello\n"],
)
def test_a_letter_of_greetings_alone_is_told_in_a_sentence(name: str, body: str) -> None:
    head = "From: Jo <jo@x.example>\nTo: Al <al@x.example>\nSubject: sugar\n\n"
    found = bring(name, f"{head}{body}".encode(), BookSettings(), Larder())
    assert not found.recipes
    assert [one.what for one in found.problems] == ["No recipe was found in it."]


def test_a_page_of_a_greeting_alone_is_told_in_a_sentence() -> None:
    page = b"<html><body><div><p>Hi</p></div></body></html>"
    found = bring("a.html", page, BookSettings(), Larder())
    assert (found.recipes, len(found.problems)) == ((), 1)


def test_a_title_with_a_colon_stands_in_quotes() -> None:
    (one,) = brought("# Sweets: quince paste\n\n## Ingredients\n\n- 1 kg quinces\n- 1 kg sugar\n")
    assert fact(one, "title") == '"Sweets: quince paste"'


@pytest.mark.parametrize(
    ("done", "told"),
    [
        (["shake daily", "strain it"], ["shake daily", "strain it"]),
        (["shake daily,", "strain it"], ["shake daily, strain it"]),
        (["shake daily.", "strain it"], []),  # sentences: no notes
        (["shake daily", "250g sugar", "strain it"], []),  # a thing amid the work
    ],
)
def test_notes_end_where_sentences_or_a_second_list_begin(done: list[str], told: list[str]) -> None:
    rows = [Row(one) for one in ("damson gin", "500g damsons", "70cl gin", *done)]
    found = with_notes_told(rows)
    assert [row.text for row in found if row.shape == "step"] == told
    assert told or found == rows
