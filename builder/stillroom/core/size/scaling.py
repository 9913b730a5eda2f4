"""A recipe at another size: exact amounts, kitchen amounts, and whether they still hold.

Solves a target (targets.py), multiplies, and rounds each line as a kitchen can measure
(scaled_lines.py). The browser's scale.js does the same from the same data. Times, temperatures and
pans are not touched: what_stays.py says what becomes of them.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.amounts.rounding import (
    least_part,
    most_times,
    round_measure,
    say_unit,
    share_named,
)
from stillroom.core.amounts.units import base_size, size_of
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scalable import Scalable, scalable_of
from stillroom.core.size.scaled_lines import (
    By,
    Measures,
    ScaledLine,
    scale_line,
    warning_of,
)
from stillroom.core.size.targets import ByFactor, ByTin, LeftOver, Target, Wanted, solve_target
from stillroom.core.size.what_stays import boiling_warnings, notes_on_scaling
from stillroom.core.size.whole_batches import Fit, nearest_fit
from stillroom.core.words.joining import join_and, join_range
from stillroom.core.words.said import Said

_say = Said("stillroom.core.size", "size")

__all__ = ["By", "Measures", "ScaledBatch", "ScaledLine", "scale", "scale_recipe"]


@dataclass(frozen=True)
class ScaledBatch:
    """A recipe at one size: its lines, what it makes, what to be warned of, what fits better.

    `fills` names the containers that were asked for, "" when none were; `makes_in_full` then says
    both: "about 600 ml: 12 bottles of 50 ml".
    """

    slug: str
    title: str
    factor: Fraction
    makes: str
    makes_in_full: str
    makes_ml: Fraction | None
    fills: str
    containers: int
    lines: tuple[ScaledLine, ...]
    warnings: tuple[str, ...]
    notes: tuple[str, ...]
    scarcest: str
    left: tuple[LeftOver, ...]
    fit: Fit | None
    fit_makes: str
    measures: Measures


def scale_recipe(
    recipe: Recipe, target: Target | None = None, measures: Measures | None = None
) -> ScaledBatch:
    """Return a recipe scaled to a target; raises Unreadable when the target cannot be had.

    Without a target it is the recipe as written; without measures the recipe's own units.
    """
    return scale(scalable_of(recipe), target or ByFactor(Fraction(1)), measures)


def scale(recipe: Scalable, target: Target, measures: Measures | None = None) -> ScaledBatch:
    """Return a scalable recipe scaled to a target; raises Unreadable."""
    chosen = measures or Measures(recipe.system)
    solved = solve_target(recipe, target)
    if solved.factor > most_times():
        raise _say.refuse("too_much", most=f"{most_times():,}")
    if solved.factor * least_part() < 1:
        raise _say.refuse("too_little", least=least_part())
    asked = sum(one.count for one in solved.containers)
    containers = asked or count_containers(recipe, solved.factor)
    lines = tuple(
        scale_line(recipe, line, solved.factor, containers, chosen) for line in recipe.lines
    )
    fit = _better_fit(recipe, lines, solved.factor)
    makes = makes_text(recipe, solved.factor, chosen)
    fills = fills_text(recipe, solved.containers)
    return ScaledBatch(
        slug=recipe.slug,
        title=recipe.title,
        factor=solved.factor,
        makes=makes,
        makes_in_full=_in_full(recipe, makes, fills),
        makes_ml=recipe.makes_ml * solved.factor if recipe.makes_ml else None,
        fills=fills,
        containers=containers,
        lines=lines,
        warnings=(
            *(warning_of(line) for line in lines if not line.holds),
            *boiling_warnings(recipe, solved.factor),
        ),
        notes=notes_on_scaling(recipe, solved.factor, own_tin=isinstance(target, ByTin)),
        scarcest=solved.scarcest,
        left=solved.left,
        fit=fit,
        fit_makes=makes_text(recipe, fit.factor, chosen) if fit else "",
        measures=chosen,
    )


def _better_fit(recipe: Scalable, lines: tuple[ScaledLine, ...], factor: Fraction) -> Fit | None:
    """Return the nearest batch of whole counts when a count of this one does not hold."""
    if all(line.holds or line.unit for line in lines):
        return None
    return nearest_fit(recipe, factor)


def count_containers(recipe: Scalable, factor: Fraction) -> int:
    """Return how many containers a batch is filled into, the last perhaps not full."""
    if recipe.each:
        return max((recipe.makes.middle * factor).__ceil__(), 1)
    if recipe.makes_ml and recipe.container_ml:
        return max((recipe.makes_ml * factor / recipe.container_ml).__ceil__(), 1)
    return max(factor.__ceil__(), 1)


def fills_text(recipe: Scalable, asked: tuple[Wanted, ...]) -> str:
    """Say the containers asked for: "12 bottles of 50 ml and 1 bottle of 100 ml"."""
    return join_and(
        [
            _say(
                "of_size_to_the_brim" if one.brim else "of_size",
                count=one.count,
                thing=one.thing or (recipe.container_many if one.count > 1 else recipe.container),
                size=say_unit(one.size.middle, one.size.unit),
            )
            for one in asked
        ]
    )


def _in_full(recipe: Scalable, makes: str, fills: str) -> str:
    if not fills:
        return makes
    return fills if recipe.each else _say("in_full", makes=makes, fills=fills)


def makes_text(recipe: Scalable, factor: Fraction, measures: Measures) -> str:
    """Say what a batch makes: "200 ml", "about 36 biscuits", "9 jars of 200 ml"."""
    amount = recipe.makes.times(factor)
    if amount.unit and factor == 1 and measures.system == recipe.system:
        return recipe.makes_written
    if amount.unit:
        mass = size_of(amount.unit) == "mass"
        near = share_named("near", "plain")
        ends = [
            round_measure(
                end * base_size(amount.unit), measures.system, "mass" if mass else "volume", near
            )
            for end in (amount.low, amount.high)
        ]
        text = join_range(
            [ends[0].text] if ends[0].text == ends[1].text else [end.text for end in ends]
        )
        return _say("about", amount=text) if amount.about else text
    if recipe.each:
        return _jars_text(recipe, amount.middle)
    if amount.high < 1:
        return _say("less_than_one", thing=recipe.thing)
    low, high = (_whole(end) for end in (amount.low, amount.high))
    number = f"{low}" if low == high else f"{low}–{high}"
    text = f"{number} {recipe.things if high > 1 else recipe.thing}"
    return _say("about", amount=text) if amount.about or low != amount.low else text


def _jars_text(recipe: Scalable, count: Fraction) -> str:
    """Say "9 jars of 200 ml", or "1 jar of 500 ml and a part of another"."""
    size = recipe.each_written
    full = count.__floor__()
    if not full:
        return _say("part_of_one", thing=recipe.thing, size=size)
    thing = recipe.things if full > 1 else recipe.thing
    text = _say("of_size", count=full, thing=thing, size=size)
    return text if count == full else _say("and_a_part", text=text)


def _whole(value: Fraction) -> Fraction:
    return Fraction(max((value + Fraction(1, 2)).__floor__(), 1))
