"""Everything that keeps a recipe from being published, told in one run.

What does not read (loading.py) and what cannot be published as safe (safety.py) are problems
alike: a cook mends both from one list.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from stillroom.core.book import Book
from stillroom.core.loading import gather_recipes
from stillroom.core.problems import Problem, ProblemsFound
from stillroom.core.recipe import Recipe
from stillroom.core.safety import check_safety


def check_book(book: Book) -> tuple[Recipe, ...]:
    """Return every recipe of a book; raises ProblemsFound with all that is wrong in any."""
    book.require_recipes()
    return _checked(book, book.recipe_files(), book.root, (book.pictures_dir,))


def check_files(paths: Iterable[Path], book: Book, root: Path) -> tuple[Recipe, ...]:
    """Return the recipes of these files, wherever they lie; raises ProblemsFound.

    A picture may stand with the book's or beside its recipe, since the file may not have been
    put into the book yet.
    """
    named = list(paths)
    beside = [folder for path in named for folder in (path.parent / "pictures", path.parent)]
    return _checked(book, named, root, (book.pictures_dir, *beside))


def _checked(
    book: Book, paths: Iterable[Path], root: Path, pictures: tuple[Path, ...]
) -> tuple[Recipe, ...]:
    recipes, problems = gather_recipes(paths, root, book.settings.units, pictures)
    unsafe: list[Problem] = [
        problem for recipe in recipes for problem in check_safety(recipe, book.settings)
    ]
    if problems or unsafe:
        raise ProblemsFound([*problems, *unsafe])
    return recipes
