"""A book whose settings or pages mislead: check and build say the same, and nothing is taken away.

Some hundred and seventy such books were tried (November 2026), each judged by one rule: one message
with its file and line, the same of check and build, and nothing lost. Of those that follow, the
first took mkdocs.yml itself away and put the site in its place, a page of the maker's own vanished
in silence, and the others ended in a traceback or were told only by one of the two.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from click.testing import CliRunner

from stillroom.cli import main

SETTINGS = (
    "site_name: A book\ntheme:\n  name: material\nplugins:\n  - stillroom:\n      country: GB\n"
)
RECIPE = """---
title: Quince drops
kind: infusion
makes: 900 ml
ingredients:
  - 1 l vodka, 40% vol
  - 3 quinces, about 600 g
---

## Method

1. Steep {quinces} in {vodka} for 6 weeks.
"""
ABOUT = "# Über uns\n"
# what is written where -> what both say, and of which file
TOLD = {
    "a file for a site": (
        {"mkdocs.yml": f"site_dir: notes.txt\n{SETTINGS}", "notes.txt": "mine"},
        "notes.txt", "A file stands where the site would go"),
    "the settings for a site": (
        {"mkdocs.yml": f"site_dir: mkdocs.yml\n{SETTINGS}"},
        "mkdocs.yml", "A file stands where the site would go"),
    "a language": (
        {"mkdocs.yml": SETTINGS.replace("material", "material\n  language: qq")},
        "mkdocs.yml:2", 'speaks no language "qq"'),
    "a hook": (
        {"mkdocs.yml": f"hooks: [h.py]\n{SETTINGS}", "h.py": "1 / 0\n"},
        "mkdocs.yml:1", "ends in ZeroDivisionError"),
    "a wrong type": (
        {"mkdocs.yml": SETTINGS.replace("A book", "[a]")},
        "mkdocs.yml:1", "it wants words, and a list stands there"),
    "a page in UTF-16": (
        {"docs/about.md": ABOUT.encode("utf-16")}, "docs/about.md:1", "two signs to a letter"),
    "a page in Latin-1": (
        {"docs/about.md": f"# Us\n{ABOUT}".encode("latin-1")}, "docs/about.md:2", "an older way"),
    "a page at a recipe's address": (
        {"docs/r/quince-drops.md": ABOUT}, "docs/r/quince-drops.md:1", "would stand where"),
    "a page in a folder there": (
        {"docs/r/quince-drops/README.md": ABOUT},
        "docs/r/quince-drops/README.md:1", "would stand where"),
    "a finished page there": (
        {"docs/r/quince-drops/index.html": "<p>Us</p>"},
        "docs/r/quince-drops/index.html:1", "would stand where"),
}  # fmt: skip
FINE = {
    "an archive cut short": {"recipes/quinces.zip": b"PK\x03\x04"},
    "a page beside the recipes": {"docs/r/about.md": ABOUT, "docs/r/us/quince-drops.md": ABOUT},
    "a page in UTF-8 with a mark": {"docs/about.md": ABOUT.encode("utf-8-sig")},
    "a finished page in Latin-1": {"docs/us.html": "<p>Über uns</p>".encode("latin-1")},
    "a language it speaks": {
        "mkdocs.yml": SETTINGS.replace("material", "material\n  language: de")
    },
}


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    write(tmp_path, {"mkdocs.yml": SETTINGS, "docs/index.md": "# A book\n"})
    write(tmp_path, {"recipes/quince-drops.md": RECIPE})
    monkeypatch.chdir(tmp_path)
    return tmp_path


def write(folder: Path, files: dict[str, str | bytes]) -> None:
    for name, said in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(said if isinstance(said, bytes) else said.encode())


def answers() -> list[tuple[int, str]]:
    runs = [CliRunner().invoke(main, [command]) for command in ("check", "build")]
    faults = [run.exception for run in runs if not isinstance(run.exception, SystemExit | None)]
    assert faults == []
    return [(run.exit_code, run.output) for run in runs]


def all_of(folder: Path) -> dict[str, bytes]:
    found = {}
    for here, _, names in os.walk(folder):
        found |= {str(Path(here, name)): Path(here, name).read_bytes() for name in names}
    return {name: data for name, data in found.items() if "__pycache__" not in name}


@pytest.mark.parametrize("case", TOLD)
def test_what_misleads_is_told_by_both_and_takes_nothing_away(book: Path, case: str) -> None:
    files, place, words = TOLD[case]
    write(book, files)
    before = all_of(book)
    for code, said in answers():
        assert code == 1
        assert f"{place}: " in said
        assert words in said
        assert "<class" not in said
    assert all_of(book) == before


@pytest.mark.parametrize("case", FINE)
def test_what_is_like_it_is_published(book: Path, case: str) -> None:
    write(book, FINE[case])
    assert [code for code, _ in answers()] == [0, 0]
    assert (book / "site" / "r" / "quince-drops" / "index.html").is_file()
