"""The book itself: its name and ways, its colours and drawing, its own words, its own larder."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any, Final

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from stillroom.core.larder.own import read_own_larder
from stillroom.core.reading.picture_files import FRONTISPIECE
from stillroom.core.words.problems import ProblemsFound
from stillroom.desk.book_form import settings_form, whole_address, write_settings, wrong_settings
from stillroom.desk.colours import STYLE, palette_in, palettes, style_of
from stillroom.desk.comparing import Pair, side_by_side
from stillroom.desk.desk import Desk
from stillroom.desk.in_words import pairs_in_words, settings_in_words
from stillroom.desk.keeping import ChangedElsewhere, keep, take_out
from stillroom.desk.named import countries, currencies, languages
from stillroom.desk.own_foods import set_in, with_food
from stillroom.desk.place import FileNow, NotHere, read_now
from stillroom.desk.sent import boxes_sent
from stillroom.desk.showing import page
from stillroom.desk.typed import let_go, typed_in
from stillroom.desk.versions import bring_back, versions_of
from stillroom.looks import DRAWINGS
from stillroom.looks.card_designs import designs_of

ROOM: Final = "book"
CALLED: Final = {
    "mkdocs.yml": "the book’s settings",
    "larder.yml": "your own foods and prices",
    "index.md": "the first page",
    "about.md": "“About this book”",
}
"""What the files are called of which there are earlier versions."""
WORDS: Final = {"index": "The words of the first page", "about": "About this book"}
DRAWN: Final = {"sprig": "a sprig", "thistledown": "thistledown", "mark": "the book's own mark"}
UNITS: Final = {
    "metric": "grams and millilitres; a spoon is of 15 ml, a cup of 250 ml",
    "us": "American cups and spoons",
    "imperial": "imperial pints and ounces",
}
_LONGEST: Final = 400_000
# a page's facts between two lines of dashes, and its title: no words of hers
_HEAD: Final = re.compile(r"---\r?\n(?:.*\r?\n)*?---\r?\n\s*(?:# .*\r?\n\s*)?")


def _now(path: Path) -> FileNow:
    return read_now(path, path.name)


def _words_path(desk: Desk, name: str) -> Path:
    return desk.place.within(desk.book().docs_dir / f"{name}.md")


def _style_path(desk: Desk) -> Path:
    return desk.place.within(desk.book().docs_dir / STYLE)


def _drawing_path(desk: Desk) -> Path:
    return desk.place.within(desk.book().pictures_dir / FRONTISPIECE)


async def book(desk: Desk, request: Request) -> Response:
    """Show the boxes of the book."""
    said = "Kept." if request.query_params.get("said") == "kept" else ""
    food = request.query_params.get("food", "")
    return _shown(desk, said=said, food=food)


def _shown(desk: Desk, status: int = 200, food: str = "", **words: Any) -> Response:
    """Show the boxes; `food` is one that is to be named among her own."""
    config = _now(desk.place.config)
    opened = desk.book()
    own = {name: _now(_words_path(desk, name)) for name in WORDS}
    larder = _now(desk.place.within(opened.larder_file))
    files = {"config": config, "larder": larder, **own}
    filled: dict[str, Any] = {
        "form": settings_form(config.raw, config.path.name),
        "texts": {name: _below_head(file.raw) for name, file in own.items()},
        "larder": with_food(larder.raw, food),
        "sums": {name: file.sum for name, file in files.items()},
        "colours": palette_in(_now(_style_path(desk)).raw) or "madder",
        "drawing": _drawing_now(desk),
        "has_own": _drawing_now(desk) == "own",
        "wrong": (),
        "wrong_larder": (),
        "said": "",
        "unkept": status != 200,
        "pairs": [],
    }
    return page(
        "book.html",
        status,
        book_title=opened.settings.title,
        here="book",
        countries=countries(),
        languages=languages(),
        currencies=currencies(),
        palettes=palettes(),
        drawn=DRAWN,
        units=UNITS,
        designs=designs_of(opened),
        labels=WORDS,
        typed=typed_in(desk, ROOM),
        kept=[
            (desk.place.short(file.path), CALLED.get(file.path.name, file.path.name))
            for file in files.values()
            if file.is_there
        ],
        **{**filled, **words},
    )


def _drawing_now(desk: Desk) -> str:
    """Return which drawing stands on the first page: one of those offered, her own, or none."""
    path = _drawing_path(desk)
    if not path.is_file():
        return "none"
    data = path.read_bytes()
    same = (name for name in DRAWN if (DRAWINGS / f"{name}.svg").read_bytes() == data)
    return next(same, "own")


async def keep_book(desk: Desk, request: Request) -> Response:
    """Keep what the boxes say, where it is right and the files are those that were opened."""
    sent = await boxes_sent(request, 80, _LONGEST)
    if "site_url" in sent:
        sent["site_url"] = whole_address(sent["site_url"].strip())
    sent["larder"] = set_in(sent.get("larder", ""))
    typed: dict[str, Any] = {
        "form": sent,
        "texts": {name: sent.get(f"text_{name}", "") for name in WORDS},
        "larder": sent["larder"],
        "colours": sent.get("colours", "madder"),
        "drawing": sent.get("drawing") or _drawing_now(desk),
    }
    wrong = wrong_settings(sent)
    wrong_larder = _wrong_larder(desk, sent["larder"])
    if wrong or wrong_larder:
        return _shown(desk, 422, wrong=wrong, wrong_larder=wrong_larder, **typed)
    try:
        _keep_all(desk, sent)
    except ChangedElsewhere as changed:
        told = (
            f"Changed elsewhere meanwhile: {CALLED.get(str(changed), changed)}. Both stand below; "
            "Keep puts yours there."
        )
        return _shown(desk, 409, wrong=(told,), pairs=_both(desk, str(changed), sent), **typed)
    let_go(desk, ROOM, sent.get("visit", ""))
    return RedirectResponse("/book?said=kept", 303)


def _both(desk: Desk, name: str, sent: dict[str, str]) -> list[Pair]:
    """Return what was typed beside the file of that name as it is now."""
    config, larder = _now(desk.place.config), _now(desk.book().larder_file)
    if name == config.path.name:
        mine = write_settings(config.raw, name, sent, None)
        return pairs_in_words(mine, config.raw, settings_in_words)
    if name == larder.path.name:
        return side_by_side(sent["larder"], larder.raw)
    words = Path(name).stem
    return side_by_side(
        sent.get(f"text_{words}", ""), _below_head(_now(_words_path(desk, words)).raw)
    )


def _wrong_larder(desk: Desk, text: str) -> tuple[str, ...]:
    said = desk.book().settings
    if not text.strip():
        return ()
    try:
        read_own_larder(text, "larder.yml", said.language, said.units, said.currency)
    except ProblemsFound as found:
        return tuple(f"Line {one.line}: {one.what} {one.mend}" for one in found.problems)
    return ()


def _keep_all(desk: Desk, sent: dict[str, str]) -> None:
    place, opened = desk.place, desk.book()
    config = _now(place.config)
    chosen = palettes().get(sent.get("colours", ""))
    style = _now(_style_path(desk))
    usual = chosen is None or chosen.name == "madder"
    colours = None if usual and not style.is_there else True
    text = write_settings(config.raw, config.path.name, sent, colours)
    keep(place, config.path, text, sent.get("sum_config", ""))
    if chosen is not None and not (usual and not style.is_there):
        keep(place, style.path, style_of(chosen), style.sum)
    for name in WORDS:
        path, words = _words_path(desk, name), sent.get(f"text_{name}", "")
        whole = words if _HEAD.match(words) else f"{_head_of(_now(path).raw)}{words}"
        _keep_words(desk, path, whole, sent.get(f"sum_{name}", ""))
    _keep_words(desk, opened.larder_file, sent["larder"], sent.get("sum_larder", ""))
    _keep_drawing(desk, sent.get("drawing", ""))


def _head_of(raw: str) -> str:
    """Return what stands above the words of a page: its facts and its title."""
    found = _HEAD.match(raw)
    return found[0] if found else ""


def _below_head(raw: str) -> str:
    return raw[len(_head_of(raw)) :]


def _keep_words(desk: Desk, path: Path, words: str, opened: str) -> None:
    """Keep a text that is a file of its own; one that was never written is not begun empty."""
    now = _now(path)
    ends = "\r\n" if now.raw.count("\r\n") * 2 > now.raw.count("\n") else "\n"
    text = words.replace("\r\n", "\n").replace("\n", ends)
    if text.strip() == now.raw.strip():
        return
    keep(desk.place, path, f"{text.rstrip()}{ends}", opened)


def _keep_drawing(desk: Desk, name: str) -> None:
    path = _drawing_path(desk)
    if name == _drawing_now(desk):
        return
    if name == "none":
        take_out(desk.place, path)
    elif name in DRAWN:
        now = _now(path)
        keep(desk.place, path, (DRAWINGS / f"{name}.svg").read_text(encoding="utf-8"), now.sum)


def _file_named(desk: Desk, name: str) -> Path:
    """Return one of the book's own files; raises NotHere for any other."""
    if name == desk.place.config.name:  # it may be what keeps the book from being opened
        return desk.place.within(desk.place.config)
    files = [desk.book().larder_file, *(_words_path(desk, one) for one in WORDS)]
    for path in files:
        if desk.place.short(path) == name:
            return desk.place.within(path)
    raise NotHere(name)


async def earlier(desk: Desk, request: Request) -> Response:
    """Show the earlier versions of one of the book's own files."""
    path = _file_named(desk, request.query_params.get("name", ""))
    told = settings_in_words if path == desk.place.config else _below_head
    words = versions_of(desk, path, request.query_params.get("at", ""), told)
    words["called"] = CALLED.get(path.name, path.name)
    return page("versions.html", here="book", way="/book/earlier", onward="/book", **words)


async def back(desk: Desk, request: Request) -> Response:
    """Put an earlier version of one of the book's own files in its place."""
    async with request.form(max_files=0, max_fields=5) as data:
        sent = {name: str(value) for name, value in data.items()}
    try:
        bring_back(desk, _file_named(desk, sent.get("name", "")), sent)
    except ChangedElsewhere:
        return _shown(desk, 409, wrong=("It was changed elsewhere meanwhile, and stays so.",))
    return RedirectResponse("/book?said=kept", 303)


BOOK_ROUTES: Final = [
    ("/book", book, "GET"),
    ("/book", keep_book, "POST"),
    ("/book/earlier", earlier, "GET"),
    ("/book/earlier", back, "POST"),
]
