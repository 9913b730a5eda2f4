"""Patterns that were made once, kept for the next command in the user's folder for such things.

One file holds the numbers of each pattern, and how the words of its matches begin. It is known by
what read them: Python, its engine, and the module that reads beginnings; where one byte of these or
of the file differs nothing is taken. Only a build of the book writes it: what stands in it is what
this package's own words and data come to, and never a word of a giving list.
"""

from __future__ import annotations

import marshal
import sys
import time
import zlib
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Final

from stillroom.core.words.made_patterns import engine_of_python, made_before, notes
from stillroom.core.words.word_heads import heads_before
from stillroom.saving.shelf import FORGOTTEN_AFTER, is_ours, lay_on_shelf, shelf_folder

_FOLDER: Final = "patterns"
_ENDING: Final = ".kept"
_SUM_BYTES: Final = 4
WORTH_WRITING: Final = 16
"""New patterns from which on the file is written anew: it is two megabytes long."""
_MOST: Final = 8_000
"""More than these are kept of no version: the house's words change from one to the next."""
_taken: Final[list[int]] = [0]
"""How many patterns stood in the file when it was last read or written."""


def take_patterns() -> None:
    """Let patterns be made as they were made before; those that are new are noted.

    Nothing is taken, and nothing noted, where nothing is to be kept or others may write there.
    """
    place = _place()
    if place is None or notes[0]:
        return
    notes[0] = True
    try:
        if not is_ours(place.parent):
            return
        data = place.read_bytes()
    except OSError:  # the first time
        return
    if zlib.crc32(data[_SUM_BYTES:]).to_bytes(_SUM_BYTES, "big") == data[:_SUM_BYTES]:
        made, heads = marshal.loads(data[_SUM_BYTES:])
        made_before.update(made)
        heads_before.update(heads)
        _taken[0] = len(made) + len(heads)


def keep_patterns() -> None:
    """Keep every pattern that is known for the next command, where enough of them are new.

    Where they cannot be kept they are made again the next time; raises nothing.
    """
    place = _place()
    known = len(made_before) + len(heads_before)
    if place is None or not notes[0] or known - _taken[0] < WORTH_WRITING or known > _MOST:
        return
    data = marshal.dumps((made_before, heads_before))
    try:
        place.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        if not is_ours(place.parent):
            return
        lay_on_shelf(place, zlib.crc32(data).to_bytes(_SUM_BYTES, "big") + data)
        for other in place.parent.iterdir():
            if time.time() - other.stat().st_mtime > FORGOTTEN_AFTER:
                other.unlink(missing_ok=True)
    except OSError:
        return
    _taken[0] = known


def _place() -> Path | None:
    folder, engine = shelf_folder(), engine_of_python()
    if folder is None or engine is None:
        return None
    return folder / _FOLDER / f"{_known_by(engine.told_by)}{_ENDING}"


@cache
def _known_by(engine: tuple[int, int]) -> str:
    """Return what tells apart whose patterns are no use to one another."""
    reads = (files("stillroom.core.words") / "word_heads.py").read_bytes()
    return f"{zlib.crc32(repr((sys.version, sys.byteorder, engine)).encode() + reads):08x}"
