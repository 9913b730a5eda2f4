"""When a fresh food is to be had in a country: its months, by which calendar, or that nobody knows.

The figures and their sources are in seasons.yml. What a shop has at any time is never out of
season; of what has no row, or none for its country, the season is not known.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from stillroom.core.larder.staple import Staple
from stillroom.core.words.data_files import read_data
from stillroom.core.words.day_words import months_through

ALL_YEAR = tuple(range(1, 13))
_GATHERED = frozenset({"fruit", "flower", "foraged"})
_KEPT = frozenset({"dried-fruit", "dried-herb", "preserved-vegetable", "grape-dried"})


@dataclass(frozen=True)
class FoodSeason:
    """The months, from 1, in which a food is fresh, and who says so; no months: not known."""

    food: str
    months: tuple[int, ...] = ()
    source: str = ""


def season_of_food(food: Staple, words: str, country: str) -> FoodSeason | None:
    """Return when a food is to be had fresh in a country; None for what is at any time.

    `words` are those of its line: what is frozen, tinned or dried has no season.
    """
    known: Mapping[str, Any] = read_data("seasons.yml", "larder")
    if _not_fresh().search(f"{words} {food.name}"):
        return None
    at_any_time = {name for row in known["all_year"] for name in row}
    row = known["seasons"].get(food.name)
    if row is None and food.name not in at_any_time:
        row = known["seasons"].get(food.kind_of)
    if row is None:
        is_known = food.name in at_any_time or food.kind_of in at_any_time
        grows = food.tags & _GATHERED and not food.tags & _KEPT
        return None if is_known or not grows else FoodSeason(food.name)
    called = row.get("called", food.name)
    place = country if country in row else known["neighbours"].get(country, country)
    if place not in row:
        return FoodSeason(called)
    source = row.get("sources", {}).get(place) or known["sources"][place]
    return FoodSeason(called, months_of(row[place]), source)


def months_of(span: str) -> tuple[int, ...]:
    """Return the months of a span, in order.

    >>> months_of("7-10"), months_of("12-2"), months_of("10-10")
    ((7, 8, 9, 10), (12, 1, 2), (10,))
    """
    first, last = (int(one) for one in span.split("-"))
    return months_through(first, last)


@cache
def _not_fresh() -> re.Pattern[str]:
    return re.compile(read_data("seasons.yml", "larder")["not_fresh"], re.IGNORECASE)
