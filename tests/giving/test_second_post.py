"""The second check of days, weights and post: silent on a good plan, loud on each broken one."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from fractions import Fraction

import pytest

from giving.lists import TODAY, demo_recipes, random_list, read_dict, small_list
from stillroom.core.book import BookSettings
from stillroom.giving.explaining import explain_shortages
from stillroom.giving.offering import make_offering
from stillroom.giving.plan_model import Basket, Brew, Offer, PlanProblem, StartChoice
from stillroom.giving.planning import plan_gifts
from stillroom.giving.second_look import find_breaches
from stillroom.giving.second_post import find_late_and_heavy


@pytest.fixture(scope="module")
def good():
    data = small_list()
    data["baskets"] = {"parcel": {"eat": 2, "weighs": "100 g"}}
    data["makes"] = [
        {"recipe": "rosemary-salt", "weighs": "190 g"},
        {"recipe": "vanilla-sugar", "weighs": "370 g"},
        {"recipe": "sea-buckthorn-curd", "weighs": "200 g", "batches": 0},
        {"recipe": "quince-ratafia", "weighs": "300 g", "batches": 0, "sort": "eat"},
    ]
    data["households"] = [{"name": "Nell", "basket": "parcel", "by post": True, "country": "FR"}]
    data["posting"] = [
        {"service": "packet", "to": "FR", "last day": "2027-12-02", "bands": {"1 kg": "4.00"}}
    ]
    offering = make_offering(read_dict(data), demo_recipes(), TODAY)
    return offering, plan_gifts(offering.problem)


def told(offering, plan):
    return list(find_late_and_heavy(offering, plan))


def test_a_good_plan_is_good(good):
    assert told(*good) == []
    assert find_breaches(*good) == ()


def _with_service(offering, **changes):
    (service,) = offering.giving.posting
    giving = offering.giving.model_copy(update={"posting": (service.model_copy(update=changes),)})
    return replace(offering, giving=giving)


def _with_household(offering, **changes):
    household = offering.households[1].model_copy(update=changes)
    return replace(offering, households={1: household})


@pytest.mark.parametrize(
    ("broken", "words"),
    [
        (lambda one: _with_service(one, last_day=date(2027, 1, 2)), "goes out on"),
        (lambda one: _with_service(one, bands=((Fraction(600), Fraction(3)),)), "660 g, and 600 g"),
        (lambda one: _with_household(one, days_left=4000), "and must to"),
        (lambda one: _with_household(one, opens=date(2040, 1, 1)), "and must to"),
    ],
    ids=["too late", "too heavy", "to be good for ever", "opened years later"],
)
def test_what_is_late_old_or_heavy_is_found(good, broken, words):
    offering, plan = good
    found = told(broken(offering), plan)
    assert found
    assert all(words in line for line in found), found


@pytest.mark.parametrize(
    ("key", "words"),
    [("sea-buckthorn-curd", "fridge"), ("quince-ratafia", "goes abroad")],
)
def test_what_no_parcel_takes_is_found_by_its_label(good, key, words):
    offering, plan = good
    swapped = replace(
        plan,
        gifts={1: (key,)},
        sources={(1, key): plan.sources[1, "rosemary-salt"]},
    )
    assert any(words in line for line in told(offering, swapped))
    by_hand = _with_household(offering, delivery="by hand")
    assert not any(words in line for line in told(by_hand, swapped))


def test_in_the_states_no_alcohol_goes_by_post(good):
    offering, plan = good
    source = plan.sources[1, "rosemary-salt"]
    swapped = replace(plan, gifts={1: ("quince-ratafia",)}, sources={(1, "quince-ratafia"): source})
    there = replace(offering, settings=BookSettings(country="US", language="en_US"))
    assert any("the mail there" in line for line in told(there, swapped))


@pytest.mark.parametrize("seed", range(10))
def test_the_planner_and_the_second_check_agree(seed):
    offering = make_offering(read_dict(random_list(seed)), demo_recipes(), TODAY)
    assert find_breaches(offering, plan_gifts(offering.problem, 5, 0.05)) == ()


def _late(shelf=0, choices=()):
    offers = tuple(
        Offer(key, key, key.title(), "eat", "jar", Fraction(1, 2), on_hand=shelf)
        for key in ("jam", "mead")
    )
    brews = tuple(
        Brew(key, key.title(), 1, choices, too_late=f"{key.title()} wanted a start by 3 May.")
        for key in ("jam", "mead")
    )
    return PlanProblem((Basket(1, "Nell", "small", {"eat": 2}),), offers, brews)


def test_where_it_is_simply_too_late_no_time_is_wanted_to_find_that_out():
    problem = _late()
    plan = plan_gifts(problem)
    (short,) = explain_shortages(problem, plan, time_limit_s=0)
    assert "Jam wanted a start by 3 May, Mead wanted a start by 3 May" in short.what
    assert "no time" not in str(short)
    assert short.mend == "Offer another thing to eat that they can have."
    ended = replace(plan, proof="stopped by time")
    assert "search was ended" not in str(explain_shortages(problem, ended, 0)[0])


def test_where_one_could_be_had_it_is_looked_for():
    begun = (StartChoice(date(2027, 3, 1), True, {}),)
    problem = _late()
    one, other = problem.brews
    problem = replace(problem, brews=(one, replace(other, choices=begun)))
    none = replace(plan_gifts(problem), empty={(1, "eat"): 2}, proof="stopped by time")
    (short,) = explain_shortages(problem, none, time_limit_s=0)
    assert "search was ended" in str(short) or "no time" in str(short)
