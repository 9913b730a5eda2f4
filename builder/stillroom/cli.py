"""The command: arguments, what is printed, exit codes. Every command in a few lines.

Exit 0 when all is well, 1 when the book has problems, 2 for wrong usage.
"""

from __future__ import annotations

import json
from datetime import date
from importlib import import_module
from pathlib import Path
from typing import Final
from urllib.parse import urlencode

import click

from stillroom.commands.terminal import (
    book_around,
    fail,
    read_day,
    read_one,
    recipe_file,
    told_plainly,
    write_calendar,
    write_schema,
    write_utf8,
)
from stillroom.core.amounts.units import System
from stillroom.core.book import Book, find_book, open_what_fits
from stillroom.core.checking import check_book, check_files
from stillroom.core.reading.editor_schema import front_matter_schema
from stillroom.core.recipe.kind_dates import dates_of_kind, warn_of_dates
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scale_words import scaling_document, scaling_table
from stillroom.core.size.scaling import By, Measures, scale_recipe
from stillroom.core.size.targets import read_target
from stillroom.core.unknown_foods import unknown_foods
from stillroom.core.when.calendar_entries import make_entries
from stillroom.core.when.calendar_files import make_calendar
from stillroom.core.when.season import plan_in_season, season_of_start
from stillroom.core.when.timeline import plan_forward
from stillroom.core.when.timeline_words import timeline_document, timeline_text
from stillroom.core.words.problems import ProblemsFound, Unreadable

_LOADED_WHEN_CALLED: Final = {
    "start": ("stillroom.commands.start", "start"),
    "new": ("stillroom.commands.start", "new_command"),
    "bring": ("stillroom.commands.bring", "bring_command"),
    "desk": ("stillroom.commands.desk", "desk"),
    "strength": ("stillroom.commands.strength", "strength"),
    "print": ("stillroom.commands.printing", "print_group"),
    "pack": ("stillroom.commands.giving", "pack"),
    "close-year": ("stillroom.commands.giving", "close_year_command"),
    "giving-schema": ("stillroom.commands.giving", "giving_schema"),
}
"""Commands that bring much along: nobody who checks a recipe waits for paper or a plan."""


class _Commands(click.Group):
    def list_commands(self, ctx: click.Context) -> list[str]:
        return sorted({*super().list_commands(ctx), *_LOADED_WHEN_CALLED})

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in _LOADED_WHEN_CALLED:
            return super().get_command(ctx, cmd_name)
        module, name = _LOADED_WHEN_CALLED[cmd_name]
        command = getattr(import_module(module), name)
        return command if isinstance(command, click.Command) else None


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="stillroom")
def main() -> None:
    """Publish a book of homemade presents, and plan who is given what."""
    write_utf8()


@main.command()
@click.argument("files", nargs=-1, type=recipe_file)
@told_plainly
def check(files: tuple[Path, ...]) -> None:
    """Read the whole book, or the FILES named, and list every problem."""
    if files:
        recipes = check_files(files, book_around(files[0]), Path.cwd())
    else:
        config = find_book(Path.cwd())
        if config is None:
            raise click.UsageError("There is no mkdocs.yml here or above: name the files to check.")
        recipes = _check_whole(config)
    for food in unknown_foods(recipes):
        click.echo(f"note: {food.say()}", err=True)
    warnings = [warning for recipe in recipes for warning in warn_of_dates(recipe)]
    for warning in warnings:
        click.echo(f"warning: {warning}", err=True)
    count = len(recipes)
    read = f"{count} recipe{'' if count == 1 else 's'} read, no problems"
    some = f"{len(warnings)} warning{'' if len(warnings) == 1 else 's'}"
    click.echo(f"{read}, {some}: a strict build stops there." if warnings else f"{read}.")


def _check_whole(config: Path) -> tuple[Recipe, ...]:
    """Read a whole book; what would keep MkDocs from building it is a problem like any other."""
    # slow to load, and needed here alone
    from stillroom.publish.agreeing import find_endless, find_refused

    book, wrong = open_what_fits(config)
    if book is None:
        fail(wrong, "The recipes are read once this is mended: check again then.")
    refused = (*wrong, *(() if wrong else find_refused(book)), *find_endless(book))
    try:
        recipes = check_book(book)
    except ProblemsFound as found:
        raise ProblemsFound([*refused, *found.problems]) from None
    if refused:
        raise ProblemsFound(refused)
    return recipes


@main.command()
@click.option("--out", type=click.Path(dir_okay=False, path_type=Path), help="Write it here.")
@told_plainly
def schema(out: Path | None) -> None:
    """Print what a recipe may state, in the form that text editors read (JSON Schema)."""
    write_schema(front_matter_schema(), out)


@main.command()
@click.argument("file", type=recipe_file)
@click.option("--give", "giving", metavar="DAY", help='A date, or "the Saturday before Christmas".')
@click.option("--start", "begun", metavar="DATE", help="The day it is begun, such as 2027-02-01.")
@click.option("--today", "on", metavar="DATE", help="Count as if today were this day.")
@click.option(
    "--calendar",
    type=click.Path(dir_okay=False, path_type=Path),
    help="Write them here too, for the calendar of a telephone or a computer.",
)
@click.option("--json", "as_json", is_flag=True, help="For another program to read (JSON).")
@told_plainly
def dates(
    file: Path,
    giving: str | None,
    begun: str | None,
    on: str | None,
    calendar: Path | None,
    as_json: bool,
) -> None:
    """Count a recipe's dates back from a giving day or forward from a start."""
    recipe, book = read_one(file)
    today = read_day(on, "--today", date.today(), book) or date.today()
    start = read_day(begun, "--start", today, book)
    give = read_day(giving, "--give", start or today, book)
    if start:
        timeline = plan_forward(recipe, start, give, today if give else None)
        season = season_of_start(recipe.season, start)
    elif give:
        timeline, season = plan_in_season(recipe, recipe.season, give, today)
    else:
        raise click.UsageError('Say "--give 2027-12-18" or "--start 2027-02-01".')
    if calendar:
        entries = make_entries(recipe.slug, recipe.title, timeline)
        write_calendar(make_calendar(recipe.title, entries, today), calendar)
    if as_json:
        click.echo(json.dumps(timeline_document(timeline, season), indent=2, ensure_ascii=False))
    else:
        click.echo(timeline_text(timeline, recipe.title, season))
        if of_kind := dates_of_kind(recipe):
            click.echo(of_kind.text)


@main.command()
@click.argument("file", type=recipe_file)
@click.option("--times", metavar="NUMBER", help='So many times as written: "3", "1/2", "1½".')
@click.option("--makes", metavar="AMOUNT", help='What it is to make: "200 ml", "36 biscuits".')
@click.option("--fill", metavar="CONTAINERS", help='What to fill: "12 x 50 ml + 6 x 100 ml".')
@click.option("--have", metavar="AMOUNTS", help='What is on hand: "17 cinnamon stick".')
@click.option("--vessel", metavar="SIZE", help='A vessel or a tin: "1.5 l", "24 cm round".')
@click.option("--units", type=click.Choice(["metric", "us", "imperial"]), help="To measure in.")
@click.option(
    "--by",
    type=click.Choice(["written", "weight", "volume"]),
    default="written",
    help="How to measure.",
)
@click.option("--link", is_flag=True, help="The address of its page with this chosen, to send.")
@click.option("--json", "as_json", is_flag=True, help="For another program to read (JSON).")
@told_plainly
def scale(
    file: Path, units: System | None, by: By, link: bool, as_json: bool, **asked: str | None
) -> None:
    """Scale a recipe to what it makes, what it fills or what is on hand."""
    recipe, book = read_one(file)
    country = book.settings.country
    try:
        target = read_target(asked, units or recipe.system)
        batch = scale_recipe(recipe, target, Measures(units or recipe.system, by))
    except Unreadable as error:
        raise click.UsageError(str(error)) from None
    if link:
        chosen = {**asked, "units": units, "by": by if by != "written" else None}
        click.echo(_address(recipe, book, {name: said for name, said in chosen.items() if said}))
    elif as_json:
        click.echo(
            json.dumps(scaling_document(batch, recipe, country), indent=2, ensure_ascii=False)
        )
    else:
        click.echo(scaling_table(batch, recipe, country))


def _address(recipe: Recipe, book: Book, chosen: dict[str, str]) -> str:
    """Return the address of a page on which this is chosen, as the page itself writes it."""
    site = book.settings.site_url.rstrip("/")
    if not site:
        raise click.UsageError('The book has no address yet: write "site_url:" in mkdocs.yml.')
    query = f"?{urlencode(chosen)}" if chosen else ""
    return f"{site}/r/{recipe.slug}/{query}"


if __name__ == "__main__":
    main()
