"""Calendar files read back by a second, independent parser (vobject), and by their octets."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from pathlib import Path

import pytest
import vobject

from stillroom.core.reading.loading import load_recipes
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.calendar_entries import CalendarEntry, make_entries
from stillroom.core.when.calendar_files import make_calendar
from stillroom.core.when.timeline import Timeline, plan_back

ROOT = Path(__file__).parents[3]
RECIPES = load_recipes(sorted((ROOT / "recipes").glob("*.md")), ROOT, "metric", None)
MADE_ON = date(2026, 11, 25)
GIVING = (date(2027, 12, 18), date(2028, 2, 29), date(2027, 6, 24))


def _calendar(recipe: Recipe, plan: Timeline, made_on: date = MADE_ON) -> bytes:
    entries = make_entries(recipe.slug, recipe.title, plan)
    return make_calendar(recipe.title, entries, made_on, "https://book.example/r/x/")


def _expanded(event: vobject.base.Component) -> list[date]:
    rules = event.rruleset
    if rules is None:
        return [event.dtstart.value]
    return [day.date() if isinstance(day, datetime) else day for day in rules]


@pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: recipe.slug)
@pytest.mark.parametrize("give", GIVING, ids=str)
def test_a_second_parser_expands_to_the_engines_dates(recipe: Recipe, give: date) -> None:
    plan = plan_back(recipe, give)
    calendar = vobject.readOne(_calendar(recipe, plan).decode())
    events = list(calendar.vevent_list)
    work = [row for row in plan.stages if row.dates]
    assert [_expanded(event) for event in events[: len(work)]] == [list(r.dates) for r in work]
    tended = {day for event, row in zip(events, work, strict=False) if row.role == "tend"
              for day in _expanded(event)}  # fmt: skip
    assert tended == set(plan.tending)
    given = [event for event in events if event.summary.value.startswith("Give: ")]
    assert [event.dtstart.value for event in given] == [give]
    for event in events:
        # RFC 5545, 3.6.1: the end of an all-day event is the day after
        assert event.dtend.value - event.dtstart.value == timedelta(days=1)
        assert {"uid", "dtstamp", "sequence"} <= set(event.contents)
    assert len({event.uid.value for event in events}) == len(events) < 14


def test_a_later_build_updates_and_does_not_double() -> None:
    recipe = RECIPES[2]
    one, two = (
        vobject.readOne(_calendar(recipe, plan_back(recipe, give), made_on).decode())
        for give, made_on in (
            (date(2027, 12, 18), MADE_ON),
            (date(2027, 12, 24), MADE_ON + timedelta(days=9)),
        )
    )
    assert [e.uid.value for e in one.vevent_list] == [e.uid.value for e in two.vevent_list]
    assert int(one.vevent.sequence.value) < int(two.vevent.sequence.value)


AWKWARD = CalendarEntry(
    uid="x.2027-12.shake-1@stillroom",
    title="Shake; turn, and taste: Zitronenöl – “schön”, süß, würzig, kühl und lange gelagert",
    description="A back\\slash,\na new line; and a comma.",
    day=date(2027, 12, 18),
    rule=None,
    reminders=(-15, 9),
)


def test_octets_and_escapes() -> None:
    raw = make_calendar("Zitronenöl", [AWKWARD], MADE_ON)
    # RFC 5545, 3.1: lines end in CRLF and are folded at 75 octets
    assert raw.endswith(b"\r\n")
    assert b"\n" not in raw.replace(b"\r\n", b"")
    assert max(len(line) for line in raw.split(b"\r\n")) <= 75
    event = vobject.readOne(raw.decode()).vevent
    assert event.summary.value == AWKWARD.title
    assert event.description.value == AWKWARD.description
    alarms = [alarm.trigger.value for alarm in event.valarm_list]
    assert alarms == [timedelta(hours=-15), timedelta(hours=9)]


@pytest.mark.parametrize("between", range(4))
@pytest.mark.parametrize("before", [1, 2])
def test_no_line_is_folded_within_an_escape(before: int, between: int) -> None:
    """RFC 5545, 3.3.11: the sign and what it stands before are one letter."""
    title = {"title": "a" * before + "," * 45 + "b" * between + "," * 300}
    recipe = RECIPES[0].model_copy(update=title)
    for line in _calendar(recipe, plan_back(recipe, GIVING[0])).decode().split("\r\n"):
        signs = len(line) - len(line.rstrip("\\"))
        assert signs % 2 == 0, line


def test_a_line_of_escapes_is_folded_in_no_more_pieces_than_it_needs() -> None:
    """RFC 5545, 3.1: a line has at most 75 octets, and a comma is written with a sign before it."""
    recipe = RECIPES[0].model_copy(update={"title": "a" + "," * 400})
    lines = _calendar(recipe, plan_back(recipe, GIVING[0])).decode().split("\r\n")
    assert max(len(line.encode()) for line in lines) <= 75
    begin = next(place for place, line in enumerate(lines) if line.startswith("SUMMARY"))
    length = next(n for n, line in enumerate(lines[begin + 1 :]) if not line.startswith(" "))
    said = "".join(line.removeprefix(" ") for line in lines[begin : begin + length + 1])
    assert said.count("\\,") == 400
    assert length <= len(said) // 72
