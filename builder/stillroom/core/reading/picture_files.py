"""What a picture of the book is: a drawing (SVG) or a photograph (JPEG, PNG, WebP), and how large.

Read here once for all that show it, so that a picture which cannot be shown is told with the
recipes' other problems, before anything is written.
"""

from __future__ import annotations

import math
import re
import struct
import xml.etree.ElementTree as ElementTree
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from stillroom.core.reading.markup import is_own
from stillroom.core.reading.photographs import orientation_of, webp_size
from stillroom.core.recipe.family_book import FamilyBook
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Problem, Unreadable
from stillroom.core.words.text_files import is_file_at

MOST_BYTES = 12_000_000
MOST_DRAWING_BYTES = 2_000_000
"""A drawing is read whole, a hundred times its size: what is larger is a photograph in disguise."""
MOST_SIDE = 20_000
MOST_POINTS = 120_000_000
"""Width by height: a small file can say that it is as large as a house, and fill the memory."""
FRONTISPIECE = "frontispiece.svg"
"""A drawing of this name among the book's pictures stands on the first leaf."""
_ENDINGS = {
    ".svg": "svg",
    ".png": "png",
    ".jpg": "jpeg",
    ".jpeg": "jpeg",
    ".webp": "webp",
}
_MEND = "Save it again as an SVG drawing, a JPEG, a PNG or a WebP, or take it out."
_LENGTH = late_regex(r"\s*\+?(\d+(?:\.\d*)?|\.\d+)\s*(px)?\s*")
_FETCH = late_regex(r"url\(\s*['\"]?\s*([^)'\"]*)|@import\s+['\"]?([^;'\"]*)", re.IGNORECASE)


@dataclass(frozen=True)
class PictureSize:
    """The size of a picture in CSS pixels, both above nothing."""

    width: int
    height: int


def read_picture(path: Path) -> PictureSize:
    """Return the size of a picture; raises Unreadable in plain words when it cannot be shown."""
    if path.suffix.lower() in _ENDINGS and path.stat().st_size > MOST_BYTES:
        what = f'The picture "{path.name}" is larger than {MOST_BYTES // 1_000_000} MB.'
        raise Unreadable(what, "Save it smaller.")
    return picture_size(path.name, path.read_bytes() if path.suffix.lower() in _ENDINGS else b"")


def picture_size(name: str, data: bytes) -> PictureSize:
    """Return the size of a picture by its bytes, upright; raises Unreadable like the other."""
    kind = _ENDINGS.get(Path(name).suffix.lower())
    if kind is None:
        raise Unreadable(f'"{name}" is no picture that a book can show.', _MEND)
    if kind == "svg" and len(data) > MOST_DRAWING_BYTES:
        most = MOST_DRAWING_BYTES // 1_000_000
        raise Unreadable(f'The picture "{name}" is larger than {most} MB.', "Save it smaller.")
    if not data.strip():
        raise Unreadable(f'The picture "{name}" is empty.', _MEND)
    found = _kind_of(data)
    if found != kind:
        is_a = f"It is a {found.upper()}." if found else ""
        what = f'The picture "{name}" is not what its ending says.'
        raise Unreadable(f"{what} {is_a}".rstrip(), _MEND)
    size = _SIZES[kind](data)
    if size is None:
        raise Unreadable(f'The picture "{name}" is broken: its size cannot be read.', _MEND)
    if not all(0 < side <= MOST_SIDE for side in size) or size[0] * size[1] > MOST_POINTS:
        what = f'The picture "{name}" says it is {size[0]:g} by {size[1]:g} points large.'
        limit = f"{MOST_SIDE} points each way, {MOST_POINTS // 1_000_000} million in all"
        raise Unreadable(what, f"Save it smaller: at most {limit}.")
    width, height = (max(1, round(side)) for side in size)
    is_lying = kind != "svg" and orientation_of(data) >= 5
    return PictureSize(height, width) if is_lying else PictureSize(width, height)


def check_pictures(recipe: Recipe, folders: Iterable[Path]) -> Iterator[Problem]:
    """Find a picture of a recipe that cannot be shown: the one it names, or one named like it."""
    name = recipe.picture or f"{recipe.slug}.svg"
    for folder in folders:
        if is_file_at(folder / name):
            yield from _wrong(folder / name, recipe.file, recipe.line_of("picture"))
            return


def check_frontispiece(folder: Path) -> Iterator[Problem]:
    """Find a first leaf's drawing that cannot be shown."""
    if (folder / FRONTISPIECE).is_file():
        yield from _wrong(folder / FRONTISPIECE, f"{folder.name}/{FRONTISPIECE}", 1)


def check_household(
    said: FamilyBook, folder: Path, place: Callable[[tuple[str | int, ...]], tuple[str, int]]
) -> Iterator[Problem]:
    """Find a picture of the printed book's own pages that is not there or cannot be shown.

    `place` tells the file and line of a setting.
    """
    named: list[tuple[tuple[str | int, ...], str]] = [(("handwriting",), said.handwriting)]
    named += [
        (("photographs", number, "picture"), one.picture)
        for number, one in enumerate(said.photographs)
    ]
    for way, name in named:
        file, line = place(("family_book", *way))
        if name and not is_file_at(folder / name):
            what = f'The picture "{name}" is not among the book\'s pictures.'
            yield Problem(file, line, what, f'Put it into the folder "{folder.name}".')
        elif name:
            yield from _wrong(folder / name, file, line)
    if said.handwriting and not said.says:
        file, line = place(("family_book", "handwriting"))
        what = "The handwriting is a picture, and who cannot see it is not told what it says."
        yield Problem(file, line, what, 'Write its words beneath it: "says: With love, Ann".')


def _wrong(path: Path, file: str, line: int) -> Iterator[Problem]:
    try:
        read_picture(path)
    except Unreadable as wrong:
        yield Problem(file, line, wrong.what, wrong.mend)
    except OSError as error:
        what = f'The picture "{path.name}" cannot be read ({error.strerror}).'
        yield Problem(file, line, what, "Change who may read it, or take it out.")


def _kind_of(data: bytes) -> str:
    if data.startswith(b"\x89PNG\r\n\x1a\n"):
        return "png"
    if data.startswith(b"\xff\xd8\xff"):
        return "jpeg"
    if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
        return "webp"
    return "svg" if b"<" in data[:300] else ""


def _png_size(data: bytes) -> tuple[float, float] | None:
    # PNG (W3C, third edition) 11.2.1: width and height begin the first chunk, IHDR
    if data[12:16] != b"IHDR" or len(data) < 33 or b"IEND" not in data[-16:]:
        return None
    width, height = struct.unpack(">II", data[16:24])
    return width, height


def _jpeg_size(data: bytes) -> tuple[float, float] | None:
    # ITU-T T.81 B.2.2: the frame header (SOF) holds lines, then samples a line
    at = 2
    while at + 9 < len(data) and data[at] == 0xFF:
        mark = data[at + 1]
        if mark == 0xFF:  # B.1.1.2: a marker may be preceded by any number of fill bytes
            at += 1
            continue
        if 0xC0 <= mark <= 0xCF and mark not in (0xC4, 0xC8, 0xCC):
            height, width = struct.unpack(">HH", data[at + 5 : at + 9])
            return width, height
        at += 2 + int.from_bytes(data[at + 2 : at + 4], "big")
    return None


def _svg_size(data: bytes) -> tuple[float, float] | None:
    if b"<!ENTITY" in data.upper():
        raise Unreadable("The drawing makes up letters of its own (ENTITY).", _MEND)
    try:
        root = ElementTree.fromstring(data)
    except (ElementTree.ParseError, ValueError, LookupError):
        return None
    if root.tag not in ("svg", "{http://www.w3.org/2000/svg}svg"):
        return None
    if root.tag == "svg":
        what = "The drawing does not say that it is SVG, and no browser shows it."
        raise Unreadable(what, "Save it once more as SVG where it was drawn.")
    for element in root.iter():
        _refuse_live(element)
    return _svg_box(root)


def _svg_box(root: ElementTree.Element) -> tuple[float, float] | None:
    """Return what a viewBox says, or the drawing's width and height; 400 by 400 without either."""
    if (box := root.get("viewBox")) is not None:
        try:
            numbers = [float(part) for part in re.split(r"[\s,]+", box.strip())]
        except ValueError:
            return None
        if len(numbers) != 4 or not all(map(math.isfinite, numbers)):
            return None
        return numbers[2], numbers[3]
    sides = [_LENGTH.fullmatch(root.get(side, "")) for side in ("width", "height")]
    if all(sides):
        return float(sides[0][1]), float(sides[1][1])  # type: ignore[index]
    return 400, 400


def _refuse_live(element: ElementTree.Element) -> None:
    """Raise Unreadable for a part of a drawing that runs or fetches something."""
    tag = str(element.tag).rpartition("}")[2].lower()
    if tag in ("script", "foreignobject", "iframe"):
        raise Unreadable(f'The drawing holds "{tag}", which is more than a drawing.', _MEND)
    texts = [element.text or ""] if tag == "style" else []
    for full, value in element.attrib.items():
        name = full.rpartition("}")[2].lower()
        if name.startswith("on"):
            raise Unreadable(f'The drawing holds script ("{name}").', _MEND)
        if name in ("href", "src") and tag != "a" and not (is_own(value) or _is_inner(value)):
            raise Unreadable("The drawing fetches something from elsewhere.", _MEND)
        texts.append(value)
    for text in texts:
        for url, imported in _FETCH.findall(text):
            target = url or imported
            if not (is_own(target) or _is_inner(target)):
                raise Unreadable("The drawing fetches something from elsewhere.", _MEND)


def _is_inner(target: str) -> bool:
    return target.strip().lower().startswith("data:image/")


_SIZES = {"svg": _svg_size, "png": _png_size, "jpeg": _jpeg_size, "webp": webp_size}
