"""The files a book needs beside its pages: styles, scripts, faces, shared data, old addresses."""

from __future__ import annotations

import zlib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import rjsmin  # type: ignore[import-untyped]

from stillroom.core.recipe.kind_dates import why_undated
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scaling_data import shared_data
from stillroom.looks import DRAWINGS, SCREEN_FONTS
from stillroom.publish.card_designs_page import STYLES, list_design_files
from stillroom.publish.library import Library, address_path
from stillroom.publish.scripts import DEFINE, list_scripts
from stillroom.publish.send_page import SENDING, sending_script
from stillroom.publish.set_aside import Packed, take
from stillroom.publish.templating import HERE, render, show_json
from stillroom.publish.when_page import calendar_path, make_recipe_calendar

ASSETS = HERE / "assets"
FOLDER = "assets/stillroom"
SCRIPT = f"{FOLDER}/{DEFINE}"
FAVICON = f"{FOLDER}/drawings/mark.svg"
AMOUNTS_DATA = f"{FOLDER}/data/amounts.json"

PUBLISHED = {
    "css": (ASSETS / "css", (".css",)),
    "fonts": (SCREEN_FONTS, (".woff2", ".txt")),
    "drawings": (DRAWINGS, (".svg",)),
}
"""The folders that are published, and what of each; the rest is notes for builders."""

STYLE_ORDER = (
    "fonts.css",
    "tokens.css",
    "frame.css",
    "words.css",
    "forms.css",
    "recipe.css",
    "take-care.css",
)
"""These come first, in this order; what the other stylesheets say builds on them."""


@dataclass(frozen=True)
class MadeFile:
    """A file to publish: copied from `path`, or else holding `content`.

    What was packed when its recipe was worked out stays so: `packed`, in `content`'s place.
    """

    src_uri: str
    path: Path | None = None
    content: str = ""
    packed: Packed = b""

    def text(self) -> str:
        """Return what it holds; "" where it is copied."""
        return zlib.decompress(take(self.packed)).decode() if self.packed else self.content


def list_stylesheets() -> tuple[str, ...]:
    """Return the addresses of every stylesheet, in the order in which they build on each other."""
    names = sorted(path.name for path in (ASSETS / "css").glob("*.css"))
    ordered = [*STYLE_ORDER, *(name for name in names if name not in STYLE_ORDER)]
    return (*(f"{FOLDER}/css/{name}" for name in ordered), STYLES)


def list_files(library: Library) -> Iterator[MadeFile]:
    """Return every file the book needs beside its pages."""
    for folder, (place, endings) in PUBLISHED.items():
        for path in sorted(place.rglob("*")):
            if path.suffix in endings:
                name = path.relative_to(place).as_posix()
                yield MadeFile(f"{FOLDER}/{folder}/{name}", path=path)
    for name, script in list_scripts():
        yield MadeFile(f"{FOLDER}/{name}", content=script)
    if library.settings.send_us:
        yield MadeFile(f"{FOLDER}/{SENDING}", content=str(rjsmin.jsmin(sending_script())))
    for name, made in list_design_files(library):
        yield MadeFile(name, content=made)
    yield MadeFile(AMOUNTS_DATA, content=show_json(shared_data(library.settings.country)))
    for recipe in library.recipes:
        worked = library.worked.get(recipe.slug)
        calendar = calendar_path(recipe.slug)
        if why_undated(recipe):
            pass
        elif worked is None:
            yield MadeFile(calendar, content=make_recipe_calendar(library, recipe))
        else:
            yield MadeFile(calendar, packed=worked.calendar)
        for old in recipe.was:
            yield MadeFile(f"{address_path(old)}index.html", content=_redirect(recipe, library))


def _redirect(recipe: Recipe, library: Library) -> str:
    """Return the page at an earlier address: it leads on, what was chosen there included."""
    return render(
        "pages/redirect.html",
        {
            "title": recipe.title,
            "address": f"../{recipe.slug}/",
            "canonical": library.address_of(recipe),
            "language": library.settings.language.split("_")[0],
        },
    )
