"""At the desk a line over several rows is one choice, and a question goes with its line."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

import pytest
from playwright.sync_api import Page

from desk.conftest import OpenDesk
from desk.test_in_browsers import tab_to
from stillroom.desk.brought_questions import all_named, settled_by, with_lines_answered
from stillroom.desk.lines_as_came import put_in

numbers = itertools.count()
PAGE = """<html><head><title>{title}</title></head><body>
<nav><a href="/">Home</a> <a href="/a">About me and the dog</a></nav>
<main><h1>{title}</h1><ul><li>1 kg plums</li><li>800 g sugar</li></ul>
<ol><li>Boil the plums with the sugar until it sets, stirring all the while.</li>
<li>Fill the hot jars to the brim and shut them at once. Keep them cool and dark.</li></ol></main>
<div id="comments"><p>Ring me on 0123, says Tom.</p></div></body></html>"""
WRAPPED = """{title}

2 lb plums, stoned and cut into
quarters
1 lb sugar

For the syrup:
Boil the plums with the sugar in a wide pan, stirring it now and
then, until it sets.
Orchard fair and other dates of
the year
Pot it hot.

Notes
It sets late.

Keep the stones for another day.
"""


def bring_in(page: Page, desk: OpenDesk, text: str, name: str) -> None:
    page.goto(desk.first)
    page.goto(f"{desk.origin}/bring")
    page.set_input_files(
        "#file", {"name": name, "mimeType": "text/plain", "buffer": text.encode("utf-8")}
    )
    with page.expect_navigation():
        page.get_by_role("button", name="Bring in").press("Enter")
    page.locator("main section a").first.press("Enter")
    page.wait_for_selector("#came")


@pytest.fixture
def title(desk: OpenDesk) -> Iterator[str]:
    yield f"Plum jam number {next(numbers)}"
    for folder in ("drafts", ".desk/came", ".desk/unsaved"):
        for path in (desk.folder / folder).glob("*"):
            path.unlink()


def test_menus_and_comments_of_a_page_are_told_in_one_folded_group(
    page: Page, desk: OpenDesk, title: str
) -> None:
    bring_in(page, desk, PAGE.format(title=title), "a.html")
    group = page.locator(".came__around")
    assert "2 lines around it on its web page, left out" in group.locator("summary").inner_text()
    assert not group.locator("li").first.is_visible()
    tab_to(page, ".came__around summary")
    page.keyboard.press("Enter")
    assert "Ring me on 0123, says Tom." in group.inner_text()
    rest = page.locator("#came details:not(.came__around)").all_inner_texts()
    assert "0123" not in " ".join(rest), "it drowns nothing of the recipe's own"
    kept = next((desk.folder / ".desk/came").glob("*.around.txt"))
    elsewhere = [
        path
        for path in desk.folder.rglob("*")
        if path.is_file() and path != kept and b"Ring me on 0123" in path.read_bytes()
    ]
    assert elsewhere == []


def test_a_line_over_two_rows_is_one_choice_and_its_question_goes_with_it(
    page: Page, desk: OpenDesk, title: str
) -> None:
    bring_in(page, desk, WRAPPED.format(title=title), "a.txt")
    tab_to(page, "#came details:has(ol) summary")
    page.keyboard.press("Enter")
    came = page.locator("#came ol .came__line span:first-child").all_inner_texts()
    assert "2 lb plums, stoned and cut into quarters" in came
    assert "Orchard fair and other dates of the year" in came
    assert "quarters" not in came
    assert "Is this part of the method?" in page.content() or page.locator(".reads button").count()
    before = page.inner_text("#said-now")
    row = page.locator("#came ol .came__line", has_text="Orchard fair")
    row.locator("select").select_option("")
    with page.expect_navigation():
        page.locator("#came ol + p button").press("Enter")
    assert "Orchard fair" not in page.input_value("#method")
    after = page.inner_text("#said-now")
    assert after != before
    assert "Is this part of the method?" not in page.inner_text(".write__boxes")
    page.goto(f"{desk.origin}/write/{title.lower().replace(' ', '-')}")
    assert "Orchard fair" not in page.input_value("#method"), "nor after going away"
    assert page.inner_text("#said-now") == after


FORM = {
    "title": "Plum jam",
    "ingredients": "1 kg plums",
    "method": "Boil them.",
    "intro": "First.\n\nThird.",
    "after": "## Equipment\n\nA wide pan\n\n## Notes\n\nIt sets late.\n\nKeep the stones.",
}
CAME = (
    "Plum jam",
    "First.",
    "Second.",
    "Third.",
    "1 kg plums",
    "Boil them.",
    "A wide pan",
    "It sets late.",
    "Skim it well.",
    "Keep the stones.",
)


def test_what_becomes_a_note_stands_in_the_papers_order() -> None:
    noted = put_in(CAME, FORM, {"put-8-": "after"})["after"]
    assert noted.endswith("It sets late.\n\nSkim it well.\n\nKeep the stones.")
    told = put_in(CAME, FORM, {"put-2-": "intro"})["intro"]
    assert told == "First.\n\nSecond.\n\nThird."
    both = put_in(CAME, FORM, {"put-2-": "after", "put-8-": "after"})["after"]
    assert both.index("Second.") < both.index("It sets late.") < both.index("Skim it well.")
    bare = {**FORM, "after": "## Equipment\n\nA wide pan"}
    assert put_in(CAME, bare, {"put-8-": "after"})["after"].endswith("## Notes\n\nSkim it well.")


RAW = """---
# ? May be of what goes in, and stands nowhere: "50 g walnuts" · "1 egg". Write what belongs there.
# ? Does this belong to the recipe? "Our shop is open again". Take out what does not.
# ? Somebody is named beside the recipe: "My neighbour Rosa gave me this". Take it out.
title: Plum jam
ingredients:
  - 1 kg plums
---
Our shop is open again. My neighbour Rosa gave me this.

## Method

1. Boil them with the sugar.
"""


@pytest.mark.parametrize(
    ("changed", "settled", "left"),
    [
        ({}, "", {"50 g walnuts", "1 egg", "Our shop", "Rosa"}),
        ({"ingredients": "1 kg plums\n50 g walnuts"}, "", {"1 egg", "Our shop", "Rosa"}),
        ({"intro": "My neighbour Rosa gave me this."}, "", {"50 g walnuts", "1 egg", "Rosa"}),
        ({"intro": "Our shop is open again."}, "", {"50 g walnuts", "1 egg", "Our shop"}),
        ({"intro": ""}, "", {"50 g walnuts", "1 egg"}),
        ({}, '"1 egg"\n"50 g walnuts"', {"Our shop", "Rosa"}),
        # a word that was written into it leaves the question
        ({"intro": "Our small shop is open again. My neighbour Rosa gave me this."}, "",
         {"50 g walnuts", "1 egg", "Our shop", "Rosa"}),
    ],
)  # fmt: skip
def test_a_question_goes_with_the_line_that_it_names(
    changed: dict[str, str], settled: str, left: set[str]
) -> None:
    form = {
        "title": "Plum jam",
        "ingredients": "1 kg plums",
        "intro": "Our shop is open again. My neighbour Rosa gave me this.",
        "method": "Boil them with the sugar.",
    }
    found = with_lines_answered(RAW, RAW, form | changed, settled)
    rows = " ".join(row for row in found.split("\n") if row.startswith("# ?"))
    told = {"50 g walnuts", "1 egg", "Our shop", "Rosa"}
    assert {one for one in told if one in rows} == left
    assert found.replace("\n", "").endswith(RAW.replace("\n", "")[-60:]), "all else stays"


def test_a_line_that_was_put_where_it_belongs_settles_what_names_it() -> None:
    names = all_named(RAW)
    assert settled_by("50 g walnuts", names) == {'"50 g walnuts"'}
    assert settled_by("Our shop is open again. Come!", names) == {'"Our shop is open again"'}
    assert settled_by("1 kg plums", names) == set()


@pytest.mark.parametrize(
    ("author", "asked"),
    [("Ann Sedge", True), ("", False), ("Nan", False), ("Ann Sedge, 1951", True)],
)
def test_whether_a_name_may_stand_is_asked_while_it_stands(author: str, asked: bool) -> None:
    question = '"Ann Sedge" stands as whose recipe it is, and everybody will read the name. Look.'
    raw = f"---\ntitle: Gin\n# ? {question}\nauthor: Ann Sedge\n---\n\n## Method\n\n1. Cut.\n"
    found = with_lines_answered(raw, raw, {"title": "Gin", "author": author}, "")
    assert (question in found) == asked
