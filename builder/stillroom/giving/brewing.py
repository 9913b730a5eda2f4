"""What can be made this year, from when, in what parts, out of what: the brews of a problem.

A recipe is made whole, or, where the list says so, by parts: as little as its amounts can be
rounded for and its vessel is filled enough. What spoils is bought for the month of its use.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from fractions import Fraction

from stillroom.core.recipe.kind_dates import why_undated
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scaling import scale_recipe
from stillroom.core.size.targets import ByFactor
from stillroom.core.when.timeline import latest_start_usable, plan_forward
from stillroom.core.words.day_words import say_day, say_minutes
from stillroom.core.words.problems import Unreadable
from stillroom.giving.model import GivingList, Make
from stillroom.giving.money.costing import Need
from stillroom.giving.plan_model import Brew, StartChoice, agree
from stillroom.giving.starting import (
    UNKNOWN_KEEPS_DAYS,
    Frame,
    minutes_by_day,
    start_choices,
)
from stillroom.giving.written import WEEKDAYS

MOST_PARTS = 24
LEAST_OF_A_VESSEL = Fraction(1, 2)
"""What stands in a jar fills half of it at least: common practice, no published source."""


def brew_of(
    giving: GivingList,
    recipe: Recipe,
    needs: Sequence[Need],
    frame: Frame,
    shares: Mapping[str, Fraction],
) -> Brew:
    """Return the brew of a recipe; `shares` are those of its makes, by their key."""
    makes = [make for make in giving.makes if make.recipe == recipe.slug]
    most = max(make.batches for make in makes)
    at_once = min((make.at_a_time for make in makes if make.at_a_time), default=None)
    frame = replace(frame, weekly=_weekly(giving, frame, at_once, most))
    choices = () if why_undated(recipe) else start_choices(recipe, frame)
    choices = tuple(replace(one, most=at_once) for one in choices)
    latest = latest_start_usable(recipe, frame.dues[-1])
    return Brew(
        recipe=recipe.slug,
        title=recipe.title,
        most_batches=most,
        choices=choices,
        needs=used_by_a_batch(needs),
        too_late="" if choices else _undated(recipe) or _too_late(recipe, latest, frame),
        sizes=_sizes(recipe, makes, tuple(shares.values())),
    )


def _weekly(giving: GivingList, frame: Frame, at_once: int | None, most: int) -> bool:
    short = giving.hours_a_week is not None or giving.hours_a_day or giving.stock.vessels
    return bool(short or frame.days_off or (at_once is not None and at_once < most))


def _undated(recipe: Recipe) -> str:
    why = why_undated(recipe)
    return (
        f"when {recipe.title} {agree(recipe.title, 'is', 'are')} ready is not known. {why}"
        if why
        else ""
    )


def _too_late(recipe: Recipe, latest: date, frame: Frame) -> str:
    """Return why no start is left: too late, too few hours or days, or what keeps too short."""
    if latest < frame.today:
        return f"{recipe.title} would have had to be started by {say_day(latest)}."
    any_hours = replace(frame, hours_a_day={})
    if starts := start_choices(recipe, any_hours):
        return _too_few_hours(recipe, starts, frame)
    if start_choices(recipe, replace(any_hours, days_off=frozenset())):
        return f"days off leave no day for {recipe.title}."
    if recipe.lasts is None:
        keeps = agree(recipe.title, "keeps", "keep")
        return (
            f"nobody says how long {recipe.title} {keeps}, and {UNKNOWN_KEEPS_DAYS} days are too "
            'few: write it in the recipe ("keeps").'
        )
    return f"{recipe.title} {agree(recipe.title, 'keeps', 'keep')} too short a time."


def _too_few_hours(recipe: Recipe, starts: Sequence[StartChoice], frame: Frame) -> str:
    """Return on which day of the week every start asks for more than there is.

    "Two weeks of shaking every day" ask for a minute on a Sunday too.
    """
    short = [_short_days(recipe, one, frame) for one in starts]
    always = set.intersection(*(set(days) for days in short))
    days = {day: minutes for day, minutes in short[0].items() if day in always} or short[0]
    day = max(days, key=lambda one: (days[one], -one))
    there = say_minutes(int(frame.hours_a_day[day] * 60)) if frame.hours_a_day[day] else "none"
    asks = agree(recipe.title, "asks", "ask")
    asked = f"{recipe.title} {asks} for {say_minutes(days[day])} in one day"
    if days[day] > 60 * max(frame.hours_a_day.values()):
        return f"{asked}, more than there is."
    return f"{asked}, {WEEKDAYS[day]} too, and there is {there} on a {WEEKDAYS[day]}."


def _short_days(recipe: Recipe, start: StartChoice, frame: Frame) -> dict[int, int]:
    """Return the weekdays on which a start asks for more than there is, with the most minutes."""
    short: dict[int, int] = {}
    for day, minutes in minutes_by_day(plan_forward(recipe, start.start, start.due)).items():
        if minutes > 60 * frame.hours_a_day[day.weekday()]:
            short[day.weekday()] = max(minutes, short.get(day.weekday(), 0))
    return short


def used_by_a_batch(needs: Sequence[Need]) -> dict[str, Fraction]:
    """Return what one batch uses of each priced thing, in what its packs are measured in."""
    used: dict[str, Fraction] = {}
    for need in needs:
        if need.entry and not need.per_container and not need.tool:
            used[need.item] = used.get(need.item, Fraction(0)) + need.amount
    return {item: to_a_sixtieth(amount) for item, amount in used.items()}


def to_a_sixtieth(amount: Fraction) -> Fraction:
    """Return an amount to be had, rounded up to what no kitchen can measure: 1/60 g, ml or piece.

    A cup is 236.5882365 ml: the planner reckons in whole numbers, and buys no pack for the last.
    """
    return Fraction(math.ceil(amount * 60), 60)


def _sizes(
    recipe: Recipe, makes: Sequence[Make], shares: Sequence[Fraction]
) -> tuple[Fraction, ...]:
    """Return the parts of a recipe that can be made: so many jars, where that can be measured."""
    if not any(make.in_parts for make in makes):
        return ()
    floor = LEAST_OF_A_VESSEL if _stands(recipe) else Fraction(0)
    jars = {share * n for share in shares for n in range(1, min(MOST_PARTS, int(1 / share)))}
    return tuple(
        size for size in sorted(jars) if floor <= size < 1 and can_be_measured(recipe, size)
    )


def _stands(recipe: Recipe) -> bool:
    """Whether it stands in its vessel for days: then air over it matters."""
    return any(stage.role in ("tend", "rest") for stage in recipe.stages)


def can_be_measured(recipe: Recipe, factor: Fraction) -> bool:
    """Say whether every amount of so much of a recipe can be rounded within its tolerance."""
    try:
        scaled = scale_recipe(recipe, ByFactor(factor))
    except Unreadable:
        return False
    return all(line.holds for line in scaled.lines)
