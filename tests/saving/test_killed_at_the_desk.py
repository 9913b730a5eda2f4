"""A desk that is ended while it saves: each file is the old or the new one, and nothing is lost.

One save at one step in each run; fifty moments and fifty steps of each by
`pytest -m fifty tests/saving`.
"""

from __future__ import annotations

import http.client
import random
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

import pytest
import yaml

from desk.conftest import OpenDesk, small_book
from desk.test_rooms import boxes_of
from giving.lists import small_list
from saving.killed import start
from saving.test_killed import ASIDE, copied, seen_by_git, tree_of

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="signals of POSIX")
KILLS = 50
LIST = "giving/winter.yml"


@dataclass(frozen=True)
class Save:
    """A page of the desk, where its boxes are sent, what is typed, and which files are written."""

    page: str
    to: str
    typed: dict[str, str]
    writes: tuple[str, ...]


HAPPENED = {
    "name": LIST,
    "what": "begun",
    "whom": "lavender sugar",
    "day": date.today().isoformat(),
}
COLOURS, DRAWING = "pages/stylesheets/colours.css", "pages/pictures/frontispiece.svg"
SAVES = {
    "recipe": Save("/write/lavender-sugar", "/write/lavender-sugar/keep",
                   {"summary": "Another summary."}, ("recipes/lavender-sugar.md",)),
    "draft": Save("/write/lavender-sugar", "/write/lavender-sugar/keep",
                  {"summary": "Another.", "as": "draft"}, ("drafts/lavender-sugar.md",)),
    "draft to book": Save("/write/quince-chutney", "/write/quince-chutney/keep", {"summary": "So."},
                          ("recipes/quince-chutney.md", "drafts/quince-chutney.md")),
    "book": Save("/book", "/book", {"site_name": "Another", "colours": "woad", "drawing": "sprig"},
                 ("mkdocs.yml", COLOURS, DRAWING)),
    "list": Save(f"/giving/list?name={LIST}", "/giving/list", {"households|new|name": "The Larks",
                 "households|new|basket": "small"}, (LIST,)),
    "happened": Save("", "/giving/happened", HAPPENED, ("giving/log.yml",)),
}  # fmt: skip


class AtWork:
    """A desk in a process of its own, which may end at any step."""

    def __init__(self, folder: Path, step: int) -> None:
        self.armed = folder.parent / "armed"
        self.armed.unlink(missing_ok=True)
        words = ["stillroom.cli", "desk", ".", "--no-browser"]
        self.run = start(folder, words, step, str(self.armed))
        assert self.run.stdout is not None
        for line in iter(self.run.stdout.readline, b""):
            if b"key=" in line:
                break
        self.opened = OpenDesk(folder, line.decode().split()[-1])
        first = self.opened.first.partition(self.opened.netloc)[2]
        self.opened.cookie = self.opened.ask(first).headers["set-cookie"].partition(";")[0]

    def boxes(self, save: Save) -> dict[str, str]:
        """Return what a browser would send, ready for the save that is to be ended."""
        sent = (boxes_of(self.opened, save.page) if save.page else {}) | save.typed
        self.armed.touch()
        return sent

    def save(self, save: Save, sent: dict[str, str]) -> int:
        """Send the boxes; return the answer's number, 0 when the desk ended first."""
        try:
            return self.opened.ask(save.to, "POST", sent).status
        except (ConnectionError, http.client.HTTPException):
            return 0

    def close(self) -> bytes:
        """Close the desk and return what it said last."""
        self.save(Save("", "/stop", {}, ()), {})
        return self.run.communicate()[1]

    def kill(self) -> None:
        self.run.send_signal(signal.SIGKILL)
        self.run.communicate()


@dataclass(frozen=True)
class Before:
    folder: Path
    old: dict[str, bytes]
    new: dict[str, bytes]
    steps: int
    seconds: float


@pytest.fixture(scope="module", params=SAVES)
def save(request: pytest.FixtureRequest) -> Save:
    return SAVES[request.param]


@pytest.fixture(scope="module")
def before(save: Save, tmp_path_factory: pytest.TempPathFactory) -> Before:
    folder = small_book(tmp_path_factory.mktemp("killed") / "book")
    said = small_list(makes=[{"recipe": "lavender-sugar"}], baskets={"small": {"eat": 1}})
    (folder / LIST).write_text(yaml.safe_dump(said, sort_keys=False), encoding="utf-8")
    (folder / "drafts").mkdir()
    text = (folder / "recipes" / "quince-chutney.md").read_text(encoding="utf-8")
    (folder / "drafts" / "quince-chutney.md").write_text(f"{text}\nMore.\n", encoding="utf-8")
    ignored = "/giving/*.yml\n/drafts/*.md\n"
    (folder / ".gitignore").write_text(ignored, encoding="utf-8")
    for words in (["init", "-q"], ["add", "-A"]):
        subprocess.run(["git", "-C", str(folder), *words], check=True, capture_output=True)
    whole = copied(folder, folder.parent / "whole")
    desk = AtWork(whole, 0)
    sent = desk.boxes(save)
    begun = time.monotonic()
    assert desk.save(save, sent) == 303
    seconds = time.monotonic() - begun
    desk.armed.unlink()
    steps = int(desk.close().decode().rpartition("steps=")[2].split()[0])
    return Before(folder, tree_of(folder), tree_of(whole), steps, seconds)


def look_at(folder: Path, save: Save, before: Before) -> None:
    now = tree_of(folder)
    for name, data in before.old.items():
        if name not in save.writes:
            assert now.get(name) == data, name
    for name in save.writes:
        assert now.get(name) in (before.old.get(name), before.new.get(name)), name
    olds = {data for name, data in before.old.items() if name in save.writes}
    for name, data in now.items():
        if name.startswith(".desk/earlier/") and not ASIDE.search(name):
            assert data in olds, name
        elif not name.startswith(".desk/") and not ASIDE.search(name):
            assert name in before.old or name in save.writes, name
    assert not [name for name in seen_by_git(folder) if ASIDE.search(name) or ".desk" in name]


def look_at_next_desk(folder: Path, save: Save) -> None:
    """Assert that the next desk opens, saves, and leaves nothing aside."""
    desk = AtWork(folder, 0)
    assert desk.save(save, desk.boxes(save)) in (303, 422)
    desk.armed.unlink()
    assert b"Traceback" not in desk.close()
    assert not [name for name in tree_of(folder) if ASIDE.search(name)]


@pytest.mark.fifty
def test_a_desk_that_is_ended_at_fifty_moments(save: Save, before: Before, tmp_path: Path) -> None:
    chance = random.Random(13)
    for _ in range(KILLS):
        folder = copied(before.folder, tmp_path / "book")
        desk = AtWork(folder, 0)
        sent = desk.boxes(save)
        asking = threading.Thread(target=desk.save, args=(save, sent))
        asking.start()
        time.sleep(before.seconds * chance.uniform(0.1, 1.1))
        desk.kill()
        asking.join(20)
        look_at(folder, save, before)


def end_before_steps(
    save: Save, before: Before, place: Path, steps: Sequence[int], once_more: int
) -> None:
    """End a desk before each of the steps of a save; open it once more after some of these."""
    for turn, step in enumerate(steps):
        folder = copied(before.folder, place / "book")
        desk = AtWork(folder, step)
        answer = desk.save(save, desk.boxes(save))
        desk.kill()
        assert answer in (0, 303)
        look_at(folder, save, before)
        if turn % once_more == 0:
            look_at_next_desk(folder, save)


@pytest.mark.parametrize("save", [SAVES["draft to book"]], scope="module")
def test_a_desk_that_is_ended_before_a_step(save: Save, before: Before, tmp_path: Path) -> None:
    assert before.steps > 3, "it writes"
    end_before_steps(save, before, tmp_path, [before.steps // 2], 1)


@pytest.mark.fifty
def test_a_desk_that_is_ended_before_fifty_steps(
    save: Save, before: Before, tmp_path: Path
) -> None:
    steps = range(1, before.steps + 1)
    chosen = random.Random(17).sample(steps, min(KILLS, before.steps))
    end_before_steps(save, before, tmp_path, chosen, 10)
