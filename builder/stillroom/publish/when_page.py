"""The "when" part of a recipe's page: which giving day it is aimed at, its dates, its drawing."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache

from stillroom.core.recipe.kind_dates import KindDates, dates_of_kind, why_undated
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.calendar_entries import make_entries
from stillroom.core.when.calendar_files import make_calendar
from stillroom.core.when.season import SeasonNote, plan_in_season
from stillroom.core.when.stages import MILESTONES
from stillroom.core.when.timeline import Timeline, latest_start_best, latest_start_usable
from stillroom.core.when.timeline_words import StageWords, describe_dates, describe_stages, sum_up
from stillroom.publish.library import ComingDay, Library, Link
from stillroom.publish.timeline_picture import NARROW, WIDE, Picture, draw_timelines


@dataclass(frozen=True)
class WhenView:
    """What fragments/when.html shows."""

    aimed: ComingDay
    sooner: str
    coming: tuple[ComingDay, ...]
    timeline: Timeline
    undated: tuple[StageWords, ...]
    rows: tuple[StageWords, ...]
    wide: Picture
    narrow: Picture
    label: str
    season: str
    of_kind: KindDates | None
    calendar: str
    not_known: str = ""

    @property
    def work(self) -> tuple[StageWords, ...]:
        """What is done, without how long it stands between and how old it is in the end."""
        return tuple(row for row in self.undated if row.role not in ("rest", *MILESTONES))


def make_when(library: Library, recipe: Recipe, link: Link) -> WhenView:
    """Return the dates of a recipe for the first giving day that it can still be best on."""
    aimed = aim_at(recipe, library.coming_days, library.today)
    timeline, season = _plan(recipe, aimed.day, library.today)
    wide, narrow = draw_timelines(timeline, WIDE, NARROW)
    return WhenView(
        aimed=aimed,
        sooner=_usable_sooner(library, recipe, aimed),
        coming=library.coming_days,
        timeline=timeline,
        undated=describe_stages(recipe.stages),
        rows=describe_dates(timeline),
        wide=wide,
        narrow=narrow,
        label=sum_up(timeline, recipe.title),
        season=season.text if season else "",
        of_kind=dates_of_kind(recipe),
        calendar=link(calendar_path(recipe.slug)),
        not_known=why_undated(recipe),
    )


def aim_at(recipe: Recipe, coming: tuple[ComingDay, ...], today: date) -> ComingDay:
    """Return the first giving day it can be at its best on if begun from today; else the last."""
    for giving in coming:
        if latest_start_best(recipe, giving.day) >= today:
            return giving
    return coming[-1]


def _usable_sooner(library: Library, recipe: Recipe, aimed: ComingDay) -> str:
    """Say for which day before that it is aimed at it can still be usable; "" where for none."""
    for giving in library.coming_days:
        if giving.day >= aimed.day:
            break
        if latest_start_usable(recipe, giving.day) < library.today:
            continue
        timeline, season = plan_in_season(recipe, recipe.season, giving.day, library.today)
        if timeline.verdict.code == "late_for_best":
            words = f"For {giving.name}, {giving.words}: {timeline.verdict.text}"
            return f"{words} {season.text}" if season else words
    return ""


@lru_cache(maxsize=8)  # the page and the calendar ask one after the other
def _plan(recipe: Recipe, day: date, today: date) -> tuple[Timeline, SeasonNote | None]:
    return plan_in_season(recipe, recipe.season, day, today)


def calendar_path(slug: str) -> str:
    """Return where a recipe's calendar file lies in the book.

    >>> calendar_path("quince-ratafia")
    'r/quince-ratafia/quince-ratafia.ics'
    """
    return f"r/{slug}/{slug}.ics"


def make_recipe_calendar(library: Library, recipe: Recipe) -> str:
    """Return the text of a recipe's calendar for the giving day it is aimed at.

    "" where nobody knows when it is ready.
    """
    if why_undated(recipe):
        return ""
    aimed = aim_at(recipe, library.coming_days, library.today)
    timeline, _season = _plan(recipe, aimed.day, library.today)
    entries = make_entries(recipe.slug, recipe.title, timeline)
    if of_kind := dates_of_kind(recipe):
        entries = tuple(
            replace(entry, description=f"{entry.description}\n\n{of_kind.text}".strip())
            for entry in entries
        )
    url = library.address_of(recipe)
    return make_calendar(recipe.title, entries, library.today, url).decode("utf-8")
