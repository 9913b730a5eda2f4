"""Where the pieces cut for a gift lie on their sheets, each with its words under it.

publish/assets/js/paper/cut-layout.js lays the same in the browser from the figures of
`layout_measures`. Lengths are millimetres. Leaves out what is drawn and how words are set.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from stillroom.core.paper.gift_pieces import MARGIN_MM, Piece, place_on
from stillroom.core.paper.nesting import nest
from stillroom.core.paper.sheets import Size
from stillroom.core.words.problems import Unreadable

FOOT_MM: Final = 18
"""Kept free at the foot of a sheet for the ruler. Maker's own."""
WORDS_MM: Final = 13
"""Room under each piece for its name and its measures in words. Maker's own."""
LEAST_WIDE_MM: Final = 62
"""Narrower words would take too many lines. Maker's own."""


@dataclass(frozen=True, slots=True)
class LaidPiece:
    """A piece on its sheet: the corner and size of its box with its words, and if it is turned."""

    piece: Piece
    x_mm: float
    y_mm: float
    box_width_mm: float
    box_height_mm: float
    turned: bool


def layout_measures() -> dict[str, int]:
    """Return the figures that the browser lays pieces by."""
    return {"foot": FOOT_MM, "words": WORDS_MM, "leastWide": LEAST_WIDE_MM}


def lay_pieces(pieces: Sequence[Piece], paper: Size) -> list[list[LaidPiece]]:
    """Return the sheets the pieces go on, as few as they need.

    Raises Unreadable where a piece is larger than the paper.
    """
    free = (float(paper.width_mm) - 2 * MARGIN_MM, float(paper.height_mm) - FOOT_MM - MARGIN_MM)
    try:
        laid = nest([_box(one) for one in pieces], *free)
    except Unreadable:  # goes on its sheet only on its side, with its words under it
        pieces = [place_on(one, paper) or one for one in pieces]
        laid = nest([_box(one) for one in pieces], *free)
    sheets: dict[int, list[LaidPiece]] = {}
    for place in sorted(laid, key=lambda one: (one.sheet, one.piece)):
        piece = pieces[place.piece]
        corner = (MARGIN_MM + place.x_mm, MARGIN_MM + place.y_mm)
        sheets.setdefault(place.sheet, []).append(
            LaidPiece(piece, *corner, *_box(piece), place.turned)
        )
    return [sheets[number] for number in sorted(sheets)]


def _box(piece: Piece) -> tuple[float, float]:
    return max(piece.width_mm, LEAST_WIDE_MM), piece.height_mm + WORDS_MM
