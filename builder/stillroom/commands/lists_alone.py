"""What is told of a giving list while a recipe of its book is wrong: all that needs no recipe."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Final, NoReturn

from stillroom.commands.terminal import fail, recipes_of
from stillroom.core.book import Book
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.giving.checking import find_own_problems

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
    fail((*problems, *find_own_problems(lists, book)), _THEN if lists else "")
