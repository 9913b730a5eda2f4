"""What every command shares: opening the book, reading a day, telling problems plainly.

Exit 0 when all is well, 1 when the book has problems, 2 for wrong usage.
"""

from __future__ import annotations

import json
import os
import re
import shutil
import sys
from collections.abc import Callable, Mapping
from datetime import date
from functools import wraps
from pathlib import Path
from typing import Any, NoReturn

import click

from stillroom.core.book import Book, BookSettings, find_book, open_book, place_book
from stillroom.core.reading.loading import load_recipe, load_recipes
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.days_spoken import own_rule
from stillroom.core.when.giving_days import find_day
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.saving.places import guard_earlier, guard_out
from stillroom.saving.whole import explain, told, write_whole

_WITH_YEAR = re.compile(r"[^\d-] *\d{4} *$")
"""The end of "16 December 2028": a day of one year, and none that comes round."""


def fail(problems: tuple[Problem, ...], then: str = "") -> NoReturn:
    """Print every problem to stderr with a count and what to do `then`; leave with 1."""
    for problem in problems:
        click.echo(str(problem), err=True)
    count = len(problems)
    click.echo(f"{count} problem{'' if count == 1 else 's'} found. {then}".rstrip(), err=True)
    sys.exit(1)


def told_plainly(command: Callable[..., None]) -> Callable[..., None]:
    """Turn problems raised anywhere below into plain lines; never a traceback."""

    @wraps(command)
    def run(*args: Any, **kwargs: Any) -> None:
        try:
            command(*args, **kwargs)
        except ProblemsFound as found:
            fail(found.problems)
        except OSError as error:
            fail((explain(error, str(error.filename or "stillroom")),))

    return run


def called() -> str:
    """Return how this tool is called here, to stand in a line that is to be copied.

    By its name where that finds it, else by the whole path it was run by: such a line is often
    used from another folder.
    """
    run = Path(sys.argv[0])
    if run.name == "__main__.py":
        return f"{python()} -m stillroom"
    on_path = shutil.which("stillroom")
    if not run.name.startswith("stillroom") or (on_path and _is_same(on_path, run)):
        return "stillroom"
    return _in_a_line(run)


def python() -> str:
    """Return how the Python that runs this is called, to stand in a line that is to be copied."""
    on_path = shutil.which("python")
    here = Path(sys.executable)
    return "python" if on_path and _is_same(on_path, here) else _in_a_line(here)


def as_called(text: str) -> str:
    """Return a text for a file with its first command as the tool is called here."""
    return text.replace("  stillroom pack ", f"  {called()} pack ", 1)


def _is_same(one: str, other: Path) -> bool:
    # by the place alone: a link to the same Python from another folder finds other packages
    return os.path.normcase(os.path.abspath(one)) == os.path.normcase(os.path.abspath(other))


def _in_a_line(path: Path) -> str:
    whole = os.path.abspath(path)
    return f'"{whole}"' if " " in whole else whole


def config_here() -> Path:
    """Return the mkdocs.yml of this folder's book; raises UsageError where there is none."""
    config = find_book(Path.cwd())
    if config is None:
        from stillroom.commands.near_files import lead_to_book  # only for whoever is lost

        raise click.UsageError(f"There is no book here. {lead_to_book()}")
    return config


def book_here() -> Book:
    """Open the book of this folder; raises UsageError where there is none."""
    return open_book(config_here())


def book_around(path: Path | None = None) -> Book:
    """Open the book that a file lies in, or the one of this folder, or a book of defaults."""
    config = find_book(path.parent if path else Path.cwd()) or find_book(Path.cwd())
    if config:
        return open_book(config)
    return place_book(Path.cwd(), BookSettings(), "docs", "site")


def read_one(path: Path) -> tuple[Recipe, Book]:
    """Read one recipe with the settings of the book it lies in."""
    book = book_around(path)
    said = book.settings
    larder = book.own_larder().larder
    return load_recipe(path, str(path), said.units, larder, said.language), book


def recipes_of(book: Book) -> tuple[Recipe, ...]:
    """Read every recipe of a book; a picture that is not there keeps nobody from planning."""
    said, own = book.settings, book.own_larder()
    return load_recipes(
        book.recipe_files(), book.root, said.units, larder=own.larder, language=said.language
    )


def guard_place(out: Path) -> None:
    """Raise ProblemsFound when a file would be written into what a book publishes.

    Asked of the book that the place lies in and of the one the command is given in.
    """
    folder = next((above for above in out.absolute().parents if above.is_dir()), Path.cwd())
    for config in {find_book(folder), find_book(Path.cwd())} - {None}:
        assert config is not None
        try:
            book = open_book(config)
        except ProblemsFound:  # its own folders are not known: those that books usually have
            book = place_book(config.parent, BookSettings(), "docs", "site")
        guard_out(out, book)


def write_schema(schema: Mapping[str, Any], out: Path | None) -> None:
    """Print a JSON Schema, or write it where nothing but an earlier one lies."""
    text = json.dumps(schema, indent=2, ensure_ascii=False) + "\n"
    if out is None:
        click.echo(text, nl=False)
        return
    guard_place(out)
    with told(out):
        guard_earlier(out, (b"{",), "schema")
    write_whole(out, text.encode())


def write_calendar(made: bytes, out: Path) -> None:
    """Write a calendar where nothing but an earlier one lies."""
    guard_place(out)
    with told(out):
        guard_earlier(out, (b"BEGIN:VCALENDAR",), "calendar")
    write_whole(out, made)
    click.echo(f"Written: {out}", err=True)


def read_day(text: str | None, option: str, after: date, book: Book) -> date | None:
    """Read a date, or a rule for one such as "the Saturday before Christmas".

    Behind --give the book's own giving day of a name goes before any other. Wrong usage otherwise.
    """
    if not text:
        return None
    country, own = book.settings.country, book.settings.own_days
    try:
        if option == "--give":
            text = own_rule(text, own)
        if _WITH_YEAR.search(text):
            from stillroom.giving.written import read_day as read_written  # slow to load: languages
            from stillroom.giving.written import with_own_day

            said = with_own_day({option: text}, own if option == "--give" else (), country, option)
            return read_written(said[option], country)
        return find_day(text, after, country)
    except ValueError as error:
        raise click.BadParameter(str(error), param_hint=f'"{option}"') from None
