"""The year drawn as bands: one row for each batch, from its start to its giving day.

Each row's words stand above its band, so words never meet; the months share timeline_picture's
axis.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from typing import Final

from stillroom.core.when.year import YearBand
from stillroom.core.words.day_words import say_day_short
from stillroom.publish.timeline_axis import DAY, AxisMark, draw_axis, text_width
from stillroom.publish.timeline_picture import AXIS, SIDE, Band

ROW: Final = 31
TOP: Final = 4


@dataclass(frozen=True, slots=True)
class YearRow:
    """One batch: its words and where its bands, its dots of work and its giving day stand."""

    title: str
    slug: str
    x: float
    anchor: str
    y: float
    band_y: float
    bands: tuple[Band, ...]
    dots: tuple[float, ...]
    give_x: float


@dataclass(frozen=True, slots=True)
class YearPicture:
    """A drawing of all batches for one giving day."""

    width: float
    height: float
    rows: tuple[YearRow, ...]
    axis: tuple[AxisMark, ...]
    axis_y: float


def draw_year(bands: tuple[YearBand, ...], first: date, width: float) -> YearPicture:
    """Place the batches of one giving day, those begun first at the top."""
    ordered = sorted(bands, key=lambda band: (band.timeline.start, band.title))
    last = max(band.occasion.day for band in ordered)
    horizon = ((last - first).days + 12) * DAY

    def place(day: date) -> float:
        share = (day - first).days * DAY / horizon
        return round(SIDE + (width - 2 * SIDE) * min(max(share, 0), 1), 1)

    def place_minute(minute: float) -> float:
        return round(SIDE + (width - 2 * SIDE) * minute / horizon, 1)

    rows = tuple(
        _place_row(band, TOP + number * ROW, place, width) for number, band in enumerate(ordered)
    )
    axis_y = TOP + len(rows) * ROW + 2
    axis = draw_axis(first, horizon, place_minute, width)
    return YearPicture(width, axis_y + AXIS, rows, axis, axis_y)


def _place_row(band: YearBand, y: float, place: Callable[[date], float], width: float) -> YearRow:
    plan = band.timeline
    words = f"{band.title}, {say_day_short(plan.start)}"
    begins = place(plan.start)
    fits = begins + text_width(words) <= width - SIDE
    bands = [Band("rest", begins, max(place(plan.give) - begins, 2))]
    tended = max((row.to for row in plan.stages if row.role == "tend"), default=plan.start)
    if tended > plan.start:
        bands.append(Band("tend", begins, max(place(tended) - begins, 2)))
    if plan.best < plan.give:
        bands.append(Band("best", place(plan.best), place(plan.give) - place(plan.best)))
    work = {day for row in plan.stages if row.role in ("strain", "bottle") for day in row.dates}
    return YearRow(
        title=words,
        slug=band.slug,
        x=begins if fits else width - SIDE,
        anchor="start" if fits else "end",
        y=y + 13,
        band_y=y + 17,
        bands=tuple(bands),
        dots=tuple(place(day) for day in sorted(work | {plan.start})),
        give_x=place(plan.give),
    )
