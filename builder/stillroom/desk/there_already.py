"""Whether a recipe that is brought in is there already, from an earlier visit.

The same words are the same paper, wherever their lines were broken; a recipe of the same name with
the same list is the same recipe, though it was changed since. What is found is told, and whoever
wants another draft all the same says so.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from stillroom.bringing.found import Brought, BroughtRecipe
from stillroom.bringing.in_draft import boxes_of
from stillroom.bringing.overlap import words_in
from stillroom.core.words.problems import ProblemsFound
from stillroom.desk.desk import Desk
from stillroom.desk.place import NotHere, Place, read_now

AGAIN: Final = "again"
"""The box that says that another draft is wanted, and of which recipe."""


@dataclass(frozen=True)
class There:
    """A recipe that is there already: its name, how it is called, whether it is in the book.

    `again` is by what another draft of it is asked for.
    """

    slug: str
    title: str
    in_book: bool
    again: str


def parted(desk: Desk, found: Brought) -> tuple[Brought, list[There]]:
    """Return the recipes of a file that are new, and those that are there already."""
    files = list(_files(desk.place))
    new: list[BroughtRecipe] = []
    there: list[There] = []
    for one in found.recipes:
        if (path := _same(desk.place, files, one)) is None:
            new.append(one)
        else:
            in_book = path.parent == desk.place.recipes_dir()
            title = desk.title_of(path) or path.stem
            there.append(There(path.stem, title, in_book, desk.remember(_written(one))))
    return Brought(found.name, tuple(new), found.problems), there


def wanted_again(desk: Desk, name: str) -> Brought | None:
    """Return the recipe of which another draft was asked for; None where that is long ago."""
    if not (words := desk.remembered(name)):
        return None
    said = json.loads(words)
    recipe = BroughtRecipe(said["title"], said["slug"], said["text"], came=tuple(said["came"]))
    return Brought(said["title"], (recipe,))


def _written(one: BroughtRecipe) -> str:
    said = {"title": one.title, "slug": one.slug, "text": one.text, "came": one.came}
    return json.dumps(said, ensure_ascii=False)


def _files(place: Place) -> Iterator[Path]:
    """Yield the drafts, and then the recipes of the book."""
    yield from (place.draft_path(slug) for slug in place.draft_slugs())
    yield from sorted(place.recipes_dir().glob("*.md"))


def _same(place: Place, files: list[Path], one: BroughtRecipe) -> Path | None:
    """Return the file that a recipe is in already; None for none."""
    came, own = _words("\n".join(one.came)), _told(one.text)
    for path in files:
        try:
            before = read_now(place.came_path(path.stem), path.name).raw
            raw = read_now(path, path.name).raw
        except (ProblemsFound, NotHere):  # what does not read is told where it is opened
            continue
        if (came and _words(before) == came) or (any(own) and _told(raw) == own):
            return path
    return None


def _told(raw: str) -> tuple[list[str], list[str]]:
    """Return the words of a file's title and of its list."""
    boxes = boxes_of(raw)
    return _words(boxes.get("title", "")), _words(boxes.get("ingredients", ""))


def _words(text: str) -> list[str]:
    return [one.said for one in words_in(text)]
