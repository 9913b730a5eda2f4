"""The best plan of a small problem by trying every one, and random small problems.

Written from the rules of issue 7 without the planner: every set of gifts, every number of
batches. Buying is tried by counting packs up, not by the buying module.
"""

from __future__ import annotations

import random
from collections import Counter, defaultdict
from datetime import date
from fractions import Fraction
from itertools import combinations, product

from stillroom.giving.money.buying import PackOffer
from stillroom.giving.plan_model import (
    Basket,
    Brew,
    Offer,
    PlanProblem,
    Purchase,
    Reason,
    StartChoice,
)

REFUSED = (Reason("contains alcohol", "contain alcohol"),)


def cheapest_by_counting(need, packs):
    """Least price covering `need` by trying all counts of packs; None when it cannot be."""
    if need <= 0:
        return Fraction(0)
    best = None
    tops = [int(need / pack.size) + 1 + pack.at_least for pack in packs]
    for counts in product(*(range(top + 1) for top in tops)):
        if any(0 < n < pack.at_least for n, pack in zip(counts, packs, strict=True)):
            continue
        if sum(n * pack.size for n, pack in zip(counts, packs, strict=True)) < need:
            continue
        price = sum(n * pack.price for n, pack in zip(counts, packs, strict=True))
        best = price if best is None or price < best else best
    return best


def least_points(problem: PlanProblem) -> Fraction:
    """Return the fewest points any plan of the problem has."""
    return min(
        _points_of_gifts(problem, gifts) + making
        for gifts in _all_gifts(problem)
        if (making := _cheapest_making(problem, gifts)) is not None
    )


def _all_gifts(problem):
    for choice in product(*(list(_fillings(problem, basket)) for basket in problem.baskets)):
        yield dict(zip((basket.number for basket in problem.baskets), choice, strict=True))


def _fillings(problem, basket):
    allowed = [o for o in problem.offers if (basket.number, o.key) not in problem.refused]
    for size in range(len(allowed) + 1):
        for chosen in combinations(allowed, size):
            sorts = Counter(offer.sort for offer in chosen)
            recipes = Counter(offer.recipe for offer in chosen)
            if any(n > basket.room.get(sort, 0) for sort, n in sorts.items()):
                continue
            if any(n > 1 for n in recipes.values()):
                continue
            if basket.budget is not None and sum(o.worth for o in chosen) > basket.budget:
                continue
            yield chosen


def _points_of_gifts(problem, gifts):
    w, points = problem.weights, Fraction(0)
    worths, households = defaultdict(list), defaultdict(list)
    for basket in problem.baskets:
        chosen = gifts[basket.number]
        points += w.empty_place * (sum(basket.room.values()) - len(chosen))
        for offer in chosen:
            since = problem.years_since_had.get((basket.number, offer.recipe))
            if since is not None:
                points += w.had_last_year if since <= 1 else w.had_before
            if problem.before is not None and (basket.number, offer.key) not in problem.before:
                points += w.changed
        worths[basket.kind].append(sum((o.worth for o in chosen), Fraction(0)))
        households[basket.household].append(basket)
    for name, baskets in households.items():
        counts = Counter(o.recipe for basket in baskets for o in gifts[basket.number])
        points += w.twice_in_household * sum(n - 1 for n in counts.values())
        own = baskets[0].number
        likes = {recipe for number, recipe in problem.liked if number == own}
        reachable = any(
            o.recipe in likes and (b.number, o.key) not in problem.refused and b.room.get(o.sort)
            for b in baskets
            for o in problem.offers
        )
        if reachable and not likes & set(counts):
            points += w.nothing_liked
        for household, recipe in problem.must_have:
            if household == name and not counts[recipe]:
                points += w.must_have
    for kind in worths.values():
        points += w.uneven * (max(kind) - min(kind))
    return points


def _cheapest_making(problem, gifts):
    counts = Counter(offer.key for chosen in gifts.values() for offer in chosen)
    fresh = {o.key: max(0, counts[o.key] - o.on_hand) for o in problem.offers}
    spans = []
    for brew in problem.brews:
        need = sum(o.share * fresh[o.key] for o in problem.offers if o.recipe == brew.recipe)
        ways = product(*(range(brew.most_batches + 1) for _ in brew.choices))
        spans.append([way for way in ways if need <= sum(way) <= brew.most_batches])
    costs = [_making_points(problem, way, fresh) for way in product(*spans)]
    return min((cost for cost in costs if cost is not None), default=None)


def _making_points(problem, ways, fresh):
    w, points = problem.weights, Fraction(0)
    months, used = defaultdict(Fraction), defaultdict(Fraction)
    for brew, way in zip(problem.brews, ways, strict=True):
        for choice, count in zip(brew.choices, way, strict=True):
            points += count * (w.batch + (0 if choice.at_best else w.usable_only))
            for month, hours in choice.hours.items():
                months[month] += hours * count
            for item, amount in brew.needs.items():
                used[item] += amount * count
    for offer in problem.offers:
        for item, amount in offer.needs.items():
            used[item] += amount * fresh[offer.key]
    if problem.hours is not None:
        for month, hours in months.items():
            if hours > problem.hours.get(month, 0):
                return None
    points += w.busiest_hour * max(months.values(), default=Fraction(0))
    for purchase in problem.purchases:
        need = used[purchase.item] - purchase.on_hand
        points += w.money * cheapest_by_counting(need, purchase.packs)
    return points


def small_problem(seed: int) -> PlanProblem:
    """Return a random problem small enough for every plan to be tried."""
    dice = random.Random(seed)
    sorts = ["eat", "drink"]
    offers, brews = [], []
    for n in range(dice.randint(2, 4)):
        recipe, worth = f"r{n}", Fraction(dice.randint(50, 400), 100)
        sort, share = dice.choice(sorts), Fraction(1, dice.randint(1, 3))
        needs = {"bottle": Fraction(1)} if dice.random() < 0.5 else {}
        on_hand = dice.choice([0, 0, 1])
        offers.append(
            Offer(recipe, recipe, recipe.upper(), sort, "jar", share, worth, on_hand, needs)
        )
        choices = tuple(
            StartChoice(
                date(2027, month, 1), month < 6, {(2027, month): Fraction(dice.randint(1, 6), 2)}
            )
            for month in dice.sample([3, 6, 9], dice.randint(0, 2))
        )
        needs = {"sugar": Fraction(dice.choice([150, 400]))}
        brews.append(Brew(recipe, recipe.upper(), dice.randint(1, 2), choices, needs))
    baskets = []
    for n in range(1, dice.randint(2, 3) + 1):
        household = dice.choice(["A", "B", "C"])
        room = {"eat": dice.randint(0, 2), "drink": dice.randint(0, 1)}
        budget = Fraction(dice.randint(3, 6)) if dice.random() < 0.3 else None
        baskets.append(Basket(n, household, dice.choice(["small", "large"]), room, budget))
    pairs = [(b.number, o.recipe) for b in baskets for o in offers]
    refused = {pair: REFUSED for pair in pairs if dice.random() < 0.25}
    return PlanProblem(
        tuple(baskets),
        tuple(offers),
        tuple(brews),
        purchases=(
            Purchase("sugar", (PackOffer(Fraction(500), Fraction("0.95")),), Fraction(100)),
            Purchase(
                "bottle",
                (
                    PackOffer(Fraction(1), Fraction("0.95")),
                    PackOffer(Fraction(1), Fraction("0.40"), at_least=3),
                ),
            ),
        ),
        hours={(2027, m): Fraction(dice.randint(2, 6)) for m in (3, 6, 9)}
        if dice.random() < 0.6
        else None,
        refused=refused,
        years_since_had={pair: dice.randint(1, 3) for pair in pairs if dice.random() < 0.2},
        liked=frozenset(pair for pair in pairs if dice.random() < 0.3),
        must_have=frozenset((b.household, dice.choice(offers).recipe) for b in baskets[:1])
        if dice.random() < 0.3
        else frozenset(),
        before=frozenset(pair for pair in pairs if dice.random() < 0.4)
        if dice.random() < 0.3
        else None,
    )
