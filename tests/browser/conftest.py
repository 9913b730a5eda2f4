"""One real Chromium and one real Firefox for the tests, and a server for the built book.

Chromium is looked for in STILLROOM_CHROMIUM, on the PATH and where each system keeps it, Firefox
in STILLROOM_FIREFOX and likewise. Without one these tests are skipped on a reader's own machine;
where CI is set they fail.
"""

from __future__ import annotations

import functools
import http.server
import json
import os
import shutil
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import NoReturn
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, Error, Page

from browser.firefox import Firefox, find_firefox, launch_firefox
from one_browser import open_once
from stillroom.publish.scripts import lay_scripts

from .looking import Looker

NAMES = ("chromium", "chromium-browser", "google-chrome", "chrome", "msedge")
PLACES = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    r"C:\Program Files\Google\Chrome\Application\chrome.exe",
    r"C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe",
)
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    # the list below the box for addresses is a page of its own, which nobody sees here and which
    # takes a fifth of what a page of the book takes; the last such flag counts, so what Playwright
    # switches off for the sake of steady tests stands here again
    "--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup,WebUIOmniboxFullPopup,AimEnabled"
    ",AvoidUnnecessaryBeforeUnloadCheckSync,DestroyProfileOnBrowserClose,HttpsUpgrades"
    ",HttpsFirstBalancedModeAutoEnable,LensOverlay,MediaRouter,PaintHolding,PreconnectToSearch"
    ",ThirdPartyStoragePartitioning,AvoidCorsURLLoaderRestartOnRedirect,OptimizationHints"
    ",NetworkTimeServiceQuerying,TcpPortRandomizationWin",
]


def find_chromium() -> str | None:
    named = os.environ.get("STILLROOM_CHROMIUM")
    found = [named] if named else [shutil.which(name) for name in NAMES]
    found += [place for place in PLACES if Path(place).exists()]
    return next((place for place in found if place), None)


def wait_until(page: Page, expression: str) -> None:
    """Wait until an expression holds; the policy forbids the page to evaluate strings itself."""
    for _ in range(150):
        if page.evaluate(expression):
            return
        page.wait_for_timeout(100)
    pytest.fail(f"not so within 15 s: {expression}")


def no_browser(name: str) -> NoReturn:
    message = f"No {name} found: install it, or set STILLROOM_{name.upper()} to its program file."
    if os.environ.get("CI"):
        pytest.fail(message)
    pytest.skip(message)


@pytest.fixture(scope="session")
def firefox_place() -> str:
    return find_firefox() or no_browser("Firefox")


@pytest.fixture(scope="session")
def firefox(firefox_place: str) -> Iterator[Firefox]:
    """One tab of Firefox for all tests; what runs before each page is taken away by its test."""
    with launch_firefox(firefox_place) as opened:
        yield opened


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    place = find_chromium()
    if place is None:
        no_browser("Chromium")
    yield from open_once(place, FLAGS)


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        """Say nothing: the tests' own output is what is read."""


class _Unsearched(_Quiet):
    """Answers the search's index without its parts: to take them in is a third of a page's work."""

    def do_GET(self) -> None:
        if urlsplit(self.path).path != "/search/search_index.json":
            return super().do_GET()
        whole = json.loads(Path(self.translate_path(self.path)).read_text(encoding="utf-8"))
        said = json.dumps({**whole, "docs": []}).encode()
        self.send_response(200)
        self.send_header("Content-Type", "application/json")
        self.send_header("Content-Length", str(len(said)))
        self.end_headers()
        self.wfile.write(said)
        return None


class _Server(http.server.ThreadingHTTPServer):
    def handle_error(self, request: object, client_address: object) -> None:
        """Let a page that closes in the middle of a file go without a traceback."""
        if not isinstance(sys.exception(), ConnectionError):
            super().handle_error(request, client_address)


@functools.cache
def serve_folder(folder: Path, searched: bool = True) -> str:
    """Serve a folder from this machine until the tests end; returns its address."""
    handler = functools.partial(_Quiet if searched else _Unsearched, directory=str(folder))
    server = _Server(("127.0.0.1", 0), handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    return f"http://127.0.0.1:{server.server_address[1]}"


@pytest.fixture(scope="session")
def scripts_address(tmp_path_factory: pytest.TempPathFactory) -> str:
    """Serve every script as it is written, with the sentences that a build writes beside them."""
    folder = tmp_path_factory.mktemp("scripts")
    lay_scripts(folder)
    return serve_folder(folder)


def open_tab(browser: Browser) -> Page:
    return browser.new_context(locale="en-GB", timezone_id="Europe/London").new_page()


@contextmanager
def without_errors(page: Page) -> Iterator[Page]:
    """Fail when a page itself reports an error."""
    errors: list[str] = []

    def note(error: Error) -> None:
        errors.append(str(error))

    page.on("pageerror", note)
    yield page
    page.remove_listener("pageerror", note)
    assert errors == []


@pytest.fixture(scope="session")
def tab(browser: Browser) -> Iterator[Page]:
    """One tab for all tests: to open one costs twice what a page in it costs."""
    opened = open_tab(browser)
    yield opened
    opened.context.close()


FORGET = "try { localStorage.clear(); sessionStorage.clear(); } catch { /* no origin, no store */ }"


@pytest.fixture
def page(tab: Page) -> Iterator[Page]:
    """Hand out the tab as if it were new: nothing kept, on paper of no sort, of the usual size.

    What sets the clock, answers requests itself or asks for leave takes `fresh_page`.
    """
    with without_errors(tab):
        yield tab
        tab.evaluate(FORGET)
        tab.goto("about:blank")
    tab.context.clear_cookies()
    tab.emulate_media(media="null", color_scheme="null")
    tab.set_viewport_size({"width": 1280, "height": 720})


@contextmanager
def before_each_page(page: Page, script: str) -> Iterator[None]:
    """Run JavaScript in every page before the page's own, for as long as it is needed."""
    tools = page.context.new_cdp_session(page)
    tools.send("Page.enable")
    added = tools.send("Page.addScriptToEvaluateOnNewDocument", {"source": script})
    try:
        yield
    finally:
        tools.send("Page.removeScriptToEvaluateOnNewDocument", added)
        tools.detach()


@pytest.fixture
def fresh_page(browser: Browser) -> Iterator[Page]:
    """Open a tab that nobody used and nobody will use."""
    opened = open_tab(browser)
    with without_errors(opened):
        yield opened
        opened.context.close()


@pytest.fixture(scope="session")
def chromium_ways(browser: Browser) -> Iterator[Callable[[str, int], Looker]]:
    opened: dict[tuple[str, int], Page] = {}

    def look(scheme: str, width: int) -> Looker:
        page = opened.get((scheme, width)) or browser.new_page(
            color_scheme=scheme,  # type: ignore[arg-type]
            viewport={"width": width, "height": 800},
        )
        opened[scheme, width] = page
        return Looker(page.goto, page.evaluate)

    yield look
    for page in opened.values():
        page.close()


@pytest.fixture(scope="session")
def firefox_ways(firefox_place: str) -> Iterator[Callable[[str, int], Looker]]:
    """Firefox takes day or night from a preference of its own: one of each is run, once asked."""
    preference = "layout.css.prefers-color-scheme.content-override"
    with ExitStack() as running:

        @functools.cache
        def firefox_by(scheme: str) -> Firefox:
            choice = {preference: 0 if scheme == "dark" else 1}
            return running.enter_context(launch_firefox(firefox_place, **choice))

        def look(scheme: str, width: int) -> Looker:
            one = firefox_by(scheme)
            one.resize(width, 800)
            return Looker(one.goto, lambda asked: one.evaluate(f"({asked})()"))

        yield look


@pytest.fixture(scope="session")
def book_address(built_book: Path) -> str:
    """Serve the book to whoever searches nothing in it."""
    return serve_folder(built_book, searched=False)


@pytest.fixture
def scripts_page(page: Page, book_address: str) -> Page:
    """Open what shows nothing, for whoever asks a script of the book and no page: a page costs."""
    page.goto(f"{book_address}/assets/stillroom/js/words/said.js")
    return page


@pytest.fixture(scope="session")
def searched_address(built_book: Path) -> str:
    """Serve the book as it is."""
    return serve_folder(built_book)
