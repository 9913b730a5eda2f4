"""The year of a book: month by month what to start, tend, bottle, finish and give, and how long.

The year shown is a round of twelve months from a first month. For each recipe and each giving
day by name, the next batch that can still be begun in the round is laid out from its last good
start; what of it falls beyond the twelve months stands in the month of the same name. Also what
can still be made by a day. Pure; today is an argument.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Final

from dateutil.relativedelta import relativedelta

from stillroom.core.when.season import SeasonNote, find_season, plan_in_season
from stillroom.core.when.timeline import (
    Timed,
    Timeline,
    latest_start_best,
    latest_start_usable,
    plan_back,
)
from stillroom.core.words.day_words import say_month

_TASK_OF: Final = {"strain": "bottle", "bottle": "bottle", "finish": "bottle", "tend": "tend"}
_LABELLING: Final = ("Label", "Wrap", "Tag", "Tie", "Box")
# Writing a card and tying it on, where a recipe has no such line of its own
# (common practice of this household, no published source).
LABEL_MINUTES: Final = 10
LABEL_DAYS_BEFORE: Final = 1


@dataclass(frozen=True, slots=True)
class Named:
    """A recipe with its name, as the year lists it."""

    slug: str
    title: str
    kind: str
    recipe: Timed
    season: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Occasion:
    """A giving day of the year: its name and date."""

    name: str
    day: date


@dataclass(frozen=True, slots=True)
class Task:
    """One thing to do in a month: for which recipe and giving day, its first and last day.

    `giving` is the day it is given. `batches` is above 1 when batches for several giving days are
    made together; `times` and `minutes` are then those of all, `giving` is the first of them.
    """

    task: str
    slug: str
    title: str
    occasion: str
    name: str
    first: date
    last: date
    times: int
    minutes: int
    giving: date
    passes_by: bool
    batches: int = 1

    @property
    def later_year(self) -> int | None:
        """Return the year it is given in where an earlier day of that name comes before; else None.

        What is begun in November for next year's Christmas is not for this one, which it passes by.
        """
        return self.giving.year if self.passes_by else None


@dataclass(frozen=True, slots=True)
class Month:
    """A month of the year with its tasks in order of day, and its hands-on minutes."""

    first: date
    tasks: tuple[Task, ...]
    minutes: int

    @property
    def name(self) -> str:
        """The month's name."""
        return say_month(self.first.month)

    def of(self, task: str) -> tuple[Task, ...]:
        """Return the tasks of one sort."""
        return tuple(one for one in self.tasks if one.task == task)

    def other_year(self, task: Task) -> int | None:
        """Return the year of a task that falls beyond the twelve months; None for this month's."""
        return None if task.first.year == self.first.year else task.first.year


@dataclass(frozen=True, slots=True)
class YearBand:
    """One batch of the year, for drawing; `before` is the day of that name that it comes after."""

    slug: str
    title: str
    kind: str
    occasion: Occasion
    timeline: Timeline
    before: date | None = None


@dataclass(frozen=True, slots=True)
class Year:
    """Twelve months, their bands and occasions."""

    first: date
    end: date
    months: tuple[Month, ...]
    bands: tuple[YearBand, ...]
    occasions: tuple[Occasion, ...]

    @property
    def minutes(self) -> int:
        """Hands-on minutes of the whole year."""
        return sum(month.minutes for month in self.months)


@dataclass(frozen=True, slots=True)
class StillTime:
    """Whether and how a recipe can still be made: "best", "usable" or "late", and its dates.

    `season` is what the season adds to `start_by`; None when nothing, and for what is too late.
    """

    slug: str
    title: str
    fits: str
    start_by: date
    spare_days: int
    timeline: Timeline
    season: SeasonNote | None


def plan_year(
    recipes: Iterable[Named],
    occasions: Iterable[Occasion],
    first_month: date,
    *,
    not_before: date | None = None,
) -> Year:
    """Return the round of twelve months that begins with a month.

    `occasions` holds each giving day by name, several of one name for the years to come. A batch
    that had to be begun before `not_before`, a day of the first month, gives way to the next.
    """
    given = tuple(occasions)
    bands = [list_bands(one, given, first_month, not_before=not_before) for one in recipes]
    return gather_year(bands, given, first_month)


def list_bands(
    one: Named,
    occasions: Iterable[Occasion],
    first_month: date,
    *,
    not_before: date | None = None,
    today: date | None = None,
) -> tuple[YearBand, ...]:
    """Return one recipe's next batch for each giving day by name, the soonest name first.

    With `today`, what can no longer be usable by a day gives way to the next day of that name; what
    had to be begun earlier this month to be at its best stays, since a late start still serves.
    """
    first = first_month.replace(day=1)
    earliest = max(first, not_before or first)
    return tuple(
        _next_band(one, choices, earliest, today or earliest) for choices in _by_name(occasions)
    )


def _by_name(occasions: Iterable[Occasion]) -> Iterable[list[Occasion]]:
    days: dict[str, list[Occasion]] = {}
    for occasion in sorted(occasions, key=lambda one: one.day):
        days.setdefault(occasion.name, []).append(occasion)
    return days.values()


def gather_year(
    bands_of_each: Sequence[tuple[YearBand, ...]], occasions: Iterable[Occasion], first_month: date
) -> Year:
    """Return the round of twelve months of recipes whose batches are laid out (`list_bands`)."""
    first = first_month.replace(day=1)
    end = first + relativedelta(years=1)
    by_name = tuple(_by_name(occasions))
    bands = tuple(each[place] for place in range(len(by_name)) for each in bands_of_each)
    tasks = [task for band in bands for task in _tasks(band)]
    months = []
    for step in range(12):
        begins = first + relativedelta(months=step)
        here = _together([task for task in tasks if task.first.month == begins.month])
        here.sort(key=lambda task: (task.first, task.title))
        months.append(Month(begins, tuple(here), sum(task.minutes for task in here)))
    chosen = tuple(one for choices in by_name for one in choices if first <= one.day < end)
    return Year(first, end, tuple(months), bands, chosen)


def _next_band(one: Named, choices: list[Occasion], earliest: date, today: date) -> YearBand:
    """Lay out the first batch that is begun on a day or later and not too late, or the last."""
    before = None
    for occasion in choices:
        timeline = plan_in_season(one.recipe, one.season, occasion.day)[0]
        late = latest_start_usable(one.recipe, occasion.day) < today
        if (timeline.start >= earliest and not late) or occasion == choices[-1]:
            break
        before = occasion.day
    return YearBand(one.slug, one.title, one.kind, occasion, timeline, before)


def _tasks(band: YearBand) -> list[Task]:
    timeline, found = band.timeline, []

    def add(task: str, name: str, days: list[date], minutes: int, times: int = 1) -> None:
        found.append(
            Task(
                task=task,
                slug=band.slug,
                title=band.title,
                occasion=band.occasion.name,
                name=name,
                first=days[0],
                last=days[-1],
                times=len(days) * times,
                minutes=minutes * times * len(days),
                giving=band.occasion.day,
                passes_by=band.before is not None and days[0] <= band.before,
            )
        )

    add("start", "Start", [timeline.start], 0)
    for row in timeline.stages:
        labels = row.name.split(" ")[0] in _LABELLING
        task = "label" if labels else _TASK_OF.get(row.role, "start")
        if row.role in ("give", "rest"):
            continue
        months = dict.fromkeys(day.replace(day=1) for day in row.dates)
        for month in months:
            days = [day for day in row.dates if day.replace(day=1) == month]
            add(task, row.name, days, row.hands_on_minutes, row.times)
    if not any(task.task == "label" for task in found):
        labelled = max(timeline.give - timedelta(days=LABEL_DAYS_BEFORE), timeline.start)
        add("label", "Label", [labelled], LABEL_MINUTES)
    add("give", "Give", [timeline.give], 0)
    return _joined(found)


def _together(tasks: list[Task]) -> list[Task]:
    """Make one entry of the same work on the same days for several giving days."""
    joined: dict[tuple[str, str, str, date, date], Task] = {}
    for task in tasks:
        key = (task.task, task.slug, task.name, task.first, task.last)
        had = joined.get(key)
        joined[key] = (
            task
            if had is None
            else replace(
                had,
                times=had.times + task.times,
                minutes=had.minutes + task.minutes,
                giving=min(had.giving, task.giving),
                passes_by=had.passes_by and task.passes_by,
                batches=had.batches + 1,
            )
        )
    return list(joined.values())


def _same(task: Task) -> tuple[str, int]:
    """Return what of a batch's month is one entry: all beginning, one tending, one day's work."""
    if task.task == "start":
        return "", 0
    return (task.name, 0) if task.task == "tend" else ("", task.first.day)


def _joined(tasks: list[Task]) -> list[Task]:
    """Make one entry of the works of a day that begins a batch, and of a month's tending."""
    joined: dict[tuple[str, str, int, int, int], Task] = {}
    for task in tasks:
        key = (task.task, *_same(task), task.first.year, task.first.month)
        had = joined.get(key)
        if had is None:
            joined[key] = task
            continue
        joined[key] = replace(
            had,
            first=min(had.first, task.first),
            last=max(had.last, task.last),
            times=had.times + task.times,
            minutes=had.minutes + task.minutes,
            passes_by=had.passes_by or task.passes_by,
        )
    return list(joined.values())


def still_time(recipes: Iterable[Named], giving_day: date, today: date) -> tuple[StillTime, ...]:
    """Return what can still be made by a day, in the order of `in_order`."""
    return in_order(still_time_for(one, giving_day, today) for one in recipes)


def still_before(recipes: Iterable[Named], year: Year, today: date) -> tuple[StillTime, ...]:
    """Return what can still be made for the next giving day though the year lays it out later.

    It is then not at its best, or of stored or bought produce. In the order of `in_order`; nothing
    of a year whose giving days are past.
    """
    day = min((one.day for one in year.occasions if one.day >= today), default=None)
    if day is None:
        return ()
    later = {band.slug for band in year.bands if band.occasion.day > day}
    found = still_time((one for one in recipes if one.slug in later), day, today)
    return tuple(one for one in found if one.fits != "late")


def in_order(found: Iterable[StillTime]) -> tuple[StillTime, ...]:
    """Return what can still be made, what fits best first.

    First what will be at its best, then what will be usable, then what is too late; within each
    the ones with least time left to begin come first, and of what is too late the one that missed
    by least.
    """
    order = ("best", "usable", "late")
    return tuple(
        sorted(found, key=lambda one: (order.index(one.fits), abs(one.spare_days), one.title))
    )


def still_time_for(one: Named, giving_day: date, today: date) -> StillTime:
    """Return whether and how one recipe can still be made by a day."""
    best = latest_start_best(one.recipe, giving_day)
    usable = latest_start_usable(one.recipe, giving_day)
    fits, by = ("best", best) if today <= best else ("usable", usable)
    if today > by:
        fits = "late"
    timeline = plan_back(one.recipe, giving_day, today)
    season = None
    if fits != "late":
        season = find_season(one.recipe, one.season, by, giving_day, today)
    return StillTime(one.slug, one.title, fits, by, (by - today).days, timeline, season)
