"""An empty folder: four questions, and then a whole book that builds at once."""

from __future__ import annotations

from pathlib import Path
from typing import Any, Final

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from stillroom.beginning.book import Answers, begin_book, books_below, name_of_day
from stillroom.core.words.problems import ProblemsFound
from stillroom.desk.desk import Desk
from stillroom.desk.looking import plainly
from stillroom.desk.named import countries
from stillroom.desk.sent import boxes_sent
from stillroom.desk.showing import page

USUAL: Final = "the Saturday before Christmas"
_LONGEST: Final = 200


async def ask_four(desk: Desk, request: Request) -> Response:
    """Ask what a new book wants to know."""
    if desk.place.has_book:
        return RedirectResponse("/", 303)
    return _asked(desk, {"country": "GB", "day": USUAL})


def _asked(desk: Desk, said: dict[str, str], wrong: tuple[str, ...] = ()) -> Response:
    words: dict[str, Any] = {name: "" for name in ("title", "country", "keeper", "day")} | said
    return page(
        "begin.html",
        422 if wrong else 200,
        is_new=True,
        said_before=words,
        countries=countries(),
        wrong=wrong,
        folder=desk.place.folder.resolve(),
        holds_others=_holds_others(desk.place.folder),
        books=books_below(desk.place.folder),
    )


def _holds_others(folder: Path) -> bool:
    """Whether the folder holds anything that its owner put there; what is hidden is not seen."""
    return folder.is_dir() and any(not one.name.startswith(".") for one in folder.iterdir())


async def begin(desk: Desk, request: Request) -> Response:
    """Make the book; where an answer is wrong, ask again with what is wrong."""
    boxes = await boxes_sent(request, 10, _LONGEST)
    said = {name: value.strip() for name, value in boxes.items()}
    if not said.get("title"):
        return _asked(desk, said, ("Say what the book is called.",))
    answers = Answers(
        title=said["title"],
        country=said.get("country", ""),
        keeper=said.get("keeper", ""),
        giving_name=name_of_day(said.get("day", "")),
        giving_day=said.get("day") or USUAL,
    )
    try:
        begin_book(desk.place.folder, answers)
    except ProblemsFound as found:
        return _asked(
            desk, said, tuple(plainly(f"{one.what} {one.mend}") for one in found.problems)
        )
    desk.begin_frame()
    return RedirectResponse("/", 303)


BEGIN_ROUTES: Final = [("/begin", ask_four, "GET"), ("/begin", begin, "POST")]
