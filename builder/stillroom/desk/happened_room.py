"""What happened: one line for the log of a giving list, out of a few boxes.

The same is refused as in the terminal, in the same words, and then nothing is written.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date
from typing import Any, Final
from urllib.parse import quote

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from stillroom.core.reading.loading import load_recipes
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import ProblemsFound, Unreadable
from stillroom.desk.desk import Desk
from stillroom.desk.giving_room import list_named, show_boxes
from stillroom.desk.looking import plainly
from stillroom.desk.place import read_now
from stillroom.desk.sent import boxes_sent
from stillroom.desk.typed import let_go
from stillroom.giving.checking import read_list
from stillroom.giving.guard import guard_file, usual_folder
from stillroom.giving.log import log_kinds, read_kind
from stillroom.giving.log_file import log_beside, plain_value
from stillroom.giving.noting import note, read_noted_day
from stillroom.giving.plan_file import read_plan

_PLAIN: Final = ("number", "amount", "paid")
_FIELDS: Final = ("number", "container", "amount", "paid", "words")
_LONGEST: Final = 400
BOXES: Final[Mapping[str, str]] = {
    "day": "On",
    "number": "How many",
    "batches": "How many",
    "container": "In what",
    "began": "Begun on, where two are going",
    "amount": "How much was bought",
    "paid": "Paid",
    "of": "Of which recipe, or what was in it",
    "things": "Of which recipe, or what was in it",
    "words": "In your words",
}
"""What each word of a line of the log is called at the desk; "basket" is said in the file alone."""
_NO_PLACE: Final = re.compile(r'"(\w+)" has no place beside "([^"]+)"\..*')
_LACKS: Final = re.compile(r'(?:It lacks|Beside "[^"]*" there is no) "(\w+)"\..*')
_WHICH: Final = re.compile(r'Say which: "began: ([\d-]+)"\..*')
_IN_THE_FILE: Final = re.compile(
    r'\s*As in: stillroom note .*|(?<=Note first when it was begun): "\{.*\}"'
)


async def happened(desk: Desk, request: Request) -> Response:
    """Write one line into the log of a list; tell what cannot be noted so."""
    boxes = await boxes_sent(request, 20, _LONGEST)
    sent = {name: " ".join(value.split()) for name, value in boxes.items()}
    path = list_named(desk, sent.get("name", ""))
    try:
        _note(desk, sent)
    except (ProblemsFound, Unreadable) as found:
        told = found.problems if isinstance(found, ProblemsFound) else (found,)
        names = desk.names()
        wrong = tuple(say_at_boxes(f"{one.what} {one.mend}", names) for one in told)
        return show_boxes(desk, read_now(path, path.name), 422, told=wrong)
    let_go(desk, f"happened:{desk.place.short(path)}", sent.get("visit", ""))
    return RedirectResponse(f"/giving/list?name={quote(desk.place.short(path))}&said=noted", 303)


def say_at_boxes(text: str, names: Mapping[str, str]) -> str:
    """Return what is told of a line of the log in the words of the boxes; `names` are the titles.

    >>> say_at_boxes('It lacks "paid". As in: stillroom note bought "salt" --paid 1', {})
    '“Paid” is not filled in.'
    """
    if found := _NO_PLACE.match(text):
        stand = dict.fromkeys(BOXES[key] for key in ("day", *_allowed(found[2])) if key in BOXES)
        may = ", ".join(f"“{box}”" for box in stand)
        return f"“{BOXES.get(found[1], found[1])}” is not asked of “{found[2]}”, but: {may}."
    if found := _LACKS.match(text):
        return f"“{BOXES.get(found[1], found[1])}” is not filled in."
    text = _WHICH.sub(rf"Say which under “{BOXES['began']}”: \1.", text)
    text = plainly(_IN_THE_FILE.sub("", text))
    return re.sub(r"[a-z0-9]+(?:-[a-z0-9]+)+", lambda slug: names.get(slug[0], slug[0]), text)


def _allowed(kind: str) -> tuple[str, ...]:
    said = log_kinds()[kind]
    return (*said.must, *said.may)


def _counted(kind: str) -> str:
    """Return what “How many” means of a kind of line: presents, batches, or so many bought."""
    allowed = _allowed(read_kind(kind).kind)
    return next((key for key in ("number", "batches", "amount") if key in allowed), "number")


def _note(desk: Desk, sent: dict[str, str]) -> None:
    path, book = list_named(desk, sent["name"]), desk.book()
    country, today = book.settings.country, date.today()
    row: dict[str, Any] = {"kind": sent.get("what", ""), "name": sent.get("whom", "")}
    row["day"] = read_noted_day(sent.get("day", ""), today, country)
    row |= {key: _value(key, sent[key]) for key in _FIELDS if sent.get(key)}
    counted = _counted(row["kind"])
    if "number" in row and counted not in row:
        row[counted] = row.pop("number")
    if sent.get("began"):
        row["began"] = read_noted_day(sent["began"], today, country).isoformat()
    if sent.get("of"):
        row["of"] = [one.strip() for one in sent["of"].split(";") if one.strip()]
    read = read_list(path, book)
    if not log_beside(path).exists():
        guard_file(log_beside(path), book)
    kept = read_plan(usual_folder(book), read.giving.giving_list)
    note(path, read, _recipes(desk), row, kept.gifts if kept else None, country)


def _value(key: str, said: str) -> Any:
    return plain_value(said) if key in _PLAIN else said


def _recipes(desk: Desk) -> dict[str, Recipe]:
    book = desk.book()
    said, own = book.settings, book.own_larder()
    read = load_recipes(
        book.recipe_files(), book.root, said.units, larder=own.larder, language=said.language
    )
    return {recipe.slug: recipe for recipe in read}


HAPPENED_ROUTES: Final = [("/giving/happened", happened, "POST")]
