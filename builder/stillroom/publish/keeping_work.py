"""What was worked out, kept for the next build, in the user's folder for such things.

Each recipe has one file, known by the sum of everything it was worked out from; where one byte of
that differs it is worked out anew. The folder may be deleted at any time, and two builds may use it
at once. Nothing private is in it: what is kept is what the book publishes, and what holds a private
word is refused before it is worked out. STILLROOM_CACHE names another folder, or says "off".
"""

from __future__ import annotations

import hashlib
import importlib.metadata
import logging
import os
import re
import sys
import time
from collections.abc import Sequence
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Final

from stillroom.core.book import Book
from stillroom.core.larder.shelves import Larder
from stillroom.core.method.spoken import larder_spoken
from stillroom.core.reading.loading import short_name
from stillroom.publish.library import Library
from stillroom.publish.working import Worked, unpack
from stillroom.saving.shelf import FORGOTTEN_AFTER, is_ours, lay_on_shelf, shelf_folder

_PACKAGE: Final = Path(str(files("stillroom")))
FEW: Final = 4
"""Of fewer recipes nothing is kept: they are worked out as soon as read."""
_ENDING: Final = ".kept"
_SUM: Final = hashlib.sha256().digest_size

AtHand = dict[Path, tuple[bytes, Worked]]
"""What one process worked out or took for its last build, each with the sum it is known by."""

log = logging.getLogger(f"mkdocs.plugins.{__name__}")


class Shelf:
    """The kept work of one book on one day with one set of settings."""

    def __init__(
        self, folder: Path | None, library: Library, larder: Larder, at_hand: AtHand | None = None
    ) -> None:
        """Take a folder, or None to keep nothing, and what one process has at hand."""
        self.folder, self.library, self.larder = folder, library, larder
        self.at_hand = at_hand
        self.common = _common_sum(library) if folder else b""

    def take(self, path: Path) -> Worked | None:
        """Return what a recipe's file came to when it was last worked out; None if it changed."""
        if self.folder is None:
            return None
        try:
            known_by = self._sum(path)
            worked = self._take_at_hand(path, known_by) or self._read(path, known_by)
        except OSError:
            return None
        if worked is None or not worked.still_holds(self.library):
            return None
        self._have_at_hand(path, known_by, worked)
        return worked

    def _take_at_hand(self, path: Path, known_by: bytes) -> Worked | None:
        known, worked = (self.at_hand or {}).get(path, (b"", None))
        if worked is None or known != known_by:
            return None
        return worked if worked.recipe.larder == larder_spoken(worked.recipe, self.larder) else None

    def _have_at_hand(self, path: Path, known_by: bytes, worked: Worked) -> None:
        if self.at_hand is not None:
            self.at_hand[path] = (known_by, worked)

    def _read(self, path: Path, known_by: bytes) -> Worked | None:
        data = self._place(path).read_bytes()
        known, whole, packed = data[:_SUM], data[_SUM : 2 * _SUM], data[2 * _SUM :]
        if known != known_by or hashlib.sha256(packed).digest() != whole:
            return None
        return unpack(packed, self.larder)

    def put(self, path: Path, worked: Worked, packed: bytes = b"") -> None:
        """Keep what a recipe's file came to; where that cannot be, it is worked out again.

        `packed` is the same packed already, where another process worked it out.
        """
        if self.folder is None:
            return
        packed = packed or worked.packed()
        try:
            known_by = self._sum(path)
            self._have_at_hand(path, known_by, worked)
            lay_on_shelf(self._place(path), known_by + hashlib.sha256(packed).digest() + packed)
        except OSError as error:
            log.debug("%s is not kept for the next build: %s", path.name, error)

    def clear(self, paths: Sequence[Path]) -> None:
        """Take away what was kept of other recipes, and of books not built for a season."""
        if self.at_hand is not None:
            for path in self.at_hand.keys() - set(paths):
                del self.at_hand[path]
        if self.folder is None:
            return
        wanted = {self._place(path).name for path in paths}
        try:
            for file in self.folder.iterdir():
                if file.name not in wanted and file.suffix == _ENDING:
                    file.unlink(missing_ok=True)
            os.utime(self.folder)
            for folder in self.folder.parent.iterdir():
                if time.time() - folder.stat().st_mtime > FORGOTTEN_AFTER:
                    for file in folder.iterdir():
                        file.unlink(missing_ok=True)
                    folder.rmdir()
        except OSError as error:
            log.debug("What was kept is not cleared away: %s", error)

    def _place(self, path: Path) -> Path:
        assert self.folder is not None
        return self.folder / f"{path.stem}{_ENDING}"

    def _sum(self, path: Path) -> bytes:
        name = short_name(path, self.library.book.root)
        return _sum_of(self.common, name.encode(), path.read_bytes())


def open_shelf(library: Library, larder: Larder, at_hand: AtHand | None = None) -> Shelf:
    """Return where a book's work is kept; one that keeps nothing where that is asked or unsafe."""
    few = len(library.book.recipe_files()) < FEW
    return Shelf(None if few else book_folder(library.book), library, larder, at_hand)


def book_folder(book: Book) -> Path | None:
    """Return the folder of what is kept of a book; None where that is asked or unsafe."""
    folder = shelf_folder()
    if folder is None:
        return None
    place = folder / "books" / hashlib.sha256(str(book.root.resolve()).encode()).hexdigest()[:20]
    try:
        place.mkdir(parents=True, exist_ok=True, mode=0o700)
        return place if is_ours(place) else None
    except OSError:
        return None


def _common_sum(library: Library) -> bytes:
    """Return the sum of what all recipes hang on: code, settings, larder, day."""
    book = library.book
    larder = book.larder_file.read_bytes() if book.larder_file.is_file() else b""
    said = library.settings.model_dump_json().encode()
    return _sum_of(code_sum(), said, larder, library.today.isoformat().encode())


@cache
def code_sum() -> bytes:
    """Return the sum of this program, of Python and of the libraries that a page is made with."""
    parts = [sys.version.encode()]
    for needed in sorted(importlib.metadata.requires("stillroom") or ()):
        name = re.match(r"[\w.-]+", needed)
        if name is not None and "extra ==" not in needed:
            parts.append(f"{name[0]} {_version_of(name[0])}".encode())
    for path in sorted(_PACKAGE.rglob("*")):
        if path.suffix not in (".pyc", ".woff2", ".ttf", ".otf") and path.is_file():
            parts += [path.relative_to(_PACKAGE).as_posix().encode(), path.read_bytes()]
    return _sum_of(*parts)


def _version_of(name: str) -> str:
    try:
        return importlib.metadata.version(name)
    except importlib.metadata.PackageNotFoundError:
        return ""


def _sum_of(*parts: bytes) -> bytes:
    whole = hashlib.sha256()
    for part in parts:
        whole.update(len(part).to_bytes(8, "big"))
        whole.update(part)
    return whole.digest()
