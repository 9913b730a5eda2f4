"""The command that asks for a first giving list and writes it. Nothing is ever written over."""

from __future__ import annotations

import sys
from datetime import date
from pathlib import Path

import click

from stillroom.beginning.book import LIST
from stillroom.beginning.recipe import slug_of
from stillroom.commands.terminal import as_called, book_here, called, recipes_of, told_plainly
from stillroom.commands.typed_words import FILE
from stillroom.core.book import Book, BookSettings
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.giving.guard import guard_file
from stillroom.giving.starter.answers import ListAnswers
from stillroom.giving.starter.asking import ask_for_list, usual_day
from stillroom.giving.starter.writing import write_first_list
from stillroom.saving.whole import write_whole


@click.command("giving-list")
@click.option("--out", type=FILE, help="Write it here; else into the folder giving.")
@told_plainly
def giving_list_command(out: Path | None) -> None:
    """Ask who is given something, and write a whole giving list for this book."""
    book = book_here()
    recipes = recipes_of(book)
    if not recipes:
        mend = f'Write one first: {called()} new "Plum gin"'
        raise ProblemsFound([Problem(str(book.root), 0, "The book has no recipe yet.", mend)])
    path = out or _free_place(book)
    if path.exists() or path.is_symlink():
        raise ProblemsFound([Problem(str(path), 1, "This file is there already.", "Name another.")])
    guard_file(path, book)
    settings = book.settings
    is_empty = not sys.stdin.isatty()
    if is_empty:
        day, title = usual_day(settings, date.today())
        text = write_first_list(ListAnswers(title, day), recipes, settings, date.today(), path.name)
    else:
        text = ask_here(recipes, settings, path.name)
    write_whole(path, as_called(text).encode())
    click.echo(f"Written: {path}")
    if is_empty:
        click.echo("Nobody was there to be asked, so nobody stands in it yet.")
        click.echo('Write your own people below "households:", as it shows there.')
    click.echo(f'Look it over, and then: {called()} pack "{path}"')


def _free_place(book: Book) -> Path:
    """Return where a new list goes: a name that no list has yet."""
    folder = book.root / "giving"
    _, title = usual_day(book.settings, date.today())
    names = (LIST, f"{slug_of(title)}.yml")
    return next((folder / one for one in names if not (folder / one).exists()), folder / names[-1])


def ask_here(
    recipes: tuple[Recipe, ...], settings: BookSettings, name: str, keeper: str = ""
) -> str:
    """Ask at the terminal, and return the text of the list; Ctrl-C leaves nothing written."""

    def ask(question: str, usual: str) -> str:
        return str(click.prompt(question, default=usual, show_default=bool(usual)))

    today = date.today()
    answers = ask_for_list(ask, click.echo, recipes, settings, today, keeper)
    return write_first_list(answers, recipes, settings, today, name)
