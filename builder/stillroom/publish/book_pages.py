"""The book's own pages: the first leaf and the leaf one looks through recipes on.

A book may put its own words at the head of each by a Markdown file of the same name; without one
the page is made all the same. The year and the print room are in year_page.py and print_room.py.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from markupsafe import Markup

from stillroom.core.reading.picture_files import FRONTISPIECE
from stillroom.publish.entries import (
    Entry,
    group_by_free_from,
    group_by_kind,
    group_by_start,
    list_entries,
)
from stillroom.publish.library import Library, Link, find_drawing
from stillroom.publish.templating import render, say_day

SEASON_WORDS = "while its produce is to be had"
STORED_WORDS = "its produce stored or bought in"
"""What the season adds to a day to begin by: that it moved it, or that it could not."""


@dataclass(frozen=True)
class HomeLeaf:
    """The first leaf: the book's title and words, what there is still time for, the kinds."""

    src_uri: str = "index.md"
    in_nav: bool = True

    def head(self, library: Library, url: str) -> Mapping[str, Any]:
        """Return the first leaf's title."""
        return {
            "title": library.settings.title,
            "preview_picture": library.preview_of_picture(FRONTISPIECE),
        }

    def body(self, library: Library, prose: str, link: Link, url: str) -> str:
        """Return the first leaf."""
        giving = library.coming_days[0]
        entries = list_entries(library, link, giving.day)
        return render(
            "pages/home.html",
            {
                "title": library.settings.title,
                "prose": Markup(prose),
                "picture": find_drawing(library, FRONTISPIECE, "", link),
                "seasons": _seasons(library, entries, link),
                "kinds": group_by_kind(entries),
                "link": link,
            },
        )


@dataclass(frozen=True)
class Season:
    """A part of the first leaf: what can be started now, and for when."""

    anchor: str
    heading: str
    words: str
    entries: tuple[Entry, ...]


def _seasons(library: Library, entries: tuple[Entry, ...], link: Link) -> tuple[Season, ...]:
    """Return what can still be made for the next giving day, then what to begin for a later one."""
    giving, today = library.coming_days[0], library.today
    entries = tuple(entry for entry in entries if entry.is_dated)
    in_time = [entry for entry in entries if entry.best_start >= today]
    early = [entry for entry in entries if entry.best_start < today <= entry.usable_start]
    late = {entry.recipe.slug for entry in entries if entry.usable_start < today}
    seasons = [
        Season(
            "in-time",
            f"In time for {giving.name}",
            f"Each is at its best on {giving.words} if it is begun by the day beside it.",
            _by_start(library, in_time, best=True),
        ),
        Season(
            "ready",
            "Ready by then, and better for waiting",
            "These can be given that day with a word on the card that they improve with keeping.",
            _by_start(library, early, best=False),
        ),
    ]
    if late:
        later = library.after(giving)
        again = [e for e in list_entries(library, link, later.day) if e.recipe.slug in late]
        seasons.append(
            Season(
                "begin",
                f"To begin for {later.words}",
                "Too slow for this year; begun by the day beside them they are ready for the next.",
                _by_start(library, again, best=True),
            )
        )
    return tuple(season for season in seasons if season.entries)


def _by_start(library: Library, entries: list[Entry], *, best: bool) -> tuple[Entry, ...]:
    """Return entries by the last day to begin each for its best, or to be usable; in words too."""

    def start(entry: Entry) -> date:
        return entry.begin_best if best else entry.begin_usable

    def words(entry: Entry) -> str:
        said = f"begin by {say_day(start(entry), library.settings.language)}"
        season = entry.best_season if best else entry.usable_season
        if season is None:
            return said
        return f"{said}, {SEASON_WORDS if season.start else STORED_WORDS}"

    ordered = sorted(entries, key=lambda entry: (start(entry), entry.title))
    return tuple(replace(entry, when=words(entry)) for entry in ordered)


@dataclass(frozen=True)
class BrowseLeaf:
    """Every recipe by kind, by when to start, by what it is free from."""

    src_uri: str = "browse.md"
    in_nav: bool = True

    def head(self, library: Library, url: str) -> Mapping[str, Any]:
        """Return the page's title and description."""
        return {
            "title": "Recipes",
            "description": "Every recipe by kind, by when to start, and by what it is free from.",
        }

    def body(self, library: Library, prose: str, link: Link, url: str) -> str:
        """Return the lists."""
        giving = library.coming_days[0]
        later = library.after(giving)
        entries = list_entries(library, link, giving.day)
        return render(
            "pages/browse.html",
            {
                "title": "Recipes",
                "prose": Markup(prose),
                "giving": giving,
                "later": later,
                "kinds": group_by_kind(entries),
                "starts": group_by_start(
                    list_entries(library, link, later.day), library.settings.language
                ),
                "free_from": group_by_free_from(entries),
                "language": library.settings.language,
                "send": library.settings.send_us,
                "link": link,
            },
        )
