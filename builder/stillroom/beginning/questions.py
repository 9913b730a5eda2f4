"""What is asked of whoever writes a recipe: the questions of questions.yml.

The desk and the page on which others send a recipe ask the same. Leaves out what is made of the
answers.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

import yaml

HERE: Final = Path(__file__).parent


@dataclass(frozen=True)
class Asked:
    """One box: its name, what is asked, how it may be said; no rows where it is one line."""

    box: str
    words: str
    hint: str = ""
    rows: int = 0
    most: int = 1000


@dataclass(frozen=True)
class Part:
    """Boxes that belong together; `sent` is the heading where no picture can be given."""

    part: str
    asked: tuple[Asked, ...]
    heading: str = ""
    sent: str = ""
    open: bool = False


@cache
def parts() -> tuple[Part, ...]:
    """Return what is asked, part by part.

    >>> [part.part for part in parts()]
    ['first', 'keeps', 'word', 'about', 'made', 'card']
    """
    rows = yaml.safe_load((HERE / "questions.yml").read_text(encoding="utf-8"))
    return tuple(
        Part(**{**row, "asked": tuple(Asked(**one) for one in row["asked"])}) for row in rows
    )


@cache
def questions() -> dict[str, Asked]:
    """Return every question by the name of its box.

    >>> questions()["makes"].words
    'How much does it make?'
    """
    return {one.box: one for part in parts() for one in part.asked}
