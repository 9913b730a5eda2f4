"""What is cut for a gift, drawn to scale where it goes on the paper: cloth, labels, box nets."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from stillroom.core.paper.gift_cuts import LID_HEIGHT_MM, gift_words
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


def print_cuts(measures: GiftMeasures, paper: Size, language: str = "en_GB") -> bytes:
    """Return one page for each piece; what is larger than the paper is told, not drawn."""
    spoken, region = split_language(language)
    data = {
        "title": "To cut for a gift",
        "language": spoken,
        "region": region,
        "paper": {"width": float(paper.width_mm), "height": float(paper.height_mm)},
        "pieces": [_drawn(piece, paper) for piece in measures.pieces],
    }
    return typeset("cuts.typ", data).pdf


def _drawn(piece: Piece, paper: Size) -> dict[str, Any]:
    placed = place_on(piece, paper)
    said = {"name": piece.name, "words": piece.words, "drawn": placed is not None}
    if placed is None:
        return said | {"words": f"{piece.words} {gift_words()['too_large']}"}
    lines = lines_of(placed)
    return said | {
        "width": placed.width_mm,
        "height": placed.height_mm,
        "outline": lines.outline,
        "folds": lines.folds,
        "circle": lines.circle_mm,
    }
