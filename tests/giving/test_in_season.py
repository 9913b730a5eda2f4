"""When a batch is begun by the season of its produce, and what is said where that is broken."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from care_cases import recipe_of
from giving.brute_force import least_points
from stillroom.giving.in_season import season_of, why_begun
from stillroom.giving.plan_model import Basket, Brew, Offer, PlanProblem, StartChoice
from stillroom.giving.planning import plan_gifts
from stillroom.giving.starting import Frame, start_choices

DUE = date(2027, 12, 18)


def recipe(title: str, *lines: str, kind: str = "preserve", **more: object):
    return recipe_of(
        {"title": title, "kind": kind, "ingredients": list(lines), "method": ["Boil."], **more}
    )


def frame(one, today: date, country: str = "GB", **more) -> Frame:
    return Frame(today, (DUE,), DUE + timedelta(days=7), season=season_of(one, country), **more)


MARMALADE = recipe(
    "Seville marmalade", "1 kg Seville oranges", "2 lemons", "2 kg sugar", keeps="1 year"
)
SLOES = recipe("Sloe gin", "450 g sloes", "225 g sugar", "1 l gin, 40% vol", kind="infusion")


@pytest.mark.parametrize("weekly", [False, True])
def test_seville_oranges_of_january_and_sloes_of_the_autumn_come_alone(weekly):
    starts = start_choices(MARMALADE, frame(MARMALADE, date(2027, 1, 3), weekly=weekly))
    assert {one.start.month for one in starts} == {1, 2}
    assert all(one.in_season and not one.aside for one in starts)
    starts = start_choices(SLOES, frame(SLOES, date(2027, 3, 1), weekly=weekly))
    assert {one.start.month for one in starts} <= {9, 10, 11}
    assert starts


def test_what_is_begun_out_of_season_says_so_and_by_which_food():
    starts = start_choices(MARMALADE, frame(MARMALADE, date(2027, 9, 1)))
    assert starts
    assert not any(one.in_season for one in starts)
    assert starts[0].aside == (
        "Seville marmalade is begun out of the season of its produce, Seville oranges (January and "
        "February): it is stored, frozen or bought in, or not to be had."
    )


def test_what_is_in_the_house_waits_for_no_season():
    assert season_of(SLOES, "GB", frozenset({"sloe"})).months == ()


def test_the_recipes_own_season_stands_over_its_foods():
    own = recipe("Marmalade", "1 kg Seville oranges", "2 kg sugar", season=["March"])
    assert season_of(own, "GB").months == (3,)
    assert not season_of(own, "GB").foods
    assert why_begun(own, season_of(own, "GB"), "GB", 3) == ""


def test_what_is_little_beside_other_produce_is_no_reason_to_wait():
    garnished = recipe("Apple jelly", "2 kg apples", "3 raspberries", "1 kg sugar")
    both = recipe("Hedgerow jelly", "1 kg apples", "600 g blackberries", "1 kg sugar")
    assert season_of(garnished, "GB").months == ()
    assert season_of(both, "GB").months == (7, 8, 9, 10)
    optional = {"item": "sloes", "amount": "500 g", "optional": True}
    assert season_of(recipe("Jelly", "2 kg apples", optional), "GB").months == ()


def test_what_has_no_month_together_binds_nothing_and_is_told():
    two = recipe("Jam", "1 kg strawberries", "1 kg quinces", "1 kg sugar")
    season = season_of(two, "GB")
    assert (season.months, season.apart) == ((), True)
    assert "not to be had fresh in one month" in why_begun(two, season, "GB", 6)


def test_a_season_that_nobody_knows_is_said_and_no_other():
    roses = recipe("Rose syrup", "100 g rose petals", "500 g sugar")
    said = why_begun(roses, season_of(roses, "GB"), "GB", 6)
    assert said.startswith("Rose syrup: when rose petals are to be had fresh in the United Kingdom")
    plain = recipe("Fruit cake", "300 g flour", "200 g raisins", "1 lemon", kind="bake")
    assert why_begun(plain, season_of(plain, "GB"), "GB", 6) == ""


def _starts(*waits: int) -> tuple[StartChoice, ...]:
    return tuple(
        StartChoice(DUE - timedelta(days=days), True, {(2027, 12): 1}, waits=days) for days in waits
    )


def test_of_two_like_starts_what_goes_stale_is_made_near_its_day():
    offer = Offer("shortbread", "shortbread", "Shortbread", "eat", "bag", share=1)
    basket = Basket(1, "Ann", "small", {"eat": 1, "drink": 0, "craft": 0})
    problem = PlanProblem(
        (basket,), (offer,), (Brew("shortbread", "Shortbread", 1, _starts(1, 21, 3)),)
    )
    plan = plan_gifts(problem, 5)
    assert [one.choice.waits for one in plan.batches] == [1]
    assert plan.points == least_points(problem)


def test_only_what_soon_goes_stale_counts_its_days():
    short = recipe("Shortbread", "200 g butter", "300 g flour", kind="bake", keeps="4 weeks")
    jam = recipe("Jam", "1 kg apples", "1 kg sugar", keeps="1 year")
    today = date(2027, 10, 1)
    starts = start_choices(short, frame(short, today, weekly=True))
    assert len({one.waits for one in starts}) > 1
    assert all(one.waits == (DUE - (one.ready or DUE)).days for one in starts)
    assert {one.waits for one in start_choices(jam, frame(jam, today))} == {0}
