"""One recipe as the lists of the book show it: its words, its address, when to start it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from itertools import groupby

import babel.dates

from stillroom.core.recipe.kind_dates import ferments_untimed
from stillroom.core.recipe.kinds import all_kinds
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.season import SeasonNote
from stillroom.publish.library import Library, Link, show_picture
from stillroom.publish.listed import free_from, starts
from stillroom.publish.pictures import Drawing
from stillroom.publish.templating import make_anchor


@dataclass(frozen=True)
class Entry:
    """A recipe in a list. The two dates are the last days to start it for the giving day.

    `best_season` and `usable_season` are what the season of its produce adds to each.
    """

    recipe: Recipe
    href: str
    picture: Drawing
    free_from: tuple[str, ...]
    best_start: date
    usable_start: date
    best_season: SeasonNote | None = None
    usable_season: SeasonNote | None = None
    when: str = ""

    @property
    def is_dated(self) -> bool:
        """Whether somebody knows when it is ready, so that it can be begun in time."""
        return not ferments_untimed(self.recipe)

    @property
    def begin_best(self) -> date:
        """The last day to begin it for its best, while its produce is to be had if that can be."""
        return _in_season(self.best_start, self.best_season)

    @property
    def begin_usable(self) -> date:
        """The last day to begin it to be usable, while its produce is to be had if that can be."""
        return _in_season(self.usable_start, self.usable_season)

    @property
    def title(self) -> str:
        """The recipe's title."""
        return self.recipe.title

    @property
    def summary(self) -> str:
        """The recipe's one sentence."""
        return self.recipe.summary

    @property
    def free_names(self) -> tuple[str, ...]:
        """What it is free from, as addresses write it."""
        return tuple(make_anchor(thing) for thing in self.free_from)

    @property
    def kind_slug(self) -> str:
        """The kind as addresses write it."""
        return self.recipe.kind.slug


@dataclass(frozen=True)
class Group:
    """Entries under one heading; `name` is what an address or a choice calls it."""

    name: str
    heading: str
    words: str
    entries: tuple[Entry, ...]


def list_entries(library: Library, link: Link, giving_day: date) -> tuple[Entry, ...]:
    """Return every recipe of the book as an entry, its starts counted for one giving day."""
    return tuple(_list_one(library, recipe, link, giving_day) for recipe in library.recipes)


def _list_one(library: Library, recipe: Recipe, link: Link, giving_day: date) -> Entry:
    begin = starts(recipe, library, giving_day)
    return Entry(
        recipe=recipe,
        href=link(f"r/{recipe.slug}.md"),
        picture=show_picture(library, recipe, link),
        free_from=free_from(recipe, library),
        best_start=begin.best,
        usable_start=begin.usable,
        best_season=begin.best_season,
        usable_season=begin.usable_season,
    )


def _in_season(start: date, season: SeasonNote | None) -> date:
    return season.start if season and season.start else start


def group_by_kind(entries: Iterable[Entry]) -> tuple[Group, ...]:
    """Return the entries under their kinds, in the order of the book's chapters."""
    groups: dict[str, list[Entry]] = {}
    for entry in entries:
        groups.setdefault(entry.recipe.kind.name, []).append(entry)
    return tuple(
        Group(
            name=members[0].kind_slug,
            heading=members[0].recipe.kind.many.capitalize(),
            words=members[0].recipe.kind.describes.capitalize() + ".",
            entries=tuple(members),
        )
        for members in _in_chapter_order(groups)
    )


def _in_chapter_order(groups: dict[str, list[Entry]]) -> Iterable[list[Entry]]:
    return (groups[name] for name in all_kinds() if name in groups)


def group_by_start(entries: Iterable[Entry], language: str) -> tuple[Group, ...]:
    """Return the entries under the month in which each must be begun, soonest first."""
    dated = [entry for entry in entries if entry.is_dated]
    ordered = sorted(dated, key=lambda entry: (entry.begin_best, entry.title))
    months = groupby(ordered, key=lambda entry: entry.begin_best.replace(day=1))
    return tuple(
        Group(
            name=f"{month:%Y-%m}",
            heading=babel.dates.format_date(month, "LLLL y", locale=language),
            words="",
            entries=tuple(members),
        )
        for month, members in months
    )


def group_by_free_from(entries: Iterable[Entry]) -> tuple[Group, ...]:
    """Return, for each thing some recipe is free from, the recipes that are."""
    listed = tuple(entries)
    return tuple(
        Group(
            name=make_anchor(thing),
            heading=f"Free from {thing}",
            words=thing,
            entries=tuple(entry for entry in listed if thing in entry.free_from),
        )
        for thing in sorted({thing for entry in listed for thing in entry.free_from})
    )
