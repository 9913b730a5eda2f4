"""The colours a book may be given: a few that fit, each pair that is read together told apart.

They are a stylesheet of the book's own, beside its pages; nothing of the book's look is changed for
anybody else.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

import yaml

STYLE: Final = "stylesheets/colours.css"
"""Below the book's pages; mkdocs.yml names it under extra_css."""
READ_TOGETHER: Final = tuple(
    (ink, ground)
    for ground in ("paper", "paper-deep")
    for ink in ("ink", "ink-soft", "accent", "leaf")
)
LEAST: Final = 4.5
"""WCAG 2.2, success criterion 1.4.3 (from memory)."""
_CALLED: Final = {"accent": "madder"}
"""The names of the book's own stylesheet, where they differ."""


@dataclass(frozen=True)
class Palette:
    """Colours for day and night, by what each is for."""

    name: str
    words: str
    day: Mapping[str, str]
    night: Mapping[str, str]


@cache
def palettes() -> dict[str, Palette]:
    """Return every choice of colours by its name."""
    text = Path(__file__).with_name("palettes.yml").read_text(encoding="utf-8")
    rows = yaml.safe_load(text)
    return {
        name: Palette(name, row["words"], row["day"], row["night"]) for name, row in rows.items()
    }


def contrast(one: str, other: str) -> float:
    """Return the contrast of two colours as WCAG 2.2 reckons it (relative luminance, from memory).

    >>> round(contrast("#000000", "#ffffff"), 2), round(contrast("#777777", "#ffffff"), 2)
    (21.0, 4.48)
    """
    lighter, darker = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(colour: str) -> float:
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    linear = [
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    ]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def style_of(palette: Palette) -> str:
    """Return the stylesheet that gives a book these colours."""
    day, night = (_rules(colours) for colours in (palette.day, palette.night))
    return (
        f"/* The book's colours: {palette.name}. Chosen at the desk, and written by it. */\n"
        f":root {{\n{day}}}\n\n"
        f"@media (prefers-color-scheme: dark) {{\n  :root {{\n{_further(night)}  }}\n}}\n"
    )


def _rules(colours: Mapping[str, str]) -> str:
    return "".join(
        f"  --{_CALLED.get(name, name)}: {colour};\n" for name, colour in colours.items()
    )


def _further(text: str) -> str:
    return "".join(f"  {line}\n" for line in text.splitlines())


def palette_in(style: str) -> str:
    """Return the name of the palette that a stylesheet of this kind holds; "" for another's."""
    return next((name for name in palettes() if f"The book's colours: {name}." in style), "")
