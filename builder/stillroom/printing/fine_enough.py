"""Whether the photographs of a printed book are fine enough for a printer's shop.

A drawing is as fine as the printer. Leaves out telling of it: the command does.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil

from stillroom.core.book import Book
from stillroom.core.reading.picture_files import read_picture
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.text_files import is_file_at
from stillroom.looks.photographs import LONGEST_SIDE, PHOTOGRAPHS, open_pillow

WANTED_DPI = 300
"""Points to the inch that printers ask of photographs: common practice, no published source."""
MM_OF_INCH = 25.4
# The largest that a picture may stand, in mm, as the templates of the book set it.
_RECIPE_BOX = (118.0, 84.0)
_HAND_BOX = (88.0, 60.0)
_PHOTOGRAPH_BOX = (118.0, 134.0)


@dataclass(frozen=True)
class Coarse:
    """A photograph too coarse for its place: how large it stands, how fine, and what is wanted."""

    name: str
    width_mm: int
    height_mm: int
    dpi: int
    wanted: tuple[int, int]

    @property
    def words(self) -> str:
        """What is told of it."""
        return (
            f'The picture "{self.name}" is printed as large as {self.width_mm} by '
            f"{self.height_mm} mm, at {self.dpi} points to the inch; a printer's shop asks for "
            f"{WANTED_DPI}. Put in one of {self.wanted[0]} by {self.wanted[1]} points or more."
        )


def find_coarse(book: Book, recipes: Sequence[Recipe]) -> Iterator[Coarse]:
    """Return each photograph of the printed book that is too coarse, the recipes' first."""
    own = book.settings.family_book
    placed = [(recipe.picture, _RECIPE_BOX) for recipe in recipes if recipe.picture]
    placed += [(own.handwriting, _HAND_BOX)] if own.handwriting else []
    placed += [(one.picture, _PHOTOGRAPH_BOX) for one in own.photographs]
    for name, box in dict(placed).items():
        path = book.pictures_dir / name
        if path.suffix.lower() in PHOTOGRAPHS and is_file_at(path):
            size = read_picture(path)
            found = _measure(name, size.width, size.height, box)
            if found.dpi < WANTED_DPI:
                yield found


def _measure(name: str, width: int, height: int, box: tuple[float, float]) -> Coarse:
    scale = min(box[0] / width, box[1] / height)
    kept = 1.0
    if max(width, height) > LONGEST_SIDE and open_pillow() is not None:
        kept = LONGEST_SIDE / max(width, height)
    dpi = int(kept * MM_OF_INCH / scale)
    wanted = (
        ceil(width * scale / MM_OF_INCH * WANTED_DPI),
        ceil(height * scale / MM_OF_INCH * WANTED_DPI),
    )
    return Coarse(name, round(width * scale), round(height * scale), dpi, wanted)
