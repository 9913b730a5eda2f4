"""The family book as an EPUB 3.3: for a telephone on the shelf or an e-reader in bed.

Leaves out the printed book (family_book.py), from whose data it is made. The same book gives the
same bytes: its time is fixed and its identifier is made from its title and address.

A photograph lies in it as itself and not within a drawing: many readers show no picture inside one.
What is said of how it can be read (schema.org, EPUB Accessibility 1.1) is what its pages have; that
somebody has certified it is not said, since nobody has.
"""

from __future__ import annotations

import base64
import io
import re
import uuid
import zipfile
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from stillroom.looks import PAPER_FONTS
from stillroom.printing.typesetting import HERE

FIXED_TIME = (1980, 1, 1, 0, 0, 0)
FACES = (
    "EBGaramond-Regular.ttf",
    "EBGaramond-Italic.ttf",
    "EBGaramond-SemiBold.ttf",
    "AlegreyaSans-Regular.ttf",
    "AlegreyaSans-Bold.ttf",
)


def _environment() -> Environment:
    return Environment(
        loader=FileSystemLoader(HERE / "templates" / "epub"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def make_epub(book: Mapping[str, Any]) -> bytes:
    """Return the EPUB of a book's data as `family_book.book_data` gives it."""
    environment = _environment()
    identifier = f"urn:uuid:{uuid.uuid5(uuid.NAMESPACE_URL, book['url'] or book['title'])}"
    pictures = _pictures_of(book)
    shared = {
        "book": book,
        "identifier": identifier,
        "modified": f"{book['made_on']}T00:00:00Z",
        "faces": FACES,
        "pictures": pictures,
        "dedication": _group_blocks(book["household"]["dedication"]),
    }
    recipes = [recipe for chapter in book["chapters"] for recipe in chapter["recipes"]]
    files: dict[str, bytes] = {
        "META-INF/container.xml": _render(environment, "container.xml", shared),
        "OEBPS/book.opf": _render(environment, "book.opf", shared),
        "OEBPS/nav.xhtml": _render(environment, "nav.xhtml", shared),
        "OEBPS/book.css": _render(environment, "book.css", shared),
        "OEBPS/cover.xhtml": _render(environment, "cover.xhtml", shared),
        "OEBPS/back.xhtml": _render(environment, "back.xhtml", shared),
    }
    if book["household"]["own"]:
        files["OEBPS/own.xhtml"] = _render(environment, "own.xhtml", shared)
    for recipe in recipes:
        shown = recipe | {
            "step_groups": _group_steps(recipe["steps"]),
            "intro": _group_blocks(recipe["intro"]),
            "sections": [
                part | {"blocks": _group_blocks(part["blocks"])} for part in recipe["sections"]
            ],
        }
        name = f"OEBPS/{recipe['slug']}.xhtml"
        files[name] = _render(environment, "recipe.xhtml", shared | {"recipe": shown})
    for picture in pictures.values():
        files[f"OEBPS/{picture.file}"] = picture.data
    for face in FACES:
        files[f"OEBPS/fonts/{face}"] = Path(PAPER_FONTS / face).read_bytes()
    return _zip(files)


@dataclass(frozen=True)
class Picture:
    """A picture of the EPUB: where it lies, of what type it is, its bytes."""

    file: str
    media_type: str
    data: bytes


_WITHIN = re.compile(
    r'<svg [^>]*><image [^>]*preserveAspectRatio="none" '
    r'href="data:(?P<type>image/(?:jpeg|png|webp));base64,(?P<data>[^"]+)"/></svg>'
)


def _picture(name: str, svg: str) -> Picture:
    """Return a picture by its drawing; a photograph that stands upright in one as itself."""
    found = _WITHIN.fullmatch(svg)
    if found and "transform=" not in svg[:400]:
        ending = found["type"].partition("/")[2].replace("jpeg", "jpg")
        data = base64.b64decode(found["data"])
        return Picture(f"images/{name}.{ending}", found["type"], data)
    return Picture(f"images/{name}.svg", "image/svg+xml", svg.encode())


def _pictures_of(book: Mapping[str, Any]) -> dict[str, Picture]:
    """Return every picture of the book by what it is of."""
    own = book["household"]
    named = [("cover", book["cover_svg"]), ("hand", own["hand_svg"])]
    named += [(f"photograph-{at}", one["svg"]) for at, one in enumerate(own["photographs"], 1)]
    named += [
        (f"recipe-{recipe['slug']}", recipe["picture_svg"])
        for chapter in book["chapters"]
        for recipe in chapter["recipes"]
    ]
    return {name: _picture(name, svg) for name, svg in named if svg}


def _group_blocks(blocks: Sequence[Mapping[str, Any]]) -> list[dict[str, Any]]:
    """Return blocks with the items that follow one another gathered into one list."""

    def sort(block: Mapping[str, Any]) -> tuple[str, bool]:
        return block["kind"], bool(block["number"])

    grouped: list[dict[str, Any]] = []
    for (kind, numbered), group in groupby(blocks, sort):
        members = list(group)
        if kind == "item":
            first = members[0]["number"]
            grouped.append({"kind": "list", "numbered": numbered, "first": first, "items": members})
        else:
            grouped += [dict(block) for block in members]
    return grouped


def _group_steps(steps: Sequence[Mapping[str, Any]]) -> list[tuple[str, list[dict[str, Any]]]]:
    """Return steps under their sub-headings, numbered through as on paper."""
    numbered = [{**step, "number": number} for number, step in enumerate(steps, start=1)]
    return [(name, list(group)) for name, group in groupby(numbered, lambda step: step["group"])]


def _render(environment: Environment, name: str, context: Mapping[str, Any]) -> bytes:
    return environment.get_template(name).render(**context).encode()


def _zip(files: Mapping[str, bytes]) -> bytes:
    """Pack an EPUB: its type first and uncompressed, as OCF 4.2 asks."""
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w") as archive:
        first = zipfile.ZipInfo("mimetype", FIXED_TIME)
        archive.writestr(first, b"application/epub+zip", zipfile.ZIP_STORED)
        for name in sorted(files):
            archive.writestr(zipfile.ZipInfo(name, FIXED_TIME), files[name], zipfile.ZIP_DEFLATED)
    return packed.getvalue()
