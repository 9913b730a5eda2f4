"""What a point of the objective is in the money of a list: about a pound, a euro, a hundred yen.

Weights are set in sums of the size of pounds. Where a list's own prices are in the hundreds its
money is a smaller one, and a point is ten, a hundred or a thousand of it: else a plan of yen would
leave every basket empty to save a pack of butter.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from statistics import median

from stillroom.giving.model import GivingList
from stillroom.giving.money.buying import buy_cheapest
from stillroom.giving.money.costing import PriceBook
from stillroom.giving.plan_model import Brew, PlanProblem, Weights

_TIMES = 5
"""A batch is paid for, makes its basket dearer than the plainest, and takes hours beside."""
USUAL_MOST = 30
"""What the middle price of a list in pounds or euros does not go beyond. Maker's own."""


def money_of_a_point(giving: GivingList, prices: PriceBook) -> Fraction:
    """Return how much of a list's money is a point: 1, 10, 100 …, by the middle of its prices."""
    packs = [pack for entry in prices.items for pack in entry.packs]
    sums = [pack.price * pack.per for pack in packs if pack.at_least <= 1 and pack.sold != "own"]
    sums += [make.cost for make in giving.makes if make.cost]
    return point_of(sums)


def point_of(sums: Sequence[Fraction]) -> Fraction:
    """Return the money of a point by the sums that a list names.

    >>> str(point_of([Fraction(2), Fraction(14)])), str(point_of([Fraction(480), Fraction(1480)]))
    ('1', '100')
    """
    point, usual = 1, median(sums) if sums else 0
    while usual > USUAL_MOST * point:
        point *= 10
    return Fraction(point)


def weights_of(problem: PlanProblem, point: Fraction) -> Weights:
    """Return weights that count so much money as one, and a place left empty as worse than any.

    What one batch of the dearest recipe costs is never saved by giving nothing.
    """
    usual = problem.weights
    dearest = max((first_batch(problem, brew) for brew in problem.brews), default=Fraction(0))
    empty = max(usual.empty_place, math.ceil(_TIMES * dearest / point))
    return replace(
        usual,
        money=usual.money / point,
        uneven=usual.uneven / point,
        empty_place=empty,
        must_have=max(usual.must_have, empty // 2),
    )


def first_batch(problem: PlanProblem, brew: Brew) -> Fraction:
    """Return what must be bought for one batch of a recipe, in whole packs."""
    cost = Fraction(0)
    for purchase in problem.purchases:
        each = [one.needs.get(purchase.item, Fraction(0)) for one in brew.choices]
        short = brew.needs.get(purchase.item, Fraction(0)) + max(each, default=Fraction(0))
        if short > purchase.on_hand:
            cost += buy_cheapest(short - purchase.on_hand, purchase.packs).price
    return cost
