"""`stillroom check` and `stillroom schema`: whether recipes are right, and what one may state.

Exit 0 when all is well, 1 when the book has problems, 2 for wrong usage.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import NoReturn

import click

from stillroom.beginning.unanswered import find_unanswered
from stillroom.beginning.unfinished import find_unfinished, unfinished_recipes
from stillroom.commands.terminal import (
    book_around,
    config_here,
    fail,
    told_plainly,
    write_schema,
)
from stillroom.commands.typed_words import FILE, RECIPE
from stillroom.core.book import Book, open_book, open_what_fits
from stillroom.core.care.claims import ask_of_claims
from stillroom.core.checking import check_book, check_files
from stillroom.core.method.keeping_said import ask_of_keeping
from stillroom.core.reading.editor_schema import front_matter_schema
from stillroom.core.recipe.kind_dates import warn_of_dates
from stillroom.core.recipe.model import Recipe
from stillroom.core.recipe.private_words import warn_of_contacts
from stillroom.core.size.absurd import ask_of_size
from stillroom.core.unknown_foods import unknown_foods
from stillroom.core.words.problems import Problem, ProblemsFound


@click.command()
@click.argument("files", nargs=-1, type=RECIPE)
@told_plainly
def check(files: tuple[Path, ...]) -> None:
    """Read the whole book, or the FILES named, and list every problem."""
    lists = tuple(path for path in files if path.suffix.lower() in (".yml", ".yaml"))
    if lists:
        _check_lists(lists, book_around(lists[0]))
        files = tuple(path for path in files if path not in lists)
        if not files:
            return
    if files:
        book = book_around(files[0])
        recipes = check_files(files, book, Path.cwd())
        unfinished = tuple(unfinished_recipes(files, Path.cwd()))
        unanswered = tuple(find_unanswered(files, Path.cwd(), _waiting(book)))
    else:
        config = config_here()
        recipes, book = _check_whole(config), open_book(config)
        unfinished = tuple(find_unfinished(book))
        unanswered = tuple(find_unanswered(book.recipe_files(), book.root, _waiting(book)))
    for food in unknown_foods(recipes):
        click.echo(f"note: {food.say()}", err=True)
    for recipe in recipes:
        for asked in (*ask_of_keeping(recipe), *ask_of_size(recipe), *ask_of_claims(recipe)):
            click.echo(f"note: {asked}", err=True)
    for standing in (*unfinished, *unanswered):
        click.echo(f"warning: {standing}", err=True)
    warnings = [
        warning
        for recipe in recipes
        for warning in (*warn_of_dates(recipe), *warn_of_contacts(recipe))
    ]
    for warning in warnings:
        click.echo(f"warning: {warning}", err=True)
    count = len(recipes)
    read = f"{count} recipe{'' if count == 1 else 's'} read, no problems"
    some = f"{len(warnings)} warning{'' if len(warnings) == 1 else 's'}"
    click.echo(f"{read}, {some}: a strict build stops there." if warnings else f"{read}.")
    if unfinished:
        click.echo("Words of an example still stand, and would be published: they are named above.")


def _waiting(book: Book) -> Callable[[str], int]:
    """Return what counts the questions of a file that wait for an answer."""

    def count(raw: str) -> int:
        from stillroom.bringing.still_asked import asked_by_boxes, still_asked  # slow to load

        return still_asked(raw, asked_by_boxes(raw, book.settings, book.own_larder().larder))

    return count


def _check_whole(config: Path) -> tuple[Recipe, ...]:
    """Read a whole book; what would keep MkDocs from building it is a problem like any other."""
    # slow to load, and needed here alone
    from stillroom.publish.agreeing import find_refused, find_unfit_pages
    from stillroom.publish.remembering import find_private_in
    from stillroom.publish.site_folder import find_taken

    book, wrong = open_what_fits(config)
    if book is None:
        fail(wrong, "The recipes are read once this is mended: check again then.")
    refused = (*wrong, *(() if wrong else find_refused(book)), *find_unfit_pages(book))
    refused = (*refused, *find_taken(book))
    try:
        recipes = check_book(book)
    except ProblemsFound as found:
        _fail_in(book, (*refused, *found.problems))
    if refused:
        _fail_in(book, refused)
    _check_giving(book, recipes)
    if private := find_private_in(book):
        raise ProblemsFound(private)
    return recipes


def _fail_in(book: Book, problems: tuple[Problem, ...]) -> NoReturn:
    """Tell what is wrong in a book, and in its giving lists what needs no recipe."""
    from stillroom.giving.finding import giving_lists  # not every book has a list

    if not (lists := giving_lists(book)):
        fail(problems)
    from stillroom.commands.lists_alone import fail_with_lists

    fail_with_lists(problems, lists, book)


def _check_giving(book: Book, recipes: tuple[Recipe, ...]) -> None:
    """Read the giving lists of a book, and their logs; raises ProblemsFound."""
    from stillroom.giving.checking import find_giving_problems  # not every book has a list
    from stillroom.giving.finding import giving_lists, no_lists

    for path in no_lists(book):
        what = 'This is not read as a giving list. Begin one with "giving list: Christmas 2027".'
        click.echo(f"note: {path}:1: {what}", err=True)
    if lists := giving_lists(book):
        _tell_lists(lists, tuple(find_giving_problems(lists, book, _by_slug(recipes))))


def _check_lists(files: tuple[Path, ...], book: Book) -> None:
    """Read the giving lists named, or those beside a log that is named."""
    from stillroom.commands.lists_alone import recipes_for
    from stillroom.giving.checking import find_giving_problems, lists_named

    lists = lists_named(files)
    recipes = recipes_for(book, lists)
    _tell_lists(lists, tuple(find_giving_problems(lists, book, _by_slug(recipes))))


def _by_slug(recipes: tuple[Recipe, ...]) -> dict[str, Recipe]:
    """Return recipes by the names of their files."""
    return {recipe.slug: recipe for recipe in recipes}


def _tell_lists(lists: list[Path], problems: tuple[Problem, ...]) -> None:
    from stillroom.commands.lists_alone import tell_of_git
    from stillroom.giving.checking import only_begun

    tell_of_git(lists)
    begun = only_begun(problems)
    for one in begun:
        click.echo(f"note: {one}", err=True)
    if wrong := [one for one in problems if one not in begun]:
        raise ProblemsFound(wrong)
    count = len(lists)
    click.echo(f"{count} giving list{'' if count == 1 else 's'} read with the log, no problems.")


@click.command()
@click.option("--out", type=FILE, help="Write it here.")
@told_plainly
def schema(out: Path | None) -> None:
    """Print what a recipe may state, in the form that text editors read (JSON Schema)."""
    write_schema(front_matter_schema(), out)
