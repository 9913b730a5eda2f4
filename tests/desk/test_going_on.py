"""Whoever presses goes on from what came of it: seen, read out, by the keyboard; no request fails.

In Chromium and in Firefox. What is asked of an element is whether the focus is in it and whether a
mark of at least 2 px stands round it (WCAG 2.2, 2.4.7 and 2.4.13; from memory).
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from playwright.sync_api import Browser, Request, Response

from browser.conftest import serve_folder
from browser.looking import Looker
from desk.conftest import OpenDesk, forget_typed, open_on, open_with_lists, small_book
from desk.test_giving import worked_out
from desk.test_giving_told import NAME, TEXT, WAY
from desk.test_once import PASTED

MARKED = """() => {
  const one = document.activeElement;
  const style = getComputedStyle(one);
  const box = one.getBoundingClientRect();
  const inside = box.bottom > 0 && box.top < innerHeight;
  return [one.textContent.trim().replace(/\\s+/g, " ").slice(0, 60),
    style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2 && inside];
}"""


@pytest.fixture(scope="module")
def own(tmp_path_factory: pytest.TempPathFactory) -> Iterator[OpenDesk]:
    with open_with_lists(tmp_path_factory.mktemp("on") / "book") as opened:
        (opened.folder / NAME).write_text(TEXT, encoding="utf-8")
        yield opened


# the page, the boxes that are filled, what is pressed, what the focus is in then
PRESSED = {
    "bring in": ("/bring", {"pasted": PASTED}, "main button.action--first", "1 draft was made"),
    "nothing to bring": ("/bring", {}, "main button.action--first", "Paste a recipe"),
    "keep": ("/write/lavender-sugar", {}, "main button.action--first", "Kept, and in the book."),
    "the book": ("/book", {"foot": "Ann"}, "main button.action--first", "Kept."),
    "a wrong book": ("/book", {"altitude_m": "x"}, "main button.action--first", ""),
    "a list": (WAY, {"from": "Ann"}, 'form[action="/giving/list"] .action--first', "Kept."),
    "a wrong list": (
        WAY,
        {"households|0|adults": "many"},
        'form[action="/giving/list"] .action--first',
        "Not kept yet",
    ),
}


def pressed(look: Looker, own: OpenDesk, name: str) -> tuple[str, bool]:
    """Press a button with its boxes filled; return what has the focus, and whether it is seen."""
    way, boxes, button, _ = PRESSED[name]
    look.go(own.origin + way)
    look.ask(
        f"""() => {{
          for (const [name, value] of Object.entries({json.dumps(boxes)}))
            document.getElementsByName(name)[0].value = value;
          document.body.dataset.before = "1";
          document.querySelector({json.dumps(button)}).click();
          return true;
        }}"""
    )
    for _ in range(300):
        try:
            if look.ask("() => Boolean(document.body && !document.body.dataset.before)"):
                break
        except Exception:  # the page is being left
            continue
    look.wait_for("document.readyState === 'complete' && document.activeElement !== document.body")
    words, is_seen = look.ask(MARKED)
    return words, is_seen


@pytest.mark.parametrize("name", PRESSED)
@pytest.mark.parametrize("ways", ["chromium_ways", "firefox_ways"])
def test_the_focus_is_in_what_came_of_a_press(
    ways: str, name: str, own: OpenDesk, request: pytest.FixtureRequest
) -> None:
    look: Looker = request.getfixturevalue(ways)("light", 1280)
    forget_typed(own.folder)
    look.go(own.first)
    words, is_seen = pressed(look, own, name)
    assert words.startswith(PRESSED[name][3])
    if ways == "chromium_ways":  # Firefox marks nothing in a window without a screen
        assert is_seen
    for draft in (own.folder / "drafts").glob("*.md"):
        draft.unlink()


def test_what_a_build_came_to_has_the_focus(browser: Browser, own: OpenDesk) -> None:
    forget_typed(own.folder)
    page = browser.new_page()
    page.goto(own.first)
    page.goto(f"{own.origin}/publish")
    page.focus("main button.action--first")
    page.keyboard.press("Enter")
    page.wait_for_selector("text=Building the book")
    assert page.evaluate(MARKED) == ["Building the book", True]
    page.wait_for_selector("text=lies in the folder", timeout=240_000)
    words, is_seen = page.evaluate(MARKED)
    page.close()
    assert words.startswith("The book lies in the folder")
    assert is_seen


def test_every_page_names_its_book(own: OpenDesk) -> None:
    for way in ("/", "/write/no-such-one", "/book/earlier?name=mkdocs.yml", "/publish"):
        page = BeautifulSoup(own.ask(way).text, "html.parser")
        assert page.select_one(".head__book").get_text(" ", strip=True) == (
            "The desk of Heron Ferry book"
        ), way
        assert page.select("nav a"), "and leads on"


def test_a_desk_that_is_closed_names_the_book_that_was_open(tmp_path: Path) -> None:
    opened, thread = open_on(small_book(tmp_path / "book"))
    page = BeautifulSoup(opened.ask("/stop", "POST").text, "html.parser")
    thread.join(20)
    assert "Heron Ferry book" in page.select_one(".head__book").text
    assert "new book" not in page.text
    assert not page.select("nav a, form"), "nothing on it answers any more"


def _note_failure(found: list[str], asked: Request) -> None:
    if asked.failure != "net::ERR_ABORTED":
        found.append(f"{asked.failure} {asked.url}")


def test_no_request_fails_and_nothing_is_told_to_the_console(
    browser: Browser, own: OpenDesk
) -> None:
    assert own.ask("/giving/plan", "POST", {"name": "giving/winter.yml"}).status == 303
    worked_out(own)
    pack = sorted((own.folder / "private").glob("*.html"))
    assert len(pack) > 8
    forget_typed(own.folder)
    page = browser.new_page()
    found: list[str] = []

    def note(response: Response) -> None:
        if response.status >= 400:
            found.append(f"{response.status} {response.url}")

    page.on("response", note)
    page.on("console", lambda said: found.append(said.text))
    page.on("pageerror", lambda error: found.append(str(error)))
    # what a page that is left did not wait for has not failed
    page.on("requestfailed", lambda asked: _note_failure(found, asked))
    elsewhere = serve_folder(own.folder / "private")
    page.goto(own.first)
    ways = ["/", "/bring", "/book", "/paper", "/publish", "/giving", WAY, "/write/lavender-sugar"]
    for way in [own.origin + one for one in ways]:
        page.goto(way)
        page.wait_for_load_state("networkidle")
    for one in pack:
        for place in (f"{own.origin}/giving/pack", elsewhere):
            page.goto(f"{place}/{one.name}")
    page.wait_for_timeout(300)
    page.close()
    assert found == []
