"""`stillroom print cards`, `tags`, `cuts`, `test-sheet`: what goes into a basket and onto a jar."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import click

from stillroom.commands.paper import (
    Command,
    address,
    fonts_option,
    force_option,
    out_option,
    paper_option,
    plainly,
    read_recipes,
    write,
)
from stillroom.commands.sheets import (
    bought_sheet,
    by_name,
    feed_of,
    left_on_sheet,
    own_label,
    used_places,
)
from stillroom.commands.terminal import book_around, read_day
from stillroom.commands.typed_words import MM, RECIPE, WHOLE, Number
from stillroom.core.book import Book
from stillroom.core.label.labelling import make_card
from stillroom.core.paper.qr_code import NO_SQUARES
from stillroom.core.paper.sheets import CARD_SIZES, PAPERS, Size
from stillroom.core.paper.tag_shapes import SHAPES, Shape, label_shape, say_larger, tag_shape
from stillroom.core.words.problems import Unreadable
from stillroom.looks.card_designs import choose_design, design_of
from stillroom.looks.card_pictures import card_picture, family_mark
from stillroom.printing.apart import run_here
from stillroom.printing.cards import (
    CardJob,
    SheetOptions,
    print_cards_alike,
    print_large_tags,
    print_tags,
)
from stillroom.printing.cut_sheet import GiftMeasures, print_cuts
from stillroom.printing.feed_sheet import print_feed_sheet


def sheet_options(command: Command) -> Command:
    """Give a command the options of a sheet of cards or tags."""
    for option in reversed(
        (
            click.argument("files", nargs=-1, type=RECIPE),
            click.option(
                "--count",
                type=Number(1, 2000, whole=True),
                help="Of each; of one recipe's cards a sheet full, else one.",
            ),
            paper_option,
            click.option(
                "--cut-lines/--no-cut-lines",
                default=None,
                help="Hairlines to cut by; none on a bought sheet unless asked for.",
            ),
            click.option("--ruler", is_flag=True, help="A 50 mm ruler to check the printer by."),
            click.option(
                "--start-at",
                type=WHOLE,
                default=1,
                help="The first free place of a sheet that was begun.",
            ),
            click.option(
                "--label-sheet",
                metavar="COLUMNS,ROWS,LEFT,TOP,ACROSS,DOWN[,WIDTH,HEIGHT]",
                help="A bought sheet, by its name in the book's labels, or: how many, its "
                "margins, its pitch and a label's own size in mm, the chosen size if not. "
                "What needs two sides is refused.",
            ),
            click.option(
                "--used", metavar="PLACES", help="Places of a sheet that are gone: 1,2,5."
            ),
            click.option(
                "--made-on",
                metavar="DAY",
                help="The day they were made; a line to write it on if not.",
            ),
            click.option("--to", metavar="NAME", default="", help="A name to stand on each."),
            click.option("--from", "sender", metavar="NAME", default="", help="Your own name."),
            click.option("--message", metavar="WORDS", default="", help="A line of your own."),
            click.option("--design", metavar="NAME", help="How they look; the book's own if not."),
            click.option("--large", is_flag=True, help="In large type: 12 points and more, black."),
            click.option("--hand", is_flag=True, help="Lines to write names on, where none are."),
            fonts_option,
            out_option,
            force_option,
        )
    ):
        command = option(command)
    return command


@click.command()
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
    asked["label_sheet"] = by_name(asked["label_sheet"], _book_of(files))
    box = own_label(asked) or CARD_SIZES[size]
    jobs, options = _jobs(files, asked, box)
    if asked["count"] is None and len(jobs) == 1 and size != "folded-a6":
        jobs = [replace(jobs[0], copies=left_on_sheet(options, box))]
    large = options.design.large
    (made,), taken = print_cards_alike([jobs], size, options, run_here, grows=large)
    if taken != size:
        why = "In large type" if large else "To be set alike"
        click.echo(f"{why} they take {CARD_SIZES[taken].name}.")
    write(made, out, "cards.pdf", force)


@click.command()
@click.option(
    "--shape", type=click.Choice(SHAPES), default="rectangle", help="A rectangle if not said."
)
@click.option("--lid", type=MM, default=0, help="A round label: the lid across, in mm.")
@click.option("--bottle", type=MM, default=0, help="A wrap: the bottle across, in mm.")
@click.option("--wall", type=MM, default=0, help="A wrap: its straight wall, in mm.")
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
    asked["label_sheet"] = by_name(asked["label_sheet"], _book_of(files))
    label = own_label(asked)
    chosen = (
        label_shape(shape, label)
        if label
        else tag_shape(shape, lid_mm=lid, bottle_mm=bottle, wall_mm=wall)
    )
    jobs, options = _jobs(files, asked, chosen.box)
    if options.design.large:
        (made,), taken = print_large_tags([jobs], chosen, options, run_here)
        if taken != chosen:
            click.echo(f"In large type they take {say_larger(taken, chosen)}.")
    else:
        made = print_tags(jobs, chosen, options)
    write(made, out, "tags.pdf", force)


def _book_of(files: Sequence[Path]) -> Book:
    return book_around(files[0]) if files else book_around()


def _jobs(
    files: Sequence[Path], asked: dict[str, Any], box: Size
) -> tuple[list[CardJob], SheetOptions]:
    book, recipes = read_recipes(files)
    paper = PAPERS[asked["paper"]]
    design = choose_design(asked["design"], book) if asked["design"] else design_of(book)
    design = design.made_large() if asked["large"] else design
    made_on = read_day(asked["made_on"], "--made-on", date.today(), book)
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
            card_picture(recipe, book, design),
        )
        for recipe in recipes
    ]
    if not book.settings.site_url:
        click.echo(NO_SQUARES)
    words, svg = family_mark(book, design)
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
        design=design,
        hand=asked["hand"],
        used=used_places(asked["used"]),
        shift_mm=feed_of(book),
        mark_words=words,
        mark_svg=svg,
    )
    return jobs, options


@click.command()
@click.option("--lid", type=MM, default=0, help="Cloth and ribbon for a lid so wide, in mm.")
@click.option("--lid-height", type=MM, default=15, help="How high that lid is, in mm; 15 if not.")
@click.option("--bottle", metavar="ACROSS,WALL", help="A label round a bottle: its straight wall.")
@click.option("--box", metavar="LONG,WIDE,HIGH,LID", help="A box and its lid, inside, in mm.")
@click.option("--count", type=Number(1, 200, whole=True), default=1, help="Of each; laid close.")
@paper_option
@out_option
@force_option
@plainly
def cuts(
    lid: float, lid_height: float, bottle: str | None, box: str | None, count: int,
    paper: str, out: Path | None, force: bool,
) -> None:  # fmt: skip
    """Print what is cut for a gift, to scale: cloth for a lid, a label, the net of a box."""
    book = book_around()
    measures = GiftMeasures.read(lid, box, bottle, lid_height)
    made = print_cuts(measures, PAPERS[paper], book.settings.language, count)
    write(made, out, f"cuts-{'-and-'.join(measures.names)}.pdf", force)


@click.command("test-sheet")
@paper_option
@out_option
@force_option
@plainly
def test_sheet(paper: str, out: Path | None, force: bool) -> None:
    """Print a sheet that shows by how many millimetres your printer misses."""
    book = book_around()
    made = print_feed_sheet(PAPERS[paper], feed_of(book), book.settings.language)
    write(made, out, "test-sheet.pdf", force)
