"""What the season of a recipe's produce adds to its latest start."""

from __future__ import annotations

from datetime import date

import pytest

from stillroom.core.when.calendar_entries import make_entries
from stillroom.core.when.season import (
    find_season,
    last_good_start,
    plan_in_season,
    season_of_start,
)
from stillroom.core.when.timeline import plan_back
from stillroom.core.when.timeline_words import timeline_document, timeline_text
from stillroom.core.when.year import Named, still_time
from timed import INFUSION, timed

GIVE = date(2027, 12, 18)
LATEST = date(2027, 4, 18)
BAKE = timed(("prepare", "1 hour"), ("cool", "2 hours"), keeps="3 weeks", slug="a-bake")

# season, today, the start it gives, the words of its sentence; asked about a latest start on
# 18 April 2027. Expected days counted by hand on a calendar.
NOTES = [
    ("the last day of the season before", (1, 2), None, date(2027, 2, 28), "January and February."),
    ("the autumn before", (10, 11), None, date(2026, 11, 30), "October and November. With"),
    ("today is in that autumn", (10, 11), date(2026, 11, 25), date(2026, 11, 30), "18 April 2027."),
    ("today is its last day", (10, 11), date(2026, 11, 30), date(2026, 11, 30), "18 April 2027."),
    ("it has gone by", (10, 11), date(2026, 12, 1), None, "stored or bought in."),
    ("over the new year", (11, 12, 1), None, date(2027, 1, 31), "November to January. With"),
    ("late, and out of season", (1, 2), date(2027, 5, 1), None, "stored or bought in."),
]


@pytest.mark.parametrize(
    ("season", "today", "start", "says"), [row[1:] for row in NOTES], ids=[row[0] for row in NOTES]
)
def test_note(season: tuple[int, ...], today: date | None, start: date | None, says: str) -> None:
    note = find_season(INFUSION, season, LATEST, GIVE, today)
    assert note is not None
    assert (note.start, says in note.text) == (start, True), note.text


def test_the_whole_plan_begins_in_the_season() -> None:
    plan, note = plan_in_season(INFUSION, (1, 2), GIVE, date(2026, 11, 25))
    assert note is not None
    assert plan.start == note.start == date(2027, 2, 28)
    assert plan.tending[0] == date(2027, 3, 1)
    assert (plan.verdict.code, plan.latest_start_best) == ("start_in_season", date(2027, 4, 17))
    assert plan.verdict.text == (
        "Start by Sunday 28 February 2027, while its produce is to be had, for it to be at its "
        "best on Saturday 18 December 2027."
    )
    assert note.text.endswith("it could begin as late as Saturday 17 April 2027.")
    titles = {entry.title: entry.day for entry in make_entries("x", "X", plan)}
    assert titles["Prepare: X"] == date(2027, 2, 28)


def test_the_last_day_of_the_season_is_today() -> None:
    plan, _note = plan_in_season(INFUSION, (1, 2), GIVE, date(2027, 2, 28))
    assert plan.verdict.text.startswith("Start today, Sunday 28 February 2027: it is the last day")


@pytest.mark.parametrize(
    ("season", "today"),
    [((), date(2026, 11, 25)), ((4, 5), None), ((1, 2), date(2027, 3, 5))],
    ids=["none is known", "in season by age", "it has gone by"],
)
def test_without_a_season_to_come_age_alone_counts(
    season: tuple[int, ...], today: date | None
) -> None:
    plan, _note = plan_in_season(INFUSION, season, GIVE, today)
    assert (plan.start, plan.verdict.code) == (date(2027, 4, 17), "start_by")


def test_what_would_not_keep_is_begun_by_its_age() -> None:
    plan, note = plan_in_season(BAKE, (9, 10), GIVE)
    assert note is not None
    assert (note.start, plan.start) == (None, date(2027, 12, 17))


# season and today for which there is nothing to say
SILENT = [
    ("no season", (), None),
    ("the latest start is in season", (3, 4, 5), None),
    ("late, but today is in season", (9, 10), date(2027, 9, 3)),
    ("the giving day has passed", (1, 2), date(2027, 12, 19)),
]


@pytest.mark.parametrize(
    ("season", "today"), [row[1:] for row in SILENT], ids=[row[0] for row in SILENT]
)
def test_nothing_to_say(season: tuple[int, ...], today: date | None) -> None:
    assert find_season(INFUSION, season, LATEST, GIVE, today) is None


def test_a_season_too_late_for_the_best_can_still_be_in_time() -> None:
    today, usable = date(2027, 3, 5), date(2027, 10, 18)
    note = find_season(INFUSION, (10, 11), LATEST, GIVE, today, usable)
    assert note is not None
    assert note.start is None
    assert "begun from Friday 1 October 2027 on it is ready in time" in note.text
    november = find_season(INFUSION, (11,), LATEST, GIVE, today, usable)
    assert november is not None
    assert "the last of it for this giving day has gone by" in november.text


def test_a_batch_begun_out_of_season_says_so() -> None:
    assert season_of_start((10, 11), date(2027, 10, 1)) is None
    note = season_of_start((10, 11), date(2027, 3, 1))
    assert note is not None
    assert note.start is None
    assert "October and November" in note.text


def test_the_dates_of_the_command_say_it() -> None:
    plan = plan_back(INFUSION, GIVE)
    note = find_season(INFUSION, (1, 2), plan.latest_start_best, GIVE)
    assert note is not None
    assert timeline_text(plan, "An infusion", note).splitlines()[2] == note.text
    document = timeline_document(plan, note)
    assert (document["season"], document["season_start"]) == (note.text, "2027-02-28")
    assert timeline_document(plan)["season"] is None


def test_what_can_still_be_made_names_the_months() -> None:
    [one] = still_time([Named("x", "X", "", INFUSION, (1, 2))], GIVE, date(2027, 2, 1))
    assert one.season is not None
    assert one.season.aside == "its produce: January and February, so by Sunday 28 February 2027"
    [bake] = still_time([Named("y", "Y", "", BAKE, (9, 10))], GIVE, date(2027, 12, 1))
    assert bake.season is not None
    assert bake.season.aside == "its produce: September and October; else stored or bought in"
    [late] = still_time([Named("x", "X", "", INFUSION, (1, 2))], GIVE, date(2027, 11, 1))
    assert (late.fits, late.season) == ("late", None)


def test_batches_of_one_month_have_names_of_their_own() -> None:
    plan = plan_back(INFUSION, GIVE)
    uids = [
        entry.uid
        for batch in ("", "batch 1", "batch 2")
        for entry in make_entries("x", "X", plan, batch)
    ]
    assert len(set(uids)) == len(uids)
    assert "x-batch-2.2027-12.give-1@stillroom" in uids


def test_the_last_good_start_is_in_season_where_one_is() -> None:
    assert last_good_start(INFUSION, (1, 2), GIVE) == date(2027, 2, 28)
    assert last_good_start(INFUSION, (), GIVE) == date(2027, 4, 17)
    assert last_good_start(BAKE, (9, 10), GIVE) == date(2027, 12, 17)
