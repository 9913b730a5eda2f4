"""What every page of the desk shows is in a cook's words: no mark-up, no file, no name of one."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page

from desk.conftest import OpenDesk, open_on, small_book

SEEN = """() => {
  document.querySelectorAll("details").forEach((one) => { one.open = true; });
  const said = [...document.querySelectorAll("[aria-label],[placeholder],[title]")].flatMap((one) =>
    ["aria-label", "placeholder", "title"].map((name) => one.getAttribute(name) ?? ""));
  const typed = [...document.querySelectorAll("textarea, input:not([type=hidden])")].map((one) =>
    one.value);
  const shown = document.querySelector("main").innerText;
  return [shown, ...said, ...typed].join("\\n");
}"""
FILE_WORDS = re.compile(
    r"## |\bID-1\b|50% 40%”\. Pressing|\.yml\b|\.md\b|\bmkdocs\b|\bYAML\b|front matter|^---$"
    r"|\{[a-z ]+\}"
    r"|\bthe file\b|\bstillroom \w|\bMarkdown\b|\bon a web host\b|\bin one zip\b",
    re.MULTILINE,
)
PAGES = ("/", "/bring", "/write/new", "/write/quince-chutney", "/paper", "/publish", "/giving")


@pytest.fixture
def own(tmp_path: Path) -> Iterator[OpenDesk]:
    opened, thread = open_on(small_book(tmp_path / "book"))
    yield opened
    opened.ask("/stop", "POST")
    thread.join(20)


def test_no_page_shows_a_word_of_files(page: Page, own: OpenDesk) -> None:
    page.goto(own.first)
    for way in PAGES:
        page.goto(f"{own.origin}{way}")
        found = FILE_WORDS.findall(page.evaluate(SEEN))
        assert found == [], way


def test_what_was_is_shown_as_its_boxes_read(page: Page, own: OpenDesk) -> None:
    page.goto(own.first)
    page.goto(f"{own.origin}/write/quince-chutney")
    page.fill("#card_use", "With bread.")
    with page.expect_navigation():
        page.locator("button[value=book]").first.press("Enter")
    page.goto(f"{own.origin}/write/quince-chutney/earlier")
    with page.expect_navigation():
        page.locator(".versions a").first.press("Enter")
    shown = page.inner_text("main")
    assert FILE_WORDS.findall(shown) == []
    assert "How much does it make? 9 jars of 200 ml" in shown
    assert "With bread." in page.locator("ins").all_inner_texts()[0]


def test_a_heading_among_the_notes_ends_with_a_colon_and_stays_one(
    page: Page, own: OpenDesk
) -> None:
    """As in the lists and steps; a file that nobody changes stays as it is to the letter."""
    path = own.folder / "recipes" / "quince-chutney.md"
    before = path.read_text(encoding="utf-8")
    page.goto(own.first)
    page.goto(f"{own.origin}/write/quince-chutney")
    shown = page.input_value("#after")
    assert shown.startswith("Notes:\n\nJar boiling: 10 minutes")
    with page.expect_navigation():
        page.locator("button[value=book]").first.press("Enter")
    assert path.read_text(encoding="utf-8") == before
    page.locator("#after").evaluate("one => one.closest('details').open = true")
    page.fill("#after", f"{shown}\n\nTo serve:\nWith hard cheese.\n- or a pie")
    with page.expect_navigation():
        page.locator("button[value=book]").first.press("Enter")
    kept = path.read_text(encoding="utf-8")
    assert "## Notes\n\nJar boiling" in kept
    assert kept.rstrip().endswith("## To serve\n\nWith hard cheese.\n- or a pie")
    assert page.input_value("#after").endswith("To serve:\n\nWith hard cheese.\n- or a pie")
    page.goto(f"{own.origin}/look/r/quince-chutney/")
    heads = page.locator("article h2, article h3").all_inner_texts()
    assert [one for one in heads if "To serve" in one]


def test_a_danger_is_told_while_no_sort_is_chosen(page: Page, own: OpenDesk) -> None:
    page.goto(own.first)
    page.goto(f"{own.origin}/write/new")
    page.fill("#title", "Drizzle")
    page.fill("#makes", "500 ml")
    page.fill("#ingredients", "500 ml olive oil\n6 cloves garlic")
    page.fill("#method", "Put the garlic into the oil and leave it in a cupboard for 2 weeks.")
    page.wait_for_selector("text=Garlic, herbs, vegetables or cheese in oil")
    shown = page.inner_text("main")
    assert "It may be otherwise once it says what sort of thing it is." in shown
    assert FILE_WORDS.findall(shown) == []
