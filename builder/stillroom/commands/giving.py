"""The private commands: write a pack, close a year. Every command in a few lines.

Exit 0 when all is well, 1 for problems or a plan that leaves a place empty, 2 for wrong usage.
"""

from __future__ import annotations

import sys
from datetime import date
from pathlib import Path

import click

from stillroom.commands.lists_alone import recipes_for
from stillroom.commands.progress import Bar
from stillroom.commands.terminal import (
    book_around,
    read_day,
    told_plainly,
    write_schema,
)
from stillroom.commands.typed_words import FILE, FOLDER, LIST, Number
from stillroom.core.book import Book
from stillroom.core.words.joining import join_and
from stillroom.core.words.plurals import counted
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.core.words.text_files import read_text
from stillroom.giving.against_book import check_list
from stillroom.giving.checking import read_list, read_log_of
from stillroom.giving.closing import close_year, not_noted
from stillroom.giving.explaining import say_how_good
from stillroom.giving.guard import guard_file, guard_folder, usual_folder, warn_of_git
from stillroom.giving.list_schema import giving_list_schema
from stillroom.giving.log_file import add_row, log_beside, read_log
from stillroom.giving.log_schema import log_schema
from stillroom.giving.money.larder_prices import with_larder_prices
from stillroom.giving.names import with_names_of
from stillroom.giving.pack import Effort, pack_files, work_out
from stillroom.giving.plan_file import read_plan
from stillroom.giving.reading import ReadList
from stillroom.giving.swapping import restore_folder, swap_in
from stillroom.giving.worked_out import Pack
from stillroom.saving.whole import clear_leftovers, told, write_whole


@click.command()
@click.argument("giving_list", type=LIST)
@click.option("--out", type=FOLDER, help="The private folder; else private/ beside mkdocs.yml.")
@click.option("--today", metavar="DATE", help="Plan as if today were this day.")
@click.option("--seconds", type=Number(0.1), default=20, help="How long to plan; 20 if not said.")
@click.option("--within", type=Number(0, 100), default=0, help="Near enough, in percent.")
@click.option("--afresh", is_flag=True, help="Forget the earlier pack's plan.")
@told_plainly
def pack(
    giving_list: Path,
    out: Path | None,
    today: str | None,
    seconds: float,
    within: float,
    afresh: bool,
) -> None:
    """Plan who is given what and write the private pack of GIVING_LIST."""
    book = book_around(giving_list.resolve())
    out = out or usual_folder(book)
    day = read_day(today, "--today", date.today(), book) or date.today()
    recipes = recipes_for(book, (giving_list,))
    by_name = {recipe.slug: recipe for recipe in recipes}
    read = read_list(giving_list, book, by_name)
    guard_folder(out, book)
    for warning in warn_of_git(giving_list):
        click.echo(f"warning: {warning}", err=True)
    with told(out):
        restore_folder(out)
    kept = None if afresh else read_plan(out, read.giving.giving_list)
    own = book.own_larder()
    said = book.settings
    read = with_larder_prices(read, own.prices, said.language)
    log, _ = read_log_of(giving_list.resolve(), with_names_of(read, by_name), book, by_name)
    bar = Bar(sys.stderr, seconds)
    effort = Effort(seconds, within / 100, bar)
    found = work_out(read, recipes, book.settings, day, effort, kept, log)
    bar.clear()
    for name in swap_in(pack_files(found, book), out):
        click.echo(f"You wrote in {out / name}: it is kept as {out / 'yours' / name}.", err=True)
    _tell(found, out)
    if found.complaints:
        sys.exit(1)


def _tell(found: Pack, out: Path) -> None:
    plan = found.plan
    baskets, batches = len(plan.gifts), len(found.making.batches)
    out_of = f"{counted(baskets, 'basket')}, {counted(batches, 'batch')}"
    click.echo(f"{out_of}, {_to_pay(found)}.")
    click.echo(f"{say_how_good(plan)} Planned in {plan.seconds:.1f} s.")
    for words in found.complaints:
        click.echo(words, err=True)
    click.echo(f"Written: {out / 'index.html'}")


def _to_pay(found: Pack) -> str:
    """Return what is to be paid in words; what has no price is never counted as nothing."""
    costs = found.costs
    if costs.whole:
        return f"{found.money(costs.paid)} to pay"
    unpriced, unposted = len(costs.unpriced), len(costs.postage.open)
    lacking = []
    if unpriced:
        lacking.append(
            "one thing has no price" if unpriced == 1 else f"{unpriced} things have no price"
        )
    if costs.open_empty:
        lacking.append("what an empty basket costs is not said")
    if unposted:
        lacking.append(f"the postage of {counted(unposted, 'parcel')} is not known")
    known = (
        f"{found.money(costs.paid)} to pay and more"
        if costs.paid
        else "what is to pay is not known"
    )
    return f"{known}: {join_and(lacking)}"


@click.command("close-year")
@click.argument("giving_list", type=LIST)
@click.option("--pack", "pack_folder", type=FOLDER, help="The pack that went out; else private/.")
@click.option("--give", "giving", metavar="DAY", help="Next year's giving day.")
@click.option("--out", type=FILE, required=True, help="The new list.")
@click.option("--today", metavar="DATE", help="Close it as if today were this day.")
@told_plainly
def close_year_command(
    giving_list: Path,
    pack_folder: Path | None,
    giving: str | None,
    out: Path,
    today: str | None,
) -> None:
    """Begin next year's list from GIVING_LIST, its log and the pack that went out."""
    book = book_around(giving_list.resolve())
    by_name = {recipe.slug: recipe for recipe in recipes_for(book, (giving_list,))}
    read = read_list(giving_list, book)
    day = read_day(giving, "--give", read.giving.giving_day, book)
    now = read_day(today, "--today", date.today(), book) or date.today()
    where = pack_folder or usual_folder(book)
    kept = read_plan(where, read.giving.giving_list)
    named = with_names_of(read, by_name)
    check_list(named, by_name)
    log, season = read_log_of(giving_list.resolve(), named, book, by_name)
    if kept is None and not season.gone:
        mend = 'Write it first with "stillroom pack", or name it with "--pack".'
        raise ProblemsFound([Problem(str(where), 1, "There is no pack of this list.", mend)])
    gifts = kept.gifts if kept else {}
    text = read_text(giving_list, str(giving_list))
    new = close_year(read, text, gifts, by_name, day, log, book.settings.country).encode()
    log_path = log_beside(giving_list.resolve())
    for place in (out, log_path):
        clear_leftovers(place)
    guard_new_list(out, new, book)
    for line in not_noted(season, gifts, read.giving.giving_day):
        click.echo(f"Nobody noted how it went: {line.name} is taken to have had what was planned.")
    closed = {"day": now.isoformat(), "closed": read.giving.giving_list}
    lines = read_text(log_path, str(log_path)) if log_path.exists() else ""
    guard_closing(lines, read, str(log_path), book)
    write_whole(out, new)
    write_whole(log_path, add_row(lines, str(log_path), closed).encode())
    click.echo(f"Written: {out}")


def guard_closing(lines: str, read: ReadList, name: str, book: Book) -> None:
    """Raise ProblemsFound when a list was closed before."""
    giving = read.giving
    if not lines:
        return
    log = read_log(
        lines, name, giving.currency, giving.language, book.settings.country, book.settings.units
    )
    for line in log.lines:
        if line.kind == "closed" and line.name == giving.giving_list:
            what = f"{giving.giving_list} was closed before."
            raise ProblemsFound(
                [Problem(name, line.line, what, "Take this line out to do it anew.")]
            )


def guard_new_list(out: Path, new: bytes, book: Book) -> None:
    """Raise ProblemsFound for a file that is there already or would be published.

    One that says just what is to be written is of a run that was ended before its log was.
    """
    if out.exists() and not (out.is_file() and out.read_bytes() == new):
        raise ProblemsFound([Problem(str(out), 1, "This file is there already.", "Name another.")])
    guard_file(out, book)


@click.command("giving-schema")
@click.option("--out", type=FILE, help="Write it here.")
@click.option("--log", "of_log", is_flag=True, help="That of its log instead.")
@told_plainly
def giving_schema(out: Path | None, of_log: bool) -> None:
    """Print what a giving list may state, in the form that text editors read (JSON Schema)."""
    write_schema(log_schema() if of_log else giving_list_schema(), out)
