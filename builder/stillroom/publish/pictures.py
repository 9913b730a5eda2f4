"""The book's pictures as they stand in a page: their address, their words, their size.

A drawing made with `currentColor` takes the page's ink, so that it is as much at home in the
night kitchen as on paper; it can do so only when it stands in the page itself and not in an img.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Final, Literal

from stillroom.core.reading.picture_files import PictureSize, read_picture

EMBLEM_SIDE: Final = 64
"""The side of a kind's drawing, in CSS pixels."""


@dataclass(frozen=True)
class Drawing:
    """A picture of the book: its address, its words, its size in CSS pixels.

    `shape` is what it is: a drawing, a photograph, or the emblem of a kind. `focus` is the point
    that a cut photograph keeps.
    """

    src: str
    alt: str
    width: int
    height: int
    shape: Literal["drawing", "photograph", "emblem"] = "drawing"
    focus: str = ""


def describe_drawing(path: Path, src: str, alt: str, focus: str = "") -> Drawing:
    """Return a picture with the size that its file says; a drawing that says none is square."""
    size = _size(path, path.stat().st_mtime_ns)
    drawn = path.suffix.lower() == ".svg"
    return Drawing(src, alt, size.width, size.height, "drawing" if drawn else "photograph", focus)


def describe_emblem(src: str) -> Drawing:
    """Return the drawing of a kind, which stands where a recipe has no picture of its own."""
    return Drawing(src, "", EMBLEM_SIDE, EMBLEM_SIDE, "emblem")


@lru_cache(maxsize=4096)
def _size(path: Path, changed_ns: int) -> PictureSize:
    """Return a picture's size as it was when last changed: `mkdocs serve` runs on for hours."""
    return read_picture(path)
