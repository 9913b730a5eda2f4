"""Which address of the desk leads to what, and what is said when something is not there.

The work of each room is in its own module; here they are only put together.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Sequence
from functools import partial
from typing import Final

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import FileResponse, RedirectResponse, Response
from starlette.routing import Route

from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.desk.begin_room import BEGIN_ROUTES
from stillroom.desk.book_room import BOOK_ROUTES
from stillroom.desk.bring_room import BRING_ROUTES
from stillroom.desk.came_room import CAME_ROUTES
from stillroom.desk.desk import Desk
from stillroom.desk.earlier_room import EARLIER_ROUTES
from stillroom.desk.giving_room import GIVING_ROUTES
from stillroom.desk.happened_room import HAPPENED_ROUTES
from stillroom.desk.look_room import look_file, look_page
from stillroom.desk.looking import plainly
from stillroom.desk.paper_room import PAPER_ROUTES
from stillroom.desk.picture_room import PICTURE_ROUTES
from stillroom.desk.place import NotHere, right_slug
from stillroom.desk.plain_words import called_here
from stillroom.desk.publish_room import PUBLISH_ROUTES
from stillroom.desk.sent import TooLong
from stillroom.desk.shelf import list_spines
from stillroom.desk.showing import TITLE, own_file, page
from stillroom.desk.typed import TYPED_ROUTES
from stillroom.desk.write_room import WRITE_ROUTES
from stillroom.saving.whole import explain

Room = Callable[[Desk, Request], Awaitable[Response]]
EACH_TIME: Final = ("/stop", "/typed", "/write/{ident}/look")
"""What is sent while somebody types, and as she goes: the same again is asked again."""
_PRESSED: Final = (
    "/write/{ident}/keep",
    "/write/{ident}/lines",
    "/write/{ident}/let-go",
    "/write/{ident}/out",
    "/picture/{ident}",
)
"""What a press on a recipe's page leads to: whoever opens such an address wants that page."""


async def _recipes(desk: Desk, request: Request) -> Response:
    """Show the list of recipes, or ask what a new book wants to know."""
    if not desk.place.has_book:
        return RedirectResponse("/begin", 303)
    title = desk.book().settings.title
    spines = list_spines(desk)
    said = {
        "kept": "Kept.",
        "out": "It is taken out of the book; its words are kept.",
        "away": "The draft is taken away; its words are kept. The book is as it was.",
    }
    return page(
        "recipes.html",
        book_title=title,
        here="recipes",
        spines=spines,
        waiting=sum(one.waits for one in spines),
        said=said.get(request.query_params.get("said", ""), ""),
    )


async def _file(desk: Desk, request: Request) -> Response:
    path, kind = own_file(request.path_params["folder"], request.path_params["name"])
    return FileResponse(path, media_type=kind, headers={"cache-control": "private, max-age=600"})


async def _icon(desk: Desk, request: Request) -> Response:
    """Show the mark to what asks for it by its usual name: a print, a page of the pack."""
    path, kind = own_file("drawings", "mark.svg")
    return FileResponse(path, media_type=kind, headers={"cache-control": "private, max-age=600"})


async def _to_boxes(desk: Desk, request: Request) -> Response:
    return RedirectResponse(f"/write/{right_slug(request.path_params['ident'])}", 303)


async def _stop(desk: Desk, request: Request) -> Response:
    desk.close()
    return page("closed.html", is_closed=True)


def make_rooms(desk: Desk) -> Starlette:
    """Return a desk as a server takes it, without its door."""
    rooms: list[tuple[str, Room, str]] = [
        ("/", _recipes, "GET"),
        ("/desk/{folder}/{name}", _file, "GET"),
        ("/favicon.ico", _icon, "GET"),
        ("/stop", _stop, "POST"),
        ("/look/r/{ident}/", look_page, "GET"),
        ("/look/{path:path}", look_file, "GET"),
        *BEGIN_ROUTES,
        *BOOK_ROUTES,
        *BRING_ROUTES,
        *WRITE_ROUTES,
        *CAME_ROUTES,
        *EARLIER_ROUTES,
        *GIVING_ROUTES,
        *HAPPENED_ROUTES,
        *PAPER_ROUTES,
        *PICTURE_ROUTES,
        *PUBLISH_ROUTES,
        *TYPED_ROUTES,
        *((way, _to_boxes, "GET") for way in _PRESSED),
    ]
    routes = [
        Route(way, _room(desk, room, method == "POST" and way not in EACH_TIME), methods=[method])
        for way, room, method in rooms
    ]
    return Starlette(routes=routes, exception_handlers={HTTPException: _no_such_page})


def _room(desk: Desk, room: Room, is_once: bool) -> Callable[[Request], Awaitable[Response]]:
    """Return a room as it is asked; what changes something does so once for each form."""
    told = _told(desk, room)

    async def run(request: Request) -> Response:
        return await desk.once.answer(request, partial(told, request))

    return run if is_once else told


def _told(desk: Desk, room: Room) -> Callable[[Request], Awaitable[Response]]:
    """Turn what goes wrong in a room into a page in plain words; never a traceback."""

    async def run(request: Request) -> Response:
        TITLE.set(_title(desk))
        try:
            return await room(desk, request)
        except NotHere:
            return _told_page(404, "This is not in the book.")
        except TooLong as long:
            return _told_page(422, str(long))
        except ProblemsFound as found:
            return _told_page(422, "This has to be mended.", found.problems)
        except OSError as error:
            refused = explain(error, str(error.filename or desk.place.folder))
            return _told_page(500, "The disk did not take this.", (refused,))

    return run


def _told_page(status: int, what: str, problems: Sequence[Problem] = ()) -> Response:
    told = [_at_desk(one) for one in problems]
    return page("told.html", status, problems=told, what=what)


def _title(desk: Desk) -> str:
    """Return what the book is called; "" where its settings do not read, or there is none."""
    try:
        return desk.book().settings.title if desk.place.has_book else ""
    except ProblemsFound:
        return ""


def _at_desk(problem: Problem) -> dict[str, str]:
    """Return what is wrong in a file of the book, and where, as the desk calls it."""
    called = called_here(problem.file, {})
    where = f"{called}, line {problem.line}" if called and problem.line else called
    return {"where": where, "words": plainly(f"{problem.what} {problem.mend}".rstrip())}


async def _no_such_page(request: Request, error: Exception) -> Response:
    status = error.status_code if isinstance(error, HTTPException) else 500
    what = "The desk has no such page." if status in (404, 405) else "This could not be read."
    return _told_page(status, what)
