"""The When sentence names the sooner day on which a thing is usable, though not at its best."""

from __future__ import annotations

from datetime import date
from types import SimpleNamespace
from typing import Any, cast

import pytest

from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.year import still_time_for
from stillroom.publish.library import ComingDay
from stillroom.publish.when_page import _usable_sooner, aim_at

VINEGAR = """---
title: Raspberry vinegar
kind: infusion
makes: 850 ml
ingredients:
  - 500 g raspberries
  - 600 ml cider vinegar, 5% acidity
timeline:
  - prepare: 15 minutes
  - stir: every day for 5 days
  - strain and bottle: 40 minutes
  - usable from: at once
  - best from: 4 weeks
keeps: 2 years
---

## Method

1. Stir once a day for 5 days. Strain and bottle.
"""
COMING = (
    ComingDay("Christmas", date(2026, 12, 24), "Thursday 24 December 2026"),
    ComingDay("Christmas", date(2027, 12, 24), "Friday 24 December 2027"),
)


def vinegar() -> Recipe:
    return read_recipe(VINEGAR, "recipes/vinegar.md", "vinegar")


# today, the day it is aimed at, whether this Christmas is named beside it: counted by hand
DAYS = [
    (date(2026, 11, 26), date(2026, 12, 24), False),  # 28 days to its best
    (date(2026, 11, 30), date(2027, 12, 24), True),
    (date(2026, 12, 18), date(2027, 12, 24), True),  # five days of stirring, wrapped the next
    (date(2026, 12, 19), date(2027, 12, 24), False),
]


@pytest.mark.parametrize(("today", "aimed", "both"), DAYS, ids=str)
def test_what_is_usable_sooner_is_said(today: date, aimed: date, both: bool) -> None:
    recipe = vinegar()
    found = aim_at(recipe, COMING, today)
    assert found.day == aimed
    library = cast(Any, SimpleNamespace(coming_days=COMING, today=today))
    said = _usable_sooner(library, recipe, found)
    assert bool(said) == both
    if both:
        assert said.startswith("For Christmas, Thursday 24 December 2026: It is too late for its")
        assert "in time, and at its best from" in said


@pytest.mark.parametrize(("today", "aimed", "both"), DAYS, ids=str)
def test_the_year_names_the_same(today: date, aimed: date, both: bool) -> None:
    named = SimpleNamespace(
        slug="vinegar", title="Raspberry vinegar", kind="infusion", recipe=vinegar(), season=()
    )
    fits = still_time_for(cast(Any, named), COMING[0].day, today).fits
    assert (fits == "usable") == both
    assert (fits == "best") == (aimed == COMING[0].day)
