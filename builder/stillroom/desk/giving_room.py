"""The giving list at the desk: who is given what, worked out here, and never published.

Its pages look unlike the book's and say so. A plan is worked out by the same command as in the
terminal, which can be watched and stopped; the pack is looked at here and lies in private/.
"""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any, Final

from starlette.requests import Request
from starlette.responses import FileResponse, RedirectResponse, Response

from stillroom.beginning.recipe import slug_of
from stillroom.core.private.shapes import PACK_MARKER
from stillroom.core.reading.loading import gather_recipes
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.giving_days import find_day
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable
from stillroom.desk.comparing import side_by_side
from stillroom.desk.desk import Desk
from stillroom.desk.giving_form import ROWS, box_name, change_list, rows_of, top_of
from stillroom.desk.giving_lines import lines_of
from stillroom.desk.giving_rows import NEEDED
from stillroom.desk.keeping import ChangedElsewhere, keep
from stillroom.desk.looking import plainly
from stillroom.desk.place import FileNow, NotHere, read_now, right_name
from stillroom.desk.running import Running, run
from stillroom.desk.showing import page
from stillroom.desk.versions import bring_back, versions_of
from stillroom.giving.finding import giving_lists
from stillroom.giving.guard import guard_file, usual_folder
from stillroom.giving.log import log_kinds
from stillroom.giving.reading import read_giving_list
from stillroom.giving.starter.answers import ListAnswers, Receiver, read_giving_day
from stillroom.giving.starter.writing import write_first_list
from stillroom.looks.card_designs import designs_of
from stillroom.saving.yaml_files import change_yaml, read_yaml_file

FOLDER: Final = "giving"
_LONGEST: Final = 20_000
_PACK_POLICY: Final = (
    "default-src 'none'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; "
    "font-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
_SAID: Final = {"kept": "Kept.", "noted": "Noted."}
HEADINGS: Final = {
    "households": "Who",
    "baskets": "Baskets",
    "makes": "What is made",
    "batches": "Batches begun before there was a log",
}


def list_named(desk: Desk, name: str) -> Path:
    """Return the giving list of a name; raises NotHere for any other file."""
    for path in giving_lists(desk.book()):
        if desk.place.short(path) == name:
            return desk.place.within(path)
    raise NotHere(name)


def _page(desk: Desk, template: str, status: int = 200, **words: Any) -> Response:
    title = desk.book().settings.title
    return page(template, status, book_title=title, here="giving", is_private=True, **words)


def _read(desk: Desk, text: str, name: str) -> None:
    """Read a list as its book writes money and days; raises ProblemsFound."""
    said = desk.book().settings
    read_giving_list(text, name, said.currency, said.language, said.country)


async def giving(desk: Desk, request: Request) -> Response:
    """Show the giving lists, and begin one."""
    return _lists(desk)


def _lists(desk: Desk, status: int = 200, wrong: tuple[str, ...] = ()) -> Response:
    names = [desk.place.short(path) for path in giving_lists(desk.book())]
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


async def begin_list(desk: Desk, request: Request) -> Response:
    """Begin a giving list with one household and every recipe of the book that reads."""
    async with request.form(max_files=0, max_fields=10) as data:
        said = {name: " ".join(str(value)[:200].split()) for name, value in data.items()}
    recipes = _recipes(desk)
    if not all(said.get(name) for name in ("called", "day", "who")) or not recipes:
        return _lists(desk, 422, ("Say what it is called, the day, and who is given something.",))
    path = desk.place.within(desk.book().root / FOLDER / f"{slug_of(said['called'])}.yml")
    guard_file(path, desk.book())
    if path.exists():
        return _lists(desk, 422, ("There is a giving list of this name already.",))
    try:
        text = _new_list(said, recipes, desk, path.name)
        _read(desk, text, path.name)
    except ProblemsFound as found:
        return _lists(desk, 422, _told(found))
    keep(desk.place, path, text, "")
    return RedirectResponse(f"/giving/list?name={desk.place.short(path)}", 303)


def _recipes(desk: Desk) -> tuple[Recipe, ...]:
    """Return the recipes that read: the others are told of where they are written."""
    book = desk.book()
    said, larder = book.settings, book.own_larder().larder
    return gather_recipes(
        book.recipe_files(), book.root, said.units, larder=larder, language=said.language
    )[0]


def _new_list(said: dict[str, str], recipes: tuple[Recipe, ...], desk: Desk, name: str) -> str:
    """Return the text of a list; raises ProblemsFound where what was said does not read."""
    settings, today = desk.book().settings, date.today()
    try:
        day = read_giving_day(said["day"], today, settings.country)
    except Unreadable as wrong:
        raise ProblemsFound([Problem(name, 1, wrong.what, wrong.mend)]) from None
    answers = ListAnswers(said["called"], day, receivers=(Receiver(said["who"]),))
    return write_first_list(answers, recipes, settings, today, name)


async def one_list(desk: Desk, request: Request) -> Response:
    """Show the boxes of a giving list."""
    path = list_named(desk, request.query_params.get("name", ""))
    said = _SAID.get(request.query_params.get("said", ""), "")
    return show_boxes(desk, read_now(path, path.name), said=said)


def show_boxes(
    desk: Desk,
    now: FileNow,
    status: int = 200,
    wrong: tuple[str, ...] = (),
    raw: str = "",
    **more: Any,
) -> Response:
    """Show a list as boxes, with what is wrong above them."""
    read = read_yaml_file(raw or now.raw, now.path.name)
    recipes = [path.stem for path in desk.book().recipe_files()]
    return _page(
        desk,
        "giving_list.html",
        status,
        name=desk.place.short(now.path),
        opened=now.sum,
        top=top_of(read),
        parts=[(part, HEADINGS[part], ROWS[part], rows_of(read, part)) for part in HEADINGS],
        lines={part: lines_of(read, part) for part in ("prices", "hours", "stock")},
        needed=NEEDED,
        kinds=[kind for kind in log_kinds() if kind != "closed"],
        box_name=box_name,
        recipes=recipes,
        designs=list(designs_of(desk.book())),
        wrong=wrong,
        **{"said": "", "pairs": [], **more},
    )


def _told(found: ProblemsFound) -> tuple[str, ...]:
    return tuple(plainly(f"{one.what} {one.mend}") for one in found.problems)


async def keep_list(desk: Desk, request: Request) -> Response:
    """Keep a giving list as its boxes say, where its reader finds nothing wrong."""
    async with request.form(max_files=0, max_fields=9_000) as data:
        sent = {name: str(value)[:_LONGEST] for name, value in data.items()}
    path = list_named(desk, sent.get("name", ""))
    now = read_now(path, path.name)
    text = change_yaml(now.raw, path.name, lambda said: change_list(said, sent))
    try:
        _read(desk, text, path.name)
    except ProblemsFound as found:
        return show_boxes(desk, now, 422, _told(found), text)
    try:
        keep(desk.place, path, text, sent.get("opened", ""))
    except ChangedElsewhere:
        told = "It was changed elsewhere meanwhile. Both stand below; keep yours to put it there."
        return show_boxes(desk, now, 409, (told,), text, pairs=side_by_side(text, now.raw))
    return RedirectResponse(f"/giving/list?name={desk.place.short(path)}&said=kept", 303)


async def earlier(desk: Desk, request: Request) -> Response:
    """Show the earlier versions of a list, and one of them beside what stands there now."""
    path = list_named(desk, request.query_params.get("name", ""))
    words = versions_of(desk, path, request.query_params.get("at", ""))
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
        return show_boxes(desk, read_now(path, path.name), 409, (told,))
    return RedirectResponse(f"/giving/list?name={desk.place.short(path)}&said=kept", 303)


async def work_it_out(desk: Desk, request: Request) -> Response:
    """Begin to work out a plan, unless one is being worked out."""
    async with request.form(max_files=0, max_fields=5) as data:
        path = list_named(desk, str(data.get("name", "")))
        afresh = ["--afresh"] if data.get("afresh") else []
    if desk.plan is None or desk.plan.done is not None:
        plan = Running(desk.place.short(path))
        root = desk.book().root
        arguments = ["pack", str(path), "--out", str(usual_folder(desk.book())), *afresh]
        plan.begin(run("stillroom.cli", arguments, root, plan))
        desk.plan = plan
    return RedirectResponse("/giving/plan", 303)


async def plan(desk: Desk, request: Request) -> Response:
    """Show how far the plan is, and then what came of it."""
    if desk.plan is None:
        return RedirectResponse("/giving", 303)
    done = desk.plan.done
    has_pack = (usual_folder(desk.book()) / "index.html").is_file()
    answer = _page(
        desk,
        "plan.html",
        name=desk.plan.name,
        seconds=desk.plan.seconds,
        progress=desk.plan.progress,
        done=done,
        has_pack=has_pack,
    )
    if done is None:
        answer.headers["refresh"] = "1"
    return answer


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
