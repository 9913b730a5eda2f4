"""`stillroom print ...`: paper through Typst. The commands are in print_cards and print_book."""

from __future__ import annotations

import click

from stillroom.commands.print_book import cover, epub, family_book, sheet, year
from stillroom.commands.print_cards import cards, cuts, tags, test_sheet
from stillroom.commands.refusals import PlainGroup


@click.group("print", cls=PlainGroup)
def print_group() -> None:
    """Print cards, tags, sheets, the year or the whole book to PDF."""


for command in (cards, tags, sheet, year, family_book, cover, epub, cuts, test_sheet):
    print_group.add_command(command)
