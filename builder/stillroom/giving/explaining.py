"""Why a plan cannot fill a place, in words that name who and why, and what would help.

A place is empty either because no offer is allowed there (each with its reason), or because
limits forbid it together: then a smallest set of them is named, with one change that was tried and
mends it (forbidding.py). A search that was ended by time is never blamed on limits.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.words.plurals import counted
from stillroom.giving.forbidding import Forbidden, Patience, Wish, why_forbidden
from stillroom.giving.model import SORT_WORDS, SORTS, Sort
from stillroom.giving.plan_model import Basket, Offer, Plan, PlanProblem, Reason

_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


@dataclass(frozen=True)
class Shortage:
    """One basket's empty places of one sort: what is wrong, and what would mend it.

    `open` where the search was ended before anybody could tell what is wrong.
    """

    basket: Basket
    sort: Sort
    count: int
    what: str
    mend: str
    limits: tuple[str, ...] = ()
    open: bool = False

    def __str__(self) -> str:
        return f"{self.what} {self.mend}".rstrip()


def explain_shortages(
    problem: PlanProblem, plan: Plan, time_limit_s: float = 20
) -> tuple[Shortage, ...]:
    """Return a shortage for every basket and sort with an empty place, in basket order."""
    by_number = {basket.number: basket for basket in problem.baskets}
    found: list[Shortage] = []
    patience = Patience(time_limit_s)
    for (number, sort), count in sorted(plan.empty.items()):
        basket = by_number[number]
        allowed = {offer.recipe for offer in _allowed(problem, basket, sort)}
        if len(allowed) < basket.room[sort]:
            lacking = min(count, basket.room[sort] - len(allowed))
            found.append(_not_allowed(problem, basket, sort, lacking, len(allowed)))
            count -= lacking
        if count > 0:
            found.append(_scarce(problem, plan, basket, sort, count, patience))
    return tuple(sorted(found, key=lambda short: (short.basket.number, short.sort)))


_MANY = 3
"""Places of which each is still spoken of, though all that can be said is that time was short."""


def say_shortages(
    shortages: Sequence[Shortage], problem: PlanProblem, proven: bool = False
) -> Iterator[str]:
    """Yield what is said of each; many that only want more time are said together.

    `proven` where the plan itself is settled, and only why was not found out in the time.
    """
    untold = [short for short in shortages if short.open]
    together = len(untold) > _MANY
    yield from (str(short) for short in shortages if not (together and short.open))
    if not together:
        return
    for sort in SORTS:
        of_sort = [short for short in untold if short.sort == sort]
        wanted = sum(basket.room.get(sort, 0) for basket in problem.baskets)
        if of_sort and (most := _most_there_can_be(problem, sort)) < wanted:
            untold = [short for short in untold if short.sort != sort]
            yield (
                f"{_places(of_sort)} for a {SORT_WORDS[sort]} are empty: {wanted} are wanted in "
                f"all, and no more than {most} can be had. Let something be made oftener "
                '("batches: 3"), or add to makes.'
            )
    if untold and proven:
        yield f"{_places(untold)} are empty: there was no time to find out why. {_LONGER}"
    elif untold:
        yield (
            f"{_places(untold)} are empty: the search was ended before it was settled who is "
            f"given what. {_LONGER}"
        )


def _places(shortages: Sequence[Shortage]) -> str:
    places = sum(short.count for short in shortages)
    baskets = len({short.basket.number for short in shortages})
    return f"{counted(places, 'place')} in {counted(baskets, 'basket')}"


def _most_there_can_be(problem: PlanProblem, sort: Sort) -> int:
    """Return how many of a sort there are if every recipe is made as often as it may be."""
    brews = {brew.recipe: brew for brew in problem.brews if brew.choices}
    shares: dict[str, Fraction] = {}
    for offer in problem.offers_of(sort):
        shares[offer.recipe] = min(offer.share, shares.get(offer.recipe, offer.share))
    made = (
        int(brews[recipe].most_batches / share)
        for recipe, share in shares.items()
        if recipe in brews and share
    )
    return sum(made) + sum(lot.number for o in problem.offers_of(sort) for lot in o.shelf)


def say_how_good(plan: Plan) -> str:
    """Return how near a plan is to the best there could be, as far as that is known."""
    if plan.proof == "proven best":
        return "The plan is proven best: no other has less trouble in it."
    ended = (
        "The search was ended by time" if plan.proof == "stopped by time" else "The plan is good"
    )
    if plan.gap > _FAR:
        return f"{ended}: how near this plan is to the best is not known. {_LONGER}"
    said = f"{show_decimal(max(plan.gap * 100, Fraction(1, 10)), 1)} %"
    if plan.proof == "searched through":
        return f"The plan is as good as can be told: another could better it by {said} at most."
    return f"{ended}, and a longer one could better the plan by {said} at most."


_FAR = Fraction(1, 5)
"""A larger gap says more of the search than of the plan. Maker's own."""


def explain_missed(problem: PlanProblem, plan: Plan, time_limit_s: float = 20) -> tuple[str, ...]:
    """Return a sentence for every "must have" that the plan does not meet."""
    titles = {offer.recipe: offer.title for offer in problem.offers}
    patience = Patience(time_limit_s)
    said = []
    for household, recipe in plan.missed:
        basket = next(one for one in problem.baskets if one.household == household)
        forbidden = why_forbidden(problem, Wish(basket, None, plan.empty, recipe), patience)
        why, mend = _say_forbidden(plan, forbidden)
        said.append(f"{household} must have {titles[recipe]}, but {why}. {mend}".rstrip())
    return tuple(said)


def _allowed(problem: PlanProblem, basket: Basket, sort: Sort) -> list[Offer]:
    return [
        offer
        for offer in problem.offers_of(sort)
        if (basket.number, offer.key) not in problem.refused
    ]


def spell(count: int) -> str:
    """Return a small number in words.

    >>> spell(3), spell(12)
    ('three', '12')
    """
    return _NUMBERS[count] if count < len(_NUMBERS) else str(count)


def _many(sort: Sort) -> str:
    words = SORT_WORDS[sort]
    return words.replace("thing", "things") if "thing" in words else f"{words}s"


def _not_allowed(
    problem: PlanProblem, basket: Basket, sort: Sort, count: int, allowed: int
) -> Shortage:
    offers = problem.offers_of(sort)
    refused = [
        (offer, problem.refused[basket.number, offer.key])
        for offer in offers
        if (basket.number, offer.key) in problem.refused
    ]
    if not offers:
        what = f"No {SORT_WORDS[sort]} for {basket.label}: the list offers none."
        return Shortage(basket, sort, count, what, f"Add one to makes, or take {sort} off.")
    if allowed:
        left = f"Only {spell(allowed)} of {spell(basket.room[sort])} {_many(sort)} left"
    else:
        left = f"No {SORT_WORDS[sort]} left"
    if not refused:  # what is wanted is more than the list knows
        what = f"{left} for {basket.label}: the list offers no more."
        return Shortage(basket, sort, count, what, f"Add some to makes, or take {sort} off.")
    what = f"{left} for {basket.label}: {_say_reasons(refused, len(refused) == len(offers))}."
    mend = f"Offer a {SORT_WORDS[sort]} that they can have, or give them another basket."
    if any(reasons[0].one.startswith("contains sugar") for _, reasons in refused):
        mend += (
            " Ask how much sugar they may have at a time: where what is told here is fine for "
            "them, take the word out of what they avoid."
        )
    return Shortage(basket, sort, count, what, mend)


def _say_reasons(refused: Sequence[tuple[Offer, tuple[Reason, ...]]], all_of_them: bool) -> str:
    by_reason: dict[Reason, list[str]] = defaultdict(list)
    for offer, reasons in refused:
        by_reason[reasons[0]].append(offer.title)
    if len(by_reason) == 1 and len(refused) > 1 and all_of_them:
        reason = next(iter(by_reason))
        both = "both" if len(refused) == 2 else f"all {spell(len(refused))}"
        return f"{both} {reason.many}"
    return "; ".join(reason.said_of(titles) for reason, titles in by_reason.items())


def _some(names: list[str]) -> str:
    """Name up to four things and count the rest."""
    if len(names) <= 5:
        return ", ".join(names)
    return f"{', '.join(names[:4])} and {len(names) - 4} more"


def _scarce(
    problem: PlanProblem, plan: Plan, basket: Basket, sort: Sort, count: int, patience: Patience
) -> Shortage:
    allowed = _allowed(problem, basket, sort)
    names = list(dict.fromkeys(offer.title for offer in allowed))
    wanted = f"{spell(count)} more {SORT_WORDS[sort] if count == 1 else _many(sort)}".capitalize()
    if plain := _none_to_be_had(problem, allowed):
        what = f"{wanted} wanted for {basket.label}: {', '.join(plain)}."
        mend = f"Offer another {SORT_WORDS[sort]} that they can have."
        return Shortage(basket, sort, count, what, mend, plain)
    forbidden = why_forbidden(problem, Wish(basket, sort, plan.empty), patience)
    why, mend = _say_forbidden(plan, forbidden)
    limits = tuple(one.words for one in forbidden.bounds)
    could = f"they could have {_some(names)}, but {why}."
    what = f"{wanted} wanted for {basket.label}: {could}"
    return Shortage(basket, sort, count, what, mend, limits, mend == _LONGER)


def _none_to_be_had(problem: PlanProblem, offers: Sequence[Offer]) -> tuple[str, ...]:
    """Return why there is none of any of these, where that is plain without a search; else ().

    It is plain of what is not on the shelf and either cannot be begun any more or is not to be
    made: no other limit has a part in that.
    """
    brews = {brew.recipe: brew for brew in problem.brews}
    said: dict[str, None] = {}
    for offer in offers:
        brew = brews.get(offer.recipe)
        if offer.shelf or brew is None or (brew.choices and brew.most_batches):
            return ()
        late = brew.too_late or f"it is too late for {offer.title}"
        said[late.rstrip(".") if not brew.choices else f"{offer.title} is not to be made"] = None
    return tuple(said)


_LONGER = 'Give it longer, with "--seconds".'


def _say_forbidden(plan: Plan, forbidden: Forbidden) -> tuple[str, str]:
    """Return why it is forbidden and what would mend it."""
    cut_short = plan.proof not in ("proven best", "searched through")
    if cut_short and (forbidden.possible is not False or forbidden.others):
        return "the search was ended before it was settled who is given what", _LONGER
    if forbidden.possible:
        return "that is more trouble than an empty place counts", "Fill it by hand if it matters."
    if forbidden.possible is None:
        return "there was no time to find out why they are not given it", _LONGER
    said = [bound.words for bound in forbidden.bounds]
    if forbidden.others:
        said.append("nobody else is to go without")
    if not said:
        return "a basket takes nothing twice", forbidden.mend
    return " and ".join([", ".join(said[:-1]), said[-1]] if len(said) > 1 else said), forbidden.mend
