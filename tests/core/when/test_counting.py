"""Days, rhythms and words counted by hand on a calendar, one case for each end of a rule."""

from __future__ import annotations

from datetime import date

import pytest

from stillroom.core.when.calendar_entries import make_entries, make_rule
from stillroom.core.when.giving_days import day_in_year
from stillroom.core.when.spans import Span, parse_span, tidy
from stillroom.core.when.stages import parse_stage
from stillroom.core.when.timeline import plan_back, plan_forward
from stillroom.core.when.timeline_checks import check_timeline
from stillroom.core.when.timeline_words import describe_dates, describe_stages, timeline_text
from stillroom.core.when.year import Named, Occasion, plan_year, still_time
from stillroom.core.words.problems import Unreadable
from timed import INFUSION, timed

# In June 2027 the 1st is a Tuesday, the 24th a Thursday; Easter is on 28 March (reference.md 12).
# A year of a hundred is no leap year unless four hundred divide it: the Gregorian reform of 1582.
RULES = [
    ("the Thursday before 24 June", 2027, (6, 17)),
    ("the Thursday on or before 24 June", 2027, (6, 24)),
    ("the Thursday on or after 24 June", 2027, (6, 24)),
    ("the Thursday after 24 June", 2027, (7, 1)),
    ("the second Thursday after 24 June", 2027, (7, 8)),
    ("the second Thursday before 24 June", 2027, (6, 10)),
    ("the third Friday on or after 24 June", 2027, (7, 9)),
    ("the Monday nearest 24 June", 2027, (6, 21)),
    ("the Sunday nearest 24 June", 2027, (6, 27)),
    ("the Thursday nearest 24 June", 2027, (6, 24)),
    ("the first Tuesday in June", 2027, (6, 1)),
    ("the third Sunday in June", 2027, (6, 20)),
    ("the fifth Wednesday in June", 2027, (6, 30)),
    ("the last Wednesday of June", 2027, (6, 30)),
    ("the last Thursday of June", 2027, (6, 24)),
    ("the week after Easter", 2027, (4, 4)),
    ("the day before Easter", 2027, (3, 27)),
    ("3 days after Easter", 2027, (3, 31)),
    ("2 weeks after Easter", 2027, (4, 11)),
    ("29 February", 2028, (2, 29)),
    ("29 February", 2000, (2, 29)),
]
NEVER = [("29 February", 1900), ("29 February", 2100), ("29 February", 2027),
         ("the fifth Sunday in June", 2027), ("the day after 29 February", 2027)]  # fmt: skip


@pytest.mark.parametrize(("rule", "year", "day"), RULES)
def test_a_day_by_its_rule(rule: str, year: int, day: tuple[int, int]) -> None:
    assert day_in_year(rule, year) == date(year, *day)


@pytest.mark.parametrize(("rule", "year"), NEVER)
def test_a_year_without_the_day(rule: str, year: int) -> None:
    assert day_in_year(rule, year) is None


# a month is drawn with 30 days and a year with 365
MINUTES = [("minute", 1), ("hour", 60), ("day", 1440), ("week", 7 * 1440), ("month", 30 * 1440),
           ("year", 365 * 1440)]  # fmt: skip


@pytest.mark.parametrize(("unit", "minutes"), MINUTES)
def test_minutes_of_a_unit(unit: str, minutes: int) -> None:
    span = Span(2, 3, unit)
    assert (span.minutes(longest=False), span.minutes()) == (2 * minutes, 3 * minutes)


# length, how often -> the day after 1 March 2027; hours count once they fill a day
LATER = [("3 days", 2, 7), ("1-2 weeks", 1, 15), ("23 hours", 1, 1), ("24 hours", 1, 2),
         ("12 hours", 4, 3), ("1440 minutes", 1, 2), ("1439 minutes", 1, 1)]  # fmt: skip


@pytest.mark.parametrize(("length", "times", "day"), LATER)
def test_the_day_after_a_length(length: str, times: int, day: int) -> None:
    assert parse_span(length).after(date(2027, 3, 1), times=times) == date(2027, 3, day)


@pytest.mark.parametrize(
    ("said", "meant"),
    [("½ hour", "30 minutes"), ("¼ hour", "15 minutes"), ("1¾ hours", "105 minutes"),
     ("3/4 hour", "45 minutes"), ("½ week", None), ("½ day", "12 hours"), ("1½ years", "18 months"),
     ("100 years", "100 years"), ("half a year", "6 months")],
)  # fmt: skip
def test_parts_of_a_unit(said: str, meant: str | None) -> None:
    if meant is not None:
        assert str(parse_span(said)) == meant
        return
    with pytest.raises(Unreadable, match="not a whole number of days"):
        parse_span(said)


def test_days_and_months_do_not_mix() -> None:
    assert tidy("10 days to 2 months") == "10 days to 2 months"
    assert tidy("2 weeks to 20 days") == "14-20 days"
    assert tidy("18 months to 2 years") == "18-24 months"


# a day has 1,440 minutes: so many times does a rhythm fit into it whole, and once at least
@pytest.mark.parametrize(
    ("rhythm", "times"),
    [("7 hours", 3), ("8 hours", 3), ("11 minutes", 130), ("131 minutes", 10), ("36 hours", 1)],
)
def test_a_rhythm_of_hours_is_so_often_a_day(rhythm: str, times: int) -> None:
    stage = parse_stage("stir", f"every {rhythm} for 4 days")
    assert (stage.every, stage.times) == (Span(1, 1, "day"), times)


# what would run past twelve hours of a day goes on the next
@pytest.mark.parametrize(("second", "day"), [("6 hours", 1), ("6 hours 1 minute", 2)])
def test_a_working_day_has_twelve_hours(second: str, day: int) -> None:
    plan = plan_forward(timed(("cook", "6 hours"), ("fill", second)), date(2027, 3, 1))
    assert plan.stages[1].to == date(2027, 3, day)


def test_only_a_rest_waits_for_the_next_step() -> None:
    lines = timed(("prepare", ""), ("rest", ""), ("bottle", ""), ("taste", ""), ("wrap", ""))
    said = [row.when for row in describe_stages(lines.stages)]
    assert said == ["", "until the next step", "", "", ""]


def test_the_table_of_dates_in_words() -> None:
    recipe = timed(
        ("cook", "1 hour"),
        ("mature", "2-3 weeks in the dark"),
        ("ferment", "while it bubbles, about 1 week"),
        ("stir", "every 2 days for 6 days"),
        ("fill", ""),
    )
    rows = {row.name: row for row in describe_dates(plan_forward(recipe, date(2027, 3, 1)))}
    assert rows["Cook"].when == "Monday 1 March 2027"
    assert rows["Mature"].when == (
        "Monday 1 March 2027 to Monday 22 March 2027 (Monday 15 March 2027 at the earliest), "
        "in the dark"
    )
    assert rows["Ferment"].when == (
        "while it bubbles, about Monday 22 March 2027 to Monday 29 March 2027"
    )
    assert rows["Stir"].when == "every 2 days, Wednesday 31 March 2027 to Sunday 4 April 2027"
    assert rows["Stir"].hands_on.startswith("3 × 3 min")


def test_the_names_stand_in_a_column() -> None:
    lines = timeline_text(plan_forward(INFUSION, date(2027, 2, 1)), "X").splitlines()
    table = lines[lines.index("") + 1 : -2]
    # "Strain and bottle" is the longest name; every date stands two blanks behind it
    assert {line[17:19] for line in table} == {"  "}
    assert all(line[19] != " " for line in table)


def test_ages_of_one_day_are_one_entry() -> None:
    recipe = timed(("cook", ""), ("usable from", "4 weeks"), ("best from", "28 days"))
    titles = [one.title for one in make_entries("x", "X", plan_forward(recipe, date(2027, 3, 1)))]
    assert "At its best: X" in titles
    assert "Usable now: X" not in titles


def test_what_is_past_its_keeping_is_told_at_its_age() -> None:
    lines = timed(("cook", ""), ("fill", ""), ("usable from", "3 weeks"), ("wrap", "")).stages
    assert [at for at, _ in check_timeline(lines, parse_span("2 weeks"))] == [2]
    assert list(check_timeline(lines, parse_span("3 weeks"))) == []


def test_tending_that_ends_as_it_begins_is_told() -> None:
    def told(rest: str) -> list[int]:
        lines = timed(("rest", rest), ("shake", "every day until the end of the second week"))
        return [at for at, _ in check_timeline(lines.stages)]

    assert (told("13 days"), told("14 days")) == ([], [1])


def test_days_of_tending_add_up_in_their_month() -> None:
    """Begun on 9 April 2027 (day 0), 10 December less eight months and the day of straining."""
    give = (Occasion("A feast", date(2027, 12, 10)),)
    year = plan_year([Named("x", "X", "", INFUSION)], give, date(2027, 4, 1))
    tended = [
        [(one.first.day, one.last.day, one.times, one.minutes) for one in month.of("tend")]
        for month in year.months[:4]
    ]
    # April: days 1 to 14, 17 and 20; May: days 23, 26, 35, 42 and 49; June: day 56, the 4th
    assert tended == [[(10, 29, 16, 16)], [(2, 28, 5, 5)], [(4, 4, 1, 1)], []]


BAKE = timed(("bake", "1 hour"), ("cool", "2 hours"), keeps="3 weeks", slug="a-bake")
NAMED = Named("a-bake", "A bake", "", BAKE)
DAY = date(2026, 12, 19)


def test_one_work_for_two_giving_days_is_one_entry_with_both_times() -> None:
    one, two = (
        plan_year([NAMED], [Occasion(name, DAY) for name in names], date(2026, 12, 1)).months[0]
        for names in (("Christmas",), ("Christmas", "A birthday"))
    )
    assert [(task.task, task.batches, task.minutes) for task in one.tasks] == [
        ("start", 1, 60), ("label", 1, 10), ("give", 1, 0),
    ]  # fmt: skip
    assert [(task.batches, task.minutes) for task in two.tasks] == [(2, 120), (2, 20), (2, 0)]
    assert (one.minutes, two.minutes) == (70, 140)
    assert [task.times for task in two.tasks] == [2 * task.times for task in one.tasks]
    # labelled the day before it is given
    assert [task.first.day for task in one.tasks] == [18, 18, 19]


def test_when_no_day_can_be_met_the_last_is_shown() -> None:
    days = [Occasion("Christmas", day) for day in (date(2026, 12, 5), DAY)]
    year = plan_year([Named("x", "X", "", INFUSION)], days, date(2026, 11, 1))
    assert [band.occasion.day for band in year.bands] == [DAY]


@pytest.mark.parametrize(
    ("today", "fits", "spare"), [(10, "best", 8), (18, "best", 0), (19, "late", -1)]
)
def test_days_left_to_begin(today: int, fits: str, spare: int) -> None:
    [found] = still_time([NAMED], DAY, date(2026, 12, today))
    assert (found.fits, found.spare_days, found.start_by.day) == (fits, spare, 18)


def test_wrapping_stands_on_its_own_minutes() -> None:
    recipe = timed(("bake", "1 hour"), ("wrap", "20 minutes, 2 days before giving"))
    row = plan_back(recipe, DAY).stages[-1]
    begun = plan_back(recipe, DAY).start
    assert (row.from_, row.ends_minute - row.begins_minute) == (date(2026, 12, 17), 20)
    assert row.begins_minute == (row.from_ - begun).days * 24 * 60


# RFC 5545, 3.3.10: of the days listed, BYSETPOS=-1 takes the month's last; up to the 28th every
# month has the day, and none is chosen among
@pytest.mark.parametrize(
    ("day", "days"), [(28, [28]), (29, [28, 29]), (31, [28, 29, 30, 31])], ids=str
)
def test_a_rhythm_of_months_from_its_end(day: int, days: list[int]) -> None:
    recipe = timed(("prepare", ""), ("turn", "every 2 months for 6 months"))
    rule = make_rule(plan_forward(recipe, date(2027, 1, day)).stages[1])
    assert rule is not None
    last = {"BYSETPOS": -1} if len(days) > 1 else {}
    assert rule.parts == {
        "FREQ": "MONTHLY", "INTERVAL": 2, "COUNT": 3, "BYMONTHDAY": days, **last
    }  # fmt: skip


def test_work_of_a_later_day_begins_in_its_morning() -> None:
    recipe = timed(("cook", "3 hours"), ("mature", "2 weeks"), ("fill", "1 hour"))
    plan = plan_forward(recipe, date(2027, 3, 1))
    drawn = [(row.begins_minute, row.ends_minute) for row in plan.stages]
    assert drawn == [(0, 180), (180, 14 * 1440), (14 * 1440, 14 * 1440 + 60)]
