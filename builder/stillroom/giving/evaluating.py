"""A plan reckoned over again, exactly, from the problem alone: every limit, its points and cost.

It knows nothing of the solver or its model. Whatever it finds wrong, the plan is not handed out;
where its points are not what the solver claims, nothing is said to be proven.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from stillroom.giving.model import Sort
from stillroom.giving.objective import weigh_plan
from stillroom.giving.plan_model import (
    Lot,
    Month,
    Offer,
    PlannedBatch,
    PlanProblem,
    StartChoice,
    Term,
)


@dataclass(frozen=True)
class Answer:
    """What a plan decides, before anything is reckoned from it."""

    gifts: Mapping[int, tuple[str, ...]]
    sources: Mapping[tuple[int, str], int]
    batches: tuple[PlannedBatch, ...]
    packs: Mapping[str, tuple[int, ...]]


@dataclass(frozen=True)
class Reckoned:
    """What is wrong with an answer, what it leaves undone, and what it comes to."""

    faults: tuple[str, ...]
    empty: Mapping[tuple[int, Sort], int]
    missed: tuple[tuple[str, str], ...]
    terms: tuple[Term, ...]

    @property
    def points(self) -> Fraction:
        """Return the points, exact."""
        return sum((term.points for term in self.terms), Fraction(0))


def reckon(problem: PlanProblem, answer: Answer) -> Reckoned:
    """Return an answer reckoned exactly; it can be handed out where it has no faults."""
    faults = (
        *_faults_of_gifts(problem, answer),
        *_faults_of_sources(problem, answer),
        *_faults_of_batches(problem, answer),
        *_faults_of_hours(problem, answer),
        *_faults_of_packs(problem, answer),
    )
    empty = _empty(problem, answer)
    missed = _missed(problem, answer)
    terms = weigh_plan(problem, answer.gifts, answer.batches, answer.packs, empty, missed)
    return Reckoned(faults, empty, missed, terms)


def _offers(problem: PlanProblem) -> dict[str, Offer]:
    return {offer.key: offer for offer in problem.offers}


def _empty(problem: PlanProblem, answer: Answer) -> dict[tuple[int, Sort], int]:
    offers, empty = _offers(problem), {}
    for basket in problem.baskets:
        given = Counter(offers[key].sort for key in answer.gifts[basket.number])
        for sort, room in basket.room.items():
            if room > given[sort]:
                empty[basket.number, sort] = room - given[sort]
    return empty


def _missed(problem: PlanProblem, answer: Answer) -> tuple[tuple[str, str], ...]:
    offers = _offers(problem)
    had = {
        (basket.household, offers[key].recipe)
        for basket in problem.baskets
        for key in answer.gifts[basket.number]
    }
    known = {basket.household for basket in problem.baskets}
    made = {offer.recipe for offer in problem.offers}
    return tuple(
        sorted(
            (household, recipe)
            for household, recipe in problem.must_have
            if household in known and recipe in made and (household, recipe) not in had
        )
    )


def _faults_of_gifts(problem: PlanProblem, answer: Answer) -> Iterator[str]:
    offers = _offers(problem)
    for basket in problem.baskets:
        keys = answer.gifts[basket.number]
        sorts = Counter(offers[key].sort for key in keys)
        for sort, count in sorts.items():
            if count > basket.room.get(sort, 0):
                yield f"{basket.label}: more to {sort} than the basket holds"
        recipes = Counter(offers[key].recipe for key in keys)
        yield from (f"{basket.label}: {one} twice" for one, n in recipes.items() if n > 1)
        for key in keys:
            if (basket.number, key) in problem.refused:
                yield f"{basket.label}: {key} is not for them"
        worth = sum((offers[key].worth for key in keys), Fraction(0))
        weight = sum((offers[key].heft for key in keys), Fraction(0))
        posted = basket.postage(weight, len(keys))
        if basket.budget is not None and worth + posted > basket.budget:
            yield f"{basket.label}: dearer than its budget"
        if basket.bands and weight > basket.bands[-1][0]:
            yield f"{basket.label}: heavier than any postage is for"
        if basket.carries is not None and weight > basket.carries:
            yield f"{basket.label}: heavier than its parcel may be"


def _source(answer: Answer, offer: Offer, place: int) -> StartChoice | Lot:
    return answer.batches[place].choice if place >= 0 else offer.shelf[-1 - place]


def _faults_of_sources(problem: PlanProblem, answer: Answer) -> Iterator[str]:
    """Find gifts out of nowhere, too late or too old, and what gives more than it holds."""
    offers = _offers(problem)
    shelf: dict[tuple[str, int], int] = defaultdict(int)
    pots: dict[int, Fraction] = defaultdict(Fraction)
    for basket in problem.baskets:
        for key in answer.gifts[basket.number]:
            place = answer.sources.get((basket.number, key))
            if place is None:
                yield f"{basket.label}: no batch has {key} left"
                continue
            if not basket.takes(_source(answer, offers[key], place)):
                yield f"{basket.label}: {key} is not ready in time or does not keep"
            if place < 0:
                shelf[key, -1 - place] += 1
            elif answer.batches[place].recipe != offers[key].recipe:
                yield f"{basket.label}: {key} out of another batch"
            else:
                pots[place] += offers[key].share
    for (key, lot), count in shelf.items():
        if count > offers[key].shelf[lot].number:
            yield f"more of {key} than there is on the shelf"
    for place, taken in pots.items():
        if taken > answer.batches[place].amount:
            yield f"more of {answer.batches[place].recipe} than a batch of it gives"


def _faults_of_batches(problem: PlanProblem, answer: Answer) -> Iterator[str]:
    brews = {brew.recipe: brew for brew in problem.brews}
    times: dict[str, int] = defaultdict(int)
    for batch in answer.batches:
        brew = brews[batch.recipe]
        times[batch.recipe] += batch.count
        if batch.choice not in brew.choices:
            yield f"{brew.title}: begun on a day that is not open to it"
        if batch.choice.most is not None and batch.count > batch.choice.most:
            yield f"{brew.title}: more at once than its pan or oven takes"
        if batch.cut and 1 - batch.cut not in brew.sizes:
            yield f"{brew.title}: a part of the recipe that cannot be made"
    for recipe, count in times.items():
        if count > brews[recipe].most_batches:
            yield f"{brews[recipe].title}: more batches than we are willing to make"


def _faults_of_hours(problem: PlanProblem, answer: Answer) -> Iterator[str]:
    months: dict[Month, Fraction] = defaultdict(Fraction)
    taken: dict[str, Fraction] = defaultdict(Fraction)
    for batch in answer.batches:
        for month, hours in batch.choice.hours.items():
            months[month] += hours * batch.count
        for key, amount in batch.choice.takes.items():
            taken[key] += amount * batch.count
    if problem.hours is not None:
        for month, hours in months.items():
            if hours > problem.hours.get(month, Fraction(0)):
                yield f"more hours in month {month[1]} of {month[0]} than there are"
    for limit in problem.limits:
        if taken[limit.key] > limit.most:
            yield f"more than there is of {limit.words}"


def needs_of_answer(
    problem: PlanProblem, batches: Sequence[PlannedBatch], fresh: Mapping[str, int]
) -> dict[str, Fraction]:
    """Return how much of each item is used: by the batches, and by each present that is filled."""
    used: dict[str, Fraction] = defaultdict(Fraction)
    brews = {brew.recipe: brew for brew in problem.brews}
    for batch in batches:
        for needs in (brews[batch.recipe].needs, batch.choice.needs):
            for item, amount in needs.items():
                used[item] += amount * batch.amount
    for offer in problem.offers:
        for item, amount in offer.needs.items():
            used[item] += amount * fresh.get(offer.key, 0)
    return used


def count_fresh(
    gifts: Mapping[int, tuple[str, ...]], sources: Mapping[tuple[int, str], int]
) -> Counter[str]:
    """Return how many of each offer are filled from a batch of this plan."""
    return Counter(
        key for number, keys in gifts.items() for key in keys if sources.get((number, key), 0) >= 0
    )


def _faults_of_packs(problem: PlanProblem, answer: Answer) -> Iterator[str]:
    used = needs_of_answer(problem, answer.batches, count_fresh(answer.gifts, answer.sources))
    for purchase in problem.purchases:
        counts = answer.packs.get(purchase.item, tuple(0 for _ in purchase.packs))
        rows = list(zip(counts, purchase.packs, strict=True))
        bought = sum((count * pack.size for count, pack in rows), Fraction(0))
        if bought + purchase.on_hand < used[purchase.item]:
            yield f"not enough {purchase.item} is bought"
        if any(0 < count < pack.at_least for count, pack in rows):
            yield f"fewer packs of {purchase.item} than its price holds for"
