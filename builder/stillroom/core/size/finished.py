"""What a batch comes to at its size: to bottle, into what, how strong, how many servings.

Yield, containers and servings grow with the batch. Strength and fold do not, but where a whole
thing is rounded: they are reckoned from the amounts shown. A container's size is what it holds
filled as it should be, the room above left free: so `--fill`, the count of containers and this page
agree. The browser's finished.js says the same. Leaves out the ingredients: scaling.py.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.amounts.quantities import decimal_sign, show_amount, show_decimal
from stillroom.core.amounts.rounding import round_measure, share_named
from stillroom.core.amounts.units import System, convert, size_of
from stillroom.core.batch.bottling import Yield, estimate_yield, fill_containers, stands_ml
from stillroom.core.batch.drinks import DrinkMeasure, Pour, measure_of
from stillroom.core.batch.strength import (
    LEAST_DRINKS,
    Strength,
    fold_of_recipe,
    strength_of,
    strength_parts,
    to_float,
)
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scalable import scalable_of
from stillroom.core.size.scaling import ScaledBatch
from stillroom.core.words.joining import join_and, join_range
from stillroom.core.words.kept_apart import kept_apart
from stillroom.core.words.plurals import plural
from stillroom.core.words.said import Said

_say = Said("stillroom.core.size", "size")


@dataclass(frozen=True)
class Fact:
    """One thing worked out of a batch: its name, its value, how and from what source.

    `brief` marks what a cook wants to see at once.
    """

    name: str
    text: str
    how: str
    brief: bool = False


@dataclass(frozen=True)
class Fillable:
    """A container with a size: one and many of it in words, its ml, its size in words."""

    one: str
    many: str
    size_ml: Fraction
    size: str


@kept_apart(decimal_sign, 256)
def fillable(recipe: Recipe) -> tuple[Fillable, ...]:
    """Return the containers a recipe is put up in that are counted by volume, largest first."""
    found = {
        convert(one.size.middle, one.size.unit, "ml"): (one.name, show_amount(one.size))
        for one in recipe.filled_into
        if one.size and size_of(one.size.unit) == "volume"
    }
    return tuple(
        Fillable(name, plural(name), size_ml, size)
        for size_ml, (name, size) in sorted(found.items(), reverse=True)
    )


def facts_of_batch(recipe: Recipe, batch: ScaledBatch, country: str = "GB") -> tuple[Fact, ...]:
    """Return what a scaled batch of this recipe comes to, in words.

    `country` chooses what alcohol is counted by.
    """
    there = estimate_yield(recipe, batch.factor)
    shares = shares_taken(recipe, batch)
    strength = strength_of(recipe, shares)
    fold = fold_of_recipe(recipe, shares)
    found = [_to_bottle(there, batch.measures.system)] if there and there.volume_ml else []
    found += _into(recipe, batch, there)
    if strength:
        found.append(_strength(recipe, strength))
        found += _pours(strength, batch.makes_ml, measure_of(country))
    if fold:
        how = _say("from_source", how=fold.uncertainty, source=fold.source)
        found.append(Fact(_say("vanilla"), fold.text, how))
    return tuple(found)


def shares_taken(recipe: Recipe, batch: ScaledBatch) -> tuple[Fraction, ...]:
    """Return by how much of its exact amount each ingredient is taken, rounding included."""
    own = zip(batch.lines, scalable_of(recipe).lines, strict=True)
    return tuple(
        (1 + shown.off) / (1 if line.scales == "with the batch" else batch.factor)
        for shown, line in own
    )


def _to_bottle(there: Yield, system: System) -> Fact:
    kept = _say("then").join(
        _say("part", name=part.name, ml=_signed(part.volume_ml))
        for part in there.parts
        if abs(part.volume_ml) >= 1
    )
    ends = [volume_text(end, system) for end in (there.low_ml, there.high_ml) if end]
    text = join_range(ends if len(set(ends)) == len(ends) else ends[:1])
    how = _say("from_source", how=kept, source=there.source)
    return Fact(_say("to_bottle"), text, how, brief=True)


def _signed(volume_ml: Fraction) -> str:
    return f"{'−' if volume_ml < 0 else ''}{show_decimal(abs(volume_ml), 0)}"


def volume_text(volume_ml: Fraction, system: System) -> str:
    """Say a volume as a kitchen measures it."""
    return round_measure(volume_ml, system, "volume", share_named("near", "plain")).text


def _into(recipe: Recipe, batch: ScaledBatch, there: Yield | None) -> list[Fact]:
    """Say what is filled: the containers asked for, else those that leave the least."""
    if batch.makes_ml is None or recipe.makes.each:  # "9 jars of 200 ml" says it all
        return []
    sizes = fillable(recipe)
    if batch.fills:
        words, filled, least = batch.fills, batch.makes_ml, batch.makes_ml / batch.containers
    elif not sizes or not stands_ml(recipe):  # pieces of toffee fill no bag by the ml
        return []
    else:
        words, filled = _fill(sizes, batch.makes_ml)
        least = sizes[-1].size_ml
    how = [_say("said_to_make", makes=plainly(batch.makes))]
    over = batch.makes_ml - filled
    if filled and over >= 1:
        how.append(_say("over", ml=show_decimal(over, 0)))
    if filled and there and there.low_ml < filled:
        last = filled - there.low_ml <= least
        words = _say("then").join([words, _say("last_not_full" if last else "some_not_full")])
    how.append(size_means())
    return [Fact(_say("into"), words, _say("then").join(how), brief=True)]


def _fill(containers: tuple[Fillable, ...], volume_ml: Fraction) -> tuple[str, Fraction]:
    """Return in words what is filled, and the ml that stand in it."""
    filling = fill_containers(volume_ml, [one.size_ml for one in containers])
    counted = [
        _say("of_size", count=count, thing=one.many if count > 1 else one.one, size=one.size)
        for one, (_size, count) in zip(containers, filling.counts, strict=True)
        if count
    ]
    nothing = _say("less_than_one", thing=containers[-1].one)
    return join_and(counted) or nothing, filling.filled_ml


def _strength(recipe: Recipe, strength: Strength) -> Fact:
    how = _say("how_strong", how=how_strong(recipe, strength), doubt=strength.uncertainty)
    return Fact(_say("strength"), strength.text, how, brief=True)


def how_strong(recipe: Recipe, strength: Strength) -> str:
    """Say how a strength was reckoned, whether another size moves it, and from what source."""
    size = _say("from_shown" if strength_parts(recipe) else "any_size")
    how = _say("then").join([strength.how, size])
    return _say("from_source", how=how, source=strength.source)


def _pours(strength: Strength, makes_ml: Fraction | None, measure: DrinkMeasure) -> list[Fact]:
    shown = [one for one in strength.pours if one.drinks(measure) >= LEAST_DRINKS]
    each = _say("then").join(
        _say("drinks", name=_name(one), drinks=_tenths(one.drinks(measure)), many=measure.many)
        for one in shown
    )
    if not each:
        return []
    found = [Fact(_say("in_a_serving"), each, one_holds(measure))]
    counted = [_count(one, makes_ml) for one in shown if " ml" not in one.name]
    if makes_ml and any(counted):
        glass = shown[0]
        times = to_float(makes_ml / glass.volume_ml)
        drinks = _whole(glass.drinks(measure) * times)
        how = _say("drinks_in_all", drinks=drinks, many=measure.many)
        text = _say("about", amount=_say("or").join(words for words in counted if words))
        found.append(Fact(_say("servings"), text, how, brief=True))
    return found


def plainly(makes: str) -> str:
    """Return what a batch makes without its "about"."""
    return makes.removeprefix(_say("about", amount=""))


def size_means() -> str:
    """Say what a container's size is."""
    return _say("size_means")


def one_holds(measure: DrinkMeasure) -> str:
    """Say how much alcohol one drink of a country's measure holds."""
    return _say("one_holds", amount=measure.amount, source=measure.source)


def _count(pour: Pour, makes_ml: Fraction | None) -> str:
    """Say how many such servings there are; "" for none."""
    count = ((makes_ml or 0) / pour.volume_ml).__floor__()
    one = pour.name.removeprefix("a ")
    return f"{count} {plural(one) if count > 1 else one}" if count else ""


def _name(pour: Pour) -> str:
    """Name a serving with its ml, unless the name has them."""
    if " ml" in pour.name:
        return pour.name
    return _say("with_size", name=pour.name, ml=int(pour.volume_ml))


def _tenths(value: float) -> str:
    """Show one decimal, halves up: a browser rounds the same way.

    >>> _tenths(2.0), _tenths(0.25)
    ('2.0', '0.3')
    """
    tenths = math.floor(value * 10 + 0.5)
    return f"{tenths // 10}.{tenths % 10}"


def _whole(value: float) -> int:
    return math.floor(value + 0.5)
