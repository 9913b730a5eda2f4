"""Who gets what, from which batches and packs: the plan with the fewest points.

The solver's answer (modelling.py, mip.py) is read, what must be bought for it is reckoned anew, and
all of it is checked by evaluating.py, which knows of no solver: an answer with a fault is never
handed out, and "proven best" is said where the two agree and no better plan can be.
"""

from __future__ import annotations

import time
from collections import defaultdict
from contextlib import suppress
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from stillroom.core.words.problems import Unreadable
from stillroom.giving.evaluating import Answer, Reckoned, count_fresh, needs_of_answer, reckon
from stillroom.giving.first_plan import make_first_plan, packs_for
from stillroom.giving.mip import NoTime, Solved, Watch
from stillroom.giving.model_built import Built, Window
from stillroom.giving.modelling import build_model, window_of
from stillroom.giving.plan_model import Plan, PlannedBatch, PlanProblem

Proof = Literal["proven best", "stopped by time", "within the gap asked for"]
_CUT_SHORT: Proof = "stopped by time"
_LEAST_S = 0.1
_NEAR = Fraction(1, 10**5)  # of a point: what the solver's floats may be off


def plan_gifts(
    problem: PlanProblem, time_limit_s: float = 20, gap: float = 0, watch: Watch | None = None
) -> Plan:
    """Return the best plan found and how good it provably is.

    A first plan is made by hand and stands where no better one is found. Stops at `time_limit_s`
    seconds, or earlier once the plan is within `gap` (0.01 is 1 %) of the best there can be, or
    when `watch` says so. Raises Unreadable when the solver is not
    installed, or when what it says does not hold.
    """
    began = time.monotonic()
    first = _reckoned(problem, make_first_plan(problem))
    own, bound, proof = first, Fraction(0), _CUT_SHORT
    if time.monotonic() - began < time_limit_s:
        built = build_model(problem)
        left = time_limit_s - (time.monotonic() - began)
        with suppress(NoTime):  # the first plan stands then
            solved = built.mip.solve(max(left, _LEAST_S), gap, watch)
            own = _reckoned(problem, read_answer(problem, built, solved.values))
            bound, proof = _proof(solved, own.reckoned.points)
    better = min(own, first, key=lambda one: one.reckoned.points)
    if better.reckoned.points < bound:  # then what was claimed of the other proves nothing
        bound, proof = Fraction(0), _CUT_SHORT
    return _plan_of(better, bound, proof, time.monotonic() - began)


@dataclass(frozen=True)
class _Whole:
    """An answer with what it comes to."""

    answer: Answer
    reckoned: Reckoned


def _reckoned(problem: PlanProblem, answer: Answer) -> _Whole:
    reckoned = reckon(problem, answer)
    if reckoned.faults:
        raise Unreadable(
            f"The plan was reckoned over again, and does not hold: {'; '.join(reckoned.faults)}.",
            "Please report this as a fault.",
        )
    return _Whole(answer, reckoned)


def _plan_of(whole: _Whole, bound: Fraction, proof: Proof, seconds: float) -> Plan:
    answer, reckoned = whole.answer, whole.reckoned
    points = reckoned.points
    return Plan(
        gifts=answer.gifts,
        batches=answer.batches,
        packs=answer.packs,
        empty=reckoned.empty,
        missed=reckoned.missed,
        terms=reckoned.terms,
        points=points,
        bound=bound,
        gap=(points - bound) / points if points else Fraction(0),
        proof=proof,
        seconds=seconds,
        sources=answer.sources,
    )


def _proof(solved: Solved, points: Fraction) -> tuple[Fraction, Proof]:
    """Return what no plan can be under, and what may be said of it.

    A bound above what the answer comes to, or a claim that is not what it comes to, proves nothing:
    then none is taken.
    """
    near = _NEAR + points / 10**8
    agreed = abs(Fraction(solved.objective) - points) <= near
    # what the answer buys is reckoned anew: it may be better than the solver's own, never worse
    sound = Fraction(solved.objective) >= points - near and Fraction(solved.bound) <= points + near
    bound = Fraction(solved.bound).limit_denominator(10**6) if sound else Fraction(0)
    bound = max(Fraction(0), min(bound, points))
    if agreed and sound and solved.exact and points - Fraction(solved.bound) <= near:
        return points, "proven best"
    return bound, _CUT_SHORT if solved.out_of_time else "within the gap asked for"


def read_answer(problem: PlanProblem, built: Built, values: tuple[float, ...]) -> Answer:
    """Return what a solution decides, and what is bought for it at the least price."""

    def whole(variable: int) -> int:
        return round(values[variable])

    gifts: dict[int, tuple[str, ...]] = {basket.number: () for basket in problem.baskets}
    for (number, key), variable in built.gives.items():
        if whole(variable):
            gifts[number] = (*gifts[number], key)
    brews = {brew.recipe: brew for brew in problem.brews}
    batches: list[PlannedBatch] = []
    place_of: dict[tuple[str, int], int] = {}
    for (recipe, place), variable in built.batches.items():
        if count := whole(variable):
            place_of[recipe, place] = len(batches)
            sizes = brews[recipe].sizes
            cut = sum(
                (1 - size for size in sizes if whole(built.cut[recipe, place, size])), Fraction(0)
            )
            batches.append(PlannedBatch(recipe, brews[recipe].choices[place], count, cut))
    sources = _sources(problem, built, values, batches, place_of, gifts)
    used = needs_of_answer(problem, batches, count_fresh(gifts, sources))
    return Answer(gifts, sources, tuple(batches), packs_for(problem, used))


def _sources(
    problem: PlanProblem,
    built: Built,
    values: tuple[float, ...],
    batches: list[PlannedBatch],
    place_of: dict[tuple[str, int], int],
    gifts: dict[int, tuple[str, ...]],
) -> dict[tuple[int, str], int]:
    """Return where each gift comes from: shelf first, then the batches in order of start."""
    offers = {offer.key: offer for offer in problem.offers}
    room = [batch.amount for batch in batches]
    left = {offer.key: [lot.number for lot in offer.shelf] for offer in problem.offers}
    waiting: dict[tuple[str, Window], list[int]] = defaultdict(list)
    for basket in problem.baskets:
        for key in gifts[basket.number]:
            waiting[key, window_of(basket)].append(basket.number)
    sources: dict[tuple[int, str], int] = {}
    for (key, window, group), variable in built.drawn.items():
        begun = [(group.recipe, place) for place in group.choices]
        pots = sorted(
            (place_of[one] for one in begun if one in place_of),
            key=lambda n: batches[n].choice.start,
        )
        for _ in range(round(values[variable])):
            if not waiting[key, window]:
                break
            lot = next((n for n in group.lots if left[key][n]), None)
            pot = next((n for n in pots if room[n] >= offers[key].share), None)
            if lot is not None:
                left[key][lot] -= 1
                sources[waiting[key, window].pop(0), key] = -1 - lot
            elif pot is not None:
                room[pot] -= offers[key].share
                sources[waiting[key, window].pop(0), key] = pot
    return sources
