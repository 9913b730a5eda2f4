"""What is cut for a gift: cloth for a lid, ribbon, a bottle's wrap label, the net of a box.

Lengths are millimetres, rounded up to a whole millimetre where a person cuts. Allowances are
common practice, no published source, unless said. The words, refusals included, are data
(said/); publish/assets/js/paper/gift-cuts.js works the same out in the browser,
from the figures of `cut_measures`. What is drawn of it is in gift_pieces.py.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache
from typing import Any

from stillroom.core.words.problems import Unreadable
from stillroom.core.words.said import Said

CLOTH_OVERHANG_MM = 30
"""Cloth hanging below the lid's rim, all round. Common practice, no published source."""

BOW_MM = 380
"""A small bow: two loops of 50 mm (4 x 50), two tails of 80 mm, 20 mm in the knot. Common
practice, no published source."""

KNOT_MM = 60
"""A knot and two short ends. Common practice, no published source."""

LID_HEIGHT_MM = 15
"""What the lid of a preserving jar is high, when nobody measured. Common practice, no published
source."""

LABEL_OVERLAP_MM = 8
"""Where a wrap-round label is glued on itself. Common practice, no published source."""

LABEL_CLEARANCE_MM = 2
"""Kept free above and below on the straight wall, where glass begins to curve. Common practice,
no published source."""

LEAST_LABEL_MM = 15
"""A lower label holds no readable words. Maker's own."""

LID_PLAY_MM = 1
"""A box lid is this much wider than its box on each side: two thicknesses of card. Common
practice, no published source."""

LEAST_BOX_WALL_MM = 5
"""A lower wall holds no tab to glue. Maker's own."""

_LARGEST_MM = 2000


@cache
def gift_words() -> dict[str, Any]:
    """Return every phrase with its blanks."""
    return dict(Said("stillroom.core.paper", "gifts").phrases)


def cut_measures() -> dict[str, int]:
    """Return the figures from which the browser works out the same pieces."""
    return {
        "overhang": CLOTH_OVERHANG_MM,
        "bow": BOW_MM,
        "knot": KNOT_MM,
        "lidHeight": LID_HEIGHT_MM,
        "overlap": LABEL_OVERLAP_MM,
        "clearance": LABEL_CLEARANCE_MM,
        "leastLabel": LEAST_LABEL_MM,
        "play": LID_PLAY_MM,
        "leastWall": LEAST_BOX_WALL_MM,
        "largest": _LARGEST_MM,
    }


def show_mm(length: float) -> str:
    """Return a length to the hundredth of a millimetre, without needless noughts.

    >>> show_mm(62.0), show_mm(31.456)
    ('62', '31.46')
    """
    if not abs(length) < 1e15:  # no number, or one too long to be written out
        return f"{length:g}"
    # as the browser rounds: halves go up
    return f"{math.floor(length * 100 + 0.5) / 100:.2f}".rstrip("0").rstrip(".")


@dataclass(frozen=True)
class Rectangle:
    """A piece to cut, in mm."""

    width_mm: float
    height_mm: float


@dataclass(frozen=True)
class BoxNet:
    """The two cross-shaped nets of a box with a lid, in mm.

    Each net is a base with four walls of `wall` mm; glue tabs stand on the ends of two of them.
    """

    base_length_mm: float
    base_width_mm: float
    base_wall_mm: float
    lid_length_mm: float
    lid_width_mm: float
    lid_wall_mm: float

    @property
    def base_flat(self) -> Rectangle:
        """Return the paper the base needs."""
        return _flat(self.base_length_mm, self.base_width_mm, self.base_wall_mm)

    @property
    def lid_flat(self) -> Rectangle:
        """Return the paper the lid needs."""
        return _flat(self.lid_length_mm, self.lid_width_mm, self.lid_wall_mm)


def _flat(length: float, width: float, wall: float) -> Rectangle:
    return Rectangle(length + 2 * wall, width + 2 * wall)


def cloth_square_mm(lid_diameter_mm: float, lid_height_mm: float = LID_HEIGHT_MM) -> int:
    """Return the side of the square of cloth that covers a lid and hangs below it.

    >>> cloth_square_mm(70)
    160
    """
    _check(lid_diameter_mm, "lid")
    _check(lid_height_mm, "lid_height", least=0)
    return math.ceil(lid_diameter_mm + 2 * lid_height_mm + 2 * CLOTH_OVERHANG_MM)


def ribbon_mm(diameter_mm: float, *, turns: int = 1, bow: bool = True) -> int:
    """Return the ribbon that goes `turns` times round a lid or neck, with a bow or a knot.

    >>> ribbon_mm(70)
    600
    """
    _check(diameter_mm, "diameter")
    if turns < 1:
        raise Unreadable(gift_words()["turns_least"])
    return math.ceil(math.pi * diameter_mm * turns) + (BOW_MM if bow else KNOT_MM)


def wrap_label_mm(
    bottle_diameter_mm: float, wall_height_mm: float, *, share: float = 1.0
) -> Rectangle:
    """Return the label that goes round a bottle: its girth plus the overlap, and its height.

    `wall_height_mm` is the straight part of the bottle. With a `share` under 1 the label covers
    that part of the girth and needs no overlap. Width is rounded to 0.1 mm: girth is pi times
    the diameter.

    >>> wrap_label_mm(60, 70)
    Rectangle(width_mm=196.5, height_mm=66)
    """
    _check(bottle_diameter_mm, "bottle")
    _check(wall_height_mm, "wall")
    if not 0 < share <= 1:
        raise Unreadable(gift_words()["part_of_girth"])
    width = math.pi * bottle_diameter_mm * share + (LABEL_OVERLAP_MM if share == 1 else 0)
    height = wall_height_mm - 2 * LABEL_CLEARANCE_MM
    if height < LEAST_LABEL_MM:
        raise Unreadable(gift_words()["low_wall"].format(value=show_mm(wall_height_mm)))
    return Rectangle(round(width, 1), height)


def box_net(length_mm: float, width_mm: float, height_mm: float, lid_height_mm: float) -> BoxNet:
    """Return the nets of a box of these inside measures and of the lid that slips over it.

    >>> box_net(80, 60, 40, 20).base_flat
    Rectangle(width_mm=160, height_mm=140)
    """
    for value, name in (
        (length_mm, "length"), (width_mm, "width"), (height_mm, "height"),
        (lid_height_mm, "box_lid"),
    ):  # fmt: skip
        _check(value, name)
    if lid_height_mm > height_mm:
        raise Unreadable(gift_words()["deep_lid"])
    if lid_height_mm < LEAST_BOX_WALL_MM:
        said = gift_words()["low_box"]
        raise Unreadable(said.format(value=show_mm(lid_height_mm), least=LEAST_BOX_WALL_MM))
    play = 2 * LID_PLAY_MM
    return BoxNet(length_mm, width_mm, height_mm, length_mm + play, width_mm + play, lid_height_mm)


def _check(value: float, what: str, *, least: int = 1) -> None:
    if 0 < value <= _LARGEST_MM or value == least == 0:
        return
    words = gift_words()
    raise Unreadable(
        words["impossible"].format(
            what=words["what"][what], value=show_mm(value), least=least, most=_LARGEST_MM
        )
    )
