"""The planner against every plan there is, and against what its terms add up to."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction

import pytest

from bench.bench_planning import large_problem
from giving.brute_force import REFUSED, least_points, small_problem, timed_problem
from giving.lists import TODAY, demo_recipes, read_dict, tiny_list
from sampling import share
from stillroom.giving.evaluating import reckon
from stillroom.giving.explaining import explain_shortages, say_how_good, say_shortages
from stillroom.giving.first_plan import make_first_plan
from stillroom.giving.offering import make_offering
from stillroom.giving.plan_model import Basket, Offer, PlanProblem
from stillroom.giving.planning import plan_gifts
from stillroom.giving.searching import Search


def _is_least(problem):
    plan = plan_gifts(problem)
    assert plan.proof == "proven best"
    assert plan.points == least_points(problem)


@pytest.mark.parametrize("seed", range(15))
def test_no_plan_has_fewer_points(seed):
    _is_least(small_problem(seed))


@pytest.mark.parametrize("seed", range(15))
def test_no_plan_of_parts_sizes_and_days_has_fewer_points(seed):
    _is_least(timed_problem(seed))


def _is_least_step_by_step(problem):
    search = Search(problem, 60, 0, None, few=0)
    search.run()
    assert search.proof() == "proven best"
    assert search.best.reckoned.points == search.bound == least_points(problem)


@pytest.mark.parametrize("seed", range(15))
def test_what_is_planned_step_by_step_has_no_better_plan_either(seed):
    _is_least_step_by_step(small_problem(seed))
    _is_least_step_by_step(timed_problem(seed))


def test_a_plan_within_the_gap_asked_for_is_said_to_be():
    plan = plan_gifts(large_problem(40), 120, 0.05)  # in steps: 60 take twenty times as long
    assert plan.proof == "within the gap asked for"
    assert plan.points - plan.bound <= plan.points * Fraction("0.05")


@pytest.mark.thousand
@pytest.mark.parametrize("seed", range(500))
def test_a_thousand_small_lists_have_no_better_plan(seed):
    for problem in (small_problem(seed), timed_problem(seed)):
        _is_least(problem)
        _is_least_step_by_step(problem)


@pytest.mark.sampled
@pytest.mark.parametrize("seed", range(share(12, 40)))
def test_limits_hold(seed):
    problem = small_problem(seed)
    plan = plan_gifts(problem)
    offers = {offer.key: offer for offer in problem.offers}
    for basket in problem.baskets:
        given = Counter(offers[key].sort for key in plan.gifts[basket.number])
        for sort, room in basket.room.items():
            assert given[sort] + plan.empty.get((basket.number, sort), 0) == room
        for key in plan.gifts[basket.number]:
            assert (basket.number, key) not in problem.refused
    for brew in problem.brews:
        made = sum(batch.count for batch in plan.batches if batch.recipe == brew.recipe)
        assert made <= brew.most_batches
        fresh = sum(
            offer.share * max(0, plan.count_of(offer.key) - offer.on_hand)
            for offer in problem.offers
            if offer.recipe == brew.recipe
        )
        assert fresh <= made


@pytest.mark.sampled
@pytest.mark.parametrize("seed", range(share(40, 400)))
def test_the_first_plan_keeps_to_every_limit(seed):
    for problem in (small_problem(seed), timed_problem(seed)):
        assert reckon(problem, make_first_plan(problem)).faults == ()


def test_a_search_without_time_hands_out_the_first_plan_and_claims_nothing():
    problem = large_problem(60)
    plan = plan_gifts(problem, 1e-6)
    assert plan.points == reckon(problem, make_first_plan(problem)).points
    assert plan.empty == {}
    assert (plan.bound, plan.gap, plan.proof) == (0, 1, "stopped by time")
    assert say_how_good(plan) == (
        "The search was ended by time: how near this plan is to the best is not known. "
        'Give it longer, with "--seconds".'
    )


def test_many_places_left_by_a_search_without_time_are_said_once():
    problem = large_problem(60)
    made = replace(problem, hours={})  # nothing can be made, so that every place stays empty
    plan = plan_gifts(made, 1e-6)
    short = explain_shortages(made, plan, 1e-6)
    assert list(say_shortages(short, made)) == [
        f"{sum(plan.empty.values())} places in 60 baskets are empty: the search was ended before "
        'it was settled who is given what. Give it longer, with "--seconds".'
    ]
    (proven,) = say_shortages(short, made, proven=True)
    assert "there was no time to find out why" in proven
    # more baskets than there could ever be things for: that is plain without a search
    brews = tuple(replace(one, most_batches=0) for one in made.brews)
    offers = tuple(replace(one, on_hand=0, lots=()) for one in made.offers)
    few = list(say_shortages(short, replace(made, brews=brews, offers=offers)))
    assert few
    assert all("no more than 0 can be had" in words for words in few)


@pytest.mark.parametrize("seed", range(6))
def test_no_plan_of_a_tiny_list_has_fewer_points(seed):
    _is_least(_tiny(seed))


@pytest.mark.thousand
@pytest.mark.parametrize("seed", range(150))
def test_no_plan_of_any_tiny_list_has_fewer_points(seed):
    _is_least(_tiny(seed))


def _tiny(seed):
    return make_offering(read_dict(tiny_list(seed)), demo_recipes(), TODAY).problem


def test_same_problem_same_plan():
    assert plan_gifts(small_problem(7)).gifts == plan_gifts(small_problem(7)).gifts


def _drinks(count):
    return tuple(
        Offer(f"d{n}", f"d{n}", f"Cordial {n}", "drink", "bottle", Fraction(1), on_hand=9)
        for n in range(count)
    )


def test_a_place_nothing_is_safe_for_is_explained_by_name():
    offers = _drinks(3)
    basket = Basket(9, "the Rowans", "small", {"drink": 1})
    refused = {(9, offer.key): REFUSED for offer in offers}
    problem = PlanProblem((basket,), offers, (), refused=refused)
    plan = plan_gifts(problem)
    (shortage,) = explain_shortages(problem, plan)
    assert plan.empty == {(9, "drink"): 1}
    assert shortage.what == "No drink left for number 9, the Rowans: all three contain alcohol."


@pytest.mark.sampled
@pytest.mark.parametrize("seed", range(share(30, 150)))
def test_every_shortage_is_explained(seed):
    problem = small_problem(seed)
    plan = plan_gifts(problem)
    shortages = explain_shortages(problem, plan)
    explained = Counter()
    for shortage in shortages:
        explained[shortage.basket.number, shortage.sort] += shortage.count
        assert shortage.basket.household in shortage.what
        assert shortage.mend
    assert explained == Counter(plan.empty)


def test_planning_again_changes_little():
    offers = _drinks(4)
    baskets = tuple(Basket(n, f"H{n}", "small", {"drink": 1}) for n in range(1, 5))
    before = frozenset((n, f"d{n - 1}") for n in range(1, 5))
    refused = {(2, "d1"): REFUSED}
    plan = plan_gifts(PlanProblem(baskets, offers, (), refused=refused, before=before))
    kept = [n for n in (1, 3, 4) if plan.gifts[n] == (f"d{n - 1}",)]
    assert kept == [1, 3, 4]
    assert plan.gifts[2] != ("d1",)
