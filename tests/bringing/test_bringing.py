"""Recipes from texts, pages, letters and Word files: whole, in the book's form, and asked about."""

from __future__ import annotations

import json
import random
from pathlib import Path

import pytest
from click.testing import CliRunner

from bringing import papers
from bringing.drafts import one_of, read
from stillroom.bringing import bring, write_brought
from stillroom.cli import main
from stillroom.core.recipe.settings import BookSettings
from stillroom.core.words.problems import ProblemsFound

SETTINGS = BookSettings()
STATED = {
    "@context": "https://schema.org",
    "@graph": [
        {"@type": "WebPage", "name": "A page"},
        {
            "@type": ["Recipe"],
            "name": papers.TITLE,
            "description": "<p>My grandmother, who was a sailor, told me</p>",
            "author": {"@type": "Person", "name": "A. Writer"},
            "url": "https://damsons.example/cheese",
            "recipeYield": ["4", "4 jars of 200 ml"],
            "recipeIngredient": [*papers.LISTED, ""],
            "recipeInstructions": [
                {"@type": "HowToStep", "text": f"<b>{step}</b>"} for step in papers.STEPS
            ],
        },
    ],
}
MICRODATA = f"""<html><body><div itemscope itemtype="http://schema.org/Recipe">
<h1 itemprop="name">{papers.TITLE}</h1><meta itemprop="recipeYield" content="4 jars of 200 ml">
{"".join(f'<li itemprop="recipeIngredient">{row}</li>' for row in papers.LISTED)}
<div itemprop="recipeInstructions"><ol>{"".join(f"<li>{s}</li>" for s in papers.STEPS)}</ol></div>
<p>12 comments: lovely!</p></div></body></html>"""
SCRIPTED = f"<html><script type='application/ld+json'>{json.dumps(STATED)}</script></html>"
AS_SAVED = {
    "note.txt": papers.TEXT.encode(),
    "older.txt": papers.TEXT.replace("\n", "\r\n").encode("utf-16"),
    "note.md": papers.MARKDOWN.encode(),
    "page.html": papers.PAGE.encode(),
    "stated.html": SCRIPTED.encode(),
    "microdata.html": MICRODATA.encode(),
    "stated.json": json.dumps(STATED).encode(),
    "cheese.docx": papers.word(),
    "cheese.odt": papers.open_document(),
    "letter.eml": papers.LETTER.encode(),
}


@pytest.mark.parametrize("name", AS_SAVED)
def test_however_it_was_saved_it_is_the_same_recipe(name: str) -> None:
    brought = one_of(name, AS_SAVED[name])
    recipe = read(brought)
    assert brought.slug == "damson-cheese"
    assert recipe.title == papers.TITLE
    assert recipe.kind.name == "preserve"
    assert "\nmakes: 4 jars of 200 ml\n" in brought.text
    assert [one.item for one in recipe.ingredients] == [
        "damsons",
        "granulated sugar",
        "ground allspice",
    ]
    assert tuple(step.text for step in recipe.method) == papers.STEPS
    for other in ("about us", "other things", "comments", "sailor", "555", "Love", "gone", "<b>"):
        assert other not in brought.text
    assert "somebody@" not in brought.text


@pytest.mark.parametrize("name", AS_SAVED)
def test_lines_stay_as_they_were_written(name: str) -> None:
    text = one_of(name, AS_SAVED[name]).text
    for row in papers.LISTED:
        assert f"  - {row}\n" in text


def test_a_long_question_is_not_broken_off_within_a_word() -> None:
    listed = "500 g carrots\n500 ml olive oil\n6 cloves garlic\n500 g fresh basil"
    text = f"Carrot chutney\n\nMakes 2 jars of 250 ml\n\n{listed}\n\nBoil it. Fill hot jars.\n"
    asked = [row for row in one_of("note.txt", text.encode()).text.split("\n") if "# ?" in row]
    assert any(len(row) > 600 for row in asked)
    assert all(row.rstrip()[-1] in '.!?)…"' for row in asked)


def test_the_words_of_others_are_asked_about_and_their_source_is_named() -> None:
    brought = one_of("stated.json", AS_SAVED["stated.json"])
    assert "author: A. Writer\n" in brought.text
    assert "https://damsons.example/cheese" in brought.text
    (asked,) = brought.questions
    assert asked.what.startswith("The steps are the words of A. Writer.")
    assert "Their introduction was left out." in asked.what
    own = one_of("note.txt", AS_SAVED["note.txt"])
    assert own.questions == ()


def test_a_question_stands_in_the_draft_and_in_the_list_at_the_same_line() -> None:
    text = papers.TEXT.replace("Makes 4 jars of 200 ml\n", "").replace("allspice\n", "moonroot\n")
    brought = one_of("note.txt", text.encode())
    lines = brought.text.split("\n")
    asked = [(lines[one.line - 1].strip(), one.what) for one in brought.questions]
    assert ("makes:", "It does not say how much it makes.") in asked
    unknown = (
        '"ground moonroot" is not a food that this book knows: its allergens cannot be checked.'
    )
    assert ("- 1 tsp ground moonroot", unknown) in asked
    for one in brought.questions:
        assert f"# ? {one.what} {one.mend}"[:600] in lines
    with pytest.raises(ProblemsFound, match='"makes" is missing') as wrong:
        read(brought)
    assert {problem.line for problem in wrong.value.problems} <= {
        one.line for one in brought.questions
    }


def test_several_in_one_text_are_several() -> None:
    other = papers.TEXT.replace(papers.TITLE, "Quince jelly").replace("damsons", "quinces")
    found = bring("all.txt", f"{papers.TEXT}\n\n{other}\n{papers.TEXT}".encode(), SETTINGS)
    assert [one.title for one in found.recipes] == [papers.TITLE, "Quince jelly", papers.TITLE]
    assert [one.slug for one in found.recipes][-1] == "damson-cheese-2"
    assert "quince" not in found.recipes[0].text.lower()
    assert "damson" not in found.recipes[1].text.lower()


def test_an_ingredient_is_not_mistaken_for_figures_of_nutrition() -> None:
    rows = ("200g fat-free yogurt", "5 g protein powder")
    text = papers.MARKDOWN.replace("1 tsp ground allspice", "\n- ".join(rows))
    lines = one_of("a.md", text.encode()).text.split("\n")
    assert all(f"  - {row}" in lines for row in rows)


def test_mark_up_braces_and_colons_do_no_harm() -> None:
    text = papers.TEXT.replace("1 kg damsons", "Of the best: 1 kg <b>damsons</b> #3").replace(
        "Fill it", "Fill {it} ![x](http://elsewhere.example/x.png) <script>alert(1)</script>"
    )
    brought = one_of("note.txt", text.encode())
    assert "<" not in brought.text
    assert "elsewhere" not in brought.text
    assert "{" not in brought.text
    assert '"Of the best: 1 kg damsons #3"' in brought.text


def test_a_file_of_the_books_own_form_is_left_as_it_is() -> None:
    text = one_of("note.txt", AS_SAVED["note.txt"]).text
    again = one_of("damson-cheese.md", text.encode())
    assert again.text == text
    assert again.slug == "damson-cheese"


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"", "empty"),
        (b" \n\x00", "empty"),
        (b"%PDF-1.7 x", "PDF"),
        (b"\x89PNG\r\n", "picture"),
        (b"{\\rtf1 x}", "word processor"),
        (b"\xd0\xcf\x11\xe0xx", "older word processor"),
        (b'{"name": "no recipe"}', "states no recipe"),
        (b"PK\x03\x04broken", "broken"),
        (papers.packed({"a.txt": "x"}), "packed file"),
        (papers.packed({"content.xml": '<!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>'}), "makes up"),
        (papers.packed({"word/document.xml": " " * 30_000_000}), "more than 20 MB"),
        (papers.packed({"content.xml": "<a>" * 50_000}), "broken"),
        (b"Good morning. How are you? I am well, thank you.", "No recipe"),
        (bytes(range(32)) * 40, "no text"),
        (b"a" * 1_500_000, "longer than a cookery book"),
    ],
)
def test_what_holds_no_recipe_is_told_plainly(data: bytes, says: str) -> None:
    found = bring("x", data, SETTINGS)
    if "No recipe" in says and found.recipes:
        assert any("No list of ingredients" in one.what for one in found.recipes[0].questions)
        return
    assert found.recipes == ()
    assert says in found.problems[0].what


def test_no_bytes_raise() -> None:
    chance = random.Random(7)
    signs = (
        b"{",
        b"<",
        b"---\n",
        b"\n\n",
        b"# ",
        b'"',
        b": ",
        b"\x00",
        b"\xff",
        b"Method\n",
        b"1 ",
    )
    for _ in range(150):
        name, data = chance.choice([*AS_SAVED.items()])
        mangled = bytearray(data)
        for _ in range(chance.randint(1, 25)):
            at = chance.randrange(len(mangled) + 1)
            if chance.random() < 0.5:
                mangled[at : at + chance.randint(0, 30)] = b""
            else:
                mangled[at:at] = chance.choice(signs)
        found = bring(chance.choice([name, "a.eml", "a.txt"]), bytes(mangled), SETTINGS)
        assert found.recipes or found.problems


def test_the_command_writes_drafts_and_never_over_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "note.txt").write_bytes(AS_SAVED["note.txt"])
    (tmp_path / "picture.pdf").write_bytes(b"%PDF-1.7")
    for _ in range(2):
        done = CliRunner().invoke(main, ["bring", "note.txt", "picture.pdf"])
        assert done.exit_code == 1, done.output
        assert "This is a PDF." in done.output
    drafts = sorted(path.name for path in (tmp_path / "drafts").iterdir())
    assert drafts == ["damson-cheese-2.md", "damson-cheese.md"]
    checked = CliRunner().invoke(main, ["check", "drafts/damson-cheese.md"])
    assert checked.exit_code == 0, checked.output


def test_drafts_are_written_where_nothing_lies(tmp_path: Path) -> None:
    (tmp_path / "damson-cheese.md").write_text("mine", encoding="utf-8")
    (path,) = write_brought(bring("a.txt", AS_SAVED["note.txt"], SETTINGS), tmp_path)
    assert path.name == "damson-cheese-2.md"
    assert (tmp_path / "damson-cheese.md").read_text(encoding="utf-8") == "mine"


LETTER_TO_ONE = """Dear Ann,

It was lovely to see you, and the boys have grown so! Here is what you asked for.

Plum jam

1 kg plums
800 g sugar

Cook the plums soft, add the sugar and boil it until it sets.

Love to everyone, do write soon,
Beth
"""


def test_small_talk_of_a_letter_is_left_out_and_that_is_said() -> None:
    found = one_of("letter.txt", LETTER_TO_ONE.encode())
    assert "boys" not in found.text
    assert "written to one person" in found.text
    mail = f"From: b@x.example\nTo: a@x.example\nSubject: Jam\n\n{LETTER_TO_ONE}"
    brought = one_of("letter.eml", mail.encode())
    assert "boys" not in brought.text
    assert "Beth\n" not in brought.text.partition("## Source")[0]
    assert "do write" not in brought.text
    assert "1. Cook the plums" in brought.text


def test_the_facts_of_a_card_are_none_of_its_words() -> None:
    text = (
        "Cocoa mix\n\nCourse Beverage, Gift\nCuisine American\nPrep Time 15 minutes\n"
        "Servings 1 jar (makes 12 servings)\nCalories 135 kcal\n\nIngredients\n- 1 cup sugar\n"
        "- 1 cup cocoa\n\nInstructions\n1. Mix.\n"
    )
    found = one_of("a.txt", text.encode()).text
    assert "\nmakes: 1 jar\n" in found
    assert "Prep Time" not in found
    assert "Calories" not in found


LETTER = """From: Sophie Vane <sophie@vane.example>
To: me@house.example
Subject: Farley's biscuits

> could I have the recipe?

{above}
3 cups whole wheat flour
2 cups oats
1 + 1/4 cups water
1/2 tsp salt (garlic is not recommended for dogs)

Preheat the oven to 275 degrees F.
Mix all and bake it until it is hard.
See you Saturday
Sophie
"""


@pytest.mark.parametrize("above", ["Hi Ann,\n", "Here it is.\n"])
def test_of_a_letter_only_the_recipe_is_kept(above: str) -> None:
    draft = one_of("letter.eml", LETTER.format(above=above).encode())
    for left_out in ("could I have", "Hi Ann", "See you Saturday", "1. Sophie"):
        assert left_out not in draft.text, left_out
    assert "1 + 1/4 cups water" in draft.text
    assert "until it is hard" in draft.text
    said = [one.what for one in draft.questions]
    assert not any("Two things" in one for one in said)
    assert "kind: pet treat" in draft.text
    assert any("for dogs" in one for one in said)


def test_a_letter_that_tells_its_list_in_a_sentence_greets_nobody() -> None:
    text = (
        "Hello Mavis,\n\nMy sister grew far too many tomatoes:\n\n4 lb green tomatoes, "
        "2 lb cooking apples, 1/2 lb onions, 1 tbsp salt.\n\nChop all roughly and cook it "
        "slowly in a low oven. Pot up your chutney and seal it.\n"
    )
    draft = one_of("a.txt", text.encode())
    assert "Mavis" not in draft.text
    assert "kind: chutney" in draft.text
    assert any("Pot up your chutney" in one.what for one in draft.questions)
