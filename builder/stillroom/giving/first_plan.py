"""A plan as one makes it by hand, basket after basket: where the search for a better one begins.

Every limit holds in it, so that whoever ends the search at once still has a plan. Leaves out
whether it is any good (objective.py) and that it holds (evaluating.py), which read none of this.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction

from stillroom.giving.evaluating import Answer, count_fresh, needs_of_answer
from stillroom.giving.money.buying import buy_cheapest
from stillroom.giving.plan_model import (
    Basket,
    Brew,
    Month,
    Offer,
    PlannedBatch,
    PlanProblem,
    StartChoice,
)

_Pot = tuple[str, int]
_OPENING = Fraction(1, 2)
"""Of what a batch costs: what counts against a thing for which another must be begun."""


def make_first_plan(problem: PlanProblem) -> Answer:
    """Return a plan that keeps to every limit, the hardest baskets filled first."""
    bench = _Bench(problem)
    for basket in sorted(problem.baskets, key=bench.freedom):
        bench.fill(basket)
    return bench.answer()


@dataclass
class _Bench:
    """What is begun, filled and left while baskets are filled one by one."""

    problem: PlanProblem
    gifts: dict[int, list[str]] = field(default_factory=lambda: defaultdict(list))
    sources: dict[tuple[int, str], _Pot | int] = field(default_factory=dict)
    begun: dict[_Pot, int] = field(default_factory=lambda: defaultdict(int))
    room: dict[_Pot, Fraction] = field(default_factory=lambda: defaultdict(Fraction))
    times: dict[str, int] = field(default_factory=lambda: defaultdict(int))
    hours: dict[Month, Fraction] = field(default_factory=lambda: defaultdict(Fraction))
    taken: dict[str, Fraction] = field(default_factory=lambda: defaultdict(Fraction))
    had: dict[str, set[str]] = field(default_factory=lambda: defaultdict(set))

    def __post_init__(self) -> None:
        self.offers = {offer.key: offer for offer in self.problem.offers}
        self.brews = {brew.recipe: brew for brew in self.problem.brews}
        self.most = {limit.key: limit.most for limit in self.problem.limits}
        self.shelf = {o.key: [lot.number for lot in o.shelf] for o in self.problem.offers}
        self.own: dict[str, int] = {}
        for basket in self.problem.baskets:
            self.own.setdefault(basket.household, basket.number)

    def freedom(self, basket: Basket) -> tuple[int, int]:
        """Return by how much more a basket may hold than it has places: the least come first."""
        allowed = sum((basket.number, key) not in self.problem.refused for key in self.offers)
        return allowed - sum(basket.room.values()), basket.number

    def fill(self, basket: Basket) -> None:
        for sort, room in basket.room.items():
            for _ in range(room):
                wanted = [
                    (self.cost(basket, offer), place)
                    for place, offer in enumerate(self.problem.offers)
                    if offer.sort == sort and self.may_have(basket, offer)
                ]
                for _, place in sorted(wanted):
                    if self.give(basket, self.problem.offers[place]):
                        break
                else:
                    break

    def may_have(self, basket: Basket, offer: Offer) -> bool:
        if (basket.number, offer.key) in self.problem.refused:
            return False
        own = [self.offers[key] for key in self.gifts[basket.number]]
        if any(one.recipe == offer.recipe for one in own):
            return False
        weight = sum((one.heft for one in own), offer.heft)
        worth = sum((one.worth for one in own), offer.worth)
        if basket.bands and weight > basket.bands[-1][0]:
            return False
        if basket.carries is not None and weight > basket.carries:
            return False
        posted = basket.postage(weight, len(own) + 1)
        return basket.budget is None or worth + posted <= basket.budget

    def cost(self, basket: Basket, offer: Offer) -> Fraction:
        """Return the points a thing costs there, with its part of a batch and of the money."""
        weights, recipe = self.problem.weights, offer.recipe
        own, had = self.own[basket.household], self.had[basket.household]
        points = weights.money * offer.worth + weights.batch * offer.share
        since = self.problem.years_since_had.get((basket.number, recipe))
        if since is not None:
            points += weights.had_last_year if since <= 1 else weights.had_before
        if self.problem.before is not None:
            points += weights.changed * ((basket.number, offer.key) not in self.problem.before)
        if recipe in had:
            points += weights.twice_in_household
        elif (basket.household, recipe) in self.problem.must_have:
            points -= weights.must_have
        liked = self.problem.liked
        if (own, recipe) in liked and not any((own, one) in liked for one in had):
            points -= weights.nothing_liked
        if next(self.waiting(basket, offer), None) is None:
            points += weights.batch * _OPENING
        return points

    def waiting(self, basket: Basket, offer: Offer) -> Iterator[_Pot | int]:
        """Yield where such a thing can be had without beginning anything: shelf, then pots."""
        for place, lot in enumerate(offer.shelf):
            if self.shelf[offer.key][place] and basket.takes(lot):
                yield -1 - place
        brew = self.brews.get(offer.recipe)
        for place, choice in enumerate(brew.choices if brew else ()):
            if self.room[offer.recipe, place] >= offer.share and basket.takes(choice):
                yield offer.recipe, place

    def give(self, basket: Basket, offer: Offer) -> bool:
        """Put a thing into a basket, beginning a batch where none has it; False if none may be."""
        source = next(self.waiting(basket, offer), None)
        if source is None:
            brew = self.brews.get(offer.recipe)
            place = self.place_to_begin(basket, brew) if brew and offer.share <= 1 else None
            if brew is None or place is None:
                return False
            source = offer.recipe, place
            self.begin(brew, place)
        if isinstance(source, int):
            self.shelf[offer.key][-1 - source] -= 1
        else:
            self.room[source] -= offer.share
        self.sources[basket.number, offer.key] = source
        self.gifts[basket.number].append(offer.key)
        self.had[basket.household].add(offer.recipe)
        return True

    def place_to_begin(self, basket: Basket, brew: Brew) -> int | None:
        """Return on which of its days one more of a recipe is best begun; None for none."""
        if self.times[brew.recipe] >= brew.most_batches:
            return None
        open_to = [
            (self.trouble(choice), place)
            for place, choice in enumerate(brew.choices)
            if basket.takes(choice) and self.may_begin(brew, place)
        ]
        return min(open_to)[1] if open_to else None

    def trouble(self, choice: StartChoice) -> tuple[int, Fraction]:
        weights = self.problem.weights
        points = 0 if choice.at_best else weights.usable_only
        points += 0 if choice.in_season else weights.out_of_season
        points += weights.moved if choice.moved else 0
        fullest = (self.hours[month] + hours for month, hours in choice.hours.items())
        return points, max(fullest, default=Fraction(0))

    def may_begin(self, brew: Brew, place: int) -> bool:
        choice = brew.choices[place]
        if choice.most is not None and self.begun[brew.recipe, place] >= choice.most:
            return False
        given = self.problem.hours
        if given is not None and any(
            self.hours[month] + hours > given.get(month, 0) for month, hours in choice.hours.items()
        ):
            return False
        return all(
            self.taken[key] + amount <= self.most[key]
            for key, amount in choice.takes.items()
            if key in self.most
        )

    def begin(self, brew: Brew, place: int) -> None:
        choice = brew.choices[place]
        self.begun[brew.recipe, place] += 1
        self.times[brew.recipe] += 1
        self.room[brew.recipe, place] += 1
        for month, hours in choice.hours.items():
            self.hours[month] += hours
        for key, amount in choice.takes.items():
            self.taken[key] += amount

    def answer(self) -> Answer:
        pots = [pot for pot, count in self.begun.items() if count]
        batches = tuple(self.batch(pot) for pot in pots)
        number = {pot: place for place, pot in enumerate(pots)}
        gifts = {basket.number: tuple(self.gifts[basket.number]) for basket in self.problem.baskets}
        sources = {
            gift: source if isinstance(source, int) else number[source]
            for gift, source in self.sources.items()
        }
        used = needs_of_answer(self.problem, batches, count_fresh(gifts, sources))
        return Answer(gifts, sources, batches, packs_for(self.problem, used))

    def batch(self, pot: _Pot) -> PlannedBatch:
        """Return a batch as it is made, the last of it no larger than what is filled from it."""
        recipe, place = pot
        brew = self.brews[recipe]
        spared = (1 - size for size in brew.sizes if 1 - size <= self.room[pot])
        cut = max(spared, default=Fraction(0))
        weights = self.problem.weights
        if weights.batch * cut < weights.part:
            cut = Fraction(0)
        return PlannedBatch(recipe, brew.choices[place], self.begun[pot], cut)


def packs_for(problem: PlanProblem, used: dict[str, Fraction]) -> dict[str, tuple[int, ...]]:
    """Return what is bought at the least price for so much that is used."""
    return {
        purchase.item: buy_cheapest(used[purchase.item] - purchase.on_hand, purchase.packs).counts
        for purchase in problem.purchases
        if purchase.packs and used.get(purchase.item, 0) > purchase.on_hand
    }
