"""Which limits together forbid something, and one change that would mend it.

A smallest set of limits is sought by leaving out: whatever can be lifted while the wish still
cannot be met is no part of it, so that of what is left none can be spared. A change is only named
after the plan was tried with it. What the solver could not settle in its time is not known, and
blamed on nothing.
"""

from __future__ import annotations

import time
from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from fractions import Fraction

from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.words.day_words import say_month
from stillroom.core.words.plurals import counted
from stillroom.core.words.problems import Unreadable
from stillroom.giving.mip import Impossible
from stillroom.giving.model import SORT_WORDS, Sort
from stillroom.giving.modelling import build_model
from stillroom.giving.plan_model import (
    Basket,
    Brew,
    Limit,
    Money,
    Offer,
    PlanProblem,
    Reason,
    StartChoice,
    agree,
)

Change = Callable[[PlanProblem], PlanProblem]
_LEAST_S = 0.1
_STEPS = (1, 2, 4, 8, 16, 32)


@dataclass(frozen=True)
class Wish:
    """What is wanted beside all that a plan does: so few empty places, a recipe for a household."""

    basket: Basket
    sort: Sort | None
    empty: Mapping[tuple[int, Sort], int]
    recipe: str = ""


@dataclass(frozen=True)
class Bound:
    """One limit: what it says, the problem without it, and lesser changes with their words."""

    words: str
    lift: Change
    mends: tuple[tuple[str, Change], ...] = ()


@dataclass(frozen=True)
class Forbidden:
    """A smallest set of limits that forbids a wish, and one change that was tried and mends it.

    `possible` where it can be met after all, None where nobody could tell in the time. `others`
    says that it could be met if others went without.
    """

    bounds: tuple[Bound, ...] = ()
    mend: str = ""
    possible: bool | None = False
    others: bool = False


@dataclass
class Patience:
    """How long may be looked in all, seconds."""

    seconds: float
    began: float = field(default_factory=time.monotonic)

    @property
    def left(self) -> float:
        """Return what is left of it."""
        return self.seconds - (time.monotonic() - self.began)


def can_be(problem: PlanProblem, wish: Wish, others: bool, patience: Patience) -> bool | None:
    """Say whether a wish can be met within every limit; None when that was not settled in time.

    With `others` nobody else has more empty places than in the plan.
    """
    if patience.left <= 0:
        return None
    built = build_model(problem, only_limits=True)
    for place, number in built.empty.items():
        if place == (wish.basket.number, wish.sort):
            built.mip.high[number] = wish.empty.get(place, 0) - 1
        elif others or place[0] == wish.basket.number:
            built.mip.high[number] = wish.empty.get(place, 0)
    if wish.recipe:
        built.mip.high[built.missed[wish.basket.household, wish.recipe]] = 0
    try:
        built.mip.solve(max(patience.left, _LEAST_S))
    except Impossible:
        return False
    except Unreadable:
        return None
    return True


def why_forbidden(problem: PlanProblem, wish: Wish, patience: Patience) -> Forbidden:
    """Return why a wish cannot be met, by a smallest set of limits."""
    possible = can_be(problem, wish, True, patience)
    if possible is not False:
        return Forbidden(possible=possible)
    others = can_be(problem, wish, False, patience) is not False
    looked_at, limits = _to_look_at(problem, wish, others, patience)
    bounds = _smallest(looked_at, wish, limits, others, patience)
    if bounds is None:
        return Forbidden(possible=None)
    return Forbidden(tuple(bounds), _mend(problem, wish, bounds, patience), False, others)


def _to_look_at(
    problem: PlanProblem, wish: Wish, others: bool, patience: Patience
) -> tuple[PlanProblem, list[Bound]]:
    """Return in what, and among which limits, is sought: what is not for them stands, or is all.

    Else a basket would be said to lack shortbread, which it must not have, for want of a day.
    """
    refusals, rest = list(refusals_of(problem, wish)), list(limits_of(problem, wish))
    if wish.recipe:
        return problem, [*refusals, *rest]
    lifted = problem
    for bound in rest:
        lifted = bound.lift(lifted)
    if can_be(lifted, wish, others, patience) is False and refusals:
        return lifted, refusals
    return problem, rest


def _smallest(
    problem: PlanProblem, wish: Wish, bounds: list[Bound], others: bool, patience: Patience
) -> list[Bound] | None:
    """Return the bounds that are left when none more can be spared; None when time ran out."""
    kept = list(range(len(bounds)))
    size = max(1, len(kept) // 2)
    while True:
        for start in range(0, len(bounds), size):
            block = set(range(start, start + size))
            if not block & set(kept):
                continue
            trial = [place for place in kept if place not in block]
            lifted = problem
            for place in set(range(len(bounds))) - set(trial):
                lifted = bounds[place].lift(lifted)
            answer = can_be(lifted, wish, others, patience)
            if answer is None:
                return None
            if answer is False:
                kept = trial
        if size == 1:
            return [bounds[place] for place in kept]
        size //= 2


def _mend(problem: PlanProblem, wish: Wish, bounds: Sequence[Bound], patience: Patience) -> str:
    """Return the first change that was tried and lets the wish be met, nobody else the worse.

    Nothing where time ran out before all were tried.
    """
    ways = [mend for bound in bounds for mend in bound.mends]
    if wish.sort is not None:
        thing = SORT_WORDS[wish.sort]
        ways.append((f"Offer another {thing} that they can have.", _one_more_offer(wish)))
    settled = True
    for words, change in ways:
        answer = can_be(change(problem), wish, True, patience)
        if answer:
            return words
        settled &= answer is not None
    return "No one change mends it." if settled else ""


def _one_more_offer(wish: Wish) -> Change:
    sort = wish.sort

    def change(problem: PlanProblem) -> PlanProblem:
        assert sort is not None
        spare = Offer("one more", "one more", "one more", sort, "", Fraction(1), on_hand=1)
        number = wish.basket.number
        keys = {
            (basket.number, "one more") for basket in problem.baskets if basket.number != number
        }
        kept = (Reason("is for another", "are for another"),)
        refused = {**problem.refused, **dict.fromkeys(keys, kept)}
        return replace(problem, offers=(*problem.offers, spare), refused=refused)

    return change


def limits_of(problem: PlanProblem, wish: Wish) -> Iterator[Bound]:
    """Yield every limit beside refusals that may stand in the way of a wish, the likeliest last."""
    yield from map(_limit, problem.limits)
    yield from _months(problem)
    if wish.basket.budget is not None:
        yield _budget(wish.basket, problem.money)
    if wish.basket.carries is not None:
        yield _weight(wish.basket)
    recipes = {offer.recipe for offer in problem.offers}
    for brew in problem.brews:
        if brew.recipe in recipes:
            yield from _batches(problem, brew.recipe)


def refusals_of(problem: PlanProblem, wish: Wish) -> Iterator[Bound]:
    """Yield what is not for them, by reason: no change of that is ever offered."""
    by_reason: dict[Reason, list[Offer]] = defaultdict(list)
    for offer in problem.offers:
        reasons = problem.refused.get((wish.basket.number, offer.key))
        wanted = offer.recipe == wish.recipe if wish.recipe else offer.sort == wish.sort
        if reasons and wanted:
            by_reason[reasons[0]].append(offer)
    for reason, offers in by_reason.items():
        titles = list(dict.fromkeys(offer.title for offer in offers))
        pairs = {(wish.basket.number, offer.key) for offer in offers}
        yield Bound(reason.said_of(titles), _allow(pairs))


def _allow(pairs: set[tuple[int, str]]) -> Change:
    def lift(problem: PlanProblem) -> PlanProblem:
        refused = {pair: why for pair, why in problem.refused.items() if pair not in pairs}
        return replace(problem, refused=refused)

    return lift


def _limit(limit: Limit) -> Bound:
    def more(amount: Fraction | int | None) -> Change:
        def change(problem: PlanProblem) -> PlanProblem:
            kept = [one for one in problem.limits if one.key != limit.key]
            raised = [] if amount is None else [replace(limit, most=limit.most + amount)]
            return replace(problem, limits=(*kept, *raised))

        return change

    def said(n: int) -> str:
        return limit.mend.replace("{n}", str(n)).replace("{s}", "" if n == 1 else "s")

    mends = tuple((said(n), more(n)) for n in _STEPS)
    return Bound(limit.words, more(None), mends)


def _months(problem: PlanProblem) -> Iterator[Bound]:
    for (year, month), hours in sorted((problem.hours or {}).items()):
        taken = any((year, month) in one.hours for brew in problem.brews for one in brew.choices)
        if not taken:
            continue
        name = f"{say_month(month)} {year}"

        def more(amount: int, when: tuple[int, int] = (year, month)) -> Change:
            def change(problem: PlanProblem) -> PlanProblem:
                assert problem.hours is not None
                return replace(problem, hours={**problem.hours, when: problem.hours[when] + amount})

            return change

        yield Bound(
            f"{name} has {show_decimal(hours, 1)} hours",
            more(10**5),
            tuple(
                (f"Give {n} hour{'s' if n > 1 else ''} more in {name}.", more(n)) for n in _STEPS
            ),
        )


def _budget(basket: Basket, money: Money) -> Bound:
    def more(amount: Fraction | None) -> Change:
        def change(problem: PlanProblem) -> PlanProblem:
            return replace(
                problem,
                baskets=tuple(
                    replace(
                        one, budget=None if amount is None else (one.budget or Fraction(0)) + amount
                    )
                    if one.number == basket.number
                    else one
                    for one in problem.baskets
                ),
            )

        return change

    sums = [n * money.step for n in _STEPS]
    mends = tuple((f"Raise their budget by {money.say(one)}.", more(one)) for one in sums)
    said = money.say(basket.budget or Fraction(0))
    return Bound(f"their budget is {said}", more(None), mends)


def _weight(basket: Basket) -> Bound:
    def lift(problem: PlanProblem) -> PlanProblem:
        return replace(
            problem,
            baskets=tuple(
                replace(one, carries=None, bands=()) if one.number == basket.number else one
                for one in problem.baskets
            ),
        )

    grams = show_decimal(basket.carries or Fraction(0), 0)
    return Bound(f"no more than {grams} g may go into their parcel", lift)


def _batches(problem: PlanProblem, recipe: str) -> Iterator[Bound]:
    """Yield how often a recipe may be made, and at once, and that it is too late for it."""
    (brew,) = (one for one in problem.brews if one.recipe == recipe)
    most, title = brew.most_batches, brew.title

    def with_most(count: int) -> Change:
        def change(problem: PlanProblem) -> PlanProblem:
            return _brewed(problem, recipe, lambda one: replace(one, most_batches=count))

        return change

    if not brew.choices:
        begun = (StartChoice(date.min, True, {}),)
        words = brew.too_late or f"it is too late for {title}"
        yield Bound(
            words.rstrip("."),
            lambda problem: _brewed(problem, recipe, lambda one: replace(one, choices=begun)),
        )
    verb = agree(title, "is", "are")
    often = f"{title} {verb} made {counted(most, 'time')} at most"
    yield Bound(
        often if most else f"{title} {verb} not to be made",
        with_most(10 * len(problem.baskets) + 10),
        tuple((f"Make {title} {counted(n, 'time')} more.", with_most(most + n)) for n in (1, 2, 3)),
    )
    if any(choice.most is not None for choice in brew.choices):
        yield Bound(
            f"no more of {title} can be made at once on the days there are",
            lambda problem: _brewed(problem, recipe, _at_once),
        )


def _at_once(brew: Brew) -> Brew:
    return replace(brew, choices=tuple(replace(one, most=None) for one in brew.choices))


def _brewed(problem: PlanProblem, recipe: str, change: Callable[[Brew], Brew]) -> PlanProblem:
    brews = tuple(change(one) if one.recipe == recipe else one for one in problem.brews)
    return replace(problem, brews=brews)
