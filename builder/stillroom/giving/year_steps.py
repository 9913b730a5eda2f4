"""The work of a plan by month and day, a day's steps in the order in which they happen."""

from __future__ import annotations

from datetime import date
from typing import Any

from stillroom.core.words.day_words import say_day, say_day_short, say_minutes
from stillroom.giving.batches import Making
from stillroom.giving.money.shopping import month_words


def steps_by_month(making: Making, giving_day: date) -> list[dict[str, Any]]:
    """Return every dated thing to do, by month and day; a rhythm stands on its first day."""
    todo: list[tuple[date, int, int, str]] = []
    for number, batch in enumerate(making.batches):
        for place, row in enumerate(batch.timeline.stages):
            if not row.dates:
                continue
            rhythm = f", {len(row.dates)} times to {say_day_short(row.dates[-1])}"
            often = rhythm if len(row.dates) > 1 else ""
            work = say_minutes(row.hands_on_minutes * batch.count) if row.hands_on_minutes else ""
            todo.append(
                (
                    row.dates[0],
                    number,
                    place,
                    f"{row.name}: {batch.recipe.title} ({batch.name}){often}"
                    + (f" · {work}" if work else ""),
                )
            )
    last = len(making.batches)
    todo.append((giving_day, last, 0, "Give the baskets"))
    months: dict[str, list[dict[str, str]]] = {}
    # a day's steps stand in the order in which a batch asks for them
    for day, _, _, words in sorted(todo):
        rows = months.setdefault(month_words((day.year, day.month)), [])
        rows.append({"day": f"{say_day(day).split()[0][:3]} {day.day}", "words": words})
    return [{"month": month, "rows": rows} for month, rows in months.items()]
