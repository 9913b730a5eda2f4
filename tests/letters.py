"""A PDF without what is drawn in it, for tests that ask for its words alone.

Who reads a PDF in Python reads each point of each leaf in its drawings too: four fifths of the time
on a dressed card. Letters, their places, sizes and colours, headings and tags stay what they were;
`test_letters.py` compares.
"""

from __future__ import annotations

import io
import re
import zlib
from functools import lru_cache

import pdfplumber
import pypdf

_STREAM = re.compile(rb"(?<=[>\n ]stream\n)(.*?)(?=\nendstream)", re.DOTALL)
_NUMBER = rb"-?[\d.]+\s"
_PATH = re.compile(
    rb"(BT\b.*?\bET\b)"  # words stay as they are
    rb"|(?<![\w.<(/-])(?:(?:" + _NUMBER + rb"){6}c|(?:" + _NUMBER + rb"){4}(?:re|v|y)"
    rb"|(?:" + _NUMBER + rb"){2}[ml]|h|f\*?|[SsBbnW]\*?)(?=\s)",
    re.DOTALL,
)
_NOTHING = re.compile(rb"\bq\s(?:[-\d.\s]|cm\b|/[\w.]+\s(?:CS|cs|gs)\b|SCN\b|scn\b|[wMJj]\b)*\bQ\b")
"""What is put away again before anything is set: a place, a colour, a pen."""


def open_letters(made: bytes) -> pdfplumber.PDF:
    """Open a PDF of which nothing is asked that is drawn."""
    return pdfplumber.open(io.BytesIO(letters_of(made)))


def read_letters(made: bytes) -> pypdf.PdfReader:
    """Read a PDF of which the words are asked."""
    return pypdf.PdfReader(io.BytesIO(letters_of(made)))


@lru_cache(maxsize=4)
def letters_of(made: bytes) -> bytes:
    """Return a PDF with every path taken out of its pages, each part where it stood before."""
    return _STREAM.sub(_without_paths, made)


def _without_paths(found: re.Match[bytes]) -> bytes:
    packed = found[0]
    try:
        read = zlib.decompress(packed)
    except zlib.error:
        return packed
    fewer = _PATH.sub(rb"\1", read)
    while (bare := _NOTHING.sub(b"", fewer)) != fewer:
        fewer = bare
    less = zlib.compress(fewer, 9)
    if len(fewer) == len(read) or len(less) > len(packed):
        return packed
    return less.ljust(len(packed), b"\0")  # what follows a packed stream's end is not read
