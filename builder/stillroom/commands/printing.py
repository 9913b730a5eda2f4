"""`stillroom print ...`: paper through Typst. Every command in a few lines."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date, timedelta
from functools import wraps
from pathlib import Path
from typing import Any

import click
from dateutil.relativedelta import relativedelta

from stillroom.commands.sheets import bought_sheet, left_on_sheet, own_label
from stillroom.commands.terminal import (
    book_around,
    guard_place,
    read_day,
    read_one,
    recipe_file,
    told_plainly,
)
from stillroom.core.book import Book
from stillroom.core.label.labelling import make_card
from stillroom.core.paper.sheets import (
    CARD_SIZES,
    PAPERS,
    Size,
)
from stillroom.core.paper.tag_shapes import SHAPES, Shape, label_shape, tag_shape
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scaling import Measures, scale_recipe
from stillroom.core.size.targets import read_target
from stillroom.core.when.timeline import plan_forward
from stillroom.core.when.year import Named, Occasion, plan_year
from stillroom.core.words.problems import Unreadable
from stillroom.printing.booklet import count_pages, impose_booklet
from stillroom.printing.cards import CardJob, SheetOptions, print_cards, print_tags
from stillroom.printing.cut_sheet import GiftMeasures, print_cuts
from stillroom.printing.epub_book import make_epub
from stillroom.printing.family_book import book_data, print_book
from stillroom.printing.kitchen_sheet import print_sheet
from stillroom.printing.typesetting import PaperMissing
from stillroom.printing.wall_year import print_year
from stillroom.saving.places import guard_earlier, is_own_print
from stillroom.saving.whole import told, write_whole

Command = Callable[..., None]

YEARS_TRIED = 3
"""Giving days looked ahead to: what is begun within a year is given within three."""

paper_option = click.option(
    "--paper", type=click.Choice(["a4", "letter"]), default="a4", help="A4 or US Letter."
)
out_option = click.option(
    "--out", type=click.Path(dir_okay=False, path_type=Path), help="Write it here."
)
force_option = click.option("--force", is_flag=True, help="Write over a file that is there.")
fonts_option = click.option(
    "--fonts",
    type=click.Path(file_okay=False, path_type=Path),
    help="A folder of your own fonts, for letters the book's faces have not.",
)


@click.group("print")
def print_group() -> None:
    """Print cards, tags, sheets, the year or the whole book to PDF."""


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


def sheet_options(command: Command) -> Command:
    """Give a command the options of a sheet of cards or tags."""
    for option in reversed(
        (
            click.argument("files", nargs=-1, type=recipe_file),
            click.option(
                "--count",
                type=click.IntRange(1, 2000),
                help="Of each; of one recipe's cards a sheet full, else one.",
            ),
            paper_option,
            click.option(
                "--cut-lines/--no-cut-lines",
                default=None,
                help="Hairlines to cut by; none on a bought sheet unless asked for.",
            ),
            click.option("--ruler", is_flag=True, help="A 50 mm ruler to check the printer by."),
            click.option("--start-at", type=int, default=1, help="The first free place."),
            click.option(
                "--label-sheet",
                metavar="COLUMNS,ROWS,LEFT,TOP,ACROSS,DOWN[,WIDTH,HEIGHT]",
                help="A bought sheet: how many, its margins, its pitch and a label's own "
                "size in mm, the chosen size if not. What needs two sides is refused.",
            ),
            click.option("--made-on", metavar="DAY", help="The day they were made; today if not."),
            click.option("--to", default="", help="A name to stand on each."),
            click.option("--from", "sender", default="", help="Your own name."),
            click.option("--message", default="", help="A line of your own."),
            fonts_option,
            out_option,
            force_option,
        )
    ):
        command = option(command)
    return command


@print_group.command()
@click.option("--size", type=click.Choice(list(CARD_SIZES)), default="90x65", help="In mm.")
@sheet_options
@plainly
def cards(files: Sequence[Path], size: str, out: Path | None, force: bool, **asked: Any) -> None:
    """Print usage cards of the recipes in FILES, or of the whole book."""
    if size == "folded-a6" and asked["label_sheet"]:
        raise Unreadable(
            "A folded card does not go on a label: a label has no back.",
            "Choose another --size, or plain paper.",
        )
    box = own_label(asked) or CARD_SIZES[size]
    jobs, options = _jobs(files, asked, box)
    if asked["count"] is None and len(jobs) == 1 and size != "folded-a6":
        jobs = [replace(jobs[0], copies=left_on_sheet(options, box))]
    write(print_cards(jobs, size, options), out, "cards.pdf", force)


@print_group.command()
@click.option("--shape", type=click.Choice(SHAPES), default="rectangle")
@click.option("--lid", type=float, default=0, help="A round label: the lid across, in mm.")
@click.option("--bottle", type=float, default=0, help="A wrap: the bottle across, in mm.")
@click.option("--wall", type=float, default=0, help="A wrap: its straight wall, in mm.")
@sheet_options
@plainly
def tags(
    files: Sequence[Path],
    shape: Shape,
    lid: float,
    bottle: float,
    wall: float,
    out: Path | None,
    force: bool,
    **asked: Any,
) -> None:
    """Print tags or labels of the recipes in FILES, or of the whole book."""
    label = own_label(asked)
    chosen = (
        label_shape(shape, label)
        if label
        else tag_shape(shape, lid_mm=lid, bottle_mm=bottle, wall_mm=wall)
    )
    jobs, options = _jobs(files, asked, chosen.box)
    write(print_tags(jobs, chosen, options), out, "tags.pdf", force)


def _jobs(
    files: Sequence[Path], asked: dict[str, Any], box: Size
) -> tuple[list[CardJob], SheetOptions]:
    book, recipes = _read(files)
    paper = PAPERS[asked["paper"]]
    made_on = read_day(asked["made_on"], "--made-on", date.today(), book) or date.today()
    jobs = [
        CardJob(
            make_card(
                recipe,
                book.settings,
                made_on,
                to=asked["to"],
                sender=asked["sender"],
                message=asked["message"],
                url=address(book, recipe),
            ),
            recipe,
            asked["count"] or 1,
        )
        for recipe in recipes
    ]
    cut_lines = asked["cut_lines"]
    options = SheetOptions(
        paper=paper,
        cut_lines=not asked["label_sheet"] if cut_lines is None else cut_lines,
        ruler=asked["ruler"],
        start_at=asked["start_at"],
        language=book.settings.language,
        title=book.settings.title,
        fonts=asked["fonts"],
        grid=bought_sheet(asked["label_sheet"], paper, box),
    )
    return jobs, options


def _read(files: Sequence[Path]) -> tuple[Book, tuple[Recipe, ...]]:
    if not files:
        book = book_around()
        return book, book.load()
    book = book_around(files[0])
    return book, tuple(read_one(path)[0] for path in files)


def address(book: Book, recipe: Recipe) -> str:
    """Return the address of a recipe's page for its QR code, or "" for a book without a site."""
    site = book.settings.site_url.rstrip("/")
    return f"{site}/r/{recipe.slug}/" if site else ""


@print_group.command()
@click.argument("file", type=recipe_file)
@click.option("--times", metavar="NUMBER", help='So many times as written: "3", "1/2".')
@click.option("--makes", metavar="AMOUNT", help='What it is to make: "200 ml".')
@click.option("--fill", metavar="CONTAINERS", help='What to fill: "12 x 50 ml".')
@click.option("--start", metavar="DAY", help="The day it is begun; then tending days stand on it.")
@paper_option
@fonts_option
@out_option
@force_option
@plainly
def sheet(
    file: Path, start: str | None, paper: str, fonts: Path | None, out: Path | None,
    force: bool, **asked: str | None,
) -> None:  # fmt: skip
    """Print one recipe at one scale as a kitchen sheet."""
    recipe, book = read_one(file)
    batch = scale_recipe(recipe, read_target(asked, recipe.system), Measures(recipe.system))
    begun = read_day(start, "--start", date.today(), book)
    timeline = plan_forward(recipe, begun) if begun else None
    made = print_sheet(
        recipe, batch, book.settings, timeline, PAPERS[paper], address(book, recipe), fonts
    )
    write(made, out, f"{recipe.slug}.pdf", force)


@print_group.command()
@click.option("--give", metavar="DAY", help="For one giving day: the twelve months up to it.")
@click.option("--from", "begin", metavar="DAY", help="The day it begins with; today if not.")
@paper_option
@fonts_option
@out_option
@force_option
@plainly
def year(
    give: str | None, begin: str | None, paper: str, fonts: Path | None, out: Path | None,
    force: bool,
) -> None:  # fmt: skip
    """Print the year for the wall: what to begin, tend, bottle and give in each month.

    It shows the twelve months to come. A batch that can no longer be begun in time for the next
    giving day stands where it is begun for the one after; days beyond the twelve months bear
    their year.
    """
    book, recipes = _read(())
    today = date.today()
    first, occasions = _round(book, today, give, read_day(begin, "--from", today, book))
    months = plan_year(
        [Named(one.slug, one.title, one.kind.name, one, one.season) for one in recipes],
        occasions,
        first,
        not_before=first,
    )
    made = print_year(
        months, book.settings.title, paper=PAPERS[paper], language=book.settings.language,
        fonts=fonts,
    )  # fmt: skip
    write(made, out, "year.pdf", force)


def _round(
    book: Book, today: date, give: str | None, begin: date | None
) -> tuple[date, list[Occasion]]:
    """Return the first day of the wall year, and the giving days it counts back from."""
    giving = book.settings.giving_days[0]
    day = read_day(give or giving.day, "--give", begin or today, book)
    assert day is not None  # a book has a giving day
    if give:
        if day < (begin or today):
            raise Unreadable(f"{give} is past.", "Name a giving day that is to come.")
        return begin or day.replace(day=1) - relativedelta(months=11), [Occasion("Giving", day)]
    occasions = [Occasion(giving.name, day)]
    for _ in range(YEARS_TRIED - 1):
        after = occasions[-1].day + timedelta(days=1)
        coming = read_day(giving.day, "--give", after, book)
        if coming is None or coming < after:  # a full date comes round once
            break
        occasions.append(Occasion(giving.name, coming))
    return begin or today, occasions


@print_group.command("book")
@click.option("--bleed", is_flag=True, help="3 mm of bleed round each page, for a printer's shop.")
@click.option("--booklet", is_flag=True, help="Two by two on A4, to fold and sew at home.")
@fonts_option
@out_option
@force_option
@plainly
def family_book(
    bleed: bool, booklet: bool, fonts: Path | None, out: Path | None, force: bool
) -> None:
    """Print the whole book, A5, tagged for screen readers.

    A booklet keeps its words, title and language but has no tags: Typst cannot tag the pages of
    another PDF, and folded sheets are out of reading order. To read it aloud, print the book.
    """
    if bleed and booklet:
        raise click.UsageError("A booklet from a home printer has no bleed: choose one of the two.")
    book, recipes = _read(())
    data = book_data(book, recipes, date.today())
    made = print_book(data, bleed=bleed, fonts=fonts)
    if booklet:
        made = impose_booklet(
            made, count_pages(made), data["title"], (data["language"], data["region"])
        )
    write(made, out, "booklet.pdf" if booklet else "book.pdf", force)


@print_group.command()
@out_option
@force_option
@plainly
def epub(out: Path | None, force: bool) -> None:
    """Write the whole book as an EPUB, for e-readers and telephones."""
    book, recipes = _read(())
    write(make_epub(book_data(book, recipes, date.today())), out, "book.epub", force)


@print_group.command()
@click.option("--lid", type=float, default=0, help="Cloth and ribbon for a lid so wide, in mm.")
@click.option("--lid-height", type=float, default=15, help="How high that lid is, in mm.")
@click.option("--bottle", metavar="ACROSS,WALL", help="A label round a bottle: its straight wall.")
@click.option("--box", metavar="LONG,WIDE,HIGH,LID", help="A box and its lid, inside, in mm.")
@paper_option
@out_option
@force_option
@plainly
def cuts(
    lid: float, lid_height: float, bottle: str | None, box: str | None,
    paper: str, out: Path | None, force: bool,
) -> None:  # fmt: skip
    """Print what is cut for a gift, to scale: cloth for a lid, a label, the net of a box."""
    book = book_around()
    measures = GiftMeasures.read(lid, box, bottle, lid_height)
    made = print_cuts(measures, PAPERS[paper], book.settings.language)
    write(made, out, f"cuts-{'-and-'.join(measures.names)}.pdf", force)
