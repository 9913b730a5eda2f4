"""What every command shares: opening the book, reading a day, telling problems plainly.

Exit 0 when all is well, 1 when the book has problems, 2 for wrong usage.
"""

from __future__ import annotations

import io
import sys
from collections.abc import Callable
from datetime import date
from functools import wraps
from pathlib import Path
from typing import Any, NoReturn

import click

from stillroom.core.book import Book, BookSettings, find_book, open_book, place_book
from stillroom.core.giving_days import find_day
from stillroom.core.loading import load_recipe
from stillroom.core.problems import Problem, ProblemsFound
from stillroom.core.recipe import Recipe


def write_utf8() -> None:
    """Write UTF-8 wherever the output goes.

    On Windows a file or pipe is else written in the system's own page, which has no "⅛" and no
    "−": the command would end in a traceback, or an amount be lost.
    """
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper) and stream.encoding.lower() != "utf-8":
            stream.reconfigure(encoding="utf-8")


def fail(problems: tuple[Problem, ...]) -> NoReturn:
    """Print every problem to stderr with a count and leave with 1."""
    for problem in problems:
        click.echo(str(problem), err=True)
    count = len(problems)
    click.echo(f"{count} problem{'' if count == 1 else 's'} found.", err=True)
    sys.exit(1)


def told_plainly(command: Callable[..., None]) -> Callable[..., None]:
    """Turn problems raised anywhere below into plain lines; never a traceback."""

    @wraps(command)
    def run(*args: Any, **kwargs: Any) -> None:
        try:
            command(*args, **kwargs)
        except ProblemsFound as found:
            fail(found.problems)

    return run


def book_around(path: Path | None = None) -> Book:
    """Open the book that a file lies in, or the one of this folder, or a book of defaults."""
    config = find_book(path.parent if path else Path.cwd()) or find_book(Path.cwd())
    if config:
        return open_book(config)
    return place_book(Path.cwd(), BookSettings(), "docs", "site")


def read_one(path: Path) -> tuple[Recipe, Book]:
    """Read one recipe with the settings of the book it lies in."""
    book = book_around(path)
    return load_recipe(path, str(path), book.settings.units), book


recipe_file = click.Path(exists=True, dir_okay=False, path_type=Path)


def read_day(text: str | None, option: str, after: date, book: Book) -> date | None:
    """Read a date or a rule such as "the Saturday before Christmas"; wrong usage otherwise."""
    try:
        return find_day(text, after, book.settings.country) if text else None
    except ValueError as error:
        raise click.BadParameter(str(error), param_hint=f'"{option}"') from None
