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
from stillroom.core.words.said import Said

_say = Said("stillroom.core.when", "dates")


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
    if timeline.usable < timeline.best:
        rows.append(_age("usable", "usable", "from", timeline.usable))
    rows.append(_age("best", "best", "from", timeline.best))
    if timeline.asked:
        iso = timeline.give.isoformat()
        rows.append(StageWords(_say("give"), say_day(timeline.give), "", "give", iso))
    else:
        rows.append(_age("can_be_given", "give", "from", timeline.give))
    if timeline.keep_until:
        rows.append(_age("keeps", "keep", "until", timeline.keep_until))
    return tuple(sorted(rows, key=lambda row: row.iso_from))


def _age(name: str, role: str, way: str, day: date) -> StageWords:
    iso = day.isoformat()
    return StageWords(_say(name), _say(way, day=say_day(day)), "", role, iso)


def _dated(row: DatedStage) -> StageWords:
    hands = say_minutes(row.hands_on_minutes) if row.hands_on_minutes else ""
    if row.role == "tend" and len(row.dates) > 1:
        first, last = say_day(row.dates[0]), say_day(row.dates[-1])
        when = _say("tended", rhythm=say_rhythm(row.every, row.times), first=first, last=last)
        hands = _say("each_time", count=len(row.dates) * row.times, minutes=hands)
    elif row.to > row.from_:
        when = _say("days", first=say_day(row.from_), last=say_day(row.to))
        if row.condition:
            when = _say("depends", condition=row.condition, when=when)
        elif row.to_earliest < row.to:
            when = _say("at_the_earliest", when=when, day=say_day(row.to_earliest))
    else:
        when = say_day(row.dates[0] if row.dates else row.from_)
    if row.where:
        when = _say("where", when=when, where=row.where)
    return StageWords(row.name, when, hands, row.role, row.first.isoformat())


def say_rhythm(every: Span | None, times: int = 1) -> str:
    """Return a rhythm in words: "every day", "every 3 days", "twice a day"."""
    if every is None:
        return _say("once")
    if times > 1:
        return _say(f"often_{every.unit}", count=times)
    return _say(f"every_{every.unit}", count=every.high, number=every.number)


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


def describe_ages(stages: Iterable[Stage]) -> tuple[tuple[str, str, str], ...]:
    """Return of each milestone its role, a name and how old the thing is then.

    The role is "usable" or "best": `("best", "Best from", "5 weeks")`, `("best", "At its best", "at
    once")`.
    """
    ages = {stage.role: stage.age for stage in stages}
    return tuple(
        (role, _say(f"fact_{role}_from"), str(age))
        if (age := ages[role])
        else (role, _say(role), _say("at_once"))
        for role in MILESTONES
        if role in ages
    )


def say_age_name(role: str) -> str:
    """Return what a milestone is called among the facts: "Usable from"."""
    return _say(f"fact_{role}_from")


def sum_up(timeline: Timeline, title: str) -> str:
    """Return one paragraph: what is begun, how it is tended, when it may be used and given."""
    told: list[tuple[date, str]] = []
    for row in timeline.stages:
        if row.role == "tend" and len(row.dates) > 1:
            rhythm, until = say_rhythm(row.every, row.times), say_day(row.dates[-1])
            words = _say("tended_until", name=row.name, rhythm=rhythm, day=until)
            told.append((row.first, words))
        elif row.role in ("tend", "strain", "bottle"):
            told.append((row.dates[0], _say("done_on", name=row.name, day=say_day(row.dates[0]))))
    given = "given_on" if timeline.asked else "can_be_given_on"
    ages = [("best_from", timeline.best), (given, timeline.give)]
    if timeline.usable < timeline.best:
        ages.insert(0, ("usable_from", timeline.usable))
    if timeline.keep_until:
        ages.append(("keeps_until", timeline.keep_until))
    told += [(day, _say(name, day=say_day(day))) for name, day in ages]
    begun = _say("begun", title=title, day=say_day(timeline.start))
    return " ".join([begun, *(words for _, words in sorted(told, key=lambda one: one[0]))])


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
