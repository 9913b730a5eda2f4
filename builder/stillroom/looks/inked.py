"""The book's pictures as they are set on paper: those of recipes, emblems of kinds.

A drawing made with `currentColor` takes the page's ink here, as it does on the screen; a photograph
stands within a drawing, clean and upright.
"""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

from stillroom.core.book import Book
from stillroom.core.words.text_files import is_file_at
from stillroom.looks import DRAWINGS
from stillroom.looks.photographs import as_drawing

INK = "#2a221c"

_DARK = re.compile(r"@media \(prefers-color-scheme: ?dark\) ?\{(?:[^{}]*\{[^{}]*\})*[^{}]*\}")
_VARIABLE = re.compile(r"var\(\s*--[\w-]+\s*,\s*([^()]*(?:\([^()]*\))?[^()]*)\)")


def picture_of(book: Book, name: str) -> str:
    """Return a picture of the book as SVG, or "" when there is none of that name."""
    path = book.pictures_dir / name
    if not name or not is_file_at(path):
        return ""
    return _inked(path) if path.suffix.lower() == ".svg" else as_drawing(path)


@cache
def emblem_of(kind_slug: str) -> str:
    """Return the small drawing of a kind as SVG, or "" when there is none."""
    path = DRAWINGS / f"kind-{kind_slug}.svg"
    return _inked(path) if is_file_at(path) else ""


@cache
def _inked(path: Path) -> str:
    """Return a drawing in its colours by day, in the plain CSS that paper and e-readers know."""
    svg = _VARIABLE.sub(r"\1", _DARK.sub("", path.read_text(encoding="utf-8")))
    return svg.replace("currentColor", INK)
