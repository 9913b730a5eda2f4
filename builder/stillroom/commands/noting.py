"""`stillroom note`: what happened, as one line in the log beside the giving list.

Exit 0 when it is written, 2 for what cannot be noted so; nothing is written then.
"""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any

import click

from stillroom.commands.terminal import book_around, book_here, read_day, recipes_of, told_plainly
from stillroom.commands.typed_words import FOLDER, LIST
from stillroom.core.words.problems import Unreadable
from stillroom.giving.checking import read_list
from stillroom.giving.guard import guard_file, usual_folder, warn_of_git
from stillroom.giving.log_file import log_beside, plain_value
from stillroom.giving.noting import list_to_note_in, note, read_noted_day, say_noted
from stillroom.giving.plan_file import read_plan

_PLAIN = ("number", "batches", "basket", "amount", "paid")


@click.command("note")
@click.argument("what")
@click.argument("name", nargs=-1, required=True)
@click.option(
    "--list",
    "giving_list",
    type=LIST,
    help="The giving list it is of; else the book's only one.",
)
@click.option("--day", default="today", metavar="DAY", help='"today", "yesterday", "3 June 2027".')
@click.option("--number", metavar="N", help="How many were filled, used or spoiled.")
@click.option("--batches", metavar="N", help="How many times the recipe was begun.")
@click.option("--in", "container", metavar="CONTAINER", help='In what: "bottle, 100 ml".')
@click.option("--began", metavar="DAY", help="When the batch was begun, where two are going.")
@click.option("--amount", metavar="AMOUNT", help='How much was bought: "5 kg", or "12".')
@click.option("--paid", metavar="MONEY", help="What was paid for it.")
@click.option("--of", multiple=True, metavar="RECIPE", help="Of which recipe, or what was in it.")
@click.option("--basket", metavar="N", help="Which basket, of a household with several.")
@click.option("--words", metavar="WORDS", help="Whatever else there is to say.")
@click.option("--pack", "pack_folder", type=FOLDER, help="The pack that went out; else private/.")
@click.option("--today", metavar="DATE", help="Note as if today were this day.")
@told_plainly
def note_command(
    what: str,
    name: tuple[str, ...],
    giving_list: Path | None,
    day: str,
    pack_folder: Path | None,
    today: str | None,
    **said: Any,
) -> None:
    """Note WHAT happened to NAME: begun, bottled, failed, bought, given, thanked and more."""
    book = book_around(giving_list.resolve()) if giving_list else book_here()
    now = read_day(today, "--today", date.today(), book) or date.today()
    try:
        path = (giving_list or list_to_note_in(book)).resolve()
        read = read_list(path, book)
        row = {"kind": what, "name": " ".join(name)}
        row["day"] = read_noted_day(day, now, book.settings.country)  # type: ignore[assignment]
        row |= _said(said)
        kept = read_plan(pack_folder or usual_folder(book), read.giving.giving_list)
        if not log_beside(path).exists():
            guard_file(log_beside(path), book)
        before = kept.gifts if kept else None
        recipes = {one.slug: one for one in recipes_of(book)}
        noted = note(path, read, recipes, row, before, book.settings.country)
    except Unreadable as wrong:
        raise click.UsageError(f"{wrong.what} {wrong.mend}".strip()) from None
    for warning in warn_of_git(noted.path):
        click.echo(f"warning: {warning}", err=True)
    click.echo(say_noted(noted, recipes))
    click.echo(f"Written: {noted.path}")


def _said(said: dict[str, Any]) -> dict[str, Any]:
    """Return what was said of it, as the log writes it."""
    found = {key: list(value) if key == "of" else value for key, value in said.items() if value}
    return {key: plain_value(v) if key in _PLAIN else v for key, v in found.items()}
