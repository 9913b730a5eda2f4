"""The commands that begin something: a book, a recipe. Every command in a few lines."""

from __future__ import annotations

import re
import sys
from pathlib import Path
from typing import Final

import click

from stillroom.beginning.book import (
    LIST,
    Answers,
    begin_book,
    book_files,
    first_recipe,
    name_of_day,
    settings_of,
)
from stillroom.beginning.recipe import example_of, write_recipe
from stillroom.bringing.naming import kind_of_title
from stillroom.commands.first_list import ask_here
from stillroom.commands.terminal import as_called, book_here, called, told_plainly
from stillroom.commands.typed_words import FOLDER
from stillroom.core.recipe.kinds import find_kind
from stillroom.core.words.problems import Unreadable
from stillroom.saving.whole import write_whole

_WHETHER: Final = "Shall it be written down now who is given something?"
_LEFT: Final = """
The book is written, and whole. What you answered about who is given something is not:
{path} names nobody yet."""


@click.command()
@click.argument("folder", type=FOLDER)
@click.option("--name", metavar="NAME", help="What the book is called.")
@click.option("--country", metavar="COUNTRY", help='Its country: "GB", or "Ireland".')
@click.option("--keeper", metavar="NAME", help="Whose book it is; it stands below every page.")
@click.option("--give", metavar="DAY", help='When you give: "24 December", "Easter Sunday".')
@click.option("--give-name", metavar="NAME", help='What that day is called: "Christmas".')
@click.option("--language", metavar="LANGUAGE", help='How dates are written: "en_GB".')
@click.option("--units", type=click.Choice(["metric", "us", "imperial"]), help="How cups are read.")
@click.option("--altitude", metavar="METRES", help="How high above the sea the stove stands.")
@told_plainly
def start(folder: Path, **said: str | None) -> None:
    """Begin a book in FOLDER: settings, pages and a first recipe, which build at once."""
    answers = _answers(folder, {name: value for name, value in said.items() if value is not None})
    usual = as_called(book_files(answers)[f"giving/{LIST}"])
    for path in begin_book(folder, answers, usual):
        click.echo(f"Written: {path}")
    _ask_for_list(folder, answers)
    click.echo("Begin a recipe of your own with these lines:")
    click.echo(f'  cd "{folder}"')
    click.echo(f'  {called()} new "Plum gin"')
    click.echo(f"Who is given what stands in giving/{LIST}: write your own people there, and then")
    click.echo(f"  {called()} pack giving/{LIST}")
    click.echo("Look at the book, built anew as you save, with this one:")
    click.echo(f"  {called()} serve")


def _ask_for_list(folder: Path, answers: Answers) -> None:
    """Write the giving list as it is answered; answered in part, it names nobody yet."""
    if not sys.stdin.isatty():
        return
    settings, path = settings_of(answers), folder / "giving" / LIST
    keeper = " ".join(answers.keeper.split())
    try:
        if not click.confirm(_WHETHER, default=True):
            return
        text = as_called(ask_here((first_recipe(settings),), settings, LIST, keeper))
    except (click.Abort, KeyboardInterrupt):
        click.echo(_LEFT.format(path=path))
        return
    write_whole(path, text.encode())
    click.echo(f"Written with what you answered: {path}")


def _answers(folder: Path, said: dict[str, str]) -> Answers:
    """Return what was said; where somebody sits at the terminal, the four answers are asked for."""
    named = folder.resolve().name.replace("-", " ").replace("_", " ").strip().capitalize()
    first = Answers(title=named or "A stillroom book")
    asked = (
        ("name", "What is the book called?", first.title),
        ("country", "Which country are you in?", first.country),
        ("keeper", "Whose book is it?", ""),
        ("give", "When do you give?", first.giving_day),
    )
    if sys.stdin.isatty():
        for name, question, usual in asked:
            if name not in said:
                said[name] = click.prompt(question, default=usual, show_default=bool(usual))
    day = said.get("give", first.giving_day)
    return Answers(
        title=said.get("name", first.title),
        country=said.get("country", first.country),
        keeper=said.get("keeper", ""),
        giving_name=said.get("give_name") or name_of_day(day),
        giving_day=day,
        language=said.get("language", ""),
        units=said.get("units", ""),
        altitude_m=said.get("altitude", 0),
    )


def _said(ctx: click.Context, param: click.Parameter, title: str) -> str:
    """Return a title; an empty one is as good as none."""
    if not title.strip():
        raise click.MissingParameter(ctx=ctx, param=param)
    return title


@click.command("new")
@click.argument("title", callback=_said)
@click.option(
    "--kind", metavar="KIND", help='What it is: "jam", "liqueur", "soap"; else as the title says.'
)
@told_plainly
def new_command(title: str, kind: str | None) -> None:
    """Begin a recipe called TITLE: a whole file, with notes, to write over."""
    book = book_here()
    chosen = kind or _kind_said(title)
    try:
        path = write_recipe(book, title, chosen)
    except Unreadable as wrong:
        raise click.UsageError(f"{wrong.what} {_as_option(wrong.mend)}".rstrip()) from None
    kind_of = find_kind(chosen)
    is_named = kind_of.spoken == kind_of.name
    named = kind_of.name if is_named else f"{kind_of.spoken}, one of the {kind_of.many}"
    click.echo(f"Written: {path} (kind: {named})")
    click.echo(f"Its ingredients and its steps are an example, {example_of(chosen)}, and not your")
    click.echo(f'recipe. Write your own over them, then: {called()} check "{path}"')


def _kind_said(title: str) -> str:
    """Return the kind that a title says; raises UsageError with what to type where it says none."""
    guess = kind_of_title(title)
    if guess.word:
        return guess.word
    raise click.UsageError(f"{guess.what} {_as_option(guess.mend)}".rstrip())


def _as_option(mend: str) -> str:
    """Return what to write in a file as it is typed here.

    >>> _as_option('Write "kind: dry mix" if it is.')
    'Type --kind "dry mix" if it is.'
    """
    typed = re.sub(r'"kind: ([^"]+)"', r'--kind "\1"', mend).replace('"kind:"', "--kind")
    return re.sub(r"^Write (?=--kind)", "Type ", typed)
