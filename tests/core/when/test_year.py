"""The round of the year, seasons, and what can still be made by a day."""

from __future__ import annotations

from datetime import date

from stillroom.core.when.season import find_season
from stillroom.core.when.year import Named, Occasion, plan_year, still_time
from timed import INFUSION, timed

BAKE = timed(("prepare", "1 hour"), ("cool", "2 hours"), keeps="3 weeks", slug="a-bake")
SUGAR = timed(
    ("prepare", "20 minutes"),
    ("shake", "every 2 days for 2 weeks"),
    ("usable from", "2 weeks"),
    ("best from", "4 weeks"),
    ("fill", "20 minutes"),
    keeps="1 year",
    slug="a-sugar",
)
NAMED = tuple(Named(one.slug, one.title, "", one) for one in (INFUSION, BAKE, SUGAR))
CHRISTMAS = tuple(Occasion("Christmas", day) for day in (date(2026, 12, 19), date(2027, 12, 18)))


def test_each_batch_is_begun_within_the_round() -> None:
    year = plan_year(NAMED, CHRISTMAS, date(2026, 11, 25))
    starts = {band.slug: band.timeline.start for band in year.bands}
    assert starts == {
        "an-infusion": date(2027, 4, 17),
        "a-bake": date(2026, 12, 18),
        "a-sugar": date(2026, 11, 20),
    }
    assert [month.name for month in year.months][:3] == ["November", "December", "January"]


def test_a_round_is_twelve_months_and_names_the_giving_days_in_it() -> None:
    year = plan_year(NAMED, CHRISTMAS, date(2026, 11, 25))
    assert (year.first, year.end) == (date(2026, 11, 1), date(2027, 11, 1))
    assert [month.first for month in year.months][::11] == [date(2026, 11, 1), date(2027, 10, 1)]
    assert year.occasions == CHRISTMAS[:1]


def test_a_year_for_the_wall_asks_for_no_day_that_is_past() -> None:
    today = date(2026, 11, 25)
    year = plan_year(NAMED, CHRISTMAS, today, not_before=today)
    starts = {band.slug: band.timeline.start for band in year.bands}
    assert starts["a-sugar"] == date(2027, 11, 19)  # as long before the next Christmas
    assert starts["a-bake"] == date(2026, 12, 18)
    assert min(task.first for month in year.months for task in month.tasks) >= today


def test_hours_of_the_months_are_those_of_the_batches() -> None:
    year = plan_year(NAMED, CHRISTMAS, date(2026, 11, 1))
    hands = sum(band.timeline.hands_on_minutes for band in year.bands)
    labels = sum(task.minutes for month in year.months for task in month.of("label"))
    assert year.minutes == hands + labels


def test_shakes_of_a_month_are_one_line() -> None:
    year = plan_year(NAMED, CHRISTMAS, date(2026, 11, 1))
    may = year.months[6]
    [shaking] = may.of("tend")
    # 17 April is day 0: days 14, 17, 20, 23, 26, 35 and 42 fall in May
    assert (shaking.first, shaking.last, shaking.times) == (date(2027, 5, 1), date(2027, 5, 29), 7)


def test_what_can_still_be_made_is_sorted_by_what_fits() -> None:
    day = date(2026, 12, 19)
    fits = {
        today: [(one.slug, one.fits) for one in still_time(NAMED, day, today)]
        for today in (date(2026, 11, 20), date(2026, 11, 25), date(2026, 12, 10))
    }
    late = ("an-infusion", "late")
    assert fits == {
        date(2026, 11, 20): [("a-sugar", "best"), ("a-bake", "best"), late],
        date(2026, 11, 25): [("a-bake", "best"), ("a-sugar", "usable"), late],
        date(2026, 12, 10): [("a-bake", "best"), ("a-sugar", "late"), late],
    }


def test_the_season_moves_a_start_to_where_fruit_is_to_be_had() -> None:
    note = find_season(INFUSION, (1, 2), date(2027, 4, 18), date(2027, 12, 18))
    assert note is not None
    assert note.start == date(2027, 2, 28)
    assert "January and February" in note.text


def test_what_does_not_keep_wants_stored_fruit() -> None:
    note = find_season(BAKE, (9, 10), date(2027, 12, 17), date(2027, 12, 18))
    assert note is not None
    assert note.start is None
    assert "stored or bought in" in note.text


def test_in_season_there_is_nothing_to_say() -> None:
    assert find_season(INFUSION, (3, 4, 5), date(2027, 4, 18), date(2027, 12, 18)) is None


def test_what_comes_to_a_month_of_another_year_names_it() -> None:
    year = plan_year(NAMED, CHRISTMAS, date(2026, 11, 25))
    december = year.months[1]
    beyond = {task.slug: december.other_year(task) for task in december.of("give")}
    # the infusion is begun in April 2027 for the Christmas after the twelve months
    assert beyond == {"a-bake": None, "a-sugar": None, "an-infusion": 2027}
    assert [task.first.year for task in december.of("give")] == [2026, 2026, 2027]
