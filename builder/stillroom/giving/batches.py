"""From the plan to batches: scaled recipes, dates, and which present comes from which making.

Presents on the shelf go first, the oldest first; then this year's batches in order of start.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction

from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scaling import ScaledBatch, scale_recipe
from stillroom.core.size.targets import ByFactor
from stillroom.core.when.timeline import Timeline, plan_forward
from stillroom.giving.offering import Offering
from stillroom.giving.plan_model import Plan
from stillroom.giving.starting import minutes_by_day


@dataclass(frozen=True)
class Batch:
    """One making of the plan: so many times the recipe from one day, and what it fills.

    `ordinal` counts the makings of one recipe by their start; `name` counts all of the plan.
    """

    name: str
    ordinal: int
    recipe: Recipe
    count: int
    scaled: ScaledBatch
    timeline: Timeline
    fills: Mapping[str, int]
    spare: Fraction

    @property
    def minutes(self) -> int:
        """Hands-on minutes of all of it."""
        return self.timeline.hands_on_minutes * self.count


@dataclass(frozen=True)
class Present:
    """One thing in one basket: what it is, and when and in which batch it was or will be made."""

    basket: int
    key: str
    recipe: Recipe
    made_on: date
    batch: str
    from_shelf: bool
    keep_until: date | None


@dataclass(frozen=True)
class Making:
    """All batches of the plan and where every present comes from."""

    batches: tuple[Batch, ...]
    presents: tuple[Present, ...]
    hours_by_week: Mapping[date, Fraction]

    def of_basket(self, number: int) -> tuple[Present, ...]:
        """Return the presents of a basket."""
        return tuple(present for present in self.presents if present.basket == number)


def make_batches(offering: Offering, plan: Plan) -> Making:
    """Return what is made when for a plan."""
    source = _Source(offering, plan)
    presents = tuple(
        source.take(basket.number, key)
        for basket in offering.problem.baskets
        for key in plan.gifts[basket.number]
    )
    batches = tuple(
        Batch(
            name=_name(n),
            ordinal=1 + sum(earlier.recipe == batch.recipe for earlier, _ in source.dated[:n]),
            recipe=offering.recipes[batch.recipe],
            count=batch.count,
            scaled=scale_recipe(offering.recipes[batch.recipe], ByFactor(Fraction(batch.count))),
            timeline=timeline,
            fills=dict(source.fills[n]),
            spare=source.room[n],
        )
        for n, (batch, timeline) in enumerate(source.dated)
    )
    return Making(batches, presents, _hours_by_week(batches))


class _Source:
    """Where presents are taken from: what is left on the shelf and of each batch."""

    def __init__(self, offering: Offering, plan: Plan) -> None:
        giving_day, today = offering.giving.giving_day, offering.today
        ordered = sorted(plan.batches, key=lambda batch: (batch.choice.start, batch.recipe))
        self.offering = offering
        self.dated = [
            (b, plan_forward(offering.recipes[b.recipe], b.choice.start, giving_day, today))
            for b in ordered
        ]
        self.room = [Fraction(batch.count) for batch in ordered]
        self.fills: list[dict[str, int]] = [defaultdict(int) for _ in ordered]
        self.shelf = [thing.number for thing in offering.shelf.things]

    def take(self, basket: int, key: str) -> Present:
        """Take one present, from the shelf first."""
        for place, thing in enumerate(self.offering.shelf.things):
            if thing.key == key and self.shelf[place]:
                self.shelf[place] -= 1
                recipe, until = self.offering.recipes[thing.recipe], thing.keep_until
                return Present(basket, key, recipe, thing.made_on, "the shelf", True, until)
        offer = self.offering.offer(key)
        for n, (batch, timeline) in enumerate(self.dated):
            if batch.recipe == offer.recipe and self.room[n] >= offer.share:
                self.room[n] -= offer.share
                self.fills[n][key] += 1
                recipe, until = self.offering.recipes[batch.recipe], timeline.keep_until
                return Present(basket, key, recipe, timeline.made, _name(n), False, until)
        raise ValueError(f"no batch has {key} left for basket {basket}")


def _name(place: int) -> str:
    return f"batch {place + 1}"


def _hours_by_week(batches: tuple[Batch, ...]) -> dict[date, Fraction]:
    """Return hands-on hours by week, each week named by its Monday."""
    weeks: dict[date, Fraction] = defaultdict(Fraction)
    for batch in batches:
        for day, minutes in minutes_by_day(batch.timeline).items():
            weeks[day - timedelta(days=day.weekday())] += Fraction(minutes * batch.count, 60)
    return dict(sorted(weeks.items()))
