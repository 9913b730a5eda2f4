"""One desk, open on a small book of its own, for all tests that come in by its door."""

from __future__ import annotations

import http.client
import shutil
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from urllib.parse import urlencode, urlsplit

import pytest

from browser.conftest import (  # noqa: F401
    browser,
    chromium_ways,
    firefox,
    firefox_place,
    firefox_ways,
    page,
    tab,
)
from stillroom.beginning.book import Answers, begin_book
from stillroom.desk.serving import open_desk

DEMO = Path(__file__).resolve().parents[2]
TAKEN = ("quince-chutney", "lavender-sugar", "double-vanilla-extract")


def small_book(folder: Path) -> Path:
    """Begin a book and put three of the demo's recipes into it, with two of their pictures."""
    begin_book(folder, Answers(title="Heron Ferry book"))
    for name in TAKEN:
        shutil.copy(DEMO / "recipes" / f"{name}.md", folder / "recipes")
    pictures = next(folder.glob("*/pictures"), folder / "pages" / "pictures")
    pictures.mkdir(parents=True, exist_ok=True)
    for name in TAKEN:
        shutil.copy(DEMO / "site_demo/pages/pictures" / f"{name}.svg", pictures)
    return folder


@dataclass
class Answer:
    status: int
    headers: dict[str, str]
    body: bytes

    @property
    def text(self) -> str:
        return self.body.decode("utf-8", errors="replace")


@dataclass
class OpenDesk:
    """An open desk as a stranger or its own browser would ask it."""

    folder: Path
    first: str = ""
    cookie: str = ""
    lines: list[str] = field(default_factory=list)

    @property
    def netloc(self) -> str:
        return urlsplit(self.first).netloc

    @property
    def origin(self) -> str:
        return f"http://{self.netloc}"

    def ask(
        self,
        way: str,
        method: str = "GET",
        form: dict[str, str] | None = None,
        body: bytes | None = None,
        **headers: str | None,
    ) -> Answer:
        """Ask as the desk's own page does; a header given as None is left out."""
        said: dict[str, str | None] = {"Host": self.netloc, "Cookie": self.cookie}
        if method == "POST":
            said |= {"Origin": self.origin, "Content-Type": "application/x-www-form-urlencoded"}
            body = urlencode(form or {}).encode() if body is None else body
        said |= {name.replace("_", "-"): value for name, value in headers.items()}
        connection = http.client.HTTPConnection(self.netloc, timeout=60)
        connection.putrequest(method, way, skip_host=True, skip_accept_encoding=True)
        for name, value in said.items():
            if value is not None:
                connection.putheader(name, value)
        if body is not None:
            connection.putheader("Content-Length", str(len(body)))
        connection.endheaders(body)
        answer = connection.getresponse()
        got = Answer(
            answer.status,
            {name.lower(): value for name, value in answer.getheaders()},
            answer.read(),
        )
        connection.close()
        return got


def open_on(folder: Path, port: int = 0) -> tuple[OpenDesk, threading.Thread]:
    """Open a desk in a thread of its own and wait until it answers."""
    opened, ready = OpenDesk(folder), threading.Event()

    def say(line: str) -> None:
        opened.lines.append(line)
        if "key=" in line:
            opened.first = line.split()[-1]
            ready.set()

    thread = threading.Thread(target=open_desk, args=(folder, port, False, say), daemon=True)
    thread.start()
    assert ready.wait(30)
    answer = opened.ask(opened.first.partition(opened.netloc)[2])
    opened.cookie = answer.headers["set-cookie"].partition(";")[0]
    return opened, thread


@pytest.fixture(scope="session")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Iterator[OpenDesk]:
    opened, thread = open_on(small_book(tmp_path_factory.mktemp("desk") / "book"))
    yield opened
    assert opened.ask("/stop", "POST").status == 200
    thread.join(20)
    assert not thread.is_alive(), "it stops when told"
    assert opened.lines[-1] == "The desk is closed."


def published(desk: OpenDesk, way: str) -> Answer:
    """Publish, and return the page that tells what came of it; it says meanwhile how far it is."""
    begun = desk.ask("/publish", "POST", {"way": way})
    assert (begun.status, begun.headers["location"]) == (303, "/publish/now")
    meanwhile = desk.ask("/publish/now").text
    assert "Building the book</h1>" in meanwhile
    assert "so far" in meanwhile
    for _ in range(480):
        answer = desk.ask("/publish/now")
        if "so far" not in answer.text:
            break
        time.sleep(0.25)
    return answer


def forget_typed(folder: Path) -> None:
    """Take away what was typed and not kept: it would come back in the next test."""
    for kept in (folder / ".desk" / "typed").glob("*.json"):
        kept.unlink()


@contextmanager
def open_with_lists(folder: Path) -> Iterator[OpenDesk]:
    """Open a desk on a small book with a place for giving lists; stop it behind the tests."""
    book = small_book(folder)
    (book / "giving").mkdir(exist_ok=True)
    opened, thread = open_on(book)
    yield opened
    opened.ask("/stop", "POST")
    thread.join(20)
