"""The earlier versions of a recipe: each beside what stands there now, and a way back to it."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from stillroom.desk.comparing import side_by_side
from stillroom.desk.desk import Desk
from stillroom.desk.keeping import find_earlier, keep_unsaved, list_earlier
from stillroom.desk.place import right_slug
from stillroom.desk.recipe_form import as_boxes
from stillroom.desk.showing import page
from stillroom.desk.versions import when_words
from stillroom.desk.write_room import files_of
from stillroom.saving.whole import write_whole


def _paths(desk: Desk, ident: str) -> list[Path]:
    right_slug(ident)
    return [desk.place.recipe_path(ident), desk.place.draft_path(ident)]


async def earlier(desk: Desk, request: Request) -> Response:
    """Show the list of versions, and one of them beside the file as it is now."""
    ident = request.path_params["ident"]
    name = request.path_params.get("name", "")
    paths = _paths(desk, ident)
    said = desk.book().settings
    versions = list_earlier(desk.place, paths)
    chosen = find_earlier(desk.place, paths, name) if name else None
    there = [path.read_bytes() for path in reversed(paths) if path.is_file()]
    now = "".join(data.decode("utf-8", errors="replace") for data in there)
    return page(
        "earlier.html",
        book_title=said.title,
        here="recipes",
        ident=ident,
        versions=[(one.name, when_words(one, said.language)) for one in versions],
        chosen=name,
        when=when_words(chosen, said.language) if chosen else "",
        pairs=side_by_side(as_boxes(chosen.text), as_boxes(now)) if chosen else [],
    )


async def back(desk: Desk, request: Request) -> Response:
    """Put an earlier version into the boxes; nothing is kept until she says so."""
    ident = request.path_params["ident"]
    chosen = find_earlier(desk.place, _paths(desk, ident), request.path_params["name"])
    path = keep_unsaved(desk.place, ident, chosen.text)
    sums = files_of(desk, ident).sums
    write_whole(path.with_suffix(".opened"), sums.encode())
    return RedirectResponse(f"/write/{ident}", 303)


EARLIER_ROUTES: Final = [
    ("/write/{ident}/earlier", earlier, "GET"),
    ("/write/{ident}/earlier/{name}", earlier, "GET"),
    ("/write/{ident}/earlier/{name}", back, "POST"),
]
