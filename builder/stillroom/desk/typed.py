"""What is typed into a room and not kept: taken down after each pause, put back when it is opened.

A recipe that is being written has a file of its own for that (keeping.py). The boxes of every
other room are kept by name below `.desk/typed/`, with the sums of the files they were typed over:
where those have changed they are shown, and not put back.
"""

from __future__ import annotations

import hashlib
import json
import re
from pathlib import Path
from typing import Any, Final

from starlette.requests import Request
from starlette.responses import Response

from stillroom.desk.desk import Desk
from stillroom.desk.keeping import make_own
from stillroom.desk.place import NotHere
from stillroom.desk.showing import visit_mark
from stillroom.giving.finding import giving_lists
from stillroom.saving.whole import write_whole

_ROOM: Final = re.compile(r"book|bring|(?:giving|happened):(?P<list>.+)")
_MOST_BOXES: Final = 9_000


def _path(desk: Desk, room: str) -> Path:
    name = hashlib.sha256(room.encode()).hexdigest()[:16]
    return desk.place.within(desk.place.own / "typed" / f"{name}.json")


def typed_in(desk: Desk, room: str) -> dict[str, str]:
    """Return what a room's form bears: its name, this visit's mark, and what was typed before."""
    path = _path(desk, room)
    had = path.read_text(encoding="utf-8") if path.is_file() else ""
    return {"room": room, "visit": visit_mark(), "had": had}


def let_go(desk: Desk, room: str, visit: str) -> None:
    """Let go of what was typed in a room: it is kept now. What comes late is not taken.

    What was only shown, since its file had changed, stays until she lets it go herself.
    """
    if visit:
        desk.kept_visits.add(visit)
    path = _path(desk, room)
    if path.is_file() and (shown := _read(path.read_text(encoding="utf-8"))["shown"]):
        write_whole(path, _written({"over": "", "boxes": {}, "shown": shown}))
    else:
        path.unlink(missing_ok=True)


async def take_down(desk: Desk, request: Request) -> Response:
    """Keep what stands in the boxes of a room, or let it go where nothing is typed any more."""
    async with request.form(max_files=0, max_fields=5) as data:
        sent = {name: str(value) for name, value in data.items()}
    room = sent.get("room", "")
    _right_room(desk, room)
    if sent.get("visit") in desk.kept_visits:
        return Response(status_code=204)
    typed = _read(sent.get("typed", ""))
    path = _path(desk, room)
    if typed["boxes"] or typed["shown"]:
        make_own(desk.place)
        write_whole(path, _written(typed))
    else:
        path.unlink(missing_ok=True)
    return Response(status_code=204)


def _right_room(desk: Desk, room: str) -> None:
    """Raise NotHere for a room that there is none of."""
    found = _ROOM.fullmatch(room)
    name = found["list"] if found else None
    if not found or (name and name not in map(desk.place.short, giving_lists(desk.book()))):
        raise NotHere(room)


def _read(text: str) -> dict[str, Any]:
    """Return boxes by name as they were sent; raises NotHere for what no page of the desk sends."""
    try:
        said = json.loads(text)
        found = {part: _boxes(said[part]) for part in ("boxes", "shown")}
        return {"over": str(said["over"]), **found}
    except (ValueError, TypeError, KeyError, AttributeError):
        raise NotHere("typed") from None


def _boxes(said: dict[str, Any]) -> dict[str, str | bool]:
    if len(said) > _MOST_BOXES or not all(isinstance(one, str | bool) for one in said.values()):
        raise ValueError
    return {str(name)[:200]: value for name, value in said.items()}


def _written(typed: dict[str, Any]) -> bytes:
    return json.dumps(typed, ensure_ascii=False).encode()


TYPED_ROUTES: Final = [("/typed", take_down, "POST")]
