"""Putting the lines that a recipe came as where they belong: in another box, or in another recipe.

What is put elsewhere is typed, as it were, and not kept yet. Only where another recipe begins a
draft of it is written, and its lines are its own from then on.
"""

from __future__ import annotations

from typing import Final

from starlette.requests import Request
from starlette.responses import Response

from stillroom.bringing import bring
from stillroom.bringing.found import PASTED
from stillroom.desk.bring_room import into_drafts
from stillroom.desk.brought_questions import all_named, settled_by
from stillroom.desk.desk import Desk
from stillroom.desk.filled import filled
from stillroom.desk.lines_as_came import (
    begins_another,
    came,
    gave_way,
    put_elsewhere,
    put_in,
    without_lines,
)
from stillroom.desk.pressing import SETTLED
from stillroom.desk.write_room import boxes_of, files_of, posted_boxes
from stillroom.saving.whole import write_whole

_NONE_BEGINS: Final = (
    "No recipe was found from there on: it wants a name, a list of what goes in, and what you do."
)
_BEGINS_ALREADY: Final = "This recipe begins there already: choose the line at which another does."
_MOVED: Final = "Moved as chosen. It is in the recipe once you keep it."
_GAVE_WAY: Final = "“{}” gave way there."


async def put_lines(desk: Desk, request: Request) -> Response:
    """Put each line where it was chosen to be, and show the boxes as they are then."""
    ident = request.path_params["ident"]
    posted = await posted_boxes(request)
    files = files_of(desk, ident)
    before_cut = lines = came(desk.place, ident)
    before = form = {SETTLED: posted.get(SETTLED, ""), **filled(posted)}
    told = ("", "")
    first = begins_another(lines, posted)
    if first is not None and not any(lines[:first]):
        told = (_BEGINS_ALREADY, "")
    elif first is not None:
        slug = _draft_from(desk, lines[first:])
        told = ("Another draft was made of what stands from there on.", slug)
        if slug:
            form = without_lines(lines, form, first)
            path = desk.place.came_path(ident)
            lines = lines[:first]
            write_whole(path, "\n".join(lines).encode())
        else:
            told = (_NONE_BEGINS, "")
    names = all_named(files.now.raw)
    moved = (*put_elsewhere(lines, posted), *(before_cut[first:] if told[1] else ()))
    done = {name for line in moved for name in settled_by(line, names)}
    form = put_in(lines, form, posted)
    form[SETTLED] = "\n".join(filter(None, [form[SETTLED], *sorted(done)]))
    if form != before and not told[0]:
        told = (" ".join([_MOVED, *(_GAVE_WAY.format(one) for one in gave_way(before, form))]), "")
    opened = posted.get("opened", "")
    return boxes_of(desk, ident, form, opened, files, is_unsaved=True, go_to="came", came_told=told)


def _draft_from(desk: Desk, lines: tuple[str, ...]) -> str:
    """Make drafts of the recipes in some lines, and return the first's name; "" for none."""
    settings, larder = desk.book().settings, desk.larder()
    found = bring(PASTED, "\n".join(lines).encode(), settings, larder)
    written = into_drafts(desk.place, found)
    return written[0].stem if written else ""


CAME_ROUTES: Final = [("/write/{ident}/lines", put_lines, "POST")]
