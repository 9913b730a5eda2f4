"""How long things keep by what they are, and what a longer claim is held against.

The figures are staples/keeping.yml. Leaves out how rules are judged (safety_rules.py hands its
judgement in) and what stands on the card (keeping.py).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal, get_args

from stillroom.core.care.safety_facts import SafetyFacts
from stillroom.core.care.sources import say_source
from stillroom.core.when.spans import Span, parse_span
from stillroom.core.words.data_files import read_data

Judge = Callable[[Mapping[str, Any], SafetyFacts], object | None]
Longer = Literal["refused", "told", "book", "card"]
Card = Literal["", "always", "unless a reason", "no figure"]
# "1 month" and "4 weeks", "15 days" and "2 weeks" are the same to a cook
_SLACK_PERCENT = 10
_A_DAY = 24 * 60
OWN_JUDGEMENT = "the book's own cautious figure, no published source"


@dataclass(frozen=True)
class Limit:
    """The longest a thing keeps, where, and who says so: `source` names the book's own as such."""

    name: str
    longest: Span
    where: str
    source: str


@dataclass(frozen=True)
class Keeps:
    """One row of the table: how long, what a longer claim comes to, what the card makes of it.

    What it says `in_all` counts from the making, and not from the day it is filled.
    """

    name: str
    when: Mapping[str, Any]
    unopened: Span | None
    opened: Span | None
    where: str
    mark: str
    longer: Longer
    card: Card
    source: str
    in_all: bool

    @property
    def limit(self) -> Limit | None:
        """The row as a limit on a claim; None where it speaks only of it once opened."""
        if self.unopened is None:
            return None
        return Limit(self.name, self.unopened, self.where, self.source)


@cache
def all_keeping() -> tuple[Keeps, ...]:
    """Return every row of the table, in its order."""
    return tuple(_read(row) for row in read_data("keeping.yml"))


def _read(row: Mapping[str, Any]) -> Keeps:
    longer, card = row["longer"], row.get("card", "")
    if longer not in get_args(Longer) or card not in get_args(Card):
        raise ValueError(f"keeping.yml: {row['id']}: longer or card is none of the words allowed.")
    return Keeps(
        name=row["id"],
        when=row["when"],
        unopened=parse_span(row["unopened"]) if "unopened" in row else None,
        opened=parse_span(row["opened"]) if "opened" in row else None,
        where=row.get("where", ""),
        mark=row.get("mark", ""),
        longer=longer,
        card=card,
        in_all=row.get("in_all", False),
        source=OWN_JUDGEMENT if row["read"] == "own" else say_source(row["source"], row["read"]),
    )


def rows_for_card(facts: SafetyFacts, judge: Judge) -> tuple[Keeps, ...]:
    """Return the rows whose figure the card takes where it is the shorter."""
    return tuple(row for row in all_keeping() if row.card and judge(row.when, facts) is not None)


def limits_of_guidance(facts: SafetyFacts, judge: Judge) -> tuple[Limit, ...]:
    """Return every limit that fits the facts and beyond which a claim is refused."""
    return tuple(_limits(("refused",), facts, judge))


def usual_limit(facts: SafetyFacts, judge: Judge) -> Limit | None:
    """Return what the book itself would say; None when it has no figure."""
    return next(_limits(("told", "book"), facts, judge), None)


def told_limit(facts: SafetyFacts, judge: Judge) -> Limit | None:
    """Return the usual figure past which a claim is told; None where a longer one is as usual."""
    limit = usual_limit(facts, judge)
    return limit if limit and limit in _limits(("told",), facts, judge) else None


def told_on_card(
    facts: SafetyFacts, judge: Judge, claim: Span | None, reasoned: bool
) -> Limit | None:
    """Return the figure past which a claim is told: the card's, where that is the shorter one.

    A reason that the recipe gives sets aside what only a reason outweighs; None where no claim runs
    past the usual figure.
    """
    limit = told_limit(facts, judge)
    if limit is None or not is_beyond(claim, limit):
        return None
    binding = ("always",) if reasoned else ("always", "unless a reason")
    taken = (row.limit for row in rows_for_card(facts, judge) if row.card in binding)
    return min((limit, *filter(None, taken)), key=lambda one: one.longest.minutes())


def _limits(longer: tuple[Longer, ...], facts: SafetyFacts, judge: Judge) -> Iterator[Limit]:
    for row in all_keeping():
        limited = row.longer in longer and row.unopened is not None
        if limited and judge(row.when, facts) is not None and row.limit:
            yield row.limit


def is_beyond(claim: Span | None, limit: Limit | None) -> bool:
    """Whether a recipe claims longer than a limit, by more than months and weeks differ anyhow.

    A range counts at its long end: somebody will keep it so long.
    """
    if claim is None or limit is None:
        return False
    return claim.minutes() * 100 > limit.longest.minutes() * (100 + _SLACK_PERCENT)


def _ends_within_a_day(claim: Span | None, limit: Limit) -> bool:
    """Whether a range begins within a limit of days and ends a day behind it, as "4-5 days" do.

    The card takes the limit, and nobody need be refused for the day.
    """
    if claim is None or claim.minutes(longest=False) > limit.longest.minutes():
        return False
    return claim.minutes() - limit.longest.minutes() <= _A_DAY <= limit.longest.minutes()


def strictest_of(facts: SafetyFacts, claim: Span | None, judge: Judge) -> Limit | None:
    """Return the shortest limit of guidance that a claim runs past; None when it runs past none."""
    past = [
        limit
        for limit in limits_of_guidance(facts, judge)
        if is_beyond(claim, limit) and not _ends_within_a_day(claim, limit)
    ]
    return min(past, key=lambda limit: limit.longest.minutes(), default=None)
