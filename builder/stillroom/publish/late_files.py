"""Files that the book makes beside its pages, packed until MkDocs writes them.

MkDocs holds the text of each from the first to the last: two for every recipe of a long book, its
calendar and its card, as much again as its page. Leaves out what stands in them: book_files.py,
print_room.py.
"""

from __future__ import annotations

import zlib
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING, Final

from mkdocs.structure.files import File

from stillroom.publish.book_files import MadeFile
from stillroom.publish.served_links import link_same
from stillroom.publish.set_aside import Packed, take

if TYPE_CHECKING:
    from mkdocs.config.defaults import MkDocsConfig


_ANY_SIGN: Final = "surrogatepass"
"""What cannot be written is MkDocs' to say, as of every file."""


@lru_cache(maxsize=64)  # most recipes' cards show one of the drawings of their kinds
def _pack(data: bytes) -> bytes:
    return zlib.compress(data, level=1)


class LateFile(File):
    """A file made of text, which it gives whenever it is asked."""

    _packed: Packed | None = None
    _is_text: bool = True

    @property
    def _content(self) -> str | bytes | None:
        if self._packed is None:
            return None
        data = zlib.decompress(take(self._packed))
        return data.decode(errors=_ANY_SIGN) if self._is_text else data

    @_content.setter
    def _content(self, content: str | bytes | None) -> None:
        self._is_text = isinstance(content, str)
        data = content.encode(errors=_ANY_SIGN) if isinstance(content, str) else content
        self._packed = None if data is None else _pack(data)

    aside: Path | None = None
    """The good site that lies aside while the book is served."""

    def copy_file(self, dirty: bool = False) -> None:
        """Write it, or link it from the site aside where it is the same there."""
        if self.aside is not None and self._packed is not None:
            data = zlib.decompress(take(self._packed))
            if link_same(data, self.aside / self.dest_uri, Path(self.abs_dest_path)):
                return
        super().copy_file(dirty)
        # its whole place, which is as soon found again: of a thousand recipes' files 3 MB
        self.__dict__.pop("abs_dest_path", None)

    def lay_packed(self, packed: Packed) -> None:
        """Take a text that lies packed already."""
        self._packed, self._is_text = packed, True


def file_of(made: MadeFile, config: MkDocsConfig, aside: Path | None = None) -> File:
    """Return a file as MkDocs publishes it; `aside` is the site that was served before."""
    if made.path is not None:
        return File.generated(config, made.src_uri, abs_src_path=str(made.path))
    file = LateFile.generated(config, made.src_uri, content=made.content)
    assert isinstance(file, LateFile)
    file.aside = aside
    if made.packed:
        file.lay_packed(made.packed)
    return file
