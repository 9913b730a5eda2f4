"""The letters of a page that Typst wrote, as pdfplumber has them and in a fraction of its time.

What a page's operators do is left to pdfminer; here is only how they are read, by one pattern
instead of sign by sign, and what is noted of a letter. A page that holds what is not known here is
read the long way. `test_letters.py` compares the two.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import partial
from typing import Any

import pdfplumber
from pdfminer.layout import LTFigure, LTImage
from pdfminer.pdfdevice import PDFTextDevice
from pdfminer.pdfinterp import PDFPageInterpreter
from pdfminer.pdftypes import stream_value
from pdfminer.psparser import LIT
from pdfminer.utils import apply_matrix_rect, mult_matrix
from pdfplumber.page import Page

_NUMBER = rb"-?[\d.]+\s"
_PATH = re.compile(
    rb"(BT\b.*?\bET\b)"  # words stay as they are
    rb"|(?<![\w.<(/-])(?:(?:" + _NUMBER + rb"){6}c|(?:" + _NUMBER + rb"){4}(?:re|v|y)"
    rb"|(?:" + _NUMBER + rb"){2}[ml]|h|f\*?|[SsBbnW]\*?)(?=\s)",
    re.DOTALL,
)
_NOTHING = re.compile(rb"\bq\s(?:[-\d.\s]|cm\b|/[\w.]+\s(?:CS|cs|gs)\b|SCN\b|scn\b|[wMJj]\b)*\bQ\b")
"""What is put away again before anything is set: a place, a colour, a pen."""
_TEXT = rb"\((?:[^\\()]|\\.)*\)"
_TOKEN = re.compile(
    rb"\s*(?:(?P<number>-?\d*\.?\d+)|/(?P<name>[^\s/\[\]()<>]+)|(?P<texts>\[(?:" + _TEXT
    + rb"|[-\d.\s])*\])|(?P<text>" + _TEXT + rb")|(?P<props><<(?:[^<>()]|<[\da-fA-F]*>|" + _TEXT
    + rb")*>>)|(?P<does>[A-Za-z]+\*?))",
    re.DOTALL,
)  # fmt: skip
_PART = re.compile(rb"(" + _TEXT + rb")|(-?[\d.]+)", re.DOTALL)
_ESCAPED = re.compile(rb"\\([0-7]{1,3}|.)", re.DOTALL)
_SIGNS = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f"}
_IGNORED = frozenset({"gs", "w", "J", "j", "M", "d", "ri", "i", "BX", "EX"})


class _Unknown(Exception):
    """Something stands on the page that is not read here."""


def without_paths(read: bytes) -> bytes:
    """Return what a page is written with, every path taken out."""
    fewer = _PATH.sub(rb"\1", read)
    while (bare := _NOTHING.sub(b"", fewer)) != fewer:
        fewer = bare
    return fewer


def read_letters_quickly(pdf: pdfplumber.PDF) -> None:
    """Let each page of an open PDF be read by its letters alone, once it is asked for them."""
    for page in pdf.pages:
        page.parse_objects = partial(_objects_on, page)


def _objects_on(page: Page) -> dict[str, list[dict[str, Any]]]:
    noted = _Letters(page)
    try:
        if page.rotation or page.mediabox[:2] != (0, 0):
            raise _Unknown
        _Quick(page.pdf.rsrcmgr, noted).process_page(page.page_obj)
    except _Unknown:
        found = Page.parse_objects(page)
        return {kind: found[kind] for kind in ("char", "image") if kind in found}
    kinds = {"char": noted.found, "image": noted.images}
    return {kind: found for kind, found in kinds.items() if found}


def _words(text: bytes) -> bytes:
    def sign(found: re.Match[bytes]) -> bytes:
        one = found[1]
        return bytes([int(one, 8) & 255]) if one[:1].isdigit() else _SIGNS.get(one, one)

    return _ESCAPED.sub(sign, text[1:-1]) if b"\\" in text else text[1:-1]


def _number(text: bytes) -> float:
    return float(text) if b"." in text else int(text)


def _tokens(data: bytes) -> Iterator[tuple[str, Any]]:
    at, end = 0, len(data.rstrip())
    while at < end:
        found = _TOKEN.match(data, at)
        if found is None:
            raise _Unknown
        at, kind = found.end(), found.lastgroup
        said = found[kind]
        if kind == "number":
            yield kind, _number(said)
        elif kind == "name":
            yield kind, LIT(said.decode())
        elif kind == "texts":
            yield kind, [_words(a) if a else _number(b) for a, b in _PART.findall(said)]
        elif kind == "text":
            yield kind, _words(said)
        elif kind == "props":
            marked = re.search(rb"/MCID\s+(\d+)", said)
            yield kind, {"MCID": int(marked[1])} if marked else {}
        else:
            yield kind, said.decode()


class _Quick(PDFPageInterpreter):
    """Does what stands on a page; drawings and pens are passed over."""

    def execute(self, streams: Sequence[object]) -> None:
        said: list[Any] = []
        data = b"\n".join(stream_value(one).get_data() for one in streams)
        for kind, one in _tokens(without_paths(data)):
            if kind != "does":
                said.append(one)
                continue
            if one not in _IGNORED:
                self._do(one, said)
            said = []

    def _do(self, name: str, said: list[Any]) -> None:
        do = getattr(self, f"do_{name.replace('*', '_a')}", None)
        if do is None or name == "BI":
            raise _Unknown
        if name in ("scn", "SCN", "sc", "SC"):
            self.argstack = said
            do()
        else:
            do(*said)

    def do_TJ(self, seq: Any) -> None:
        state = self.textstate
        self.device.note(state, seq, self.graphicstate)  # type: ignore[attr-defined]


class _Letters(PDFTextDevice):
    """Notes each letter as pdfplumber does."""

    def __init__(self, page: Page) -> None:
        super().__init__(page.pdf.rsrcmgr)
        self.page, self.found, self.images = page, [], []
        self.frames: list[LTFigure] = []
        self.mark: tuple[int | None, str | None] = (None, None)
        self.known: dict[tuple[int, int], tuple[str, float]] = {}

    def begin_tag(self, tag: Any, props: Any = None) -> None:
        self.mark = ((props or {}).get("MCID"), tag.name)

    def end_tag(self) -> None:
        self.mark = (None, None)

    def begin_figure(self, name: str, bbox: Any, matrix: Any) -> None:
        self.frames.append(LTFigure(name, bbox, mult_matrix(matrix, self.ctm)))

    def end_figure(self, name: str) -> None:
        self.frames.pop()

    def render_image(self, name: str, stream: Any) -> None:
        image = LTImage(name, stream, self.frames[-1].bbox)
        image.mcid, image.tag = self.mark
        self.images.append(self.page.process_object(image))

    def paint_path(self, *said: Any) -> None:
        raise _Unknown

    def note(self, state: Any, seq: list[Any], drawn: Any) -> None:
        """Note the letters of a run and go on behind it; places as pdfminer reckons them."""
        font, size, scaling = state.font, state.fontsize, state.scaling * 0.01
        if font is None or font.is_vertical() or state.wordspace:
            raise _Unknown
        (a, b, c, d, e, f) = mult_matrix(state.matrix, self.ctm)
        between, moved = state.charspace * scaling, 0.001 * size * scaling
        x, y = state.linematrix
        spaced = False
        alike = self._alike(font, (a, b, c, d), scaling, drawn)
        low = font.get_descent() * size + state.rise
        for one in seq:
            if not isinstance(one, bytes):
                x -= one * moved
                spaced = True
                continue
            for cid in font.decode(one):
                x += between if spaced else 0
                spaced = True
                text, share = self._known(font, cid)
                place = (a, b, c, d, x * a + y * c + e, x * b + y * d + f)
                wide = share * size * scaling
                self._lay({**alike, "text": text, "matrix": place, "adv": wide}, low, size)
                x += wide
        state.linematrix = (x, y)

    def _alike(
        self, font: Any, turned: tuple[float, ...], scaling: float, drawn: Any
    ) -> dict[str, Any]:
        """Return what the letters of a run have in common."""
        a, b, c, d = turned
        mark, tag = self.mark
        inks = [one if isinstance(one, tuple) else (one,) for one in (drawn.scolor, drawn.ncolor)]
        return {
            "fontname": font.fontname,
            "upright": a * d * scaling > 0 and b * c <= 0,
            "mcid": mark,
            "tag": tag,
            "object_type": "char",
            "page_number": self.page.page_number,
            "ncs": drawn.ncs.name,
            "stroking_color": inks[0],
            "non_stroking_color": inks[1],
        }

    def _known(self, font: Any, cid: int) -> tuple[str, float]:
        key = (id(font), cid)
        if key not in self.known:
            self.known[key] = (font.to_unichr(cid), font.char_width(cid))
        return self.known[key]

    def _lay(self, letter: dict[str, Any], low: float, size: float) -> None:
        place, wide = letter["matrix"], letter["adv"]
        a, b, c, d, e, f = place
        if b or c or a < 0 or d < 0 or wide < 0:
            x0, y0, x1, y1 = apply_matrix_rect(place, (0, low, wide, low + size))
        else:  # as nearly all words stand
            x0, y0, x1, y1 = e, d * low + f, a * wide + e, d * (low + size) + f
        top = self.page.height - y1
        letter |= {
            "x0": x0, "y0": y0, "x1": x1, "y1": y1, "width": x1 - x0, "height": y1 - y0,
            "size": y1 - y0, "top": top, "bottom": self.page.height - y0,
            "doctop": self.page.initial_doctop + top,
        }  # fmt: skip
        self.found.append(letter)
