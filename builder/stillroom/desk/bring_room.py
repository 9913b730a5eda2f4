"""Bringing recipes in: pasted, dropped or chosen. Each becomes a draft, with its questions.

Nothing is fetched and nothing is published. What a file is made of is for `bringing` to read; here
only the number and size of what is sent are limited.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import Response

from stillroom.bringing import DRAFTS, Brought, bring, write_brought
from stillroom.bringing.found import PASTED
from stillroom.bringing.in_draft import boxes_of
from stillroom.bringing.line_by_line import say_left_out, what_became
from stillroom.bringing.papers import LARGEST
from stillroom.desk.desk import Desk
from stillroom.desk.looking import plainly
from stillroom.desk.place import Place
from stillroom.desk.showing import page
from stillroom.desk.typed import let_go, typed_in

ROOM: Final = "bring"
MOST_FILES: Final = 40
MOST_PASTED: Final = 1_000_000
_MOST_LEFT: Final = 4
"""Lines left out that are named at once; all of them stand beside the draft."""
ENDINGS: Final = ".txt,.md,.html,.htm,.json,.docx,.odt,.eml"


@dataclass(frozen=True)
class Draft:
    """One draft that was written: where it is found, what is asked about it, what was left out."""

    slug: str
    title: str
    questions: tuple[str, ...]
    left: str


async def bring_in(desk: Desk, request: Request) -> Response:
    """Ask what is to be brought in."""
    return _shown(desk)


def _shown(desk: Desk, status: int = 200, **words: Any) -> Response:
    said: dict[str, Any] = {"drafts": (), "wrong": (), "pasted": ""} | words
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
    if not sent:
        return _shown(desk, 422, wrong=("Paste a recipe, or choose a file.",))
    book, larder = desk.book(), desk.larder()
    drafts: list[Draft] = []
    wrong: list[str] = []
    for name, data_of_file in sent:
        found = bring(name, data_of_file, book.settings, larder)
        wrong += [plainly(f"{name}: {one.what} {one.mend}") for one in found.problems]
        drafts += _drafts(found, into_drafts(desk.place, found))
    if drafts:
        let_go(desk, ROOM, visit)
    status = 200 if drafts else 422
    return _shown(desk, status, drafts=drafts, wrong=wrong, pasted="" if drafts else pasted)


def into_drafts(place: Place, found: Brought) -> tuple[Path, ...]:
    """Write the drafts of what was brought in, none by the name of a recipe; return where."""
    folder = place.within(place.folder / DRAFTS)
    return write_brought(found, folder, place.folder, place.recipes_dir())


def _drafts(found: Brought, written: tuple[Path, ...]) -> list[Draft]:
    return [
        Draft(
            path.stem,
            recipe.title,
            tuple(plainly(f"{one.what} {one.mend}") for one in recipe.questions),
            say_left_out(what_became(recipe.came, boxes_of(recipe.text)), _MOST_LEFT),
        )
        for path, recipe in zip(written, found.recipes, strict=True)
    ]


BRING_ROUTES: Final = [("/bring", bring_in, "GET"), ("/bring", take_in, "POST")]
