"""At the desk a draft shows what each line of its paper became, and a line is put elsewhere."""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag
from playwright.sync_api import Browser, Page

from browser.firefox import Firefox
from desk.conftest import Answer, OpenDesk
from desk.test_in_browsers import tab_to
from desk.test_rooms import boxes_of
from stillroom.bringing import bring, write_brought
from stillroom.core.recipe.settings import BookSettings
from stillroom.desk.lines_as_came import MOST_LINES, gave_way, put_in, shown

LETTER = """Dear Jo,

Tom is well again, says Dr Brook.

Sloe cordial (Nan's)
1 kg sloes
600 g sugar
Shake the bottle before you pour.

Simmer the sloes with the sugar for an hour. Strain it and bottle it.

Rosehip syrup

1 kg rosehips
500 g sugar

Boil the rosehips and strain them twice. Boil the juice with the sugar.
"""
"""Invented. What is private stands in two lines; one of the list is none of what goes in."""
LINES = ("Plum jam", "1 kg plums", "800 g sugar", "a pinch of salt", "Boil both.", "Pot it.")
FORM = {
    "title": "Plum jam",
    "makes": "",
    "ingredients": "1 kg plums\n800 g sugar",
    "method": "a pinch of salt\nBoil both.\nPot it.",
    "intro": "",
    "after": "",
}
numbers = itertools.count()


def put(number: int, was: str, now: str) -> dict[str, str]:
    return put_in(LINES, FORM, {f"put-{number}-{was}": now})


def test_a_line_goes_where_those_beside_it_in_the_paper_stand() -> None:
    found = put(3, "method", "ingredients")
    assert found["ingredients"] == "1 kg plums\n800 g sugar\na pinch of salt"
    assert found["method"] == "Boil both.\nPot it."
    assert put(1, "ingredients", "method")["method"].startswith("1 kg plums\na pinch")


@pytest.mark.parametrize(
    ("number", "was", "now", "box", "words"),
    [
        (4, "method", "", "method", "a pinch of salt\nPot it."),
        (5, "method", "after", "after", "Pot it."),
        (5, "method", "intro", "intro", "Pot it."),
        (1, "ingredients", "title", "title", "1 kg plums"),
        (2, "ingredients", "makes", "makes", "800 g sugar"),
        (0, "title", "ingredients", "ingredients", "Plum jam\n1 kg plums\n800 g sugar"),
    ],
)
def test_a_line_may_be_any_part(number: int, was: str, now: str, box: str, words: str) -> None:
    found = put(number, was, now)
    assert found[box] == words
    assert sum(LINES[number] in text for text in found.values()) == (1 if now else 0)
    untouched = set(FORM) - {was, now}
    assert {name: found[name] for name in untouched} == {name: FORM[name] for name in untouched}


@pytest.mark.parametrize(
    "posted",
    [
        {},
        {"put-1-ingredients": "ingredients"},
        {"put-99-method": "title"},
        {"put-1-ingredients": "overrides"},
        {"put-x-ingredients": "title"},
    ],
)
def test_what_is_not_chosen_stays(posted: dict[str, str]) -> None:
    assert put_in(LINES, FORM, posted) == FORM


def test_what_was_written_of_a_line_besides_goes_with_it() -> None:
    """A list told in a sentence stands once, wherever the sentence is put."""
    form = {**FORM, "ingredients": "2 kg quinces", "method": "Boil 2 kg quinces until soft."}
    lines = ("Quince paste", "Boil 2 kg quinces until soft.")
    assert put_in(lines, form, {"put-1-method": ""})["ingredients"] == ""
    moved = put_in(lines, form, {"put-1-method": "ingredients"})
    assert moved["ingredients"] == "Boil 2 kg quinces until soft."
    assert moved["method"] == ""


def test_what_a_line_of_one_takes_the_place_of_is_told() -> None:
    before = {**FORM, "makes": "4 jars"}
    found = put_in(LINES, before, {"put-2-ingredients": "makes"})
    assert gave_way(before, found) == ["4 jars"]
    assert gave_way(FORM, put_in(LINES, FORM, {"put-2-ingredients": "makes"})) == []


def test_only_a_lines_own_words_are_taken_from_a_longer_one() -> None:
    form = {**FORM, "method": "Boil both. Kiss Tom from me. Pot it."}
    lines = ("Boil both.", "Kiss Tom from me.", "Pot it.")
    found = put_in(lines, form, {"put-1-method": ""})
    assert found["method"] == "Boil both. Pot it."


def test_numbered_steps_stay_numbered() -> None:
    form = {**FORM, "ingredients": "1 kg plums", "method": "1. Boil both.\n2. Pot it."}
    lines = ("1 kg plums", "Stir it all the while.", "Boil both.", "Pot it.")
    assert put_in(lines, form, {"put-1-": "method"})["method"].count("Stir it") == 1
    assert shown(lines, put_in(lines, form, {"put-1-": "method"}))[1].box == "method"


@pytest.fixture
def brought(desk: OpenDesk) -> Iterator[str]:
    """Bring the letter in, and return the name of its first draft."""
    name = f"Sloe cordial {next(numbers)}"
    text = LETTER.replace("Sloe cordial (Nan's)", name)
    boundary = "a-boundary"
    body = (
        f'--{boundary}\r\nContent-Disposition: form-data; name="pasted"\r\n\r\n{text}\r\n'
        f"--{boundary}--\r\n"
    )
    desk.ask(
        "/bring",
        "POST",
        body=body.encode(),
        Content_Type=f"multipart/form-data; boundary={boundary}",
    )
    yield name.lower().replace(" ", "-")
    for folder in ("drafts", ".desk/came", ".desk/unsaved"):
        for path in (desk.folder / folder).glob("*"):
            path.unlink()


def soup_of(answer: Answer) -> Tag:
    return BeautifulSoup(answer.text, "html.parser")


def test_the_draft_shows_every_line_and_what_stands_nowhere(desk: OpenDesk, brought: str) -> None:
    came = soup_of(desk.ask(f"/write/{brought}")).select_one("#came")
    assert came is not None
    missed = [one.get_text(" ", strip=True) for one in came.select("ul .came__line--missed > span")]
    assert "Dear Jo," in missed
    assert any("Tom is well again" in one for one in missed)
    assert not [one for one in missed if "sloes" in one or "sugar" in one]
    every = {
        one.select("span")[0].get_text(strip=True): option["value"]
        for one in came.select("ol .came__line")
        if (option := one.select_one("option[selected]"))
    }
    assert every["1 kg sloes"] == "ingredients"
    assert "Rosehip syrup" not in " ".join(every), "the second recipe has a draft of its own"


def test_the_lines_are_private_and_nowhere_in_the_book(desk: OpenDesk, brought: str) -> None:
    kept = desk.folder / ".desk" / "came" / f"{brought}.txt"
    assert "Dr Brook" in kept.read_text(encoding="utf-8")
    elsewhere = [
        path
        for path in desk.folder.rglob("*")
        if path.is_file() and path != kept and b"Dr Brook" in path.read_bytes()
    ]
    assert elsewhere == []
    assert (desk.folder / ".desk/.gitignore").read_text(encoding="utf-8") == "*\n"


def test_a_line_is_put_elsewhere_by_keyboard_alone(
    page: Page, desk: OpenDesk, brought: str
) -> None:
    page.goto(desk.first)
    page.goto(f"{desk.origin}/write/{brought}")
    tab_to(page, "#came details:last-of-type summary")
    page.keyboard.press("Enter")
    row = page.locator("ol .came__line", has_text="Shake the bottle")
    choice = row.locator("select")
    was = choice.input_value()
    choice.focus()
    choice.press("n" if was != "after" else "w")  # "a note below it" by its letters
    choice.select_option("after")
    with page.expect_navigation():
        page.locator("#came button").last.press("Enter")
    assert page.evaluate("document.activeElement.id") == "came"
    assert "Shake the bottle before you pour." in page.input_value("#after")
    assert "Shake" not in page.input_value("#ingredients") + page.input_value("#method")
    page.goto(f"{desk.origin}/write/{brought}")
    assert "Shake the bottle" in page.input_value("#after"), "nothing is lost by going away"


def test_another_recipe_begins_at_a_line(browser: Browser, desk: OpenDesk, brought: str) -> None:
    """Without scripts, as what is pressed is sent."""
    drafts = desk.folder / "drafts"
    came = desk.folder / ".desk" / "came" / f"{brought}.txt"
    whole = came.read_text(encoding="utf-8")
    both = f"{whole}\n\nQuince paste\n\n2 kg quinces\n1 kg sugar\n\nBoil and sieve the quinces."
    came.write_text(both, encoding="utf-8")
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(desk.first)
    page.goto(f"{desk.origin}/write/{brought}")
    page.fill("#method", f"{page.input_value('#method')}\nBoil and sieve the quinces.")
    row = page.locator("ul .came__line", has_text="Quince paste")
    row.locator("select").select_option("another")
    page.locator("#came button").first.click()
    assert "Another draft was made" in page.locator("#came [role=status]").inner_text()
    assert "quinces" not in page.input_value("#method")
    assert came.read_text(encoding="utf-8").rstrip() == whole.rstrip()
    (drafted,) = drafts.glob("quince-paste*.md")
    assert "2 kg quinces" in drafted.read_text(encoding="utf-8")
    page.locator("#came").get_by_text("See it").click()
    assert page.input_value("#title") == "Quince paste"
    context.close()


def test_no_recipe_begins_where_no_word_stands(desk: OpenDesk, brought: str) -> None:
    form = boxes_of(desk, f"/write/{brought}")
    came = desk.folder / ".desk/came" / f"{brought}.txt"
    lines = [*came.read_text(encoding="utf-8").split("\n"), "* * * 1 2 3"]
    came.write_text("\n".join(lines), encoding="utf-8")
    told = soup_of(
        desk.ask(f"/write/{brought}/lines", "POST", {**form, f"put-{len(lines) - 1}-": "another"})
    )
    assert "No recipe was found from there on" in told.get_text()
    assert len(list((desk.folder / "drafts").glob("*.md"))) == 2
    assert came.read_text(encoding="utf-8").endswith("* * * 1 2 3"), "nothing was cut"


def test_another_recipe_does_not_begin_at_the_first_line(desk: OpenDesk, brought: str) -> None:
    """It would leave nothing."""
    form = boxes_of(desk, f"/write/{brought}")
    before = sorted((desk.folder / "drafts").glob("*.md"))
    told = soup_of(desk.ask(f"/write/{brought}/lines", "POST", {**form, "put-0-": "another"}))
    assert "This recipe begins there already" in told.get_text()
    assert sorted((desk.folder / "drafts").glob("*.md")) == before


def test_what_is_brought_in_takes_no_name_of_the_book(tmp_path: Path) -> None:
    found = bring("a.txt", b"Plum gin\n\n1 kg plums\n1 l gin\n\nSteep them.", BookSettings())
    (tmp_path / "recipes").mkdir()
    (tmp_path / "recipes/plum-gin.md").write_text("there", encoding="utf-8")
    (path,) = write_brought(found, tmp_path / "drafts", None, tmp_path / "recipes")
    assert path.name == "plum-gin-2.md"


@pytest.mark.parametrize("way", ["/write/{}/lines", "/write/{}/keep", "/picture/{}"])
def test_the_address_of_a_press_leads_to_the_recipe(desk: OpenDesk, way: str) -> None:
    """Entered again in the bar of a browser."""
    answer = desk.ask(way.format("lavender-sugar"))
    assert answer.status == 303
    assert answer.headers["location"] == "/write/lavender-sugar"


def test_firefox_shows_them_and_nothing_is_wider(
    firefox: Firefox, desk: OpenDesk, brought: str
) -> None:
    firefox.goto(desk.first)
    firefox.goto(f"{desk.origin}/write/{brought}")
    assert firefox.evaluate("document.querySelectorAll('#came select').length > 5")
    assert firefox.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_a_recipe_that_was_written_here_has_none(desk: OpenDesk) -> None:
    assert soup_of(desk.ask("/write/lavender-sugar")).select("#came") == []
    assert not Path(desk.folder / ".desk/came/lavender-sugar.txt").exists()


def test_of_very_many_lines_it_is_said_how_many_are_not_shown() -> None:
    lines = [f"{number} kg plums" for number in range(MOST_LINES + 7)]
    found = shown(lines, FORM)
    assert len(found) == MOST_LINES + 1
    assert found[-1].words == "… 7 lines more, which are not shown here"
    assert found[-1].choices == ()
