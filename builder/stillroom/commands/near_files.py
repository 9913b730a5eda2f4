"""Which file was meant by a name that is none: by its title, without its ending or its folder.

Only looked for when a name was wrong. Leaves out opening what is found: nothing is taken for
another file that nobody named.
"""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator
from contextlib import suppress
from itertools import islice
from pathlib import Path
from typing import Final, Literal

from stillroom.commands.terminal import called
from stillroom.core.book import Book, find_book, open_book
from stillroom.core.reading.recipe_file import address_name, read_front
from stillroom.core.words.nearest import nearest
from stillroom.core.words.problems import ProblemsFound
from stillroom.core.words.text_files import read_text

_MOST_NAMED: Final = 6
_MOST_SOUGHT: Final = 200
_MOST_LYING: Final = 2_000


def name_near(said: str, sort: Literal["recipe", "list", "paper"]) -> str:
    """Return what to type in place of a name that is no file's."""
    if sort == "paper":
        return _near_paper(said)
    book = _book_near(Path(said))
    if book is None:
        return lead_to_book()
    files = _lists(book) if sort == "list" else _recipes(book)
    if not files:
        return _begin(sort)
    if exact := _meant(said, files):
        return f'Write "{_short(exact)}".'
    if near := _near(said, files):
        return f'Did you mean "{_short(near)}"?'
    if len(files) <= _MOST_NAMED:
        names = ", ".join(f'"{_short(path)}"' for path in files)
        return f"There are {names}." if len(files) > 1 else f"There is {names}."
    return f'Name one of those in "{_short(files[0].parent)}", such as "{_short(files[0])}".'


def lead_to_book() -> str:
    """Return how to come to a book from a folder that is in none."""
    there = [path.parent for path in islice(Path.cwd().glob("*/mkdocs.yml"), _MOST_SOUGHT)]
    if len(there) == 1:
        return f'Go to the book first: cd "{there[0].name}"'
    if there:
        names = ", ".join(f'"{path.name}"' for path in sorted(there)[:_MOST_NAMED])
        return f"Go to one of the books first: {names}."
    return f'Begin one with "{called()} start FOLDER", and go there; or go to the one you have.'


def _begin(sort: str) -> str:
    if sort == "list":
        return f"The book has no giving list yet: {called()} giving-list"
    return f'The book has no recipe yet: {called()} new "Plum gin"'


def _book_near(said: Path) -> Book | None:
    config = find_book(Path.cwd())
    if config is None and said.parent.is_dir():
        config = find_book(said.parent.resolve())
    if config is None:
        return None
    try:
        return open_book(config)
    except ProblemsFound:  # told by whatever opens it
        return None


def _recipes(book: Book) -> list[Path]:
    return [*book.recipe_files(), *sorted((book.root / "drafts").glob("*.md"))]


def _lists(book: Book) -> list[Path]:
    from stillroom.giving.finding import giving_lists  # slow to load, and needed here alone

    return list(giving_lists(book))


def _known(files: Iterable[Path]) -> dict[str, Path]:
    """Return files by each name that somebody may call them by."""
    known: dict[str, Path] = {}
    for path, title in _named(files):
        for name in (path.stem, path.name, address_name(title)):
            known.setdefault(name, path)
    return known


def _meant(said: str, files: Iterable[Path]) -> Path | None:
    """Return the file that bears the name or the title that was said."""
    known, name = _known(files), Path(said).name
    tried = (name, Path(name).stem, address_name(name), address_name(Path(name).stem))
    return next((known[one] for one in tried if one and one in known), None)


def _near(said: str, files: Iterable[Path]) -> Path | None:
    """Return the file whose name or title is nearly what was said."""
    known, stem = _known(files), Path(said).stem
    near = nearest(address_name(stem) or stem, known, 0.7)
    return known[near] if near else None


def _named(files: Iterable[Path]) -> Iterator[tuple[Path, str]]:
    for path in islice(files, _MOST_SOUGHT):
        title = ""
        if path.suffix == ".md":
            with suppress(ProblemsFound):  # told by whatever reads the recipe
                title = str(read_front(read_text(path, path.name), path.name)[1].data.get("title"))
        yield path, title


def _near_paper(said: str) -> str:
    folder, name = Path(said).parent, Path(said).name
    there = (
        [path for path in islice(folder.iterdir(), 2_000) if path.is_file()]
        if folder.is_dir()
        else []
    )
    near = nearest(name, [path.name for path in there], 0.7)
    if near:
        return f'Did you mean "{folder / near}"?'
    return "Drag it from its folder into this window, and its whole name stands here."


def _short(path: Path) -> str:
    return Path(os.path.relpath(path)).as_posix()
