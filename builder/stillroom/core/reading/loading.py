"""Recipe files to recipes: each is read or told of, and so is what two of them may not share.

One file is read by reading.py, whose functions are offered here too. Leaves out what is unsafe:
checking.py.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from stillroom.core.amounts.units import System
from stillroom.core.larder.shelves import Larder
from stillroom.core.reading.recipe_file import load_recipe, read_front, read_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.nearest import nearest
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.core.words.text_files import read_text

__all__ = [
    "Head",
    "check_together",
    "gather_recipes",
    "load_recipe",
    "load_recipes",
    "read_recipe",
    "short_name",
]


_TOLD: Final = ("title", "was", "picture")


@dataclass(frozen=True)
class Head:
    """What two recipes may not share, and the picture: read even when the rest is wrong.

    `lines` are those of these facts alone.
    """

    file: str
    slug: str
    title: str
    was: tuple[str, ...]
    picture: str
    lines: dict[str, int]

    def line(self, key: str) -> int:
        """Return the line of a fact, or the first."""
        return self.lines.get(key, 1)


def load_recipes(
    paths: Iterable[Path],
    root: Path,
    system: System = "metric",
    pictures: Path | None = None,
    larder: Larder | None = None,
    language: str = "en_GB",
) -> tuple[Recipe, ...]:
    """Read many recipe files in the order of their titles; raises ProblemsFound with all.

    `root` shortens the names in messages; `pictures` is the folder their pictures stand in,
    or None when pictures are not to be looked for. `larder` is what the book knows of foods,
    `language` how its numbers are written.
    """
    folders = None if pictures is None else (pictures,)
    recipes, _, problems = gather_recipes(paths, root, system, folders, larder, language)
    if problems:
        raise ProblemsFound(problems)
    return recipes


def gather_recipes(
    paths: Iterable[Path],
    root: Path,
    system: System = "metric",
    pictures: Sequence[Path] | None = None,
    larder: Larder | None = None,
    language: str = "en_GB",
    sound: Sequence[Head] = (),
) -> tuple[tuple[Recipe, ...], tuple[Recipe, ...], list[Problem]]:
    """Read many recipe files: those that are right, drafts of others, every problem of those.

    A picture may stand in any folder of `pictures`; None looks for none. `sound` are recipes read
    before, with which these may share nothing.
    """
    problems: list[Problem] = []
    recipes: list[Recipe] = []
    drafts: list[Recipe] = []
    heads: list[Head] = []
    for path in sorted(paths):
        name = short_name(path, root)
        try:
            recipes.append(load_recipe(path, name, system, larder, language))
        except ProblemsFound as found:
            problems.extend(found.problems)
            drafts.extend([found.draft] if isinstance(found.draft, Recipe) else [])
        head = read_head(path, name)
        heads.extend([head] if head else [])
    heads = sorted([*heads, *sound], key=lambda head: head.file)
    problems.extend(check_together(heads, pictures))
    in_order = tuple(sorted(recipes, key=lambda recipe: recipe.title.lower()))
    return in_order, tuple(drafts), problems


def check_together(heads: list[Head], pictures: Sequence[Path] | None) -> Iterable[Problem]:
    """Find what recipes share that may be one's alone, and pictures that are in no folder."""
    yield from _shared(heads)
    if pictures is not None:
        yield from _missing_pictures(heads, pictures)


def short_name(path: Path, root: Path) -> str:
    """Return how a file is called in messages: by its way from `root`, where it lies below it."""
    try:
        return path.absolute().relative_to(root.absolute()).as_posix()
    except ValueError:
        return str(path)


def read_head(path: Path, name: str) -> Head | None:
    """Return what a file must not share with others; None where its facts cannot be told apart."""
    try:
        return head_of(read_text(path, name), name, path.stem)
    except ProblemsFound:
        return None  # load_recipe has told these problems already


def head_of(text: str, name: str, slug: str) -> Head:
    """Return what the text of a file must not share with others; raises ProblemsFound."""
    _, located = read_front(text, name)
    data = located.data
    was = data.get("was") or ()
    return Head(
        file=name,
        slug=slug,
        title=str(data.get("title") or ""),
        was=tuple(str(old) for old in (was if isinstance(was, list) else [was]) if old),
        picture=str(data.get("picture") or ""),
        lines={key: located.lines[key] for key in _TOLD if key in located.lines},
    )


def _shared(heads: list[Head]) -> Iterable[Problem]:
    """Find titles and addresses that two recipes share."""
    titles: dict[str, Head] = {}
    addresses = {head.slug: head for head in heads}
    for head in heads:
        first = titles.setdefault(head.title.lower(), head) if head.title else head
        twice = first.slug.lower() == head.slug.lower()  # that a name is in capitals was told
        if first is not head and not twice:
            what = f'"{head.title}" is already the title of {first.file}.'
            yield Problem(head.file, head.line("title"), what, "Give one of them another title.")
        for old in head.was:
            taken = addresses.setdefault(old, head)
            if taken is not head:
                what = f'The earlier name "{old}" belongs to {taken.file}.'
                yield Problem(head.file, head.line("was"), what, 'Take it out of "was".')


def _missing_pictures(heads: list[Head], folders: Sequence[Path]) -> Iterable[Problem]:
    have = sorted({path.name for folder in folders if folder.is_dir() for path in folder.iterdir()})
    for head in heads:
        if head.picture and head.picture not in have:
            what = f'The picture "{head.picture}" is not in {folders[0].name}/.'
            near = nearest(head.picture, have)
            mend = f'Did you mean "{near}"?' if near else "Put it there, or take the line out."
            yield Problem(head.file, head.line("picture"), what, mend)
