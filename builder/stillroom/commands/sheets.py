"""Sheets of cards and labels as they are asked for in the terminal: bought ones, half-used ones."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from stillroom.core.paper.sheets import Grid, Size, impose, label_box, label_sheet
from stillroom.core.words.problems import Unreadable
from stillroom.printing.cards import SheetOptions


def left_on_sheet(options: SheetOptions, box: Size) -> int:
    """Return how many cards a sheet still takes."""
    grid = options.grid or impose(options.paper, box)
    return max(grid.per_page - options.start_at + 1, 1)


def bought_sheet(text: str | None, paper: Size, box: Size) -> Grid | None:
    """Return the grid of a bought sheet of labels; None where none is named."""
    if not text:
        return None
    columns, rows, left, top, across, down = _label_figures(text)[:6]
    return label_sheet(
        paper, box, columns=int(columns), rows=int(rows), left_mm=left, top_mm=top,
        pitch_x_mm=across, pitch_y_mm=down,
    )  # fmt: skip


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
            'Write columns, rows, left and top margin, pitch across and down: "2,4,15,18.5,90,65"; '
            'then, if you like, a label\'s own width and height: "2,4,15,18.5,90,65,88,63".',
        )
    return figures
