"""The book's drawings as they are set on paper: pictures of recipes, emblems of kinds.

A drawing made with `currentColor` takes the page's ink here, as it does on the screen.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache
from pathlib import Path

from stillroom.core.book import Book
from stillroom.core.recipe.model import Recipe
from stillroom.looks import DRAWINGS

INK = "#2a221c"

_DARK = re.compile(r"@media \(prefers-color-scheme: ?dark\) ?\{(?:[^{}]*\{[^{}]*\})*[^{}]*\}")
_VARIABLE = re.compile(r"var\(\s*--[\w-]+\s*,\s*([^()]*(?:\([^()]*\))?[^()]*)\)")


def picture_of(book: Book, name: str) -> str:
    """Return a picture of the book as SVG, or "" when there is none of that name."""
    path = book.pictures_dir / name
    return _inked(path) if name.endswith(".svg") and path.is_file() else ""


def name_photographs(book: Book, recipes: Iterable[Recipe]) -> tuple[str, ...]:
    """Return the recipes whose picture is a photograph, which paper leaves out."""
    found = ((recipe.title, book.pictures_dir / recipe.picture) for recipe in recipes)
    return tuple(title for title, path in found if path.is_file() and path.suffix.lower() != ".svg")


def emblem_of(kind_slug: str) -> str:
    """Return the small drawing of a kind as SVG, or "" when there is none."""
    path = DRAWINGS / f"kind-{kind_slug}.svg"
    return _inked(path) if path.is_file() else ""


@cache
def _inked(path: Path) -> str:
    """Return a drawing in its colours by day, in the plain CSS that paper and e-readers know."""
    svg = _VARIABLE.sub(r"\1", _DARK.sub("", path.read_text(encoding="utf-8")))
    return svg.replace("currentColor", INK)
