"""The days on which a batch may start for the days it must be out by, and what each asks.

One candidate a month is enough for levelling: the latest day that has it at its best, and the
last Saturday of each earlier month, as long as it then still keeps; a Saturday a week where days
are short of hours or pans. Presents that are posted have a day of their own. Today is an argument.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, timedelta
from fractions import Fraction

from stillroom.core.recipe.model import Recipe
from stillroom.core.when.timeline import (
    Timeline,
    latest_start_best,
    latest_start_usable,
    natural_giving_day,
    plan_forward,
)
from stillroom.giving.facts import facts_of
from stillroom.giving.in_season import ANY_MONTH, ProduceSeason, say_months
from stillroom.giving.plan_model import Month, StartChoice, agree

MONTHS_BACK = 9
MONTHS_OF_A_SEASON = 12  # Seville oranges of January for December
WEEKS_BACK = 10
SATURDAY = 5
_DAYS_TO_TRY = 7  # a start that falls on a day off is moved at most so far
_YOUNG_STARTS = 7  # a week of them: another may want the same day
STALE_DAYS = 200
"""What keeps half a year at most is the better the fresher: maker's own."""
UNKNOWN_KEEPS_DAYS = 7
"""So long is taken to keep what nobody knows of: common practice, no published source."""


@dataclass(frozen=True)
class Frame:
    """What starts are laid out for.

    `dues` are the days by which presents must be out, the giving day last; `keeps_to` the earliest
    day to which any basket asks them to keep; `weekly` where one start a month is not enough;
    `hours_a_day` the most hours of each weekday, Monday 0, empty where days are not limited;
    `kept` the days on which the plan before began this recipe: they may stay; `season` when its
    produce is to be had.
    """

    today: date
    dues: tuple[date, ...]
    keeps_to: date
    days_off: frozenset[date] = frozenset()
    weekly: bool = False
    hours_a_day: Mapping[int, Fraction] = field(default_factory=dict)
    kept: frozenset[date] = frozenset()
    season: ProduceSeason = ANY_MONTH

    def leaves_time_for(self, timeline: Timeline) -> bool:
        """Whether no work of a batch falls on a day off, nor on one with too few hours for it."""
        work = minutes_by_day(timeline)
        return self.days_off.isdisjoint(work) and not any(
            minutes > 60 * self.hours_a_day[day.weekday()]
            for day, minutes in work.items()
            if self.hours_a_day
        )


def start_choices(recipe: Recipe, frame: Frame) -> tuple[StartChoice, ...]:
    """Return the days to start on, latest first; none when it is too late to be usable.

    Starts in the season of its produce come alone where there are any; else each says that it is
    out of season, and one is in it that leaves no time for its best: alone where the foods
    themselves tell their season. A start with work on a day off, or on one with too few hours, is
    moved to an earlier day, or left out.
    """
    found: dict[tuple[date, date], StartChoice] = {}
    for due in frame.dues:
        days = _days(recipe, due, frame)
        own = [choice for day in days if (choice := _choice(recipe, day, due, frame))]
        own = own or _young(recipe, due, frame)
        in_season = [one for one in own if one.in_season]
        if own and not in_season:
            young = _in_season_and_young(recipe, due, frame)
            own += young
            in_season = young if frame.season.foods else []
        for choice in in_season or own:
            found.setdefault((choice.start, choice.ready or due), choice)
    ordered = sorted(found.values(), key=lambda one: (one.start, one.ready or one.start))
    return tuple(reversed(ordered))


def _young(recipe: Recipe, due: date, frame: Frame) -> list[StartChoice]:
    """Return the first days on which it may start and be usable, where none has it at its best.

    After a failed jar, or a fortnight away: a later start is better than none.
    """
    first = max(latest_start_best(recipe, due) + timedelta(days=1), frame.today)
    found: list[StartChoice] = []
    for tried in range((latest_start_usable(recipe, due) - first).days + 1):
        start = first + timedelta(days=tried)
        timeline = plan_forward(recipe, start, due)
        if not frame.leaves_time_for(timeline):
            continue
        if choice := _laid_out(recipe, timeline, due, frame):
            found.append(choice)
        if len(found) == _YOUNG_STARTS:
            break
    return found


def _in_season_and_young(recipe: Recipe, due: date, frame: Frame) -> list[StartChoice]:
    """Return the first start in season after which it is usable, and not yet at its best."""
    day = max(latest_start_best(recipe, due), frame.today) + timedelta(days=1)
    last = latest_start_usable(recipe, due)
    while day <= last:
        if frame.season.has(day.month):
            choice = _choice(recipe, day, due, frame)
            return [choice] if choice and choice.in_season else []
        day += timedelta(days=1)
    return []


def _days(recipe: Recipe, due: date, frame: Frame) -> list[date]:
    best, latest = latest_start_best(recipe, due), latest_start_usable(recipe, due)
    candidates = _candidates(best, frame.weekly, frame.season)
    days = [day for day in candidates if day >= frame.today]
    if not days and latest >= frame.today:
        days = [frame.today]
    kept = {day for day in frame.kept if frame.today <= day <= latest}
    return sorted({*days, *kept}, reverse=True)


def _candidates(best: date, weekly: bool, season: ProduceSeason) -> list[date]:
    """Return days to try: a year back and every Saturday of its season where it has a short one."""
    days = {best}
    first = best.replace(day=1)
    for _ in range(MONTHS_OF_A_SEASON if season.months else MONTHS_BACK):
        last = first - timedelta(days=1)
        saturday = last - timedelta(days=(last.weekday() - SATURDAY) % 7)
        days.add(saturday)
        first = last.replace(day=1)
        if weekly and season.months and season.has(first.month):
            days |= {saturday - timedelta(weeks=n) for n in range(1, 4)}
    if weekly:
        saturday = best - timedelta(days=(best.weekday() - SATURDAY) % 7)
        days |= {saturday - timedelta(weeks=n) for n in range(WEEKS_BACK)}
    return sorted(days, reverse=True)


def _choice(recipe: Recipe, day: date, due: date, frame: Frame) -> StartChoice | None:
    """Return a start on a day, or on the nearest earlier one whose days leave time for it."""
    for tried in range(_DAYS_TO_TRY):
        start = day - timedelta(days=tried)
        if start < frame.today:
            return None
        timeline = plan_forward(recipe, start, due)
        if frame.leaves_time_for(timeline):
            return _laid_out(recipe, timeline, due, frame)
    return None


def _laid_out(recipe: Recipe, timeline: Timeline, due: date, frame: Frame) -> StartChoice | None:
    until = keeps_until(recipe, timeline.made, timeline.keep_until)
    if until is not None and until < frame.keeps_to:
        return None
    start = timeline.start
    ready = min(natural_giving_day(recipe.stages, start), due)
    goes_stale = until is not None and (until - timeline.made).days <= STALE_DAYS
    return StartChoice(
        start,
        start <= latest_start_best(recipe, due),
        hours_by_month(timeline),
        ready=ready,
        keep_until=until,
        waits=(frame.dues[-1] - ready).days if goes_stale else 0,
        aside=_out_of_season(recipe, frame.season, start),
        due=due,
        in_season=frame.season.has(start.month),
    )


def _out_of_season(recipe: Recipe, season: ProduceSeason, start: date) -> str:
    if season.has(start.month):
        return ""
    named = f", {season.said}" if season.said else f" ({say_months(season.months)})"
    begun = agree(recipe.title, "is begun out of the season of its produce",
                  "are begun out of the season of their produce")  # fmt: skip
    return f"{recipe.title} {begun}{named}: it is stored, frozen or bought in, or not to be had."


def keeps_until(recipe: Recipe, made: date, said: date | None) -> date | None:
    """Return the last day it is good; what is not known is short, and only what is no food lasts.

    Made by hand of something that spoils ("a wreath of fresh apples") it is food in this.
    """
    if said is not None:
        return said
    lasting = not recipe.kind.edible and not any(
        held.stays
        and any(staple and staple.tags & {"perishable", "fruit"} for staple in held.staples)
        for held in facts_of(recipe).held
    )
    return None if lasting else made + timedelta(days=UNKNOWN_KEEPS_DAYS)


def hours_by_month(timeline: Timeline) -> dict[Month, Fraction]:
    """Return a batch's hands-on hours in each month it touches."""
    months: dict[Month, Fraction] = defaultdict(Fraction)
    for day, minutes in minutes_by_day(timeline).items():
        months[day.year, day.month] += Fraction(minutes, 60)
    return {month: hours for month, hours in months.items() if hours}


def minutes_by_day(timeline: Timeline) -> dict[date, int]:
    """Return a batch's hands-on minutes on each day it asks for any."""
    days: dict[date, int] = defaultdict(int)
    for stage in timeline.stages:
        for day in stage.dates:
            days[day] += stage.hands_on_minutes * stage.times
    return dict(days)
