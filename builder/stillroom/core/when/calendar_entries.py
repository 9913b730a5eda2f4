"""A timeline as calendar entries: all-day events, rhythms as recurrence rules.

Pure, and without a file format: publish/ and giving/ each turn entries into a calendar of their
own. Nothing of a person is in an entry unless its caller puts it into `title`.

An entry keeps its name (`uid`) as long as the batch is for the same month, so that a calendar
that reads it again moves it instead of doubling it. Rules follow RFC 5545, section 3.3.10; where
a month lacks the day, the rule takes the month's last, as the engine does.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import Final

from stillroom.core.when.stage_dates import DatedStage
from stillroom.core.when.timeline import Timeline
from stillroom.core.words.day_words import say_day, say_minutes
from stillroom.core.words.said import Said

_say: Final = Said("stillroom.core.when", "dates")
MORNING_HOUR: Final = 9
DOMAIN: Final = "stillroom"


@dataclass(frozen=True, slots=True)
class Rule:
    """A recurrence: every `interval` days, weeks or months, `count` times in all."""

    frequency: str
    interval: int
    count: int
    month_days: tuple[int, ...] = ()

    @property
    def parts(self) -> dict[str, str | int | list[int]]:
        """The parts of an RRULE in the order they are written."""
        parts: dict[str, str | int | list[int]] = {"FREQ": self.frequency}
        if self.interval > 1:
            parts["INTERVAL"] = self.interval
        parts["COUNT"] = self.count
        if self.month_days:
            parts["BYMONTHDAY"] = list(self.month_days)
        if len(self.month_days) > 1:
            parts["BYSETPOS"] = -1
        return parts


@dataclass(frozen=True, slots=True)
class CalendarEntry:
    """One all-day event, with its rule when it recurs.

    `reminders` are hours from the first midnight of the day: 9 is that morning, -15 the morning
    before.
    """

    uid: str
    title: str
    description: str
    day: date
    rule: Rule | None
    reminders: tuple[int, ...]


def make_entries(
    slug: str, title: str, timeline: Timeline, batch: str = ""
) -> tuple[CalendarEntry, ...]:
    """Return every entry of a batch: work, tending, ages, giving day, and when it is used up.

    `batch` tells apart batches of one recipe for one month, such as "batch 2".
    """
    return tuple(_entries(f"{slug}-{_word(batch)}" if batch else slug, title, timeline))


def _word(said: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", said.lower()).strip("-")


def _entries(whose: str, title: str, timeline: Timeline) -> Iterator[CalendarEntry]:
    seen: Counter[str] = Counter()

    def uid(what: str) -> str:
        name = _word(what)
        seen[name] += 1
        return f"{whose}.{timeline.give.isoformat()[:7]}.{name}-{seen[name]}@{DOMAIN}"

    for row in timeline.stages:
        if row.dates:
            yield _row_entry(uid(row.word), title, row)
    ages = [("usable", timeline.usable), ("best", timeline.best)]
    if timeline.usable >= timeline.best:
        ages = ages[1:]
    for word, day in ages:
        yield CalendarEntry(uid(word), _say(f"entry_{word}", title=title), "", day, None, ())
    given = _say("entry_give" if timeline.asked else "entry_can_be_given", title=title)
    best = _say("best_from", day=say_day(timeline.best))
    yield CalendarEntry(uid("give"), given, best, timeline.give, None, (-15, MORNING_HOUR))
    if timeline.keep_until:
        keeps, until = _say("entry_keep", title=title), timeline.keep_until
        yield CalendarEntry(uid("keep"), keeps, _say("keeps_today"), until, None, (MORNING_HOUR,))


def _row_entry(uid: str, title: str, row: DatedStage) -> CalendarEntry:
    hands = row.hands_on_minutes
    parts = [_say("of_work", minutes=say_minutes(hands)) if hands else "", row.where, row.condition]
    said = ", ".join(part for part in parts if part)
    reminders = (MORNING_HOUR,) if row.role == "tend" else (-15, MORNING_HOUR)
    return CalendarEntry(
        uid=uid,
        title=_say("entry", count=row.times, name=row.name, title=title),
        description=f"{said}." if said else "",
        day=row.dates[0],
        rule=make_rule(row),
        reminders=reminders,
    )


def make_rule(row: DatedStage) -> Rule | None:
    """Return the recurrence that expands to exactly the stage's dates; None for one date."""
    count = len(row.dates)
    if count < 2:
        return None
    if row.every is None:
        return Rule("DAILY", 1, count)
    step = row.every.low
    if row.every.unit in ("day", "week"):
        return Rule("DAILY" if row.every.unit == "day" else "WEEKLY", step, count)
    months = step * (12 if row.every.unit == "year" else 1)
    last = row.from_.day
    days = tuple(range(28, last + 1)) if last > 28 else (last,)
    return Rule("MONTHLY", months, count, days)
