"""Lines of a paper that a machine broke, whole again: one sentence is one line to choose of.

Told from the draft: where the words of a line go on in the next, within one line of a box and with
no stop between, the two are one. Of what stands nowhere only its own look tells. Leaves out how the
rows of a paper are joined before they are read: joining.py.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence, Set
from typing import Final

from stillroom.bringing.box_words import part_of
from stillroom.bringing.line_by_line import Became, Piece
from stillroom.bringing.overlap import words_in

_LONG: Final = 40
"""Letters from which on a line may have been broken off at the edge of its page."""
_LEAST_WORDS: Final = 4
_PROSE: Final = ("intro", "after")
_PARTS: Final = re.compile(r"[.!?:;\n]")
_ENDED: Final = re.compile(r"[.!?:;…][\"”“’»')\]]*$")
_OPEN: Final = re.compile(r"(?:[,(–-]|\b(?:and|or|the|an?|of|in|with|to|for|und|mit|et|de|e|y))$")
_FIGURE: Final = re.compile(r"[\d½¼¾⅓⅔⅛]")


def begin_of_each(
    may_go_on: Set[int], became: Sequence[Became], texts: Mapping[str, str]
) -> list[int]:
    """Return the places at which whole lines begin.

    `may_go_on` are the places of lines that may go on with the one above, as typed lines do;
    `texts` is what stands in each box.
    """
    return [
        at
        for at, line in enumerate(became)
        if at not in may_go_on or at == 0 or not _goes_on(became[at - 1], line, texts)
    ]


def _goes_on(above: Became, line: Became, texts: Mapping[str, str]) -> bool:
    if not above.words.strip() or not line.words.strip():
        return False
    end, begin = _edge(above, texts, last=True), _edge(line, texts, last=False)
    if end is None and begin is None:
        return _is_broken_off(above.words, line.words)
    if end is None or begin is None or end.box != begin.box:
        return False
    between = texts[end.box][end.last : begin.first]
    part = part_of(end.box)
    if part in _PROSE:  # a note that was broken stands there line by line
        between = between.replace("\n", " ")
    if end.last > begin.first or _PARTS.search(between):
        return False
    listed = part == "ingredients" and _FIGURE.match(line.words)
    return not listed and _may_be_half(above.words, line.words)


def _edge(line: Became, texts: Mapping[str, str], *, last: bool) -> Piece | None:
    """Return the piece that holds a line's last word, or its first; None where that is nowhere."""
    pieces = [one for one in line.pieces if one.box == line.box]
    if not pieces or not (words := words_in(line.words)):
        return None
    piece = (
        max(pieces, key=lambda one: one.last) if last else min(pieces, key=lambda one: one.first)
    )
    said = words_in(texts[piece.box][piece.first : piece.last])
    at = -1 if last else 0
    return piece if said and said[at].said == words[at].said else None


def _may_be_half(above: str, line: str) -> bool:
    """Whether a line may be the rest of the one above, by how both look."""
    return _goes_on_small(above, line) or len(above) >= _LONG or bool(_OPEN.search(above))


def _goes_on_small(above: str, line: str) -> bool:
    """Whether a line begins small below some words: "sugar" below "flour" is a thing of its own."""
    small = line.lstrip("\"'“(").strip()[:1].islower()
    return small and len(above.split()) >= _LEAST_WORDS


def _is_broken_off(above: str, line: str) -> bool:
    ended = _ENDED.search(above)
    begins = _FIGURE.match(line) or not (_goes_on_small(above, line) or len(above) >= _LONG)
    return not (ended or begins)
