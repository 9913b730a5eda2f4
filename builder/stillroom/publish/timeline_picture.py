"""The drawn timeline of a recipe: where every band, mark and word stands, for an SVG template.

Each thing to be done has a strip of its own: its words above, its band or marks below, so words
never meet whatever the dates. The axis chooses hours, days, weeks, months or years so that its
words never meet either. Measures are in the picture's own pixels; the browser redraws with the
same rules (assets/js/when/timeline-drawing.js).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date
from typing import Final

from stillroom.core.when.stage_dates import DatedStage
from stillroom.core.when.timeline import Timeline
from stillroom.core.when.timeline_words import say_rhythm
from stillroom.core.words.day_words import say_day_and_month, say_day_short
from stillroom.core.words.joining import join_and
from stillroom.core.words.said import Said
from stillroom.publish.timeline_axis import (
    DAY,
    TEXT,
    AxisMark,
    draw_axis,
    text_width,
)

_say: Final = Said("stillroom.core.when", "dates")
WIDE: Final = 720
NARROW: Final = 288
SIDE: Final = 8
LINE: Final = 16
BAND: Final = 12
GAP: Final = 9
AXIS: Final = 40


@dataclass(frozen=True, slots=True)
class Band:
    """A stretch of time, shaded by its look: tend, rest, window, usable or best."""

    look: str
    x: float
    width: float


@dataclass(frozen=True, slots=True)
class Lane:
    """A strip: words, then bands, ticks (tending days) and dots (days of work)."""

    role: str
    lines: tuple[str, ...]
    x: float
    anchor: str
    y: float
    band_y: float
    bands: tuple[Band, ...]
    ticks: tuple[float, ...]
    dots: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Picture:
    """A whole drawing; `goes_on` when keeping lasts beyond its edge."""

    width: float
    height: float
    lanes: tuple[Lane, ...]
    axis: tuple[AxisMark, ...]
    axis_y: float
    give_x: float
    give_y: float
    goes_on: bool


@dataclass(frozen=True, slots=True)
class _Raw:
    """A lane before it has a place: its words and its times in minutes from the start."""

    role: str
    words: str
    bands: tuple[tuple[str, int, int], ...] = ()
    ticks: tuple[int, ...] = ()
    dots: tuple[int, ...] = ()


def draw_timeline(timeline: Timeline, width: float = WIDE) -> Picture:
    """Place every part of a timeline in a picture of this width."""
    return draw_timelines(timeline, width)[0]


def draw_timelines(timeline: Timeline, *widths: float) -> tuple[Picture, ...]:
    """Place every part of a timeline in pictures of several widths: what they say is the same."""
    horizon = _horizon(timeline)
    lanes = tuple(_lanes(timeline, horizon))
    return tuple(_draw(timeline, lanes, horizon, width) for width in widths)


def _draw(timeline: Timeline, raws: tuple[_Raw, ...], horizon: int, width: float) -> Picture:
    def place(minute: float) -> float:
        inner = width - 2 * SIDE
        return round(SIDE + inner * min(max(minute, 0), horizon) / horizon, 1)

    y, lanes = 4.0, []
    for raw in raws:
        lane = _place_lane(raw, place, y, width)
        lanes.append(lane)
        y = lane.band_y + BAND + GAP
    give = (timeline.give - timeline.start).days * DAY
    return Picture(
        width=width,
        height=y + AXIS,
        lanes=tuple(lanes),
        axis=draw_axis(timeline.start, horizon, place, width),
        axis_y=y,
        give_x=place(give),
        give_y=lanes[-1].band_y + BAND / 2,
        goes_on=timeline.keep_until is None or _minute(timeline, timeline.keep_until) > horizon,
    )


def _minute(timeline: Timeline, day: date) -> int:
    return (day - timeline.start).days * DAY


def _horizon(timeline: Timeline) -> int:
    """Return the minutes drawn: to the last thing before keeping, and a little beyond."""
    days = [timeline.best, timeline.usable, timeline.give, timeline.ready]
    ends = [row.ends_minute for row in timeline.stages]
    last = max(*(_minute(timeline, day) for day in days), *ends, 60)
    return last + max(60, last // 12)


def _lanes(timeline: Timeline, horizon: int) -> Iterator[_Raw]:
    """Yield a strip for each thing done (rows of one name share it), then use and giving."""
    names = dict.fromkeys((row.name, row.role) for row in timeline.stages)
    for name, role in names:
        rows = [row for row in timeline.stages if (row.name, row.role) == (name, role)]
        if role == "tend":
            yield _tend_lane(timeline, name, rows)
        elif role == "rest":
            yield _rest_lane(timeline, name, rows)
        else:
            days = dict.fromkeys(day for row in rows for day in row.dates)
            dots = tuple(_dot(timeline, row, day) for row in rows for day in row.dates)
            words = join_and([say_day_and_month(day) for day in days])
            yield _Raw(role, _say("worked", name=name, days=words), dots=dots)
    yield _use_lane(timeline, horizon)
    give = _minute(timeline, timeline.give)
    words = "lane_give" if timeline.asked else "lane_can_be_given"
    yield _Raw("give", _say(words, day=say_day_short(timeline.give)), dots=(give,))


def _tend_lane(timeline: Timeline, name: str, rows: list[DatedStage]) -> _Raw:
    rhythms = dict.fromkeys(say_rhythm(row.every, row.times) for row in rows)
    ticks = tuple(_minute(timeline, day) for row in rows for day in row.dates)
    bands = tuple(
        ("tend", _tended_from(timeline, row, before), row.ends_minute)
        for row, before in zip(rows, (None, *rows), strict=False)
        if len(row.dates) > 1
    )
    last = say_day_and_month(rows[-1].dates[-1])
    words = _say(
        "lane_tended" if len(ticks) > 1 else "lane_tended_once",
        name=name, rhythms=_say("then").join(rhythms), day=last,
    )  # fmt: skip
    return _Raw("tend", words, bands, ticks)


def _tended_from(timeline: Timeline, row: DatedStage, before: DatedStage | None) -> int:
    """Return where a band of tending begins: at its first day, or where the one before it ends."""
    goes_on = before is not None and before.ends_minute >= row.begins_minute
    return row.begins_minute if goes_on else _minute(timeline, row.first)


def _rest_lane(timeline: Timeline, name: str, rows: list[DatedStage]) -> _Raw:
    bands = tuple(
        ("window" if row.condition else "rest", row.begins_minute, max(row.ends_minute, 1))
        for row in rows
    )
    where = next((row.where for row in rows if row.where), "")
    condition = next((row.condition for row in rows if row.condition), "")
    said = " ".join(part for part in (name, where, condition) if part)
    words = "lane_rests_on"
    if rows[-1].to > rows[0].from_:
        words = "lane_rests_about" if condition else "lane_rests"
    return _Raw("rest", _say(words, name=said, day=say_day_and_month(rows[-1].to)), bands)


def _use_lane(timeline: Timeline, horizon: int) -> _Raw:
    usable, best = (_from_minute(timeline, day) for day in (timeline.usable, timeline.best))
    end = _minute(timeline, timeline.keep_until) if timeline.keep_until else horizon
    bands = [("usable", usable, min(best, end))] if usable < best else []
    bands.append(("best", min(best, end), max(min(best, end), end)))
    from_best = say_day_short(timeline.best)
    words = _say("lane_best", best=from_best)
    if usable < best:
        words = _say("lane_use", usable=say_day_short(timeline.usable), best=from_best)
    if timeline.keep_until:
        words = _say("lane_keeps", words=words, day=say_day_short(timeline.keep_until))
    return _Raw("use", words, tuple(bands))


def _from_minute(timeline: Timeline, day: date) -> int:
    """Return when an age is reached: on a day of making, once that day's making is over."""
    busy = [row.ends_minute for row in timeline.stages if row.to == day and row.role != "tend"]
    same_day = [minute for minute in busy if minute < _minute(timeline, day) + DAY]
    return max([_minute(timeline, day), *same_day])


def _dot(timeline: Timeline, row: DatedStage, day: date) -> int:
    """Return when a day's work stands: within its day for a making of hours."""
    return row.begins_minute if day == row.from_ else _minute(timeline, day)


def _place_lane(raw: _Raw, place: Callable[[float], float], y: float, width: float) -> Lane:
    lines = _wrap(raw.words, width - 2 * SIDE)
    wide = max(text_width(line) for line in lines)
    times = [*raw.ticks, *raw.dots, *(band[1] for band in raw.bands)]
    first = place(min(times))
    fits = first + wide <= width - SIDE
    bands = tuple(
        Band(look, place(start), max(round(place(end) - place(start), 1), 2.0))
        for look, start, end in raw.bands
    )
    return Lane(
        role=raw.role,
        lines=lines,
        x=max(SIDE, first) if fits else width - SIDE,
        anchor="start" if fits else "end",
        y=y + TEXT,
        band_y=y + LINE * len(lines) + 3,
        bands=bands,
        ticks=tuple(place(minute) for minute in raw.ticks),
        dots=tuple(place(minute) for minute in raw.dots),
    )


def _wrap(words: str, width: float) -> tuple[str, ...]:
    lines = [""]
    for word in words.split(" "):
        longer = f"{lines[-1]} {word}".strip()
        if lines[-1] and text_width(longer) > width:
            lines.append(word)
        else:
            lines[-1] = longer
    return tuple(lines)
