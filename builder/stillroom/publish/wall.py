"""The wall between the book and what is private, as seen from the book's side.

Refuses to publish a folder in which a giving list or a pack lies. Both are told by what is in
them, not by name: publishing code never imports the private side, so the two marks are written
here again and a test compares them with what the private side writes.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from stillroom.core.problems import Problem

PACK_MARKER = ".stillroom-pack"
_GIVING_LIST = re.compile(r"""^(["']?)giving list\1[ \t]*:""", re.MULTILINE)
_TEXT_ENDINGS = {".yml", ".yaml", ".md", ".txt", ".json"}
_MEND = "Move it out of the folder: what lies there is published."


def find_private(folders: tuple[Path, ...]) -> tuple[Problem, ...]:
    """Return a problem for each giving list or pack inside the folders that are published."""
    return tuple(sorted({problem for folder in folders for problem in _look_through(folder)}))


def _look_through(folder: Path) -> Iterator[Problem]:
    for path in folder.rglob("*"):
        if path.name == PACK_MARKER:
            yield Problem(str(path.parent), 1, "This folder is a private pack.", _MEND)
        elif path.suffix.lower() in _TEXT_ENDINGS and path.is_file():
            line = _giving_list_line(path)
            if line:
                yield Problem(str(path), line, "This file is a private giving list.", _MEND)


def _giving_list_line(path: Path) -> int:
    text = path.read_text(encoding="utf-8", errors="replace")
    found = _GIVING_LIST.search(text)
    return text.count("\n", 0, found.start()) + 1 if found else 0
