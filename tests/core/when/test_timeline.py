"""The dates of a batch: the shared table, verdicts, and what must hold whatever the recipe."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stillroom.core.label.date_marks import fineness_for
from stillroom.core.recipe.keeps import Keeping
from stillroom.core.when.spans import Span, parse_span
from stillroom.core.when.timeline import (
    first_giving_day,
    natural_giving_day,
    plan_back,
    plan_forward,
    plan_from_batch,
)
from stillroom.core.when.timeline_data import timeline_data
from stillroom.core.when.timeline_words import describe_dates, sum_up, timeline_document
from timed import INFUSION, TimedRecipe, timed
from timelines import timelines

RECIPES = timelines()

# Counted by hand on a calendar, none of it from the engine: a month from the 31st ends with the
# month, a range counts to its longer end, keeping counts from the day a thing is finished.
# The timeline, its first day, usable, at its best, kept until, may be given, how often it is
# tended, and all minutes of work.
COUNTED = """
almond-shortbread        2028-02-29 2028-02-29 2028-03-01 2028-03-21 2028-03-01 0  70
beeswax-wraps            2027-01-31 2027-02-01 2027-02-01 2029-01-31 2027-02-01 0  75
bitter-orange-spirit     2027-08-31 2027-10-31 2028-04-30 2030-04-30 2028-05-01 22 107
bitter-orange-spirit     2027-02-01 2027-04-01 2027-10-01 2029-10-01 2027-10-02 22 107
bramble-jelly            2027-12-31 2028-01-02 2028-01-14 2029-01-01 2028-01-14 0  130
cocoa-marshmallow-mix    2099-12-30 2099-12-30 2099-12-30 2100-06-30 2099-12-31 0  30
coffee-cacao-extract     2027-02-01 2027-03-08 2027-05-01 2029-03-06 2027-05-01 23 103
coffee-cacao-extract     2027-08-31 2027-10-05 2027-11-30 2029-10-03 2027-11-30 23 103
double-vanilla-extract   2028-02-29 2028-04-29 2028-10-29 2030-10-29 2028-10-30 22 107
dried-orange-garland     2027-01-31 2027-02-04 2027-02-04 2029-02-03 2027-02-04 0  75
felted-bauble            2027-08-31 2027-08-31 2027-08-31 2032-08-31 2027-09-01 0  380
heather-mead             2027-12-31 2028-06-30 2028-12-31 2031-06-06 2028-12-31 7  210
heather-mead             2028-02-29 2028-08-29 2029-02-28 2031-08-06 2029-02-28 7  210
lavender-sugar           2099-12-30 2100-01-13 2100-01-27 2101-01-27 2100-01-28 7  47
layered-soup-mix         2027-02-01 2027-02-01 2027-02-01 2027-11-01 2027-02-02 0  40
lemon-verbena-cut-spirit 2028-02-29 2028-04-04 2028-05-29 2030-04-04 2028-05-29 7  142
oat-thyme-biscuits       2027-01-31 2027-01-31 2027-01-31 2027-02-21 2027-02-01 0  60
quince-chutney           2027-08-31 2027-09-30 2027-11-30 2028-08-31 2027-11-30 0  145
quince-ratafia           2027-12-31 2028-03-31 2028-10-31 2030-02-25 2028-10-31 20 125
quince-ratafia           2028-02-29 2028-05-29 2028-12-29 2030-04-25 2028-12-29 20 125
rosemary-salt            2099-12-30 2100-01-08 2100-01-13 2101-01-07 2100-01-13 0  50
salted-honey-toffee      2027-02-01 2027-02-01 2027-02-01 2027-03-01 2027-02-02 0  80
sea-buckthorn-curd       2028-02-29 2028-03-01 2028-03-01 2028-03-14 2028-03-01 0  60
vanilla-sugar            2027-01-31 2027-02-14 2027-03-14 2028-03-14 2027-03-15 7  52
over-two-days            2027-08-31 2027-09-02 2027-09-02 2028-03-02 2027-09-03 0  90
over-two-days            2027-02-01 2027-02-03 2027-02-03 2027-08-03 2027-02-04 0  90
a-starter                2027-12-31 2028-01-07 2028-01-14 2028-01-10 2028-01-14 7  80
a-starter                2028-02-29 2028-03-07 2028-03-14 2028-03-10 2028-03-14 7  80
monthly                  2099-12-30 2100-07-28 2100-10-28 2102-07-28 2100-10-28 6  98
monthly                  2027-01-31 2027-08-28 2027-11-28 2029-08-28 2027-11-28 6  98
one-window               2027-02-01 2027-05-01 2027-05-01 -          2027-05-01 22 84
one-window               2027-08-31 2027-11-30 2027-11-30 -          2027-11-30 22 84
wrapped-late             2028-02-29 2028-02-29 2028-02-29 2028-03-21 2028-03-03 0  40
wrapped-late             2027-12-31 2027-12-31 2027-12-31 2028-01-21 2028-01-03 0  40
end-of-months            2027-01-31 2027-03-31 2028-07-31 2029-07-31 2028-08-01 8  68
end-of-months            2099-12-30 2100-02-28 2101-06-30 2102-06-30 2101-07-01 8  68
long-days                2027-08-31 2027-09-02 2027-09-02 2027-09-30 2027-09-03 0  780
long-days                2027-02-01 2027-02-03 2027-02-03 2027-03-01 2027-02-04 0  780
soon-stale               2027-12-31 2027-12-31 2028-02-29 2028-01-21 2028-02-29 0  20
soon-stale               2028-02-29 2028-02-29 2028-04-29 2028-03-21 2028-04-29 0  20
"""


@pytest.mark.parametrize(
    "row", [line.split() for line in COUNTED.split("\n") if line], ids=lambda row: " ".join(row[:2])
)
def test_days_counted_by_hand(row: list[str]) -> None:
    slug, start, *wanted = row
    plan = plan_forward(RECIPES[slug], date.fromisoformat(start))
    said = timeline_document(plan)
    days = [said[name] or "-" for name in ("usable", "best", "keep_until", "can_be_given")]
    assert [*days, str(len(plan.tending)), str(said["hands_on_minutes"])] == wanted


# Common practice, no published source (issue 2): daily for two weeks, every few days for two,
# weekly for the rest of the second month, then the dark; usable from 2 months, best from 8.
def test_the_common_practice_of_shaking() -> None:
    plan = plan_forward(INFUSION, date(2027, 2, 1))
    days = [(day - plan.start).days for day in plan.tending]
    assert days == [*range(1, 15), 17, 20, 23, 26, 35, 42, 49, 56]
    assert (plan.usable, plan.best) == (date(2027, 4, 1), date(2027, 10, 1))
    assert plan.keep_until == date(2030, 10, 1)


# recipe, how it is asked, code of the verdict and words that must stand in it
BREAD = timed(("bake", "1 hour"), ("cool", "2 hours"), keeps="5 days", slug="bread")
TWO_DAYS = timed(("cook", "1 hour over 2 days"), ("fill", ""), keeps="1 year", slug="jam")
MEAD = timed(
    ("prepare", ""), ("ferment", "while it bubbles, about 4 weeks"), ("bottle", ""), slug="mead"
)
RIPENS = timed(
    ("cook", ""),
    ("fill", ""),
    ("usable from", "1 month"),
    ("best from", "3 months"),
    keeps="1 year",
)
GIVE = date(2027, 12, 18)
VERDICTS = [
    (
        "start by",
        INFUSION,
        plan_back,
        (GIVE, date(2027, 1, 1)),
        "start_by",
        "Start by Saturday 17 April 2027",
    ),
    (
        "today is the last day",
        INFUSION,
        plan_back,
        (GIVE, date(2027, 4, 17)),
        "start_today",
        "the last day",
    ),
    (
        "at its best on giving day, too late to strain it the day before",
        INFUSION,
        plan_back,
        (GIVE, date(2027, 4, 18)),
        "late_for_best",
        "Finish it a little early: it is usable from Friday 18 June 2027.",
    ),
    (
        "baked on giving day itself",
        BREAD,
        plan_back,
        (GIVE, GIVE),
        "cannot",
        "not ready before Sunday 19 December 2027",
    ),
    (
        "too late for best",
        INFUSION,
        plan_back,
        (GIVE, date(2027, 9, 1)),
        "late_for_best",
        "usable on Monday 1 November 2027",
    ),
    (
        "too late for giving, in its jar",
        INFUSION,
        plan_back,
        (GIVE, date(2027, 12, 1)),
        "late_for_giving",
        "in its jar, with a card: do not open before Wednesday 2 February 2028",
    ),
    (
        "too late for giving, all done",
        RIPENS,
        plan_back,
        (GIVE, date(2027, 12, 1)),
        "late_for_giving",
        "give it all the same, with a card: do not open before Saturday 1 January 2028",
    ),
    (
        "made on giving day itself, all done",
        RIPENS,
        plan_back,
        (GIVE, GIVE),
        "late_for_giving",
        "give it all the same, with a card: do not open before Tuesday 18 January 2028",
    ),
    (
        "still fermenting",
        MEAD,
        plan_back,
        (GIVE, date(2027, 12, 1)),
        "cannot",
        "not ready before Thursday 30 December 2027",
    ),
    ("not yet made", TWO_DAYS, plan_back, (GIVE, GIVE), "cannot", "The last day to start"),
    ("giving day gone", INFUSION, plan_back, (GIVE, date(2027, 12, 19)), "passed", "has passed"),
    (
        "stale",
        BREAD,
        plan_forward,
        (date(2027, 12, 1), GIVE),
        "stale",
        "Do not start before Monday 13 December 2027",
    ),
    (
        "in time",
        BREAD,
        plan_forward,
        (date(2027, 12, 16), GIVE),
        "in_time",
        "ready for Saturday 18 December 2027",
    ),
    (
        "batch past its keeping",
        BREAD,
        plan_from_batch,
        (date(2027, 12, 1), GIVE),
        "past_keep",
        "past its keeping",
    ),
    (
        "no giving day",
        INFUSION,
        plan_forward,
        (date(2027, 2, 1),),
        "ready",
        "keeps until Tuesday 1 October 2030",
    ),
]


@pytest.mark.parametrize(
    ("recipe", "plan", "asked", "code", "says"),
    [row[1:] for row in VERDICTS],
    ids=[row[0] for row in VERDICTS],
)
def test_verdict(
    recipe: TimedRecipe, plan: object, asked: tuple[date, ...], code: str, says: str
) -> None:
    verdict = plan(recipe, *asked).verdict  # type: ignore[operator]
    assert (verdict.code, says in verdict.text) == (code, True), verdict.text


def test_a_late_batch_is_strained_for_giving_day_and_not_after() -> None:
    plan = plan_back(INFUSION, GIVE, date(2027, 9, 1))
    strained = next(row for row in plan.stages if row.name == "Strain and bottle")
    assert plan.usable <= strained.from_ < GIVE


# asked on a day -> what cannot be ready for GIVE, or is past its keeping by then
NOT_IN_TIME = {
    None: "a-starter soon-stale",
    date(2027, 10, 17): "a-starter heather-mead monthly one-window quince-ratafia soon-stale",
    date(2027, 12, 16): "a-starter bitter-orange-spirit coffee-cacao-extract"
    " double-vanilla-extract dried-orange-garland end-of-months heather-mead lavender-sugar"
    " lemon-verbena-cut-spirit long-days monthly one-window over-two-days quince-chutney"
    " quince-ratafia rosemary-salt vanilla-sugar wrapped-late",
}


@pytest.mark.parametrize("today", NOT_IN_TIME, ids=str)
def test_nothing_but_tending_is_left_for_giving_day(today: date | None) -> None:
    plans = {slug: plan_back(recipe, GIVE, today) for slug, recipe in RECIPES.items()}
    good = ("start_by", "start_today", "late_for_best")
    late = [slug for slug in sorted(plans) if plans[slug].verdict.code not in good]
    assert late == NOT_IN_TIME[today].split()
    for slug in plans.keys() - set(late):
        work = [row.to for row in plans[slug].stages if row.role not in ("tend", "rest")]
        assert max(work) < GIVE, slug


def test_an_age_reached_on_giving_day_needs_no_day_more() -> None:
    ripens = plan_back(RIPENS, GIVE)
    assert (ripens.start, ripens.best) == (date(2027, 9, 18), GIVE)


def test_the_browser_is_told_how_long_it_keeps_opened() -> None:
    opened = replace(BREAD, keeps=Keeping(opened=parse_span("3 weeks")))
    assert timeline_data(opened)["opened"] == "3 weeks"
    assert timeline_data(BREAD)["opened"] is None


def test_work_of_one_day_takes_its_minutes() -> None:
    rows = plan_forward(BREAD, date(2027, 12, 16)).stages
    assert [(row.name, row.ends_minute - row.begins_minute) for row in rows] == [
        ("Bake", 60),
        ("Cool", 120),
    ]
    assert rows[1].begins_minute == rows[0].ends_minute


def test_tending_is_dated_from_its_first_day() -> None:
    said = timeline_document(plan_forward(INFUSION, date(2027, 2, 1)))
    shaken = [row for row in said["stages"] if row["name"] == "Shake"]
    assert [row["from"] for row in shaken] == ["2027-02-02", "2027-02-18", "2027-03-08"]


def test_a_giving_day_is_named_only_when_asked_for() -> None:
    forward = timeline_document(plan_forward(INFUSION, date(2027, 2, 1)))
    assert (forward["give"], forward["can_be_given"]) == (None, "2027-10-02")
    back = timeline_document(plan_back(INFUSION, GIVE))
    assert (back["give"], back["can_be_given"]) == ("2027-12-18", None)


def test_keeping_counts_from_the_day_it_was_really_bottled() -> None:
    plan = plan_from_batch(INFUSION, date(2027, 2, 1), GIVE, bottled=date(2027, 11, 3))
    assert plan.keep_until == date(2030, 11, 3)


# EU 1169/2011 Annex X, reference.md 6.3 and E9 (made 25 Nov 2026): how the day that the engine
# works out must be written, day and month to 3 months, month and year to 18, then the year
ANNEX_X = [
    ("3 months", date(2027, 2, 25), "day"),
    ("4 months", date(2027, 3, 25), "month"),
    ("18 months", date(2028, 5, 25), "month"),
    ("19 months", date(2028, 6, 25), "year"),
]


@pytest.mark.parametrize(("keeps", "until", "fineness"), ANNEX_X, ids=[row[0] for row in ANNEX_X])
def test_keep_until_and_the_form_of_its_mark(keeps: str, until: date, fineness: str) -> None:
    recipe = timed(("cook", "1 hour"), ("fill", ""), keeps=keeps)
    plan = plan_forward(recipe, date(2026, 11, 25))
    assert plan.keep_until == until
    assert recipe.keeps.unopened is not None
    assert fineness_for(recipe.keeps.unopened) == fineness


def test_jam_over_two_days_shares_its_work() -> None:
    row = plan_forward(TWO_DAYS, date(2027, 12, 31)).stages[0]
    assert row.dates == (date(2027, 12, 31), date(2028, 1, 1))
    assert row.hands_on_minutes == 30


def test_lines_of_one_condition_share_one_window() -> None:
    plan = plan_forward(RECIPES["one-window"], date(2027, 3, 1))
    bubbling = [row for row in plan.stages if row.condition]
    assert {(row.from_, row.to) for row in bubbling} == {(date(2027, 3, 1), date(2027, 3, 22))}


def test_wrapping_is_counted_back_from_giving_day() -> None:
    plan = plan_forward(RECIPES["wrapped-late"], date(2027, 12, 10), GIVE)
    days = {row.name: row.from_ for row in plan.stages}
    assert (days["Wrap"], days["Label"]) == (date(2027, 12, 17), date(2027, 12, 15))


@pytest.mark.parametrize("slug", sorted(RECIPES))
def test_words_name_every_day_of_work(slug: str) -> None:
    recipe = RECIPES[slug]
    plan = plan_forward(recipe, date(2027, 2, 1))
    rows = describe_dates(plan)
    assert len(rows) >= len(plan.stages) + 2
    assert [row.iso_from for row in rows] == sorted(row.iso_from for row in rows)
    told = sum_up(plan, recipe.title)
    assert told.startswith(f"{recipe.title}, begun on Monday 1 February 2027")
    assert ("Usable from" in told) is (plan.usable < plan.best)


# --- what must hold for every timeline ---------------------------------------------------------

SPAN = st.builds(
    lambda count, unit: f"{count} {unit}s", st.integers(1, 12), st.sampled_from(["day", "week"])
)
TENDING = st.builds(
    lambda word, step, unit, more: (word, f"every {step} {unit}s for {step * more} {unit}s"),
    st.sampled_from(["shake", "stir", "feed"]),
    st.integers(1, 4),
    st.sampled_from(["day", "week", "month"]),
    st.integers(1, 6),
)
RESTING = st.builds(lambda span: ("rest", span), SPAN)
AGES = st.builds(
    lambda usable, best: [("usable from", f"{usable} weeks"), ("best from", f"{best} months")],
    st.integers(1, 8),
    st.integers(2, 12),
)
ENDING = st.sampled_from([[], [("strain and bottle", "")], [("wrap", "the day before giving")]])


@st.composite
def recipes(draw: st.DrawFn) -> TimedRecipe:
    middle = draw(st.lists(TENDING | RESTING, max_size=4))
    lines = [("prepare", "40 minutes"), *middle, *draw(AGES | st.just([])), *draw(ENDING)]
    return timed(*lines, keeps=draw(st.none() | SPAN))


DAYS = st.dates(date(2024, 1, 1), date(2104, 12, 31))
QUICK = settings(max_examples=60, deadline=None)


@QUICK
@given(recipes(), DAYS)
def test_planned_back_then_forward_gives_the_giving_day(recipe: TimedRecipe, give: date) -> None:
    start = plan_back(recipe, give).start
    assert plan_forward(recipe, start, give).give == give
    # it is the last such start: it is at its best by then, and begun a day later it is not
    assert natural_giving_day(recipe.stages, start) <= give
    assert natural_giving_day(recipe.stages, start + timedelta(days=1)) > give
    # where no month end is cut short, counting forward lands on the very day
    assert (give - plan_forward(recipe, start).give).days <= 3


@QUICK
@given(recipes(), DAYS, st.integers(0, 400))
def test_tending_lies_within_its_stage_and_nothing_before_the_start(
    recipe: TimedRecipe, start: date, until_giving: int
) -> None:
    for plan in (
        plan_forward(recipe, start),
        plan_forward(recipe, start, start + timedelta(days=until_giving)),
    ):
        assert min([plan.usable, plan.best, plan.ready, plan.made, plan.give]) >= start
        for row in plan.stages:
            assert start <= row.from_ <= row.to_earliest <= row.to
            assert all(row.from_ <= day <= row.to for day in row.dates)
            assert row.begins_minute <= row.ends_minute


@QUICK
@given(recipes(), DAYS, st.integers(1, 30), st.integers(1, 30))
def test_a_longer_keep_never_moves_a_start_earlier(
    recipe: TimedRecipe, give: date, weeks: int, more: int
) -> None:
    def keeping(count: int) -> TimedRecipe:
        spans = recipe.keeps.__class__(unopened=Span(count, count, "week"))
        return TimedRecipe(recipe.slug, recipe.title, recipe.stages, spans)

    short, longer = (plan_back(keeping(count), give) for count in (weeks, weeks + more))
    assert longer.start >= short.start


@QUICK
@given(recipes(), DAYS)
def test_usable_never_comes_after_best(recipe: TimedRecipe, start: date) -> None:
    assert first_giving_day(recipe.stages, start) <= natural_giving_day(recipe.stages, start)
