"""What is typed into a room and not kept comes back: closing browser or desk loses nothing."""

from __future__ import annotations

import json
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Dialog, Page

from browser.conftest import FORGET, wait_until
from browser.firefox import Firefox
from desk.conftest import OpenDesk, forget_typed, open_on, open_with_lists, small_book
from desk.test_giving_told import NAME, TEXT, WAY

LEAVE = '.head nav a[href="/"]'
SAID = "[data-typed-said]:not([hidden])"
AVOID = '[name="households|0|avoid"]'


@pytest.fixture(scope="module")
def lists(tmp_path_factory: pytest.TempPathFactory) -> Iterator[OpenDesk]:
    with open_with_lists(tmp_path_factory.mktemp("typed") / "book") as opened:
        yield opened


@pytest.fixture
def own(lists: OpenDesk) -> OpenDesk:
    """Return a desk on whose pages nothing has been typed, with a list as it was."""
    forget_typed(lists.folder)
    (lists.folder / NAME).write_text(TEXT, encoding="utf-8")
    return lists


@pytest.fixture
def visit(tab: Page, own: OpenDesk) -> Iterator[BrowserContext]:
    """Hand out the browser that is open; what this desk left in it goes with its pages."""
    context = tab.context
    yield context
    for page in context.pages:
        if page is not tab:
            page.evaluate(FORGET)
            page.close()
    context.clear_cookies()


def open_room(context: BrowserContext, own: OpenDesk, way: str) -> Page:
    page = context.new_page()
    page.goto(own.first)
    page.goto(own.origin + way)
    page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
    return page


def kept(own: OpenDesk) -> int:
    """Return how many rooms hold something that was typed."""
    return len(list((own.folder / ".desk" / "typed").glob("*.json")))


def typed(page: Page, box: str, words: str) -> None:
    """Type into a box, and wait until the desk has taken it down."""
    with page.expect_response("**/typed"):
        page.fill(box, words)


BOXES = [
    ("/book", "#site_name", "Ann's own book"),
    ("/book", "#text_index", "Welcome.\n\nHere is what we make."),
    ("/book", "#larder", "fig syrup:\n  from: plant"),
    ("/bring", "#pasted", "PLUM JAM\n\n1 kg plums\n1 kg sugar\n\nBoil."),
    (WAY, AVOID, "dairy, gluten"),
    (WAY, "#whom", "quince chutney"),
]


_LOOKS = 20
_MOMENT = 250


@pytest.mark.parametrize(("way", "box", "words"), BOXES)
def test_a_browser_that_is_closed_loses_nothing(
    browser: Browser, own: OpenDesk, way: str, box: str, words: str
) -> None:
    first = browser.new_context()
    page = open_room(first, own, way)
    assert page.locator(SAID).count() == 0
    typed(page, box, words)
    first.close()
    second = browser.new_context()
    page = open_room(second, own, way)
    assert page.input_value(box) == words
    assert "typed before and not kept" in page.locator(SAID).inner_text()
    page.click(f"{SAID} button")
    page.wait_for_selector(SAID, state="hidden")
    assert page.input_value(box) != words
    page.goto(own.origin + way)
    assert page.input_value(box) != words
    assert page.locator(SAID).count() == 0
    assert kept(own) == 0
    second.close()


@pytest.mark.parametrize(("way", "box", "words"), BOXES)
def test_whoever_leaves_is_asked_and_loses_nothing_by_leaving(
    visit: BrowserContext, own: OpenDesk, way: str, box: str, words: str
) -> None:
    page, asked = open_room(visit, own, way), []

    def leave(dialog: Dialog) -> None:
        asked.append(dialog.type)
        dialog.accept()

    page.on("dialog", leave)
    page.fill(box, words)  # and leaves before the pause in which it is taken down
    with page.expect_navigation():
        page.click(LEAVE)
    assert asked == ["beforeunload"]
    for _ in range(_LOOKS):  # what a page sends as it is left may come in behind the next request
        page.goto(own.origin + way)
        if page.input_value(box) == words:
            break
        page.wait_for_timeout(_MOMENT)
    assert page.input_value(box) == words


def test_what_is_chosen_comes_back_and_is_asked_about(visit: BrowserContext, own: OpenDesk) -> None:
    page, asked = open_room(visit, own, "/book"), []

    def stay(dialog: Dialog) -> None:
        asked.append(dialog.type)
        dialog.dismiss()

    page.on("dialog", stay)
    with page.expect_response("**/typed"):
        page.check('[name="send_us"][value="no"]')
    page.click(LEAVE)
    page.wait_for_timeout(300)
    assert asked == ["beforeunload"]
    again = open_room(visit, own, "/book")
    assert again.is_checked('[name="send_us"][value="no"]')


def test_what_is_kept_is_let_go_of(visit: BrowserContext, own: OpenDesk) -> None:
    page = open_room(visit, own, "/book")
    page.on("dialog", lambda dialog: pytest.fail(f"asked: {dialog.type}"))
    typed(page, "#site_name", "Heron Ferry book of ours")
    with page.expect_navigation():
        page.click("main form button.action--first")
    assert page.locator(".said:not([hidden])").inner_text() == "Kept."
    assert page.input_value("#site_name") == "Heron Ferry book of ours"
    assert kept(own) == 0
    page.goto(own.origin + "/bring")
    typed(page, "#pasted", "PLUM JAM\n\n1 kg plums\n1 kg sugar\n\nBoil it, and pot it.")
    with page.expect_navigation():
        page.click("main form button.action--first")
    assert "1 draft was made" in page.content()
    assert kept(own) == 0


def test_what_comes_late_of_a_page_that_was_kept_is_not_taken(own: OpenDesk) -> None:
    boxes = json.dumps({"over": "", "boxes": {"site_name": "late"}, "shown": {}})
    sent = {"room": "book", "visit": "abcdef", "typed": boxes}
    assert own.ask("/typed", "POST", sent).status == 204
    assert kept(own) == 1
    assert own.ask("/bring", "POST", {"pasted": "", "visit": "abcdef"}).status == 422
    form = {"pasted": "Plum jam\n\n1 kg plums\n\nBoil.", "visit": "abcdef"}
    assert own.ask("/bring", "POST", form).status == 200
    next((own.folder / ".desk" / "typed").glob("*.json")).unlink()
    assert own.ask("/typed", "POST", sent).status == 204
    assert kept(own) == 0


def test_a_file_that_was_changed_elsewhere_is_not_typed_over(
    visit: BrowserContext, own: OpenDesk
) -> None:
    page = open_room(visit, own, WAY)
    typed(page, AVOID, "dairy")
    page.close(run_before_unload=False)
    path = own.folder / NAME
    path.write_text(TEXT.replace("Midwinter", "Midwinter eve", 1), encoding="utf-8")
    page = open_room(visit, own, WAY)
    assert page.input_value(AVOID) != "dairy"
    said = page.locator(SAID).inner_text()
    assert "has changed since" in said
    assert ": dairy" in said
    assert "stand in their boxes again" not in said
    typed(page, AVOID, "eggs")  # and both are there when it is opened again
    page.close(run_before_unload=False)
    page = open_room(visit, own, WAY)
    assert page.input_value(AVOID) == "eggs"
    assert ": dairy" in page.locator(SAID).inner_text()


def test_a_note_that_is_refused_stands_in_its_boxes_again(
    visit: BrowserContext, own: OpenDesk
) -> None:
    page = open_room(visit, own, WAY)
    page.fill("#whom", "no such thing")
    page.fill("#words", "it set at last")
    with page.expect_navigation():
        page.click('form[action="/giving/happened"] button:has-text("Note it")')
    assert page.locator("p.wrong[role=alert]").count() == 1
    assert page.input_value("#whom") == "no such thing"
    assert page.input_value("#words") == "it set at last"


@pytest.mark.parametrize(
    "sent",
    [
        {"room": "../book", "typed": '{"over": "", "boxes": {"a": "b"}, "shown": {}}'},
        {"room": "giving:../../secret.yml", "typed": '{"over": "", "boxes": {}, "shown": {}}'},
        {"room": "book", "typed": "no json"},
        {"room": "book", "typed": '{"over": "", "boxes": {"a": ["b"]}, "shown": {}}'},
        {"room": "book", "typed": '["a"]'},
        {},
    ],
)
def test_what_no_page_of_the_desk_sends_is_not_taken(own: OpenDesk, sent: dict[str, str]) -> None:
    assert own.ask("/typed", "POST", sent).status == 404
    assert kept(own) == 0


def test_a_desk_that_was_closed_has_it_when_it_is_opened_again(tmp_path: Path) -> None:
    book = small_book(tmp_path / "book")
    opened, thread = open_on(book)
    boxes = json.dumps({"over": "", "boxes": {"pasted": "Fig jam"}, "shown": {}})
    assert opened.ask("/typed", "POST", {"room": "bring", "typed": boxes}).status == 204
    opened.ask("/stop", "POST")
    thread.join(20)
    opened, thread = open_on(book)
    assert "Fig jam" in opened.ask("/bring").text
    opened.ask("/stop", "POST")
    thread.join(20)


def test_a_book_changed_elsewhere_stands_beside_what_was_typed(own: OpenDesk) -> None:
    from desk.test_rooms import boxes_of

    boxes = boxes_of(own, "/book") | {"larder": "fig syrup:\n  contains: nothing\n"}
    path = own.folder / "larder.yml"
    before = path.read_bytes() if path.is_file() else None
    path.write_text("plum syrup:\n  contains: nothing\n", encoding="utf-8")
    answer = own.ask("/book", "POST", boxes)
    assert answer.status == 409
    assert "<del>fig syrup:</del>" in answer.text
    assert "<ins>plum syrup:</ins>" in answer.text
    assert path.read_text(encoding="utf-8").startswith("plum syrup")
    if before is None:
        path.unlink()
    else:
        path.write_bytes(before)


def test_the_kind_goes_with_the_title_until_it_is_chosen(
    visit: BrowserContext, own: OpenDesk
) -> None:
    page = open_room(visit, own, "/write/new")
    for title, kind in [
        ("Jam", "jam"),
        ("Jam tarts", "tart"),
        ("Dog biscuits", "dog biscuit"),
        ("Pickled", ""),
        ("Bread and butter pickles", "bread and butter pickle"),
    ]:
        with page.expect_response("**/look"):
            page.fill("#title", title)
        wait_until(page, f"document.getElementById('kind').value === '{kind}'")
    with page.expect_response("**/look"):
        page.select_option("#kind", "confection")
    with page.expect_response("**/look"):
        page.fill("#title", "Plum jam")
    page.wait_for_timeout(200)
    assert page.input_value("#kind") == "confection"


def test_firefox_keeps_it_as_well(firefox: Firefox, own: OpenDesk) -> None:
    firefox.goto(own.first)
    firefox.goto(own.origin + "/book")
    firefox.evaluate(
        "(() => { const box = document.getElementById('site_name'); box.value = 'Fox book';"
        " box.dispatchEvent(new Event('input', { bubbles: true })); return 1; })()"
    )
    for _ in range(100):
        if kept(own):
            break
        time.sleep(0.1)
    firefox.goto(own.origin + "/bring")
    firefox.goto(own.origin + "/book")
    firefox.wait_for("document.getElementById('site_name').value === 'Fox book'")
    assert firefox.evaluate("document.querySelector('[data-typed-said]').hidden") is False
