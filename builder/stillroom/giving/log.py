"""The season's log as it is held: what happened on which day, one line each.

What may be noted is data (log_kinds.yml). Leaves out the file (log_file.py) and what follows from
the lines together (season.py).
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from importlib.resources import files
from typing import Literal

import yaml
from pydantic import BaseModel, ConfigDict, Field

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.summed import refuse_too_much, take_amount
from stillroom.core.amounts.units import System
from stillroom.core.words.nearest import nearest
from stillroom.core.words.problems import Unreadable, say_written
from stillroom.giving.days_said import Day
from stillroom.giving.model import Count, Money, Texts

Names = Literal["recipe", "household", "thing", "words", "list"]


@dataclass(frozen=True)
class Kind:
    """A kind of line: its word, what it names, what else must and may be said, an example.

    `means` says what the word is for, where that is not plain.
    """

    kind: str
    names: Names
    said: str
    example: str
    also: tuple[str, ...] = ()
    must: tuple[str, ...] = ()
    may: tuple[str, ...] = ()
    means: str = ""


@cache
def log_kinds() -> dict[str, Kind]:
    """Return every kind of line by its word."""
    text = (files("stillroom.giving") / "log_kinds.yml").read_text(encoding="utf-8")
    kinds = (
        Kind(
            kind=row["kind"],
            names=row["names"],
            said=row["said"],
            example=row["example"],
            also=tuple(row.get("also", ())),
            must=tuple(row.get("must", ())),
            may=tuple(row.get("may", ())),
            means=row.get("means", ""),
        )
        for row in yaml.safe_load(text)
    )
    return {kind.kind: kind for kind in kinds}


def read_kind(word: str) -> Kind:
    """Return the kind that a word means: "shook" is tended; raises Unreadable with the nearest.

    >>> read_kind("Potted").kind, read_kind("gave-back").kind
    ('bottled', 'gave back')
    """
    kinds = log_kinds()
    named = {also: kind for kind in kinds.values() for also in (kind.kind, *kind.also)}
    plain = " ".join(word.strip().lower().replace("_", " ").split())
    found = named.get(plain) or named.get(plain.replace("-", " "))
    if found:
        return found
    meant = nearest(plain, named)
    kind = named[meant] if meant else None
    mend = (
        f'Did you mean "{kind.kind}"?' if kind else f"It may be: {', '.join(sorted(log_kinds()))}."
    )
    raise Unreadable(f'"{word}" is nothing that can be noted.', mend)


class LogLine(BaseModel):
    """One thing that happened: its day, its kind, what or whom it names, and what is said of it."""

    model_config = ConfigDict(frozen=True, extra="forbid", arbitrary_types_allowed=True)

    day: Day
    kind: str
    name: str
    line: int = 0
    batches: Count | None = Field(default=None, gt=0)
    number: Count | None = None
    container: str = ""
    began: Day | None = None
    amount: str = ""
    paid: Money | None = None
    things: Texts = ()
    basket: Count | None = Field(default=None, gt=0)
    of: Texts = ()
    words: str = ""
    units: System = "metric"


def read_bought(text: str, units: System = "metric") -> Amount:
    """Return how much was bought: "5 kg", "12", "2 x 70 cl"; raises Unreadable if it is vague."""
    packs = re.fullmatch(r"([1-9]\d{0,3}) ?[x×] ?(\D.{0,60}|\d[^x×]{0,60})", text.strip())
    amount, rest = take_amount(packs[2] if packs else text, units)
    if amount is None or amount.low != amount.high or rest or amount.low <= 0:
        raise Unreadable(f"{say_written(text)} is not how much was bought.", 'Write "5 kg".')
    if packs:
        whole = amount.low * int(packs[1])
        amount = replace(amount, low=whole, high=whole)
    refuse_too_much(amount, text)
    return amount


@dataclass(frozen=True)
class ReadLog:
    """A log with its file's name: every line in the order in which they stand."""

    file: str = ""
    lines: tuple[LogLine, ...] = ()

    def of_list(self, title: str, follows: str) -> ReadLog:
        """Return the lines of one list's season: after the list before it was closed, to its own.

        A list that follows none begins with the log. What is to be changed is known ever after.
        """
        closed = [line.name if line.kind == "closed" else "" for line in self.lines]
        start = closed.index(follows) + 1 if follows and follows in closed else 0
        end = closed.index(title) if title in closed else len(closed)
        learnt = tuple(line for line in self.lines[:start] if line.kind == "change")
        own = tuple(line for line in self.lines[start:end] if line.kind != "closed")
        return ReadLog(self.file, (*learnt, *own))

    @property
    def spent(self) -> Fraction:
        """Return what was paid in all."""
        return sum((line.paid for line in self.lines if line.paid is not None), Fraction(0))
