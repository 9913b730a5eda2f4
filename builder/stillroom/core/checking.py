"""Everything that keeps a recipe from being published, told in one run.

What does not read (loading.py) and what cannot be published as safe (safety.py) are problems
alike: a cook mends both from one list.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from stillroom.core.book import Book, BookSettings
from stillroom.core.care.safety import check_safety
from stillroom.core.larder.shelves import Larder
from stillroom.core.reading.loading import Head, gather_recipes
from stillroom.core.reading.markup import check_markup
from stillroom.core.reading.picture_files import (
    check_frontispiece,
    check_household,
    check_pictures,
)
from stillroom.core.reading.recipes_folder import find_strays
from stillroom.core.recipe.model import Recipe
from stillroom.core.recipe.settings import place_of
from stillroom.core.size.oven_limits import check_ovens
from stillroom.core.size.scalable import scalable_of
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable


def check_book(book: Book, sound: Sequence[Head] = ()) -> tuple[Recipe, ...]:
    """Return every recipe of a book; raises ProblemsFound with all that is wrong in any.

    Those of `sound` were read and checked before and are not read again; what they share with
    others is looked at.
    """
    strays = tuple(find_strays(book.recipes_dir, book.settings.recipes))
    if strays and not book.recipe_files():
        raise ProblemsFound(strays)
    book.require_recipes()
    passed = {head.slug for head in sound}
    return _checked(
        book,
        [path for path in book.recipe_files() if path.stem not in passed],
        book.root,
        (book.pictures_dir,),
        (*strays, *check_frontispiece(book.pictures_dir), *_household(book)),
        sound,
    )


def _household(book: Book) -> Iterator[Problem]:
    """Find what is wrong with the pictures that the settings name for the printed book."""
    own = book.settings.family_book
    return check_household(
        own, book.pictures_dir, lambda way: place_of(way, book.places, book.config.name)
    )


def check_files(paths: Iterable[Path], book: Book, root: Path) -> tuple[Recipe, ...]:
    """Return the recipes of these files, wherever they lie; raises ProblemsFound.

    A picture may stand with the book's or beside its recipe, since the file may not have been
    put into the book yet.
    """
    named = list(paths)
    beside = [folder for path in named for folder in (path.parent / "pictures", path.parent)]
    return _checked(book, named, root, (book.pictures_dir, *beside))


def _checked(
    book: Book,
    paths: Sequence[Path],
    root: Path,
    pictures: tuple[Path, ...],
    strays: tuple[Problem, ...] = (),
    sound: Sequence[Head] = (),
) -> tuple[Recipe, ...]:
    wrong: tuple[Problem, ...] = ()
    try:
        larder = book.own_larder().larder
    except ProblemsFound as found:
        larder, wrong = Larder(language=book.settings.language), found.problems
    said = book.settings
    recipes, drafts, problems = gather_recipes(
        paths, root, said.units, pictures, larder, said.language, sound
    )
    problems.extend((*wrong, *strays))
    files = {path.stem: path for path in paths}
    for recipe in recipes:
        problems.extend(check_recipe(recipe, files[recipe.slug], book.settings, pictures))
    for draft in drafts:  # what else is wrong with it, in the same run
        problems.extend(find_unsafe(draft, book.settings))
        problems.extend(check_markup(draft, files[draft.slug]))
    if not problems and len(recipes) != len(set(paths)):
        what = f"{len(set(paths))} recipe files were found and {len(recipes)} were read."
        problems.append(Problem(book.settings.recipes, 0, what, "Nothing is published until then."))
    if problems:
        raise ProblemsFound(problems)
    return recipes


def check_recipe(
    recipe: Recipe, path: Path, settings: BookSettings, pictures: Sequence[Path]
) -> Iterator[Problem]:
    """Find what keeps a recipe that reads well from being published, whatever others there are."""
    yield from find_unsafe(recipe, settings)
    yield from check_markup(recipe, path)
    yield from check_pictures(recipe, pictures)


def find_unsafe(recipe: Recipe, settings: BookSettings) -> Iterable[Problem]:
    """Return what keeps a recipe from being published; one that fits no reckoning is told too."""
    try:
        scalable_of(recipe)
        return (*check_safety(recipe, settings), *check_ovens(recipe))
    except Unreadable as wrong:
        line = recipe.line_of("ingredients")
        return [Problem(recipe.file, line, wrong.what, wrong.mend)]
