"""What a batch fills: its volume in the vessel, what is left to bottle, and into what.

Yield = liquids in + juice given - kept back by solids - lees - the tasting spoon. The figures are
in staples/bottling.yml, with their sources. Uses contents.py. Leaves out scale: a batch is the
recipe times a factor, and everything here grows with it but the tasting spoon.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.amounts.units import convert, size_of
from stillroom.core.batch.contents import (
    Content,
    bottling_data,
    contents_of,
    figure,
    juicy_without_weight,
    liquids_without_size,
)
from stillroom.core.recipe.model import Recipe

HEADSPACE_SOURCE = "USDA Complete Guide to Home Canning, Guide 1, Controlling headspace"
PRACTICE = "common practice, no published source"
_TRIED = 10_000  # sums tried at most


@dataclass(frozen=True)
class YieldPart:
    """One step of the sum: a name in words and its ml, negative for what is lost."""

    name: str
    volume_ml: Fraction


@dataclass(frozen=True)
class Yield:
    """What is there to bottle, in ml: at worst, most likely, at best, and how it adds up."""

    low_ml: Fraction
    volume_ml: Fraction
    high_ml: Fraction
    parts: tuple[YieldPart, ...]
    source: str = PRACTICE


@dataclass(frozen=True)
class Filling:
    """How many of each container (by ml) are filled, and what is left over in ml."""

    counts: tuple[tuple[Fraction, int], ...]
    left_ml: Fraction

    @property
    def filled_ml(self) -> Fraction:
        """The ml that stand in containers."""
        return sum((size * count for size, count in self.counts), Fraction(0))


def makes_ml(recipe: Recipe) -> Fraction | None:
    """Return the ml one batch makes; None for things that are counted or have no density."""
    total = recipe.makes.total
    size = size_of(total.unit)
    if size == "volume":
        return convert(total.middle, total.unit, "ml")
    density = finished_density(recipe)
    if size == "mass" and density:
        return convert(total.middle, total.unit, "g") / density
    return None


def finished_density(recipe: Recipe) -> Fraction | None:
    """Return g per ml of what is finished, or None when nobody says."""
    name = recipe.kind.name
    if name in bottling_data()["dry_kinds"]:
        weighed = [held for held in contents_of(recipe) if held.grams and held.staple]
        main = max(weighed, key=lambda held: held.grams or Fraction(0), default=None)
        return main.staple.density if main and main.staple else None
    return figure("finished_density", name) or None


def stands_ml(recipe: Recipe) -> Fraction:
    """Return the ml that stand in the vessel: liquids and what the solids push aside.

    Where nothing is liquid, things lie with the air between them: by their density in bulk. Nothing
    stands in a vessel when things are baked, set in a tin or made by hand.
    """
    held = contents_of(recipe)
    if recipe.kind.name in bottling_data()["no_vessel"]:
        return Fraction(0)
    if any(content.liquid for content in held):
        return sum((content.volume_ml for content in held), Fraction(0))
    return sum((_bulk_ml(content) for content in held), Fraction(0))


def _bulk_ml(content: Content) -> Fraction:
    density = content.staple.density if content.staple else None
    if content.grams and density:
        return content.grams / density
    return content.volume_ml / figure("packed")


def vessel_share(recipe: Recipe) -> Fraction:
    """Return how much of a vessel this kind of making may fill."""
    return figure("vessel_share", recipe.kind.name)


def estimate_yield(recipe: Recipe, factor: Fraction = Fraction(1)) -> Yield | None:
    """Return what a strained batch leaves to bottle.

    None for kinds that are not strained, and where a bottle's size or a fruit's weight is not said.
    """
    held = contents_of(recipe)
    if liquids_without_size(recipe) or juicy_without_weight(recipe):
        return None
    if recipe.kind.solids_left_in or not any(content.liquid for content in held):
        return None
    liquids = sum((c.volume_ml for c in held if c.liquid), Fraction(0)) * factor
    sugar = sum((c.volume_ml for c in held if c.dissolves), Fraction(0)) * factor
    solids = [c for c in held if not c.liquid and not c.dissolves and not c.stays]
    juice = sum((c.juice_g for c in solids), Fraction(0)) * factor
    kept = sum((kept_ml(content) for content in solids), Fraction(0)) * factor
    gross = liquids + sugar + juice
    lees = gross * figure("lees", recipe.kind.name)
    tasting = figure("tasting_ml")
    parts = (
        YieldPart("liquids poured in", liquids),
        YieldPart("sugar dissolved in it", sugar),
        YieldPart("juice the fresh solids give", juice),
        YieldPart("kept back by what is strained out", -kept),
        YieldPart("lees and filter", -lees),
        YieldPart("the tasting spoon", -tasting),
    )
    volume = max(gross - kept - lees - tasting, Fraction(0))
    spread = kept * figure("uptake_spread") + lees
    return Yield(max(volume - spread, Fraction(0)), volume, volume + spread, parts)


def kept_ml(content: Content) -> Fraction:
    """Return the ml of liquid a strained-out solid keeps back."""
    grams = content.grams or Fraction(0)
    staple = content.staple
    if staple and staple.soak_uptake is not None:
        return grams * staple.soak_uptake
    return grams * figure("fresh_keeps" if content.fresh else "dry_keeps")


def fill_containers(
    volume_ml: Fraction, sizes_ml: Sequence[Fraction], keep_ml: Fraction = Fraction(0)
) -> Filling:
    """Fill containers of these sizes from what is there so that the least is left.

    Of equal rests the fewest containers. By dynamic programming over the sums that can be reached:
    a few thousand at a kitchen's sizes, so no solver is called. Where sizes are mixed each counts
    as its next whole ml, so that nothing is promised that is not there. Raises ValueError without
    a size above nothing.

    >>> filling = fill_containers(Fraction(430), [Fraction(50), Fraction(30)])
    >>> [(int(size), count) for size, count in filling.counts], int(filling.left_ml)
    ([(50, 8), (30, 1)], 0)
    """
    sizes = sorted(set(sizes_ml), reverse=True)
    if not sizes or sizes[-1] <= 0:
        raise ValueError("Name at least one container with a size.")
    there = max(volume_ml - keep_ml, Fraction(0))
    if len(sizes) == 1:
        counts = [(there / sizes[0]).__floor__()]
    else:
        counts = _counts_leaving_least(there.__floor__(), [size.__ceil__() for size in sizes])
    filled = sum((size * count for size, count in zip(sizes, counts, strict=True)), Fraction(0))
    return Filling(tuple(zip(sizes, counts, strict=True)), there - filled)


def _counts_leaving_least(there_ml: int, sizes_ml: list[int]) -> list[int]:
    """Return how many of each whole size reach nearest to what is there, in the fewest."""
    grain = math.gcd(*sizes_ml)
    steps = [size // grain for size in sizes_ml]
    # far beyond a kitchen's sizes the largest takes all but the last part, which is tried in full
    large = max(-(-(there_ml // grain - _TRIED) // steps[0]), 0)
    reach = there_ml // grain - large * steps[0]
    unreached = reach + 1  # more containers than any sum could need
    fewest = [0] + [unreached] * reach
    last = [-1] * (reach + 1)
    for total in range(1, reach + 1):
        for index, step in enumerate(steps):
            if step <= total and fewest[total - step] + 1 < fewest[total]:
                fewest[total], last[total] = fewest[total - step] + 1, index
    rest = max(total for total in range(reach + 1) if fewest[total] < unreached)
    counts = [large] + [0] * (len(steps) - 1)
    while rest:
        counts[last[rest]] += 1
        rest -= steps[last[rest]]
    return counts


def headspace_inches(recipe: Recipe) -> Fraction | None:
    """Return the published headspace of a preserve's jars; None for other kinds.

    Jams and jellies a quarter of an inch; what stands in vinegar half an inch, as pickles do.
    """
    if not recipe.kind.is_("put up"):
        return None
    sour = any("vinegar" in ingredient.item.lower() for ingredient in recipe.ingredients)
    return figure("headspace_inches", "pickle" if sour else "jam")


def headspace_ml(recipe: Recipe) -> Fraction | None:
    """Return the ml a preserve's jar is left short of its brim, its neck taken as round."""
    height = headspace_inches(recipe)
    if height is None:
        return None
    width = figure("neck_inches")
    quarter_circle = Fraction(math.pi).limit_denominator(10**6) / 4
    return quarter_circle * width * width * height * Fraction(254, 100) ** 3
