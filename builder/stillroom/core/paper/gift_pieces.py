"""The pieces cut for a gift as they are drawn: words, outline, folds, and what the page holds.

Arithmetic is in gift_cuts.py. The printed sheet (printing/cut_sheet.py) and the browser
(publish/assets/js/paper/gift-cuts.js) draw the same lines, in millimetres from a piece's top left
corner.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any, Final, Literal

from stillroom.core.paper.gift_cuts import (
    LABEL_OVERLAP_MM,
    LID_HEIGHT_MM,
    Rectangle,
    box_net,
    cloth_square_mm,
    cut_measures,
    gift_words,
    ribbon_mm,
    show_mm,
    wrap_label_mm,
)
from stillroom.core.paper.sheets import Size

MARGIN_MM: Final = 10
HEAD_AND_FOOT_MM: Final = 50
"""Kept free of drawing above (a name and its words) and below (the ruler). Maker's own."""

TAB_MM: Final = 12
TAB_SLOPE_MM: Final = 2
"""A glue tab's width and the slope of its ends. Common practice, no published source."""

SHARES: Final = {"1": 1.0, "1/2": 0.5, "1/3": 1 / 3, "1/4": 0.25}

Kind = Literal["cloth", "label", "net"]
Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece to cut: its name, its measures in words, its size in mm.

    `wall_mm` is that of a net, `lid_mm` the lid that lies on a cloth, `overlap_mm` what of a label
    is glued on itself; each is 0 for other kinds. `turned` when it lies sideways on the page.
    """

    kind: Kind
    name: str
    words: str
    width_mm: float
    height_mm: float
    wall_mm: float = 0
    lid_mm: float = 0
    overlap_mm: float = 0
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Lines:
    """The closed outline to cut, and the dashed lines to fold or to lay something on, in mm."""

    outline: tuple[Point, ...]
    folds: tuple[tuple[Point, Point], ...] = ()
    circle_mm: float = 0


def lid_pieces(
    lid_mm: float, lid_height_mm: float = LID_HEIGHT_MM, turns: int = 1, *, bow: bool = True
) -> tuple[Piece, ...]:
    """Return the cloth that covers a lid; its words also say the ribbon that ties it."""
    words, side = gift_words(), cloth_square_mm(lid_mm, lid_height_mm)
    ribbon = ribbon_mm(lid_mm, turns=turns, bow=bow)
    tie = words["bow" if bow else "knot"].format(turns=words["turns"][turns])
    said = words["cloth"].format(side=side, lid=show_mm(lid_mm), ribbon=ribbon, tie=tie)
    return (Piece("cloth", words["cloth_name"], said, side, side, lid_mm=lid_mm),)


def label_pieces(bottle_mm: float, wall_mm: float, share: str = "1") -> tuple[Piece, ...]:
    """Return the label round a bottle; `share` is one of SHARES."""
    words = gift_words()
    label = wrap_label_mm(bottle_mm, wall_mm, share=SHARES[share])
    overlap = LABEL_OVERLAP_MM if share == "1" else 0
    said = words["label_round" if overlap else "label_part"].format(
        width=show_mm(label.width_mm), height=show_mm(label.height_mm), overlap=overlap,
        part=words["parts"][share],
    )  # fmt: skip
    name, size = words["label_name"], (label.width_mm, label.height_mm)
    return (Piece("label", name, said, *size, overlap_mm=overlap),)


def box_pieces(
    length_mm: float, width_mm: float, height_mm: float, lid_height_mm: float
) -> tuple[Piece, ...]:
    """Return the nets of a box of these inside measures and of the lid that slips over it."""
    net = box_net(length_mm, width_mm, height_mm, lid_height_mm)
    words = gift_words()
    base = (net.base_length_mm, net.base_width_mm, net.base_wall_mm, net.base_flat)
    lid = (net.lid_length_mm, net.lid_width_mm, net.lid_wall_mm, net.lid_flat)
    return (_net_piece(words["box_name"], *base), _net_piece(words["box_lid_name"], *lid))


def _net_piece(name: str, length: float, width: float, wall: float, flat: Rectangle) -> Piece:
    said = gift_words()["net"].format(
        length=show_mm(length), width=show_mm(width), wall=show_mm(wall),
        flat_length=show_mm(flat.width_mm), flat_width=show_mm(flat.height_mm),
    )  # fmt: skip
    return Piece("net", name, said, flat.width_mm, flat.height_mm, wall_mm=wall)


def cuts_data() -> dict[str, Any]:
    """Return what publish/assets/js/paper/gift-cuts.js needs to give the same pieces and words."""
    drawing = {"margin": MARGIN_MM, "headAndFoot": HEAD_AND_FOOT_MM, "tab": TAB_MM}
    return {
        "measures": cut_measures() | drawing | {"slope": TAB_SLOPE_MM},
        "shares": SHARES,
    }


def say_allowances() -> str:
    """Return what was added to the bare measures, and where that comes from."""
    figures = cut_measures()
    return str(gift_words()["allowances"].format(**figures))


def place_on(piece: Piece, paper: Size) -> Piece | None:
    """Return the piece as it lies on a page, turned if only that fits; None when nothing does."""
    across = float(paper.width_mm) - 2 * MARGIN_MM
    down = float(paper.height_mm) - HEAD_AND_FOOT_MM
    if piece.width_mm <= across and piece.height_mm <= down:
        return piece
    if piece.height_mm <= across and piece.width_mm <= down:
        return replace(
            piece, width_mm=piece.height_mm, height_mm=piece.width_mm, turned=not piece.turned
        )
    return None


def lines_of(piece: Piece) -> Lines:
    """Return what is drawn of a piece."""
    w, h = piece.width_mm, piece.height_mm
    if piece.kind == "net":
        return _net_lines(w, h, piece.wall_mm)
    outline = ((0, 0), (w, 0), (w, h), (0, h))
    if not piece.overlap_mm:
        return Lines(outline, circle_mm=piece.lid_mm)
    glued = piece.overlap_mm
    fold = ((0, h - glued), (w, h - glued)) if piece.turned else ((w - glued, 0), (w - glued, h))
    return Lines(outline, (fold,))


def _net_lines(w: float, h: float, t: float) -> Lines:
    """Return the cross of a net; the walls at head and foot carry a tab at each end."""
    a, s = min(TAB_MM, t - TAB_SLOPE_MM), TAB_SLOPE_MM
    right, foot = w - t, h - t
    outline = (
        (t, 0), (right, 0), (right + a, s), (right + a, t - s), (right, t),
        (w, t), (w, foot), (right, foot), (right + a, foot + s), (right + a, h - s), (right, h),
        (t, h), (t - a, h - s), (t - a, foot + s), (t, foot),
        (0, foot), (0, t), (t, t), (t - a, t - s), (t - a, s),
    )  # fmt: skip
    base = ((t, t), (right, t), (right, foot), (t, foot))
    folds = tuple(zip(base, (*base[1:], base[0]), strict=True))
    tabs = tuple(((x, y), (x, y + t)) for x in (t, right) for y in (0.0, foot))
    return Lines(outline, folds + tabs)
