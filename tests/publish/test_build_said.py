"""What the terminal says of a build: at its end where the book is, and always what is doubtful."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path

import pytest

from loaded import run_loaded
from stillroom.beginning.book import Answers, begin_book

BUILDER = Path(__file__).parents[2] / "builder"


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("said") / "book"
    begin_book(folder, Answers(title="Heron Ferry"))
    return folder


def build(book: Path, *words: str) -> subprocess.CompletedProcess[str]:
    around = {**os.environ, "PYTHONPATH": str(BUILDER), "STILLROOM_PROCESSES": "1"}
    return run_loaded(["stillroom", "build", *words], book, around)


def test_the_last_lines_name_the_folder_and_no_temporary_one(book: Path) -> None:
    done = build(book)
    assert done.returncode == 0, done.stderr
    assert done.stdout.splitlines()[0] == (
        'The book is in the folder "site": put all that is in it on a web host.'
    )
    assert done.stdout.splitlines()[1].endswith(" -m stillroom serve")
    assert "Building documentation to directory" not in done.stderr
    assert (book / "site" / "index.html").is_file()
    elsewhere = book.parent / "elsewhere"
    assert f'"{elsewhere}"' in build(book, "--site-dir", str(elsewhere)).stdout
    assert (elsewhere / "index.html").is_file()


def test_a_quiet_strict_build_stops_at_a_warning_and_tells_it(book: Path) -> None:
    quiet = build(book, "-q", "--strict")
    assert quiet.returncode == 0
    assert (quiet.stdout, "WARNING" in quiet.stderr) == ("", False)
    about = book / "pages" / "about.md"
    before = about.read_text(encoding="utf-8")
    about.write_text(f"{before}\n[a page](nowhere.md)\n", encoding="utf-8")
    strict = build(book, "-q", "--strict")
    assert strict.returncode == 1
    assert "contains a link 'nowhere.md'" in strict.stderr
    loose = build(book, "-q")
    assert loose.returncode == 0
    assert "contains a link 'nowhere.md'" in loose.stderr
    assert loose.stdout == ""
    about.write_text(before, encoding="utf-8")
