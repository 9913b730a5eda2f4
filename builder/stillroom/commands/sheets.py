"""Sheets of cards and labels as they are asked for in the terminal: bought ones, half-used ones."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from stillroom.core.book import Book
from stillroom.core.paper.sheets import Grid, Size, impose, label_box, label_sheet
from stillroom.core.words.problems import Unreadable
from stillroom.printing.cards import SheetOptions


def left_on_sheet(options: SheetOptions, box: Size) -> int:
    """Return how many cards a sheet still takes; a whole new one where all of it is gone."""
    per_page = (options.grid or impose(options.paper, box)).per_page
    gone = {*range(1, options.start_at), *options.used}
    return sum(place not in gone for place in range(1, per_page + 1)) or per_page


def bought_sheet(text: str | None, paper: Size, box: Size) -> Grid | None:
    """Return the grid of a bought sheet of labels; None where none is named."""
    if not text:
        return None
    columns, rows, left, top, across, down = _label_figures(text)[:6]
    return label_sheet(
        paper, box, columns=int(columns), rows=int(rows), left_mm=left, top_mm=top,
        pitch_x_mm=across, pitch_y_mm=down,
    )  # fmt: skip


def by_name(text: str | None, book: Book) -> str | None:
    """Return the measures of a bought sheet that is kept under a name; any other text as it is."""
    there = {stock.name: stock.measures for stock in book.settings.labels}
    if text in there:
        return there[text]
    if not text or text.strip()[:1].isdigit():
        return text
    kept = ", ".join(f'"{name}"' for name in there)
    mend = f"There are {kept}." if kept else 'Keep its measures in mkdocs.yml, under "labels".'
    raise Unreadable(f'"{text}" is not a label sheet, nor is one kept by that name.', mend)


def feed_of(book: Book) -> tuple[float, float]:
    """Return how far a printer is told to move, against the way it misses: right and down, mm."""
    across, down = (float(part) for part in book.settings.printer_feed.split(","))
    return (-across or 0.0, -down or 0.0)


def used_places(text: str | None) -> tuple[int, ...]:
    """Return the places of a half-used sheet that are gone: "1,2,5"; raises Unreadable."""
    try:
        return tuple(int(part) for part in text.split(",")) if text else ()
    except ValueError:
        raise Unreadable(f'"{text}" names no places.', 'Write their numbers: "1,2,5".') from None


def own_label(asked: dict[str, Any]) -> Size | None:
    """Return the size of a bought label, or None where it is the chosen size."""
    own = _label_figures(asked["label_sheet"])[6:] if asked["label_sheet"] else []
    return label_box(*own) if own else None


def _label_figures(text: str) -> list[Fraction]:
    try:
        figures = [Fraction(part.strip()) for part in text.split(",")]
    except (ValueError, ZeroDivisionError):
        figures = []
    if len(figures) not in (6, 8):
        raise Unreadable(
            f'"{text}" is not a label sheet.',
            "Write columns, rows, left and top margin, and how far it is from one label to the "
            'next, across and down: "2,4,15,18.5,90,65"; '
            'then, if you like, a label\'s own width and height: "2,4,15,18.5,90,65,88,63".',
        )
    return figures
