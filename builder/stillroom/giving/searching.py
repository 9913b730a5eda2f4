"""The search for the best plan: which models are solved one after another, and for how long.

A few baskets are planned in one go. Of many, what is made is planned first as if it did not matter
how like the baskets are: no plan can be under what that comes to, and it is found many times
sooner. Then the baskets are made alike, first with every batch and then with every recipe left as
it is, and only then is all of it asked at once. Every answer is reckoned exactly (evaluating.py);
the best of them stands.
"""

from __future__ import annotations

import time
from dataclasses import dataclass, replace
from fractions import Fraction

from stillroom.core.words.problems import Unreadable
from stillroom.giving.answer_read import read_answer
from stillroom.giving.evaluating import Answer, Reckoned, reckon
from stillroom.giving.first_plan import make_first_plan
from stillroom.giving.mip import Mip, NoTime, Progress, Solved, Watch
from stillroom.giving.model_built import Built
from stillroom.giving.modelling import build_model
from stillroom.giving.plan_model import PlanProblem, Proof

_CUT_SHORT: Proof = "stopped by time"
_LEAST_S = 0.1
_NEAR = Fraction(1, 10**5)  # of a point: what the solver's floats may be off
_IN_ONE_GO = 16
"""So many baskets are planned at once: their best plan is proven in seconds."""
_NEAR_ENOUGH = 0.004
"""How near what is made is brought to the best: likeness costs several times as much."""
_QUARTER, _HALF = 0.25, 0.5  # of the time left


@dataclass(frozen=True)
class Whole:
    """An answer with what it comes to."""

    answer: Answer
    reckoned: Reckoned


class Search:
    """The best plan so far, and what none can be under; more than `few` baskets go by steps."""

    def __init__(
        self,
        problem: PlanProblem,
        time_limit_s: float,
        gap: float,
        watch: Watch | None,
        few: int = _IN_ONE_GO,
    ) -> None:
        self.problem, self.time_limit_s, self.gap, self.watch = problem, time_limit_s, gap, watch
        self.few, self.began = few, time.monotonic()
        self.best = _reckoned(problem, make_first_plan(problem))
        self.bound = Fraction(0)
        self._bound_is_exact = False
        self._broken_off = False
        self._came_to_its_end = False

    def run(self) -> None:
        """Look for better plans until the time is over, none can be, or Ctrl-C is pressed."""
        try:
            self._run()
        except KeyboardInterrupt:  # between two solvings: the best so far stands
            self._broken_off = True

    def _run(self) -> None:
        if self._left_s() <= 0:
            return
        built = build_model(self.problem)
        if len(self.problem.baskets) > self.few and built.even:
            making = self._plan_the_making(built)
            # first every batch is left as it is, then only what is made at all
            for kept, part in ((built.making(), _QUARTER), (built.made.values(), _HALF)):
                if making and not self._is_done():
                    fixed = {number: round(making.values[number]) for number in kept}
                    self._make_alike(built, built.mip.with_fixed(fixed), part)
        if not self._is_done():
            self._plan_all(built)

    def seconds(self) -> float:
        """Return how long it has taken."""
        return time.monotonic() - self.began

    def proof(self) -> Proof:
        """Say how good the best plan provably is."""
        if self._is_proven():
            return "proven best"
        if self._is_near_enough():
            return "within the gap asked for"
        return "searched through" if self._came_to_its_end else _CUT_SHORT

    def _left_s(self) -> float:
        return self.time_limit_s - self.seconds()

    def _is_proven(self) -> bool:
        return self._bound_is_exact and self.bound == self.best.reckoned.points

    def _is_near_enough(self) -> bool:
        points = self.best.reckoned.points
        return bool(self.gap) and points - self.bound <= points * Fraction(self.gap)

    def _is_done(self) -> bool:
        ended = self._broken_off or self._left_s() <= _LEAST_S
        return ended or self._is_proven() or self._is_near_enough()

    def _plan_the_making(self, built: Built) -> Solved | None:
        """Plan as if it did not matter how like baskets are; what that comes to is a bound."""
        plain = replace(self.problem, weights=replace(self.problem.weights, uneven=Fraction(0)))
        mip = built.mip.without_cost(built.even)
        near = max(self.gap / 4, _NEAR_ENOUGH)
        solved = self._solve(mip, near, _HALF, shows_best=False, shows_bound=True)
        if solved is None:
            return None
        answer = read_answer(self.problem, built, solved.values)
        self._take(answer, *_bound_of(solved, _reckoned(plain, answer).reckoned.points))
        return solved

    def _make_alike(self, built: Built, mip: Mip, part: float) -> None:
        """Give anew what is made already."""
        solved = self._solve(mip, self.gap / 2, part, shows_best=True, shows_bound=False)
        if solved is not None:
            self._take(read_answer(self.problem, built, solved.values), Fraction(0), False)

    def _plan_all(self, built: Built) -> None:
        solved = self._solve(built.mip, self.gap, 1, shows_best=True, shows_bound=True)
        if solved is None:
            return
        self._came_to_its_end = not (solved.out_of_time or solved.broken_off)
        answer = read_answer(self.problem, built, solved.values)
        self._take(answer, *_bound_of(solved, reckon(self.problem, answer).points))

    def _take(self, answer: Answer, bound: Fraction, exact: bool) -> None:
        """Keep the better of two plans, and the higher of two bounds."""
        own = _reckoned(self.problem, answer)
        if own.reckoned.points < self.best.reckoned.points or (
            exact and own.reckoned.points == self.best.reckoned.points
        ):
            self.best = own
        if bound > self.bound or (exact and bound == self.bound):
            self.bound, self._bound_is_exact = bound, exact
        if self.bound > self.best.reckoned.points:  # then what was claimed proves nothing
            self.bound, self._bound_is_exact = Fraction(0), False

    def _solve(
        self, mip: Mip, gap: float, part: float, shows_best: bool, shows_bound: bool
    ) -> Solved | None:
        """Solve for a part of the time left; None where nothing was found."""
        before = self.seconds()
        best, bound = float(self.best.reckoned.points), float(self.bound)

        def look_on(progress: Progress) -> bool:
            if self.watch is None:
                return True
            least = max(bound, progress.bound) if shows_bound else bound
            points = min(best, progress.best) if shows_best else best
            return self.watch(Progress(before + progress.seconds, points, min(least, points)))

        try:
            solved = mip.solve(max(self._left_s() * part, _LEAST_S), gap, look_on)
        except NoTime as none:  # the plan so far stands then
            self._broken_off |= none.broken_off
            return None
        self._broken_off |= solved.broken_off
        return solved


def _reckoned(problem: PlanProblem, answer: Answer) -> Whole:
    reckoned = reckon(problem, answer)
    if reckoned.faults:
        raise Unreadable(
            f"The plan was reckoned over again, and does not hold: {'; '.join(reckoned.faults)}.",
            "Please show this list to those who make Stillroom.",
        )
    return Whole(answer, reckoned)


def _bound_of(solved: Solved, points: Fraction) -> tuple[Fraction, bool]:
    """Return what no plan can be under, and whether the answer, at so many points, is proven best.

    A bound above what the answer comes to, or a claim that is not what it comes to, proves nothing:
    then none is taken.
    """
    near = _NEAR + points / 10**8
    agreed = abs(Fraction(solved.objective) - points) <= near
    # what the answer buys is reckoned anew: it may be better than the solver's own, never worse
    sound = Fraction(solved.objective) >= points - near and Fraction(solved.bound) <= points + near
    if agreed and sound and solved.exact and points - Fraction(solved.bound) <= near:
        return points, True
    bound = Fraction(solved.bound).limit_denominator(10**6) if sound else Fraction(0)
    return max(Fraction(0), min(bound, points)), False
