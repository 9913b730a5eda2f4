"""The book's drawings as they are set on paper: pictures of recipes, emblems of kinds.

A drawing made with `currentColor` takes the page's ink here, as it does on the screen.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

from stillroom.core.book import Book

INK = "#2a221c"
EMBLEMS = Path(__file__).parent / "emblems"


def picture_of(book: Book, name: str) -> str:
    """Return a picture of the book as SVG, or "" when there is none of that name."""
    path = book.pictures_dir / name
    return _inked(path) if name.endswith(".svg") and path.is_file() else ""


def emblem_of(kind_slug: str) -> str:
    """Return the small drawing of a kind as SVG, or "" when there is none."""
    path = EMBLEMS / f"{kind_slug}.svg"
    return _inked(path) if path.is_file() else ""


@cache
def _inked(path: Path) -> str:
    return path.read_text(encoding="utf-8").replace("currentColor", INK)
