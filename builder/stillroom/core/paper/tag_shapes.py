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

LARGER_MM: dict[Shape, tuple[tuple[int, int], ...]] = {
    "rectangle": ((90, 65), (105, 74)),
    "luggage": ((115, 65), (130, 80)),
}
"""What large type takes where the words need it, the smaller first: the sizes of cards, and luggage
tags in proportion. A label for a lid or a bottle cannot grow: tags to tie on take its place."""


@dataclass(frozen=True)
class TagShape:
    """A tag's outline and its box in millimetres."""

    name: Shape
    width_mm: float
    height_mm: float

    @property
    def spoken(self) -> str:
        """Return what it is called where it does not hold its words."""
        fixed = FIXED_MM.get(self.name, (self.width_mm, self.height_mm))
        if fixed == (self.width_mm, self.height_mm):
            return f"a {self.name} tag"
        return f"a {self.name} tag of {self.width_mm:g} x {self.height_mm:g} mm"

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


def larger_shapes(shape: TagShape) -> tuple[TagShape, ...]:
    """Return a tag's shape and those that large type tries after it.

    >>> [(one.name, one.width_mm) for one in larger_shapes(tag_shape("round", lid_mm=62))]
    [('round', 56), ('rectangle', 75), ('rectangle', 90), ('rectangle', 105)]
    """
    name: Shape = shape.name if shape.name in LARGER_MM else "rectangle"
    first = () if shape.name == name else (FIXED_MM[name],)
    return (shape, *(TagShape(name, *size) for size in (*first, *LARGER_MM[name])))


def say_larger(taken: TagShape, asked: TagShape) -> str:
    """Return the words for what large type took in place of what was asked for.

    >>> say_larger(TagShape("rectangle", 90, 65), TagShape("rectangle", 75, 50))
    'tags of 90 x 65 mm'
    """
    words = "larger_tags" if taken.name == asked.name else "tied_on"
    return _say(words, width=f"{taken.width_mm:g}", height=f"{taken.height_mm:g}")


def label_shape(name: Shape, label: Size) -> TagShape:
    """Return the shape that fills a bought label; raises Unreadable for a round one not as high."""
    if name == "round" and label.width_mm != label.height_mm:
        raise _say.refuse("round_label")
    return TagShape(name, float(label.width_mm), float(label.height_mm))


def tag_measures() -> dict[str, object]:
    """Return the figures from which the browser works out the same boxes."""
    return {
        "fixed": {name: list(size) for name, size in FIXED_MM.items()},
        "larger": {name: [list(size) for size in sizes] for name, sizes in LARGER_MM.items()},
        "lidRim": LID_RIM_MM,
        "leastLid": LEAST_LID_MM,
        "overlap": LABEL_OVERLAP_MM,
        "clearance": LABEL_CLEARANCE_MM,
        "leastHeight": LEAST_LABEL_MM,
    }
