"""Whoever cooks at the desk reads no word of the terminal: no command, no option, no file's line.

All that the program can say stands in tests/data/messages.tsv; all that a pack says is looked at
as it is worked out.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import quote

import pytest
from bs4 import BeautifulSoup

from desk.conftest import OpenDesk, open_with_lists
from desk.test_giving import worked_out
from desk.test_giving_told import NAME, TEXT, WAY
from desk.test_rooms import boxes_of
from stillroom.desk.plain_words import PRINT_BOXES, said_here, told_here

TYPED = re.compile(
    r"`|\bstillroom [a-z]+|(?<![\w-])--[a-z]+|\bterminal\b|\bexit code|\bcommand line"
    r"|\b[\w-]+\.(?:ya?ml|md|txt\.md)\b|\bgit (?:init|push)"
)


def messages() -> list[tuple[str, str]]:
    table = Path(__file__).parents[1] / "data" / "messages.tsv"
    rows = table.read_text(encoding="utf-8").splitlines()[1:]
    return [(where, what) for where, _, what in (row.partition("\t") for row in rows)]


def test_no_message_keeps_what_is_typed_in_a_terminal() -> None:
    typed = re.compile(r"`|\bstillroom [a-z]|(?<![\w-])--[a-z]|\bterminal\b|mkdocs|larder\.yml")
    said = {what: said_here(what) for _, what in messages()}
    assert len(said) > 1_000
    assert [here for here in said.values() if typed.search(here)] == []
    assert sum(what != here for what, here in said.items()) < 60, "all else stays as it was"
    # what is wrong is told all the same: only what to type is left out
    lost = [what for what, here in said.items() if what and not here and not typed.search(what)]
    assert lost == []


def test_what_a_command_says_is_told_without_its_file_and_line() -> None:
    names = {"plum-jam": "Plum jam"}
    lines = (
        '/home/ann/our book/recipes/plum-jam.md:14: "cupp" is not a unit.',
        'giving/winter.yml:3: "Ann" is there twice.',
        "warning: pages/about.md:8: Words of the example still stand here.",
        "mkdocs.yml:2: There is no such setting.",
        '--lid: "x" is not a number.',
        "3 baskets, 4 batches, 12.40 to pay.",
    )
    assert told_here(lines, names) == (
        'Plum jam: "cupp" is not a unit.',
        '"Ann" is there twice.',
        "About this book: Words of the example still stand here.",
        "The book’s settings: There is no such setting.",
        '“For a round one, the lid across in mm”: "x" is not a number.',
        "3 baskets, 4 batches, 12.40 to pay.",
    )


@pytest.fixture(scope="module")
def own(tmp_path_factory: pytest.TempPathFactory) -> Iterator[OpenDesk]:
    with open_with_lists(tmp_path_factory.mktemp("plain") / "book") as opened:
        (opened.folder / NAME).write_text(TEXT, encoding="utf-8")
        yield opened


def read(text: str) -> str:
    """Return what a page is read as, its boxes apart: their words are hers."""
    page = BeautifulSoup(text, "html.parser")
    for one in page.select("textarea, script, style"):
        one.decompose()
    said = [page.get_text(" ")]
    said += [str(one["placeholder"]) for one in page.select("[placeholder]")]
    return " ".join(" ".join(said).split())


PAGES = (
    "/", "/bring", "/book", "/paper", "/publish", "/giving", WAY, "/write/new-recipe",
    "/write/quince-chutney", "/write/quince-chutney/earlier", "/write/none-such",
    f"/giving/earlier?name={quote('giving/winter.yml')}", "/book/earlier?name=mkdocs.yml",
)  # fmt: skip


@pytest.mark.parametrize("way", PAGES)
def test_a_page_of_the_desk_says_nothing_to_type(way: str, own: OpenDesk) -> None:
    assert TYPED.findall(read(own.ask(way).text)) == []


def test_every_box_that_an_option_is_called_by_is_there(own: OpenDesk) -> None:
    (own.folder / "mkdocs.yml").read_text(encoding="utf-8")
    text = " ".join(BeautifulSoup(own.ask("/paper").text, "html.parser").get_text(" ").split())
    missing = {label for label in PRINT_BOXES.values() if label not in text}
    assert missing <= {"On which sheets"}, "asked where there are bought labels"


def test_what_a_print_refuses_names_its_box(own: OpenDesk) -> None:
    sent = boxes_of(own, "/paper") | {"what": "tags", "shape": "round", "count": "many"}
    told = read(own.ask("/paper", "POST", sent).text)
    assert "“How many of each”" in told
    assert TYPED.findall(told) == []
    sent |= {"count": "1", "lid": ""}
    told = read(own.ask("/paper", "POST", sent).text)
    assert "Measure the lid across, and fill it in." in told
    assert TYPED.findall(told) == []


def test_no_page_of_a_pack_says_anything_to_type(own: OpenDesk) -> None:
    own.ask("/giving/happened", "POST", {
        "name": "giving/winter.yml", "what": "begun", "whom": "quince chutney"})  # fmt: skip
    assert own.ask("/giving/plan", "POST", {"name": "giving/winter.yml"}).status == 303
    assert TYPED.findall(read(worked_out(own))) == []
    pages = sorted((own.folder / "private").glob("*.html"))
    assert len(pages) > 8
    found = {one.name: TYPED.findall(read(one.read_text(encoding="utf-8"))) for one in pages}
    assert {name: words for name, words in found.items() if words} == {}
