"""Who gets what, from which batches and packs: the plan with the fewest points.

What the search (searching.py) finds is checked by evaluating.py, which knows of no solver: an
answer with a fault is never handed out, and "proven best" is said where the two agree and no better
plan can be.
"""

from __future__ import annotations

from fractions import Fraction

from stillroom.giving.mip import Watch
from stillroom.giving.plan_model import Plan, PlanProblem
from stillroom.giving.searching import Search


def plan_gifts(
    problem: PlanProblem, time_limit_s: float = 20, gap: float = 0, watch: Watch | None = None
) -> Plan:
    """Return the best plan found and how good it provably is.

    A first plan is made by hand and stands where no better one is found. Stops at `time_limit_s`
    seconds, or earlier once the plan is within `gap` (0.01 is 1 %) of the best there can be, or
    when `watch` says so. Raises Unreadable when the solver is not
    installed, or when what it says does not hold.
    """
    search = Search(problem, time_limit_s, gap, watch)
    search.run()
    answer, reckoned, bound = search.best.answer, search.best.reckoned, search.bound
    points = reckoned.points
    return Plan(
        gifts=answer.gifts,
        batches=answer.batches,
        packs=answer.packs,
        empty=reckoned.empty,
        missed=reckoned.missed,
        terms=reckoned.terms,
        points=points,
        bound=bound,
        gap=(points - bound) / points if points else Fraction(0),
        proof=search.proof(),
        seconds=search.seconds(),
        sources=answer.sources,
    )
