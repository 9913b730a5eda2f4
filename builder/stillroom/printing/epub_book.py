"""The family book as an EPUB 3.3: for a telephone on the shelf or an e-reader in bed.

Leaves out the printed book (family_book.py), from whose data it is made. The same book gives the
same bytes: its time is fixed and its identifier is made from its title and address.
"""

from __future__ import annotations

import io
import uuid
import zipfile
from collections.abc import Mapping, Sequence
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
    shared = {
        "book": book,
        "identifier": identifier,
        "modified": f"{book['made_on']}T00:00:00Z",
        "faces": FACES,
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
    if book["cover_svg"]:
        files["OEBPS/images/cover.svg"] = book["cover_svg"].encode()
    for recipe in recipes:
        name = f"OEBPS/{recipe['slug']}.xhtml"
        shown = recipe | {"step_groups": _group_steps(recipe["steps"])}
        files[name] = _render(environment, "recipe.xhtml", shared | {"recipe": shown})
        if recipe["picture_svg"]:
            files[f"OEBPS/images/{recipe['slug']}.svg"] = recipe["picture_svg"].encode()
    for face in FACES:
        files[f"OEBPS/fonts/{face}"] = Path(PAPER_FONTS / face).read_bytes()
    return _zip(files)


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
