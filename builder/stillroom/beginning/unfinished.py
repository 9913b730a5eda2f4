"""Where the words of an example still stand: of a recipe that was begun, of a new book's pages.

Known by the very files they are written from (samples.yml, said/, pages/), so that an example may
be worded anew without telling this module. Nothing is wrong with such a book: it is only not yet
its keeper's own. Leaves out who is told: the command (check) and the desk.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache
from pathlib import Path
from typing import Final

from stillroom.beginning.book import FIRST, PAGES
from stillroom.beginning.recipe import HERE, example_lines, example_steps, slug_of
from stillroom.core.book import Book
from stillroom.core.words.problems import Problem
from stillroom.core.words.said import read_room
from stillroom.core.words.text_files import read_text

_SENTENCE: Final = re.compile(r"(?<=[.!?])\s+")
_ASKS_TO_BE_WRITTEN: Final = re.compile(r"\bwrite\b")
_MEND: Final = "Write your own words over them, or take them out: they will be read by everybody."


def find_unfinished(book: Book) -> Iterator[Problem]:
    """Yield each file of a book in which example words stand, with their lines."""
    yield from unfinished_recipes(book.recipe_files(), book.root)
    for name in ("index.md", "about.md"):
        path = book.docs_dir / name
        if path.is_file():
            yield from _told(path, book.root, _standing(_text(path, book.root), page_words(name)))


def unfinished_recipes(files: Iterable[Path], root: Path) -> Iterator[Problem]:
    """Yield each of these recipe files in which example words stand, with their lines."""
    for path in files:
        yield from _told(path, root, _of_recipe(path.stem, _text(path, root)))


@cache
def page_words(name: str) -> tuple[str, ...]:
    """Return the sentences of a new book's page that ask for others in their place.

    >>> page_words("about.md")[0].endswith("write it here in your own words.")
    True
    """
    paragraphs = (PAGES / name).read_text(encoding="utf-8").split("\n\n")
    return tuple(
        sentence
        for paragraph in paragraphs
        for sentence in _SENTENCE.split(" ".join(paragraph.split()))
        if _ASKS_TO_BE_WRITTEN.search(sentence)
    )


@cache
def _intros() -> tuple[str, ...]:
    """Return what stands above the method of a recipe that was begun, in each language."""
    rooms = (HERE / "said").glob("*.yml")
    return tuple(
        str(read_room("stillroom.beginning", path.stem)["notes"]["intro"]) for path in sorted(rooms)
    )


def _of_recipe(slug: str, text: str) -> list[tuple[int, str]]:
    """Return the example's words in a recipe; a step alone may be anybody's.

    All the steps of an example are it, and so are all the lines of its list, save where the example
    is the whole recipe: the first of a new book.
    """
    standing = _standing(text, _intros())
    if slug == slug_of(FIRST[0]):
        return standing
    for steps in example_steps():
        found = _standing(text, steps)
        standing += found if len(found) == len(steps) else []
    for lines in example_lines():
        found = _listed(text, lines)
        standing += found if len(found) == len(lines) else []
    return standing


def _listed(text: str, lines: Iterable[str]) -> list[tuple[int, str]]:
    """Return which of these lines of a list stand in a text whole, as they were written."""
    rows = {row.strip(): at for at, row in enumerate(text.split("\n"), 1)}
    return [(rows[f"- {line}"], line) for line in lines if f"- {line}" in rows]


def _standing(text: str, sentences: Iterable[str]) -> list[tuple[int, str]]:
    """Return which of the sentences stand in a text, however its lines are broken, by line."""
    found = []
    for sentence in sentences:
        words = r"\s+".join(map(re.escape, sentence.split()))
        if place := re.search(words, text):
            found.append((text.count("\n", 0, place.start()) + 1, sentence))
    return found


def _told(path: Path, root: Path, standing: list[tuple[int, str]]) -> Iterator[Problem]:
    if not standing:
        return
    (line, words), *more = sorted(standing)
    others = ", ".join(str(at) for at, _ in more)
    also = f" (and more of it: line {others})" if others else ""
    what = f'Words of the example still stand here: "{words}"{also}.'.replace('."', '"')
    yield Problem(_name(path, root), line, what, _MEND)


def _name(path: Path, root: Path) -> str:
    return str(path.relative_to(root)) if path.is_relative_to(root) else str(path)


def _text(path: Path, root: Path) -> str:
    return read_text(path, _name(path, root))
