"""What is planned and what comes out: plain frozen data, no recipes, no files, no solver.

Sums of money are Fractions of the currency's main unit, hours Fractions of an hour, months
counted as (year, month).
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from fractions import Fraction
from typing import Literal

from stillroom.core.amounts.money import show_money
from stillroom.core.words.joining import join_and
from stillroom.core.words.plurals import singular
from stillroom.giving.model import Sort
from stillroom.giving.money.buying import PackOffer

Month = tuple[int, int]
_WITH = re.compile(r"\s(?:with|of|in|for|from|under)\s")


def agree(title: str, one: str, many: str) -> str:
    """Return the verb that a title wants: of several things or of one.

    >>> agree("Beeswax wraps", "is", "are"), agree("Truffles in a box", "is", "are")
    ('are', 'are')
    >>> agree("Cocoa mix with marshmallows", "is", "are")
    'is'
    """
    head = _WITH.split(title, maxsplit=1)[0]
    return many if singular(head) != head else one


@dataclass(frozen=True)
class Reason:
    """Why an offer is not for a basket, as said of one thing and of several.

    `disagrees` where the two checks of it do: somebody must look.
    """

    one: str
    many: str
    disagrees: bool = False

    def said_of(self, titles: Sequence[str]) -> str:
        """Say it of one thing or of several: "Mead contains alcohol", "Mead and gin contain …".

        >>> Reason("contains milk", "contain milk").said_of(["Oat and thyme biscuits"])
        'Oat and thyme biscuits contain milk'
        >>> Reason("contains milk", "contain milk").said_of(["Cocoa mix with marshmallows"])
        'Cocoa mix with marshmallows contains milk'
        """
        verb = agree(titles[0], self.one, self.many) if len(titles) == 1 else self.many
        return f"{join_and(titles)} {verb}"


@dataclass(frozen=True)
class StartChoice:
    """A day on which a batch may start: how ripe it is on giving day, hands-on hours by month.

    `ready` is the first day it may leave the house, `keep_until` the last day it is good (None:
    what is made does not spoil), `most` how many times the recipe may be made from that day,
    `takes` what each time takes of the limits by their key, `aside` what is to be said of it,
    `moved` whether the plan before began it on another day, `due` the day it is laid out to be
    done by, `needs` what is bought for that start alone, `waits` the days that what soon goes stale
    lies before the giving day.
    """

    start: date
    at_best: bool
    hours: Mapping[Month, Fraction]
    ready: date | None = None
    keep_until: date | None = None
    most: int | None = None
    takes: Mapping[str, Fraction] = field(default_factory=dict)
    aside: str = ""
    due: date | None = None
    in_season: bool = True
    moved: bool = False
    needs: Mapping[str, Fraction] = field(default_factory=dict)
    waits: int = 0


@dataclass(frozen=True)
class Brew:
    """A recipe that can be made this year: when, how often, and from what (item to amount).

    `sizes` are the parts of the recipe that can be made of it, beside the whole: ½, ¾.
    """

    recipe: str
    title: str
    most_batches: int
    choices: tuple[StartChoice, ...]
    needs: Mapping[str, Fraction] = field(default_factory=dict)
    too_late: str = ""
    sizes: tuple[Fraction, ...] = ()


@dataclass(frozen=True)
class Lot:
    """So many of an offer on the shelf from one making: since when, and until when good."""

    number: int
    ready: date | None = None
    keep_until: date | None = None


@dataclass(frozen=True)
class Offer:
    """A recipe in one container: the share of a batch one takes, what one costs, how many wait.

    `on_hand` counts the `lots`; where none are told apart, all of it is good for everybody.
    `usual_grams` is what one is taken to weigh where `weighs` is not known.
    """

    key: str
    recipe: str
    title: str
    sort: Sort
    container: str
    share: Fraction
    worth: Fraction = Fraction(0)
    on_hand: int = 0
    needs: Mapping[str, Fraction] = field(default_factory=dict)
    lots: tuple[Lot, ...] = ()
    weighs: Fraction | None = None
    usual_grams: Fraction = Fraction(0)

    @property
    def heft(self) -> Fraction:
        """Return the grams that a plan reckons with: what is not known weighs as is usual."""
        return self.usual_grams if self.weighs is None else self.weighs

    @property
    def shelf(self) -> tuple[Lot, ...]:
        """Return what waits, in the order in which it is taken."""
        return self.lots or ((Lot(self.on_hand),) if self.on_hand else ())


@dataclass(frozen=True)
class Basket:
    """One basket to fill: its number from 1, whose it is, its kind, its places, its budget.

    `ready_by` is the last day on which what goes into it may be finished, `keeps_to` the day to
    which all of it must keep: some days after it is opened, `carries` the grams that may be in it,
    `bands` what its postage is up to so many grams in it, the lightest first.
    """

    number: int
    household: str
    kind: str
    room: Mapping[Sort, int]
    budget: Fraction | None = None
    ready_by: date | None = None
    keeps_to: date | None = None
    carries: Fraction | None = None
    bands: tuple[tuple[Fraction, Fraction], ...] = ()

    def postage(self, grams: Fraction, things: int) -> Fraction:
        """Return what so many things cost to post; nothing where none go, or none is known."""
        if not things:
            return Fraction(0)
        fits = (price for most, price in self.bands if grams <= most)
        return min(fits, default=max((price for _, price in self.bands), default=Fraction(0)))

    def takes(self, source: StartChoice | Lot) -> bool:
        """Whether what comes from a batch or the shelf is ready in time for it and keeps."""
        if self.ready_by and source.ready and source.ready > self.ready_by:
            return False
        return not (self.keeps_to and source.keep_until and source.keep_until < self.keeps_to)

    @property
    def label(self) -> str:
        """Name the basket in messages."""
        return f"number {self.number}, {self.household}"


@dataclass(frozen=True)
class Limit:
    """What all batches together may take of something: hours of a week, a pan, a jar that stands.

    `words` say what is not enough ("the hours of the week of 4 October"), `mend` what would be.
    """

    key: str
    most: Fraction
    words: str
    mend: str


@dataclass(frozen=True)
class Purchase:
    """An ingredient or container to buy in whole packs, less what is in the house."""

    item: str
    packs: tuple[PackOffer, ...]
    on_hand: Fraction = Fraction(0)


@dataclass(frozen=True)
class Weights:
    """How many points each thing costs that a plan should have little of. Fewest points win."""

    empty_place: int = 1000
    must_have: int = 500
    had_last_year: int = 60
    had_before: int = 20
    twice_in_household: int = 40
    nothing_liked: int = 12
    batch: int = 10
    part: int = 1
    money: Fraction = Fraction(1)
    usable_only: int = 4
    out_of_season: int = 6
    uneven: Fraction = Fraction(3)
    busiest_hour: int = 2
    changed: int = 6
    moved: int = 3
    stale_day: Fraction = Fraction(1, 5)


@dataclass(frozen=True)
class Money:
    """How sums are said, and the sum that a budget is raised by at the least: a pound, 100 yen."""

    currency: str = "GBP"
    language: str = "en_GB"
    step: Fraction = Fraction(1)

    def say(self, value: Fraction) -> str:
        """Return a sum in words: "£12.50"."""
        return show_money(value, self.currency, self.language)


@dataclass(frozen=True)
class PlanProblem:
    """Everything the planner is told. `refused` says why an offer is not for a basket."""

    baskets: tuple[Basket, ...]
    offers: tuple[Offer, ...]
    brews: tuple[Brew, ...]
    purchases: tuple[Purchase, ...] = ()
    hours: Mapping[Month, Fraction] | None = None
    refused: Mapping[tuple[int, str], tuple[Reason, ...]] = field(default_factory=dict)
    years_since_had: Mapping[tuple[int, str], int] = field(default_factory=dict)
    liked: frozenset[tuple[int, str]] = frozenset()
    must_have: frozenset[tuple[str, str]] = frozenset()
    before: frozenset[tuple[int, str]] | None = None
    limits: tuple[Limit, ...] = ()
    weights: Weights = Weights()
    money: Money = Money()

    def offers_of(self, sort: Sort) -> tuple[Offer, ...]:
        """Return the offers that can fill a place of this sort."""
        return tuple(offer for offer in self.offers if offer.sort == sort)


@dataclass(frozen=True)
class PlannedBatch:
    """A recipe made so many times from one day; `cut` is what the last of them is less than whole.

    Its work is that of `count` times: half a batch stands as long at the stove as a whole one.
    """

    recipe: str
    choice: StartChoice
    count: int
    cut: Fraction = Fraction(0)

    @property
    def amount(self) -> Fraction:
        """How much of the recipe is made in all: 1½ times."""
        return self.count - self.cut


@dataclass(frozen=True)
class Term:
    """One term of the objective in plain words: how much of it the plan has, and its points."""

    words: str
    amount: Fraction
    points_each: Fraction | int

    @property
    def points(self) -> Fraction:
        """Return amount times points each."""
        return self.amount * self.points_each


Proof = Literal["proven best", "searched through", "stopped by time", "within the gap asked for"]


@dataclass(frozen=True)
class Plan:
    """The answer: who gets what, what is made and bought, and how good it provably is.

    `gap` is (points - bound) / points: 0 is proven best; no better plan has under `bound`.
    `sources` says where each gift comes from: a place in `batches`, or -1 - n for the n-th lot of
    its offer's shelf. "Searched through" is what came to its end, though so many figures are in it
    that the solver's word is no proof.
    """

    gifts: Mapping[int, tuple[str, ...]]
    batches: tuple[PlannedBatch, ...]
    packs: Mapping[str, tuple[int, ...]]
    empty: Mapping[tuple[int, Sort], int]
    missed: tuple[tuple[str, str], ...]
    terms: tuple[Term, ...]
    points: Fraction
    bound: Fraction
    gap: Fraction
    proof: Proof
    seconds: float
    sources: Mapping[tuple[int, str], int] = field(default_factory=dict)

    @property
    def is_whole(self) -> bool:
        """Whether every place of every basket is filled and every "must have" is met."""
        return not self.empty and not self.missed

    def count_of(self, key: str) -> int:
        """Return how many of an offer are given."""
        return sum(1 for keys in self.gifts.values() for given in keys if given == key)
