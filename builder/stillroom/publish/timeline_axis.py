"""The axis of a drawn timeline: hours, days, weeks, months or years, whichever words keep apart."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise
from typing import Final

from stillroom.core.words.day_words import say_day_and_month, short_month

TEXT: Final = 13
# A generous width for one letter of the plain face, as a part of its size (measured in Chromium:
# 0.44 on average); too wide only wraps a little early.
LETTER: Final = 0.52
DAY: Final = 1440

_LEAST_APART: Final = 3 * TEXT * LETTER + 6
"""Between two marks with words of three letters; no word of an axis of days is shorter."""
_HOUR_STEPS: Final = (60, 120, 180, 360, 720)
_DAY_STEPS: Final = (1, 2, 3, 7, 14)
_MONTH_STEPS: Final = (1, 2, 3, 6, 12, 24, 60)


@dataclass(frozen=True, slots=True)
class AxisMark:
    """A line of the axis with its word; `year` is written below it where it changes."""

    x: float
    word: str
    year: str


def text_width(words: str) -> float:
    """Return how wide a line of words may be, in pixels; never less than it is."""
    return len(words) * TEXT * LETTER


def draw_axis(
    start: date, horizon: int, place: Callable[[float], float], width: float
) -> tuple[AxisMark, ...]:
    """Mark the axis by the finest step whose words keep apart."""
    for marks in _scales(start, horizon, width):
        placed = [(place(minute), word, day) for minute, word, day in marks]
        if len(placed) >= 2 and _keep_apart([(x, word) for x, word, _ in placed]):
            break
    shown, year = [], ""
    for x, word, day in placed:
        half = max(text_width(word), text_width("2027")) / 2
        if x - half < 0 or x + half > width:
            shown.append(AxisMark(x, "", ""))
            continue
        now = str(day.year) if day else year
        shown.append(AxisMark(x, word, now if now != year else ""))
        year = now
    return tuple(shown)


def _keep_apart(marks: list[tuple[float, str]]) -> bool:
    return all(
        two[0] - one[0] >= (text_width(one[1]) + text_width(two[1])) / 2 + 6
        for one, two in pairwise(marks)
    )


def _scales(
    start: date, horizon: int, width: float
) -> Iterator[list[tuple[int, str, date | None]]]:
    """Yield marks of every scale, finest first: minutes from the start, word, day.

    Of the days those scales are left out whose marks cannot keep apart in this width.
    """
    for step in _HOUR_STEPS if horizon <= 3 * DAY else ():
        yield [(m, f"{m // 60} h", None) for m in range(0, horizon, step)]
    for step in _DAY_STEPS:
        if horizon // DAY // step * _LEAST_APART > width:
            continue
        days = [start + timedelta(days=n) for n in range(0, horizon // DAY + 1, step)]
        yield [((day - start).days * DAY, say_day_and_month(day), day) for day in days]
    first = start.replace(day=1)
    for step in _MONTH_STEPS:
        months: list[date] = []
        day = first.replace(month=1) if step > 6 else first
        while (day - start).days * DAY <= horizon:
            # steps are counted from January, so that they fall on the same months every year
            if day >= start and (day.month - 1) % min(step, 12) == 0:
                months.append(day)
            day = _months_after(day, step if step >= 12 else 1)
        word = [(short_month(d.month) if step < 12 else str(d.year)) for d in months]
        yield [
            ((day - start).days * DAY, said, day) for day, said in zip(months, word, strict=True)
        ]


def _months_after(first: date, months: int) -> date:
    """Return the first day of a month, so many months after that of another."""
    years, before = divmod(first.month - 1 + months, 12)
    return date(first.year + years, before + 1, 1)
