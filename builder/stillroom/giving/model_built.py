"""The model as it is built: its variables by what they decide, and what is reckoned from them.

Leaves out what is put into it: modelling.py, modelling_money.py.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date
from fractions import Fraction

from stillroom.giving.mip import Mip, Term
from stillroom.giving.model import Sort
from stillroom.giving.plan_model import Brew

Window = tuple[date | None, date | None]


@dataclass(frozen=True)
class Group:
    """Sources of one recipe out of which presents are drawn together: lots, or start choices."""

    recipe: str
    key: str
    lots: tuple[int, ...]
    choices: tuple[int, ...]


@dataclass
class Built:
    """The model with the numbers of its variables, by what they decide."""

    mip: Mip = field(default_factory=Mip)
    gives: dict[tuple[int, str], int] = field(default_factory=dict)
    empty: dict[tuple[int, Sort], int] = field(default_factory=dict)
    missed: dict[tuple[str, str], int] = field(default_factory=dict)
    batches: dict[tuple[str, int], int] = field(default_factory=dict)
    cut: dict[tuple[str, int, Fraction], int] = field(default_factory=dict)
    made: dict[str, int] = field(default_factory=dict)
    drawn: dict[tuple[str, Window, Group], int] = field(default_factory=dict)
    packs: dict[str, list[int]] = field(default_factory=dict)
    bands: dict[int, list[int]] = field(default_factory=dict)
    even: list[int] = field(default_factory=list)

    def making(self) -> Iterator[int]:
        """Yield the variables that say what is made, and when."""
        yield from (*self.batches.values(), *self.cut.values(), *self.made.values())


def amount_terms(brew: Brew, built: Built, place: int, times: Fraction) -> Iterator[Term]:
    """Yield so many times the amount that is made from a start choice."""
    yield built.batches[brew.recipe, place], times
    for size in brew.sizes:
        yield built.cut[brew.recipe, place, size], -times * (1 - size)
