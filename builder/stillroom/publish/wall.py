"""The wall between the book and what is private, as seen from the book's side.

Nothing is published in which a giving list or a part of a pack lies, or in which a name or address
of a giving list stands. Both are told by what is in the files, not by what they are called. Names
come from every giving list and log in the book's folder, and beside it; the private side is not
imported.
"""

from __future__ import annotations

import hashlib
import os
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Final

from stillroom.core.book import Book
from stillroom.core.larder.food_reading import read_food
from stillroom.core.private.as_page import may_show_list
from stillroom.core.private.hidden_forms import letters, read_plain
from stillroom.core.private.seeking import LONGEST_SOUGHT, Held, Seeker, hold
from stillroom.core.private.shapes import (
    PACK_MARKER,
    find_giving_log,
    find_private_shape,
    find_written_list,
    list_marks,
)
from stillroom.core.private.words import PrivateWord, list_own_words, list_private_words
from stillroom.core.words.problems import Problem

_MEND = "Move it out of the folder: what lies there is published."
_MEND_PAGE = "Take it out of what this page is made of: its file, its settings, a program's table."
_MEND_NAME = "Take it out, or write no more than a first name: what lies here is read by all."
_CAMEL = re.compile(r"(?<=[a-z])(?=[A-Z0-9])")
_PASSED_OVER = frozenset({".git", ".hg", ".svn", ".venv", "venv", "node_modules", "__pycache__"})
_NO_LISTS = frozenset(
    {".css", ".html", ".js", ".map", ".pdf", ".png", ".py", ".pyc", ".svg", ".woff2"}
)
"""What the book's maker writes no list in; these are looked through where they are published."""
_MOST_FILES = 20_000
_LONGEST_LIST = 2_000_000


def find_private(folders: Iterable[Path], seeker: Seeker | None = None) -> tuple[Problem, ...]:
    """Return a problem for each private file, and each private name, in folders to be published."""
    found: set[Problem] = set()
    seen: set[str] = set()
    seeker = seeker or Seeker(())
    for folder in folders:
        for path in walk(folder, seen):
            looked = _Looked(path, str(path), seeker)
            found.update(looked.shape() or looked.names(folder))
    return tuple(sorted(found))


def find_shapes(site: Path, seeker: Seeker) -> tuple[Problem, ...]:
    """Return a problem for each private file in a folder; names are not looked for.

    An earlier site gives way to the new one: only what is no site's is looked for in it. None of it
    stays, and the new one is looked through in full: so what its pages hide is not sought, and what
    the build that made it looked through is not looked through again by another version.
    """
    looked = (_Looked(path, str(path), seeker) for path in walk(site, set()))
    return tuple(sorted({problem for one in looked for problem in one.shape(earlier=True)}))


def find_private_in_site(site: Path, seeker: Seeker) -> tuple[Problem, ...]:
    """Return a problem for each file of a finished site that is private, or holds a private name.

    Some lists are none before their page is set: a page's name becomes its heading, a program of
    the book's own brings a table in, marks fall away.
    """
    found: set[Problem] = set()
    for path in walk(site, set()):
        looked = _Looked(path, str(path.relative_to(site)), seeker, _MEND_PAGE)
        found.update(looked.shape() or (looked.names(site) if seeker.known else ()))
    return tuple(sorted(found))


@dataclass(frozen=True)
class _Looked:
    """One file as it is looked through; what was found to be clean before is passed over."""

    path: Path
    called: str
    seeker: Seeker
    mend: str = _MEND

    @cached_property
    def data(self) -> bytes:
        with self.path.open("rb") as file:
            return file.read(LONGEST_SOUGHT)

    @cached_property
    def held(self) -> Held:
        return hold(self.data)

    def shape(self, *, earlier: bool = False) -> tuple[Problem, ...]:
        """Return a problem where the file is a private thing by its shape.

        A page of an `earlier` site is taken as it is written; that is not remembered.
        """
        if self.path.name == PACK_MARKER:
            return (Problem(str(self.path.parent), 0, "This folder is a private pack.", _MEND),)
        memory = self.seeker.memory
        known_by = memory.shape_sum(self.data)
        if known_by in memory.shapeless or (earlier and known_by in memory.earlier):
            return ()
        as_written = earlier and self.path.suffix.lower() == ".html"
        line, shape = find_private_shape(self.data, () if as_written else self.held.texts)
        if shape:
            return (Problem(self.called, line, f"This file is a private {shape}.", self.mend),)
        if not as_written:
            memory.shapeless.add(known_by)
        return ()

    def names(self, folder: Path) -> tuple[Problem, ...]:
        """Return a problem where a private name stands in the file, or in what it is called."""
        found = self._name_within() or self._name_in_its_own(folder)
        if found is None:
            return ()
        word, line = found
        what = f"This holds a name or address of your giving list ({word.file}:{word.line})."
        return (Problem(self.called, line, what, _MEND_NAME),)

    def _name_in_its_own(self, folder: Path) -> tuple[PrivateWord, int] | None:
        """Return what stands in what the file is called."""
        if not self.seeker.known:
            return None
        where = self.path.relative_to(folder).as_posix()
        apart = _CAMEL.sub(" ", where)  # "JoRowanCard.pdf" says three words
        called = where if apart == where else f"{where}\n{apart}"
        return self.seeker.seek(hold(called.encode("utf-8", "surrogateescape")))

    def _name_within(self) -> tuple[PrivateWord, int] | None:
        memory = self.seeker.memory
        known_by = memory.name_sum(self.data)
        if known_by in memory.nameless or known_by in memory.sealed:
            return None
        found = self.seeker.seek(self.held)
        if found is None and (doubt := self.seeker.doubt(self.held)):
            self.seeker.doubts[self.called] = doubt
            return None
        if found is None and self.held.sealed:
            memory.sealed.add(known_by)
            self.seeker.sealed[self.called] = self.held.sealed
        elif found is None:
            memory.nameless.add(known_by)
        return found


def _read(path: Path) -> bytes:
    with path.open("rb") as file:
        return file.read(LONGEST_SOUGHT)


def pass_over(folders: Iterable[Path], seeker: Seeker) -> None:
    """Take what the theme and this package bring along for looked through."""
    for path in (path for folder in folders for path in walk(folder, set())):
        data = path.read_bytes()
        pass_over_shape(data, seeker)
        seeker.memory.nameless.add(seeker.memory.name_sum(data))


def pass_over_shape(data: bytes, seeker: Seeker) -> None:
    """Take what the book itself makes for looked through by its shape."""
    seeker.memory.shapeless.add(seeker.memory.shape_sum(data))


def pass_over_made(text: str, seeker: Seeker, *, of_recipe: bool = False) -> None:
    """Take what the book makes of looked through recipes for looked through by its shape.

    Of a recipe's page only where what it shows is no list; what stands around it is on pages that
    are looked at in full.
    """
    data = text.encode("utf-8", errors="xmlcharrefreplace")
    shown = text[text.find("<article") : text.rfind("</article>")] if of_recipe else ""
    if not may_show_list(shown) or find_private_shape(data, ()) == (0, ""):
        pass_over_shape(data, seeker)


def know_private_words(book: Book) -> Seeker:
    """Return a seeker for the words of every giving list in the book's folder and beside it."""
    words: list[PrivateWord] = []
    own = set(letters(read_plain(_read(book.config))).split()) if book.config.is_file() else set()
    files = [*walk(book.root, set(), most=_MOST_FILES), *_beside(book.root)]
    for path in files:
        if _may_be_list(path):
            data = _read(path)
            if _is_list(data):
                name = os.path.relpath(path, book.root)
                words += list_private_words(data, Path(name).as_posix())
                own |= list_own_words(data)
    return Seeker(words, _is_food, own)


_no_lists: Final[set[bytes]] = set()
"""The sums of texts that are none: whoever serves a book has it looked through at each change."""


def _is_list(data: bytes) -> bool:
    """Say whether a file's text is a giving list or its log."""
    known_by = hashlib.sha256(data).digest()
    if known_by in _no_lists:
        return False
    text = read_plain(data)
    # a database or a program's cache is no list, whatever words stand in it
    if "\0" not in text and (find_written_list(text) or find_giving_log(text)):
        return True
    _no_lists.add(known_by)
    return False


_LONGEST_FOOD: Final = 8
"""The words of the longest name that is asked of the larder; a sentence is no food's name."""


def _is_food(word: str) -> bool:
    """Say whether the whole of a word is a food's name: a person may be called like a herb."""
    return len(word.split()) <= _LONGEST_FOOD and read_food(word).food is not None


def _may_be_list(path: Path) -> bool:
    if path.suffix.lower() in _NO_LISTS:
        return False
    try:
        if path.stat().st_size > _LONGEST_LIST:
            return False
        data = path.read_bytes()
    except OSError:
        return False  # what cannot be read cannot be published either
    head = data.lower()
    if any(mark in head for mark in (b"giving", b"g\0i\0v\0i\0n\0g\0", b"basket", b"deliver")):
        return True
    text = read_plain(data).lower()
    return "\0" not in text and any(mark in text for mark in list_marks())


def _beside(root: Path) -> Iterator[Path]:
    """Return the files that lie beside the book's folder: a list is often kept there."""
    try:
        listed = sorted(root.parent.iterdir())
    except OSError:
        return
    endings = {".yml", ".yaml", ".json", ".csv", ".txt", ""}
    yield from (path for path in listed[:500] if path.suffix in endings and path.is_file())


def walk(folder: Path, seen: set[str], most: int | None = None) -> Iterator[Path]:
    """Yield every file below a folder, links followed, each folder once; pipes and such are not.

    `seen` are the real paths of the folders that were looked through before.
    """
    counted = 0
    for here, folders, files in os.walk(folder, followlinks=True):
        real = os.path.realpath(here)
        if real in seen:
            folders.clear()
            continue
        seen.add(real)
        folders[:] = sorted(name for name in folders if name not in _PASSED_OVER)
        for name in sorted(files):
            path = Path(here, name)
            if path.is_file():
                counted += 1
                if most is not None and counted > most:
                    return
                yield path
