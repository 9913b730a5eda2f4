"""Why somebody goes without: each set of limits against every plan there is."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from giving.brute_force import could_be_filled, small_problem, timed_problem
from stillroom.giving.explaining import explain_missed, explain_shortages
from stillroom.giving.forbidding import Patience, Wish, limits_of, refusals_of, why_forbidden
from stillroom.giving.plan_model import Basket, Brew, Lot, Offer, PlanProblem
from stillroom.giving.planning import plan_gifts


def _wishes(problem, plan):
    for number, sort in plan.empty:
        basket = next(one for one in problem.baskets if one.number == number)
        yield Wish(basket, sort, plan.empty)


def _hold_against_every_plan(problem):
    """Return how many sets of limits were looked at."""
    plan, count = plan_gifts(problem), 0
    for wish in _wishes(problem, plan):
        forbidden = why_forbidden(problem, wish, Patience(30))
        assert could_be_filled(problem, wish) is bool(forbidden.possible)
        if forbidden.possible:
            continue
        count += 1
        own = [bound.words for bound in forbidden.bounds]
        assert len(set(own)) == len(own)
        # what is not for them stands, or forbids it by itself
        everything = list(limits_of(problem, wish))
        by_limits = {bound.words for bound in everything} >= set(own)
        loose = problem
        for bound in everything if by_limits else (*everything, *refusals_of(problem, wish)):
            loose = loose if bound.words in own else bound.lift(loose)
        assert not could_be_filled(loose, wish, forbidden.others)
        for bound in forbidden.bounds:
            assert could_be_filled(bound.lift(loose), wish, forbidden.others), bound.words
        changes = [change for bound in forbidden.bounds for words, change in bound.mends
                   if words == forbidden.mend]  # fmt: skip
        for change in changes:
            assert could_be_filled(change(problem), wish)
    return count


@pytest.mark.parametrize("seed", range(12))
def test_no_limit_can_be_spared_and_the_change_mends(seed):
    _hold_against_every_plan(small_problem(seed))
    _hold_against_every_plan(timed_problem(seed))


@pytest.mark.thousand
@pytest.mark.parametrize("seed", range(12, 160))
def test_no_limit_of_a_thousand_can_be_spared(seed):
    _hold_against_every_plan(small_problem(seed))
    _hold_against_every_plan(timed_problem(seed))


def _two_jars_for_three() -> PlanProblem:
    offer = Offer("jam", "jam", "Plum jam", "eat", "jar", Fraction(1, 2))
    brew = Brew("jam", "Plum jam", 1, ())
    lots = (Lot(2),)
    baskets = tuple(Basket(n, f"House {n}", "small", {"eat": 1}) for n in (1, 2, 3))
    return PlanProblem(baskets, (replace(offer, on_hand=2, lots=lots),), (brew,))


def test_too_late_is_named_and_another_present_mends_it():
    problem = _two_jars_for_three()
    brew = replace(problem.brews[0], too_late="Plum jam would have had to be begun by 3 May.")
    problem = replace(problem, brews=(brew,))
    (short,) = explain_shortages(problem, plan_gifts(problem))
    assert "Plum jam would have had to be begun by 3 May" in short.what
    assert short.mend == "Offer another thing to eat that they can have."
    assert "nobody else is to go without" in short.what


def test_what_must_be_had_is_explained_by_its_limits():
    problem = _two_jars_for_three()
    problem = replace(problem, offers=(replace(problem.offers[0], on_hand=0, lots=()),),
                      must_have=frozenset({("House 1", "jam")}))  # fmt: skip
    (said,) = explain_missed(problem, plan_gifts(problem))
    assert said.startswith("House 1 must have Plum jam, but it is too late for Plum jam.")


def test_a_search_ended_by_time_is_blamed_on_no_limit():
    problem = _two_jars_for_three()
    plan = replace(plan_gifts(problem), proof="stopped by time")
    (short,) = explain_shortages(problem, plan)
    assert "the search was ended" in short.what
    assert "too late" not in short.what
    assert short.mend == 'Give it longer, with "--seconds".'
