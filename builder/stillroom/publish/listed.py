"""What the book's lists say of one recipe: when to begin it, what it is free from, its card.

Worked out with the recipe's page (working.py) and then only asked for; of a recipe that was not,
each is worked out when it is asked.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any, Final

from stillroom.core.recipe.kind_dates import warn_of_dates
from stillroom.core.recipe.model import Recipe
from stillroom.core.recipe.private_words import warn_of_contacts
from stillroom.core.when.giving_days import find_day
from stillroom.core.when.season import SeasonNote, find_season
from stillroom.core.when.timeline import latest_start_best, latest_start_usable
from stillroom.core.when.timeline_data import timeline_data
from stillroom.core.when.year import (
    Named,
    Occasion,
    StillTime,
    YearBand,
    list_bands,
    still_time_for,
)
from stillroom.core.words.problems import Problem
from stillroom.publish.card_page import CardView, view_card
from stillroom.publish.library import Library

YEARS_SHOWN: Final = 3


@dataclass(frozen=True)
class Starts:
    """The last days to begin for a giving day, at its best and usable, and what the season adds."""

    best: date
    usable: date
    best_season: SeasonNote | None
    usable_season: SeasonNote | None


@dataclass(frozen=True)
class Listed:
    """All that lists say of a recipe; `year_data` is its timeline for the browser, as JSON."""

    free_from: tuple[str, ...]
    starts: Mapping[date, Starts]
    bands: tuple[YearBand, ...]
    still: StillTime
    year_data: str
    card: CardView
    warnings: tuple[Problem, ...]


def list_recipe(recipe: Recipe, library: Library) -> Listed:
    """Return all that lists say of a recipe."""
    days = [coming.day for coming in library.coming_days]
    return Listed(
        free_from=library.label_of(recipe).free_from,
        starts={day: _starts(recipe, day, library.today) for day in days},
        bands=list_bands(named(recipe), occasions_of(library), library.today, today=library.today),
        still=still_time_for(named(recipe), days[0], library.today),
        year_data=json.dumps(timeline_data(recipe), ensure_ascii=False),
        card=view_card(recipe, library),
        warnings=(*warn_of_dates(recipe), *warn_of_contacts(recipe)),
    )


def free_from(recipe: Recipe, library: Library) -> tuple[str, ...]:
    """Return what a recipe is free from."""
    listed = _known(recipe, library)
    return listed.free_from if listed else library.label_of(recipe).free_from


def starts(recipe: Recipe, library: Library, day: date) -> Starts:
    """Return when a recipe is to be begun for a giving day."""
    listed = _known(recipe, library)
    known = listed.starts.get(day) if listed else None
    return known or _starts(recipe, day, library.today)


def bands(recipe: Recipe, library: Library) -> tuple[YearBand, ...]:
    """Return a recipe's next batch for each giving day by name."""
    listed = _known(recipe, library)
    if listed:
        return listed.bands
    return list_bands(named(recipe), occasions_of(library), library.today, today=library.today)


def still(recipe: Recipe, library: Library) -> StillTime:
    """Return whether a recipe can still be made for the next giving day."""
    listed = _known(recipe, library)
    if listed:
        return listed.still
    return still_time_for(named(recipe), library.coming_days[0].day, library.today)


def year_data(recipe: Recipe, library: Library) -> Mapping[str, Any]:
    """Return a recipe's timeline for the browser."""
    listed = _known(recipe, library)
    return json.loads(listed.year_data) if listed else timeline_data(recipe)


def card_of(recipe: Recipe, library: Library) -> CardView:
    """Return a recipe's card, without the address of its kind's drawing."""
    listed = _known(recipe, library)
    return listed.card if listed else view_card(recipe, library)


def warnings(recipe: Recipe, library: Library) -> tuple[Problem, ...]:
    """Return where a method differs from its kind's dates, and where a telephone number stands."""
    listed = _known(recipe, library)
    return listed.warnings if listed else (*warn_of_dates(recipe), *warn_of_contacts(recipe))


def named(recipe: Recipe) -> Named:
    """Return a recipe as the year knows it."""
    return Named(recipe.slug, recipe.title, recipe.kind.name, recipe, recipe.season)


def occasions_of(library: Library) -> tuple[Occasion, ...]:
    """Return each giving day by name, with the days of some years to come."""
    found = []
    for rule in library.settings.giving_days:
        day = library.today
        for _ in range(YEARS_SHOWN):
            day = find_day(rule.day, day, library.settings.country)
            found.append(Occasion(rule.name, day))
            day += timedelta(days=1)
    return tuple(found)


def _known(recipe: Recipe, library: Library) -> Listed | None:
    worked = library.worked.get(recipe.slug)
    return worked.listed if worked else None


def _starts(recipe: Recipe, giving_day: date, today: date) -> Starts:
    def season_of(start: date) -> SeasonNote | None:
        return find_season(recipe, recipe.season, start, giving_day, today)

    best = latest_start_best(recipe, giving_day)
    usable = latest_start_usable(recipe, giving_day)
    return Starts(best, usable, season_of(best), season_of(usable))
