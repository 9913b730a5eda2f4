"""Publishing: what will be public and what never, then a folder, a zip, a branch, or a stick.

The site is built by MkDocs as the terminal builds it; a build that finds anything wrong leaves what
was there, and what is only doubtful is told beside it. Nothing is sent anywhere: where to put it is
said in plain words.
"""

from __future__ import annotations

import shutil
import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import FileResponse, RedirectResponse, Response

from stillroom.beginning.unfinished import find_unfinished
from stillroom.core.words.plurals import counted
from stillroom.desk.desk import Desk
from stillroom.desk.giving_room import titled
from stillroom.desk.looking import plainly
from stillroom.desk.place import NotHere, right_name
from stillroom.desk.plain_words import FILES, told_here
from stillroom.desk.running import Done, Running, run
from stillroom.desk.showing import page
from stillroom.giving.finding import giving_lists, giving_logs
from stillroom.publish.shown_pictures import find_unshown

WAYS: Final = ("folder", "zip", "branch", "stick")
BRANCH: Final = "gh-pages"
NOBODY: Final = "book@example.invalid"
"""An address that is nobody's (RFC 2606, 2)."""
CALLED: Final = {
    "folder": "the folder for the web",
    "zip": "the packed file for the web",
    "stick": "the copy for a stick",
    "branch": f"the branch {BRANCH}",
}
"""What is made by each of the ways, in a cook's words."""
ZIPS: Final = {"zip": "book", "stick": "book-on-a-stick"}
"""What the zip is called, by the way in which the book goes out."""


@dataclass(frozen=True)
class Parted:
    """What will be public, and what never: as lines to read."""

    public: tuple[str, ...]
    never: tuple[str, ...]
    address: str


def part_book(desk: Desk) -> Parted:
    """Say of everything in the book's folder whether it is published."""
    book = desk.book()
    recipes = len(book.recipe_files())
    pages = sorted(book.docs_dir.rglob("*.md")) if book.docs_dir.is_dir() else []
    unshown = find_unshown(book)
    pictures = {path for path in _files(book.pictures_dir) if path.suffix != ".md"} - {*unshown}
    public = [
        f"{counted(recipes, 'recipe')}, each with its card and its calendar",
        f"your own pages: {', '.join(map(_called, pages)) or 'none yet'}",
        f"{counted(len(pictures), 'picture')}; where they were taken is left out"
        if pictures
        else "no pictures yet",
        "the year, the list of recipes, the print room",
    ]
    drafts = [desk.title_of(desk.place.draft_path(slug)) for slug in desk.place.draft_slugs()]
    never = [
        f"the draft “{title}”" if title else "a draft that has no name yet" for title in drafts
    ]
    never += [f"the giving list “{titled(path)}”" for path in giving_lists(book)]
    never += ["what was noted beside it" for _ in giving_logs(book)]
    if (book.root / "private").is_dir():
        never.append("the pack that was worked out")
    if book.larder_file.is_file():
        never.append("the prices of your own larder")
    if unshown:
        names = ", ".join(path.name for path in unshown)
        never.append(f"{counted(len(unshown), 'picture')} that nothing in the book shows: {names}")
    never += ["earlier versions, and what was typed and not kept", "pictures as you chose them"]
    return Parted(tuple(public), tuple(never), book.settings.site_url)


def _called(page: Path) -> str:
    usual = page.stem.replace("-", " ")
    return "the first page" if page.stem == "index" else f"“{FILES.get(page.stem, usual)}”"


def _files(folder: Path) -> list[Path]:
    return [path for path in folder.rglob("*") if path.is_file()] if folder.is_dir() else []


async def publish(desk: Desk, request: Request) -> Response:
    """Show what will be public and what never."""
    return _shown(desk)


def _shown(desk: Desk, status: int = 200, **words: Any) -> Response:
    said: dict[str, Any] = {"way": "", "where": "", "size": "", "wrong": (), "noticed": ()}
    said |= {"is_stopped": False, "wished": "", "called": CALLED} | words
    book = desk.book()
    return page(
        "publish.html",
        status,
        book_title=book.settings.title,
        here="publish",
        parted=part_book(desk),
        unfinished=tuple(_standing(desk)),
        unanswered=tuple(_unanswered(desk)),
        has_git=(book.root / ".git").exists(),
        branch=BRANCH,
        **said,
    )


def _standing(desk: Desk) -> Iterator[dict[str, str]]:
    """Yield the words of an example that still stand: which, in what, and where that is written."""
    book, names = desk.book(), desk.names()
    for one in find_unfinished(book):
        path = book.root / one.file
        is_recipe = path.is_relative_to(book.recipes_dir)
        label = names.get(path.stem, path.stem) if is_recipe else _called(path)
        where = f"/write/{path.stem}" if is_recipe else f"/book#text_{path.stem}"
        yield {"where": where, "label": label, "words": one.what.partition(": ")[2] or one.what}


def _unanswered(desk: Desk) -> Iterator[dict[str, str]]:
    """Yield the recipes of the book that still ask what was asked when they were brought in."""
    names = desk.names()
    for path in desk.book().recipe_files():
        raw = path.read_text(encoding="utf-8", errors="replace")
        if count := desk.still_asked(raw):
            words = f"{counted(count, 'question')} to answer"
            yield {"where": f"/write/{path.stem}", "label": names[path.stem], "words": words}


async def make(desk: Desk, request: Request) -> Response:
    """Begin to build the book and to put it where it was asked for; one goes out at a time."""
    async with request.form(max_files=0, max_fields=5) as data:
        way = str(data.get("way", ""))
    if way not in WAYS:
        return _shown(desk, 422, wrong=("Choose one of the four.",))
    if desk.going_out is None or not desk.going_out.is_going:
        begun = Running(way)
        begun.begin(_go_out(desk, begun))
        desk.going_out = begun
    elif way != desk.going_out.name:
        desk.going_out.wished = way
    return RedirectResponse("/publish/now", 303)


async def now(desk: Desk, request: Request) -> Response:
    """Show how long the book has been building, and then what came of it."""
    begun = desk.going_out
    if begun is None:
        return RedirectResponse("/publish", 303)
    if begun.done is None:
        title = desk.book().settings.title
        called, wished = CALLED[begun.name], CALLED.get(begun.wished, "")
        said: dict[str, Any] = {"seconds": begun.seconds, "called": called, "wished": wished}
        return page("going_out.html", book_title=title, here="publish", **said)
    return _shown(desk, way=begun.name, wished=begun.wished, **begun.came_of)


async def stop(desk: Desk, request: Request) -> Response:
    """Stop the build; what was published before stays as it was."""
    if desk.going_out is not None:
        desk.going_out.stop()
    return RedirectResponse("/publish/now", 303)


async def _go_out(desk: Desk, begun: Running) -> Done:
    """Build the book and put it where it is to go; what is to be told is put beside it."""
    way, book = begun.name, desk.book()
    aside = desk.aside / f"published-{way}"
    shutil.rmtree(aside, ignore_errors=True)
    out = book.site_dir if way == "folder" else aside
    done = await run("stillroom", ["build", "--quiet", "--site-dir", out], book.root, begun)
    if not done.is_well:
        stopped = begun.was_told_to_stop
        begun.came_of = {"is_stopped": True} if stopped else {"wrong": _told(desk, done)}
    elif way == "folder":
        begun.came_of = {"where": str(book.site_dir), "noticed": _told(desk, done)}
    elif way == "branch":
        begun.came_of = await _on_branch(desk, aside)
    else:
        packed = await run_in_threadpool(_packed, aside, desk.aside / f"{ZIPS[way]}.zip", way)
        size = f"{packed.stat().st_size / 1_000_000:.1f} MB"
        begun.came_of = {"where": packed.name, "size": size, "noticed": _told(desk, done)}
    return done


def _packed(site: Path, packed: Path, way: str) -> Path:
    """Return the zip of a site, made ready first for whoever opens it by a double click."""
    if way == "stick":
        from stillroom.publish.stick import make_stick  # needed here alone

        make_stick(site)
    return _zip(site, packed)


def _told(desk: Desk, done: Done) -> tuple[str, ...]:
    """Return what a build said, in words that fit the desk: of which recipe, and not which line."""
    return tuple(map(plainly, told_here(done.lines, desk.names())))


async def _on_branch(desk: Desk, site: Path) -> dict[str, Any]:
    """Put the site on a branch of the book's own git, sent to no host; return what came of it."""
    arguments = ["--no-jekyll", "--branch", BRANCH, "--message", "The book", str(site)]
    book = desk.book()
    # the branch is read by all: neither its maker's name nor an address of theirs stands in it
    nobody = {"GIT_COMMITTER_NAME": book.settings.title, "GIT_COMMITTER_EMAIL": NOBODY}
    done = await run("ghp_import", arguments, book.root, more=nobody)
    if not done.is_well:
        return {"wrong": ("Git did not take it.", *done.lines[-3:])}
    return {"where": BRANCH}


def _zip(folder: Path, packed: Path) -> Path:
    """Pack a folder into a zip aside, under the zip's own name."""
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as held:
        for path in sorted(_files(folder)):
            held.write(path, f"{packed.stem}/{path.relative_to(folder).as_posix()}")
    return packed


async def fetch_zip(desk: Desk, request: Request) -> Response:
    """Hand over a zip that was made, to be kept wherever the browser keeps such things."""
    name = request.path_params["name"]
    path = desk.aside / right_name(name)
    if path.stem not in ZIPS.values() or not path.is_file():
        raise NotHere(name)
    return FileResponse(path, media_type="application/zip", filename=name)


PUBLISH_ROUTES: Final = [
    ("/publish", publish, "GET"),
    ("/publish", make, "POST"),
    ("/publish/now", now, "GET"),
    ("/publish/stop", stop, "POST"),
    ("/publish/{name}", fetch_zip, "GET"),
]
