"""A sheet that shows by how many millimetres a printer misses: the next ones are moved."""

from __future__ import annotations

from typing import Final

from stillroom.core.paper.sheets import Size
from stillroom.core.words.said import Said
from stillroom.printing.language import split_language
from stillroom.printing.typesetting import typeset

_say = Said("stillroom.core.paper", "feed")

LINES_MM: Final = 20
"""How far from the paper's left and upper edge the two long lines are to stand. Maker's own."""


def print_feed_sheet(
    paper: Size, shift_mm: tuple[float, float] = (0.0, 0.0), language: str = "en_GB"
) -> bytes:
    """Return a sheet with two long lines, moved by what the printer is already told to move."""
    spoken, region = split_language(language)
    data = {
        "title": _say("title"),
        "said": {
            name: _say(name, lines=LINES_MM, more=LINES_MM + 1.2, less=LINES_MM - 0.5)
            for name in ("print", "across", "down", "settings", "moved")
        },
        "language": spoken,
        "region": region,
        "paper": {"width": float(paper.width_mm), "height": float(paper.height_mm)},
        "lines": LINES_MM,
        "shift": list(shift_mm),
    }
    return typeset("feed_sheet.typ", data).pdf
