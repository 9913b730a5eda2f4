"""What is typed stays in the browser: no form can send, and none needs the browser's storage.

In Chromium and in Firefox, with storage blocked, full and corrupt, and without JavaScript, where
Enter in a field would send its form if the form could be sent.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from bs4 import BeautifulSoup
from playwright.sync_api import Browser, Page, Request

from browser.conftest import serve_folder
from browser.firefox import Firefox, launch_firefox
from sampling import share

from .conftest import FORGET, before_each_page, wait_until

NAME = "Zebedee Quillfeather"
ENTER = "\ue007"
CARD = "/r/quince-ratafia/"
PAGES = (CARD, "/r/felted-bauble/", "/print-room/", "/year/", "/browse/", "/")
STORAGE = {
    "blocked": """
        for (const name of ["localStorage", "sessionStorage"]) {
          Object.defineProperty(window, name, {
            get() { throw new DOMException("not allowed", "SecurityError"); },
          });
        }""",
    "full": """
        Storage.prototype.setItem = () => {
          throw new DOMException("no room", "QuotaExceededError");
        };""",
    "corrupt": """
        Storage.prototype.getItem = () => "{not ours";""",
    "of another shape": """
        const shapes = { from: {}, paper: 7, thing: "dragon", size: "x", start: "many", own: 1 };
        Storage.prototype.getItem = () => JSON.stringify(shapes);""",
    "null": """
        Storage.prototype.getItem = () => "null";""",
}
PRINTED = """
    window.printedTimes = 0;
    window.print = () => { window.printedTimes += 1; };"""


def test_no_form_of_the_book_can_be_sent(built_book: Path) -> None:
    forms = 0
    for path in built_book.rglob("*.html"):
        text = path.read_text(encoding="utf-8")
        for form in BeautifulSoup(text, "html.parser").find_all("form"):
            forms += 1
            assert form.get("method") == "dialog", path
            assert not form.has_attr("action"), path
            assert not form.select("[formaction], [formmethod]"), path
        if "http-equiv" in text:
            assert "form-action 'none'" in text, path
    assert forms > 50


@pytest.mark.parametrize("storage", STORAGE)
def test_the_card_prints_and_sends_nothing_whatever_storage_does(
    page: Page, book_address: str, storage: str
) -> None:
    asked: list[str] = []

    def note(request: Request) -> None:
        asked.append(request.url + (request.post_data or ""))

    page.on("request", note)
    with before_each_page(page, STORAGE[storage] + PRINTED):
        page.goto(book_address + CARD, wait_until="networkidle")
        page.locator(".card-form [name=to]").fill(NAME)
        page.locator(".card-form [name=from]").fill(NAME)
        page.locator(".card-form [name=to]").press("Enter")
        page.locator(".card-form button").click()
        wait_until(page, "window.printedTimes === 2")
        assert NAME in page.locator(".usage-card .card-to").first.text_content()
        page.goto(book_address + "/print-room/", wait_until="networkidle")
        page.locator(".print-room-form [name=to]").fill(NAME)
        page.locator("[data-recipe=quince-ratafia]").first.fill("1")
        page.locator(".print-room-form [name=to]").press("Enter")
        wait_until(page, "window.printedTimes === 1")
    page.remove_listener("request", note)
    assert len(asked) > 20
    assert [address for address in asked if "Zebedee" in address] == []
    assert urlsplit(page.url).query == ""


@pytest.mark.sampled
@pytest.mark.parametrize("storage", [*STORAGE][: share(2, len(STORAGE))])
def test_firefox_prints_the_card_and_sends_nothing_whatever_storage_does(
    firefox: Firefox, book_address: str, storage: str
) -> None:
    with firefox.before_each_page(STORAGE[storage] + PRINTED):
        firefox.goto(book_address + CARD)
        firefox.wait_for("!document.querySelector('.card-form').hidden")
        firefox.evaluate("document.querySelector('.card-form [name=to]').focus()")
        firefox.press(*NAME, ENTER)
        firefox.wait_for("window.printedTimes === 1")
        firefox.evaluate("document.querySelector('.card-form button').click()")
        firefox.wait_for("window.printedTimes === 2")
        assert NAME in firefox.evaluate("document.querySelector('.card-to').textContent")
        assert firefox.evaluate("location.search") == ""
        firefox.evaluate(f"(() => {{ {FORGET} return true; }})()")


@pytest.fixture(scope="module")
def bare_address(built_book: Path, tmp_path_factory: pytest.TempPathFactory) -> str:
    """Serve the book as a browser without JavaScript has it, but with every form in sight."""
    folder = tmp_path_factory.mktemp("bare")
    for path in PAGES:
        text = (built_book / path.strip("/") / "index.html").read_text(encoding="utf-8")
        text = re.sub(r"(<form [^>]*?) hidden", r"\1", text)
        text = text.replace('<input name="to"', '<input autofocus name="to"', 1)
        text = re.sub(r'<meta http-equiv="Content-Security-Policy"[^>]*>', "", text)
        there = folder / path.strip("/") / "index.html"
        there.parent.mkdir(parents=True, exist_ok=True)
        there.write_text(text, encoding="utf-8")
    return serve_folder(folder)


def fields_of(page: Page) -> Iterator[tuple[int, str]]:
    fields = page.locator("form input:not([type=hidden]):not([type=checkbox])")
    for number in range(fields.count()):
        yield number, fields.nth(number).get_attribute("type") or "text"


@pytest.fixture(scope="module")
def plain_tab(browser: Browser) -> Iterator[Page]:
    """One tab without JavaScript."""
    context = browser.new_context(java_script_enabled=False)
    yield context.new_page()
    context.close()


@pytest.mark.parametrize("path", PAGES)
def test_enter_sends_no_form_without_javascript(
    plain_tab: Page, bare_address: str, path: str
) -> None:
    page = plain_tab
    asked: list[str] = []

    def note(request: Request) -> None:
        if request.is_navigation_request():
            asked.append(request.url)

    page.goto(bare_address + path)
    page.on("request", note)
    tried = 0
    for number, kind in fields_of(page):
        field = page.locator("form input:not([type=hidden]):not([type=checkbox])").nth(number)
        if not field.is_visible():
            continue
        if kind == "text":
            field.fill(NAME)
        field.press("Enter")
        tried += 1
    for button in page.locator("form button:visible").all():
        button.click()
        tried += 1
    page.wait_for_timeout(100)
    page.remove_listener("request", note)
    assert page.url == bare_address + path
    assert asked == []
    assert tried > 0 or path == "/"


def test_enter_sends_no_form_in_firefox_without_javascript(
    firefox_place: str, bare_address: str
) -> None:
    with launch_firefox(firefox_place, **{"javascript.enabled": False}) as firefox:
        for path in (CARD, "/print-room/"):
            firefox.goto(bare_address + path)
            firefox.press(*NAME, ENTER)
            firefox.press(*"x", ENTER)
            there = firefox.asked("browsingContext.getTree")["contexts"][0]["url"]
            assert there == bare_address + path
