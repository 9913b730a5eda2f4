"""What is typed at the desk is kept whole or not at all: no box cuts what stands in it.

A note of four hundred letters, a recipe or a larder of sixty thousand were once cut there without a
word, and the rest was gone.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from desk.conftest import OpenDesk
from desk.test_rooms import boxes_of

SENT = [
    ("/write/lavender-sugar", "/write/lavender-sugar/keep", "summary", 60_000),
    ("/book", "/book", "larder", 400_000),
    ("", "/giving", "called", 200),
    ("", "/giving/happened", "words", 400),
    ("", "/paper", "dedication", 200),
]


def tree_of(folder: Path) -> dict[str, bytes]:
    return {str(path): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


@pytest.mark.parametrize(("page", "to", "box", "most"), SENT, ids=[row[1] for row in SENT])
def test_one_letter_too_many_is_told_and_nothing_is_kept(
    desk: OpenDesk, page: str, to: str, box: str, most: int
) -> None:
    before = tree_of(desk.folder)
    sent = (boxes_of(desk, page) if page else {}) | {box: "Zest " + "x" * (most - 4)}
    answer = desk.ask(to, "POST", sent)
    assert answer.status == 422
    assert f"has {most + 1} letters, and {most} are the most there. Nothing was kept" in answer.text
    assert "What begins “Zest xxx" in answer.text
    assert tree_of(desk.folder) == before
    sent[box] = sent[box][:-1]
    assert "letters, and" not in desk.ask(to, "POST", sent).text
