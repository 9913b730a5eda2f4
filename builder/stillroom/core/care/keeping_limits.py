"""How long the book itself would say that a thing keeps, and what a longer claim is held against.

The figures are staples/keeping_limits.yml. Leaves out how rules are judged (safety_rules.py hands
its judgement in) and what stands on the card (keeping.py).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from stillroom.core.care.sources import say_source
from stillroom.core.safety_facts import Facts
from stillroom.core.spans import Span, parse_span
from stillroom.core.units import read_data

Part = Literal["plain", "usual"]
Judge = Callable[[Mapping[str, Any], Facts], object | None]
# "1 month" and "4 weeks", "15 days" and "2 weeks" are the same to a cook
_SLACK_PERCENT = 10
OWN_JUDGEMENT = "the book's own cautious figure, no published source"


@dataclass(frozen=True)
class Limit:
    """The longest a thing keeps, where, and who says so: `source` names the book's own as such."""

    name: str
    longest: Span
    where: str
    source: str


def limits_of_guidance(facts: Facts, judge: Judge) -> tuple[Limit, ...]:
    """Return every limit of published guidance that fits the facts."""
    return tuple(limit for when, limit in _rows("plain") if judge(when, facts) is not None)


def usual_limit(facts: Facts, judge: Judge) -> Limit | None:
    """Return what the book itself would say; None when it has no figure."""
    return next((limit for when, limit in _rows("usual") if judge(when, facts) is not None), None)


def is_beyond(claim: Span | None, limit: Limit | None) -> bool:
    """Whether a recipe claims longer than a limit, by more than months and weeks differ anyhow.

    A range counts at its long end: somebody will keep it so long.
    """
    if claim is None or limit is None:
        return False
    return claim.minutes() * 100 > limit.longest.minutes() * (100 + _SLACK_PERCENT)


def strictest_of(facts: Facts, claim: Span | None, judge: Judge) -> Limit | None:
    """Return the shortest limit of guidance that a claim runs past; None when it runs past none."""
    past = [limit for limit in limits_of_guidance(facts, judge) if is_beyond(claim, limit)]
    return min(past, key=lambda limit: limit.longest.minutes(), default=None)


@cache
def _rows(part: Part) -> tuple[tuple[Mapping[str, Any], Limit], ...]:
    return tuple(
        (
            row["when"],
            Limit(
                row["id"],
                parse_span(row["longest"]),
                row.get("where", ""),
                _said(row["source"], row["read"]),
            ),
        )
        for row in read_data("keeping_limits.yml")[part]
    )


def _said(source: str, read: str) -> str:
    return OWN_JUDGEMENT if read == "own" else say_source(source, read)
