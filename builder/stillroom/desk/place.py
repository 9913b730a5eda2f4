"""The book's folder as the desk sees it: its recipes, its drafts, and where its own things lie.

No name from a request becomes a path unless it is a recipe's address, and no path leads out of the
folder, through a link neither. Nothing is written here: keeping.py does that.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Final

from stillroom.bringing.writing import came_in
from stillroom.core.book import Book, open_book
from stillroom.core.reading.recipe_file import SLUG
from stillroom.core.recipe.model import LONGEST_NAME, TAKEN_NAME
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.core.words.text_files import LARGEST, decode
from stillroom.saving.own_folder import OWN

DRAFTS: Final = "drafts"
_NAME: Final = re.compile(r"[A-Za-z0-9][A-Za-z0-9_.-]{0,119}")


class NotHere(Exception):
    """Something was asked for that the book's folder does not hold."""


@dataclass(frozen=True)
class FileNow:
    """A file's words as they are, and their sum by which a change from elsewhere is seen."""

    path: Path
    raw: str
    sum: str

    @property
    def is_there(self) -> bool:
        """Whether there is such a file."""
        return bool(self.sum)


@dataclass(frozen=True)
class Place:
    """One folder, a book's or an empty one."""

    folder: Path

    @property
    def config(self) -> Path:
        """The book's settings."""
        return self.folder / "mkdocs.yml"

    @property
    def own(self) -> Path:
        """The desk's own in the book's: earlier versions, words not kept yet, its lock."""
        return self.folder / OWN

    @property
    def lock_file(self) -> Path:
        """What is held while the desk is open."""
        return self.own / "open.json"

    @property
    def has_book(self) -> bool:
        """Whether there is a book to open."""
        return self.config.is_file()

    def book(self) -> Book:
        """Open the book as it is now; raises ProblemsFound."""
        return open_book(self.config)

    def within(self, path: Path) -> Path:
        """Return a path that lies in the folder, links followed; raises NotHere for any other."""
        if not path.resolve().is_relative_to(self.folder.resolve()):
            raise NotHere(path.name)
        return path

    def recipe_path(self, slug: str) -> Path:
        """Return where a published recipe lies or will lie; raises NotHere for a wrong name."""
        return self.within(self.recipes_dir() / f"{right_slug(slug)}.md")

    def recipes_dir(self) -> Path:
        """Return the book's folder of recipes; its settings are read again once they are changed.

        Raises ProblemsFound.
        """
        return _recipes_dir(self.config, self.config.stat().st_mtime_ns if self.has_book else 0)

    def draft_path(self, slug: str) -> Path:
        """Return where a recipe's draft lies or will lie; raises NotHere for a wrong name."""
        return self.within(self.folder / DRAFTS / f"{right_slug(slug)}.md")

    def unsaved_path(self, slug: str) -> Path:
        """Return where the words of a recipe lie that were typed and not kept."""
        return self.within(self.own / "unsaved" / f"{right_slug(slug)}.md")

    def came_path(self, slug: str) -> Path:
        """Return where the lines lie that a recipe was brought in from."""
        return self.within(came_in(self.folder, right_slug(slug)))

    def around_path(self, slug: str) -> Path:
        """Return where the lines lie that its web page showed around a recipe."""
        return self.within(came_in(self.folder, f"{right_slug(slug)}.around"))

    def draft_slugs(self) -> Iterator[str]:
        """Yield the name of every draft, in order."""
        folder = self.folder / DRAFTS
        for path in sorted(folder.glob("*.md")) if folder.is_dir() else ():
            if SLUG.fullmatch(path.stem):
                yield path.stem

    def short(self, path: Path) -> str:
        """Return how a file is called in messages."""
        return path.absolute().relative_to(self.folder.absolute()).as_posix()


@lru_cache(maxsize=8)
def _recipes_dir(config: Path, changed: int) -> Path:
    """Return the folder that these settings name, as they were when they were `changed`."""
    return open_book(config).recipes_dir


def right_slug(slug: str) -> str:
    """Return a recipe's name that may be a file's; raises NotHere for any other."""
    if not SLUG.fullmatch(slug) or len(slug) > LONGEST_NAME or TAKEN_NAME.fullmatch(slug):
        raise NotHere(slug)
    return slug


def right_name(name: str) -> str:
    """Return a file's name without any way in it; raises NotHere for what is none.

    >>> right_name("quince.svg")
    'quince.svg'
    """
    if not _NAME.fullmatch(name) or ".." in name:
        raise NotHere(name)
    return name


def read_now(path: Path, name: str) -> FileNow:
    """Return a file as it is, line ends and all; one that is not there has no words.

    Raises ProblemsFound where it cannot be read as text.
    """
    if not path.exists():
        return FileNow(path, "", "")
    if not path.is_file() or path.stat().st_size > LARGEST:
        raise ProblemsFound([Problem(name, 1, "This is no recipe's file.", "Look what it is.")])
    data = path.read_bytes()
    decode(data, name)  # tells what keeps it from being read
    return FileNow(path, data.decode("utf-8"), hashlib.sha256(data).hexdigest())
