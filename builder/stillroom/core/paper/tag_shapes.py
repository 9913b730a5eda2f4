"""The shapes a tag or label comes in, and the box in millimetres that each is cut from."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from stillroom.core.paper.gift_cuts import (
    LABEL_CLEARANCE_MM,
    LABEL_OVERLAP_MM,
    LEAST_LABEL_MM,
    wrap_label_mm,
)
from stillroom.core.paper.sheets import Size
from stillroom.core.words.problems import Unreadable
from stillroom.core.words.said import Said

_say = Said("stillroom.core.paper", "sheets")

Shape = Literal["rectangle", "luggage", "round", "wrap"]
SHAPES: tuple[Shape, ...] = ("rectangle", "luggage", "round", "wrap")

LID_RIM_MM = 6
"""A round label is this much smaller than its lid across. Common practice, no published source."""

LEAST_LID_MM = 40
"""A smaller lid holds no readable words. Maker's own."""

FIXED_MM: dict[Shape, tuple[int, int]] = {"rectangle": (75, 50), "luggage": (95, 50)}
"""Maker's own sizes: eight tags to an A4 page either way."""


@dataclass(frozen=True)
class TagShape:
    """A tag's outline and its box in millimetres."""

    name: Shape
    width_mm: float
    height_mm: float

    @property
    def box(self) -> Size:
        """Return the box it is cut from."""
        width, height = Fraction(str(self.width_mm)), Fraction(str(self.height_mm))
        return Size(f"{self.name} tag", width, height, "")


def tag_shape(
    name: Shape, *, lid_mm: float = 0, bottle_mm: float = 0, wall_mm: float = 0
) -> TagShape:
    """Return a tag's shape; a round one from its lid, a wrap-round one from its bottle.

    Raises:
        Unreadable: when the lid or the bottle is missing or impossible.

    >>> tag_shape("round", lid_mm=62)
    TagShape(name='round', width_mm=56, height_mm=56)
    """
    if name == "round":
        if not lid_mm:
            raise Unreadable(
                "A round label is made for a lid.", "Measure the lid across: --lid 62."
            )
        if not LEAST_LID_MM <= lid_mm <= 200:
            raise _say.refuse("small_lid", lid=f"{lid_mm:g}", least=LEAST_LID_MM)
        return TagShape(name, lid_mm - LID_RIM_MM, lid_mm - LID_RIM_MM)
    if name == "wrap":
        if not (bottle_mm and wall_mm):
            raise Unreadable(
                "A label round a bottle is made for it.",
                "Measure the bottle: --bottle 52 --wall 70.",
            )
        label = wrap_label_mm(bottle_mm, wall_mm)
        return TagShape(name, label.width_mm, label.height_mm)
    return TagShape(name, *FIXED_MM[name])


def label_shape(name: Shape, label: Size) -> TagShape:
    """Return the shape that fills a bought label; raises Unreadable for a round one not as high."""
    if name == "round" and label.width_mm != label.height_mm:
        raise _say.refuse("round_label")
    return TagShape(name, float(label.width_mm), float(label.height_mm))


def tag_measures() -> dict[str, object]:
    """Return the figures from which the browser works out the same boxes."""
    return {
        "fixed": {name: list(size) for name, size in FIXED_MM.items()},
        "lidRim": LID_RIM_MM,
        "leastLid": LEAST_LID_MM,
        "overlap": LABEL_OVERLAP_MM,
        "clearance": LABEL_CLEARANCE_MM,
        "leastHeight": LEAST_LABEL_MM,
    }
