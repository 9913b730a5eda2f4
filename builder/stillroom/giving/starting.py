"""The days on which a batch may start for a giving day, and the hours each asks of a month.

One candidate a month is enough for levelling: the latest day that has it at its best, and the
last Saturday of each earlier month, as long as it then still keeps. Today is an argument.
"""

from __future__ import annotations

from collections import defaultdict
from datetime import date, timedelta
from fractions import Fraction

from stillroom.core.recipe.model import Recipe
from stillroom.core.when.timeline import (
    Timeline,
    latest_start_best,
    latest_start_usable,
    plan_forward,
)
from stillroom.giving.plan_model import Month, StartChoice
from stillroom.giving.rules import KEEPS_AFTER_DAYS, KEEPS_AFTER_POST_DAYS

MONTHS_BACK = 9
SATURDAY = 5


def start_choices(recipe: Recipe, giving_day: date, today: date) -> tuple[StartChoice, ...]:
    """Return the days to start on, latest first; none when it is too late to be usable.

    Starts in the recipe's season come alone where there are any, and so do those after which it
    keeps as long as the post asks for.
    """
    best = latest_start_best(recipe, giving_day)
    days = [day for day in _candidates(best) if day >= today]
    if days:
        fresh = [d for d in days if _keeps(recipe, d, giving_day, KEEPS_AFTER_POST_DAYS)]
        fresh = fresh or [d for d in days if _keeps(recipe, d, giving_day, KEEPS_AFTER_DAYS)]
        in_season = [day for day in fresh if day.month in recipe.season]
        days = in_season or fresh
    elif latest_start_usable(recipe, giving_day) >= today:
        days = [today]
    return tuple(
        StartChoice(day, day <= best, hours_by_month(plan_forward(recipe, day, giving_day)))
        for day in days
    )


def _candidates(best: date) -> list[date]:
    days = {best}
    first = best.replace(day=1)
    for _ in range(MONTHS_BACK):
        last = first - timedelta(days=1)
        days.add(last - timedelta(days=(last.weekday() - SATURDAY) % 7))
        first = last.replace(day=1)
    return sorted(days, reverse=True)


def _keeps(recipe: Recipe, start: date, giving_day: date, days: int) -> bool:
    until = plan_forward(recipe, start, giving_day).keep_until
    return until is None or until >= giving_day + timedelta(days=days)


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
