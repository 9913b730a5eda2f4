"""The command that brings recipes in from elsewhere. A few lines of it."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Final

import click

from stillroom.bringing import DRAFTS, Brought, bring, write_brought
from stillroom.bringing.in_draft import became_of
from stillroom.bringing.line_by_line import LEFT_OUT, PARTS, say_left_out
from stillroom.bringing.papers import LARGEST
from stillroom.commands.terminal import book_around, fail, told_plainly
from stillroom.commands.typed_words import FOLDER, PAPER
from stillroom.core.words.plurals import counted
from stillroom.core.words.problems import Problem
from stillroom.saving.places import find_published
from stillroom.saving.whole import told

_MOST_LEFT: Final = 6
"""Lines left out that are named; all of them are to be had by "--lines"."""


@click.command("bring")
@click.argument("files", nargs=-1, required=True, type=PAPER)
@click.option(
    "--out",
    type=FOLDER,
    help="Where the drafts go; else the folder drafts beside mkdocs.yml.",
)
@click.option("--lines", is_flag=True, help="Show what each line of a paper became.")
@told_plainly
def bring_command(files: tuple[Path, ...], out: Path | None, lines: bool) -> None:
    """Make drafts of the recipes in FILES: texts, saved pages, letters, Word and OpenDocument."""
    book = book_around()
    larder = book.own_larder().larder
    folder = out or book.root / DRAFTS
    if out and (wrong := tuple(find_published(folder, book, "drafts"))):
        fail(wrong)
    problems: list[Problem] = []
    for path in files:
        if not path.is_file():
            what = "This is no file that can be read to its end."
            problems.append(Problem(str(path), 1, what, "Name another."))
            continue
        with told(path), path.open("rb") as file:
            data = file.read(LARGEST + 1)
        found = bring(path.name, data, book.settings, larder)
        problems += [Problem(str(path), one.line, one.what, one.mend) for one in found.problems]
        root = book.root if not out and book.config.is_file() else None
        _tell(found, write_brought(found, folder, root), every_line=lines)
    if problems:
        fail(tuple(problems))


def _tell(found: Brought, written: tuple[Path, ...], *, every_line: bool) -> None:
    for path, recipe in zip(written, found.recipes, strict=True):
        count = len(recipe.questions)
        asked = f"{count} question{'' if count == 1 else 's'}" if count else "nothing to ask"
        click.echo(f'Written: {path} ("{recipe.title}", {asked})')
        for one in recipe.questions:
            click.echo(f"{path}:{one.line}: {one.what} {one.mend}".rstrip(), file=sys.stdout)
        became = became_of(recipe)
        if every_line:
            width = max(map(len, PARTS.values()))
            for line in (one for one in became if one.words):
                click.echo(f"    {line.said:{width}} | {line.words}")
            if recipe.around:
                lines = counted(len(recipe.around), "line")
                said = f"… {lines} around it on its page: menus, comments, other recipes"
                click.echo(f"    {PARTS[LEFT_OUT]:{width}} | {said}")
        if left := say_left_out(became, _MOST_LEFT):
            click.echo(f"{path}: stands nowhere in it: {left}.")
