"""Patterns kept from one command to the next change no answer, and hold nothing private."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from stillroom.core.words import made_patterns, word_heads
from stillroom.core.words.made_patterns import made_before, make_pattern
from stillroom.core.words.patterns import clause_regex
from stillroom.core.words.word_heads import heads_before, heads_of
from stillroom.saving import kept_patterns
from stillroom.saving.kept_patterns import WORTH_WRITING, keep_patterns, take_patterns
from stillroom.saving.shelf import VARIABLE

ROOT = Path(__file__).resolve().parents[2]
RECIPES = sorted((ROOT / "recipes").glob("*.md"))[:4]


def _forget() -> None:
    made_before.clear()
    heads_before.clear()
    made_patterns.notes[0] = False
    kept_patterns._taken[0] = 0


@pytest.fixture(autouse=True)
def shelf(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    before = dict(made_before), dict(heads_before)
    monkeypatch.setenv(VARIABLE, str(tmp_path))
    _forget()
    yield tmp_path
    _forget()
    made_before.update(before[0])
    heads_before.update(before[1])


def _make(most: int) -> None:
    take_patterns()
    for number in range(most):
        clause_regex(rf"\b(?:quince|medlar){number}\b").search("a medlar7")


def _file(shelf: Path) -> Path:
    (file,) = (shelf / "patterns").iterdir()
    return file


def test_what_is_kept_is_taken_and_made_again_alike(shelf: Path) -> None:
    _make(WORTH_WRITING)
    heads = heads_of(re.compile(r"\b(?:quince|medlar)"))
    keep_patterns()
    made = dict(made_before)
    _forget()
    take_patterns()
    assert made_before == made
    assert len(made) == WORTH_WRITING
    assert heads_before == {(r"\b(?:quince|medlar)", int(re.UNICODE)): heads}
    assert make_pattern(r"\b(?:quince|medlar)7\b", 0).search("a medlar7")
    assert heads_of(re.compile(r"\b(?:quince|medlar)")) == {"quinc", "medla"}


def test_few_new_ones_write_no_file(shelf: Path) -> None:
    _make(WORTH_WRITING - 1)
    keep_patterns()
    assert not (shelf / "patterns").exists()
    _make(WORTH_WRITING)
    keep_patterns()
    written = _file(shelf).read_bytes()
    _make(WORTH_WRITING + 5)
    keep_patterns()
    assert _file(shelf).read_bytes() == written


@pytest.mark.parametrize("at", [0, 5, 400, -1])
def test_a_damaged_file_is_taken_for_none(shelf: Path, at: int) -> None:
    _make(WORTH_WRITING)
    keep_patterns()
    data = bytearray(_file(shelf).read_bytes())
    data[at] ^= 1
    _file(shelf).write_bytes(data)
    _forget()
    take_patterns()
    assert made_before == {}
    _file(shelf).write_bytes(b"")
    _forget()
    take_patterns()
    assert made_before == {}


def test_another_python_and_another_reader_of_beginnings_have_a_file_of_their_own(
    shelf: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    engine = (20220615, 4)
    names = {kept_patterns._known_by.__wrapped__(one) for one in (engine, (20220615, 2))}
    with monkeypatch.context() as changed:
        changed.setattr(sys, "version", "3.99")
        names.add(kept_patterns._known_by.__wrapped__(engine))
    with monkeypatch.context() as changed:
        changed.setattr(kept_patterns, "files", lambda _: shelf)
        (shelf / Path(word_heads.__file__).name).write_text("another", encoding="utf-8")
        names.add(kept_patterns._known_by.__wrapped__(engine))
    assert len(names) == 4


def test_nothing_is_kept_or_noted_where_that_is_switched_off(
    shelf: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv(VARIABLE, "off")
    _make(WORTH_WRITING)
    keep_patterns()
    assert made_before == {}
    assert list(shelf.iterdir()) == []


@pytest.mark.skipif(not hasattr(os, "getuid"), reason="everybody's folders are alike there")
def test_nothing_is_taken_from_where_others_may_write(shelf: Path) -> None:
    _make(WORTH_WRITING)
    keep_patterns()
    (shelf / "patterns").chmod(0o777)
    _forget()
    take_patterns()
    assert made_before == {}
    _make(WORTH_WRITING * 2)
    written = _file(shelf).read_bytes()
    keep_patterns()
    assert _file(shelf).read_bytes() == written


def _run(folder: Path, *words: str) -> str:
    done = subprocess.run(
        [sys.executable, *words], cwd=folder, capture_output=True, encoding="utf-8", check=False
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


def test_a_build_keeps_them_and_no_command_says_another_thing_for_it(
    shelf: Path, tmp_path: Path
) -> None:
    book = tmp_path / "book"
    (book / "recipes").mkdir(parents=True)
    for recipe in RECIPES:
        lines = recipe.read_text(encoding="utf-8").splitlines()
        text = "\n".join(line for line in lines if not line.startswith("picture"))
        (book / "recipes" / recipe.name).write_text(text, encoding="utf-8")
    (book / "pages").mkdir()
    (book / "mkdocs.yml").write_text(
        "site_name: A book\nsite_url: https://book.example/\ndocs_dir: pages\n"
        "theme: {name: material, font: false}\nplugins: [stillroom]\n",
        encoding="utf-8",
    )
    (book / "list.yml").write_text(
        "giving list: Winter\nday: 2027-12-18\nhouseholds:\n  - name: Zebedee Quillfeather\n",
        encoding="utf-8",
    )
    asked = ["dates", f"recipes/{RECIPES[0].name}", "--give", "2027-12-18"]
    before = _run(book, "-m", "stillroom", *asked)
    assert not (shelf / "patterns").exists()  # only a build writes them
    _run(book, "-m", "mkdocs", "build", "--quiet")
    first = _pages(book)
    kept = _file(shelf).read_bytes()
    assert len(kept) > 100_000
    assert b"uillfeather" not in kept.lower()
    assert _run(book, "-m", "stillroom", *asked) == before
    shutil.rmtree(shelf / "books")
    _run(book, "-m", "mkdocs", "build", "--quiet")
    assert _pages(book) == first


def _pages(book: Path) -> dict[str, bytes]:
    pages = (book / "site").rglob("*")
    return {str(one.relative_to(book)): one.read_bytes() for one in pages if one.is_file()}
