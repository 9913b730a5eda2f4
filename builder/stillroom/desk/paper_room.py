"""Printing: a PDF opens, made by the same commands that print in the terminal."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from starlette.requests import Request
from starlette.responses import Response

from stillroom.core.paper.sheets import CARD_SIZES, WALL_PAPERS
from stillroom.core.paper.tag_shapes import SHAPES
from stillroom.desk.desk import Desk
from stillroom.desk.place import NotHere
from stillroom.desk.running import run
from stillroom.desk.showing import page
from stillroom.looks.card_designs import designs_of

WHOLE: Final = {
    "year": "The year for the wall",
    "book": "The book, A5",
    "booklet": "The book to fold and sew, A4",
    "cover": "The cover of the book",
}
"""What is printed of the book, or of the recipes that are chosen of it."""
SHAPES_ASKED: Final = tuple(shape for shape in SHAPES if shape not in ("round", "wrap"))
"""A round label and a wrap want the measures of a lid or a bottle."""
_MOST: Final = 200


async def paper(desk: Desk, request: Request) -> Response:
    """Show what can be printed."""
    return _shown(desk)


def _shown(desk: Desk, status: int = 200, wrong: tuple[str, ...] = ()) -> Response:
    book = desk.book()
    recipes = sorted(desk.names().items(), key=lambda one: one[1].lower())
    return page(
        "paper.html",
        status,
        book_title=book.settings.title,
        here="paper",
        recipes=recipes,
        sizes=CARD_SIZES,
        shapes=SHAPES_ASKED,
        whole=WHOLE,
        wall_papers=WALL_PAPERS,
        designs=designs_of(book),
        design=book.settings.design,
        is_letter=book.settings.country in ("US", "CA"),
        wrong=wrong,
    )


async def print_it(desk: Desk, request: Request) -> Response:
    """Print what was asked for and open it."""
    async with request.form(max_files=0, max_fields=400) as data:
        asked = {name: str(value)[:_MOST] for name, value in data.items()}
        chosen = [str(value) for value in data.getlist("recipe")]
    what = asked.get("what", "")
    book = desk.book()
    files = [path for path in book.recipe_files() if path.stem in chosen]
    arguments = ["print", "book" if what == "booklet" else what]
    if what not in ("cards", "tags", "sheet", *WHOLE):
        raise NotHere(what)
    if what == "cards" and asked.get("size") in CARD_SIZES:
        arguments += ["--size", asked["size"]]
    if what == "tags" and asked.get("shape") in SHAPES_ASKED:
        arguments += ["--shape", asked["shape"]]
    if what == "sheet" and len(files) != 1:
        return _shown(desk, 422, ("Choose the one recipe that is to stand on the sheet.",))
    if what in ("cards", "tags"):
        if asked.get("design") in designs_of(book):
            arguments += ["--design", asked["design"]]
        arguments += _sheet_options(asked)
    arguments += _paper_options(what, asked)
    out = desk.aside / f"{what}.pdf"
    arguments += ["--out", str(out), "--force"]
    arguments += ["--", *(str(path) for path in files)] if files else []
    done = await run("stillroom.cli", arguments, book.root)
    if not done.is_well:
        return _shown(desk, 422, done.lines)
    return _pdf(out)


def _paper_options(what: str, asked: dict[str, str]) -> list[str]:
    """Return what is asked of one sort of print and of no other: its paper, for whom a book is."""
    if what == "year":
        return ["--paper", asked["wall"]] if asked.get("wall") in WALL_PAPERS else []
    if what in ("cards", "tags", "sheet"):
        paper = ["--paper", asked["paper"]] if asked.get("paper") in ("a4", "letter") else []
        return paper + (["--large"] if what == "sheet" and asked.get("large") else [])
    options = [f"--for={whom}"] if (whom := asked.get("whom", "").strip()) else []
    if what == "cover":
        gsm = asked.get("gsm", "").strip()
        return [*options, f"--gsm={gsm}"] if gsm else options
    if words := asked.get("dedication", "").strip():
        options.append(f"--dedication={words}")
    return options + (["--booklet"] if what == "booklet" else [])


def _sheet_options(asked: dict[str, str]) -> list[str]:
    count = asked.get("count", "1")
    options = ["--count", count if count.isdecimal() and 0 < int(count) <= 500 else "1"]
    options += [f"--{name}" for name in ("large", "hand") if asked.get(name)]
    for name in ("to", "from", "message"):
        if words := asked.get(name, "").strip():
            options.append(f"--{name}={words}")
    return options


def _pdf(out: Path) -> Response:
    headers = {"content-disposition": f'inline; filename="{out.name}"'}
    return Response(out.read_bytes(), media_type="application/pdf", headers=headers)


PAPER_ROUTES: Final = [("/paper", paper, "GET"), ("/paper", print_it, "POST")]
