"""Why a plan cannot fill a place, in words that name who and why, and what would help.

A place is empty either because no offer is allowed there (each with its reason), or because
there is not enough to go round: then the limits are lifted one by one and planned again, which
shows the one that binds.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from stillroom.giving.model import SORT_WORDS, Sort
from stillroom.giving.plan_model import Basket, Offer, Plan, PlanProblem, Reason
from stillroom.giving.planning import plan_gifts

_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


@dataclass(frozen=True)
class Shortage:
    """One basket's empty places of one sort: what is wrong, and what would mend it."""

    basket: Basket
    sort: Sort
    count: int
    what: str
    mend: str

    def __str__(self) -> str:
        return f"{self.what} {self.mend}".rstrip()


def explain_shortages(
    problem: PlanProblem, plan: Plan, time_limit_s: float = 20
) -> tuple[Shortage, ...]:
    """Return a shortage for every basket and sort with an empty place, in basket order."""
    by_number = {basket.number: basket for basket in problem.baskets}
    found: list[Shortage] = []
    scarce: list[tuple[Basket, Sort, int]] = []
    for (number, sort), count in sorted(plan.empty.items()):
        basket = by_number[number]
        allowed = {offer.recipe for offer in _allowed(problem, basket, sort)}
        if len(allowed) < basket.room[sort]:
            lacking = min(count, basket.room[sort] - len(allowed))
            found.append(_not_allowed(problem, basket, sort, lacking, len(allowed)))
            count -= lacking
        if count > 0:
            scarce.append((basket, sort, count))
    if scarce:
        found += _explain_scarce(problem, plan, scarce, time_limit_s)
    return tuple(sorted(found, key=lambda short: (short.basket.number, short.sort)))


def explain_missed(problem: PlanProblem, plan: Plan) -> tuple[str, ...]:
    """Return a sentence for every "must have" that the plan does not meet."""
    titles = {offer.recipe: offer.title for offer in problem.offers}
    return tuple(
        f"{household} must have {titles[recipe]}, and there is no safe place or not enough of it."
        for household, recipe in plan.missed
    )


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
    return Shortage(basket, sort, count, what, mend)


def _say_reasons(refused: Sequence[tuple[Offer, tuple[Reason, ...]]], all_of_them: bool) -> str:
    by_reason: dict[Reason, list[str]] = defaultdict(list)
    for offer, reasons in refused:
        by_reason[reasons[0]].append(offer.title)
    if len(by_reason) == 1 and len(refused) > 1 and all_of_them:
        reason = next(iter(by_reason))
        both = "both" if len(refused) == 2 else f"all {spell(len(refused))}"
        return f"{both} {reason.many}"
    parts = []
    for reason, titles in by_reason.items():
        names = titles[0] if len(titles) == 1 else f"{', '.join(titles[:-1])} and {titles[-1]}"
        parts.append(f"{names} {reason.one if len(titles) == 1 else reason.many}")
    return "; ".join(parts)


def _more_batches(problem: PlanProblem) -> PlanProblem:
    plenty = len(problem.baskets) * 10
    return replace(
        problem, brews=tuple(replace(brew, most_batches=plenty) for brew in problem.brews)
    )


def _more_hours(problem: PlanProblem) -> PlanProblem:
    return replace(problem, hours=None)


def _more_money(problem: PlanProblem) -> PlanProblem:
    return replace(
        problem, baskets=tuple(replace(basket, budget=None) for basket in problem.baskets)
    )


_LIFTED: tuple[tuple[str, str, Callable[[PlanProblem], PlanProblem]], ...] = (
    ("the batches we are willing to make do not go round", "Allow more batches", _more_batches),
    ("the hours of the months do not reach", "Give more hours", _more_hours),
    ("the budget does not reach", "Raise the budget", _more_money),
)


def _explain_scarce(
    problem: PlanProblem,
    plan: Plan,
    scarce: Sequence[tuple[Basket, Sort, int]],
    time_limit_s: float,
) -> list[Shortage]:
    short = sum(plan.empty.values())
    causes = []
    for why, mend, lift in _LIFTED:
        lifted = plan_gifts(lift(problem), time_limit_s, gap=0.01)
        if sum(lifted.empty.values()) < short:
            filled = short - sum(lifted.empty.values())
            causes.append((why, f"{mend}: that alone fills {filled} of {short} empty places."))
    if causes:
        why = " and ".join(cause for cause, _ in causes)
        mend = " Or: ".join(words for _, words in causes)
    else:
        why = "several limits bind together (batches, hours, budget, time to ripen)"
        mend = "Loosen more than one of them, or begin earlier."
    return [
        Shortage(basket, sort, count, _scarce_words(problem, basket, sort, count, why), mend)
        for basket, sort, count in scarce
    ]


def _some(names: list[str]) -> str:
    """Name up to four things and count the rest."""
    if len(names) <= 5:
        return ", ".join(names)
    return f"{', '.join(names[:4])} and {len(names) - 4} more"


def _scarce_words(problem: PlanProblem, basket: Basket, sort: Sort, count: int, why: str) -> str:
    names = [offer.title for offer in _allowed(problem, basket, sort)]
    late = [
        brew.too_late
        for brew in problem.brews
        if brew.too_late
        and any(offer.recipe == brew.recipe for offer in _allowed(problem, basket, sort))
    ]
    too_late = f" {' '.join(late)}" if late else ""
    wanted = f"{spell(count)} more {SORT_WORDS[sort] if count == 1 else _many(sort)}"
    return (
        f"{wanted.capitalize()} wanted for {basket.label}: they could have "
        f"{_some(names)}, but {why}.{too_late}"
    )
