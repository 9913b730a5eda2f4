"""When the main produce of a recipe is to be had, beside when the recipe must be begun.

The engine's latest start knows only ageing. Quinces for a December ratafia are bought the autumn
before: this says so, gives the start that a garden allows, and plans a batch from that start.
Pure; today is an argument.
publish/assets/js/when/season.js gives the same in the browser; the words of both are in said/.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, timedelta
from itertools import pairwise

from dateutil.relativedelta import relativedelta

from stillroom.core.when.timeline import (
    Timed,
    Timeline,
    kept_until,
    latest_start_best,
    latest_start_usable,
    plan_back,
    plan_forward,
)
from stillroom.core.when.verdicts import Verdict
from stillroom.core.words.day_words import say_day, say_month
from stillroom.core.words.joining import join_and
from stillroom.core.words.said import Said

_say = Said("stillroom.core.when", "season")


@dataclass(frozen=True, slots=True)
class SeasonNote:
    """The start that the season allows, None when none does; a sentence; a few words for lists."""

    start: date | None
    text: str
    aside: str


def plan_in_season(
    recipe: Timed, season: tuple[int, ...], giving_day: date, today: date | None = None
) -> tuple[Timeline, SeasonNote | None]:
    """Return the dates for a giving day and what the season adds.

    The batch begins on the last day in season that has it at its best, if there is one to come;
    else by its age alone, as `plan_back` has it.
    """
    latest = latest_start_best(recipe, giving_day)
    usable = latest_start_usable(recipe, giving_day)
    note = find_season(recipe, season, latest, giving_day, today, usable)
    if note is None or note.start is None:
        return plan_back(recipe, giving_day, today), note
    plan = plan_forward(recipe, note.start, giving_day, today)
    return replace(plan, verdict=_start_in_season(plan, today)), note


def last_good_start(recipe: Timed, season: tuple[int, ...], giving_day: date) -> date:
    """Return the last day to begin for a giving day: in season if there is one, else by age."""
    return plan_in_season(recipe, season, giving_day)[0].start


def _start_in_season(plan: Timeline, today: date | None) -> Verdict:
    code = "start_in_season"
    if plan.start == today:
        code = "start_in_season_today"
    elif plan.latest_start_best == plan.latest_start_usable:
        code = "start_in_season_one"
    blanks = {"start": say_day(plan.start), "give": say_day(plan.give)}
    return Verdict("start_in_season", _say(code, **blanks))


def find_season(
    recipe: Timed,
    season: tuple[int, ...],
    latest_start: date,
    giving_day: date,
    today: date | None = None,
    latest_usable: date | None = None,
) -> SeasonNote | None:
    """Return what the season adds to a latest start; None when it adds nothing.

    `season` holds months from 1. The start is the last day in season not after `latest_start`,
    if that is not before `today` and what is begun then still keeps on the giving day. When
    `latest_start` has gone by, today counts in its place. Where there is no such day, a season
    that begins by `latest_usable` is named as what has it ready, though not at its best.
    """
    wanted = latest_start if today is None else max(latest_start, today)
    if not season or wanted.month in season or wanted > giving_day:
        return None
    day = wanted.replace(day=1) - timedelta(days=1)
    while day.month not in season:
        day = day.replace(day=1) - timedelta(days=1)
    keeps = kept_until(recipe, day, giving_day)
    would_keep = keeps is None or keeps >= giving_day
    if would_keep and (today is None or day >= today):
        return _note("season_start", season, day, latest=latest_start)
    first = _first_after(wanted, season)
    if latest_usable is not None and first <= latest_usable:
        return _note("season_usable", season, first=first)
    return _note("season_gone" if would_keep else "season_would_not_keep", season)


def _first_after(day: date, season: tuple[int, ...]) -> date:
    """Return the first day in season after one that is not."""
    while day.month not in season:
        day = day.replace(day=1) + relativedelta(months=1)
    return day


def season_of_start(season: tuple[int, ...], start: date) -> SeasonNote | None:
    """Return what the season says of a batch begun on a day; None when it is then in season."""
    if not season or start.month in season:
        return None
    return _note("season_begun", season)


def _note(
    code: str,
    season: tuple[int, ...],
    start: date | None = None,
    *,
    first: date | None = None,
    latest: date | None = None,
) -> SeasonNote:
    days = {"start": start, "first": first, "latest": latest}
    blanks = {name: say_day(day) for name, day in days.items() if day}
    blanks["months"] = _say_months(season)
    aside = "season_aside" if start is None else "season_aside_start"
    return SeasonNote(start, _say(code, **blanks), _say(aside, **blanks))


def _say_months(season: tuple[int, ...]) -> str:
    names = [say_month(month) for month in season]
    runs_on = all((one % 12) + 1 == two for one, two in pairwise(season))
    if runs_on and len(names) > 2:
        return _say("months_run", first=names[0], last=names[-1])
    return join_and(names)
