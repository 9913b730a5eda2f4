"""The page "Send us a recipe": filled, saved, brought in, checked, opened, in both browsers.

Also from a disk, with nothing kept by the browser, without scripts, by keyboard.
"""

from __future__ import annotations

import json
import random
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from playwright.sync_api import Browser, Page

from stillroom.beginning.recipe import slug_of
from stillroom.cli import main
from stillroom.core.reading.loading import read_recipe
from stillroom.desk.boxes import Line, box_lines, step_lines
from stillroom.desk.filled import in_boxes
from stillroom.desk.recipe_form import FIELDS, LISTS, form_of
from stillroom.desk.recipe_rows import lay_out
from stillroom.publish.send_page import sent_parts

from .conftest import wait_until, without_errors
from .firefox import launch_firefox

BOXES = [one.box for part in sent_parts() for one in part.asked]
PICTURES = {"picture", "picture_alt", "picture_focus"}
FILLED = {
    "title": "Sloe & damson “ruby”: a cordial",
    "kind": "infusion",
    "makes": "900 ml",
    "ingredients": "For the jar:\n- 400 g sloes\n* 100 g damsons, stoned\n\n250 g sugar\n"
    "700 ml gin, 40% vol",
    "method": "1. Prick the sloes and damsons.\n2. Put them in a jar with the sugar and gin.\n"
    "Later:\nStrain it.",
    "timeline": "shake: every day for 2 weeks\nrest: 2 months\nstrain and bottle: 40 minutes",
    "keeps_unopened": "2 years",
    "keeps_opened": "6 months",
    "keeps_where": "cool and dark",
    "keeps_source": "our own practice",
    "card_use": 'A spoonful in sparkling wine; "neat" is good as well.',
    "summary": "It's dark: and 'slow'.",
    "intro": "From a hedge # by the sea.\n\nWorth the thorns.",
    "after": "Notes:\n\nThe fruit makes chocolates.\n\nTo serve:\nIn wine.\nServe with:",
    "author": "Zebedee Quillfeather",
    "vessels": "1.5 l clip-top jar",
    "containers": "bottle, 100 ml, cork",
    "season": "September\nOctober",
    "oven": "",
    "cautions": "Not for children.",
    "card_what": "A sweet gin",
    "card_keep": "Somewhere dark",
    "card_net": "",
}
NO_STORE = """for (const name of ["localStorage", "sessionStorage"]) {
  Object.defineProperty(window, name, { get() { throw new DOMException("no", "SecurityError"); } });
}"""
FILL = """(boxes) => {
  document.querySelectorAll("form.send details").forEach((one) => { one.open = true; });
  for (const field of document.querySelectorAll("[data-box]")) {
    field.value = boxes[field.dataset.box] ?? "";
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }
  return true;
}"""
READ = """() => Object.fromEntries(
  [...document.querySelectorAll("[data-box]")].map((one) => [one.dataset.box, one.value]))"""


def said(box: str, text: str) -> Any:
    """Return what a box says, however its lines are set."""
    if box == "method":
        return [(one.text, one.is_heading) for one in step_lines(text)]
    if box == "ingredients" or box in LISTS:
        lines = box_lines(text, box == "ingredients")
        return [(one.text, one.is_heading, one.depth) for one in lines]
    return " ".join(text.split())


def same(one: dict[str, str], other: dict[str, str]) -> dict[str, tuple[str, str]]:
    """Return the boxes that two forms say differently."""
    return {
        box: (one.get(box, ""), other.get(box, ""))
        for box in BOXES
        if said(box, one.get(box, "")) != said(box, other.get(box, ""))
    }


def brought_in(saved: str, folder: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Bring a saved file into a new book; it must be taken as it is, with nothing to ask."""
    monkeypatch.chdir(folder)
    runner = CliRunner()
    begun = runner.invoke(
        main, ["start", "book", "--name", "A book", "--country", "GB"], input="\n\n"
    )
    assert begun.exit_code == 0, begun.output
    sent = folder / "sent.md"
    sent.write_text(saved, encoding="utf-8")
    monkeypatch.chdir(folder / "book")
    done = runner.invoke(main, ["bring", str(sent)])
    assert done.exit_code == 0, done.output
    assert "nothing to ask" in done.output, done.output
    (draft,) = (folder / "book" / "drafts").glob("*.md")
    checked = runner.invoke(main, ["check", str(draft)])
    assert checked.exit_code == 0, checked.output
    return draft


@pytest.fixture
def alone(browser: Browser, built_book: Path, tmp_path: Path, way: str, book_address: str) -> Any:
    """Open the page from a server, or from a disk in a browser that keeps nothing."""
    context = browser.new_context(accept_downloads=True, viewport={"width": 320, "height": 700})
    if way == "disk":
        context.add_init_script(NO_STORE)
    page = context.new_page()
    with without_errors(page):
        page.goto(
            (built_book / "send" / "index.html").as_uri()
            if way == "disk"
            else f"{book_address}/send/"
        )
        yield page
    context.close()


def save(page: Page, which: str = "whole") -> tuple[str, str]:
    with page.expect_download() as download:
        page.click(f"form.send button[value={which}]")
    path = download.value.path()
    return download.value.suggested_filename, Path(path).read_text(encoding="utf-8")


@pytest.mark.parametrize("way", ["server", "disk"])
def test_filled_saved_brought_checked_opened(
    alone: Page, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    alone.evaluate(FILL, FILLED)
    name, saved = save(alone)
    assert name == "sloe-and-damson-ruby-a-cordial.md"
    assert "among your downloads" in alone.inner_text("[data-send=said]")
    draft = brought_in(saved, tmp_path, monkeypatch)
    read = in_boxes(form_of(lay_out(draft.read_text(encoding="utf-8"), "sent.md")))
    assert same(FILLED, read) == {}
    alone.on("dialog", lambda dialog: dialog.accept())
    alone.evaluate(FILL, {})
    alone.set_input_files("#box-opened", str(draft))
    wait_until(alone, "document.querySelector('#box-title').value")
    assert same(FILLED, alone.evaluate(READ)) == {}
    assert "is open" in alone.inner_text("[data-send=said]")


@pytest.mark.parametrize("way", ["server"])
def test_what_is_wanting_is_said_at_its_box(alone: Page) -> None:
    alone.evaluate(
        FILL,
        {
            "title": "Jam",
            "ingredients": "1,5 kg plums",
            "timeline": "a while: 2 weeks",
            "intro": "<b>Hello</b>",
            "makes": "some",
        },
    )
    alone.click("form.send button[value=whole]")
    wrong = alone.evaluate(
        "() => [...document.querySelectorAll('.send__wrong')].filter((one) => one.textContent)"
        ".map((one) => [one.id, one.textContent])"
    )
    assert {name.removeprefix("wrong-") for name, _ in wrong} == {
        "kind", "method", "makes", "ingredients", "timeline", "intro",
    }  # fmt: skip
    assert alone.evaluate("document.activeElement.dataset.box") == "kind"
    assert (
        alone.evaluate("document.querySelector('#box-kind').getAttribute('aria-invalid')") == "true"
    )
    assert "6 boxes" in alone.inner_text("[data-send=said]")
    name, saved = save(alone, "unfinished")
    assert name == "jam.md"
    assert "1,5 kg plums" in saved


@pytest.mark.parametrize("way", ["server"])
def test_by_keyboard_alone_and_kept_while_the_window_is_open(alone: Page) -> None:
    alone.focus("#box-title")
    alone.keyboard.type("Plum gin")
    alone.keyboard.press("Tab")
    alone.keyboard.type("infu")
    for words in ("800 ml", "700 ml gin, 40% vol\n350 g plums", "Steep the plums in the gin."):
        alone.keyboard.press("Tab")
        alone.keyboard.type(words)
    alone.reload()
    assert alone.input_value("#box-method") == "Steep the plums in the gin."
    kind = alone.input_value("#box-kind")
    alone.focus("form.send button[value=whole]")
    with alone.expect_download() as download:
        alone.keyboard.press("Enter")
    saved = Path(download.value.path()).read_text(encoding="utf-8")
    recipe = read_recipe(saved, "plum-gin.md", "plum-gin")
    assert (recipe.title, recipe.kind.spoken, len(recipe.ingredients)) == ("Plum gin", kind, 2)
    assert alone.evaluate("document.documentElement.scrollWidth") <= 320


@pytest.mark.parametrize("way", ["server"])
def test_what_is_no_recipe_is_refused_and_nothing_is_lost(alone: Page, tmp_path: Path) -> None:
    alone.evaluate(FILL, {"title": "Kept"})
    for name, words in (("letter.txt", "Dear all"), ("big.md", "x" * 600_000)):
        (tmp_path / name).write_text(words, encoding="utf-8")
        alone.set_input_files("#box-opened", str(tmp_path / name))
        wait_until(
            alone, f"document.querySelector('[data-send=said]').textContent.includes('{name}')"
        )
    assert alone.input_value("#box-title") == "Kept"
    more = "---\ntitle: Other\nph: 3.2\n---\n## Method\n1. Stir.\n"
    (tmp_path / "more.md").write_text(more, encoding="utf-8")
    alone.on("dialog", lambda dialog: dialog.accept())
    alone.set_input_files("#box-opened", str(tmp_path / "more.md"))
    wait_until(alone, "document.querySelector('#box-title').value === 'Other'")
    assert "ph: 3.2" in alone.inner_text("[data-send=said]")


def test_no_form_sends_and_nothing_is_asked_for(browser: Browser, book_address: str) -> None:
    page = browser.new_page()
    page.goto(f"{book_address}/send/", wait_until="networkidle")
    asked: list[str] = []
    page.on("request", lambda one: asked.append(one.url))
    page.context.set_offline(True)
    page.evaluate(FILL, FILLED)
    save(page)
    assert [one for one in asked if not one.startswith("blob:")] == []
    assert page.evaluate("[...document.forms].every((one) => !one.hasAttribute('action'))")
    page.close()


def test_without_scripts_a_letter_is_asked_for(browser: Browser, book_address: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{book_address}/send/")
    assert not page.is_visible("form.send")
    assert "A letter will do" in page.inner_text("[data-send=without]")
    context.close()


def test_firefox_saves_the_same_and_opens_it(
    firefox_place: str, built_book: Path, book_address: str, tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:  # fmt: skip
    downloads = tmp_path / "downloads"
    downloads.mkdir()
    preferences = {
        "browser.download.folderList": 2,
        "browser.download.dir": str(downloads),
        "browser.download.useDownloadDir": True,
        "browser.download.always_ask_before_handling_new_types": False,
    }
    with launch_firefox(firefox_place, **preferences) as opened:
        for way in ("server", "disk"):
            address = (
                f"{book_address}/send/"
                if way == "server"
                else (built_book / "send/index.html").as_uri()
            )
            opened.goto(address)
            opened.wait_for("!document.querySelector('form.send').hidden")
            opened.evaluate(f"({FILL})({json.dumps(FILLED)})")
            opened.evaluate(
                "document.querySelector('form.send button[value=whole]').click() ?? true"
            )
            opened.wait_for(
                "document.querySelector('[data-send=said]').textContent.includes('Saved')"
            )
            saved = _arrived(downloads)
            read = in_boxes(form_of(lay_out(saved.read_text(encoding="utf-8"), "sent.md")))
            assert same(FILLED, read) == {}
            opened.goto(address)
            opened.evaluate(f"({FILL})({{}})")
            found = opened.asked(
                "browsingContext.locateNodes",
                context=opened.tab,
                locator={"type": "css", "value": "#box-opened"},
            )["nodes"][0]
            opened.asked(
                "input.setFiles",
                context=opened.tab,
                element={"sharedId": found["sharedId"]},
                files=[str(saved)],
            )
            opened.wait_for("document.querySelector('#box-title').value")
            assert same(FILLED, opened.evaluate(f"({READ})()")) == {}
            (place := tmp_path / way).mkdir()
            brought_in(saved.read_text(encoding="utf-8"), place, monkeypatch)
            saved.unlink()


def _arrived(folder: Path) -> Path:
    import time

    end = time.monotonic() + 20
    while time.monotonic() < end:
        whole = [path for path in folder.iterdir() if path.suffix == ".md" and path.stat().st_size]
        if whole and not list(folder.glob("*.part")):
            return whole[0]
        time.sleep(0.1)
    raise AssertionError("Firefox saved nothing.")


ROUND = """async (forms) => {
  const { writeRecipe, readRecipe } = await import("/js/words/recipe-file.js");
  return forms.map((form) => { const text = writeRecipe(form); return [text, readRecipe(text)]; });
}"""
BITS = [
    "yes", "no", "null", "~", "1_000", "0x1F", "2027-01-01", "12:30", "a: b", "a #b", "#", "- x",
    "? y", "* z", "& a", "! b", "% c", "@ d", "`e`", "'f'", '"g"', "\\", "[x]", "{y}", "‹z› w",
    "½ cup", "1½ tsp x", "Crème", "5 & 6", "a|b", "a > b", "x, y", "tail:", "…", "🜁", "\u200b",
    "\ttab", "1.", "2)", "true: x", "End. 2. x", "1. a. 2. b.", "roll it",
]  # fmt: skip


def _random_form(chance: random.Random) -> dict[str, str]:
    def words() -> str:
        return " ".join(chance.choice(BITS) for _ in range(chance.randint(1, 4)))

    form = {}
    for box in BOXES:
        if chance.random() < 0.8:
            many = box in ("ingredients", "method") or box in LISTS
            form[box] = "\n".join(words() for _ in range(chance.randint(1, 4) if many else 1))
    form["intro"] = form["after"] = ""
    form["method"] = form.get("method", "") + "\nEnd."
    form["title"] = "T " + form.get("title", "")
    return form


def _rows(lines: list[Line]) -> list[str]:
    return [f"{one.text}:" if one.is_heading else one.text for one in lines]


def _typed(box: str, text: str) -> list[str]:
    """Return what a box says as it was typed, bullets and what cannot be seen aside."""
    seen = text.replace("\u200b", " ").replace("\t", " ")
    if box == "method":
        return [_braced(row) for row in _rows(step_lines(seen))]
    if box == "ingredients" or box in LISTS:
        return [_braced(row) for row in _rows(box_lines(seen, box == "ingredients"))]
    return [_braced(" ".join(seen.split()))] if seen.strip() else []


def _braced(row: str) -> str:
    return row.replace("‹", "{").replace("›", "}")


def _shown(box: str, text: str) -> list[str]:
    if box == "method":  # each with its number, where the lines alone would be other steps
        return _typed(box, text)
    return [_braced(" ".join(line.split())) for line in text.split("\n") if line.strip()]


def test_whatever_is_typed_reads_as_it_was_typed(page: Page, scripts_address: str) -> None:
    page.goto(f"{scripts_address}/js/words/said.js")
    chance = random.Random(15)
    forms = [_random_form(chance) for _ in range(300)]
    apart = []
    for form, (text, again) in zip(forms, page.evaluate(ROUND, forms), strict=True):
        read = form_of(lay_out(text, "sent.md"))
        for box in BOXES:
            wanted = _typed(box, form.get(box, ""))
            by_desk, by_page = _shown(box, read[box]), _shown(box, again["boxes"].get(box, ""))
            if not wanted == by_desk == by_page or again["left"]:
                apart.append((box, wanted, by_desk, by_page, again["left"]))
    assert apart[:3] == []


def test_a_file_is_named_as_the_desk_names_it(page: Page, scripts_address: str) -> None:
    page.goto(f"{scripts_address}/js/words/said.js")
    titles = ["Großmutters Œufs", "Rødgrød & ål", "Ann’s jam", "🎄", "  Łódka  ", "a" * 70 + " b"]
    script = """async (titles) => {
      const { fileName } = await import("/js/words/recipe-doubts.js");
      return titles.map(fileName);
    }"""
    wanted = [f"{slug_of(title)[:60].rstrip('-')}.md" for title in titles]
    assert page.evaluate(script, titles) == wanted


def test_the_books_own_recipes_open_as_the_desk_opens_them(
    page: Page, scripts_address: str
) -> None:
    page.goto(f"{scripts_address}/js/words/said.js")
    folder = Path(__file__).parents[2] / "recipes"
    texts = [path.read_text(encoding="utf-8") for path in sorted(folder.glob("*.md"))]
    script = """async (texts) => {
      const { readRecipe } = await import("/js/words/recipe-file.js");
      return texts.map(readRecipe);
    }"""
    plain = 0
    for text, found in zip(texts, page.evaluate(script, texts), strict=True):
        laid = {
            box: words.replace(" …", "")
            for box, words in in_boxes(form_of(lay_out(text, "own.md"))).items()
        }
        apart = same(laid, found["boxes"])
        plain += not apart
        # what it does not show it names: nothing is left out in silence
        assert not apart or found["left"], apart
    assert plain >= 17


def test_the_same_is_asked_as_at_the_desk() -> None:
    assert set(BOXES) == set(FIELDS) - PICTURES
