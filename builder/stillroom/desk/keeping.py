"""Writing into the book's folder: whole, never over a change from elsewhere, and what was stays.

Each version that gives way is kept below `.desk/earlier/`, by the moment at which it did. What is
typed and not kept yet lies below `.desk/unsaved/`, so that closing the browser loses nothing.
"""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Final

from stillroom.desk.place import NotHere, Place, right_name
from stillroom.saving.own_folder import make_own as make_own_folder
from stillroom.saving.whole import write_whole

MOST_KEPT: Final = 200
"""Of one file; the eldest beyond them are let go."""
_STAMP: Final = "%Y-%m-%dT%H-%M-%S-%fZ"


@dataclass(frozen=True)
class Earlier:
    """One earlier version of a file: its name, when it gave way, its words."""

    name: str
    when: datetime
    path: Path

    @property
    def text(self) -> str:
        """What it said."""
        return self.path.read_bytes().decode("utf-8", errors="replace")


class ChangedElsewhere(Exception):
    """The file is no longer the one that was opened."""


def sum_of(data: bytes) -> str:
    """Return the sum by which a file's change is seen; of nothing it is nothing."""
    return hashlib.sha256(data).hexdigest() if data else ""


def keep(place: Place, path: Path, text: str, opened: str) -> None:
    """Write a file whose sum was `opened` when it was read, and keep the version before it.

    Raises ChangedElsewhere, and then nothing is written; ProblemsFound where the disk takes none.
    """
    path = place.within(path)
    before = path.read_bytes() if path.is_file() else b""
    if sum_of(before) != opened:
        raise ChangedElsewhere(path.name)
    data = text.encode()
    if data == before:
        return
    put_by(place, path)
    write_whole(path, data)


def put_by(place: Place, path: Path) -> None:
    """Keep what a file says now among its earlier versions."""
    if not path.is_file():
        return
    make_own(place)
    folder = _earlier_folder(place, path)
    stamp = datetime.now(UTC).strftime(_STAMP)
    write_whole(folder / f"{stamp}{path.suffix}", path.read_bytes())
    for old in sorted(folder.iterdir())[:-MOST_KEPT]:
        old.unlink()


def make_own(place: Place) -> None:
    """Make the desk's own folder, out of git's sight: a giving list's versions lie there."""
    make_own_folder(place.folder)


def take_out(place: Place, path: Path) -> None:
    """Take a file out of the book; it stays among its earlier versions."""
    put_by(place, path)
    path.unlink(missing_ok=True)


def _earlier_folder(place: Place, path: Path) -> Path:
    return place.own / "earlier" / Path(place.short(path))


def list_earlier(place: Place, paths: Sequence[Path]) -> list[Earlier]:
    """Return the earlier versions of files, the latest first."""
    found = []
    for path in paths:
        folder = _earlier_folder(place, path)
        for one in folder.iterdir() if folder.is_dir() else ():
            try:
                when = datetime.strptime(one.stem, _STAMP).replace(tzinfo=UTC)
            except ValueError:
                continue  # what somebody else put there is no version
            found.append(Earlier(one.name, when, one))
    return sorted(found, key=lambda earlier: earlier.when, reverse=True)


def find_earlier(place: Place, paths: Sequence[Path], name: str) -> Earlier:
    """Return one earlier version; raises NotHere."""
    right_name(name)
    for one in list_earlier(place, paths):
        if one.name == name:
            return one
    raise NotHere(name)


def keep_unsaved(place: Place, slug: str, text: str) -> Path:
    """Write down what is typed and not kept yet, and return where."""
    make_own(place)
    path = place.unsaved_path(slug)
    if not path.is_file() or path.read_bytes() != text.encode():
        write_whole(path, text.encode())
    return path


def note_opened(place: Place, slug: str, sums: str) -> None:
    """Note of what is typed which files it was typed over, where that is not noted yet."""
    path = _opened_path(place, slug)
    if not path.is_file():
        write_whole(path, sums.encode())


def _opened_path(place: Place, slug: str) -> Path:
    return place.unsaved_path(slug).with_suffix(".opened")


def drop_unsaved(place: Place, slug: str) -> None:
    """Let go of what was typed: it is kept now, or not wanted."""
    place.unsaved_path(slug).unlink(missing_ok=True)
    _opened_path(place, slug).unlink(missing_ok=True)
