"""Calendar entries: their rules expand to the engine's own dates, by dateutil's rrule."""

from __future__ import annotations

from datetime import date, datetime

import pytest
from dateutil.rrule import rrulestr
from hypothesis import given, settings
from hypothesis import strategies as st

from stillroom.core.when.calendar_entries import make_entries, make_rule
from stillroom.core.when.timeline import plan_back, plan_forward
from timed import INFUSION, timed

# RFC 5545, 3.8.5.3: the standard's own examples that a timeline can need; DTSTART is 2 Sept 1997
# there. Our rhythm in words, the standard's rule, and the last date the standard lists.
RFC_EXAMPLES = [
    ("daily for 10 occurrences", "every day for 10 days", "FREQ=DAILY;COUNT=10", date(1997, 9, 11)),
    (
        "every 10 days, 5 occurrences",
        "every 10 days for 50 days",
        "FREQ=DAILY;INTERVAL=10;COUNT=5",
        date(1997, 10, 12),
    ),
    (
        "weekly for 10 occurrences",
        "every week for 10 weeks",
        "FREQ=WEEKLY;COUNT=10",
        date(1997, 11, 4),
    ),
]


@pytest.mark.parametrize(
    ("words", "rule", "last"),
    [row[1:] for row in RFC_EXAMPLES],
    ids=[row[0] for row in RFC_EXAMPLES],
)
def test_examples_of_the_standard(words: str, rule: str, last: date) -> None:
    first = date(1997, 9, 2)
    recipe = timed(("prepare", ""), ("shake", words))
    # the stage begins one rhythm before its first date: made today, first shaken next time
    step = plan_forward(recipe, first).tending[0] - first
    row = plan_forward(recipe, first - step).stages[1]
    made = make_rule(row)
    assert made is not None
    said = ";".join(f"{key}={value}" for key, value in made.parts.items())
    assert (row.dates[0], row.dates[-1], said) == (first, last, rule)
    assert [day.date() for day in rrulestr(rule, dtstart=datetime(1997, 9, 2))] == list(row.dates)


# reference.md E12: shake daily for 56 days ending 24 December 2026, first 30 October
def test_worked_example_of_the_reference() -> None:
    recipe = timed(("prepare", ""), ("shake", "every day for 56 days"))
    row = plan_forward(recipe, date(2026, 10, 29)).stages[1]
    assert (row.dates[0], row.dates[-1]) == (date(2026, 10, 30), date(2026, 12, 24))
    assert make_rule(row) is not None
    assert make_rule(row).parts == {"FREQ": "DAILY", "COUNT": 56}  # type: ignore[union-attr]


@settings(max_examples=80, deadline=None)
@given(
    st.dates(date(2024, 1, 1), date(2104, 12, 31)),
    st.integers(1, 5),
    st.sampled_from(["day", "week", "month", "year"]),
    st.integers(2, 9),
)
def test_every_rule_expands_to_the_dates(start: date, step: int, unit: str, more: int) -> None:
    recipe = timed(("prepare", ""), ("shake", f"every {step} {unit}s for {step * more} {unit}s"))
    row = plan_forward(recipe, start).stages[1]
    rule = make_rule(row)
    assert rule is not None
    parts = [
        f"{key}={','.join(map(str, value)) if isinstance(value, list) else value}"
        for key, value in rule.parts.items()
    ]
    begins = datetime.combine(row.dates[0], datetime.min.time())
    expanded = [day.date() for day in rrulestr(";".join(parts), dtstart=begins)]
    assert expanded == list(row.dates)


def test_names_of_entries_stay_when_a_day_moves_within_its_month() -> None:
    plans = [plan_back(INFUSION, date(2027, 12, day)) for day in (18, 24)]
    one, two = ([entry.uid for entry in make_entries("x", "X", plan)] for plan in plans)
    assert one == two
    assert len(set(one)) == len(one)


def test_an_entry_for_everything_that_wants_hands() -> None:
    entries = make_entries("x", "X", plan_back(INFUSION, date(2027, 12, 18)))
    assert [entry.title for entry in entries] == [
        "Prepare: X", "Shake: X", "Shake: X", "Shake: X", "Strain and bottle: X",
        "Usable now: X", "At its best: X", "Give: X", "Use up: X",
    ]  # fmt: skip


def test_work_is_remembered_at_nine_on_the_day_before_and_the_day_itself() -> None:
    """In hours from the midnight with which the day begins: minus 15 is nine in the morning."""
    bread = timed(("bake", "1 hour"), ("shake", "every day for 3 days"), keeps="5 days")
    entries = make_entries("bread", "Bread", plan_forward(bread, date(2027, 12, 16)))
    assert [entry.reminders for entry in entries[:2]] == [(-15, 9), (9,)]
