"""A picture for a recipe: taken in upright, small and without a place; the original stays apart.

Where it is taken in belongs to `looks`; here it is put into the recipe's box, and kept with it.
"""

from __future__ import annotations

from typing import Final

from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import Response

from stillroom.core.words.problems import Unreadable
from stillroom.desk.desk import Desk
from stillroom.desk.filled import filled
from stillroom.desk.lines_as_came import MOST_BOXES
from stillroom.desk.place import right_slug
from stillroom.desk.write_room import NEW, boxes_of, files_of, slug_for
from stillroom.looks.take_in import MOST_ORIGINAL, keep_picture


async def take_picture(desk: Desk, request: Request) -> Response:
    """Take a picture in and name it in the boxes as they were sent; nothing else is kept yet."""
    ident = right_slug(request.path_params["ident"])
    files = files_of(desk, ident)
    async with request.form(max_files=1, max_fields=MOST_BOXES) as data:
        posted = {name: value for name, value in data.items() if isinstance(value, str)}
        sent = data.get("picture_file")
        chosen = isinstance(sent, UploadFile) and bool(sent.filename)
        bytes_of = await sent.read(MOST_ORIGINAL + 1) if isinstance(sent, UploadFile) else b""
        name = sent.filename or "" if isinstance(sent, UploadFile) else ""
    form = filled(posted)
    told, is_taken = "", False
    if not chosen:
        told = "Choose a picture first."
    elif NEW.fullmatch(ident) and not form.get("title", "").strip():
        told = "Say first what it is called: the picture is named after it."
    else:
        try:
            form["picture"] = keep_picture(desk.book(), slug_for(ident, form), name, bytes_of)
            is_taken = True
        except Unreadable as wrong:
            told = f"{wrong.what} {wrong.mend}".strip()
    opened = posted.get("opened", "")
    return boxes_of(
        desk,
        ident,
        form,
        opened,
        files,
        is_unsaved=True,
        told_of_picture=told,
        go_to="picture_alt" if is_taken else "picture_file",
    )


PICTURE_ROUTES: Final = [("/picture/{ident}", take_picture, "POST")]
