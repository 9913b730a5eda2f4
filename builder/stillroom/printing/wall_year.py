"""The wall year: what to begin, tend, bottle and give, day by day, to hang up and tick off.

It is one A3 sheet, or two A4 sheets of which the second is laid on a line of the first. The dates
are core.year's; this lays them out as plain data for year.typ. What falls beyond the twelve months
stands apart, under its own month and year, and so does what can still be made for the next giving
day though it is laid out for a later.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date
from itertools import groupby
from pathlib import Path
from typing import Any

from stillroom.core.paper.sheets import Size
from stillroom.core.recipe.kinds import find_kind
from stillroom.core.when.year import StillTime, Task, Year
from stillroom.core.words.day_words import say_day_short, say_month
from stillroom.looks.quotes import curl_all
from stillroom.printing.language import split_language
from stillroom.printing.recipe_data import short_day
from stillroom.printing.sheets_of import refuse_year
from stillroom.printing.typesetting import measure, typeset

SHOWN = ("start", "tend", "bottle", "finish", "give")
"""The order of work within a day: only a drink is bottled, all else is finished. Labelling a day
before giving goes without saying on a wall."""

JOIN_MM = 8
"""How much of the first of two sheets lies under the second: wider than the edge that a printer
leaves white, and enough for glue or tape; common practice, no published source."""

ONE_SHEET_MM = 400
"""A paper whose long side is at least this holds the year on one sheet; a smaller takes two."""


def print_year(
    year: Year,
    title: str,
    *,
    paper: Size,
    still: Sequence[StillTime] = (),
    language: str = "en_GB",
    fonts: Path | None = None,
) -> bytes:
    """Return the twelve months on one lying sheet, or on two standing ones of a small paper.

    Raises Unreadable when they do not fit.
    """
    spoken, region = split_language(language)
    joined = paper.height_mm < ONE_SHEET_MM
    held = paper if joined else paper.turned()
    data = {
        "title": f"{title}: the year to {_say_end(year)}",
        "language": spoken,
        "region": region,
        "paper": {"width": float(held.width_mm), "height": float(held.height_mm)},
        "join_mm": JOIN_MM if joined else 0,
        "months": months_of(year),
        "apart": _apart(year, still),
        "occasions": [{"name": one.name, "day": say_day_short(one.day)} for one in year.occasions],
    }
    data = curl_all(data, language)
    refuse_year(measure("year.typ", data, "fit", fonts=fonts), paper.name, joined=joined)
    return typeset("year.typ", data, fonts=fonts).pdf


def _say_end(year: Year) -> str:
    last = year.months[-1].first
    return f"{year.months[-1].name} {last.year}"


def months_of(year: Year) -> list[dict[str, Any]]:
    """Return the twelve months, each with its own year's work in order of days."""
    drinks = _drinks(year)
    return [
        {
            "name": month.name,
            "year": month.first.year if place == 0 or month.first.month == 1 else 0,
            "lines": _lines((t for t in month.tasks if month.other_year(t) is None), drinks),
        }
        for place, month in enumerate(year.months)
    ]


def _has_past(year: Year) -> bool:
    """Say whether a batch should have been begun before the twelve months."""
    return any(task.first < year.first for month in year.months for task in month.tasks)


def later_of(year: Year) -> list[dict[str, Any]]:
    """Return the months outside the twelve in which there is work, each with its year."""
    drinks = _drinks(year)
    beyond: dict[date, list[Task]] = {}
    for month in year.months:
        for task in month.tasks:
            if month.other_year(task) is not None and task.task in SHOWN:
                beyond.setdefault(task.first.replace(day=1), []).append(task)
    return [
        {"name": f"{say_month(first.month)} {first.year}", "lines": _lines(beyond[first], drinks)}
        for first in sorted(beyond)
    ]


def _apart(year: Year, still: Sequence[StillTime]) -> list[dict[str, Any]]:
    """Return what stands apart from the twelve months, under heads of its own."""
    later = later_of(year)
    head = "In other years" if _has_past(year) else "After that"
    boxes = [{"head": head, "months": later}] if later else []
    if still:
        months = [{"name": "", "lines": still_lines(still)}]
        boxes.insert(0, {"head": f"Still for {year.occasions[0].name}", "months": months})
    return boxes


def still_lines(still: Iterable[StillTime]) -> list[dict[str, Any]]:
    """Return a line for each day by which something must be begun, the soonest first."""

    def day_of(one: StillTime) -> date:
        return one.season.start if one.season and one.season.start else one.start_by

    return [
        {
            "day": f"by {day.day} {say_month(day.month)}",
            "task": "start",
            "titles": [{"title": one.title, "later": _say_why(one)} for one in group],
        }
        for day, group in groupby(sorted(still, key=day_of), day_of)
    ]


def _say_why(one: StillTime) -> str:
    """Return why it is laid out for a later day: "not at its best", "of stored produce"."""
    best = "" if one.fits == "best" else "not at its best"
    stored = "of stored produce" if one.season and one.season.start is None else ""
    return ", ".join(part for part in (best, stored) if part)


def _drinks(year: Year) -> frozenset[str]:
    """Return the recipes of what goes into bottles to be drunk."""
    return frozenset(band.slug for band in year.bands if find_kind(band.kind).is_("drink"))


def _lines(tasks: Iterable[Task], drinks: frozenset[str]) -> list[dict[str, Any]]:
    """Return a line for each day and sort of work, in order of days, with what it is done to."""

    def sort_of(task: Task) -> str:
        return "finish" if task.task == "bottle" and task.slug not in drinks else task.task

    def place(task: Task) -> tuple[date, date, int, str]:
        return task.first, task.last, SHOWN.index(sort_of(task)), task.title.casefold()

    shown = sorted((task for task in tasks if task.task in SHOWN), key=place)
    return [
        {"day": day, "task": sort, "titles": _titles(list(group))}
        for (day, sort), group in groupby(shown, lambda task: (_days(task), sort_of(task)))
    ]


def _titles(tasks: Sequence[Task]) -> list[dict[str, str]]:
    """Return each title once, with the year it is for where that is not the next giving day."""
    each = dict.fromkeys((task.title, task.later_year) for task in tasks)
    return [{"title": title, "later": f"for {year}" if year else ""} for title, year in each]


def _days(task: Task) -> str:
    """Return the days of the month: "13", "1–26", and both months where work runs over an end."""
    if task.first == task.last:
        return str(task.first.day)
    if task.first.month == task.last.month:
        return f"{task.first.day}–{task.last.day}"
    return f"{task.first.day}–{short_day(task.last)}"
