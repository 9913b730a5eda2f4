"""The page as it will be: the book's own frame with the recipe that is being written in it."""

from __future__ import annotations

import mimetypes
import re
from pathlib import Path
from typing import Final

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import FileResponse, HTMLResponse, Response

from stillroom.core.reading.picture_files import read_picture
from stillroom.core.words.problems import Unreadable
from stillroom.desk.desk import Desk
from stillroom.desk.place import NotHere, right_slug
from stillroom.desk.showing import fill

_NAME: Final = r"[A-Za-z0-9_][A-Za-z0-9_. -]{0,119}"
_PLAIN: Final = re.compile(rf"(?:{_NAME}/){{0,8}}(?:{_NAME})?")


async def look_page(desk: Desk, request: Request) -> Response:
    """Show a recipe's page as it was when it last read right."""
    ident = right_slug(request.path_params["ident"])
    frame = await run_in_threadpool(desk.frame)
    shown = desk.pages.get(ident)  # as it is when the frame is built at last, which takes a moment
    if shown is None:
        hinders = desk.hindered.get(ident, 0)
        return HTMLResponse(frame.around(fill("not_yet.html", hinders=hinders), "Not yet"))
    return HTMLResponse(frame.around(shown.body, shown.title))


async def look_file(desk: Desk, request: Request) -> Response:
    """Show what such a page loads: the frame's own files, and the book's pictures."""
    name = request.path_params["path"]
    drawn = next((one.drawings[name] for one in desk.pages.values() if name in one.drawings), None)
    if drawn is not None:
        return Response(drawn, media_type="image/svg+xml", headers=_headers(Path(name)))
    path = _find(desk, name)
    kind = mimetypes.guess_type(path.name)[0] or "application/octet-stream"
    return FileResponse(path, media_type=kind, headers=_headers(path))


def _headers(path: Path) -> dict[str, str]:
    """Let a drawing that is opened by itself do nothing, whatever is in it."""
    if path.suffix.lower() != ".svg":
        return {}
    policy = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'self'; sandbox"
    return {"content-security-policy": policy}


def _find(desk: Desk, name: str) -> Path:
    if not _PLAIN.fullmatch(name):
        raise NotHere(name)
    book = desk.book()
    pictures = f"{book.settings.pictures.strip('/')}/"
    if name.startswith(pictures):
        path = book.pictures_dir / name.removeprefix(pictures)
        _within(book.pictures_dir, path)
        desk.place.within(path)
        try:
            read_picture(path)
        except Unreadable:
            raise NotHere(name) from None
        return path
    folder = desk.frame().folder
    path = folder / name
    if path.is_dir():
        path = path / "index.html"
    return _within(folder, path)


def _within(folder: Path, path: Path) -> Path:
    if not path.resolve().is_relative_to(folder.resolve()) or not path.is_file():
        raise NotHere(path.name)
    return path
