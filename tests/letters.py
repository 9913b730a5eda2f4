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

from quick_letters import read_letters_quickly, without_paths

_STREAM = re.compile(rb"(?<=[>\n ]stream\n)(.*?)(?=\nendstream)", re.DOTALL)


def open_letters(made: bytes) -> pdfplumber.PDF:
    """Open a PDF of which nothing is asked that is drawn."""
    opened = pdfplumber.open(io.BytesIO(made))
    read_letters_quickly(opened)
    return opened


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
    fewer = without_paths(read)
    less = zlib.compress(fewer, 9)
    if len(fewer) == len(read) or len(less) > len(packed):
        return packed
    return less.ljust(len(packed), b"\0")  # what follows a packed stream's end is not read
