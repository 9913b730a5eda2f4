"""The wall year: what to begin, tend, bottle and give in each month, on one sheet to hang up.

The dates are core.year's; this lays them out as plain data for year.typ.
"""

from __future__ import annotations

from datetime import date
from itertools import groupby
from pathlib import Path
from typing import Any

from stillroom.core.paper.sheets import Size
from stillroom.core.when.year import Month, Task, Year
from stillroom.printing.language import split_language
from stillroom.printing.recipe_data import short_day
from stillroom.printing.sheets_of import refuse_year
from stillroom.printing.typesetting import measure, typeset

SHOWN = ("start", "tend", "bottle", "give")
"""Labelling a day before giving goes without saying on a wall."""


def print_year(
    year: Year, title: str, *, paper: Size, language: str = "en_GB", fonts: Path | None = None
) -> bytes:
    """Return one lying sheet with the twelve months; raises Unreadable when they do not fit."""
    spoken, region = split_language(language)
    lying = paper.turned()
    data = {
        "title": f"{title}: the year to {_say_end(year)}",
        "language": spoken,
        "region": region,
        "paper": {"width": float(lying.width_mm), "height": float(lying.height_mm)},
        "months": [
            _month(month) | {"show_year": place == 0 or month.first.month == 1}
            for place, month in enumerate(year.months)
        ],
        "occasions": [
            {"name": one.name, "day": f"{short_day(one.day)} {one.day.year}"}
            for one in year.occasions
        ],
    }
    refuse_year(measure("year.typ", data, "fit", fonts=fonts), paper.name)
    return typeset("year.typ", data, fonts=fonts).pdf


def _say_end(year: Year) -> str:
    last = year.months[-1].first
    return f"{year.months[-1].name} {last.year}"


def _month(month: Month) -> dict[str, Any]:
    rows = [{"task": task, "lines": _lines(month, task)} for task in SHOWN if month.of(task)]
    return {
        "name": month.name,
        "year": month.first.year,
        "rows": rows,
    }


def _lines(month: Month, sort: str) -> list[dict[str, str]]:
    """Return a line a day for what has a day, and one for what is tended all month."""
    tasks = sorted(month.of(sort), key=_first_day)
    return [
        {"day": day, "words": ", ".join(dict.fromkeys(task.title for task in group))}
        for day, group in groupby(tasks, lambda task: _days(month, task))
    ]


def _first_day(task: Task) -> tuple[date, date]:
    return task.first, task.last


def _days(month: Month, task: Task) -> str:
    """Return the days of the month, with the year where it is not this month's."""
    year = month.other_year(task)
    beyond = f" ({year})" if year else ""
    if task.first == task.last:
        return f"{task.first.day}{beyond}"
    return f"{task.first.day}–{task.last.day}{beyond}"
