"""A design and a box as the card and tag templates read them, and the papers beside them."""

from __future__ import annotations

from typing import Any, Literal

from stillroom.looks.borders import draw_border
from stillroom.looks.card_designs import Design, steps_of

ARRANGEMENTS = {
    "all": ["all"],
    "bare gift": ["bare gift", "record"],
    "portrait gift": ["portrait gift", "told"],
    "gift": ["gift", "facts"],
    "small gift": ["small gift", "facts"],
    "plain gift": ["plain gift", "facts"],
    "contents": ["contents", "advice"],
}
"""What stands on which side, in the order in which they are tried; publish/assets/js/paper/
card-sides.js has the same.

"advice" is use, keep and cautions; a "small gift" has a small drawing, a "plain gift" none. A "bare
gift" and a "portrait gift" are for designs whose picture has a front to itself.
"""
PORTRAITS = frozenset({"bare gift", "portrait gift"})


def look_of(design: Design, width_mm: float, height_mm: float) -> dict[str, Any]:
    """Return what a paper beside the cards takes of their design, for a sheet of this size.

    Inks, faces, title and border: a narrow one, as far from the edge of a whole sheet as printers
    print.
    """
    slim = design.for_tags()
    if slim.border and max(width_mm, height_mm) > NAME_TAG_MOST_MM:
        far = {"edge": 5.0}
        slim = slim.model_copy(update={"border": slim.border.model_copy(update=far)})
    border = draw_border(slim, width_mm, height_mm)
    return {
        "inks": design.inks.model_dump(),
        "text": design.faces.text,
        "facts": design.faces.facts,
        "title": design.title.model_dump(),
        "large": design.large,
        "border": border,
        "edge": slim.edge_mm if border else 0.0,
    }


NAME_TAG_MOST_MM = 120
"""What is longer is a sheet that is not cut: its border keeps clear of the paper's edge."""


def design_data(
    design: Design,
    thing: Literal["card", "folded", "tag"],
    width_mm: float,
    height_mm: float,
    *,
    has_back: bool = True,
) -> dict[str, Any]:
    """Return the inks, faces and numbers of a design and its border for one box."""
    design = design.for_tags() if thing == "tag" else design
    order = [
        sides
        for name, sides in ARRANGEMENTS.items()
        if design.picture.alone or name not in PORTRAITS
    ]
    if design.sides == "two" and has_back:
        order = [*order[1:], order[0]]
    return {
        "inks": design.inks.model_dump(),
        "text": design.faces.text,
        "facts": design.faces.facts,
        "title": design.title.model_dump(),
        "picture": design.picture.model_dump(),
        "edge": design.edge_mm if draw_border(design, width_mm, height_mm) else 0.0,
        "border": draw_border(design, width_mm, height_mm),
        "large": design.large,
        "has_back": has_back,
        "arrangements": order,
        "levels": [
            {
                "text": step.text,
                "plain": step.plain,
                "title": step.title * design.title.size,
                "leading": step.leading,
                "gap": step.gap,
            }
            for step in steps_of(design, thing)
        ],
    }
