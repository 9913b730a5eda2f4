"""Every command that writes, ended at any moment: nothing of the user's is changed or lost.

What it makes is the old whole or the new whole; what it leaves aside git does not see, and the next
run clears it away. One step of each command in each run; fifty moments and fifty steps of each by
`pytest -m fifty tests/saving`.
"""

from __future__ import annotations

import os
import random
import re
import shutil
import subprocess
import sys
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

import pytest
import yaml

from giving.lists import small_list
from loaded import run_loaded
from publish.test_wall import small_book
from saving.killed import count_steps, end_after, end_at_step
from stillroom.core.private.shapes import PACK_MARKER
from stillroom.giving.swapping import _sum, _sums_of

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="signals of POSIX")
KILLS = 50
ASIDE = re.compile(r"(?:^|/)\.[^/]+\.stillroom-\d+(?:/|$)")
ROOT = Path(__file__).resolve().parents[2]
NOTE = "txt~Quince drops\n\nIngredients\n1 l vodka\n3 quinces\n\nMethod\n1. Put it into a jar."
Tree = Mapping[str, bytes]


def tree_of(folder: Path) -> dict[str, bytes]:
    """Return every file below a folder, but git's own."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and ".git" not in path.relative_to(folder).parts[:1]
    }


@dataclass(frozen=True)
class Command:
    """A command: its words, what it makes, and what it says when it is given once more."""

    words: list[str]
    makes: tuple[str, ...]
    each_alone: bool = False
    """Whether what it makes is several things, each of which is whole for itself."""
    again: int = 0
    """What it answers where the new one is there already."""
    prepare: Callable[[Path], None] = lambda folder: None
    """Makes what the command finds there, so that there is an old one."""
    next_words: tuple[str, ...] = ()
    """What clears up, where the command itself is not taken twice."""


def run(folder: Path, words: list[str]) -> subprocess.CompletedProcess[str]:
    return run_loaded(words, folder, {**os.environ, "SOURCE_DATE_EPOCH": "1795780800"})


def build_old(folder: Path) -> None:
    assert run(folder, ["mkdocs", "build", "-q"]).returncode == 0
    page = folder / "pages" / "index.md"
    page.write_text("# Another\n\nVersion two.\n", encoding="utf-8")


def print_old(folder: Path) -> None:
    assert run(folder, ["stillroom.cli", *CARDS, "--count", "8"]).returncode == 0


def pack_old(folder: Path) -> None:
    assert run(folder, ["stillroom.cli", *PACK]).returncode == 0
    (folder / "private" / "note.txt").write_text("my own", encoding="utf-8")
    change_list(folder, message="With love")


def change_list(folder: Path, **changes: object) -> None:
    path = folder / "giving" / "winter.yml"
    said = yaml.safe_load(path.read_text(encoding="utf-8"))
    path.write_text(yaml.safe_dump({**said, **changes}, sort_keys=False), encoding="utf-8")


def a_begun_book(folder: Path) -> None:
    (folder / "empty").mkdir()


LIST = "giving/winter.yml"
CARDS = ["print", "cards", "--force", "--out", "print/cards.pdf"]
PACK = ["pack", LIST, "--today", "2027-01-10", "--seconds", "5"]
BEGUN = ["note", "begun", "lavender-sugar", "--list", LIST]
OTHER = ["new", "Damson gin", "--kind", "liqueur"]
COMMANDS = {
    "build": Command(["mkdocs", "build", "-q"], ("site",), prepare=build_old),
    "print": Command(["stillroom.cli", *CARDS, "--count", "40"], ("print/cards.pdf",),
                     prepare=print_old),
    "epub": Command(["stillroom.cli", "print", "epub", "--out", "print/book.epub"],
                    ("print/book.epub",)),
    "pack": Command(["stillroom.cli", *PACK], ("private",), prepare=pack_old),
    "close-year": Command(
        ["stillroom.cli", "close-year", LIST, "--out", "giving/next.yml", "--today", "2028-01-02"],
        ("giving/next.yml", "giving/log.yml"), each_alone=True, again=1, prepare=pack_old,
        next_words=("stillroom.cli", "close-year", LIST, "--out", "giving/other.yml"),
    ),
    "note": Command(["stillroom.cli", *BEGUN, "--day", "2027-02-01", "--today", "2027-02-01"],
                    ("giving/log.yml",), again=-1),
    "new": Command(["stillroom.cli", "new", "Plum gin", "--kind", "liqueur"],
                   ("recipes/plum-gin.md",), again=1, next_words=("stillroom.cli", *OTHER)),
    "start": Command(["stillroom.cli", "start", "ours", "--country", "GB"], ("ours",),
                     each_alone=True, again=1),
    "start in a folder": Command(["stillroom.cli", "start", "empty"], ("empty",), each_alone=True,
                                 again=1, prepare=a_begun_book),
    # beside each draft its paper is kept, line by line, where git sees nothing
    "bring": Command(["stillroom.cli", "bring", "saved/one.txt", "saved/two.txt"],
                     ("drafts", ".desk"), each_alone=True, again=-1),
}  # fmt: skip


@pytest.fixture(scope="module", params=COMMANDS)
def command(request: pytest.FixtureRequest) -> Command:
    return COMMANDS[request.param]


@dataclass(frozen=True)
class Before:
    """A book before a command and what it came to, told by one run that nobody ended."""

    folder: Path
    old: Tree
    new: Tree
    steps: int
    seconds: float


@pytest.fixture(scope="module")
def before(command: Command, tmp_path_factory: pytest.TempPathFactory) -> Before:
    folder = small_book(tmp_path_factory.mktemp("killed") / "book")
    (folder / "pages" / "index.md").write_text("# A book\n\nVersion one.\n", encoding="utf-8")
    (folder / "giving").mkdir()
    said = small_list(makes=[{"recipe": "lavender-sugar"}], baskets={"small": {"eat": 1}})
    (folder / LIST).write_text(yaml.safe_dump(said, sort_keys=False), encoding="utf-8")
    (folder / "saved").mkdir()
    for name in ("one", "two"):
        text = NOTE.replace("Quince", f"Quince {name}")
        (folder / "saved" / f"{name}.txt").write_text(text, encoding="utf-8")
    (folder / ".gitignore").write_text(
        "site/\n*.pdf\n*.epub\nprivate/\n/giving/*.yml\n", encoding="utf-8"
    )
    command.prepare(folder)
    for words in (["init", "-q"], ["add", "-A"]):
        subprocess.run(["git", "-C", str(folder), *words], check=True, capture_output=True)
    whole = copied(folder, folder.parent / "whole")
    steps, seconds = count_steps(whole, command.words)
    return Before(folder, tree_of(folder), tree_of(whole), steps, seconds)


def copied(folder: Path, there: Path) -> Path:
    shutil.rmtree(there, ignore_errors=True)
    shutil.copytree(folder, there, symlinks=True)
    return there


def is_made(name: str, command: Command) -> bool:
    return any(name == one or name.startswith(f"{one}/") for one in command.makes)


def seen_by_git(folder: Path) -> set[str]:
    status = ["git", "-C", str(folder), "status", "--porcelain", "--untracked-files=all"]
    seen = subprocess.run(status, check=True, capture_output=True, text=True, encoding="utf-8")
    return {line[3:].strip('"') for line in seen.stdout.splitlines()}


def look_at(folder: Path, command: Command, before: Before) -> bool:
    """Assert that all is as it may be after a kill; tell whether the new one stands."""
    now = tree_of(folder)
    aside = {name for name in now if ASIDE.search(name)}
    own = {name: data for name, data in before.old.items() if not is_made(name, command)}
    assert {name: now.get(name) for name in own} == own, "the user's own is changed"
    made = {name: data for name, data in now.items() if name not in own and name not in aside}
    assert all(is_made(name, command) for name in made), sorted(made)
    old = {name: data for name, data in before.old.items() if name not in own}
    new = {name: data for name, data in before.new.items() if is_made(name, command)}
    assert not [name for name in seen_by_git(folder) if ASIDE.search(name)]
    if command.makes == ("private",):
        return look_at_pack(folder / "private", made, old)
    if command.each_alone:
        assert all(data in (old.get(name), new.get(name)) for name, data in made.items())
        assert set(old) <= set(made)
        return made == new
    assert made in (old, new), sorted(set(made) ^ set(new))
    return made == new


def look_at_pack(pack: Path, made: Tree, old: Tree) -> bool:
    """Assert that a pack is whole by its own mark; how a plan was sought differs."""
    assert (pack / "note.txt").read_bytes() == b"my own"
    sums = _sums_of(pack)
    assert sums == {name: _sum((pack / name).read_bytes()) for name in sums}
    names = {name.removeprefix("private/") for name in made}
    assert names == {*sums, PACK_MARKER, ".gitignore", "note.txt"}
    return dict(made) != dict(old)


def look_at_next_run(folder: Path, command: Command, before: Before, is_new: bool) -> None:
    """Assert that the next run does what the ended one was to do, and clears up."""
    done = run(folder, command.words)
    assert "Traceback" not in done.stderr
    assert done.returncode == 0 or (is_new and done.returncode == command.again), done.stderr
    if done.returncode and command.next_words:
        run(folder, list(command.next_words))
    now = tree_of(folder)
    assert not [name for name in now if ASIDE.search(name)], "left by the next run too"
    if command.again < 0 or command.makes == ("private",):
        return
    assert {name: now.get(name) for name in before.new} == dict(before.new)


def end_before_steps(
    command: Command, before: Before, place: Path, steps: Sequence[int], once_more: int
) -> None:
    """End a command before each of its steps; run it once more after some of these."""
    for turn, step in enumerate(steps):
        folder = copied(before.folder, place / "book")
        assert end_at_step(folder, command.words, step) or step == before.steps, step
        is_new = look_at(folder, command, before)
        if turn % once_more == 0:
            look_at_next_run(folder, command, before, is_new)


def test_ended_before_its_last_steps(command: Command, before: Before, tmp_path: Path) -> None:
    assert before.steps > 3, "it writes"
    # what comes last is what puts things in place
    end_before_steps(command, before, tmp_path, [before.steps - 2], 1)


@pytest.mark.fifty
def test_ended_before_fifty_steps(command: Command, before: Before, tmp_path: Path) -> None:
    every = range(1, before.steps + 1)
    chosen = {*every[-KILLS // 2 :], *random.Random(11).sample(every, min(KILLS, len(every)))}
    end_before_steps(command, before, tmp_path, sorted(chosen)[-KILLS:], 5)


@pytest.mark.fifty
def test_ended_at_fifty_moments(command: Command, before: Before, tmp_path: Path) -> None:
    chance = random.Random(7)
    for turn in range(KILLS):
        folder = copied(before.folder, tmp_path / "book")
        end_after(folder, command.words, before.seconds * chance.uniform(0.3, 1.0))
        is_new = look_at(folder, command, before)
        if turn % 10 == 0:
            look_at_next_run(folder, command, before, is_new)
