"""From the plan to batches: scaled recipes, dates, and which present comes from which making.

The plan says where each present comes from (Plan.sources); here the makings get their names.
"""

from __future__ import annotations

from collections import Counter, defaultdict
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
    `amount` is how much of the recipe that is, `count` how many times its work is done: half a
    recipe is the work of one. `spare` is what is left in it, as a part of the recipe.
    """

    name: str
    ordinal: int
    recipe: Recipe
    count: int
    scaled: ScaledBatch
    timeline: Timeline
    fills: Mapping[str, int]
    spare: Fraction
    amount: Fraction = Fraction(1)
    aside: str = ""

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
    giving_day, today = offering.giving.giving_day, offering.today
    order = sorted(
        range(len(plan.batches)),
        key=lambda n: (plan.batches[n].choice.start, plan.batches[n].recipe),
    )
    timelines = {
        n: plan_forward(
            offering.recipes[batch.recipe],
            batch.choice.start,
            batch.choice.due or giving_day,
            today,
        )
        for n, batch in enumerate(plan.batches)
    }
    presents = tuple(
        _present(offering, plan, basket.number, key, order, timelines)
        for basket in offering.problem.baskets
        for key in plan.gifts[basket.number]
    )
    batches = tuple(_batch(offering, plan, order, place, timelines) for place in range(len(order)))
    return Making(batches, presents, _hours_by_week(batches))


def _batch(
    offering: Offering, plan: Plan, order: list[int], place: int, timelines: dict[int, Timeline]
) -> Batch:
    planned = plan.batches[order[place]]
    keys = Counter(key for (_, key), source in plan.sources.items() if source == order[place])
    earlier = [plan.batches[n].recipe for n in order[:place]]
    used = sum((offering.offer(key).share * n for key, n in keys.items()), Fraction(0))
    recipe = offering.recipes[planned.recipe]
    return Batch(
        name=_name(place),
        ordinal=1 + earlier.count(planned.recipe),
        recipe=recipe,
        count=planned.count,
        scaled=scale_recipe(recipe, ByFactor(planned.amount)),
        timeline=timelines[order[place]],
        fills=dict(keys),
        spare=planned.amount - used,
        amount=planned.amount,
        aside=planned.choice.aside,
    )


def _present(
    offering: Offering,
    plan: Plan,
    number: int,
    key: str,
    order: list[int],
    timelines: dict[int, Timeline],
) -> Present:
    source = plan.sources[number, key]
    recipe = offering.recipes[offering.offer(key).recipe]
    if source < 0:
        thing = [thing for thing in offering.shelf.things if thing.key == key][-1 - source]
        return Present(number, key, recipe, thing.made_on, "the shelf", True, thing.keep_until)
    timeline = timelines[source]
    name = _name(order.index(source))
    return Present(number, key, recipe, timeline.made, name, False, timeline.keep_until)


def _name(place: int) -> str:
    return f"batch {place + 1}"


def _hours_by_week(batches: tuple[Batch, ...]) -> dict[date, Fraction]:
    """Return hands-on hours by week, each week named by its Monday."""
    weeks: dict[date, Fraction] = defaultdict(Fraction)
    for batch in batches:
        for day, minutes in minutes_by_day(batch.timeline).items():
            weeks[day - timedelta(days=day.weekday())] += Fraction(minutes * batch.count, 60)
    return dict(sorted(weeks.items()))
