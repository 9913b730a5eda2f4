"""The desk's pages set from its templates, and the files that they load."""

from __future__ import annotations

import secrets
from contextvars import ContextVar
from functools import cache
from pathlib import Path
from typing import Any, Final

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup
from starlette.responses import HTMLResponse

from stillroom.desk.place import NotHere, right_name
from stillroom.looks import DRAWINGS, SCREEN_FONTS

HERE: Final = Path(__file__).parent
BOOK_ASSETS: Final = HERE.parent / "publish" / "assets"
FOLDERS: Final = {
    "own": HERE / "assets",
    "css": BOOK_ASSETS / "css",
    "fonts": SCREEN_FONTS,
    "drawings": DRAWINGS,
}
ENDINGS: Final = {
    ".css": "text/css",
    ".js": "text/javascript",
    ".svg": "image/svg+xml",
    ".woff2": "font/woff2",
}


ROOMS: Final = ("recipes", "bring", "book", "paper", "publish", "giving")
"""The rooms that the desk has, as its pages name them."""


TITLE: Final[ContextVar[str]] = ContextVar("title", default="")
"""What the book is called of which a page is asked; "" where there is none, or it does not read."""
HERE_NOW: Final = Markup(' tabindex="-1" autofocus')
"""Borne by what a press came to: whoever pressed goes on from there, and has it read out."""


def visit_mark() -> str:
    """Return the mark of one visit to a page: its forms send it, so that each is done once."""
    return secrets.token_hex(8)


@cache
def _environment() -> Environment:
    return Environment(
        loader=FileSystemLoader(HERE / "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def fill(template: str, **words: Any) -> str:
    """Return a template filled; a missing name is an error."""
    return _environment().get_template(template).render(**words)


def page(template: str, status: int = 200, **words: Any) -> HTMLResponse:
    """Return a whole page of the desk."""
    common: dict[str, Any] = {
        "book_title": TITLE.get(),
        "here": "",
        "said": "",
        "is_private": False,
    }
    common |= {"is_new": False, "is_closed": False, "here_now": HERE_NOW}
    common |= {"rooms": ROOMS, "this_visit": visit_mark()}
    return HTMLResponse(fill(template, **{**common, **words}), status)


def own_file(folder: str, name: str) -> tuple[Path, str]:
    """Return a file that the desk's pages load and what it is; raises NotHere."""
    right_name(name)
    path = FOLDERS.get(folder, HERE / "assets") / name
    kind = ENDINGS.get(path.suffix)
    if folder not in FOLDERS or kind is None or not path.is_file():
        raise NotHere(name)
    return path, kind
