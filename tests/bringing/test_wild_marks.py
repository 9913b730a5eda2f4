"""What writing programs and sites leave round a recipe: numbers of their own, tags, names of sites.

The shapes are of papers that a judge brought in on 30 November 2026 (a cookbook in
reStructuredText, notes in Markdown, a weblog, data of schema.org); the words are ours.
"""

from __future__ import annotations

import json

import pytest

from stillroom.bringing.found import Row
from stillroom.bringing.list_marks import with_marks_taken
from stillroom.bringing.papers import bring
from stillroom.core.recipe.settings import BookSettings

LIST = "1 kg plums\n1 kg sugar\n2 lemons"


def text_of(name: str, paper: str) -> str:
    [draft] = bring(name, paper.encode(), BookSettings()).recipes
    return draft.text


RST = """Plum jam
========

.. raw:: pdf

   PageBreak recipePage

Ingredients
-----------

- 1 kg plums
- 1 kg sugar

Directions
----------

#. Simmer the plums in their own juice over a low heat until they fall apart, about
   20 minutes, and stir.
#. Add the sugar.
#. Fill the jars.

Source: `A Village
Book <https://example.org/plum>`__
"""


def test_steps_that_number_themselves_are_steps_and_breaks_for_a_machine_are_none() -> None:
    text = text_of("plum.rst", RST)
    assert "1. Simmer the plums" in text
    assert "about 20 minutes, and stir." in text
    assert "2. Add the sugar." in text
    assert "3. Fill the jars." in text
    assert "PageBreak" not in text
    assert "`" not in text
    assert "https://example.org/plum" in text


@pytest.mark.parametrize(
    "mark", ["#drink #easy #family", "> [!INFO]", ":::two-columns", "::: {.card}", ":::"]
)
def test_marks_of_a_notebook_are_no_words_of_the_recipe(mark: str) -> None:
    listed = "## Ingredients\n\n- 1 kg plums\n- 1 kg sugar\n\n## Method\n\n1. Boil.\n"
    paper = f"{mark}\n\n# Plum jam\n\n{mark}\n\n{listed}"
    text = text_of("plum.md", paper)
    assert "title: Plum jam" in text
    assert mark not in text
    assert "1. Boil." in text


def test_a_heading_after_a_cross_is_still_a_heading() -> None:
    paper = "# Plum jam\n\n## Ingredients\n\n- 1 kg plums\n- 1 kg sugar\n\n## Method\n\n1. Boil.\n"
    assert "title: Plum jam" in text_of("plum.md", paper)


PAGE = (
    "<html><head><title>{title}</title></head><body><h1>{site}</h1><h3>Plum jam</h3>"
    "<ul><li>1 kg plums</li><li>1 kg sugar</li><li>2 lemons</li></ul>"
    "<p>Simmer the plums for twenty minutes, add the sugar and boil until it sets.</p>"
    "{foot}</body></html>"
)


@pytest.mark.parametrize(
    "site",
    [
        "<a href='/'>House in the hills</a>",
        "<a href='https://hills.example/'>House in the hills</a>",
    ],
)
def test_a_site_s_own_name_is_no_title(site: str) -> None:
    page = PAGE.format(title="House in the hills: Plum jam", site=site, foot="")
    text = text_of("plum.html", page)
    assert "title: Plum jam" in text
    assert "House in the hills" not in text


@pytest.mark.parametrize("link", ["href='/plum-jam'", "name='top'", "id='plum' href=''"])
def test_a_title_that_leads_to_its_own_page_or_nowhere_is_one(link: str) -> None:
    page = PAGE.format(title="x", site=f"<a {link}>Gran's plum jam</a>", foot="")
    assert "title: Gran's plum jam" in text_of("plum.html", page)


@pytest.mark.parametrize(
    "foot",
    [
        "Impressum | Datenschutz",
        "Privacy Policy · Terms of Use · Contact",
        "Mentions légales",
        "Aviso legal",
    ],
)
def test_the_foot_of_a_page_is_no_part_of_the_recipe(foot: str) -> None:
    page = PAGE.format(
        title="Plum jam", site="Plum jam", foot=f"<h2>Tip</h2><p>Stir.</p><p>{foot}</p>"
    )
    assert foot not in text_of("plum.html", page)


def data(author: object, article: str = "", step: str = "Fill the jars.") -> str:
    recipe = {
        "@type": "Recipe",
        "name": "Plum jam",
        "author": author,
        "recipeIngredient": LIST.split("\n"),
        "recipeInstructions": [{"@type": "HowToStep", "text": text} for text in ("Boil.", step)],
    }
    graph = {"@graph": [recipe, {"@type": "Person", "@id": "#me", "name": "Ellen Hill"}]}
    return (
        f"<html><head><script type='application/ld+json'>{json.dumps(graph)}</script></head>"
        f"<body><article><h1>Plum jam</h1>{article}</article></body></html>"
    )


@pytest.mark.parametrize("author", [{"@id": "#me"}, [{"@id": "#me"}], {"name": "Ellen Hill"}])
def test_whose_recipe_it_is_is_found_by_its_sign(author: object) -> None:
    assert "author: Ellen Hill" in text_of("plum.html", data(author))


def test_a_sign_of_nobody_names_nobody() -> None:
    assert "author" not in text_of("plum.html", data({"@id": "#somebody"})).split("---")[1]


def test_what_only_the_page_says_of_keeping_is_asked_about() -> None:
    said = "Kept in a cool, dark place it keeps for up to 8 months."
    text = text_of("plum.html", data({"name": "Ellen Hill"}, f"<p>A family jam.</p><p>{said}</p>"))
    assert f'# ? How long it keeps may stand here: "{said}"' in text


@pytest.mark.parametrize(
    "step",
    [
        "Store in an airtight container in a cool, dry place for 2 to 3 months.",
        "Their life span is six months.",
        "Stored airtight they last a year.",
    ],
)
def test_a_loose_word_of_keeping_in_the_last_step_is_taken_or_asked_about(step: str) -> None:
    text = text_of("plum.html", data({"name": "Ellen Hill"}, step=step))
    assert f'How long it keeps may stand here: "{step}"' in text or "keeps:\n" in text


def test_a_sign_that_opens_a_quotation_is_no_mark_of_a_list() -> None:
    said = [Row("»Sehr gut«"), Row("»Wunderbar«")]
    assert with_marks_taken(said) == said
    marked = with_marks_taken([Row("» 1 kg plums"), Row("» 800 g sugar")])
    assert [(row.text, row.shape) for row in marked] == [
        ("1 kg plums", "item"),
        ("800 g sugar", "item"),
    ]
