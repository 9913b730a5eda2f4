"""The words of a document (PDF) whose letters are numbers that only its fonts explain.

A font's table of letters ("ToUnicode", ISO 32000-2, 9.10.3) says which letter each number is. Every
text of the document is read by every table in it, for which of them is a text's own font is more
than has to be known: a name comes out right by the right one. A font without a table is told of.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

_TABLE: Final = re.compile(rb"begincmap(.*?)endcmap", re.DOTALL)
_SPACE: Final = re.compile(rb"begincodespacerange\s*<([0-9A-Fa-f]+)>")
_ONES: Final = re.compile(rb"beginbfchar(.*?)endbfchar", re.DOTALL)
_RANGES: Final = re.compile(rb"beginbfrange(.*?)endbfrange", re.DOTALL)
_ONE: Final = re.compile(rb"<([0-9A-Fa-f\s]+)>\s*<([0-9A-Fa-f\s]*)>")
_RANGE: Final = re.compile(
    rb"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*(?:<([0-9A-Fa-f\s]+)>|\[([^\]]*)\])"
)
_HEX: Final = re.compile(rb"<([0-9A-Fa-f\s]*)>")
# every part keeps what it took: where the end is missing, nothing is tried over and over
_STRING: Final = rb"<[0-9A-Fa-f\s]*+>|\((?:[^()\\]++|\\.)*+\)"
_SHOWN: Final = re.compile(
    rb"(?:(" + _STRING + rb")\s*+(?:Tj|'|\")|\[((?:\s++|[-+.\d]++|" + _STRING + rb")*+)\]\s*+TJ)",
    re.DOTALL,
)
_PIECE: Final = re.compile(rb"(" + _STRING + rb")|(-?[\d.]+)", re.DOTALL)
_ESCAPED: Final = re.compile(rb"\\(?:([0-7]{1,3})|(\r?\n)|(.))", re.DOTALL)
_SIGNS: Final = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f"}
_GAP: Final = -180
"""A move back by more thousandths of the letters' size than this is a gap between words."""
_MOST_TABLES: Final = 60
_LONGEST_RANGE: Final = 65_536
UNEXPLAINED: Final = "a document whose letters only its fonts know"


@dataclass(frozen=True)
class _Table:
    """What one font says of its letters."""

    wide: int
    letters: dict[int, str]

    def read(self, string: bytes) -> str:
        wide = self.wide
        codes = (string[at : at + wide] for at in range(0, len(string), wide))
        return "".join(self.letters.get(int.from_bytes(code, "big"), "") for code in codes)


def coded_words(layers: Sequence[bytes]) -> tuple[list[bytes], str]:
    """Return the words that the layers of a document show, and what of them nobody can read."""
    # no table begins without this word, and few files of other sorts have it
    found = [one for layer in layers if b"begincmap" in layer for one in _TABLE.finditer(layer)]
    tables = {one[1]: _read_table(one[1]) for one in found[:_MOST_TABLES]}
    coded = sum(layer.count(b"/Identity-H") for layer in layers)
    explained = sum(layer.count(b"/ToUnicode") for layer in layers)
    sealed = UNEXPLAINED if coded > explained or len(found) > _MOST_TABLES else ""
    if not tables:
        return [], sealed
    shown = [list(_strings(layer)) for layer in layers if b"TJ" in layer or b"Tj" in layer]
    words = [_words(table, strings) for table in tables.values() for strings in shown]
    return [one.encode("utf-8", "replace") for one in words if one.strip()], sealed


def _read_table(said: bytes) -> _Table:
    space = _SPACE.search(said)
    letters: dict[int, str] = {}
    for part in _ONES.finditer(said):
        for one in _ONE.finditer(part[1]):
            letters[int(b"".join(one[1].split()), 16)] = _unicode(one[2])
    for part in _RANGES.finditer(said):
        for one in _RANGE.finditer(part[1]):
            first, last = int(one[1], 16), int(one[2], 16)
            if one[4] is not None:
                targets = [_unicode(found[1]) for found in _HEX.finditer(one[4])]
                letters.update(zip(range(first, last + 1), targets, strict=False))
            elif begin := _unicode(one[3]):
                for number in range(min(last - first + 1, _LONGEST_RANGE)):
                    code = ord(begin[-1]) + number
                    letters[first + number] = begin[:-1] + (chr(code) if code < 0x110000 else "")
    return _Table(max(1, len(space[1]) // 2) if space else 2, letters)


def _unicode(figures: bytes) -> str:
    plain = b"".join(figures.split()).decode()
    return bytes.fromhex(plain[: len(plain) // 2 * 2]).decode("utf-16-be", "replace")


def _strings(layer: bytes) -> Iterator[list[bytes | float]]:
    """Return what is shown at one go: strings of codes, and the moves between them."""
    for shown in _SHOWN.finditer(layer):
        if shown[1] is not None:
            yield [_codes(shown[1])]
            continue
        pieces = _PIECE.finditer(shown[2])
        yield [_codes(piece[1]) if piece[1] is not None else _number(piece[2]) for piece in pieces]


def _number(figures: bytes) -> float:
    try:
        return float(figures)
    except ValueError:
        return 0.0


def _codes(string: bytes) -> bytes:
    if string.startswith(b"<"):
        figures = b"".join(string[1:-1].split()).decode()
        return bytes.fromhex(figures + "0" * (len(figures) % 2))
    return _ESCAPED.sub(_escaped, string[1:-1])


def _escaped(found: re.Match[bytes]) -> bytes:
    if found[1]:
        return bytes([int(found[1], 8) & 255])
    return b"" if found[2] else _SIGNS.get(found[3], found[3])


def _words(table: _Table, shown: Sequence[Sequence[bytes | float]]) -> str:
    """Return what is shown as one font reads it, with the gaps of its moves and without them."""
    said: list[str] = []
    for pieces in shown:
        read = [table.read(one) if isinstance(one, bytes) else "" for one in pieces]
        gapped = [
            word or (" " if isinstance(one, float) and one < _GAP else "")
            for word, one in zip(read, pieces, strict=True)
        ]
        said.append("".join(gapped))
    return " ".join(said) + "\n" + "".join(said)
