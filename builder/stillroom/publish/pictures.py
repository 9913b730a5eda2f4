"""The book's drawings as they stand in a page.

A drawing made with `currentColor` takes the page's ink, so that it is as much at home in the
night kitchen as on paper; it can do so only when it stands in the page itself and not in an img.
"""

from __future__ import annotations

import re
import xml.etree.ElementTree as ElementTree
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

_SVG = "{http://www.w3.org/2000/svg}"


@dataclass(frozen=True)
class Drawing:
    """A picture of the book: its address, its words, its size in CSS pixels."""

    src: str
    alt: str
    width: int
    height: int


def describe_drawing(path: Path, src: str, alt: str) -> Drawing:
    """Read the size of an SVG from its viewBox; a drawing without one counts as square."""
    width, height = _size(path, path.stat().st_mtime_ns)
    return Drawing(src, alt, width, height)


@lru_cache(maxsize=4096)
def _size(path: Path, changed_ns: int) -> tuple[int, int]:
    """Return a drawing's size as it was when last changed: `mkdocs serve` runs on for hours."""
    box = ElementTree.parse(path).getroot().get("viewBox", "0 0 400 400")
    _, _, width, height = (float(part) for part in re.split(r"[\s,]+", box.strip()))
    return round(width), round(height)
