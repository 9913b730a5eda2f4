"""What counts from its making: days that it steeps in the fridge before it is bottled are of it.

Source: NCHFP, Freezing Garlic-in-Oil (no more than 4 days), as hazards.yml and keeping.yml cite it.
Expected by hand on 30 November 2026, before the code was tried.
"""

from __future__ import annotations

from datetime import date

import pytest

from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.care.stood import days_stood
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.timeline import plan_forward

OIL = """---
title: Garlic oil
kind: infusion
makes: 500 ml
ingredients:
  - 500 ml olive oil
  - 4 cloves garlic
timeline:
  - prepare: 15 minutes
{lines}
keeps: {{unopened: 4 days, where: in the fridge}}
---

## Method

1. Mix them and keep them in the fridge.
"""


def oil(*lines: str) -> Recipe:
    text = OIL.format(lines="\n".join(f"  - {line}" for line in lines))
    return read_recipe(text, "recipes/oil.md", "oil")


# what stands before it is filled, the days, and the last day of a batch begun on 22 December
ROWS = [
    (("bottle: 15 minutes", "usable from: at once"), 0, date(2026, 12, 26)),
    (("steep: 1 day in the fridge", "bottle: 15 minutes", "usable from: at once"), 1,
     date(2026, 12, 26)),
    (("steep: overnight in the fridge", "bottle: 15 minutes"), 1, date(2026, 12, 26)),
    (("chill: 2 days", "strain and bottle: 15 minutes"), 2, date(2026, 12, 26)),
    # bottled first, it counts from there as it is
    (("bottle: 15 minutes", "steep: 1 day in the fridge"), 0, date(2026, 12, 26)),
]  # fmt: skip


@pytest.mark.parametrize(("lines", "days", "last"), ROWS, ids=[row[0][0] for row in ROWS])
def test_four_days_are_four_in_all(lines: tuple[str, ...], days: int, last: date) -> None:
    found = oil(*lines)
    assert days_stood(found) == days
    assert plan_forward(found, date(2026, 12, 22)).keep_until == last


def test_what_stood_longer_than_it_keeps_is_refused() -> None:
    rules = {
        days: [one.rule for one in assess_safety(oil(*lines), BookSettings()).refusals]
        for days, lines in (
            (3, ("steep: 3 days in the fridge", "bottle: 15 minutes")),
            (5, ("steep: 5 days in the fridge", "bottle: 15 minutes")),
        )
    }
    assert rules == {3: [], 5: ["low-acid-in-oil"]}


def test_a_cordial_that_steeps_in_the_fridge_keeps_from_its_bottling() -> None:
    text = OIL.format(lines="  - steep: 1 day in the fridge\n  - bottle: 15 minutes")
    text = text.replace("500 ml olive oil", "500 ml cider vinegar").replace("4 days", "3 months")
    found = read_recipe(text, "recipes/oil.md", "oil")
    assert plan_forward(found, date(2026, 12, 22)).keep_until == date(2027, 3, 23)
