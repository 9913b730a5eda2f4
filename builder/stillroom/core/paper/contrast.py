"""How well an ink is read on its paper, on white, on brown card and from a grey printer.

By WCAG 2.2. Colours are written "#2a221c". Leaves out which inks a design has
(looks/card_designs.py).
"""

from __future__ import annotations

from typing import Final

from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

LEAST: Final = 4.5
"""WCAG 2.2, 1.4.3, text of any size (from memory)."""

BROWN_CARD: Final = "#c8a678"
"""Brown card as it is sold for tags, by a warm light. Maker's own."""

WHITE: Final = "#ffffff"
_COLOUR: Final = late_regex(r"#([0-9a-fA-F]{2})([0-9a-fA-F]{2})([0-9a-fA-F]{2})")


def _parts(colour: str) -> tuple[float, float, float]:
    found = _COLOUR.fullmatch(colour)
    if not found:
        raise Unreadable(f'"{colour}" is not a colour.', 'Write six letters or figures: "#2a221c".')
    red, green, blue = (int(part, 16) / 255 for part in found.groups())
    return red, green, blue


def luminance(colour: str) -> float:
    """Return the relative luminance of a colour, 0 for black to 1 for white.

    >>> luminance("#ffffff"), luminance("#000000")
    (1.0, 0.0)
    """
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
        for part in _parts(colour)
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(ink: str, paper: str = WHITE) -> float:
    """Return the contrast of two colours, 1 to 21.

    >>> contrast("#000000"), round(contrast("#777777"), 2)
    (21.0, 4.48)
    """
    light, dark = sorted((luminance(ink), luminance(paper)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def grey(colour: str) -> str:
    """Return what a printer without colours makes of an ink: its luma by ITU-R BT.601.

    >>> grey("#7d2c1d")
    '#434343'
    """
    red, green, blue = _parts(colour)
    level = round((0.299 * red + 0.587 * green + 0.114 * blue) * 255)
    return f"#{level:02x}{level:02x}{level:02x}"


def contrasts(ink: str, paper: str) -> dict[str, float]:
    """Return an ink's contrast wherever it may be printed: by the words that name the place."""
    return {
        "on its own paper": contrast(ink, paper),
        "on white": contrast(ink),
        "on brown card": contrast(ink, BROWN_CARD),
        "printed grey": contrast(grey(ink)),
        "printed grey on brown card": contrast(grey(ink), BROWN_CARD),
    }
