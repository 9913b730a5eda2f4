"""Printing: a PDF opens, made by the same commands that print in the terminal."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from starlette.requests import Request
from starlette.responses import Response

from stillroom.core.paper.qr_code import NO_SQUARES
from stillroom.core.paper.sheets import CARD_SIZES, WALL_PAPERS
from stillroom.desk.desk import Desk
from stillroom.desk.place import NotHere
from stillroom.desk.plain_words import said_here, told_here
from stillroom.desk.running import run
from stillroom.desk.sent import within
from stillroom.desk.showing import page
from stillroom.looks.card_designs import designs_of

WHOLE: Final = {
    "year": "The year for the wall",
    "book": "The book, A5",
    "booklet": "The book to fold and sew, A4",
    "cover": "The cover of the book",
}
"""What is printed of the book, or of the recipes that are chosen of it."""
TEST_SHEET: Final = "test-sheet"
SHAPES_ASKED: Final = {
    "rectangle": "rectangular",
    "luggage": "with a hole, as for luggage",
    "round": "round, for a lid",
    "wrap": "round a bottle",
}
"""A round label and a wrap want the measures of a lid or a bottle."""
PRINTS: Final = ("cards", "tags", "sheet", TEST_SHEET, *WHOLE)
MEASURES: Final = {"round": {"lid": "lid"}, "wrap": {"bottle": "bottle", "wall": "straight"}}
"""What each of them is measured by: the command's word and the box of the page."""
_CALLED: Final = (
    ("(print book --booklet)", f"(“{WHOLE['booklet']}”)"),
    ("the book without --booklet has", f"“{WHOLE['book']}” has"),
)
"""What the terminal calls a print, and what its button here is called."""
_MOST: Final = 200


async def paper(desk: Desk, request: Request) -> Response:
    """Show what can be printed."""
    return _shown(desk)


def _shown(
    desk: Desk,
    status: int = 200,
    wrong: tuple[str, ...] = (),
    *,
    told: tuple[str, ...] = (),
    made: str = "",
) -> Response:
    """Show what can be printed; `wrong` is what was refused, `told` is said of what was `made`."""
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
        labels=[stock.name for stock in book.settings.labels],
        has_address=bool(book.settings.site_url),
        wrong=wrong,
        told=told,
        made=made,
    )


async def print_it(desk: Desk, request: Request) -> Response:
    """Print what was asked for and open it."""
    async with request.form(max_files=0, max_fields=400) as data:
        asked = within({name: str(value) for name, value in data.items()}, _MOST)
        chosen = [str(value) for value in data.getlist("recipe")]
    what = asked.get("what", "")
    book = desk.book()
    files = [path for path in book.recipe_files() if path.stem in chosen]
    arguments = ["print", "book" if what == "booklet" else what]
    if what not in PRINTS:
        raise NotHere(what)
    if what == "cards" and asked.get("size") in CARD_SIZES:
        arguments += ["--size", asked["size"]]
    if what == "tags" and asked.get("shape") in SHAPES_ASKED:
        arguments += ["--shape", asked["shape"], *_measures(asked)]
    if what == "sheet" and len(files) != 1:
        return _shown(desk, 422, ("Choose the one recipe that is to stand on the sheet.",))
    if what in ("cards", "tags"):
        if asked.get("design") in designs_of(book):
            arguments += ["--design", asked["design"]]
        arguments += _sheet_options(asked)
    arguments += _paper_options(what, asked)
    out = desk.aside / f"{what}.pdf"
    arguments += ["--out", str(out), "--force"]
    if files and what != TEST_SHEET:
        arguments += ["--", *(str(path) for path in files)]
    done = await run("stillroom.cli", arguments, book.root)
    lines = told_here(map(_as_here, done.lines), desk.names())
    if not done.is_well:
        return _shown(desk, 422, lines)
    # a larger size that was taken, how wide a spine is: what is said of a print is read before it
    told = tuple(
        line for line in lines if line != said_here(NO_SQUARES) and not line.startswith(str(out))
    )
    return _shown(desk, told=told, made=what) if told else _pdf(out)


def _as_here(line: str) -> str:
    for said, here in _CALLED:
        line = line.replace(said, here)
    return line


async def printed(desk: Desk, request: Request) -> Response:
    """Open what was printed last, of which there was something to say."""
    what = request.path_params["what"]
    out = desk.aside / f"{what}.pdf"
    if what not in PRINTS or not out.is_file():
        raise NotHere(what)
    return _pdf(out)


def _measures(asked: dict[str, str]) -> list[str]:
    """Return the measures that a shape of label wants, as they were typed."""
    boxes = MEASURES.get(asked["shape"], {})
    typed = {word: asked.get(box, "").strip() for word, box in boxes.items()}
    return [f"--{word}={value}" for word, value in typed.items() if value]


def _paper_options(what: str, asked: dict[str, str]) -> list[str]:
    """Return what is asked of one sort of print and of no other: its paper, for whom a book is."""
    if what == "year":
        return ["--paper", asked["wall"]] if asked.get("wall") in WALL_PAPERS else []
    if what in ("cards", "tags", "sheet", TEST_SHEET):
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
    """Return what is typed of sheets of cards or tags; what is wrong with it the command says."""
    options = [f"--count={asked.get('count', '').strip() or '1'}"]
    options += [f"--{name}" for name in ("large", "hand") if asked.get(name)]
    for name in ("to", "from", "message", "used", "label-sheet"):
        if words := asked.get(name, "").strip():
            options.append(f"--{name}={words}")
    return options


def _pdf(out: Path) -> Response:
    headers = {"content-disposition": f'inline; filename="{out.name}"'}
    return Response(out.read_bytes(), media_type="application/pdf", headers=headers)


PAPER_ROUTES: Final = [
    ("/paper", paper, "GET"),
    ("/paper", print_it, "POST"),
    ("/paper/{what}.pdf", printed, "GET"),
]
