"""Who gets what, from which batches and packs: the plan with the fewest points.

What is refused for a basket (rules.py) is never a variable of the model, so that no weight can
buy an unsafe gift. Hard limits: a basket's places, one of a recipe a basket, the most batches,
the hours of a month, a budget. Everything else costs points (Weights), also an empty place, so
that there is always an answer and explaining.py can say what is wrong with it.
"""

from __future__ import annotations

import time
from collections import defaultdict
from dataclasses import dataclass, field
from fractions import Fraction

from stillroom.giving.mip import INFINITE, Mip, Solved
from stillroom.giving.model import Sort
from stillroom.giving.money.buying import PackOffer, buy_cheapest
from stillroom.giving.objective import weigh_plan
from stillroom.giving.plan_model import (
    Basket,
    Month,
    Offer,
    Plan,
    PlannedBatch,
    PlanProblem,
    Purchase,
)


@dataclass
class _Built:
    """The model with the numbers of its variables, by what they decide."""

    mip: Mip = field(default_factory=Mip)
    gives: dict[tuple[int, str], int] = field(default_factory=dict)
    empty: dict[tuple[int, Sort], int] = field(default_factory=dict)
    missed: dict[tuple[str, str], int] = field(default_factory=dict)
    batches: dict[tuple[str, int], int] = field(default_factory=dict)
    made: dict[str, int] = field(default_factory=dict)
    fresh: dict[str, int] = field(default_factory=dict)
    packs: dict[str, list[int]] = field(default_factory=dict)


def plan_gifts(problem: PlanProblem, time_limit_s: float = 20, gap: float = 0) -> Plan:
    """Return the best plan found and how good it provably is.

    Stops at `time_limit_s` seconds, or earlier once the plan is within `gap` (0.01 is 1 %) of
    the best there can be. Raises Unreadable when the solver is not installed.
    """
    began = time.monotonic()
    built = _build(problem)
    solved = built.mip.solve(time_limit_s, gap)
    return _read_plan(problem, built, solved, gap, time.monotonic() - began)


def _build(problem: PlanProblem) -> _Built:
    built = _Built()
    _add_gifts(problem, built)
    _add_households(problem, built)
    _add_batches(problem, built)
    _add_supply(problem, built)
    _add_hours(problem, built)
    _add_purchases(problem, built)
    _add_evenness(problem, built)
    return built


def _cost_of_giving(problem: PlanProblem, basket: Basket, offer: Offer) -> int:
    weights = problem.weights
    cost = 0
    years = problem.years_since_had.get((basket.number, offer.recipe))
    if years is not None:
        cost += weights.had_last_year if years <= 1 else weights.had_before
    if problem.before is not None and (basket.number, offer.key) not in problem.before:
        cost += weights.changed
    return cost


def _add_gifts(problem: PlanProblem, built: _Built) -> None:
    for basket in problem.baskets:
        by_recipe = defaultdict(list)
        for sort, room in basket.room.items():
            if not room:
                continue
            places = []
            for offer in problem.offers_of(sort):
                if (basket.number, offer.key) in problem.refused:
                    continue
                given = built.mip.yes_or_no(_cost_of_giving(problem, basket, offer))
                built.gives[basket.number, offer.key] = given
                places.append((given, 1))
                by_recipe[offer.recipe].append((given, 1))
            empty = built.mip.variable(problem.weights.empty_place, 0, room)
            built.empty[basket.number, sort] = empty
            built.mip.row([*places, (empty, 1)], room, room)
        for same in by_recipe.values():
            if len(same) > 1:
                built.mip.row(same, high=1)
        _add_budget(problem, built, basket)


def _worth_of(problem: PlanProblem, built: _Built, basket: Basket) -> list[tuple[int, float]]:
    return [
        (built.gives[basket.number, offer.key], float(offer.worth))
        for offer in problem.offers
        if (basket.number, offer.key) in built.gives
    ]


def _add_budget(problem: PlanProblem, built: _Built, basket: Basket) -> None:
    if basket.budget is not None:
        built.mip.row(_worth_of(problem, built, basket), high=float(basket.budget) + 1e-9)


def _add_households(problem: PlanProblem, built: _Built) -> None:
    weights = problem.weights
    numbers = defaultdict(list)
    for basket in problem.baskets:
        numbers[basket.household].append(basket.number)
    for household, own in numbers.items():
        given: dict[str, list[int]] = defaultdict(list)
        liked = []
        for offer in problem.offers:
            here = [built.gives[n, offer.key] for n in own if (n, offer.key) in built.gives]
            given[offer.recipe] += here
            if (own[0], offer.recipe) in problem.liked:
                liked += here
        for recipe, here in given.items():
            if len(own) > 1 and len(here) > 1:
                again = built.mip.variable(weights.twice_in_household)
                built.mip.row([*((g, 1) for g in here), (again, -1)], high=1)
            if (household, recipe) in problem.must_have:
                missed = built.mip.variable(weights.must_have, 0, 1)
                built.missed[household, recipe] = missed
                built.mip.row([*((g, 1) for g in here), (missed, 1)], low=1)
        if liked:
            none = built.mip.variable(weights.nothing_liked, 0, 1)
            built.mip.row([*((g, 1) for g in liked), (none, 1)], low=1)


def _add_batches(problem: PlanProblem, built: _Built) -> None:
    weights = problem.weights
    for brew in problem.brews:
        for place, choice in enumerate(brew.choices):
            cost = weights.batch + (0 if choice.at_best else weights.usable_only)
            built.batches[brew.recipe, place] = built.mip.variable(
                cost, 0, brew.most_batches, whole=True
            )
        made = built.mip.yes_or_no()
        built.made[brew.recipe] = made
        terms = [(built.batches[brew.recipe, p], 1) for p in range(len(brew.choices))]
        built.mip.row([*terms, (made, -brew.most_batches)], high=0)
        built.mip.row([*terms, (made, -1)], low=0)


def _add_supply(problem: PlanProblem, built: _Built) -> None:
    """Everything given is on hand or fresh; what is fresh fits into the batches made."""
    drawn = defaultdict(list)
    brewed = defaultdict(list)
    for (recipe, _), batch in built.batches.items():
        brewed[recipe].append((batch, -1))
    for offer in problem.offers:
        fresh = built.mip.variable(whole=True)
        built.fresh[offer.key] = fresh
        given = [
            (built.gives[basket.number, offer.key], 1)
            for basket in problem.baskets
            if (basket.number, offer.key) in built.gives
        ]
        built.mip.row([*given, (fresh, -1)], high=offer.on_hand)
        drawn[offer.recipe].append((fresh, float(offer.share)))
        if not offer.on_hand:
            # implied, but it lets the solver see at once that a first gift takes a whole batch
            for gift, _ in given:
                built.mip.row([(gift, 1), (built.made[offer.recipe], -1)], high=0)
    for recipe, terms in drawn.items():
        built.mip.row([*terms, *brewed[recipe]], high=1e-7)


def _add_hours(problem: PlanProblem, built: _Built) -> None:
    by_month: dict[Month, list[tuple[int, float]]] = defaultdict(list)
    for brew in problem.brews:
        for place, choice in enumerate(brew.choices):
            for month, hours in choice.hours.items():
                by_month[month].append((built.batches[brew.recipe, place], float(hours)))
    busiest = built.mip.variable(problem.weights.busiest_hour)
    for brew in problem.brews:
        # implied: whatever month is chosen, a first batch fills it by so much
        peaks = [max(choice.hours.values(), default=Fraction(0)) for choice in brew.choices]
        least = min(peaks, default=Fraction(0))
        if least:
            built.mip.row([(built.made[brew.recipe], float(least)), (busiest, -1)], high=1e-7)
    for month, terms in by_month.items():
        built.mip.row([*terms, (busiest, -1)], high=0)
        if problem.hours is not None:
            built.mip.row(terms, high=float(problem.hours.get(month, Fraction(0))) + 1e-9)


def _add_purchases(problem: PlanProblem, built: _Built) -> None:
    for purchase in problem.purchases:
        used = []
        for brew in problem.brews:
            need = brew.needs.get(purchase.item)
            if need:
                places = range(len(brew.choices))
                used += [(built.batches[brew.recipe, p], float(need)) for p in places]
        for offer in problem.offers:
            if need := offer.needs.get(purchase.item):
                used.append((built.fresh[offer.key], float(need)))
        if not used:
            continue
        packs = [_add_pack(problem, built, pack) for pack in purchase.packs]
        built.packs[purchase.item] = packs
        held = [
            (pack, -float(offer.size)) for pack, offer in zip(packs, purchase.packs, strict=True)
        ]
        built.mip.row([*used, *held], high=float(purchase.on_hand))
        _add_first_purchase(problem, built, purchase)


def _add_first_purchase(problem: PlanProblem, built: _Built, purchase: Purchase) -> None:
    """Implied, but it lets the solver see that a first batch buys whole packs, never a part."""
    paid = [
        (count, float(pack.price))
        for count, pack in zip(built.packs[purchase.item], purchase.packs, strict=True)
    ]
    for brew in problem.brews:
        short = brew.needs.get(purchase.item, Fraction(0)) - purchase.on_hand
        if short > 0:
            least = buy_cheapest(short, purchase.packs).price
            built.mip.row([*paid, (built.made[brew.recipe], -float(least))], low=-1e-7)


def _add_pack(problem: PlanProblem, built: _Built, pack: PackOffer) -> int:
    count = built.mip.variable(problem.weights.money * float(pack.price), whole=True)
    if pack.at_least > 1:
        taken = built.mip.yes_or_no()
        built.mip.row([(count, 1), (taken, -pack.at_least)], low=0)
        built.mip.row([(count, 1), (taken, -10_000)], high=0)
    return count


def _add_evenness(problem: PlanProblem, built: _Built) -> None:
    """Between baskets of one kind, the dearest contents less the plainest cost points."""
    kinds = defaultdict(list)
    for basket in problem.baskets:
        kinds[basket.kind].append(basket)
    for baskets in kinds.values():
        if len(baskets) < 2:
            continue
        most = built.mip.variable(problem.weights.uneven)
        least = built.mip.variable(-problem.weights.uneven)
        built.mip.row([(most, 1), (least, -1)], low=0)
        for basket in baskets:
            worth = _worth_of(problem, built, basket)
            built.mip.row([*worth, (most, -1)], high=0)
            built.mip.row([*worth, (least, -1)], low=0, high=INFINITE)


def _read_plan(
    problem: PlanProblem, built: _Built, solved: Solved, gap: float, seconds: float
) -> Plan:
    def whole(variable: int) -> int:
        return round(solved.values[variable])

    gifts: dict[int, tuple[str, ...]] = {basket.number: () for basket in problem.baskets}
    for (number, key), variable in built.gives.items():
        if whole(variable):
            gifts[number] = (*gifts[number], key)
    batches = tuple(
        PlannedBatch(brew.recipe, choice, whole(built.batches[brew.recipe, place]))
        for brew in problem.brews
        for place, choice in enumerate(brew.choices)
        if whole(built.batches[brew.recipe, place])
    )
    packs = {item: tuple(map(whole, numbers)) for item, numbers in built.packs.items()}
    empty = {place: whole(v) for place, v in built.empty.items() if whole(v)}
    missed = tuple(must for must, variable in built.missed.items() if whole(variable))
    terms = weigh_plan(problem, gifts, batches, packs, empty, missed)
    points = sum((term.points for term in terms), Fraction(0))
    bound = min(Fraction(solved.bound).limit_denominator(10**6), points)
    left = (points - bound) / points if points else Fraction(0)
    proven = left < Fraction(1, 10**5)
    return Plan(
        gifts=gifts,
        batches=batches,
        packs=packs,
        empty=empty,
        missed=missed,
        terms=terms,
        points=points,
        bound=points if proven else bound,
        gap=Fraction(0) if proven else left,
        proof="proven best"
        if proven
        else ("stopped by time" if solved.out_of_time else "within the gap asked for"),
        seconds=seconds,
    )
