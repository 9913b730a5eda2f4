"""What every `stillroom print` command shares: its options, where it writes, what it reads."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import wraps
from pathlib import Path
from typing import Any

import click

from stillroom.commands.terminal import book_around, book_here, guard_place, read_one, told_plainly
from stillroom.commands.typed_words import FILE, FOLDER
from stillroom.core.book import Book
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Unreadable
from stillroom.printing.typesetting import PaperMissing
from stillroom.saving.places import guard_earlier, is_own_print
from stillroom.saving.whole import told, write_whole

Command = Callable[..., None]

paper_option = click.option(
    "--paper", type=click.Choice(["a4", "letter"]), default="a4", help="A4 or US Letter."
)
out_option = click.option("--out", type=FILE, help="Write it here; else into the folder print.")
force_option = click.option("--force", is_flag=True, help="Write over a file that is there.")
fonts_option = click.option(
    "--fonts",
    type=FOLDER,
    help="A folder of your own fonts, for letters the book's faces have not.",
)


def plainly(command: Command) -> Command:
    """Say in words what cannot be printed: exit 1 without Typst, 2 for what was asked wrongly."""

    @told_plainly
    @wraps(command)
    def run(*args: Any, **kwargs: Any) -> None:
        try:
            command(*args, **kwargs)
        except PaperMissing as error:
            raise click.ClickException(str(error)) from None
        except Unreadable as error:
            raise click.UsageError(str(error)) from None

    return run


def write(made: bytes, out: Path | None, default: str, force: bool) -> None:
    """Write a file, never over another but an earlier print, and never into what is published."""
    path = out or Path("print") / default
    guard_place(path)
    with told(path):
        if path.exists() and not force and not is_own_print(path):
            raise click.UsageError(
                f'"{path}" is there already. Name another with --out, or --force.'
            )
        guard_earlier(path, (b"%PDF", b"PK"), "print")
    write_whole(path, made)
    click.echo(f"{path} ({len(made) / 1000:.0f} kB)")


def read_recipes(files: Sequence[Path]) -> tuple[Book, tuple[Recipe, ...]]:
    """Return the book around the files named and their recipes, or the whole book for none."""
    if not files:
        book = book_here()
        return book, book.load()
    book = book_around(files[0])
    return book, tuple(read_one(path)[0] for path in files)


def address(book: Book, recipe: Recipe) -> str:
    """Return the address of a recipe's page for its QR code, or "" for a book without a site."""
    site = book.settings.site_url.rstrip("/")
    return f"{site}/r/{recipe.slug}/" if site else ""
