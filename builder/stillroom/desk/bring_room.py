"""Bringing recipes in: pasted, dropped or chosen. Each becomes a draft, with its questions.

Nothing is fetched and nothing is published. What a file is made of is for `bringing` to read; here
only the number and size of what is sent are limited.
"""

from __future__ import annotations

import time
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import Response

from stillroom.bringing import DRAFTS, Brought, bring, write_brought
from stillroom.bringing.found import PASTED
from stillroom.bringing.in_draft import became_of
from stillroom.bringing.line_by_line import say_left_out
from stillroom.bringing.papers import LARGEST
from stillroom.desk.desk import Desk
from stillroom.desk.looking import plainly
from stillroom.desk.place import Place
from stillroom.desk.shelf import Spine, spine_of_draft
from stillroom.desk.showing import page
from stillroom.desk.there_already import AGAIN, There, parted, wanted_again
from stillroom.desk.typed import let_go, typed_in

ROOM: Final = "bring"
MOST_FILES: Final = 40
MOST_PASTED: Final = 1_000_000
_MOST_LEFT: Final = 4
"""Lines left out that are named at once; all of them stand beside the draft."""
_SECONDS: Final = 6.0
"""How long drafts are looked at; how many questions the rest have is told when they are opened."""
ENDINGS: Final = ".txt,.md,.html,.htm,.json,.docx,.odt,.eml"


@dataclass(frozen=True)
class Draft:
    """One draft that was written: how it stands in the list, what is asked, what was left out."""

    spine: Spine
    questions: tuple[str, ...]
    left: str


async def bring_in(desk: Desk, request: Request) -> Response:
    """Ask what is to be brought in."""
    return _shown(desk)


def _shown(desk: Desk, status: int = 200, **words: Any) -> Response:
    said: dict[str, Any] = {"drafts": (), "there": (), "wrong": (), "pasted": ""} | words
    said["typed"] = typed_in(desk, ROOM)
    title = desk.book().settings.title
    return page("bring.html", status, book_title=title, here="bring", endings=ENDINGS, **said)


async def take_in(desk: Desk, request: Request) -> Response:
    """Make drafts of what was sent."""
    async with request.form(max_files=MOST_FILES, max_fields=5, max_part_size=MOST_PASTED) as data:
        pasted, visit = str(data.get("pasted", "")), str(data.get("visit", ""))
        sent = [(PASTED, pasted.encode())] if pasted.strip() else []
        for one in data.getlist("file"):
            if isinstance(one, UploadFile) and one.filename:
                sent.append((Path(one.filename).name, await one.read(LARGEST + 1)))
        again = str(data.get(AGAIN, ""))
    book, larder = desk.book(), desk.larder()
    if again and (wanted := wanted_again(desk, again)):
        return _shown(desk, drafts=_drafts(desk, wanted, into_drafts(desk.place, wanted)))
    if not sent:
        return _shown(desk, 422, wrong=("Paste a recipe, or choose a file.",))
    drafts: list[Draft] = []
    there: list[There] = []
    wrong: list[str] = []
    for name, data_of_file in sent:
        found, had = parted(desk, bring(name, data_of_file, book.settings, larder))
        there += had
        wrong += [plainly(f"{name}: {one.what} {one.mend}") for one in found.problems]
        drafts += _drafts(desk, found, into_drafts(desk.place, found))
    done = bool(drafts or there)
    if done:
        let_go(desk, ROOM, visit)
    words = {"drafts": drafts, "there": there, "wrong": wrong, "pasted": "" if done else pasted}
    return _shown(desk, 200 if done else 422, **words)


def into_drafts(place: Place, found: Brought) -> tuple[Path, ...]:
    """Write the drafts of what was brought in, none by the name of a recipe; return where."""
    folder = place.within(place.folder / DRAFTS)
    return write_brought(found, folder, place.folder, place.recipes_dir())


def _drafts(desk: Desk, found: Brought, written: tuple[Path, ...]) -> list[Draft]:
    titles, until = desk.titles(), time.monotonic() + _SECONDS
    return [
        Draft(
            spine := spine_of_draft(desk, path.stem, titles, until),
            (*spine.wrong, *desk.waiting(recipe.text)),
            say_left_out(became_of(recipe), _MOST_LEFT),
        )
        for path, recipe in zip(written, found.recipes, strict=True)
    ]


BRING_ROUTES: Final = [("/bring", bring_in, "GET"), ("/bring", take_in, "POST")]
