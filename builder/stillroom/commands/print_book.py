"""`stillroom print sheet`, `year`, `book`, `cover` and `epub`: what is read, hung up or bound."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from pathlib import Path

import click
from dateutil.relativedelta import relativedelta

from stillroom.commands.paper import (
    address,
    fonts_option,
    force_option,
    out_option,
    paper_option,
    plainly,
    read_recipes,
    write,
)
from stillroom.commands.terminal import read_day, read_one
from stillroom.commands.typed_words import RECIPE, WHOLE
from stillroom.core.amounts.quantities import parse_number
from stillroom.core.book import Book
from stillroom.core.paper.sheets import PAPERS, WALL_PAPERS
from stillroom.core.recipe.kind_dates import ferments_untimed
from stillroom.core.size.scaling import Measures, scale_recipe
from stillroom.core.size.targets import read_target
from stillroom.core.when.timeline import plan_forward
from stillroom.core.when.year import Named, Occasion, plan_year, still_before
from stillroom.core.words.problems import Unreadable
from stillroom.printing.book_cover import measure_spine, print_cover
from stillroom.printing.booklet import count_pages, impose_booklet
from stillroom.printing.epub_book import make_epub
from stillroom.printing.family_book import book_data, print_book
from stillroom.printing.fine_enough import find_coarse
from stillroom.printing.kitchen_sheet import print_sheet
from stillroom.printing.wall_year import print_year

YEARS_TRIED = 3
"""Giving days looked ahead to: what is begun within a year is given within three."""


@click.command()
@click.argument("file", type=RECIPE)
@click.option("--times", metavar="NUMBER", help='So many times as written: "3", "1/2".')
@click.option("--makes", metavar="AMOUNT", help='What it is to make: "200 ml".')
@click.option("--fill", metavar="CONTAINERS", help='What to fill: "12 x 50 ml".')
@click.option("--have", metavar="AMOUNTS", help='What is on hand: "17 cinnamon stick".')
@click.option("--vessel", metavar="SIZE", help='A vessel or a tin: "1.5 l", "24 cm round".')
@click.option("--large", is_flag=True, help="Large type, read at arm's length with wet hands.")
@click.option("--start", metavar="DAY", help="The day it is begun; then tending days stand on it.")
@paper_option
@fonts_option
@out_option
@force_option
@plainly
def sheet(
    file: Path, start: str | None, paper: str, fonts: Path | None, out: Path | None,
    force: bool, large: bool, **asked: str | None,
) -> None:  # fmt: skip
    """Print one recipe at one scale as a kitchen sheet."""
    recipe, book = read_one(file)
    target = read_target(asked, recipe.system)
    batch = scale_recipe(recipe, target, Measures(recipe.system))
    begun = read_day(start, "--start", date.today(), book)
    dated = begun is not None and not ferments_untimed(recipe)
    timeline = plan_forward(recipe, begun) if begun and dated else None
    made = print_sheet(
        recipe, batch, book.settings, timeline, PAPERS[paper], address(book, recipe), fonts,
        asked=target, large=large,
    )  # fmt: skip
    write(made, out, f"{recipe.slug}.pdf", force)


@click.command()
@click.argument("files", nargs=-1, type=RECIPE)
@click.option("--give", metavar="DAY", help="For one giving day: the twelve months up to it.")
@click.option("--from", "begin", metavar="DAY", help="The day it begins with; today if not.")
@click.option(
    "--paper", type=click.Choice(list(WALL_PAPERS)), default="a4",
    help="A3 or Tabloid is one sheet; A4 or US Letter two, to be joined.",
)  # fmt: skip
@fonts_option
@out_option
@force_option
@plainly
def year(
    files: Sequence[Path], give: str | None, begin: str | None, paper: str, fonts: Path | None,
    out: Path | None, force: bool,
) -> None:  # fmt: skip
    """Print the year for the wall, of the recipes in FILES or of the whole book.

    It shows day by day what to begin, tend, bottle and give in the twelve months to come, with
    boxes to tick. A batch that can no longer be begun in time to be at its best for the next giving
    day, or while its produce is to be had, stands where it is begun for the one after; apart stand
    days beyond the twelve months, and what can still be made for the next giving day all the same.
    """
    book, recipes = read_recipes(files)
    today = date.today()
    first, occasions = _round(book, today, give, read_day(begin, "--from", today, book))
    dated = [one for one in recipes if not ferments_untimed(one)]
    named = [Named(one.slug, one.title, one.kind.name, one, one.season) for one in dated]
    months = plan_year(named, occasions, first, not_before=first)
    made = print_year(
        months, book.settings.title, paper=WALL_PAPERS[paper], language=book.settings.language,
        still=still_before(named, months, max(first, today)), fonts=fonts,
    )  # fmt: skip
    write(made, out, "year.pdf", force)


def _round(
    book: Book, today: date, give: str | None, begin: date | None
) -> tuple[date, list[Occasion]]:
    """Return the first day of the wall year, and the giving days it counts back from."""
    giving = book.settings.giving_days[0]
    day = read_day(give, "--give", begin or today, book) or read_day(
        giving.day, "giving day", begin or today, book
    )
    assert day is not None  # a book has a giving day
    if give:
        if day < (begin or today):
            raise Unreadable(f"{give} is past.", "Name a giving day that is to come.")
        return begin or day.replace(day=1) - relativedelta(months=11), [Occasion("Giving", day)]
    occasions = [Occasion(giving.name, day)]
    for _ in range(YEARS_TRIED - 1):
        after = occasions[-1].day + timedelta(days=1)
        coming = read_day(giving.day, "giving day", after, book)
        if coming is None or coming < after:  # a full date comes round once
            break
        occasions.append(Occasion(giving.name, coming))
    return begin or today, occasions


for_option = click.option(
    "--for", "whom", metavar="NAME", default="", help="The household it is made for."
)
dedication_option = click.option(
    "--dedication", metavar="WORDS", default="", help="Words for them, before the book's own."
)


@click.command("book")
@click.argument("files", nargs=-1, type=RECIPE)
@for_option
@dedication_option
@click.option("--bleed", is_flag=True, help="3 mm of bleed round each page, for a printer's shop.")
@click.option("--booklet", is_flag=True, help="Two by two on A4, to fold and sew at home.")
@fonts_option
@out_option
@force_option
@plainly
def family_book(
    files: Sequence[Path], whom: str, dedication: str, bleed: bool, booklet: bool,
    fonts: Path | None, out: Path | None, force: bool,
) -> None:  # fmt: skip
    """Print the book, A5, to be read aloud by programs too: the whole, or the recipes in FILES.

    A booklet cannot be read aloud: its sheets are out of order. Print the book for that.
    """
    if bleed and booklet:
        raise click.UsageError("A booklet from a home printer has no bleed: choose one of the two.")
    book, recipes = read_recipes(files)
    data = book_data(book, recipes, date.today(), whom=whom, dedication=dedication)
    made = print_book(data, bleed=bleed, fonts=fonts)
    for coarse in find_coarse(book, recipes):
        click.echo(coarse.words, err=True)
    if booklet:
        made = impose_booklet(
            made, count_pages(made), data["title"], (data["language"], data["region"])
        )
        click.echo("A booklet has no tags for screen readers: the book without --booklet has.")
    write(made, out, "booklet.pdf" if booklet else "book.pdf", force)


@click.command()
@click.argument("files", nargs=-1, type=RECIPE)
@for_option
@click.option("--gsm", type=WHOLE, help="The weight of its paper in g/m²; 89 if not.")
@click.option("--leaf", metavar="MM", help="How thick a leaf is: 100 leaves measured, by 100.")
@click.option("--pages", type=WHOLE, help="How many pages; those of the book if not.")
@fonts_option
@out_option
@force_option
@plainly
def cover(
    files: Sequence[Path], whom: str, gsm: int | None, leaf: str | None, pages: int | None,
    fonts: Path | None, out: Path | None, force: bool,
) -> None:  # fmt: skip
    """Print the cover of the glued book in one piece, its spine as wide as the pages are thick."""
    book, recipes = read_recipes(files)
    data = book_data(book, recipes, date.today(), whom=whom)
    many = pages if pages is not None else count_pages(print_book(data, fonts=fonts))
    spine = measure_spine(many, gsm, parse_number(leaf) if leaf else None)
    write(print_cover(data, spine, fonts), out, "cover.pdf", force)
    click.echo(
        f"{many} pages of {float(spine.leaf_mm):.3f} mm a leaf ({spine.source}): "
        f"the spine is {float(spine.width_mm):.1f} mm."
    )


@click.command()
@click.argument("files", nargs=-1, type=RECIPE)
@for_option
@dedication_option
@out_option
@force_option
@plainly
def epub(files: Sequence[Path], whom: str, dedication: str, out: Path | None, force: bool) -> None:
    """Write the book as an EPUB, for e-readers and telephones."""
    book, recipes = read_recipes(files)
    data = book_data(book, recipes, date.today(), whom=whom, dedication=dedication)
    write(make_epub(data), out, "book.epub", force)
