"""The giving list at the desk: who is given what, worked out here, and never published.

Its pages look unlike the book's and say so. A plan is worked out by the same command as in the
terminal, which can be watched and stopped; the pack is looked at here and lies in private/.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any, Final
from urllib.parse import quote

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import FileResponse, RedirectResponse, Response

from stillroom.beginning.recipe import slug_of
from stillroom.core.book import Book
from stillroom.core.private.shapes import PACK_MARKER
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.giving_days import find_day
from stillroom.core.words.day_words import say_day
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable
from stillroom.desk.desk import Desk
from stillroom.desk.giving_form import (
    HEADINGS,
    ROWS,
    TOP,
    Ask,
    box_name,
    change_list,
    rows_of,
    top_of,
)
from stillroom.desk.giving_further import new_rows
from stillroom.desk.giving_lines import is_day, lines_of, shown
from stillroom.desk.giving_rows import NEEDED, in_part
from stillroom.desk.giving_told import (
    ANOTHER,
    LINES,
    Told,
    all_wrong,
    box_id,
    nameless,
    read_at_desk,
    tell,
)
from stillroom.desk.in_words import list_in_words, pairs_in_words
from stillroom.desk.keeping import ChangedElsewhere, keep
from stillroom.desk.looking import plainly
from stillroom.desk.named import currencies, languages
from stillroom.desk.place import FileNow, NotHere, read_now, right_name
from stillroom.desk.plain_words import told_here
from stillroom.desk.running import Running, run
from stillroom.desk.sent import boxes_sent
from stillroom.desk.showing import page
from stillroom.desk.typed import let_go, typed_in
from stillroom.desk.versions import bring_back, versions_of
from stillroom.giving.checking import only_begun
from stillroom.giving.finding import giving_lists
from stillroom.giving.guard import guard_file, usual_folder
from stillroom.giving.log import log_kinds
from stillroom.giving.starter.answers import ListAnswers, Receiver, read_giving_day
from stillroom.giving.starter.writing import write_first_list
from stillroom.looks.card_designs import designs_of
from stillroom.saving.yaml_files import change_yaml, read_yaml_file

FOLDER: Final = "giving"
_PACK_POLICY: Final = (
    "default-src 'none'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; "
    "font-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
_SAID: Final = {"kept": "Kept.", "noted": "Noted."}
FURTHER: Final = {
    "households": "Post, their day, the card, a limit",
    "makes": "Weight, batches at a time",
    "baskets": "Weight, containers, papers",
}
"""What the folded boxes of a row are about."""


def list_named(desk: Desk, name: str) -> Path:
    """Return the giving list of a name; raises NotHere for any other file."""
    for path in giving_lists(desk.book()):
        if desk.place.short(path) == name:
            return desk.place.within(path)
    raise NotHere(name)


def _page(desk: Desk, template: str, status: int = 200, **words: Any) -> Response:
    title = desk.book().settings.title
    return page(template, status, book_title=title, here="giving", is_private=True, **words)


async def giving(desk: Desk, request: Request) -> Response:
    """Show the giving lists, and begin one."""
    return _lists(desk)


def _lists(desk: Desk, status: int = 200, wrong: tuple[str, ...] = ()) -> Response:
    names = {desk.place.short(path): titled(path) for path in giving_lists(desk.book())}
    usual = desk.book().settings.giving_days[0]
    day = find_day(usual.day, date.today(), desk.book().settings.country)
    has_pack = (usual_folder(desk.book()) / PACK_MARKER).is_file()
    return _page(
        desk,
        "giving.html",
        status,
        names=names,
        wrong=wrong,
        usual=usual.name,
        day=day,
        has_pack=has_pack,
    )


def titled(path: Path) -> str:
    """Return what a list is called, and its day; its file's name where it says neither."""
    try:
        said = read_yaml_file(path.read_text(encoding="utf-8", errors="replace"), path.name)
    except ProblemsFound:
        return path.name
    facts = [in_part(said, ask.key) for ask in TOP[:2]]
    words = [say_day(fact) if isinstance(fact, date) else shown(fact) for fact in facts]
    return ", ".join(filter(None, words)) or path.name


async def begin_list(desk: Desk, request: Request) -> Response:
    """Begin a giving list with one household and every recipe of the book that reads."""
    boxes = await boxes_sent(request, 10, 200)
    said = {name: " ".join(value.split()) for name, value in boxes.items()}
    recipes = await run_in_threadpool(desk.recipes)
    if not all(said.get(name) for name in ("called", "day", "who")) or not recipes:
        return _lists(desk, 422, ("Say what it is called, the day, and who is given something.",))
    path = desk.place.within(desk.book().root / FOLDER / f"{slug_of(said['called'])}.yml")
    guard_file(path, desk.book())
    if path.exists():
        return _lists(desk, 422, ("There is a giving list of this name already.",))
    try:
        text = _new_list(said, tuple(recipes.values()), desk, path.name)
        read_at_desk(desk, text, path.name)
    except ProblemsFound as found:
        told = tuple(plainly(f"{one.what} {one.mend}") for one in found.problems)
        return _lists(desk, 422, told)
    keep(desk.place, path, text, "")
    return RedirectResponse(f"/giving/list?name={quote(desk.place.short(path))}", 303)


def _new_list(said: dict[str, str], recipes: tuple[Recipe, ...], desk: Desk, name: str) -> str:
    """Return the text of a list; raises ProblemsFound where what was said does not read."""
    settings, today = desk.book().settings, date.today()
    try:
        day = read_giving_day(said["day"], today, settings.country, settings.own_days)
    except Unreadable as wrong:
        raise ProblemsFound([Problem(name, 1, wrong.what, wrong.mend)]) from None
    answers = ListAnswers(said["called"], day, receivers=(Receiver(said["who"]),))
    return write_first_list(answers, recipes, settings, today, name)


async def one_list(desk: Desk, request: Request) -> Response:
    """Show the boxes of a giving list."""
    path = list_named(desk, request.query_params.get("name", ""))
    said = _SAID.get(request.query_params.get("said", ""), "")
    now = read_now(path, path.name)
    wrong = await run_in_threadpool(_wrong, desk, now.raw, path.name)
    return show_boxes(desk, now, wrong=wrong, said=said)


def _wrong(desk: Desk, text: str, name: str) -> tuple[Told, ...]:
    """Return what is to be mended in a list before it can be worked out."""
    return tell(all_wrong(desk, text, name), read_yaml_file(text, name), desk.names())


def show_boxes(
    desk: Desk,
    now: FileNow,
    status: int = 200,
    wrong: tuple[Told, ...] = (),
    base: str = "",
    further: str = "",
    **more: Any,
) -> Response:
    """Show a list as boxes, each with what is wrong there; they say what `base` says, or the file.

    `further` is the part of which one more empty form is wanted.

    What is sent from them is put into those same words: rows are told apart by where they stand.
    """
    words = base or now.raw
    read = read_yaml_file(words, now.path.name)
    at_box: dict[str, list[str]] = {}
    for one in wrong:
        at_box.setdefault(one.box, []).append(one.words)
    return _page(
        desk,
        "giving_list.html",
        status,
        name=desk.place.short(now.path),
        opened=now.sum,
        base=desk.remember(words),
        typed=typed_in(desk, f"giving:{desk.place.short(now.path)}"),
        typed_happened=typed_in(desk, f"happened:{desk.place.short(now.path)}"),
        top=top_of(read),
        parts=[(part, HEADINGS[part], ROWS[part], rows_of(read, part)) for part in HEADINGS],
        another=ANOTHER,
        basket_name=Ask("name", "Name"),
        line_words=LINES,
        lines={part: lines_of(read, part) for part in LINES},
        needed=NEEDED,
        kinds={one.kind: one.means for one in log_kinds().values() if one.kind != "closed"},
        box_name=box_name,
        box_id=box_id,
        is_day=is_day,
        names=desk.names(),
        choices=_choices(desk.book()),
        wrong=wrong,
        at_box=at_box,
        open_rows={box.rpartition("|")[0] for box in at_box},
        open_more=_folded_open(at_box),
        top_open=any(ask.more and ask.key in at_box for ask in TOP) or "hours" in at_box,
        further=FURTHER,
        unkept=words != now.raw or bool(more.get("new")),
        new_parts={part: new_rows(part, more.get("new", {}), further) for part in HEADINGS},
        new_open=further,
        **{"said": "", "told": (), "pairs": [], "new": {}, "hinders": status != 200, **more},
    )


def _choices(book: Book) -> dict[str, dict[str, str]]:
    """Return what may be chosen in each sort of box that is no writing: its value and its words."""
    spoken = languages()
    return {
        "yes": {"yes": "yes", "no": "no"},
        "sort": {"eat": "something to eat", "drink": "a drink", "craft": "made by hand"},
        "delivery": {"by hand": "by hand", "by post": "by post"},
        "design": {name: one.name for name, one in designs_of(book).items()},
        "currency": dict(currencies()),
        "language": dict(spoken.read + spoken.others),
    }


def _folded_open(boxes: Iterable[str]) -> dict[str, list[str]]:
    """Return for each row the facts at whose boxes something is told: their fold is open."""
    found: dict[str, list[str]] = {}
    for box in boxes:
        row, _, key = box.rpartition("|")
        found.setdefault(row, []).append(key)
    return found


async def keep_list(desk: Desk, request: Request) -> Response:
    """Keep a giving list as its boxes say, where its reader finds nothing wrong."""
    sent = await _sent(request)
    path = list_named(desk, sent.get("name", ""))
    if refused := await _refused(desk, path, sent):
        return refused
    return _kept(desk, path)


async def _sent(request: Request) -> dict[str, str]:
    async with request.form(max_files=0, max_fields=9_000) as data:
        return {name: str(value) for name, value in data.items()}


def _kept(desk: Desk, path: Path) -> Response:
    return RedirectResponse(f"/giving/list?name={quote(desk.place.short(path))}&said=kept", 303)


async def _refused(desk: Desk, path: Path, sent: Mapping[str, str]) -> Response | None:
    """Keep what the boxes say; return the page that tells why it was not kept, if it was not."""
    now, opened = read_now(path, path.name), sent.get("opened", "")
    base = desk.remembered(sent.get("base", "")) or (now.raw if now.sum == opened else "")
    if not base:
        told = (
            "It was changed elsewhere meanwhile, and stands here as it is there. Nothing was kept."
        )
        return show_boxes(desk, now, 409, told=(told,))
    text = change_yaml(base, path.name, lambda said: change_list(said, sent))
    if (further := sent.get("further", "")) in ROWS:  # pressed where no script adds the form
        return show_boxes(desk, replace(now, sum=opened), 200, (), text, further, new=sent)
    if nobody := nameless(sent):
        return show_boxes(desk, replace(now, sum=opened), 422, nobody, text, new=sent)
    try:
        read_at_desk(desk, text, path.name)
    except ProblemsFound as found:
        if len(only_begun(found.problems)) != len(found.problems):
            wrong = await run_in_threadpool(_wrong, desk, text, path.name)
            return show_boxes(desk, replace(now, sum=opened), 422, wrong, text)
    try:
        keep(desk.place, path, text, now.sum if text == now.raw else opened)  # it stands there
    except ChangedElsewhere:
        told = "It was changed elsewhere meanwhile. Both stand below; keep yours to put it there."
        pairs = pairs_in_words(text, now.raw, list_in_words)
        return show_boxes(desk, now, 409, base=text, told=(told,), pairs=pairs)
    let_go(desk, f"giving:{desk.place.short(path)}", sent.get("visit", ""))
    return None


async def earlier(desk: Desk, request: Request) -> Response:
    """Show the earlier versions of a list, and one of them beside what stands there now."""
    path = list_named(desk, request.query_params.get("name", ""))
    words = versions_of(desk, path, request.query_params.get("at", ""), list_in_words)
    words["called"] = titled(path)
    return _page(desk, "versions.html", way="/giving/earlier", onward="/giving", **words)


async def back(desk: Desk, request: Request) -> Response:
    """Put an earlier version of a list in its place; what stood there is kept in turn."""
    async with request.form(max_files=0, max_fields=5) as data:
        sent = {name: str(value) for name, value in data.items()}
    path = list_named(desk, sent.get("name", ""))
    try:
        bring_back(desk, path, sent)
    except ChangedElsewhere:
        told = "The list was changed elsewhere meanwhile, and is as it was there."
        return show_boxes(desk, read_now(path, path.name), 409, told=(told,))
    return _kept(desk, path)


async def work_it_out(desk: Desk, request: Request) -> Response:
    """Keep what is typed, and begin to work out a plan of it where nothing is to be mended first.

    One that is being worked out of these very words goes on; one of other words is ended.
    """
    sent = await _sent(request)
    path = list_named(desk, sent.get("name", ""))
    if "base" in sent and (refused := await _refused(desk, path, sent)):
        return refused
    now = read_now(path, path.name)
    if await run_in_threadpool(_wrong, desk, now.raw, path.name):
        return _kept(desk, path)  # where each is told at its box
    afresh = ["--afresh"] if sent.get("afresh") else []
    begun = Running(desk.place.short(path), (now.sum, *afresh))
    if desk.plan is not None and desk.plan.done is None:
        if (desk.plan.name, desk.plan.of) == (begun.name, begun.of):
            return RedirectResponse("/giving/plan", 303)
        await desk.plan.end()
    arguments = ["pack", str(path), "--out", str(usual_folder(desk.book())), *afresh]
    begun.begin(run("stillroom.cli", arguments, desk.book().root, begun))
    desk.plan = begun
    return RedirectResponse("/giving/plan", 303)


async def plan(desk: Desk, request: Request) -> Response:
    """Show how far the plan is, and then what came of it."""
    if desk.plan is None:
        return RedirectResponse("/giving", 303)
    done = desk.plan.done
    is_written = done is not None and any(line.startswith("Written: ") for line in done.lines)
    has_pack = (usual_folder(desk.book()) / "index.html").is_file()
    return _page(
        desk,
        "plan.html",
        name=desk.plan.name,
        seconds=desk.plan.seconds,
        progress=desk.plan.progress,
        done=done,
        told=told_here(done.lines, desk.names()) if done else (),
        is_written=is_written,
        is_stopped=done is not None and not done.is_well and desk.plan.was_told_to_stop,
        has_pack=has_pack,
    )


async def stop_plan(desk: Desk, request: Request) -> Response:
    """Stop working it out; the plan before stays."""
    if desk.plan is not None:
        desk.plan.stop()
    return RedirectResponse("/giving/plan", 303)


async def pack_file(desk: Desk, request: Request) -> Response:
    """Show a page of the pack."""
    folder = usual_folder(desk.book())
    path = folder.joinpath(*(right_name(part) for part in request.path_params["path"].split("/")))
    inside = path.resolve().is_relative_to(folder.resolve())
    if not (folder / PACK_MARKER).is_file() or not inside or not path.is_file():
        raise NotHere(path.name)
    desk.place.within(path)
    return FileResponse(path, headers={"content-security-policy": _PACK_POLICY})


GIVING_ROUTES: Final = [
    ("/giving", giving, "GET"),
    ("/giving", begin_list, "POST"),
    ("/giving/list", one_list, "GET"),
    ("/giving/list", keep_list, "POST"),
    ("/giving/earlier", earlier, "GET"),
    ("/giving/earlier", back, "POST"),
    ("/giving/plan", plan, "GET"),
    ("/giving/plan", work_it_out, "POST"),
    ("/giving/stop", stop_plan, "POST"),
    ("/giving/pack/{path:path}", pack_file, "GET"),
]
