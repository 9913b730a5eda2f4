"""`stillroom dates`: a recipe's dates for a giving day or from a start.

Exit 0 when answered, 1 when the recipe has problems, 2 for wrong usage.
"""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import click

from stillroom.commands.terminal import (
    read_day,
    read_one,
    told_plainly,
    write_calendar,
)
from stillroom.commands.typed_words import FILE, RECIPE
from stillroom.core.recipe.kind_dates import dates_of_kind, why_undated
from stillroom.core.when.calendar_entries import make_entries
from stillroom.core.when.calendar_files import make_calendar
from stillroom.core.when.season import plan_in_season, season_of_start
from stillroom.core.when.timeline import plan_forward
from stillroom.core.when.timeline_words import timeline_document, timeline_text


@click.command()
@click.argument("file", type=RECIPE)
@click.option(
    "--give", "giving", metavar="DAY", help='A date, "Christmas", "the Saturday before Christmas".'
)
@click.option("--start", "begun", metavar="DATE", help="The day it is begun, such as 2027-02-01.")
@click.option("--today", "on", metavar="DATE", help="Count as if today were this day.")
@click.option(
    "--calendar",
    type=FILE,
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
    if undated := why_undated(recipe):
        if calendar:
            undated = f"{undated} No calendar was written."
        click.echo(json.dumps({"not_known": undated}) if as_json else f"{recipe.title}: {undated}")
        return
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
