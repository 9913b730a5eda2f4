"""The year's page: the round of months, the bands of each giving day, what can still be made."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any, Final

from markupsafe import Markup

from stillroom.core.recipe.kind_dates import ferments_untimed
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.year import Month, StillTime, Year, gather_year, in_order
from stillroom.core.words.day_words import say_month
from stillroom.publish.library import ComingDay, Library, Link
from stillroom.publish.listed import bands, occasions_of, still, year_data
from stillroom.publish.templating import render
from stillroom.publish.timeline_picture import NARROW, WIDE
from stillroom.publish.year_picture import YearPicture, draw_year

FITS_WORDS: Final = {
    "best": ("At their best that day", "begin by"),
    "usable": ("Ready by then, and better for waiting", "begin by"),
    "late": ("Too late for that day", "wanted a start by"),
}
"""The heading of each sort of answer, and the words before its date."""


@dataclass(frozen=True)
class OccasionView:
    """A giving day of the year with its drawing, wide and narrow.

    `given` says how much of what is drawn goes out on which day: what is too late for one is
    laid out for the next.
    """

    name: str
    day: date
    words: str
    given: str
    wide: YearPicture
    narrow: YearPicture


@dataclass(frozen=True)
class YearView:
    """What fragments/year.html shows."""

    year: Year
    months: tuple[Month, ...]
    occasions: tuple[OccasionView, ...]
    next_day: ComingDay
    coming: tuple[ComingDay, ...]
    still: tuple[StillTime, ...]
    fits_words: Mapping[str, tuple[str, str]]
    addresses: Mapping[str, str]
    data: Mapping[str, Any]
    today: date


def say_giving(month: Month) -> str:
    """Return what is labelled and given in a month: a count for each giving day, dated in full."""
    labels = Counter(task.occasion for task in month.of("label"))
    given = Counter((task.occasion, task.first) for task in month.of("give"))
    said = []
    for name in dict.fromkeys([*labels, *(occasion for occasion, _day in given)]):
        each = {day: count for (occasion, day), count in given.items() if occasion == name}
        parts = [f"label {labels[name]}"] if labels[name] else []
        parts += [f"give {_say_given(each)}"] if each else []
        said.append(f"{name}: {'; '.join(parts)}.")
    return " ".join(said)


def _say_given(counts: Mapping[date, int]) -> str:
    """Return how many go out on which day: "11 on 19 December 2026, 8 on 18 December 2027"."""
    return ", ".join(
        f"{count} on {day.day} {say_month(day.month)} {day.year}"
        for day, count in sorted(counts.items())
    )


def _dated(library: Library) -> tuple[Recipe, ...]:
    """Return the recipes of which somebody knows when they are ready."""
    return tuple(recipe for recipe in library.recipes if not ferments_untimed(recipe))


def year_of(library: Library) -> Year:
    """Return the round of twelve months from this month, for pages and for paper."""
    each = [bands(recipe, library) for recipe in _dated(library)]
    return gather_year(each, occasions_of(library), library.today)


def make_year(library: Library, link: Link) -> YearView:
    """Return everything the year's page shows."""
    year = year_of(library)
    names = dict.fromkeys(band.occasion.name for band in year.bands)
    occasions = []
    for name in names:
        here = tuple(band for band in year.bands if band.occasion.name == name)
        coming = next(one for one in library.coming_days if one.name == name)
        occasions.append(
            OccasionView(
                name=name,
                day=coming.day,
                words=coming.words,
                given=_say_given(Counter(band.occasion.day for band in here)),
                wide=draw_year(here, year.first, WIDE),
                narrow=draw_year(here, year.first, NARROW),
            )
        )
    next_day = library.coming_days[0]
    addresses = {recipe.slug: link(f"r/{recipe.slug}.md") for recipe in library.recipes}
    return YearView(
        year=year,
        months=year.months,
        occasions=tuple(occasions),
        next_day=next_day,
        coming=library.coming_days,
        still=in_order(still(recipe, library) for recipe in _dated(library)),
        fits_words=FITS_WORDS,
        addresses=addresses,
        data=_browser_data(library, addresses),
        today=library.today,
    )


def _browser_data(library: Library, addresses: Mapping[str, str]) -> dict[str, Any]:
    """Return each recipe's timeline once."""
    recipes = []
    for recipe in _dated(library):
        recipes.append({**year_data(recipe, library), "href": addresses[recipe.slug]})
    return {
        "recipes": recipes,
        "fits": [[fits, *words] for fits, words in FITS_WORDS.items()],
    }


@dataclass(frozen=True)
class YearLeaf:
    """The page of the year."""

    src_uri: str = "year.md"
    in_nav: bool = True

    def head(self, library: Library, url: str) -> Mapping[str, Any]:
        """Return the page's title and description."""
        words = "What to start, tend, bottle and give in each month, and what can still be made."
        return {"title": "The year", "description": words}

    def body(self, library: Library, prose: str, link: Link, url: str) -> str:
        """Return the whole page."""
        return render(
            "pages/year.html",
            {
                "year": make_year(library, link),
                "say_giving": say_giving,
                "language": library.settings.language,
                "prose": Markup(prose),
                "title": "The year",
            },
        )
