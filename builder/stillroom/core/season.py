"""When the main produce of a recipe is to be had, beside when the recipe must be begun.

The engine's latest start knows only ageing. Quinces for a December ratafia are bought the autumn
before: this says so, and gives the start that a garden allows. Pure.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise

from stillroom.core.day_words import MONTH_NAMES, say_day
from stillroom.core.timeline import Timed, plan_forward


@dataclass(frozen=True, slots=True)
class SeasonNote:
    """The start that the season allows, None when none keeps until the giving day; and words."""

    start: date | None
    text: str


def find_season(
    recipe: Timed,
    season: tuple[int, ...],
    latest_start: date,
    giving_day: date,
    today: date | None = None,
) -> SeasonNote | None:
    """Return what the season adds to a latest start; None when it adds nothing.

    `season` holds months from 1. The start is the last day in season not after `latest_start`,
    if that is not before `today` and what is begun then still keeps on the giving day.
    """
    if not season or latest_start.month in season:
        return None
    day = latest_start.replace(day=1) - timedelta(days=1)
    while day.month not in season:
        day = day.replace(day=1) - timedelta(days=1)
    months = _say_months(season)
    keeps = plan_forward(recipe, day, giving_day).keep_until
    if keeps is not None and keeps < giving_day:
        text = (
            f"Its main produce is to be had in {months}; begun then it would not keep until "
            "giving day, so it wants what was stored or bought in."
        )
        return SeasonNote(None, text)
    if today is not None and day < today:
        text = (
            f"Its main produce is to be had in {months}, and the last of it for this giving day "
            "has gone by: it wants what was stored or bought in."
        )
        return SeasonNote(None, text)
    return SeasonNote(day, f"Its main produce is to be had in {months}: begin by {say_day(day)}.")


def _say_months(season: tuple[int, ...]) -> str:
    names = [MONTH_NAMES[month - 1] for month in season]
    if len(names) == 1:
        return names[0]
    runs_on = all((one % 12) + 1 == two for one, two in pairwise(season))
    if runs_on and len(names) > 2:
        return f"{names[0]} to {names[-1]}"
    return f"{', '.join(names[:-1])} and {names[-1]}"
