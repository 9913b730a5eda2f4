"""A form that is sent twice does its work once: by Enter twice, one behind the other or at once.

Each form of the desk is sent as its page bears it. What is sent with the mark of another visit is
another wish, and done again.
"""

from __future__ import annotations

import json
import threading
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from browser.firefox import Firefox
from desk.conftest import Answer, OpenDesk, open_on, open_with_lists
from desk.test_giving_told import NAME, TEXT, WAY
from desk.test_rooms import JAM, boxes_of
from stillroom.desk import paper_room
from stillroom.desk.running import Done

PASTED = (
    "Pear butter\n\nMakes 4 jars\n\nIngredients\n2 kg pears\n1 kg sugar\n\nMethod\n1. Boil it.\n"
)
HAPPENED = {"what": "begun", "whom": "quince chutney"}


@pytest.fixture
def own(tmp_path: Path) -> Iterator[OpenDesk]:
    with open_with_lists(tmp_path / "book") as opened:
        (opened.folder / NAME).write_text(TEXT, encoding="utf-8")
        yield opened


@pytest.fixture
def empty(tmp_path: Path) -> Iterator[OpenDesk]:
    opened, thread = open_on(tmp_path / "book")
    yield opened
    opened.ask("/stop", "POST")
    thread.join(20)


def files_in(folder: Path) -> dict[str, bytes]:
    """Return what lies in a book, the desk's own folder too; locks and what is typed apart."""
    rows = (path for path in folder.rglob("*") if path.is_file())
    names = {path.relative_to(folder).as_posix(): path for path in rows}
    apart = (".desk/typed", ".desk/unsaved", ".desk/open")
    return {name: at.read_bytes() for name, at in names.items() if not name.startswith(apart)}


def sent_by(desk: OpenDesk, page: str, form: str, boxes: dict[str, str]) -> dict[str, str]:
    """Return what a form of a page sends, with some boxes filled otherwise."""
    found = boxes_of(desk, page)
    if form == "/giving/happened":  # it stands on the page of its list, above another form
        return {"name": found["name"], "visit": found["visit"]} | boxes
    return found | boxes | ({"as": "book"} if form.endswith("/keep") else {})


FORMS: dict[str, tuple[str, str, dict[str, str]]] = {
    "keep, new": ("/write/new-recipe", "/write/new-recipe/keep", JAM),
    "keep": ("/write/quince-chutney", "/write/quince-chutney/keep", {"card_use": "Cold."}),
    "keep, a draft": ("/write/quince-chutney", "/write/quince-chutney/keep", {"makes": ""}),
    "take it out": ("/write/quince-chutney", "/write/quince-chutney/out", {}),
    "bring in": ("/bring", "/bring", {"pasted": PASTED}),
    "the book": ("/book", "/book", {"foot": "Ann’s"}),
    "begin a list": ("/giving", "/giving", {"who": "The Marrables", "called": "Midsummer"}),
    "keep a list": (WAY, "/giving/list", {"households|0|avoid": "nuts"}),
    "this happened": (WAY, "/giving/happened", HAPPENED),
}


@pytest.mark.parametrize(("page", "way", "boxes"), FORMS.values(), ids=FORMS)
def test_the_same_form_twice_is_done_once(
    own: OpenDesk, page: str, way: str, boxes: dict[str, str]
) -> None:
    sent = sent_by(own, page, way, boxes)
    first = own.ask(way, "POST", sent)
    assert first.status in (200, 303), first.text
    before = files_in(own.folder)
    second = own.ask(way, "POST", sent)
    told = (second.status, second.headers.get("location"), second.body)
    assert told == (first.status, first.headers.get("location"), first.body)
    assert files_in(own.folder) == before


def at_once(asks: list[Callable[[], Answer]]) -> list[Answer]:
    """Ask several things at the same moment."""
    answers: list[Answer] = []
    threads = [threading.Thread(target=lambda ask=ask: answers.append(ask())) for ask in asks]
    for one in threads:
        one.start()
    for one in threads:
        one.join()
    return answers


def parts_of(sent: dict[str, str], line: str) -> tuple[bytes, str]:
    """Return a form with a file as a browser sends it: the line between its parts is made up."""
    rows = [
        f'--{line}\r\nContent-Disposition: form-data; name="{name}"\r\n\r\n{value}\r\n'
        for name, value in sent.items()
    ]
    rows += [
        f'--{line}\r\nContent-Disposition: form-data; name="file"; filename="pear.txt"\r\n'
        f"Content-Type: text/plain\r\n\r\n{PASTED}\r\n--{line}--\r\n"
    ]
    return "".join(rows).encode(), f"multipart/form-data; boundary={line}"


def test_a_file_that_is_sent_twice_at_the_same_moment_is_one_draft(own: OpenDesk) -> None:
    sent = {"visit": boxes_of(own, "/bring")["visit"]}

    def ask(line: str) -> Answer:
        body, kind = parts_of(sent, line)
        return own.ask("/bring", "POST", body=body, Content_Type=kind)

    answers = at_once([lambda line=line: ask(line) for line in ("----a1", "----b22", "----c333")])
    assert [one.status for one in answers] == [200] * 3
    assert {one.body for one in answers} == {answers[0].body}
    assert [path.name for path in (own.folder / "drafts").iterdir()] == ["pear-butter.md"]


def test_what_another_visit_sends_is_done_again(own: OpenDesk) -> None:
    log = own.folder / "giving" / "log.yml"
    bought = {"what": "bought", "whom": "vodka", "amount": "1 l", "paid": "12"}
    for count in (1, 2):
        sent = sent_by(own, WAY, "/giving/happened", bought)
        for _ in range(2):
            assert own.ask("/giving/happened", "POST", sent).status == 303
        assert log.read_text(encoding="utf-8").count("bought: vodka") == count
    sent["paid"] = "13"  # another word on the same page
    assert own.ask("/giving/happened", "POST", sent).status == 303
    assert log.read_text(encoding="utf-8").count("bought: vodka") == 3


def test_a_book_is_made_once(empty: OpenDesk) -> None:
    sent = boxes_of(empty, "/begin") | {"title": "Heron Ferry"}
    answers = at_once([lambda: empty.ask("/begin", "POST", sent)] * 2)
    assert [(one.status, one.headers["location"]) for one in answers] == [(303, "/")] * 2


def test_a_print_is_made_once_and_anew_later(
    own: OpenDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    made: list[list[str]] = []

    async def run(module: str, arguments: list[str], *more: object) -> Done:
        made.append(arguments)
        return Done(1, ("The paper is out.",))

    monkeypatch.setattr(paper_room, "run", run)
    monkeypatch.setattr("stillroom.desk.once.SECONDS", 1000.0)
    sent = boxes_of(own, "/paper") | {"what": "cards"}
    assert [own.ask("/paper", "POST", sent).status for _ in range(2)] == [422, 422]
    assert len(made) == 1
    monkeypatch.setattr("stillroom.desk.once.SECONDS", 0.0)
    own.ask("/paper", "POST", sent)
    assert len(made) == 2, "a recipe may have been changed since"


def test_publishing_twice_builds_once(own: OpenDesk) -> None:
    sent = boxes_of(own, "/publish") | {"way": "folder"}
    answers = at_once([lambda: own.ask("/publish", "POST", sent)] * 2)
    assert [one.headers.get("location") for one in answers] == ["/publish/now"] * 2
    own.ask("/publish/stop", "POST")


def _drafts(desk: OpenDesk) -> list[str]:
    return sorted(path.name for path in (desk.folder / "drafts").iterdir())


def _press_twice_in_chromium(page: Page, desk: OpenDesk) -> None:
    page.goto(desk.first)
    page.goto(f"{desk.origin}/bring")
    page.fill("#pasted", PASTED)
    page.dblclick("main button.action--first")
    page.wait_for_selector("text=1 draft was made")
    page.goto(f"{desk.origin}/write/new")
    for name in ("title", "makes", "ingredients", "method", "keeps_unopened", "keeps_source"):
        page.fill(f"#{name}", JAM[name])
    page.focus("main button.action--first")
    page.keyboard.press("Enter")
    page.keyboard.press("Enter")
    page.wait_for_selector("text=Kept, and in the book.")


@pytest.mark.parametrize("scripts", [True, False], ids=["with scripts", "without"])
def test_two_presses_in_chromium(browser: Browser, own: OpenDesk, scripts: bool) -> None:
    context = browser.new_context(java_script_enabled=scripts)
    _press_twice_in_chromium(context.new_page(), own)
    context.close()
    assert _drafts(own) == ["pear-butter.md"]
    assert not (own.folder / "recipes" / "plum-jam-2.md").exists()
    assert (own.folder / "recipes" / "plum-jam.md").exists()


def test_two_presses_in_firefox(firefox: Firefox, own: OpenDesk) -> None:
    firefox.goto(own.first)
    firefox.goto(f"{own.origin}/bring")
    firefox.evaluate(  # a window without a screen hears no key at a button
        f"""(() => {{
          document.getElementById("pasted").value = {json.dumps(PASTED)};
          const button = document.querySelector("main button.action--first");
          setTimeout(() => button.click(), 20);
          button.click();
          return true;
        }})()"""
    )
    firefox.wait_for("document.querySelector('section[role=status] h2')?.innerText")
    assert _drafts(own) == ["pear-butter.md"]
