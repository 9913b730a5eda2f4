"""A photograph as page and paper show it: clean, upright, no larger than is seen.

It is cleaned by the book itself; turned and shrunk by Pillow where that is installed. Without it a
photograph stays as large as it is, and page and paper turn it. Leaves out bringing one in:
take_in.py.
"""

from __future__ import annotations

import base64
import io
from functools import lru_cache
from pathlib import Path
from typing import Any, Final

from stillroom.core.reading.photographs import (
    drawing_without_places,
    orientation_of,
    without_places,
)
from stillroom.core.reading.picture_files import MOST_POINTS, read_picture
from stillroom.core.words.problems import Unreadable

LONGEST_SIDE: Final = 1800
"""Points: a page shows 27 rem, twice over for fine screens; paper 10 cm at 400 dpi."""
QUALITY: Final = 86
PHOTOGRAPHS: Final = frozenset({".jpg", ".jpeg", ".png", ".webp"})
UNCLEAN: Final = frozenset(
    {".heic", ".heif", ".avif", ".tif", ".tiff", ".gif", ".bmp", ".dng", ".cr2", ".cr3", ".nef"}
    | {".arw", ".orf", ".raf", ".rw2", ".psd", ".xcf", ".jp2", ".jxl", ".mov", ".mp4", ".m4v"}
    | {".avi", ".mkv", ".3gp", ".webm"}
)
"""Kinds that may hold a place and cannot be cleaned here: they are never published."""
# how a photograph held this way (EXIF) is turned upright: a matrix of its width and height
_TURNS: Final = {
    2: "-1 0 0 1 {w} 0",
    3: "-1 0 0 -1 {w} {h}",
    4: "1 0 0 -1 0 {h}",
    5: "0 1 1 0 0 0",
    6: "0 1 -1 0 {h} 0",
    7: "0 -1 -1 0 {h} {w}",
    8: "0 -1 1 0 0 {w}",
}
_TYPES: Final = {b"\xff\xd8": "jpeg", b"\x89P": "png", b"RI": "webp"}


def published(path: Path) -> bytes:
    """Return a picture's bytes as they may be read by everybody; raises Unreadable."""
    return _published(path, path.stat().st_mtime_ns)


@lru_cache(maxsize=64)
def _published(path: Path, changed_ns: int) -> bytes:
    if path.suffix.lower() == ".svg":
        return drawing_without_places(path.read_bytes())
    size = read_picture(path)
    clean = without_places(path.read_bytes())
    small = max(size.width, size.height) <= LONGEST_SIDE
    # paper turns a JPEG by itself; what it does with other kinds is not left to it
    upright = clean[:2] == b"\xff\xd8" or orientation_of(clean) == 1
    return clean if small and upright else shrink(clean) or clean


def shrink(clean: bytes) -> bytes | None:
    """Return a clean photograph upright and no larger than is seen; None without Pillow."""
    pillow = open_pillow()
    if pillow is None:
        return None
    image, ops = pillow
    image.MAX_IMAGE_PIXELS = MOST_POINTS
    try:
        with image.open(io.BytesIO(clean)) as opened:
            shape = opened.format
            upright = ops.exif_transpose(opened)
            upright.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
            return save(upright, shape)
    except (OSError, ValueError, SyntaxError, image.DecompressionBombError):
        raise Unreadable("The picture is broken.", "Save it again, or take it out.") from None


def save(upright: Any, shape: str) -> bytes:
    """Return a picture of Pillow's as a file, its colours' profile with it and nothing else."""
    written = io.BytesIO()
    more = {"icc_profile": upright.info["icc_profile"]} if "icc_profile" in upright.info else {}
    upright.info = {}
    if shape == "JPEG":
        upright = upright.convert("RGB") if upright.mode not in ("RGB", "L") else upright
        upright.save(written, "JPEG", quality=QUALITY, optimize=True, progressive=True, **more)
    elif shape == "WEBP":
        upright.save(written, "WEBP", quality=QUALITY, **more)
    else:
        upright.save(written, "PNG", optimize=True, **more)
    return written.getvalue()


def open_pillow() -> tuple[Any, Any] | None:
    """Return Pillow's two parts that are used here; None where it is not installed."""
    try:
        from PIL import Image, ImageOps
    except ImportError:
        return None
    return Image, ImageOps


def as_drawing(path: Path) -> str:
    """Return a photograph within a drawing, upright, as paper and e-readers set drawings."""
    return _as_drawing(path, path.stat().st_mtime_ns)


@lru_cache(maxsize=64)
def _as_drawing(path: Path, changed_ns: int) -> str:
    data = published(path)
    turned = orientation_of(data)
    size = read_picture(path)
    scale = 1.0
    longest = max(size.width, size.height)
    if longest > LONGEST_SIDE and open_pillow() is not None:
        scale = LONGEST_SIDE / longest
    width, height = round(size.width * scale), round(size.height * scale)
    stored = (height, width) if turned >= 5 else (width, height)
    turn = _TURNS.get(turned, "").format(w=stored[0], h=stored[1])
    moved = f' transform="matrix({turn})"' if turn else ""
    kind = _TYPES.get(data[:2], "png")
    inner = base64.b64encode(data).decode("ascii")
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" '
        f'width="{width}" height="{height}"><image width="{stored[0]}" height="{stored[1]}"{moved} '
        f'preserveAspectRatio="none" href="data:image/{kind};base64,{inner}"/></svg>'
    )
