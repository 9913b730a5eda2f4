"""The best plan of a small problem by trying every one, and random small problems.

Written from the rules of issue 7 without the planner: every set of gifts, every number of
batches. Buying is tried by counting packs up, not by the buying module.
"""

from __future__ import annotations

import random
from collections import Counter, defaultdict
from dataclasses import replace
from datetime import date
from fractions import Fraction
from itertools import combinations, product

from stillroom.giving.money.buying import PackOffer
from stillroom.giving.plan_model import (
    Basket,
    Brew,
    Limit,
    Lot,
    Offer,
    PlanProblem,
    Purchase,
    Reason,
    StartChoice,
)

_BANDS = tuple(
    (Fraction(most), Fraction(price))
    for most, price in ((250, "1.10"), (600, "3.50"), (900, "4.25"))
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
    known: dict = {}
    return min(
        _points_of_gifts(problem, gifts) + making
        for gifts in _all_gifts(problem)
        if (making := _cheapest_making(problem, gifts, known)) is not None
    )


def could_be_filled(problem: PlanProblem, wish, others: bool = True) -> bool:
    """Say whether any plan fills the place wished for, nobody else with more empty places."""
    many = len(problem.baskets)  # a recipe goes once into a basket: more batches fill nothing
    brews = tuple(replace(b, most_batches=min(b.most_batches, many)) for b in problem.brews)
    problem = replace(problem, brews=brews)
    known: dict = {}
    for gifts in _all_gifts(problem):
        wanted = True
        for basket in problem.baskets:
            sorts = Counter(offer.sort for offer in gifts[basket.number])
            for sort, room in basket.room.items():
                place = (basket.number, sort)
                left = room - sorts[sort]
                if place == (wish.basket.number, wish.sort):
                    wanted &= left < wish.empty[place]
                elif others or basket.number == wish.basket.number:
                    wanted &= left <= wish.empty.get(place, 0)
        if wanted and _cheapest_making(problem, gifts, known) is not None:
            return True
    return False


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
            posted = _postage(basket, chosen)
            if posted is None:
                continue
            dear = sum(o.worth for o in chosen) + posted
            if basket.budget is not None and dear > basket.budget:
                continue
            if basket.carries is not None and _grams(chosen) > basket.carries:
                continue
            yield chosen


def _grams(chosen):
    return sum(o.usual_grams if o.weighs is None else o.weighs for o in chosen)


def _postage(basket, chosen):
    """Return the cheapest band that so much weight fits in; None when it fits in none."""
    if not basket.bands or not chosen:
        return 0
    return min((p for most, p in basket.bands if _grams(chosen) <= most), default=None)


def _points_of_gifts(problem, gifts):
    w, points = problem.weights, Fraction(0)
    worths, households = defaultdict(list), defaultdict(list)
    for basket in problem.baskets:
        chosen = gifts[basket.number]
        points += w.money * _postage(basket, chosen)
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


def _cheapest_making(problem, gifts, known=None):
    """Return the fewest points of any making that fills just these gifts; None when none does."""
    wanted = Counter(
        (offer.key, basket.ready_by, basket.keeps_to)
        for basket in problem.baskets
        for offer in gifts[basket.number]
    )
    asked = frozenset(wanted.items())
    if known is not None and asked in known:
        return known[asked]
    spans = [list(_ways(problem, brew, wanted)) for brew in problem.brews]
    others = {o.recipe for o in problem.offers} - {b.recipe for b in problem.brews}
    assert not others, "every offer of a small problem has a brew"
    costs = [_making_points(problem, ways) for ways in product(*spans)]
    best = min((cost for cost in costs if cost is not None), default=None)
    if known is not None:
        known[asked] = best
    return best


def _ways(problem, brew, wanted):
    """Yield what may be made of a recipe, with each way of filling what is wanted out of it."""
    steps = [Fraction(0), *(1 - size for size in brew.sizes)]
    each = []
    for choice in brew.choices:
        top = brew.most_batches if choice.most is None else min(choice.most, brew.most_batches)
        each.append([(0, Fraction(0)), *((n, cut) for n in range(1, top + 1) for cut in steps)])
    offers = {offer.key: offer for offer in problem.offers if offer.recipe == brew.recipe}
    gifts = [row for row, count in wanted.items() for _ in range(count) if row[0] in offers]
    for way in product(*each):
        if sum(count for count, _ in way) <= brew.most_batches:
            for fresh in set(_fillings_of(brew, offers, gifts, way)):
                yield brew, way, fresh


def _in_time(ready, until, due, keeps_to):
    late = due is not None and ready is not None and ready > due
    return not late and not (keeps_to is not None and until is not None and until < keeps_to)


def _fillings_of(brew, offers, gifts, way):
    """Yield which gifts are filled afresh, over every way of taking each from shelf or pot."""
    room = [count - cut for count, cut in way]
    shelf = {key: [lot.number for lot in offer.shelf] for key, offer in offers.items()}

    def go(place, fresh):
        if place == len(gifts):
            yield tuple(sorted(fresh))
            return
        key, due, keeps_to = gifts[place]
        for n, lot in enumerate(offers[key].shelf):
            if shelf[key][n] and _in_time(lot.ready, lot.keep_until, due, keeps_to):
                shelf[key][n] -= 1
                yield from go(place + 1, fresh)
                shelf[key][n] += 1
        for n, choice in enumerate(brew.choices):
            fits = room[n] >= offers[key].share
            if fits and _in_time(choice.ready, choice.keep_until, due, keeps_to):
                room[n] -= offers[key].share
                yield from go(place + 1, [*fresh, key])
                room[n] += offers[key].share

    yield from go(0, [])


def _making_points(problem, ways):
    w, points = problem.weights, Fraction(0)
    months, used, taken = defaultdict(Fraction), defaultdict(Fraction), defaultdict(Fraction)
    offers = {offer.key: offer for offer in problem.offers}
    for brew, way, fresh in ways:
        for choice, (count, cut) in zip(brew.choices, way, strict=True):
            points += (count - cut) * w.batch + (w.part if cut else 0)
            points += count * (0 if choice.at_best else w.usable_only)
            points += count * (w.moved if choice.moved else 0)
            points += count * w.stale_day * choice.waits
            points += count * (0 if choice.in_season else w.out_of_season)
            for month, hours in choice.hours.items():
                months[month] += hours * count
            for key, amount in choice.takes.items():
                taken[key] += amount * count
            for item, amount in (*brew.needs.items(), *choice.needs.items()):
                used[item] += amount * (count - cut)
        for key in fresh:
            for item, amount in offers[key].needs.items():
                used[item] += amount
    if problem.hours is not None:
        for month, hours in months.items():
            if hours > problem.hours.get(month, 0):
                return None
    if any(taken[limit.key] > limit.most for limit in problem.limits):
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


def timed_problem(seed: int) -> PlanProblem:
    """Return a small problem of two sizes, parts of a recipe, posting days, keeping and pans."""
    dice = random.Random(seed)
    plain = small_problem(seed)
    days = [date(2027, 12, n) for n in (1, 5, 9, 12)]
    brews, offers = [], []
    for brew, offer in zip(plain.brews[:3], plain.offers[:3], strict=True):
        choices = tuple(
            replace(
                choice,
                ready=dice.choice([None, *days]),
                in_season=dice.random() < 0.7,
                keep_until=dice.choice([None, None, date(2027, 12, 20), date(2028, 1, 20)]),
                most=dice.choice([None, None, 1]),
                takes={"pan": Fraction(1)} if dice.random() < 0.5 else {},
                needs={f"apples {dice.randint(1, 2)}": Fraction(700)}
                if dice.random() < 0.4
                else {},
            )
            for choice in brew.choices
        )
        parts = dice.choice([1, 1, 2, 3])
        least = dice.randint(1, parts)
        sizes = tuple(Fraction(n, parts) for n in range(least, parts))
        brews.append(replace(brew, choices=choices, sizes=sizes))
        lots = (Lot(1, None, dice.choice([None, date(2027, 12, 20)])),) if offer.on_hand else ()
        weighs = dice.choice([None, Fraction(300), Fraction(550)])
        usual = dice.choice([Fraction(0), Fraction(425)])
        offers.append(replace(offer, lots=lots, weighs=weighs, usual_grams=usual))
        if dice.random() < 0.4:
            small = Fraction(dice.choice([1, 2]), dice.choice([3, 4, 5]))
            offers.append(replace(offers[-1], key=f"{offer.key}b", share=small, on_hand=0, lots=()))
    baskets = tuple(
        replace(
            basket,
            ready_by=dice.choice([None, date(2027, 12, 6), date(2027, 12, 10)]),
            keeps_to=dice.choice([None, date(2027, 12, 31)]),
            carries=dice.choice([None, None, Fraction(900)]),
            bands=dice.choice([(), _BANDS, _BANDS[:2]]),
        )
        for basket in plain.baskets[:2]
    )
    limits = (Limit("pan", Fraction(dice.randint(1, 3)), "the pan", "Give another pan"),)
    made = {brew.recipe for brew in brews}
    apples = (PackOffer(Fraction(1000), Fraction("2.10")),)
    return replace(
        plain,
        brews=tuple(brews),
        offers=tuple(offers),
        baskets=baskets,
        limits=limits,
        purchases=(*plain.purchases, *(Purchase(f"apples {n}", apples) for n in (1, 2))),
        must_have=frozenset(must for must in plain.must_have if must[1] in made),
    )
