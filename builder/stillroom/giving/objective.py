"""What a plan costs in points, reckoned exactly from the plan itself and said in plain words.

Written apart from the solver's model (planning.py), so that the two check each other.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from fractions import Fraction

from stillroom.giving.likes_missed import of_liked
from stillroom.giving.model import Sort
from stillroom.giving.plan_model import Month, PlannedBatch, PlanProblem, Term

Gifts = Mapping[int, tuple[str, ...]]


def weigh_plan(
    problem: PlanProblem,
    gifts: Gifts,
    batches: Sequence[PlannedBatch],
    packs: Mapping[str, Sequence[int]],
    empty: Mapping[tuple[int, Sort], int],
    missed: Sequence[tuple[str, str]],
) -> tuple[Term, ...]:
    """Return the terms of the objective, the dearest sort first; their points add up to it."""
    weights = problem.weights
    last_year, before = _repeats(problem, gifts)
    made = sum((batch.amount for batch in batches), Fraction(0))
    parts = sum(batch.cut > 0 for batch in batches)
    young = sum(batch.count for batch in batches if not batch.choice.at_best)
    unseasonal = sum(batch.count for batch in batches if not batch.choice.in_season)
    moved = sum(batch.count for batch in batches if batch.choice.moved)
    stale = sum(batch.count * batch.choice.waits for batch in batches)
    counted = (
        ("places left empty", sum(empty.values()), weights.empty_place),
        ("things that must be had and are not", len(missed), weights.must_have),
        ("things had last year", last_year, weights.had_last_year),
        ("things had in an earlier year", before, weights.had_before),
        ("things twice in one household", _twice(problem, gifts), weights.twice_in_household),
        ("households with nothing they like best", _unliked(problem, gifts), weights.nothing_liked),
        ("households that may have nothing they like best", _may_not(problem, gifts), 0),
        ("presents changed from the plan before", _changed(problem, gifts), weights.changed),
        ("times a recipe is made: twice the recipe counts 2, half of it ½", made, weights.batch),
        ("parts of a recipe, as much work as a whole one", parts, weights.part),
        ("batches ready but not at their best", young, weights.usable_only),
        ("batches begun out of the season of their produce", unseasonal, weights.out_of_season),
        ("batches begun on another day than in the plan before", moved, weights.moved),
        ("days that what goes stale is made before giving day", stale, weights.stale_day),
        (
            "money spent on packs, unknown prices taken as usual",
            _spent(problem, packs),
            weights.money,
        ),
        (
            "postage of each basket by itself, weights that are not known taken as usual",
            _posted(problem, gifts),
            weights.money,
        ),
        ("dearest basket less plainest, kind by kind", _uneven(problem, gifts), weights.uneven),
        ("hands-on hours of the busiest month", _busiest(batches), weights.busiest_hour),
    )
    return tuple(Term(words, Fraction(amount), each) for words, amount, each in counted)


def _repeats(problem: PlanProblem, gifts: Gifts) -> tuple[int, int]:
    recipes = {offer.key: offer.recipe for offer in problem.offers}
    years = [
        problem.years_since_had.get((number, recipes[key]))
        for number, keys in gifts.items()
        for key in keys
    ]
    known = [since for since in years if since is not None]
    return sum(since <= 1 for since in known), sum(since > 1 for since in known)


def _twice(problem: PlanProblem, gifts: Gifts) -> int:
    recipes = {offer.key: offer.recipe for offer in problem.offers}
    counts: dict[tuple[str, str], int] = defaultdict(int)
    for basket in problem.baskets:
        for key in gifts[basket.number]:
            counts[basket.household, recipes[key]] += 1
    return sum(count - 1 for count in counts.values())


def _unliked(problem: PlanProblem, gifts: Gifts) -> int:
    """Count households that could have had something they like and have nothing of it."""
    recipes = {offer.key: offer.recipe for offer in problem.offers}
    could: dict[str, bool] = defaultdict(bool)
    has: dict[str, bool] = defaultdict(bool)
    first: dict[str, int] = {}
    for basket in problem.baskets:
        own = first.setdefault(basket.household, basket.number)
        for offer in problem.offers:
            if (own, offer.recipe) in problem.liked and basket.room.get(offer.sort):
                could[basket.household] |= (basket.number, offer.key) not in problem.refused
        has[basket.household] |= any(
            (own, recipes[key]) in problem.liked for key in gifts[basket.number]
        )
    return sum(possible and not has[household] for household, possible in could.items())


def _may_not(problem: PlanProblem, gifts: Gifts) -> int:
    """Count households with nothing they like, though no plan could have given it to them."""
    return len(of_liked(problem, gifts)) - _unliked(problem, gifts)


def _changed(problem: PlanProblem, gifts: Gifts) -> int:
    if problem.before is None:
        return 0
    return sum(
        (number, key) not in problem.before for number, keys in gifts.items() for key in keys
    )


def _spent(problem: PlanProblem, packs: Mapping[str, Sequence[int]]) -> Fraction:
    return sum(
        (
            count * pack.price
            for purchase in problem.purchases
            for pack, count in zip(purchase.packs, packs.get(purchase.item, ()), strict=False)
        ),
        Fraction(0),
    )


def _posted(problem: PlanProblem, gifts: Gifts) -> Fraction:
    heft = {offer.key: offer.heft for offer in problem.offers}
    return sum(
        (
            basket.postage(
                sum((heft[key] for key in gifts[basket.number]), Fraction(0)),
                len(gifts[basket.number]),
            )
            for basket in problem.baskets
            if basket.bands
        ),
        Fraction(0),
    )


def _uneven(problem: PlanProblem, gifts: Gifts) -> Fraction:
    worth = {offer.key: offer.worth for offer in problem.offers}
    kinds = defaultdict(list)
    for basket in problem.baskets:
        kinds[basket.kind].append(sum((worth[k] for k in gifts[basket.number]), Fraction(0)))
    return sum((max(kind) - min(kind) for kind in kinds.values()), Fraction(0))


def _busiest(batches: Sequence[PlannedBatch]) -> Fraction:
    months: dict[Month, Fraction] = defaultdict(Fraction)
    for batch in batches:
        for month, hours in batch.choice.hours.items():
            months[month] += hours * batch.count
    return max(months.values(), default=Fraction(0))
