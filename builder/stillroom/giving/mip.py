"""A mixed-integer model and its solving by HiGHS (the open solver of `highspy`).

The only module that imports the solver. One thread and a fixed seed: the same model gives the
same answer on the same machine unless the time limit cut it short.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from stillroom.core.words.problems import Unreadable

INFINITE = math.inf
NOT_INSTALLED = Unreadable(
    "Planning needs the solver highspy, which is not installed.",
    'Install it with: python -m pip install "stillroom[giving]"',
)


@dataclass(frozen=True)
class Solved:
    """Values by variable, the objective, the proven bound, and whether time ran out."""

    values: tuple[float, ...]
    objective: float
    bound: float
    out_of_time: bool


class Mip:
    """Variables with costs to minimise, and rows of linear limits, built piece by piece."""

    def __init__(self) -> None:
        self._costs: list[float] = []
        self._low: list[float] = []
        self._high: list[float] = []
        self._whole: list[bool] = []
        self._rows: list[tuple[float, float, list[tuple[int, float]]]] = []

    def variable(
        self, cost: float = 0, low: float = 0, high: float = INFINITE, whole: bool = False
    ) -> int:
        """Add a variable and return its number."""
        self._costs.append(float(cost))
        self._low.append(float(low))
        self._high.append(float(high))
        self._whole.append(whole)
        return len(self._costs) - 1

    def yes_or_no(self, cost: float = 0, low: float = 0) -> int:
        """Add a variable that is 0 or 1."""
        return self.variable(cost, low, 1, whole=True)

    def row(
        self, terms: Iterable[tuple[int, float]], low: float = -INFINITE, high: float = INFINITE
    ) -> None:
        """Keep the sum of variables times numbers between two limits."""
        together: dict[int, float] = {}
        for variable, factor in terms:
            together[variable] = together.get(variable, 0.0) + float(factor)
        self._rows.append((float(low), float(high), sorted(together.items())))

    def solve(self, time_limit_s: float, gap: float) -> Solved:
        """Minimise; raises Unreadable when the solver is absent or finds nothing in the time."""
        highspy = _solver()
        # the plain solver under highspy's own class, which greets on the terminal when it is made
        solver = highspy.Highs.__bases__[0]()
        for option, value in _options(time_limit_s, gap).items():
            solver.setOptionValue(option, value)
        solver.passModel(self._as_lp(highspy))
        solver.run()
        info = solver.getInfo()
        status = solver.getModelStatus()
        if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
            raise Unreadable("No plan was found in the time.", 'Give it longer: "--seconds 60".')
        return Solved(
            values=tuple(solver.getSolution().col_value),
            objective=float(info.objective_function_value),
            bound=float(info.mip_dual_bound)
            if any(self._whole)
            else float(info.objective_function_value),
            out_of_time=status == highspy.HighsModelStatus.kTimeLimit,
        )

    def _as_lp(self, highspy: Any) -> Any:
        lp = highspy.HighsLp()
        lp.num_col_, lp.num_row_ = len(self._costs), len(self._rows)
        lp.col_cost_, lp.col_lower_, lp.col_upper_ = self._costs, self._low, self._high
        lp.row_lower_ = [row[0] for row in self._rows]
        lp.row_upper_ = [row[1] for row in self._rows]
        starts, index, value = [0], [], []
        for _, _, terms in self._rows:
            index += [variable for variable, _ in terms]
            value += [factor for _, factor in terms]
            starts.append(len(index))
        lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
        lp.a_matrix_.start_, lp.a_matrix_.index_, lp.a_matrix_.value_ = starts, index, value
        kinds = highspy.HighsVarType
        lp.integrality_ = [kinds.kInteger if w else kinds.kContinuous for w in self._whole]
        return lp


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


def _solver() -> Any:
    try:
        import highspy
    except ImportError:
        raise NOT_INSTALLED from None
    return highspy
