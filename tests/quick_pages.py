"""What a page of a PDF is written with, divided into its parts by one pattern, not sign by sign.

pdfminer, by which pdfplumber reads, takes four fifths of its time for that on a dressed card. What
each part does is left to it; a page on which anything stands that is not known here is read as
before. `printing/test_quick_pages.py` and `browser/test_quick_pages.py` compare the two.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from types import NoneType
from typing import Any, Final

from pdfminer import pdfinterp
from pdfminer.pdfinterp import PDFContentParser
from pdfminer.pdftypes import stream_value
from pdfminer.psparser import KWD, LIT, PSEOF
from pdfplumber import page
from pdfplumber.utils import pdfinternals

_SIGN: Final = rb"(?:[^\\()\r]|\\[nrtbf()\\]|\\[0-7]{1,3})"
_PART: Final = re.compile(
    rb"[\0\t\n\f\r ]*(?:"
    rb"(?P<figure>-?(?:\d+\.?\d*|\.\d+))(?![^\0\t\n\f\r \[\]()<>/])"
    rb"|(?P<does>[A-Za-z]+\*?|['\"])(?![^\0\t\n\f\r \[\]()<>/])"
    rb"|/(?P<name>[A-Za-z0-9_.+-]+)(?=[\0\t\n\f\r \[\]()<>/])"
    rb"|\((?P<text>(?:" + _SIGN + rb"|\(" + _SIGN + rb"*\))*)\)"
    rb"|(?P<open><<|\[)|(?P<shut>>>|\])"
    rb"|<(?P<pairs>(?:[\da-fA-F]{2})*)>"
    rb")"
)
_ESCAPED: Final = re.compile(rb"\\([0-7]{1,3}|.)")
_SIGNS: Final = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f"}
_NOT_DONE: Final = frozenset({b"BI", b"true", b"false", b"null"})
"""Pictures among the words of a page, and what is a value and no operator."""


class _UnknownError(Exception):
    """Something stands on the page that is not read here."""


class QuickParser(PDFContentParser):
    """Gives pdfminer the parts of a page, each as its own reader would give it."""

    def __init__(self, streams: Sequence[object]) -> None:
        super().__init__(streams)
        self.parts: Iterator[Any] | None
        try:
            data = b"\n".join(stream_value(one).get_data() for one in streams)
            self.parts = iter(list(_parts_of(data)))
        except _UnknownError:
            self.parts = None

    def nextobject(self) -> tuple[int, Any]:
        if self.parts is None:
            return super().nextobject()
        for one in self.parts:
            return 0, one
        raise PSEOF("Unexpected EOF")


_PLAIN: Final = frozenset({int, float, str, bytes, bool, NoneType})
_resolve_all: Final = pdfinternals.resolve_all


def resolved(one: Any) -> Any:
    """Return what a value refers to; figures and words, which are most, refer to nothing."""
    kind = type(one)
    if kind in _PLAIN or (kind is tuple and _PLAIN.issuperset(map(type, one))):
        return one
    return _resolve_all(one)


def read_quickly() -> None:
    """Let every page of a PDF be divided so from now on."""
    pdfinterp.PDFContentParser = QuickParser
    pdfinternals.resolve_all = page.resolve_all = resolved


def read_as_before() -> None:
    """Let pages be read as pdfminer and pdfplumber read them, for whoever compares."""
    pdfinterp.PDFContentParser = PDFContentParser
    pdfinternals.resolve_all = page.resolve_all = _resolve_all


def _parts_of(data: bytes) -> Iterator[Any]:
    """Yield the operators and their arguments, lists and tables whole."""
    at, end, match = 0, len(data.rstrip(b"\0\t\n\f\r ")), _PART.match
    within: list[tuple[bytes, list[Any]]] = []
    while at < end:
        found = match(data, at)
        if found is None:
            raise _UnknownError
        at, kind = found.end(), found.lastgroup or ""
        said = found[kind]
        one: Any
        if kind == "figure":
            one = float(said) if b"." in said else int(said)
        elif kind == "does":
            if said in _NOT_DONE or within:
                raise _UnknownError
            one = KWD(said)
        elif kind == "name":
            one = LIT(said.decode("ascii"))
        elif kind == "text":
            one = _ESCAPED.sub(_sign, said) if b"\\" in said else said
        elif kind == "pairs":
            one = bytes.fromhex(said.decode("ascii"))
        elif kind == "open":
            within.append((said, []))
            continue
        else:
            if not within or (within[-1][0] == b"[") != (said == b"]"):
                raise _UnknownError
            opened, inner = within.pop()
            one = inner if opened == b"[" else _table(inner)
        if within:
            within[-1][1].append(one)
        else:
            yield one
    if within:
        raise _UnknownError


def _sign(found: re.Match[bytes]) -> bytes:
    one = found[1]
    return bytes([int(one, 8) & 255]) if one[:1].isdigit() else _SIGNS.get(one, one)


def _table(inner: list[Any]) -> dict[str, Any]:
    names = [getattr(name, "name", None) for name in inner[::2]]
    if len(inner) % 2 or not all(isinstance(name, str) for name in names):
        raise _UnknownError
    return {str(name): value for name, value in zip(names, inner[1::2], strict=True)}
