"""A picture taken into a book: the one that is shown among its pictures, the original kept apart.

A photograph is turned upright, shrunk and cleaned of what the camera added. HEIC needs the extra
"pictures". Nothing is written over. Leaves out the file of the recipe, which names the picture.
"""

from __future__ import annotations

import io
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from stillroom.core.book import Book
from stillroom.core.reading.photographs import drawing_without_places, without_places
from stillroom.core.reading.picture_files import MOST_BYTES, MOST_POINTS, picture_size
from stillroom.core.words.problems import Unreadable
from stillroom.looks.photographs import LONGEST_SIDE, open_pillow, save, shrink
from stillroom.saving.whole import write_whole

ORIGINALS: Final = "originals"
"""The folder beside a book's settings in which originals lie: no build reads or publishes it."""
MOST_ORIGINAL: Final = 40_000_000
_HEIC: Final = (b"heic", b"heix", b"hevc", b"heim", b"heis", b"mif1", b"msf1", b"avif")
_MEND: Final = "Bring a JPEG, a PNG, a WebP, a HEIC or an SVG drawing."


@dataclass(frozen=True)
class TakenPicture:
    """A picture as the book shows it: its file's ending, its bytes, its size."""

    ending: str
    data: bytes
    width: int
    height: int


def take_picture(name: str, data: bytes) -> TakenPicture:
    """Return a picture as a book shows it; raises Unreadable in plain words."""
    if not data.strip():
        raise Unreadable(f'The picture "{name}" is empty.', _MEND)
    if len(data) > MOST_ORIGINAL:
        most = MOST_ORIGINAL // 1_000_000
        raise Unreadable(f'The picture "{name}" is larger than {most} MB.', "Save it smaller.")
    ending, shown = _shown(name, data)
    if len(shown) > MOST_BYTES:
        raise Unreadable(f'The picture "{name}" is too large to show.', "Save it smaller.")
    size = picture_size(f"picture{ending}", shown)
    return TakenPicture(ending, shown, size.width, size.height)


def _shown(name: str, data: bytes) -> tuple[str, bytes]:
    if data[4:8] == b"ftyp" and data[8:12] in _HEIC:
        return ".jpg", _from_heic(name, data)
    if data.startswith(b"\xff\xd8"):
        return ".jpg", _clean(name, ".jpg", data)
    if data.startswith(b"\x89PNG"):
        return ".png", _clean(name, ".png", data)
    if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
        return ".webp", _clean(name, ".webp", data)
    if b"<svg" in data[:2000].lower():
        picture_size("picture.svg", data)  # told of before it is touched
        return ".svg", drawing_without_places(data)
    raise Unreadable(f'"{name}" is no picture that a book can show.', _MEND)


def _clean(name: str, ending: str, data: bytes) -> bytes:
    clean = without_places(data)
    picture_size(
        f"{Path(name).stem}{ending}", clean
    )  # a size that is none is told of, never unpacked
    return shrink(clean) or clean


def _from_heic(name: str, data: bytes) -> bytes:
    pillow = open_pillow()
    try:
        from pillow_heif import register_heif_opener
    except ImportError:
        pillow = None
    if pillow is None:
        what = f'The picture "{name}" is a HEIC, which is not read here yet.'
        raise Unreadable(
            what, 'Save it as a JPEG, or install what reads it: pip install "stillroom[pictures]"'
        )
    image, ops = pillow
    register_heif_opener()
    image.MAX_IMAGE_PIXELS = MOST_POINTS
    try:
        with image.open(io.BytesIO(data)) as opened:
            upright = ops.exif_transpose(opened)
            upright.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
            return save(upright, "JPEG")
    except (OSError, ValueError, SyntaxError, RuntimeError, image.DecompressionBombError):
        raise Unreadable(f'The picture "{name}" is broken.', _MEND) from None


def keep_picture(book: Book, slug: str, name: str, data: bytes) -> str:
    """Put a picture among a book's own and its original beside; return the name to write.

    Raises Unreadable for what cannot be shown, ProblemsFound for what the disk says.
    """
    taken = take_picture(name, data)
    shown = _free(book.pictures_dir, slug, taken.ending)
    ending = Path(name).suffix.lower() if Path(name).suffix.isascii() else ""
    kept = _free(book.root / ORIGINALS, slug, ending or taken.ending)
    write_whole(kept, data)
    write_whole(shown, taken.data)
    return shown.name


def _free(folder: Path, slug: str, ending: str) -> Path:
    path = folder / f"{slug}{ending}"
    number = 2
    while path.exists() or path.is_symlink():
        path = folder / f"{slug}-{number}{ending}"
        number += 1
    return path
