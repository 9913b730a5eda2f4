"""A planning problem as the solver's model: what may be chosen, what limits it, what it costs.

What is refused for a basket (rules.py) is never a variable, so that no weight can buy an unsafe
gift. Hard limits: a basket's places and budget, one of a recipe a basket, the most batches, hours
and whatever else batches take of (Limit), what is ready in time and keeps. Everything else costs
points (Weights), an empty place too. Leaves out solving (planning.py) and reckoning the answer
over again (evaluating.py), which reads none of this.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from fractions import Fraction

from stillroom.giving.mip import Term
from stillroom.giving.model_built import Built, Group, Window, amount_terms
from stillroom.giving.modelling_money import (
    add_evenness,
    add_postage,
    add_purchases,
    weight_of,
    worth_of,
)
from stillroom.giving.plan_model import Basket, Brew, Lot, Offer, PlanProblem, StartChoice

FEW_BASKETS = 80
"""Up to so many baskets the rows that only help the solver are worth their room."""


def build_model(problem: PlanProblem, only_limits: bool = False) -> Built:
    """Return the model; with `only_limits` nothing costs anything, and nothing is bought."""
    built = Built()
    _add_gifts(problem, built)
    _add_batches(problem, built)
    _add_supply(problem, built)
    _add_hours(problem, built)
    _add_households(problem, built)
    if not only_limits:
        _add_busiest(problem, built)
        add_purchases(problem, built)
        add_evenness(problem, built)
    else:
        built.mip.costs = [Fraction(0)] * len(built.mip.costs)
    return built


def window_of(basket: Basket) -> Window:
    """Return from when and until when the presents of a basket must be good."""
    return basket.ready_by, basket.keeps_to


def _cost_of_giving(problem: PlanProblem, basket: Basket, offer: Offer) -> int:
    weights = problem.weights
    cost = 0
    years = problem.years_since_had.get((basket.number, offer.recipe))
    if years is not None:
        cost += weights.had_last_year if years <= 1 else weights.had_before
    if problem.before is not None and (basket.number, offer.key) not in problem.before:
        cost += weights.changed
    return cost


def _add_gifts(problem: PlanProblem, built: Built) -> None:
    for basket in problem.baskets:
        by_recipe = defaultdict(list)
        for sort, room in basket.room.items():
            if not room:
                continue
            places: list[Term] = []
            for offer in problem.offers_of(sort):
                if (basket.number, offer.key) in problem.refused:
                    continue
                given = built.mip.yes_or_no(_cost_of_giving(problem, basket, offer))
                built.gives[basket.number, offer.key] = given
                places.append((given, 1))
                by_recipe[offer.recipe].append((given, 1))
            empty = built.mip.variable(problem.weights.empty_place, 0, room, whole=True)
            built.empty[basket.number, sort] = empty
            built.mip.row([*places, (empty, 1)], room, room)
        for same in by_recipe.values():
            if len(same) > 1:
                built.mip.row(same, high=1)
        postage = add_postage(problem, built, basket)
        if basket.budget is not None:
            built.mip.row([*worth_of(problem, built, basket), *postage], high=basket.budget)
        if basket.carries is not None:
            built.mip.row(weight_of(problem, built, basket), high=basket.carries)


def _add_households(problem: PlanProblem, built: Built) -> None:
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


def _add_batches(problem: PlanProblem, built: Built) -> None:
    weights = problem.weights
    for brew in problem.brews:
        for place, choice in enumerate(brew.choices):
            cost = Fraction(weights.batch) + (0 if choice.at_best else weights.usable_only)
            cost += 0 if choice.in_season else weights.out_of_season
            cost += weights.moved if choice.moved else 0
            cost += weights.stale_day * choice.waits
            most = brew.most_batches if choice.most is None else choice.most
            count = built.mip.variable(cost, 0, min(most, brew.most_batches), whole=True)
            built.batches[brew.recipe, place] = count
            for size in brew.sizes:
                saved = weights.part - weights.batch * (1 - size)
                built.cut[brew.recipe, place, size] = built.mip.yes_or_no(saved)
            cut: list[Term] = [(built.cut[brew.recipe, place, size], 1) for size in brew.sizes]
            if cut:
                built.mip.row(cut, high=1)
                built.mip.row([*cut, (count, -1)], high=0)
        made = built.mip.yes_or_no()
        built.made[brew.recipe] = made
        terms = [(built.batches[brew.recipe, p], 1) for p in range(len(brew.choices))]
        built.mip.row([*terms, (made, -brew.most_batches)], high=0)
        built.mip.row([*terms, (made, -1)], low=0)


def groups_of(problem: PlanProblem, brew: Brew | None, offers: Sequence[Offer]) -> list[Group]:
    """Return out of what the offers of one recipe are drawn.

    Starts that are alike to every basket go together where each batch is a whole number of the one
    size; two sizes of a recipe are drawn batch by batch, since a jar is filled from one pot.
    """
    windows = {window_of(basket): basket for basket in problem.baskets}.values()

    def alike(source: StartChoice | Lot) -> tuple[bool, ...]:
        return tuple(basket.takes(source) for basket in windows)

    groups: list[Group] = []
    for offer in offers:
        lots: dict[tuple[bool, ...], list[int]] = defaultdict(list)
        for place, lot in enumerate(offer.shelf):
            lots[alike(lot)].append(place)
        groups += [Group(offer.recipe, offer.key, tuple(some), ()) for some in lots.values()]
    if brew is None:
        return groups
    places: dict[object, list[int]] = defaultdict(list)
    made = (Fraction(1), *brew.sizes)
    whole = len(offers) == 1 and all((size / offers[0].share).denominator == 1 for size in made)
    for place, choice in enumerate(brew.choices):
        places[alike(choice) if whole else place].append(place)
    return groups + [Group(brew.recipe, "", (), tuple(some)) for some in places.values()]


def _add_supply(problem: PlanProblem, built: Built) -> None:
    """Everything given is drawn from the shelf or a batch that is ready for it and keeps."""
    brews = {brew.recipe: brew for brew in problem.brews}
    by_recipe: dict[str, list[Offer]] = defaultdict(list)
    for offer in problem.offers:
        by_recipe[offer.recipe].append(offer)
    windows = {window_of(basket): basket for basket in problem.baskets}
    for recipe, offers in by_recipe.items():
        brew = brews.get(recipe)
        groups = groups_of(problem, brew, offers)
        for offer in offers:
            for window, like in windows.items():
                suiting = [group for group in groups if _suits(group, offer, brew, like)]
                _draw(problem, built, offer, window, suiting)
        for group in groups:
            _hold(built, offers, brew, group)
        if len(problem.baskets) <= FEW_BASKETS and brew is not None:
            _first_takes_a_batch(built, offers)


def _suits(group: Group, offer: Offer, brew: Brew | None, like: Basket) -> bool:
    """Whether an offer for such a basket may be drawn from a group."""
    if group.lots:
        return group.key == offer.key and like.takes(offer.shelf[group.lots[0]])
    return brew is not None and like.takes(brew.choices[group.choices[0]])


def _draw(
    problem: PlanProblem, built: Built, offer: Offer, window: Window, groups: Sequence[Group]
) -> None:
    given: list[Term] = [
        (built.gives[basket.number, offer.key], 1)
        for basket in problem.baskets
        if window_of(basket) == window and (basket.number, offer.key) in built.gives
    ]
    if not given:
        return
    drawn: list[Term] = []
    for group in groups:
        built.drawn[offer.key, window, group] = built.mip.variable(whole=True)
        drawn.append((built.drawn[offer.key, window, group], -1))
    built.mip.row([*given, *drawn], high=0)


def _hold(built: Built, offers: Sequence[Offer], brew: Brew | None, group: Group) -> None:
    """Let no more be drawn from a group than is in it."""
    shares = {offer.key: Fraction(1) if group.lots else offer.share for offer in offers}
    drawn: list[Term] = [
        (number, shares[key]) for (key, _, one), number in built.drawn.items() if one == group
    ]
    if not drawn:
        return
    if group.lots:
        (offer,) = (offer for offer in offers if offer.key == group.key)
        built.mip.row(drawn, high=sum(offer.shelf[n].number for n in group.lots))
    elif brew is not None:
        made = [
            term
            for place in group.choices
            for term in amount_terms(brew, built, place, Fraction(-1))
        ]
        built.mip.row([*drawn, *made], high=0)


def _first_takes_a_batch(built: Built, offers: Sequence[Offer]) -> None:
    """Implied, but it lets the solver see at once that a first gift takes a whole batch."""
    for offer in offers:
        if offer.shelf:
            continue
        for (_, key), gift in built.gives.items():
            if key == offer.key:
                built.mip.row([(gift, 1), (built.made[offer.recipe], -1)], high=0)


def _add_hours(problem: PlanProblem, built: Built) -> None:
    if problem.hours is not None:
        for month, terms in by_month(problem, built).items():
            built.mip.row(terms, high=problem.hours.get(month, Fraction(0)))
    for limit in problem.limits:
        terms = [
            (built.batches[brew.recipe, place], choice.takes[limit.key])
            for brew in problem.brews
            for place, choice in enumerate(brew.choices)
            if choice.takes.get(limit.key)
        ]
        if terms:
            built.mip.row(terms, high=limit.most)


def by_month(problem: PlanProblem, built: Built) -> dict[tuple[int, int], list[Term]]:
    """Return what the batches take of each month's hours."""
    months: dict[tuple[int, int], list[Term]] = defaultdict(list)
    for brew in problem.brews:
        for place, choice in enumerate(brew.choices):
            for month, hours in choice.hours.items():
                months[month].append((built.batches[brew.recipe, place], hours))
    return months


def _add_busiest(problem: PlanProblem, built: Built) -> None:
    busiest = built.mip.variable(problem.weights.busiest_hour)
    for brew in problem.brews:
        # implied: whatever month is chosen, a first batch fills it by so much
        peaks = [max(choice.hours.values(), default=Fraction(0)) for choice in brew.choices]
        least = min(peaks, default=Fraction(0))
        if least:
            built.mip.row([(built.made[brew.recipe], least), (busiest, -1)], high=0)
    for terms in by_month(problem, built).values():
        built.mip.row([*terms, (busiest, -1)], high=0)
