"""Writing one recipe: the boxes, what is said beside them as she types, and keeping it.

A recipe with problems is kept as a draft below `drafts/`; what is published stays as it was until
the draft is right. A file that was changed elsewhere meanwhile is shown side by side.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from starlette.requests import Request
from starlette.responses import JSONResponse, RedirectResponse, Response

from stillroom.beginning.questions import questions
from stillroom.beginning.recipe import slug_of
from stillroom.beginning.unanswered import asked_in
from stillroom.bringing.naming import kind_of_title
from stillroom.bringing.still_asked import asked_of_lines, still_asked
from stillroom.core.recipe.kinds import all_kinds
from stillroom.core.words.problems import ProblemsFound
from stillroom.desk.brought_questions import (
    all_named,
    named_lines,
    ticked_in,
    with_lines_answered,
    without_asked,
)
from stillroom.desk.comparing import side_by_side
from stillroom.desk.desk import Desk
from stillroom.desk.filled import Lost, filled, in_boxes, lost_of
from stillroom.desk.how_far import how_far
from stillroom.desk.keeping import (
    ChangedElsewhere,
    drop_unsaved,
    keep,
    note_opened,
    sum_of,
    take_out,
)
from stillroom.desk.lines_as_came import MOST_BOXES, around, came, shown
from stillroom.desk.looking import Look, plainly
from stillroom.desk.place import FileNow, NotHere, read_now
from stillroom.desk.pressing import SETTLED, press_of, pressed_in
from stillroom.desk.reading_back import Ways, read_box, read_steps_box, readable
from stillroom.desk.recipe_form import FIELDS, as_boxes, empty_form, form_of
from stillroom.desk.recipe_rows import Row, lay_out
from stillroom.desk.recipe_writing import write_form
from stillroom.desk.sent import boxes_sent
from stillroom.desk.showing import fill, page

NEW: Final = re.compile(r"new-recipe(?:-\d{1,3})?")
_WORDS_IN_FILE: Final = 60_000


@dataclass(frozen=True)
class Files:
    """A recipe's two files: the one in the book and the draft of something newer."""

    book: FileNow
    draft: FileNow

    @property
    def now(self) -> FileNow:
        """The one that is being written."""
        return self.draft if self.draft.is_there else self.book

    @property
    def sums(self) -> str:
        """Both sums, by which a change from elsewhere is seen."""
        return f"{self.book.sum}:{self.draft.sum}"


def files_of(desk: Desk, ident: str) -> Files:
    """Return what there is of a recipe; raises NotHere where there is nothing and nothing new."""
    place = desk.place
    book, draft = place.recipe_path(ident), place.draft_path(ident)
    found = Files(read_now(book, book.name), read_now(draft, draft.name))
    unsaved = place.unsaved_path(ident)
    if not found.now.is_there and not unsaved.is_file() and not NEW.fullmatch(ident):
        raise NotHere(ident)
    return found


async def write(desk: Desk, request: Request) -> Response:
    """Show the boxes of a recipe, with what was typed and not kept where there is such."""
    ident = request.path_params["ident"]
    if ident == "new":
        return RedirectResponse(f"/write/{_free_ident(desk)}", 303)
    files = files_of(desk, ident)
    unsaved = desk.place.unsaved_path(ident)
    opened, raw, is_unsaved = files.sums, files.now.raw, False
    if unsaved.is_file():
        raw = unsaved.read_bytes().decode("utf-8", errors="replace")
        is_unsaved = raw != files.now.raw
        sums = unsaved.with_suffix(".opened")
        if is_unsaved and sums.is_file():
            opened = sums.read_text(encoding="utf-8")
    form = _form(raw, ident)
    if is_unsaved and (answered := all_named(files.now.raw) - all_named(raw)):
        form[SETTLED] = "\n".join(sorted(answered))
    said = "kept" if request.query_params.get("said") == "kept" else ""
    return boxes_of(desk, ident, form, opened, files, is_unsaved=is_unsaved, just=said)


def _free_ident(desk: Desk) -> str:
    number = 1
    while True:
        ident = "new-recipe" if number == 1 else f"new-recipe-{number}"
        if not desk.place.unsaved_path(ident).is_file():
            return ident
        number += 1


def _form(raw: str, ident: str) -> dict[str, str]:
    if not raw.strip():
        return empty_form()
    try:
        return form_of(lay_out(raw, f"{ident}.md"))
    except ProblemsFound:
        return empty_form() | {"whole": raw}


async def posted_boxes(request: Request) -> dict[str, str]:
    """Return the boxes of a recipe as they were sent; raises TooLong."""
    return await boxes_sent(request, MOST_BOXES, _WORDS_IN_FILE)


@dataclass(frozen=True)
class Tried:
    """What came of the boxes: the file's words, the look at them, and how each line was read."""

    raw: str
    look: Look
    parts: dict[str, str]
    kind: str


def slug_for(ident: str, form: Mapping[str, str]) -> str:
    """Return the name that a recipe's file has or is to have."""
    return slug_of(form.get("title", "")) if NEW.fullmatch(ident) else ident


def _try(desk: Desk, ident: str, files: Files, posted: Mapping[str, str]) -> Tried:
    form, base = filled(posted), files.now.raw
    if "whole" in posted:
        raw = posted["whole"].replace("\r\n", "\n")
        look = desk.look(ident, ident, raw)
        return Tried(raw, look, {"wrong-whole": _wrong(look, "whole")}, "")
    kind = form.get("kind") or kind_of_title(form.get("title", "")).word
    form["kind"] = kind
    raw = without_asked(write_form(base, f"{ident}.md", form), ticked_in(posted))
    raw = with_lines_answered(raw, base, form, posted.get(SETTLED, ""))
    look = desk.look(ident, slug_for(ident, form), raw)
    rows: tuple[Row, ...] = ()
    try:
        rows = lay_out(raw, f"{ident}.md").ingredients()
    except ProblemsFound:
        rows = ()
    parts = _parts(desk.ways(), form, rows, look, named_lines(raw))
    return Tried(raw, look, parts, kind)


def _parts(
    ways: Ways, form: Mapping[str, str], rows: tuple[Row, ...], look: Look, doubted: Collection[str]
) -> dict[str, str]:
    """Return the fragments that stand beside the boxes, by the element that each belongs in."""
    ways = ways.spoken(form.get("method", ""), form.get("ingredients", ""))
    read = read_box(form.get("ingredients", ""), rows, ways)
    goes_in = readable(form.get("ingredients", ""), rows, ways)
    steps = read_steps_box(form.get("method", ""), goes_in, ways, doubted)
    parts = {
        f"read-{box}": fill(
            template, rows=rows, lines=form.get(box, "").split("\n"), press_of=press_of
        )
        for box, template, rows in (
            ("ingredients", "read_back.html", read),
            ("method", "read_steps.html", steps),
        )
    }
    told = {one.question for one in (*read, *steps) if one.state == "asked"}
    for box in (*FIELDS, "whole", "safety"):
        own = [one for one in look.wrong if one.box == box and str(one) not in told]
        own += [one for one in look.warnings if box == one.meant]
        parts[f"wrong-{box}"] = fill("wrong.html", wrong=own)
    parts["warned"] = fill("wrong.html", wrong=[one for one in look.warnings if not one.meant])
    return parts


def _wrong(look: Look, box: str) -> str:
    return fill("wrong.html", wrong=[one for one in look.wrong if one.box == box])


async def look(desk: Desk, request: Request) -> Response:
    """Answer a pause in typing: how everything was read, and the page as it will be."""
    ident = request.path_params["ident"]
    posted = await posted_boxes(request)
    files = files_of(desk, ident)
    with desk.at_work:
        tried = _try(desk, ident, files, posted)
        body = None
        if tried.look.is_right and tried.look.recipe:
            body = desk.show(ident, tried.look.recipe).body
        elif ident not in desk.pages:
            desk.hindered[ident] = len(tried.look.wrong)
            body = fill("not_yet.html", hinders=desk.hindered[ident])
    note_opened(desk.place, ident, posted.get("opened", ""))
    answer: dict[str, Any] = {
        "parts": tried.parts,
        "page": body,
        "said": how_far(tried.look, still_asked(tried.raw, desk.boxed(files.now.raw))),
        "kind": tried.kind,
    }
    return JSONResponse(answer)


async def keep_it(desk: Desk, request: Request) -> Response:
    """Keep a recipe: in the book where it is right, else as a draft."""
    ident = request.path_params["ident"]
    posted = await posted_boxes(request)
    files = files_of(desk, ident)
    if "answer" in posted:
        return _answered(desk, ident, files, posted)
    with desk.at_work:
        tried = _try(desk, ident, files, posted)
    if posted.get("opened") != files.sums:
        note_opened(desk.place, ident, posted.get("opened", ""))  # should she go away and come back
        return _conflict(ident, files, posted, tried.raw)
    form = filled(posted) | ({"kind": tried.kind} if tried.kind else {})  # as it was guessed
    if "whole" not in posted and (lost := lost_of(tried.raw, f"{ident}.md", form)):
        return boxes_of(desk, ident, form, files.sums, files, lost=lost)
    slug = slug_for(ident, form)
    slug = _free_slug(desk, slug) if NEW.fullmatch(ident) else slug
    in_book = tried.look.is_right and posted.get("as") != "draft"
    raw = tried.raw if "whole" in posted else without_asked(tried.raw, desk.boxed(files.now.raw))
    try:
        _put(desk, slug, raw, in_book, files)
    except ChangedElsewhere:
        return _conflict(ident, files_of(desk, ident), posted, tried.raw)
    forget(desk, ident)
    return RedirectResponse(f"/write/{slug}?said=kept", 303)


def _put(desk: Desk, slug: str, raw: str, in_book: bool, files: Files) -> None:
    place = desk.place
    if in_book:
        keep(place, place.recipe_path(slug), raw, files.book.sum)
        if files.draft.is_there:
            take_out(place, place.draft_path(slug))
    else:
        keep(place, place.draft_path(slug), raw, files.draft.sum)


def _free_slug(desk: Desk, slug: str) -> str:
    number, free = 1, slug
    while desk.place.recipe_path(free).exists() or desk.place.draft_path(free).exists():
        number += 1
        free = f"{slug}-{number}"
    return free


def forget(desk: Desk, ident: str) -> None:
    """Let go of what was typed and not kept."""
    drop_unsaved(desk.place, ident)
    desk.pages.pop(ident, None)


def _answered(desk: Desk, ident: str, files: Files, posted: Mapping[str, str]) -> Response:
    """Put an answer that was pressed in its line, where no script has done so."""
    settled = {SETTLED: posted.get(SETTLED, "")}
    form = pressed_in(filled(posted) | settled, posted["answer"])
    return boxes_of(desk, ident, form, posted.get("opened", ""), files, is_unsaved=True)


def boxes_of(
    desk: Desk,
    ident: str,
    form: Mapping[str, str],
    opened: str,
    files: Files,
    *,
    is_unsaved: bool = False,
    just: str = "",
    lost: Sequence[Lost] = (),
    told_of_picture: str = "",
    go_to: str = "",
    came_told: tuple[str, str] = ("", ""),
) -> Response:
    """Return the page of boxes, with everything said beside them as when she types.

    `go_to` is the box to go on at, after something was done to what is typed; `came_told` what is
    said above the lines that it came as, and the draft that was made of some of them.
    """
    is_empty = not any(form.values())
    with desk.at_work:
        tried = _try(desk, ident, files, form)
        if tried.look.is_right and tried.look.recipe:
            desk.show(ident, tried.look.recipe)
        elif not is_empty:
            desk.hindered[ident] = len(tried.look.wrong)
    if is_unsaved:
        note_opened(desk.place, ident, opened)
    elif not lost:
        drop_unsaved(desk.place, ident)
    chosen = form.get("kind") or tried.kind
    asked = [] if "whole" in form else asked_in(tried.raw)
    by_boxes = desk.boxed(files.now.raw)
    boxed = by_boxes | asked_of_lines(asked)
    waiting = 0 if "whole" in form else still_asked(tried.raw, by_boxes)
    kinds = {kind.name: f"{kind.name}: {kind.describes}" for kind in all_kinds().values()}
    state = "draft" if files.draft.is_there else "published" if files.book.is_there else "new"
    came_by = not (NEW.fullmatch(ident) or "whole" in form)
    lines = came(desk.place, ident) if came_by else ()
    return page(
        "write.html",
        came=shown(lines, form),
        around=around(desk.place, ident) if came_by else (),
        came_told=came_told,
        questions=questions(),
        book_title=desk.book().settings.title,
        pictures=desk.book().settings.pictures,
        here="recipes",
        ident=ident,
        form=in_boxes({SETTLED: "", **empty_form(), **form}),
        opened=opened,
        parts={} if is_empty else tried.parts,
        said_now="" if is_empty else how_far(tried.look, waiting),
        waiting=waiting,
        kinds=kinds if not chosen or chosen in kinds else {**kinds, chosen: chosen},
        kind=chosen,
        state=state,
        has_both=files.draft.is_there and files.book.is_there,
        is_unsaved=is_unsaved,
        just_kept=bool(just),
        lost=lost,
        is_whole="whole" in form,
        asked=[(words, plainly(words)) for words in asked if words not in boxed],
        told_of_picture=told_of_picture,
        go_to=go_to,
    )


def _conflict(ident: str, files: Files, posted: Mapping[str, str], mine: str) -> Response:
    sent = {name: value for name, value in posted.items() if name not in ("opened", "as")}
    return page(
        "changed.html",
        409,
        here="recipes",
        ident=ident,
        pairs=side_by_side(as_boxes(mine), as_boxes(files.now.raw)),
        sent=sent,
        opened=files.sums,
        is_gone=not files.now.is_there,
    )


async def let_go(desk: Desk, request: Request) -> Response:
    """Let go of what was typed and not kept; the file stays as it is."""
    ident = request.path_params["ident"]
    files = files_of(desk, ident)
    forget(desk, ident)
    return RedirectResponse(f"/write/{ident}" if files.now.is_there else "/", 303)


async def out(desk: Desk, request: Request) -> Response:
    """Take a recipe out of the book, or its draft away; its words stay among earlier versions."""
    ident = request.path_params["ident"]
    files = files_of(desk, ident)
    posted = await posted_boxes(request)
    if posted.get("opened") != files.sums:
        return _conflict(ident, files, posted, files.now.raw)
    path: Path = files.now.path
    if files.now.is_there and sum_of(path.read_bytes()) == files.now.sum:
        take_out(desk.place, path)
    forget(desk, ident)
    said = "away" if files.draft.is_there else "out"
    return RedirectResponse(f"/?said={said}", 303)


WRITE_ROUTES: Final = [
    ("/write/{ident}", write, "GET"),
    ("/write/{ident}/look", look, "POST"),
    ("/write/{ident}/keep", keep_it, "POST"),
    ("/write/{ident}/let-go", let_go, "POST"),
    ("/write/{ident}/out", out, "POST"),
]
