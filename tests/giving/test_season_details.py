"""Small things of a season: which of two batches, how much it used, when a parcel goes."""

from __future__ import annotations

from datetime import date

import pytest

from giving.lists import demo_recipes, read_dict, small_list
from stillroom.core.book import BookSettings
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.kept_cold import is_kept_cold
from stillroom.giving.log import ReadLog
from stillroom.giving.log_file import read_log
from stillroom.giving.pack import Effort, work_out
from stillroom.giving.season import read_season
from stillroom.giving.standing import stand
from stillroom.giving.taking import _named
from stillroom.giving.this_week import this_week

RECIPES = {one.slug: one for one in demo_recipes()}


def log_of(*rows: str) -> ReadLog:
    text = "".join(f"- {row}\n" for row in rows)
    return read_log(f"giving log:\n{text}", "log.yml", "GBP", "en_GB", "GB")


def packed(rows, today, **changes):

    read = read_dict(small_list(**changes))
    return work_out(
        read,
        demo_recipes(),
        BookSettings(),
        date.fromisoformat(today),
        Effort(5, 0.2),
        log=log_of(*rows),
    )


@pytest.mark.parametrize(("number", "used"), [(4, 250), (2, 125), (8, 500)])
def test_what_was_filled_and_never_begun_has_used_as_much_as_it_holds(number, used):
    """Four jars of rosemary salt are one recipe: 250 g coarse sea salt."""
    said = f", number: {number}" if number else ""
    log = log_of(f"{{day: 2027-05-14, bottled: rosemary-salt{said}}}")
    read = read_dict(small_list(stock={"ingredients": ["1 kg coarse sea salt"]}))
    now = stand(read, RECIPES, log, read_season(log, read.giving)).read.giving.stock.ingredients
    assert [amount.low for amount, item in now if item == "coarse sea salt"] == [1000 - used]


def test_how_many_are_too_many_is_told_only_of_what_was_noted_begun():
    log = log_of("{day: 2027-05-14, bottled: rosemary-salt, number: 40}")
    giving = read_dict(small_list())
    stand(giving, RECIPES, log, read_season(log, giving.giving))
    log = log_of(
        "{day: 2027-05-01, begun: rosemary-salt}",
        "{day: 2027-05-14, bottled: rosemary-salt, number: 40}",
    )
    with pytest.raises(ProblemsFound, match="about 4"):
        stand(giving, RECIPES, log, read_season(log, giving.giving))


def test_where_two_of_one_recipe_stand_the_week_says_which():
    rows = ["{day: 2027-05-01, begun: rosemary-salt}", "{day: 2027-05-05, begun: rosemary-salt}"]
    notes = {task.note for task in this_week(packed(rows, "2027-05-08")) if "Rosemary" in task.note}
    assert notes
    going = [note for note in notes if not note.startswith("begun: ")]
    assert going
    assert all(", begun " in note for note in going)
    one = this_week(packed(rows[:1], "2027-05-08"))
    assert not any(", begun " in task.note for task in one)


def test_which_of_two_is_asked_for_as_the_terminal_takes_it():
    rows = ["{day: 2027-05-01, begun: rosemary-salt}", "{day: 2027-05-05, begun: rosemary-salt}"]
    log = log_of(*rows, "{day: 2027-05-14, bottled: rosemary-salt, number: 4}")
    with pytest.raises(ProblemsFound, match="--began 2027-05-01"):
        read_season(log, read_dict(small_list()).giving)


def test_a_parcel_stands_on_its_posting_day_and_a_basket_on_the_giving_day():
    people = [
        {"name": "Nell", "basket": "small", "by post": True},
        {"name": "Old Torquil", "basket": "small"},
    ]
    posting = [{"service": "post", "last day": "2027-12-08"}]
    changes = {"households": people, "posting": posting}
    early = packed([], "2027-12-06", **changes)
    days = {task.words: task.day.isoformat() for task in this_week(early) if "basket" in task.words}
    assert days == {"Post basket 1, Nell": "2027-12-08"}
    late = {task.words for task in this_week(packed([], "2027-12-12", **changes)) if task.late}
    assert "Post basket 1, Nell" in late
    assert not any("Torquil" in words for words in late)


THERE = {"5 l preserving pan": 1, "clip-top jar, 2 litres": 2, "our old brass jam pan of 9 l": 1}


@pytest.mark.parametrize(
    ("recipe", "listed"),
    [
        ("5 litre preserving pan", "5 l preserving pan"),
        ("preserving pan, 5L", "5 l preserving pan"),
        ("2 l clip-top jar", "clip-top jar, 2 litres"),
        ("2-litre clip-top jar", "clip-top jar, 2 litres"),
        ("large 2 l clip-top jar", "clip-top jar, 2 litres"),
        ("jam pan of 9 litres", "our old brass jam pan of 9 l"),
        ("6 l preserving pan", "6 l preserving pan"),
        ("1.5 l clip-top jar", "1.5 l clip-top jar"),
        ("5 l stock pot", "5 l stock pot"),
        ("20 l clip-top jar", "20 l clip-top jar"),
        ("preserving kettle", "preserving kettle"),
    ],
)
def test_a_vessel_is_known_by_its_words_and_its_size_in_any_order(recipe, listed):
    assert _named(recipe, THERE) == listed


@pytest.mark.parametrize(
    ("there", "recipe"),
    [("1½ litre jar", "1.5 l jar"), ("1.5l jar", "1½ l jar"), ("500ml jar", "500 ml jar"),
     ("preserving pan", "5 l preserving pan"), ("2 quart pot", "2 qt pot")],
)  # fmt: skip
def test_a_size_is_the_same_however_it_is_written(there, recipe):
    assert _named(recipe, {there: 1}) == there


@pytest.mark.parametrize(
    ("keep", "cold"),
    [
        ("In the fridge.", True), ("Keep refrigerated", True), ("Refrigerate at once", True),
        ("Keep it frozen", True), ("In the freezer, six months", True), ("Keep chilled", True),
        ("Cool and dark. In the fridge once opened", False), ("Refrigerate after opening", False),
        ("Not in the fridge: it goes stale", False), ("In a cool dark place", False),
        ("Dark; refrigerate once opened", False),
    ],
)  # fmt: skip
def test_what_is_kept_cold_is_read_in_its_own_words(keep, cold):
    assert is_kept_cold(keep) is cold


def test_what_was_made_just_as_planned_is_given_and_nothing_is_made_again():
    """Cocoa mix begun in June kept to the 26th of December, and was called too old in November."""
    people = [{"name": name, "basket": "small"} for name in ("Nell", "Torquil", "Wren")]
    makes = [
        {"recipe": "cocoa-marshmallow-mix", "sort": "drink", "per batch": 3},
        {"recipe": "vanilla-sugar", "container": "jar, 200 ml"},
        {"recipe": "oat-thyme-biscuits", "per batch": 3},
    ]
    pack = packed([], "2027-06-20", households=people, makes=makes)
    rows = []
    for batch in pack.making.batches:
        slug, count = batch.recipe.slug, sum(batch.fills.values())
        rows.append(f"{{day: {batch.timeline.start}, begun: {slug}}}")
        rows.append(f"{{day: {batch.timeline.made}, bottled: {slug}, number: {count}}}")
    rows.sort()
    again = packed(rows, "2027-12-17", households=people, makes=makes)
    assert again.plan.batches == ()
    assert again.plan.is_whole
    assert [note for note in again.complaints if "too old" in note] == []


def test_what_no_basket_can_have_in_time_is_told():
    rows = [
        "{day: 2027-06-01, begun: cocoa-marshmallow-mix}",
        "{day: 2027-06-01, bottled: cocoa-marshmallow-mix, number: 3}",
    ]
    notes = packed(rows, "2027-11-12").offering.shelf.notes
    assert any("too old to give" in note for note in notes)
