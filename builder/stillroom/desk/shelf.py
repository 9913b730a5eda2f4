"""The book's recipes as a list: each with its picture and what it still lacks."""

from __future__ import annotations

import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from textwrap import shorten
from typing import Final

from stillroom.core.method.keeping_said import keeping_of_method
from stillroom.core.recipe.kinds import Kind, kind_called
from stillroom.core.recipe.model import Recipe
from stillroom.core.unknown_foods import unknown_foods
from stillroom.core.words.plurals import counted
from stillroom.core.words.problems import ProblemsFound, Unreadable
from stillroom.core.words.text_files import is_file_at
from stillroom.desk.desk import Desk
from stillroom.desk.looking import Look
from stillroom.desk.place import FileNow, read_now
from stillroom.desk.recipe_rows import lay_out
from stillroom.publish.library import picture_name

SECONDS: Final = 0.7
"""How long a list may take; what was not looked at by then is named, and looked at next time."""
_LONGEST: Final = 180
"""Letters of what is wrong with a recipe that the list has room for: its own page says it whole."""


@dataclass(frozen=True)
class Spine:
    """One recipe of the list. `state` is "published", "draft", "both", "older" or "unsaved".

    `asked` counts the questions from when it was brought in that nobody has answered.
    """

    slug: str
    title: str
    state: str
    picture: str
    kind: str
    wrong: tuple[str, ...]
    lacks: tuple[str, ...]
    waits: bool = False
    asked: int = 0

    @property
    def words(self) -> str:
        """What its state is called, and what it still wants to be in the book."""
        asked = f"{counted(self.asked, 'question')} to answer"
        if self.state == "draft" and not self.wrong and not self.waits:
            goes_in = f"with {asked}" if self.asked else "and goes into the book when you keep it"
            return f"a draft, not published; it reads well, {goes_in}"
        said = {
            "published": "in the book",
            "draft": "a draft, not published",
            "both": "in the book, with a draft of something newer",
            "older": "in the book; a draft that is older than it lies beside it",
            "unsaved": "typed and not kept",
        }[self.state]
        return f"{said}; {asked}" if self.asked else said

    @property
    def left(self) -> str:
        """What is left to do, by the numbers that every page tells; "" where nothing is."""
        said = [f"{counted(len(self.wrong), 'thing')} to mend"] if self.wrong else []
        said += [f"{counted(self.asked, 'question')} to answer"] if self.asked else []
        return " and ".join(said)


def _state(draft: Path | None, kept: Path | None) -> str:
    """Return what lies there of a recipe; a draft may be older than what was put in the book."""
    if draft is None or kept is None:
        return "published" if kept else "draft"
    try:
        return "both" if draft.stat().st_mtime_ns >= kept.stat().st_mtime_ns else "older"
    except OSError:  # one of them went meanwhile
        return "both"


def list_spines(desk: Desk, seconds: float = SECONDS) -> list[Spine]:
    """Return every recipe, draft and unkept page of a book, by title.

    Those that there was no time to look at wait: the page asks again.
    """
    until = time.monotonic() + seconds
    book, place = desk.book(), desk.place
    published = {path.stem: path for path in book.recipe_files()}
    drafts = {slug: place.draft_path(slug) for slug in place.draft_slugs()}
    titles = desk.titles()
    found = []
    for slug in sorted({*published, *drafts}):
        path = drafts.get(slug) or published[slug]
        state = _state(drafts.get(slug), published.get(slug))
        found.append(_spine(desk, slug, path, state, titles, until))
    folder = place.own / "unsaved"
    for path in sorted(folder.glob("new-recipe*.md")) if folder.is_dir() else ():
        found.append(_spine(desk, path.stem, path, "unsaved", titles, until))
    return sorted(found, key=lambda spine: (spine.title.lower(), spine.slug))


def spine_of_draft(desk: Desk, slug: str, titles: dict[str, list[Path]], until: float) -> Spine:
    """Return one draft as the list of recipes has it; one that is too late to look at waits."""
    return _spine(desk, slug, desk.place.draft_path(slug), "draft", titles, until)


def _spine(
    desk: Desk, slug: str, path: Path, state: str, titles: dict[str, list[Path]], until: float
) -> Spine:
    try:
        now = read_now(desk.place.within(path), path.name)
        is_late = time.monotonic() > until
        look = desk.look_again(slug, now, titles, only_known=is_late)
        if look is None:
            return Spine(slug, _title(now) or "No name yet", state, "", "", (), (), waits=True)
    except ProblemsFound as found:
        now, look = FileNow(path, "", ""), Look(None, ())
        wrong: tuple[str, ...] = tuple(str(one.what) for one in found.problems)
    else:
        wrong = tuple(shorten(str(one), _LONGEST, placeholder=" …") for one in look.wrong)
    title = look.recipe.title if look.recipe else _title(now)
    picture = _picture(desk, look.recipe)
    kind = look.recipe.kind if look.recipe else _kind_said(now)
    return Spine(
        slug=slug,
        title=title or "No name yet",
        state=state,
        picture=picture or f"/desk/drawings/{f'kind-{kind.slug}' if kind else 'mark'}.svg",
        kind=kind.name if kind else "",
        wrong=wrong,
        lacks=tuple(_lacks(look.recipe, bool(picture))) if look.recipe else (),
        asked=desk.still_asked(now.raw),
    )


def _title(now: FileNow) -> str:
    try:
        return str(lay_out(now.raw, now.path.name).data.get("title") or "") if now.raw else ""
    except ProblemsFound:
        return now.path.stem.replace("-", " ").capitalize()


def _kind_said(now: FileNow) -> Kind | None:
    """Return the kind that a file names which does not read yet."""
    try:
        said = lay_out(now.raw, now.path.name).data.get("kind") if now.raw else None
        return kind_called(said) if isinstance(said, str) else None
    except (ProblemsFound, Unreadable):  # one that may be two kinds has no drawing yet
        return None


def _picture(desk: Desk, recipe: Recipe | None) -> str:
    if recipe is None:
        return ""
    book = desk.book()
    name = picture_name(recipe)
    has_one = is_file_at(book.pictures_dir / name)
    return f"/look/{book.settings.pictures}/{name}" if has_one else ""


def _lacks(recipe: Recipe, has_picture: bool) -> Iterator[str]:
    """Yield what a recipe could still say; none of it keeps the book from being built."""
    unknown = [food.words for food in unknown_foods([recipe])]
    if unknown:
        yield f"what this is: {', '.join(unknown[:3])}{' …' if len(unknown) > 3 else ''}"
    if not has_picture:
        yield "a picture"
    if not recipe.summary:
        yield "one sentence about it"
    said = {"keeps", "keeps/unopened"} & {*recipe.lines} or keeping_of_method(recipe)
    if not said:
        yield "how long it keeps, and who says so"
    if not recipe.card.use:
        yield "a word for its card"
