"""A mixed-integer model in whole numbers, and its solving by HiGHS (the open solver of `highspy`).

The only module that imports the solver. One thread and a fixed seed: the same model gives the
same answer on the same machine unless time cut it short. Every row is multiplied until it holds
whole numbers only: fractions as small as the solver's own tolerance once let presolve lose the
best plan. The solver runs beside the program, which shows how far it is and can end it.
"""

from __future__ import annotations

import math
import threading
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Any, Protocol

from stillroom.core.words.problems import Unreadable

INFINITE = math.inf
NOT_INSTALLED = Unreadable(
    "A plan is worked out by highspy, which is not installed.",
    'Install it with: python -m pip install "stillroom[giving]"',
)
LARGEST = 10_000_000
"""No whole number of a row is larger: the solver keeps to a millionth of what it reckons with."""
_TICK_S = 0.2
Term = tuple[int, "Fraction | int"]


@dataclass(frozen=True)
class Progress:
    """How far a search is: seconds gone, the best points so far, what no plan can be under."""

    seconds: float
    best: float
    bound: float

    @property
    def gap(self) -> float | None:
        """What a longer search could better at most, as a part of the best; None without one."""
        if math.isinf(self.best) or math.isinf(self.bound):
            return None
        return max(0.0, (self.best - self.bound) / self.best) if self.best else 0.0


class Watch(Protocol):
    """Whoever looks on: told of the progress, may ask to end the search."""

    def __call__(self, progress: Progress) -> bool:
        """Return whether the search is to go on."""


@dataclass(frozen=True)
class Solved:
    """Values by variable, the objective, the proven bound, and what ended it.

    `exact` where every row was given whole; else some of its numbers had to be cut. `broken_off`
    where whoever looked on ended it.
    """

    values: tuple[float, ...]
    objective: float
    bound: float
    out_of_time: bool
    exact: bool
    broken_off: bool = False


@dataclass
class Mip:
    """Variables with costs to minimise, and rows of linear limits, built piece by piece."""

    costs: list[Fraction] = field(default_factory=list)
    low: list[float] = field(default_factory=list)
    high: list[float] = field(default_factory=list)
    whole: list[bool] = field(default_factory=list)
    rows: list[tuple[float, float, list[tuple[int, float]]]] = field(default_factory=list)
    exact: bool = True

    def variable(
        self, cost: Fraction | int = 0, low: float = 0, high: float = INFINITE, whole: bool = False
    ) -> int:
        """Add a variable and return its number."""
        self.costs.append(Fraction(cost))
        self.low.append(low)
        self.high.append(high)
        self.whole.append(whole)
        return len(self.costs) - 1

    def yes_or_no(self, cost: Fraction | int = 0) -> int:
        """Add a variable that is 0 or 1."""
        return self.variable(cost, 0, 1, whole=True)

    def row(
        self,
        terms: Iterable[Term],
        low: Fraction | int | None = None,
        high: Fraction | int | None = None,
    ) -> None:
        """Keep the sum of variables times numbers between two limits; None is no limit."""
        together: dict[int, Fraction] = {}
        for variable, factor in terms:
            together[variable] = together.get(variable, Fraction(0)) + factor
        kept = sorted((number, factor) for number, factor in together.items() if factor)
        limits = [Fraction(one) for one in (low, high) if one is not None]
        times, exact = _times([factor for _, factor in kept], limits)
        self.exact &= exact
        self.rows.append(
            (
                -INFINITE if low is None else _whole(Fraction(low) * times, exact, up=False),
                INFINITE if high is None else _whole(Fraction(high) * times, exact, up=True),
                [(number, float(round(factor * times))) for number, factor in kept],
            )
        )

    def with_fixed(self, values: Mapping[int, int]) -> Mip:
        """Return the same model with some variables held to a value."""
        low, high = list(self.low), list(self.high)
        for variable, value in values.items():
            low[variable] = high[variable] = value
        return replace(self, low=low, high=high)

    def without_cost(self, variables: Iterable[int]) -> Mip:
        """Return the same model with some variables free of cost."""
        costs = list(self.costs)
        for variable in variables:
            costs[variable] = Fraction(0)
        return replace(self, costs=costs)

    def solve(self, time_limit_s: float, gap: float = 0, watch: Watch | None = None) -> Solved:
        """Minimise; raises Unreadable when the solver is absent, NoTime when nothing was found.

        No plan is handed to it to begin with: told of one, HiGHS 1.16 called proven what was not to
        be had, 167.67 points of a list of twelve baskets whose best plan has 183.92.
        """
        highspy = _solver()
        # the plain solver under highspy's own class, which greets on the terminal when it is made
        solver = highspy.Highs.__bases__[0]()
        for option, value in _options(time_limit_s, gap).items():
            solver.setOptionValue(option, value)
        times, _ = _times([cost for cost in self.costs if cost], [])
        solver.passModel(self._as_lp(highspy, times))
        broken_off = run_beside(highspy, solver, watch, float(times))
        info = solver.getInfo()
        status = solver.getModelStatus()
        if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
            raise Impossible() if status in _impossible(highspy) else NoTime(broken_off)
        objective = float(info.objective_function_value) / float(times)
        bound = float(info.mip_dual_bound) / float(times) if any(self.whole) else objective
        ended = highspy.HighsModelStatus
        return Solved(
            values=tuple(solver.getSolution().col_value),
            objective=objective,
            bound=bound,
            out_of_time=status in (ended.kTimeLimit, ended.kInterrupt),
            exact=self.exact,
            broken_off=broken_off,
        )

    def _as_lp(self, highspy: Any, times: Fraction) -> Any:
        lp = highspy.HighsLp()
        lp.num_col_, lp.num_row_ = len(self.costs), len(self.rows)
        lp.col_cost_ = [float(cost * times) for cost in self.costs]
        lp.col_lower_, lp.col_upper_ = self.low, self.high
        lp.row_lower_ = [row[0] for row in self.rows]
        lp.row_upper_ = [row[1] for row in self.rows]
        starts, index, value = [0], [], []
        for _, _, terms in self.rows:
            index += [variable for variable, _ in terms]
            value += [factor for _, factor in terms]
            starts.append(len(index))
        lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
        lp.a_matrix_.start_, lp.a_matrix_.index_, lp.a_matrix_.value_ = starts, index, value
        kinds = highspy.HighsVarType
        lp.integrality_ = [kinds.kInteger if w else kinds.kContinuous for w in self.whole]
        return lp


class NoTime(Unreadable):
    """Nothing was found in the time there was; `broken_off` where somebody ended the search."""

    def __init__(self, broken_off: bool = False) -> None:
        self.broken_off = broken_off
        super().__init__("No plan was found in the time.", 'Give it longer, with "--seconds".')


class Impossible(Unreadable):
    """No values of the variables keep to every row: proven, not given up."""

    def __init__(self) -> None:
        super().__init__("No plan keeps to every limit.", "Loosen one of them.")


def _times(factors: Sequence[Fraction], limits: Sequence[Fraction]) -> tuple[Fraction, bool]:
    """Return what makes all of them whole, and whether it does: numbers too long are cut."""
    times = Fraction(math.lcm(*(one.denominator for one in (*factors, *limits)), 1))
    common = math.gcd(*(int(one * times) for one in (*factors, *limits)))
    times /= common or 1
    largest = max((abs(factor * times) for factor in factors), default=Fraction(0))
    if largest <= LARGEST:
        return times, True
    return times * LARGEST / largest, False


def _whole(limit: Fraction, exact: bool, up: bool) -> float:
    """Return a limit as a float; where numbers were cut, a little room for what was cut off."""
    return float(limit) if exact else float(math.ceil(limit) if up else math.floor(limit))


def run_beside(highspy: Any, solver: Any, watch: Watch | None, times: float = 1) -> bool:
    """Run the solver while the program looks on; a Ctrl-C ends it with the best so far.

    Returns whether it was ended so.
    """
    kinds = highspy.cb.HighsCallbackType
    ended = threading.Event()
    so_far = [0.0, INFINITE, -INFINITE]

    def hear(kind: Any, _message: str, out: Any, into: Any, _own: Any) -> None:
        so_far[:] = [out.running_time, out.mip_primal_bound / times, out.mip_dual_bound / times]
        if kind != kinds.kCallbackMipLogging and ended.is_set():
            into.user_interrupt = True

    solver.setCallback(hear, None)
    interrupts = (kinds.kCallbackMipInterrupt, kinds.kCallbackSimplexInterrupt)
    for kind in (*interrupts, kinds.kCallbackMipLogging):
        solver.startCallback(kind)
    # a thread that is waited for is taken to be done when a Ctrl-C falls into the waiting
    done = threading.Event()

    def run() -> None:
        try:
            solver.run()
        finally:
            done.set()

    threading.Thread(target=run, daemon=True).start()
    while not done.is_set():
        try:
            if (
                not done.wait(_TICK_S)
                and watch
                and not ended.is_set()
                and not watch(Progress(*so_far))
            ):
                ended.set()
        except KeyboardInterrupt:
            if ended.is_set():  # whoever asks twice does not want to wait for the solver
                raise
            ended.set()
    return ended.is_set()


def _options(time_limit_s: float, gap: float) -> dict[str, Any]:
    return {
        "output_flag": False,
        "threads": 1,
        "parallel": "off",
        "random_seed": 0,
        "time_limit": float(time_limit_s),
        "mip_rel_gap": float(gap),
        "mip_abs_gap": 1e-6,
    }


def _impossible(highspy: Any) -> tuple[Any, ...]:
    ended = highspy.HighsModelStatus
    return (ended.kInfeasible, ended.kUnboundedOrInfeasible)


def _solver() -> Any:
    try:
        import highspy
    except ImportError:
        raise NOT_INSTALLED from None
    return highspy
