"""Files that the book makes beside its pages, packed until MkDocs writes them.

MkDocs holds the text of each from the first to the last: two for every recipe of a long book, its
calendar and its card, as much again as its page. Leaves out what stands in them: book_files.py,
print_room.py.
"""

from __future__ import annotations

import zlib
from typing import TYPE_CHECKING, Final

from mkdocs.structure.files import File

from stillroom.publish.book_files import MadeFile

if TYPE_CHECKING:
    from mkdocs.config.defaults import MkDocsConfig


_ANY_SIGN: Final = "surrogatepass"
"""What cannot be written is MkDocs' to say, as of every file."""


class LateFile(File):
    """A file made of text, which it gives whenever it is asked."""

    _packed: bytes | None = None
    _is_text: bool = True

    @property
    def _content(self) -> str | bytes | None:
        if self._packed is None:
            return None
        data = zlib.decompress(self._packed)
        return data.decode(errors=_ANY_SIGN) if self._is_text else data

    @_content.setter
    def _content(self, content: str | bytes | None) -> None:
        self._is_text = isinstance(content, str)
        data = content.encode(errors=_ANY_SIGN) if isinstance(content, str) else content
        self._packed = None if data is None else zlib.compress(data, level=1)

    def lay_packed(self, packed: bytes) -> None:
        """Take a text that lies packed already."""
        self._packed, self._is_text = packed, True


def file_of(made: MadeFile, config: MkDocsConfig) -> File:
    """Return a file as MkDocs publishes it."""
    if made.path is not None:
        return File.generated(config, made.src_uri, abs_src_path=str(made.path))
    file = LateFile.generated(config, made.src_uri, content=made.content)
    if made.packed and isinstance(file, LateFile):
        file.lay_packed(made.packed)
    return file
