"""What is cut for a gift, drawn to scale where it goes on the paper: cloth, labels, box nets."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from stillroom.core.paper.cut_layout import WORDS_MM, LaidPiece, lay_pieces
from stillroom.core.paper.gift_cuts import LID_HEIGHT_MM
from stillroom.core.paper.gift_pieces import (
    Piece,
    box_pieces,
    label_pieces,
    lid_pieces,
    lines_of,
    place_on,
)
from stillroom.core.paper.sheets import Size
from stillroom.core.words.problems import Unreadable
from stillroom.printing.language import split_language
from stillroom.printing.typesetting import typeset


@dataclass(frozen=True)
class GiftMeasures:
    """The pieces asked for, and a word for each that names the file."""

    pieces: tuple[Piece, ...]
    names: tuple[str, ...]

    @classmethod
    def read(
        cls,
        lid_mm: float = 0,
        box: str | None = None,
        bottle: str | None = None,
        lid_height_mm: float = LID_HEIGHT_MM,
    ) -> GiftMeasures:
        """Read what was typed; raises Unreadable for nothing or for what is no box or bottle."""
        pieces: list[Piece] = []
        if lid_mm:
            pieces += lid_pieces(lid_mm, lid_height_mm)
        if bottle:
            across, wall = _numbers(bottle, 2, "bottle", "52,70")
            pieces += label_pieces(across, wall)
        if box:
            pieces += box_pieces(*_numbers(box, 4, "box", "80,60,40,20"))
        if not pieces:
            raise Unreadable(
                "Nothing was measured.", "Write --lid 70, --bottle 52,70 or --box 80,60,40,20."
            )
        asked = (("cloth", lid_mm), ("label", bottle), ("box", box))
        return cls(tuple(pieces), tuple(name for name, given in asked if given))


def _numbers(text: str, count: int, what: str, like: str) -> tuple[float, ...]:
    try:
        found = tuple(float(part) for part in text.split(","))
    except ValueError:
        found = ()
    if len(found) != count:
        raise Unreadable(f'"{text}" is not a {what}.', f'Write "{like}".')
    return found


def print_cuts(
    measures: GiftMeasures, paper: Size, language: str = "en_GB", copies: int = 1
) -> bytes:
    """Return the pieces laid close together on as few sheets as they go on.

    Raises Unreadable naming every piece that is larger than the paper: nothing is printed then.
    """
    spoken, region = split_language(language)
    pieces = [piece for _ in range(copies) for piece in measures.pieces]
    _refuse_large(measures.pieces, paper)
    data = {
        "title": "To cut for a gift",
        "language": spoken,
        "region": region,
        "paper": {"width": float(paper.width_mm), "height": float(paper.height_mm)},
        "words_mm": WORDS_MM,
        "sheets": [[_laid(one) for one in sheet] for sheet in lay_pieces(pieces, paper)],
    }
    return typeset("cuts.typ", data).pdf


def _refuse_large(pieces: tuple[Piece, ...], paper: Size) -> None:
    large = [piece for piece in pieces if place_on(piece, paper) is None]
    if large:
        said = "; ".join(f"{piece.name.lower()}: {piece.words}" for piece in large)
        raise Unreadable(
            f"This is larger than one sheet of {paper.name}: {said}",
            "Draw it by these measures with a ruler. Nothing was printed.",
        )


def _laid(one: LaidPiece) -> dict[str, Any]:
    where = {"x": one.x_mm, "y": one.y_mm, "turned": one.turned}
    box = {"box_width": one.box_width_mm, "box_height": one.box_height_mm}
    return _drawn(one.piece) | where | box


def _drawn(piece: Piece) -> dict[str, Any]:
    lines = lines_of(piece)
    return {
        "name": piece.name,
        "words": piece.words,
        "width": piece.width_mm,
        "height": piece.height_mm,
        "outline": lines.outline,
        "folds": lines.folds,
        "circle": lines.circle_mm,
    }
