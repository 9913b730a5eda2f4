"""So many hours or a night: it is planned by the night, as whoever reads it would.

The sentences are those of biscuit doughs and soaked fruit as cooks write them: "chill eight hours
or overnight" stood in a page that a judge brought in on 1 December 2026, and no wait was named.
"""

from __future__ import annotations

import pytest

from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.method_times import times_in_method


def minutes_of(step: str) -> list[int]:
    text = (
        "---\ntitle: Biscuits\nkind: bake\nmakes: 24 biscuits\ningredients:\n  - 100 g flour\n"
        f"---\n\n## Method\n\n1. Mix. {step}\n2. Bake for 10 minutes.\n"
    )
    return [one.span.minutes() for one in times_in_method(read_recipe(text, "a.md", "a").method)]


@pytest.mark.parametrize(
    "step",
    [
        "Chill eight hours or overnight.",
        "Chill for 8 hours or overnight.",
        "Cover and chill at least 4 hours, or preferably overnight.",
        "Soak 8 to 12 hours or overnight.",
        "Let it rest for two hours or overnight.",
    ],
)
def test_hours_or_a_night_wait_for_the_night(step: str) -> None:
    assert minutes_of(step) == minutes_of("Chill overnight.") != []


@pytest.mark.parametrize("step", ["Chill for 2 hours.", "Chill 30 minutes.", "Beat for an hour."])
def test_hours_alone_are_work_of_the_day(step: str) -> None:
    assert minutes_of(step) == []
