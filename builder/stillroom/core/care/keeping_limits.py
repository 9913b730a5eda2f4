"""How long the book itself would say that a thing keeps, and what a longer claim is held against.

The figures are staples/keeping_limits.yml. Leaves out how rules are judged (safety_rules.py hands
its judgement in) and what stands on the card (keeping.py).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from stillroom.core.safety_facts import Facts
from stillroom.core.spans import Span, parse_span
from stillroom.core.units import read_data

Part = Literal["plain", "usual"]
Judge = Callable[[Mapping[str, Any], Facts], object | None]
OWN_JUDGEMENT = "the book's own cautious figure, no published source"


@dataclass(frozen=True)
class Limit:
    """The longest a thing keeps, where, and who says so: `source` names the book's own as such."""

    name: str
    longest: Span
    where: str
    source: str


def limit_of(facts: Facts, part: Part, judge: Judge) -> Limit | None:
    """Return the first row of a part that fits the facts; None when the book has no figure."""
    for when, limit in _rows(part):
        if judge(when, facts) is not None:
            return limit
    return None


def is_beyond(claim: Span | None, limit: Limit | None) -> bool:
    """Whether a recipe claims longer than a limit; a range counts at its short end."""
    if claim is None or limit is None:
        return False
    return claim.minutes(longest=False) > limit.longest.minutes()


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
    if read == "own":
        return OWN_JUDGEMENT
    return f"{source} (named from memory, its text not looked up)" if read == "memory" else source
