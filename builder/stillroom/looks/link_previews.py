"""What a link to a page shows of its photograph: a wide piece round the point that must be seen.

Whoever shows a link cuts what it is given to this shape, in the middle. So it is given this shape.
Without Pillow nothing is cut, and the photograph stands there whole.
"""

from __future__ import annotations

import io
from pathlib import Path
from typing import Any, Final

from stillroom.core.reading.picture_files import MOST_POINTS, read_picture
from stillroom.core.words.problems import Unreadable
from stillroom.looks.photographs import LONGEST_SIDE, open_pillow, published, save

WIDTH: Final = 1200
HEIGHT: Final = 630
"""The shape for which the book's own drawings are made as well: common practice, no published
source."""

Box = tuple[int, int, int, int]


def frame_of(width: int, height: int, across: int, down: int, focus: str) -> Box:
    """Return the largest piece of a shape, round a point: its left, its top, its width, its height.

    >>> frame_of(300, 300, 3, 2, "50% 0%"), frame_of(300, 300, 3, 2, "")
    ((0, 0, 300, 200), (0, 50, 300, 200))
    """
    wide = max(1, min(width, height * across // down))
    high = max(1, min(height, width * down // across))
    parts = [float(part.rstrip("%")) / 100 for part in (focus or "50% 50%").split()]
    return round((width - wide) * parts[0]), round((height - high) * parts[-1]), wide, high


def preview_size(path: Path) -> tuple[int, int]:
    """Return how large a photograph's preview is in points; raises Unreadable."""
    size = read_picture(path)
    shown = min(1, LONGEST_SIDE / max(size.width, size.height))
    whole = max(1, round(size.width * shown)), max(1, round(size.height * shown))
    wide, high = frame_of(*whole, WIDTH, HEIGHT, "")[2:]
    return (WIDTH, HEIGHT) if wide >= WIDTH and high >= HEIGHT else (wide, high)


def cut_preview(path: Path, focus: str) -> bytes:
    """Return the preview of a photograph as a JPEG; raises Unreadable for a broken one."""
    pillow = open_pillow()
    if pillow is None:
        raise Unreadable("Nothing is there that cuts photographs.", "Install Pillow.")
    image, ops = pillow
    image.MAX_IMAGE_PIXELS = MOST_POINTS
    try:
        with image.open(io.BytesIO(published(path))) as opened:
            upright = ops.exif_transpose(opened)
            width, height = upright.size
            left, top, wide, high = frame_of(width, height, WIDTH, HEIGHT, focus)
            piece = upright.crop((left, top, left + wide, top + high))
            return save(_on_white(image, piece).resize(preview_size(path)), "JPEG")
    except (OSError, ValueError, SyntaxError, image.DecompressionBombError):
        raise Unreadable("The picture is broken.", "Save it again, or take it out.") from None


def _on_white(image: Any, piece: Any) -> Any:
    """Return a picture on white where one could see through it: a JPEG would show black."""
    if not piece.has_transparency_data:
        return piece
    seen_through = piece.convert("RGBA")
    white = image.new("RGBA", seen_through.size, "white")
    white.alpha_composite(seen_through)
    white.info = dict(piece.info)
    return white
