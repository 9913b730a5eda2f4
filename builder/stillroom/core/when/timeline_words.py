"""A timeline in words and as a document: the text equivalent of what is drawn.

What is not here: the words of a verdict (verdicts.py); pages (publish/).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from typing import Any

from stillroom.core.when.season import SeasonNote
from stillroom.core.when.spans import Span
from stillroom.core.when.stage_dates import DatedStage
from stillroom.core.when.stages import MILESTONES, Stage
from stillroom.core.when.timeline import Timeline
from stillroom.core.words.day_words import say_day, say_minutes


@dataclass(frozen=True, slots=True)
class StageWords:
    """A stage in words: what is done, when or how long, and the hands-on time if any."""

    name: str
    when: str
    hands_on: str
    role: str
    iso_from: str = ""


def timeline_document(timeline: Timeline, season: SeasonNote | None = None) -> dict[str, Any]:
    """Return the JSON document of `stillroom dates`: ISO dates; `keep_until` may be null.

    `give` is the giving day asked for, null when none was; `can_be_given` is then the first day it
    can go out at its best. Tending is dated from its first day. `season` is what the season adds,
    in words, and `season_start` the last day it allows; null when there is nothing to say or no
    such day.
    """
    return {
        "start": timeline.start.isoformat(),
        "usable": timeline.usable.isoformat(),
        "best": timeline.best.isoformat(),
        "give": timeline.give.isoformat() if timeline.asked else None,
        "can_be_given": None if timeline.asked else timeline.give.isoformat(),
        "keep_until": timeline.keep_until.isoformat() if timeline.keep_until else None,
        "tending": [day.isoformat() for day in timeline.tending],
        "stages": [
            {"name": row.name, "from": row.first.isoformat(), "to": row.to.isoformat()}
            for row in timeline.stages
        ],
        "verdict": timeline.verdict.text,
        "verdict_code": timeline.verdict.code,
        "ready": timeline.ready.isoformat(),
        "latest_start_best": timeline.latest_start_best.isoformat(),
        "latest_start_usable": timeline.latest_start_usable.isoformat(),
        "hands_on_minutes": timeline.hands_on_minutes,
        "season": season.text if season else None,
        "season_start": season.start.isoformat() if season and season.start else None,
    }


def describe_dates(timeline: Timeline) -> tuple[StageWords, ...]:
    """Return every stage with its dates in words, by date, with ages and giving day."""
    rows = [_dated(row) for row in timeline.stages]
    best = timeline.best.isoformat()
    if timeline.usable < timeline.best:
        iso = timeline.usable.isoformat()
        rows.append(StageWords("Usable", f"from {say_day(timeline.usable)}", "", "usable", iso))
    rows.append(StageWords("At its best", f"from {say_day(timeline.best)}", "", "best", best))
    give = timeline.give.isoformat()
    name, when = ("Give", "") if timeline.asked else ("Can be given", "from ")
    rows.append(StageWords(name, f"{when}{say_day(timeline.give)}", "", "give", give))
    if timeline.keep_until:
        iso = timeline.keep_until.isoformat()
        rows.append(StageWords("Keeps", f"until {say_day(timeline.keep_until)}", "", "keep", iso))
    return tuple(sorted(rows, key=lambda row: row.iso_from))


def _dated(row: DatedStage) -> StageWords:
    where = f", {row.where}" if row.where else ""
    hands = say_minutes(row.hands_on_minutes) if row.hands_on_minutes else ""
    if row.role == "tend" and len(row.dates) > 1:
        count = len(row.dates)
        first, last = say_day(row.dates[0]), say_day(row.dates[-1])
        when = f"{say_rhythm(row.every, row.times)}, {first} to {last}"
        hands = f"{count} × {hands}" if row.times == 1 else f"{count * row.times} × {hands}"
    elif row.to > row.from_:
        when = f"{say_day(row.from_)} to {say_day(row.to)}"
        if row.condition:
            when = f"{row.condition}, about {when}"
        elif row.to_earliest < row.to:
            when += f" ({say_day(row.to_earliest)} at the earliest)"
    else:
        when = say_day(row.dates[0] if row.dates else row.from_)
    return StageWords(row.name, when + where, hands, row.role, row.first.isoformat())


def say_rhythm(every: Span | None, times: int = 1) -> str:
    """Return a rhythm in words: "every day", "every 3 days", "twice a day"."""
    if every is None:
        return "once"
    if times > 1:
        often = {2: "twice", 3: "three times", 4: "four times"}.get(times, f"{times} times")
        return f"{often} a {every.unit}"
    return f"every {every.unit}" if every.high == 1 else f"every {every}"


def describe_stages(stages: Iterable[Stage]) -> tuple[StageWords, ...]:
    """Return a recipe's timeline without dates, as its maker wrote it, for a page without dates."""
    rows = []
    for stage in stages:
        hands = say_minutes(stage.hands_on_minutes) if stage.hands_on_minutes else ""
        text = stage.text or ("until the next step" if stage.role == "rest" else "")
        if stage.role in ("prepare", "strain", "bottle", "finish"):
            text = stage.where
        if stage.role in MILESTONES and stage.age:
            text = f"from {text}"
        rows.append(StageWords(stage.say, text, hands, stage.role))
    return tuple(rows)


def sum_up(timeline: Timeline, title: str) -> str:
    """Return one paragraph: what is begun, how it is tended, when it may be used and given."""
    told: list[tuple[date, str]] = []
    for row in timeline.stages:
        if row.role == "tend" and len(row.dates) > 1:
            until = say_day(row.dates[-1])
            told.append(
                (row.first, f"{row.name} {say_rhythm(row.every, row.times)} until {until}.")
            )
        elif row.role in ("tend", "strain", "bottle"):
            told.append((row.dates[0], f"{row.name} on {say_day(row.dates[0])}."))
    if timeline.usable < timeline.best:
        told.append((timeline.usable, f"Usable from {say_day(timeline.usable)}."))
    told.append((timeline.best, f"At its best from {say_day(timeline.best)}."))
    given = "Given" if timeline.asked else "It can be given"
    told.append((timeline.give, f"{given} on {say_day(timeline.give)}."))
    if timeline.keep_until:
        told.append((timeline.keep_until, f"Keeps until {say_day(timeline.keep_until)}."))
    begun = f"{title}, begun on {say_day(timeline.start)}."
    parts = [begun, *(words for _, words in sorted(told, key=lambda one: one[0]))]
    return " ".join(parts)


def timeline_text(timeline: Timeline, title: str, season: SeasonNote | None = None) -> str:
    """Return the dates as plain lines for a terminal, first the verdict and the season."""
    rows = describe_dates(timeline)
    width = max(len(row.name) for row in rows)
    lines = [title, timeline.verdict.text, *([season.text] if season else []), ""]
    for row in rows:
        hands = f"  ({row.hands_on})" if row.hands_on else ""
        lines.append(f"{row.name:<{width}}  {row.when}{hands}")
    lines += ["", f"Hands-on time in all: {say_minutes(timeline.hands_on_minutes)}."]
    return "\n".join(lines)
