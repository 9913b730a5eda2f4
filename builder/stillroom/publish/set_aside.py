"""What recipes' pages, calendars and cards came to, laid in one file on the disk until asked for.

MkDocs writes the pages of a book when all of it was read and the longest lists are made: a thousand
recipes' packed texts would lie in memory while those take the most of it. The file has no name and
goes with the process; where none can be made, the texts stay where they are.
"""

from __future__ import annotations

import contextlib
import tempfile
import weakref
from dataclasses import dataclass
from typing import BinaryIO, Final, cast

LEAST: Final = 256
"""Bytes; less lies as well where it is."""


@dataclass(frozen=True, slots=True)
class Laid:
    """Where in the file something lies."""

    aside: Aside
    start: int
    size: int

    def read(self) -> bytes:
        """Return it."""
        return self.aside.read(self.start, self.size)


Packed = bytes | Laid
"""Something packed, at hand or laid aside."""


def take(packed: Packed) -> bytes:
    """Return what is at hand or laid aside.

    >>> aside = Aside()
    >>> take(aside.lay(b"pack" * 100)) == b"pack" * 100, take(b"small")
    (True, b'small')
    """
    return packed if isinstance(packed, bytes) else packed.read()


class Aside:
    """A file without a name, to whose end things are laid."""

    def __init__(self) -> None:
        """Make the file; nothing is laid aside where that cannot be."""
        self._file: BinaryIO | None = None
        self._end = 0
        with contextlib.suppress(OSError):
            # without a store of its own, so that a full disk is told of at once
            made = tempfile.TemporaryFile(buffering=0)  # noqa: SIM115 - it is closed with this
            self._file = cast(BinaryIO, made)
            weakref.finalize(self, made.close)

    def lay(self, packed: Packed) -> Packed:
        """Lay something aside; return it as it is where it is small or the disk takes no more."""
        if self._file is None or not isinstance(packed, bytes) or len(packed) < LEAST:
            return packed
        start = self._end
        try:
            self._file.seek(start)
            if self._file.write(packed) != len(packed):
                return packed
        except OSError:
            return packed
        self._end = start + len(packed)
        return Laid(self, start, len(packed))

    def read(self, start: int, size: int) -> bytes:
        """Return what lies at a place."""
        assert self._file is not None
        self._file.seek(start)
        return self._file.read(size)
