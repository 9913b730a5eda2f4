"""Recipes from texts, pages, letters and Word files: whole, in the book's form, and asked about."""

from __future__ import annotations

import json
import random
import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from bringing import papers
from stillroom.bringing import BroughtRecipe, bring, write_brought
from stillroom.cli import main
from stillroom.core.reading.recipe_file import read_recipe
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


def one_of(name: str, data: bytes) -> BroughtRecipe:
    found = bring(name, data, SETTINGS)
    assert found.problems == ()
    (recipe,) = found.recipes
    return recipe


def read(brought: BroughtRecipe):
    return read_recipe(brought.text, "x.md", brought.slug)


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


@pytest.mark.parametrize(
    ("said", "writer", "makes"),
    [
        ("From the Sunday paper. Makes 3 or 4 jars.", "the Sunday paper", "3 or 4 jars"),
        ("By Aunt May. Serves 4.", "Aunt May", "4 servings"),
        ("From Gran, makes 6 jars", "Gran", "6 jars"),
        ("Submitted by Ann! Makes 6 jars.", "Ann", "6 jars"),
        ("From my neighbour - makes 6 jars", "my neighbour", "6 jars"),
        ("By Mrs. J. Smith", "Mrs. J. Smith", ""),
        ("From the kitchen of May Finch", "May Finch", ""),
    ],
)
def test_whose_it_is_and_how_much_may_stand_on_one_line(said: str, writer: str, makes: str) -> None:
    text = (
        f"Beetroot relish\n\n{said}\n\n1 kg beetroot\n300 ml malt vinegar\n\nBoil it. Fill jars.\n"
    )
    draft = one_of("note.txt", text.encode()).text
    assert ("\nauthor:" in draft) == bool(writer)
    assert f"\nauthor: {writer}\n" in draft or not writer
    assert f"\nmakes: {makes}".rstrip(" ") + "\n" in draft
    assert said in draft or writer


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


@pytest.mark.parametrize(
    ("title", "kind"),
    [
        ("Dark chocolate fudge with nuts", "kind: chocolate fudge\n"),
        ("Jam doughnuts", "kind: doughnut\n"),
        ("How to make marmalade of quinces", "kind: marmalade\n"),
        ("Gherkin pickle", "kind:\n"),
        ("Cookie mix in a jar", "kind: cookie mix\n"),
        ("Grandmother's best", None),
        ("Quick and easy marmalade", "kind: marmalade\n"),
        ("Rhubarb and ginger jam", "kind: jam\n"),
    ],
)
def test_a_kind_is_taken_from_the_title_or_asked(title: str, kind: str | None) -> None:
    brought = one_of("note.txt", papers.TEXT.replace(papers.TITLE, title).encode())
    asked = [one for one in brought.questions if "kind" in one.what]
    if kind is None or kind == "kind:\n":
        assert asked
    if kind and "fudge" not in kind:
        assert kind in brought.text


def test_several_in_one_text_are_several() -> None:
    other = papers.TEXT.replace(papers.TITLE, "Quince jelly").replace("damsons", "quinces")
    found = bring("all.txt", f"{papers.TEXT}\n\n{other}\n{papers.TEXT}".encode(), SETTINGS)
    assert [one.title for one in found.recipes] == [papers.TITLE, "Quince jelly", papers.TITLE]
    assert [one.slug for one in found.recipes][-1] == "damson-cheese-2"
    assert "quince" not in found.recipes[0].text.lower()
    assert "damson" not in found.recipes[1].text.lower()


def test_american_measures_are_asked_about() -> None:
    text = papers.TEXT.replace("1 kg damsons", "4 cups damsons")
    (asked,) = one_of("note.txt", text.encode()).questions
    assert asked.what.startswith('"cups" is read as')


def test_more_amounts_amid_the_method_are_asked_about_and_not_lost() -> None:
    text = f"{papers.TEXT}\n50 g walnuts\n1 tsp rum\n"
    brought = one_of("note.txt", text.encode())
    assert "  - 50 g walnuts\n" in brought.text
    assert any("More amounts stand amid the method" in one.what for one in brought.questions)


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


@pytest.mark.parametrize(
    ("line", "things"),
    [
        ("1 tbsp salt; 1kg sugar", ["1 tbsp salt", "1kg sugar"]),
        ("1 kg sugar + 2 tsp vanilla", ["1 kg sugar", "2 tsp vanilla"]),
        ("1 kg plums, 1 lemon, 2 kg sugar", ["1 kg plums", "1 lemon", "2 kg sugar"]),
        ("1 cup + 2 tbsp sugar", ["1 cup + 2 tbsp sugar"]),
        ("1 kg figs, 600 g sugar", ["1 kg figs", "600 g sugar"]),
        ("1 kg plums | 1 lemon | 800 g sugar", ["1 kg plums", "1 lemon", "800 g sugar"]),
        ("1 kg plums, 900 g stoned weight", ["1 kg plums, 900 g stoned weight"]),
        ("500 g plums, 50 g of them unripe, stoned", ["500 g plums, 50 g of them unripe, stoned"]),
        ("700 ml gin, 40% vol, 1 bottle", ["700 ml gin, 40% vol, 1 bottle"]),
        ("2 tins (400 g, 1 large, 1 small) beans", ["2 tins (400 g, 1 large, 1 small) beans"]),
    ],
)
def test_several_things_on_a_line_are_parted_where_it_is_certain(
    line: str, things: list[str]
) -> None:
    found = one_of("a.txt", f"Plum jam\n\n{line}\n2 cloves\n\nMethod\n\nBoil it all.\n".encode())
    listed = found.text.partition("ingredients:\n")[2].partition("\n---")[0]
    rows = [row.strip().removeprefix("- ").strip('"') for row in listed.splitlines()]
    assert [row for row in rows if not row.startswith("# ?")] == [*things, "2 cloves"]
    assert "stood on one line" not in found.text  # nobody needs to be asked of what is certain


def test_german_makes_and_steps_are_no_ingredients() -> None:
    text = (
        "Quittenlikör\nfür ca. 1 Liter\n500g Quitten\n1 Zimtstange\n700ml Korn (32 Vol-%)\n\n"
        "Zitrone heiß abwaschen.\nSchale dünn abschälen, Saft auspressen.\n"
    )
    found = bring("a.txt", text.encode(), BookSettings(language="de_DE", country="DE"))
    (recipe,) = found.recipes
    assert "makes: about 1 Liter" in recipe.text
    assert "- Schale" not in recipe.text
    assert "kind: liqueur" in recipe.text


@pytest.mark.parametrize(
    ("first", "title"),
    [
        ("My recipe for sloe gin:", "Sloe gin"),
        ("For sloe gin you will need:", "Sloe gin"),
        ("To make sloe gin, you'll need", "Sloe gin"),
        ("Rezept für Schlehenlikör", "Schlehenlikör"),
    ],
)
def test_a_sentence_may_name_what_is_made(first: str, title: str) -> None:
    found = one_of("a.txt", f"{first}\n\n450 g sloes\n1 litre gin\n\nPrick and steep.\n".encode())
    assert found.title == title
    assert "- 450 g sloes\n  - 1 litre gin\n---" in found.text


def test_no_amount_is_lost_to_what_stands_in_brackets_behind_it() -> None:
    text = (
        "Herb vinegar\n\n1 gallon of vinegar, plain\n"
        "8 cups of whole clean herbs (your choice... today I used sage, but thyme, dill and basil "
        "are also good).\n32 peeled garlic cloves\n\nPut all in jars and wait for four weeks.\n"
    )
    found = one_of("a.txt", text.encode())
    assert "- 1 gallon of vinegar, plain\n" in found.text
    assert "- 8 cups of whole clean herbs (your choice" in found.text
    assert "- 32 peeled garlic cloves\n" in found.text


@pytest.mark.parametrize(
    "head",
    [
        "Step-by-Step Instructions",
        "Zubereitung der Plätzchen:",
        "How I make it",
        "Method of making",
    ],
)
def test_a_method_is_known_by_other_heads(head: str) -> None:
    text = f"Plum jam\n\nIngredients\n1 kg plums\n1 kg sugar\n{head}\n1. Boil the plums.\n"
    found = one_of("a.txt", text.encode())
    assert f"- {head}" not in found.text
    assert "1. Boil the plums." in found.text
    assert head.rstrip(":") not in found.text.partition("## Method")[2]


def test_a_part_of_a_list_is_headed_without_a_colon() -> None:
    text = (
        "Iced biscuits\n\nIngredients\nFor the dough\n100 g flour\n50 g butter\n\n"
        "For the icing\n\n100 g icing sugar\n\nMethod\n1. Bake and ice them.\n"
    )
    found = one_of("a.txt", text.encode())
    listed = found.text.partition("ingredients:\n")[2].partition("---")[0]
    assert "- For the dough:\n    - 100 g flour\n" in listed
    assert "- For the icing:\n    - 100 g icing sugar\n" in listed


def test_tools_above_a_list_the_day_of_a_post_and_a_method_above_its_list() -> None:
    text = (
        "Saturday, December 16, 2017\n\nPlum jam\n\nYou will need: standard jars and discs\n"
        "A large bowl\nIngredients for around 4 jars:\n1 kg plums\n1 kg sugar\n\nMethod\n1. Boil.\n"
    )
    found = one_of("a.txt", text.encode())
    assert found.title == "Plum jam"
    assert "makes: around 4 jars\n" in found.text
    listed = found.text.partition("ingredients:\n")[2].partition("---")[0]
    assert [row for row in listed.splitlines() if "# ?" not in row] == [
        "  - 1 kg plums",
        "  - 1 kg sugar",
    ]
    assert "## Equipment\n\nstandard jars and discs" in found.text
    turned = one_of(
        "b.txt",
        b"Fudge\n\nMethod\nMelt the butter.\nBoil it.\nIngredients\n200 g butter\n1 kg sugar\n",
    )
    assert "1. Melt the butter.\n2. Boil it.\n" in turned.text
    assert "- 200 g butter\n  - 1 kg sugar\n" in turned.text


def test_a_sign_that_was_lost_is_asked_about_and_never_left_out() -> None:
    text = "Plum jam\n\n\ufffd kg plums\n1 kg sugar\n\nMethod\n1. Boil them.\n"
    found = one_of("a.txt", text.encode())
    assert any("was lost when it was saved" in one.what for one in found.questions)


def test_who_types_without_capitals_and_full_stops_begins_each_step_on_a_line() -> None:
    text = (
        "Plum jam\n\nPlums 2lb\nSugar: 1 3/4 lb\n\nput plums in pan w/ a splash of water\n"
        "simmer till soft, abt 20 mins\nAdd the sugar\nboil hard till it sets,\n"
        "and pot it\nmakes about 5 pots, keeps a year\n"
    )
    found = one_of("a.txt", text.encode())
    assert "- Plums 2lb\n" in found.text.replace('"', "")
    assert "makes: about 5 pots\n" in found.text
    steps = found.text.partition("## Method\n\n")[2].partition("\n\n")[0].splitlines()
    assert [step.partition(". ")[2] for step in steps] == [
        "put plums in pan w/ a splash of water",
        "simmer till soft, abt 20 mins",
        "Add the sugar",
        "boil hard till it sets, and pot it",
    ]


@pytest.mark.parametrize(
    ("line", "makes", "kept"),
    [
        ("Makes 4 pots. Keeps 2 weeks in a tin.", "4 pots", "Keeps 2 weeks in a tin."),
        ("Makes 4 pots, which keep for a year", "4 pots", "Keep for a year."),
        ("Makes 4 pots. Keep in the fridge!", "4 pots", "Keep in the fridge."),
        ("Makes 4 pots | Prep time 10 min | Cook time 1 h", "4 pots", ""),
        ("Makes 4 (8 ounce) jars", "4 (8 ounce) jars", ""),
    ],
)
@pytest.mark.parametrize("below", [False, True])
def test_what_is_said_beside_how_much_it_makes_is_kept(
    line: str, makes: str, kept: str, below: bool
) -> None:
    above, behind = ("", f"\n{line}\n") if below else (f"{line}\n", "")
    text = f"Plum jam\n{above}\n1 kg plums\n1 kg sugar\n\nMethod\n1. Boil them.\n{behind}"
    found = one_of("a.txt", text.encode())
    assert f"makes: {makes}\n" in found.text.replace('"', "")
    beside = found.text.replace("1. Boil them.", "").partition("\n---\n\n")[2]
    words = [row for row in beside.splitlines() if row and not row.startswith(("#", "Brought"))]
    assert words == ([kept] if kept else [])
    asked = any("How long it keeps may stand here" in one.what for one in found.questions)
    assert asked == ("week" in kept or "year" in kept)


def test_what_a_page_says_of_keeping_stays_when_its_introduction_goes() -> None:
    page = (
        "<h1>Plum jam</h1><p>A long story.</p><p>Makes 4 jars. Eat it within 2 weeks.</p>"
        "<h2>Ingredients</h2><ul><li>1 kg plums</li><li>1 kg sugar</li></ul>"
        "<h2>Method</h2><ol><li>Boil them.</li></ol><p>Tip: use a wide pan.</p>"
        "<h2>Notes</h2><p>Lovely on toast.</p>"
    )
    found = one_of("a.html", page.encode())
    assert found.text.count("## Notes") == 1
    assert "Eat it within 2 weeks.\n\nUse a wide pan.\n\nLovely on toast.\n" in found.text
    assert "story" not in found.text
    assert any('write "keeps: 2 weeks unopened"' in one.mend for one in found.questions)


def steps_of(text: str) -> list[str]:
    return re.findall(r"^\d+\. (.*)$", text.partition("## Method")[2], re.MULTILINE)


LIST = "Plum jam\n\n1 kg plums\n1 kg sugar\n\n"


@pytest.mark.parametrize(
    "method",
    [
        "Method\n1 Stone the plums\n2 Boil them hard\n3 Fill the jars\n",
        "Method\nA) Stone the plums\nB) Boil them hard\nC) Fill the jars\n",
        "Method\nStep one: Stone the plums\nStep two: Boil them hard\nStep three: Fill the jars\n",
        "Method\n1.\nStone the\nplums\n2.\nBoil them hard\n3.\nFill the jars\n",
        "Method\n-Stone the plums\n-Boil them hard\n-Fill the jars\n",
        "Method Plum jam:\n- Stone the plums\n- Boil them hard\n- Fill the jars\n",
    ],
)
def test_steps_are_told_apart_however_they_are_numbered(method: str) -> None:
    found = one_of("a.txt", f"{LIST}{method}".encode())
    assert steps_of(found.text) == ["Stone the plums", "Boil them hard", "Fill the jars"]
    assert "- 1 kg sugar\n---" in found.text.replace('"', "")


def test_a_step_that_begins_with_a_count_keeps_it() -> None:
    text = (
        f"{LIST}Method\nStone the plums.\n2 jars are warmed in the oven for ten minutes.\nFill.\n"
    )
    assert "2 jars are warmed in the oven for ten minutes." in steps_of(
        one_of("a.txt", text.encode()).text
    )


@pytest.mark.parametrize(
    ("above", "title", "makes"),
    [
        ("Zutaten für Quittengelee:", "Quittengelee", ""),
        ("Ingredients for the icing:", "", ""),
        ("Per 5 vasetti da 320 g circa", "", "5 vasetti da 320 g circa"),
        ("Pour environs 5 pots de 500g :", "", "about 5 pots de 500g"),
        ("Wat hebben we nodig? (voor 2 flessen van 700 ml)", "", "2 flessen van 700 ml"),
        ("November 18, 2020 | 10:28am", "", ""),
    ],
)
def test_a_day_or_a_quantity_is_no_title(above: str, title: str, makes: str) -> None:
    text = f"{above}\n- 1 kg Quitten\n- 1 kg Zucker\n- 1 Zitrone\n\nAlles kochen und abfüllen.\n"
    found = one_of("a.txt", text.encode())
    assert (f"title: {title}" if title else "title:") in found.text.splitlines()
    assert (f"makes: {makes}" if makes else "makes:") in found.text.splitlines()


def test_amounts_in_words_of_another_language_begin_a_list() -> None:
    text = (
        "Licor de naranja\nMedio litro de aguardiente\nCáscaras de dos naranjas\n"
        "Dos clavos de olor\nPreparación. Lavamos las naranjas con agua y las secamos bien.\n"
    )
    found = one_of("a.txt", text.encode())
    listed = found.text.partition("ingredients:\n")[2].partition("\n---")[0]
    assert [row.strip() for row in listed.splitlines() if "# ?" not in row] == [
        "- Medio litro de aguardiente",
        "- Cáscaras de dos naranjas",
        "- Dos clavos de olor",
    ]
    assert steps_of(found.text) == ["Lavamos las naranjas con agua y las secamos bien."]


def test_tools_behind_the_list_are_no_food() -> None:
    text = (
        "Plum jam\n\nIngredients\n- 1 kg plums\n- 1 kg sugar\nEquipment\n- 6 x 250ml jars\n"
        "- Large saucepan\nInstructions\n1. Boil it all.\n"
    )
    found = one_of("a.txt", text.encode())
    assert "saucepan" not in found.text.partition("ingredients:")[2].partition("\n---")[0]
    assert "## Equipment\n\n6 x 250ml jars\n\nLarge saucepan" in found.text


@pytest.mark.parametrize(
    ("line", "makes"),
    [
        ("Makes 1.75 litres ( 3pints)", "1.75 litres ( 3pints)"),
        ("{Serves 1}", ""),
        ("{Serves 2}", "2 servings"),
        ("Pour : 3 litres", "3 litres"),
        ("PORZIONI: 8-10 PERSONE", "8-10 PERSONE"),
        ("4 personnes", "4 personnes"),
        ("Für ca. 30 Stück", "about 30 Stück"),
        ("5.0/5", ""),
    ],
)
def test_how_much_it_makes_is_read_to_its_end(line: str, makes: str) -> None:
    text = f"Plum jam\n\n{line}\n\n1 kg plums\n1 kg sugar\n\nMethod\n1. Boil them.\n"
    found = one_of("a.txt", text.encode())
    assert (f"makes: {makes}" if makes else "makes:") in found.text.replace('"', "").splitlines()
    assert "## Notes" not in found.text


def test_amounts_on_a_line_above_their_foods_and_times_between_are_told_apart() -> None:
    text = (
        "Vin d'orange\nTemps total\n21 jours 20 min\nCuisson\n0 min\nVotre avis\n5.0/5.0\n\n"
        "Ingrédients\n\n4 personnes\n2 pièce\nOrange\n50 g\nSucre\n250 ml\nVin blanc\n\n"
        "Préparation\n1. Laissez macérer 21 jours.\n"
    )
    found = one_of("a.txt", text.encode())
    listed = found.text.partition("ingredients:\n")[2].partition("\n---")[0]
    rows = [row.strip().strip('"') for row in listed.splitlines() if "# ?" not in row]
    assert rows == ["- 2 pièce Orange", "- 50 g Sucre", "- 250 ml Vin blanc"]
    assert "makes: 4 personnes" in found.text


def test_a_method_behind_the_tools_is_the_method() -> None:
    text = (
        "Mead\n\nIngredients:\n- 3lbs of honey\n- yeast\n\nEquipment:\n- a boiler\n- airlock\n\n"
        "Firstly, bring one gallon of water to a boil.\nLet it ferment for about a month or so.\n"
    )
    found = one_of("a.txt", text.encode())
    assert len(steps_of(found.text)) == 2
    assert "## Equipment\n\na boiler\n\nairlock\n" in found.text


@pytest.mark.parametrize(
    ("written", "title"),
    [
        ("Rezept Vanillekipferl", "Vanillekipferl"),
        ("Recette de confiture de figues", "Confiture de figues"),
        ("How to make sloe gin – a step by step guide", "Sloe gin"),
        ("How to make your own elderflower cordial", "Elderflower cordial"),
        ("Rezeptbuchkekse", "Rezeptbuchkekse"),
        ("Guide biscuits", "Guide biscuits"),
    ],
)
def test_a_title_is_what_is_made_and_no_more(written: str, title: str) -> None:
    text = f"{written}\n\n1 kg plums\n1 kg sugar\n\nMethod\n1. Boil them.\n"
    assert one_of("a.txt", text.encode()).title == title


def test_things_one_after_the_other_on_a_line_are_parted_by_their_measures() -> None:
    text = "Kipferl\n\n60 g Mandeln 100 g Butter 45 g Puderzucker\n140 g Mehl\n\nAlles kneten.\n"
    found = one_of("a.txt", text.encode())
    for thing in ("60 g Mandeln", "100 g Butter", "45 g Puderzucker", "140 g Mehl"):
        assert f"- {thing}\n" in found.text


@pytest.mark.parametrize(
    ("told", "things", "makes", "steps"),
    [
        (
            "You will need 20 lemons, 3 quarts of rum, 3 lb of sugar and two nutmegs. Steep them.",
            ["20 lemons", "3 quarts of rum", "3 lb of sugar", "two nutmegs"],
            "",
            ["Steep them.", "Strain it after a day."],
        ),
        (
            "Piccalilly voor 3 potten: 1 kilo groente (wortel, ui); 25 g gember; 60 g suiker",
            ["1 kilo groente (wortel, ui)", "25 g gember", "60 g suiker"],
            "3 potten",
            ["Strain it after a day."],
        ),
    ],
)
def test_a_list_told_in_a_sentence_is_one(
    told: str, things: list[str], makes: str, steps: list[str]
) -> None:
    found = one_of("a.txt", f"{told}\n\nStrain it after a day.\n".encode())
    listed = found.text.partition("ingredients:\n")[2].partition("\n---")[0]
    rows = [row.strip().strip('"') for row in listed.splitlines() if "# ?" not in row]
    assert rows == [f"- {thing}" for thing in things]
    assert (f"makes: {makes}" if makes else "makes:") in found.text.splitlines()
    assert steps_of(found.text) == steps
    assert "told in one sentence" in found.text


def test_a_sentence_that_only_names_numbers_is_no_list() -> None:
    text = "Plum jam\n\nBoil it: 20 minutes, 30 minutes or 40 minutes, as you like it.\n"
    assert "No list of ingredients was found" in one_of("a.txt", text.encode()).text


def test_how_much_is_no_title_and_times_are_no_steps() -> None:
    text = (
        "Zelf piccalilly maken\n\nRecept voor ongeveer 2 liter piccalilly\n\nIngredienten\n"
        "100 gram suiker\n15 grams mustard or turmeric of the best that you have.\n\n"
        "Details\nTotale tijd: 90 minuten\n\nBereiding\nKook alles.\n"
    )
    found = one_of("a.txt", text.encode())
    assert found.title == "Zelf piccalilly maken"
    assert "makes: ongeveer 2 liter piccalilly" in found.text
    assert "15 grams mustard" in found.text.partition("ingredients:")[2].partition("\n---")[0]
    assert steps_of(found.text) == ["Kook alles."]


def test_the_time_of_a_method_is_no_step_of_it() -> None:
    text = (
        "Eierlikör\n- Zubereitung: 15 Min\n- 250 g Puderzucker\n- 8 Eigelb\n"
        "Zubereitung\nAlles rühren.\n"
    )
    assert steps_of(one_of("a.txt", text.encode()).text) == ["Alles rühren."]


def test_what_is_gathered_to_work_with_is_no_food() -> None:
    text = (
        "Soap\nINGREDIENTS\n500 grams olive oil\n63 grams caustic soda\nGATHER YOUR UTENSILS:\n"
        "A jug\nA large bowl\nMETHOD\nWeigh the water.\n"
    )
    found = one_of("a.txt", text.encode())
    assert "jug" not in found.text.partition("ingredients:")[2].partition("\n---")[0]
    assert "A large bowl" in found.text.partition("\n---\n")[2]


def test_times_beside_a_recipe_are_neither_its_title_nor_its_food_nor_its_steps() -> None:
    text = (
        "Liqueur de cassis\n\nMacération : 15 jours + un mois\n\nIngrédients\n"
        "pour deux litres de liqueur\n500 g de cassis\n400 g de sucre\n\nMatériels\nBocal\nÉtapes\n"
        "- Laisser macérer.\n- Filtrer.\nMacération\n2 à 3 semaines\nRepos\n2 semaines\n"
    )
    found = one_of("a.txt", text.encode())
    assert found.title == "Liqueur de cassis"
    assert "makes: deux litres de liqueur" in found.text
    assert listed(found.text)[-1] == "400 g de sucre"
    assert steps_of(found.text) == ["Laisser macérer.", "Filtrer."]
    # how long it waits is told by no step: a note, and asked about
    assert "Macération: 2 à 3 semaines" in found.text.split("## Notes")[1]
    assert "How long it waits stands beside the method" in found.text


def test_a_list_on_one_line_below_its_title_is_one() -> None:
    text = (
        "Nocino\n\n30 noci verdi, 1 litro di alcol, 500 g zucchero\n\nTagliarle in 4 e coprirle.\n"
    )
    found = one_of("a.txt", text.encode())
    for thing in ("30 noci verdi", "1 litro di alcol", "500 g zucchero"):
        assert f"- {thing}\n" in found.text
    assert steps_of(found.text) == ["Tagliarle in 4 e coprirle."]


def test_a_numbered_step_may_begin_with_a_count() -> None:
    text = f"{LIST}Method\n1. Stone the plums.\n2. 3 plums are kept whole.\n3. Boil them.\n"
    assert steps_of(one_of("a.txt", text.encode()).text)[1] == "3 plums are kept whole."


def listed(text: str) -> list[str]:
    """Return the lines of a draft's list, without their questions."""
    block = one_of("a.txt", text.encode()).text.partition("ingredients:\n")[2].partition("\n---")[0]
    rows = [row.strip().removeprefix("- ") for row in block.split("\n")]
    return [row for row in rows if row and not row.startswith(("# ?", "units:", "author:"))]


# The shapes of the next tests are those of saved pages of 29 November 2026; the words are ours.
def test_the_first_line_of_a_list_stays_in_it_though_it_ends_as_a_sentence() -> None:
    text = (
        "Chutney\nYou will need.........\n1 1/2Kg Cooking Apples, peeled and diced.\n"
        "750gms Muscovado Sugar.\n2 medium Onions, finely chopped and kept apart.\n"
        "Making:\nBoil it all until it is thick and pulpy.\n"
    )
    assert len(listed(text)) == 3
    assert listed(text)[0].startswith("1 1/2Kg")


@pytest.mark.parametrize(
    ("between", "steps"),
    [
        ("Stages of cooking\n- Boil the jam hard.\n- Fill the jars at once.\n", 2),
        ("Cook the mixture.\nPut all of it into a pan and boil it until it is thick.\n", 2),
    ],
)
def test_a_short_line_behind_a_list_is_no_food_of_it(between: str, steps: int) -> None:
    bullet = "- " if "- " in between else ""
    text = f"Plum jam\nIngredients:\n{bullet}1 kg plums\n{bullet}800 g sugar\n{between}"
    assert listed(text) == ["1 kg plums", "800 g sugar"]
    assert len(steps_of(one_of("a.txt", text.encode()).text)) == steps


def test_salt_and_pepper_behind_a_list_are_foods_of_it() -> None:
    text = (
        "Chutney\nIngredients:\n1 kg plums\n800 g sugar\nSalt and pepper.\n\n"
        "Boil all of it until it is thick.\n"
    )
    assert "Salt and pepper." in listed(text)


def test_a_part_of_a_list_among_its_bullets_is_a_heading() -> None:
    text = (
        "Jelly\nIngredients\n- FOR THE JELLY:\n- 500 ml apple juice\n- 400 g sugar\n"
        "Method\nBoil it.\n"
    )
    assert listed(text) == ["FOR THE JELLY:", "500 ml apple juice", "400 g sugar"]
    assert "FOR THE JELLY" not in " ".join(
        question.what for question in one_of("a.txt", text.encode()).questions
    )


def test_two_titles_above_a_list_are_no_foods() -> None:
    text = (
        "Salt Scrub\n(Body Polish)\nIt is kind to hands, and to feet too.\n1 cup salt\n"
        "2 tablespoons sunflower oil\nMix all of it together well, and bottle it.\n"
    )
    assert listed(text) == ["1 cup salt", "2 tablespoons sunflower oil"]


@pytest.mark.parametrize("sign", ["1.) ", "1) ", "1: ", "1. "])
def test_however_steps_are_numbered_they_are_steps(sign: str) -> None:
    steps = "".join(
        f"{sign.replace('1', str(number))}{words}\n"
        for number, words in enumerate(("WASH the jars.", "BOIL the jam.", "FILL the jars."), 1)
    )
    text = (
        f"{LIST}Preparation\nStep 1\n{steps}Note: wear gloves.\n"
        f"*Boil 5 minutes more in the hills.\n"
    )
    found = one_of("a.txt", text.encode()).text
    assert steps_of(found) == ["WASH the jars.", "BOIL the jam.", "FILL the jars."]
    assert "Wear gloves." in found
    assert "Boil 5 minutes more in the hills." in found


def test_below_an_only_step_each_line_is_one() -> None:
    text = f"{LIST}Preparation\nStep 1\nWash the jars.\nBoil the jam.\n"
    assert steps_of(one_of("a.txt", text.encode()).text) == ["Wash the jars.", "Boil the jam."]
    two = f"{LIST}Preparation\nStep 1\nWash the jars.\nStep 2\nBoil the jam.\n"
    assert steps_of(one_of("a.txt", two.encode()).text) == ["Wash the jars.", "Boil the jam."]


def test_a_recipe_told_in_one_paragraph_has_its_list_and_its_method() -> None:
    text = (
        "Kekse\nZutaten 120 g Mehl, 150 g Zucker, 1 Ei, 1 Prise Salz. Zubereitung Alles verkneten."
    )
    assert listed(text)[:3] == ["120 g Mehl", "150 g Zucker", "1 Ei"]
    assert steps_of(one_of("a.txt", text.encode()).text) == ["Alles verkneten."]


def test_stars_part_the_things_of_a_sentence() -> None:
    text = (
        "~ Soup in a jar ~\n\nThe ingredients you will need are: 2 tablespoons of dried onion * "
        "2 teaspoons of salt * 1/2 cup of barley * 1/2 cup of split peas\n\n"
        "Directions: Mix all of it.\n"
    )
    found = one_of("a.txt", text.encode())
    assert found.title == "Soup in a jar"
    assert len(listed(text)) == 4


def test_things_in_words_above_a_list_belong_to_it() -> None:
    text = (
        "Liqueur de verveine\n\n• Une poignée de feuilles\n• 200 g de sucre\n• 10 cl d’eau\n\n"
        "Laisser macérer un mois.\n"
    )
    assert listed(text)[0] == "Une poignée de feuilles"
    oil = (
        "Oil\n\n1 fancy bottle\n\nenough good olive oil to fill it\n\n"
        "a lush sprig of rosemary\n\nWait a week.\n"
    )
    assert len(listed(oil)) == 3


@pytest.mark.parametrize(
    ("words", "american"),
    [
        ("250 g granulated sugar", False),
        ("250 g caster sugar and kosher salt", False),
        ("1 stick of butter", True),
    ],
)
def test_whose_pints_they_are_is_not_told_by_what_both_countries_say(
    words: str, american: bool
) -> None:
    text = f"Plum jam\n\n1 pint plum juice\n{words}\n\nBoil it.\n"
    assert ("\nunits: us\n" in one_of("a.txt", text.encode()).text) is american


@pytest.mark.parametrize(
    ("title", "kind"),
    [
        ("Standard mead recipe for 1 gallon", "mead"),
        ("Cocoa mint lip balm DIY", "lip balm"),
        ("Liquore alla ciliegia", "liqueur"),
    ],
)
def test_a_kind_is_found_behind_words_that_say_nothing(title: str, kind: str) -> None:
    text = f"{title}\n\n1 kg plums\n2 l water\n\nBoil it.\n"
    assert f"\nkind: {kind}\n" in one_of("a.txt", text.encode()).text


def test_how_much_is_made_in_a_sentence_and_in_two_measures() -> None:
    text = (
        "Chutney\nGreat for windfalls, makes about 2.5 kg (5-6 lbs in old money)\n"
        "2 kg apples\n1 kg sugar\nBoil it.\n"
    )
    assert "makes: about 2.5 kg\n" in one_of("a.txt", text.encode()).text


def test_what_only_the_method_measures_is_asked_about() -> None:
    text = (
        "Mead\n\n3 lb honey\n1 lemon\n\n"
        "Add it to 2 litres of water. Add 10 g wine yeast and 1 cup of lemon juice.\n"
    )
    asked = [question.what for question in one_of("a.txt", text.encode()).questions]
    assert any('"2 litres of water", "10 g wine yeast"' in what for what in asked)
    plain = (
        "Jam\n\n1 kg plums\n800 g sugar\n\n"
        "Boil the plums with 400 g of the sugar in a 2 l pan for 10 minutes.\n"
    )
    asked = [question.what for question in one_of("a.txt", plain.encode()).questions]
    assert not any("method measures" in what for what in asked)


def test_heads_without_a_colon_before_what_they_head() -> None:
    text = (
        "Lemon curd\n\nIngredients 125g (4oz) butter\n\n175g (6oz) caster sugar\n\n"
        "2 medium eggs\n\n"
        "Method Put the butter and the sugar in a bowl over simmering water.\n\n"
        "Stir it until it thickens.\n"
    )
    assert listed(text) == ["125g (4oz) butter", "175g (6oz) caster sugar", "2 medium eggs"]
    assert len(steps_of(one_of("a.txt", text.encode()).text)) == 2


def test_a_long_line_of_a_list_loses_neither_itself_nor_the_next() -> None:
    text = (
        "Mincemeat\n"
        "300g of dried fruit, raisins, cherries and peel (whatever you like best of all)\n"
        "zest of one orange\n"
        "100g of brown sugar, I used dark brown, and added more as it was tart.\n"
        "one/two apples depending on their size.\n50g of melted butter\n"
        "Mix everything together and fill jars with it.\n"
    )
    assert len(listed(text)) == 5


def test_numbers_that_stand_alone_are_no_steps() -> None:
    text = f"{LIST}Method\n-\n1\nWash the jars.\n-\n2\nBoil the jam.\n"
    assert steps_of(one_of("a.txt", text.encode()).text) == ["Wash the jars.", "Boil the jam."]


@pytest.mark.parametrize(
    ("said", "makes"),
    [
        ("Servings\t16 (yields 1 cup)", "1 cup"),
        ("Makes 3 lbs (Sorry to mix up the two but the jars say 1lb and I filled 3!)", "3 lbs"),
        ("Here is a recipe which makes around 500ml of it.", "around 500ml of it"),
    ],
)
def test_how_much_is_told_among_other_words(said: str, makes: str) -> None:
    text = f"Plum jam\n\n{said}\n\n1 kg plums\n800 g sugar\n\nBoil it.\n"
    assert f"\nmakes: {makes}\n" in one_of("a.txt", text.encode()).text


def test_crosses_before_each_line_are_dashes_and_no_line_is_lost() -> None:
    text = (
        "Turkish Delight\n\nYou'll Need:\n\n# 1 lb sugar\n# quarter pint (150ml) water\n"
        "# juice of one lemon\n# pink food colouring\n\n"
        "Procedures : # Soak the gelatine\n# Pour the water into a pan\n# Simmer it\n# Cut it\n"
    )
    found = one_of("a.txt", text.encode())
    assert found.title == "Turkish Delight"
    assert listed(text)[:2] == ["1 lb sugar", "quarter pint (150ml) water"]
    assert len(listed(text)) == 4
    assert len(steps_of(found.text)) == 4


def test_headings_of_markdown_stay_headings() -> None:
    text = (
        "# Plum jam\n\n## Ingredients\n\n- 1 kg plums\n- 800 g sugar\n\n## Method\n\n1. Boil it.\n"
    )
    assert one_of("a.md", text.encode()).title == "Plum jam"


def test_oil_for_greasing_heads_nothing() -> None:
    text = (
        "Delight\n\nIngredients\n\noil for greasing\n1 oz gelatine\n1 lb sugar\n\nMix all of it.\n"
    )
    assert listed(text) == ["oil for greasing", "1 oz gelatine", "1 lb sugar"]


def test_a_list_with_decimal_commas_on_one_line_is_parted() -> None:
    text = (
        "Kruidkoek\nIngrediënten\n150 g stroop, 50 ml water, 300 g roggemeel, 0,5 tl baking soda,"
        " 1,25 tl kaneel, snuf zout\nBereiding\n1. Meng alles.\n"
    )
    assert len(listed(text)) == 6
    assert "0,5 tl baking soda" in [row.strip('"') for row in listed(text)]


def test_sentences_with_bullets_behind_a_list_are_the_method() -> None:
    text = (
        "Ginger bug\nIngredients\nTo Start the Bug\n- 2 cups water\n- 2 tablespoons sugar\n"
        "Preparing the Bug\n- In a jar, combine the warm water and the sugar with a spoon.\n"
        "Using the Bug\n- To use the bug, strain some of the liquid into a bottle of juice.\n"
    )
    assert "In a jar" not in " ".join(listed(text))
    assert len(steps_of(one_of("a.txt", text.encode()).text)) == 2


def test_things_numbered_below_a_heading_are_a_list() -> None:
    text = (
        "Ginger Bug\n\nIngredients of Ginger Bug\n\n  1. Prepare 2 tsp of grated ginger.\n"
        "  2. It’s 900 ml of water.\n\nGinger Bug instructions\n\n"
        "  1. Add the ginger to the water.\n"
    )
    assert listed(text) == ["2 tsp of grated ginger", "900 ml of water"]
    assert steps_of(one_of("a.txt", text.encode()).text) == ["Add the ginger to the water."]


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


def test_a_page_that_made_items_of_all_its_lines_has_its_method() -> None:
    text = (
        "Chestnuts\n- Ingredients\n- 1 kg of chestnuts\n- For the syrup:\n- 800 g of sugar\n"
        "- Instructions\n- Make a cut in the chestnuts.\n- Leave them in the pantry for a week.\n"
    )
    assert "Instructions" not in listed(text)
    assert len(steps_of(one_of("a.txt", text.encode()).text)) == 2


def test_numbers_glued_to_their_steps_are_taken_off() -> None:
    text = f"{LIST}Preparazione:\n\n1Pulire i vasi.\n\n2Portare a bollore.\n\n3Riempire i vasi.\n"
    steps = steps_of(one_of("a.txt", text.encode()).text)
    assert steps == ["Pulire i vasi.", "Portare a bollore.", "Riempire i vasi."]


def test_some_of_a_thing_in_another_language_is_no_title() -> None:
    text = (
        "Aubergines au vinaigre\n\nQuelques aubergines bio\n\n1 petit piment\n\n"
        "250 ml de vinaigre\n\nLaver les aubergines et les couper.\n"
    )
    assert one_of("a.txt", text.encode()).title == "Aubergines au vinaigre"
    assert listed(text)[0] == "Quelques aubergines bio"


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


PHOTOGRAPHED = """Max's coffee flavoured
liqueur

4 cups water
12 tsp instant coffee
(regular or decaf)
1/4 - 1/2 pint cream, to just
cover
Bring to the boil and simmer 60 to 90 min-
utes - uncovered.
Leave it in a well-
buttered dish.
"""


def test_lines_that_a_photograph_broke_are_whole_again() -> None:
    draft = one_of("a.txt", PHOTOGRAPHED.encode())
    assert draft.title == "Max's coffee flavoured liqueur"
    assert "- 12 tsp instant coffee (regular or decaf)\n" in draft.text
    assert "pint cream, to just cover" in draft.text
    assert "simmer 60 to 90 minutes - uncovered" in draft.text
    assert "well-buttered dish" in draft.text


@pytest.mark.parametrize(
    ("text", "title", "makes"),
    [
        ("RASPBERRY VINEGAR.\n\nPour it over and wait a day.\nStrain it.", "Raspberry vinegar", ""),
        ("damson wine.\nto every gallon of water, put two pounds of sugar.", "Damson wine", ""),
        ("Boil it hard.\nStrain it, and leave it until the next day, in the cold.", "", ""),
        (
            "Mincemeat\n\nTo make 1.5 kg (3 lb) mincemeat, you will need 125 g raisins, 125 g "
            "suet, 50 g peel and 175 g demerara sugar.\n\nMix all of it well, and cover it.",
            "Mincemeat",
            "1.5 kg (3 lb) mincemeat",
        ),
    ],
)  # fmt: skip
def test_old_books_say_their_titles_with_a_stop(text: str, title: str, makes: str) -> None:
    draft = one_of("pasted.txt", text.encode())
    assert draft.title == title or (not title and "title:\n" in draft.text)
    assert f"makes: {makes}".rstrip() in draft.text
    assert "## Source" not in draft.text, "nobody said whence"
