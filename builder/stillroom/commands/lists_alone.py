"""What is told of a giving list without its recipes: its own faults, and that git keeps it."""

from __future__ import annotations

import os
from collections.abc import Sequence
from pathlib import Path
from typing import Final, NoReturn

import click

from stillroom.commands.terminal import fail, recipes_of
from stillroom.core.book import Book
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.giving.checking import find_own_problems
from stillroom.giving.guard import warn_of_git
from stillroom.giving.log_file import log_beside

_THEN: Final = (
    "What the giving list says of recipes could not be looked at because of this: "
    "mend the recipes, and check again."
)


def recipes_for(book: Book, lists: Sequence[Path]) -> tuple[Recipe, ...]:
    """Return the recipes of a book; where one is wrong, its lists' own faults are told as well."""
    try:
        return recipes_of(book)
    except ProblemsFound as found:
        fail_with_lists(found.problems, lists, book)


def fail_with_lists(problems: Sequence[Problem], lists: Sequence[Path], book: Book) -> NoReturn:
    """Tell what is wrong in a book and, as far as it needs no recipe, in its giving lists."""
    tell_of_git(lists)
    fail((*problems, *find_own_problems(lists, book)), _THEN if lists else "")


def tell_of_git(lists: Sequence[Path]) -> None:
    """Warn of each giving list, and of each log beside one, that git keeps."""
    logs = dict.fromkeys(log_beside(path) for path in lists)
    for path in (*lists, *logs):
        there = Path(os.path.relpath(path)) if path.is_relative_to(Path.cwd()) else path
        for warning in warn_of_git(there):
            click.echo(f"warning: {warning}", err=True)
