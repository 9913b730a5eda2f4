"""What a plan costs, in the solver's model: packs that are bought whole, postage, evenness."""

from __future__ import annotations

import math
from collections import defaultdict
from fractions import Fraction

from stillroom.giving.mip import Term
from stillroom.giving.model_built import Built, amount_terms
from stillroom.giving.money.buying import PackOffer, buy_cheapest
from stillroom.giving.plan_model import Basket, PlanProblem, Purchase


def worth_of(problem: PlanProblem, built: Built, basket: Basket) -> list[Term]:
    """Return what the things in a basket are worth."""
    return [
        (built.gives[basket.number, offer.key], offer.worth)
        for offer in problem.offers
        if (basket.number, offer.key) in built.gives
    ]


def weight_of(problem: PlanProblem, built: Built, basket: Basket) -> list[Term]:
    """Return what the things in a basket weigh."""
    return [
        (built.gives[basket.number, offer.key], offer.heft)
        for offer in problem.offers
        if offer.heft and (basket.number, offer.key) in built.gives
    ]


def add_postage(problem: PlanProblem, built: Built, basket: Basket) -> list[Term]:
    """Let a parcel fall into one of its bands of weight, and return what it costs to post.

    An empty basket is no parcel: it falls into none.
    """
    if not basket.bands:
        return []
    chosen = [
        (built.mip.yes_or_no(problem.weights.money * price), most, price)
        for most, price in basket.bands
    ]
    built.bands[basket.number] = [band for band, _, _ in chosen]
    bands: list[Term] = [(band, 1) for band, _, _ in chosen]
    built.mip.row(bands, high=1)
    room = sum(basket.room.values())
    things: list[Term] = [(gift, 1) for (number, _), gift in built.gives.items()
                          if number == basket.number]  # fmt: skip
    built.mip.row([*things, *((band, -room) for band, _ in bands)], high=0)
    held: list[Term] = [(band, -most) for band, most, _ in chosen]
    built.mip.row([*weight_of(problem, built, basket), *held], high=0)
    return [(band, price) for band, _, price in chosen]


def add_purchases(problem: PlanProblem, built: Built) -> None:
    """Let whole packs be bought of whatever batches and presents use, less what is in the house."""
    for purchase in problem.purchases:
        used, top = _used(problem, built, purchase.item)
        if not used:
            continue
        most = max(Fraction(0), top - purchase.on_hand)
        packs = [_add_pack(problem, built, one, most, purchase) for one in purchase.packs]
        built.packs[purchase.item] = packs
        held = zip(packs, purchase.packs, strict=True)
        built.mip.row([*used, *((pack, -one.size) for pack, one in held)], high=purchase.on_hand)
        _add_first_purchase(problem, built, purchase)


def _used(problem: PlanProblem, built: Built, item: str) -> tuple[list[Term], Fraction]:
    """Return what is used of a thing, and the most that any plan could use of it."""
    used: list[Term] = []
    top = Fraction(0)
    for brew in problem.brews:
        largest = Fraction(0)
        for place, choice in enumerate(brew.choices):
            if need := brew.needs.get(item, Fraction(0)) + choice.needs.get(item, Fraction(0)):
                largest = max(largest, need)
                used += amount_terms(brew, built, place, need)
        top += largest * brew.most_batches
    for offer in problem.offers:
        if each := offer.needs.get(item):
            top += each * sum(key == offer.key for _, key in built.gives)
            used += [
                (number, each)
                for (key, _, group), number in built.drawn.items()
                if key == offer.key and group.choices
            ]
    return used, top


def _add_first_purchase(problem: PlanProblem, built: Built, purchase: Purchase) -> None:
    """Implied, but it lets the solver see that a first batch buys whole packs, never a part."""
    packs = zip(built.packs[purchase.item], purchase.packs, strict=True)
    paid: list[Term] = [(count, pack.price) for count, pack in packs]
    for brew in problem.brews:
        least = brew.needs.get(purchase.item, Fraction(0)) * min((*brew.sizes, Fraction(1)))
        if least > purchase.on_hand:
            price = buy_cheapest(least - purchase.on_hand, purchase.packs).price
            built.mip.row([*paid, (built.made[brew.recipe], -price)], low=0)


def _add_pack(
    problem: PlanProblem, built: Built, pack: PackOffer, top: Fraction, purchase: Purchase
) -> int:
    """Add how many of a pack are bought; none of one that no plan would buy so many of."""
    price = problem.weights.money * pack.price
    most = math.ceil(top / pack.size)
    if pack.at_least <= 1:
        return built.mip.variable(price, 0, most, whole=True)
    others = [one for one in purchase.packs if one.at_least <= 1]
    if others and buy_cheapest(top, others).price <= pack.at_least * pack.price:
        return built.mip.variable(price, 0, 0, whole=True)
    most = max(most, pack.at_least)
    count = built.mip.variable(price, 0, most, whole=True)
    taken = built.mip.yes_or_no()
    built.mip.row([(count, 1), (taken, -pack.at_least)], low=0)
    built.mip.row([(count, 1), (taken, -most)], high=0)
    return count


def add_evenness(problem: PlanProblem, built: Built) -> None:
    """Between baskets of one kind, the dearest contents less the plainest cost points."""
    kinds = defaultdict(list)
    for basket in problem.baskets:
        kinds[basket.kind].append(basket)
    for baskets in kinds.values():
        if len(baskets) < 2:
            continue
        most = built.mip.variable(problem.weights.uneven)
        least = built.mip.variable(-problem.weights.uneven)
        built.even += [most, least]
        built.mip.row([(most, 1), (least, -1)], low=0)
        for basket in baskets:
            worth = worth_of(problem, built, basket)
            built.mip.row([*worth, (most, -1)], high=0)
            built.mip.row([*worth, (least, -1)], low=0)
