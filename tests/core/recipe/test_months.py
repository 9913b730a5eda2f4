"""Months as cooks name them, for the season of a recipe's produce; what names none is asked about.

The ways were written down on 29 November 2026 before the code: calendars of produce and recipes
that say "Sept-Nov", "September to November", "mid June", "all year round".
"""

from __future__ import annotations

import pytest

from stillroom.core.recipe.months import months_listed, read_month
from stillroom.core.words.problems import Unreadable

NAMED = {
    "September": [9],
    "september": [9],
    "Sept": [9],
    "Jan.": [1],
    "Sep, Oct": [9, 10],
    "October and November": [10, 11],
    "June/July": [6, 7],
    "September to November": [9, 10, 11],
    "Sept-Nov": [9, 10, 11],
    "Aug.–Oct.": [8, 9, 10],
    "Nov to Feb": [11, 12, 1, 2],
    "from May until July": [5, 6, 7],
    "sep-oct, dec": [9, 10, 12],
    "mid June": [6],
    "late September": [9],
    "June 15 - July 10": [6, 7],
    "1 June to 15 August": [6, 7, 8],
    "all year round": [*range(1, 13)],
}
# a season lies half a year apart on the two halves of the earth; the rest has no end or no month
ASKED = [
    "autumn", "late summer", "winter", "spring and autumn", "summer/autumn", "from September",
    "until frost", "after the first frost", "Easter", "9-11", "?", "", "Septembre", "novmber",
    "Marching", "Mayor", "September and frost", "June to frost",
]  # fmt: skip


@pytest.mark.parametrize("said", NAMED)
def test_months_are_read(said: str) -> None:
    assert [read_month(month) for month in months_listed(said)] == NAMED[said]


@pytest.mark.parametrize("said", ASKED)
def test_what_names_no_month_is_asked_about(said: str) -> None:
    with pytest.raises(Unreadable, match="is not a month") as asked:
        [read_month(month) for month in months_listed(said)]
    assert "September to November" in asked.value.mend


def test_several_lines_are_put_together() -> None:
    months = months_listed(["Dec - Feb", "June"])
    assert [read_month(month) for month in months] == [12, 1, 2, 6]
