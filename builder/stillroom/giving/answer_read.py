"""What the solver's values decide: who gets what, what is made, and out of which batch each comes.

What must be bought for it is reckoned anew, at the least price. Leaves out whether it holds:
evaluating.py.
"""

from __future__ import annotations

from collections import defaultdict
from fractions import Fraction

from stillroom.giving.evaluating import Answer, count_fresh, needs_of_answer
from stillroom.giving.first_plan import packs_for
from stillroom.giving.model_built import Built, Window
from stillroom.giving.modelling import window_of
from stillroom.giving.plan_model import PlannedBatch, PlanProblem


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
