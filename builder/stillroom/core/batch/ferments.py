"""How much alcohol a ferment can come to, and when nobody can say: yeast, brines, other cultures.

Uses contents.py and musts.py. Leaves out what spirit is poured in: strength.py.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from stillroom.core.batch.contents import Content
from stillroom.core.batch.estimates import Estimate
from stillroom.core.batch.musts import MOST_YEAST_MAKES, must_of
from stillroom.core.batch.spirit_density import WATER_DENSITY
from stillroom.core.lines.staple_table import staple_of
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.stage_dates import usable_after_days
from stillroom.core.words.said import Said

_say = Said("stillroom.core.batch", "strength")

_SOON_DAYS = 14  # what is drunk sooner is not worked to the end: common practice
_SYRUPY = 65  # Brix: above it nothing ferments, and the rule of musts.py does not speak of it
# what may be sweet or turn sweet, where nobody published how sweet
_SWEET = frozenset({"beverage", "syrup", "sugar", "fruit", "grain", "malt"})
_LITTLE = Fraction(1, 10)  # of the must's weight: less of it moves no half percent


def yeast_works(recipe: Recipe) -> bool:
    """Tell whether sugar turns into alcohol as in wine: in no brine, milk or vinegar.

    Without yeast among what goes in, wild yeast is taken to do it.
    """
    tags: frozenset[str] = frozenset()
    for ingredient in recipe.ingredients:
        staple = staple_of(ingredient)
        tags |= staple.tags if staple else frozenset()
    if "yeast" in tags:
        return True
    brined = "salt" in tags and bool(tags & {"vegetable", "low-acid-vegetable"})
    return not (
        brined or turns_sour(recipe) or tags & {"live-culture", "dairy", "pulse", "cooked-pulse"}
    )


def turns_sour(recipe: Recipe) -> bool:
    """Tell whether a ferment is to be vinegar."""
    return "vinegar" in f"{recipe.title} {recipe.kind.called}".lower()


def must_in(recipe: Recipe, held: Sequence[Content]) -> tuple[Estimate, str] | None:
    """Return the alcohol that a ferment can come to, and under what proviso; None for none."""
    sugar = sum(float(content.grams_of("sugar")) for content in held)
    mass = _mass(held)
    if not yeast_works(recipe) or not sugar or not mass or 100 * sugar / mass > _SYRUPY:
        return None
    must = must_of(sugar, mass)
    if must.value > MOST_YEAST_MAKES:
        most = float(MOST_YEAST_MAKES)
        return replace(must, value=most, low=most * 0.75, high=most), _say("yeast_gives_up")
    return must, _say("to_the_end") if _drunk_soon(recipe) else ""


def sugar_not_known(recipe: Recipe, held: Sequence[Content]) -> tuple[str, ...]:
    """Return what makes a must as sweet as nobody knows: juice, fruit or grain without figures."""
    if not yeast_works(recipe):
        return ()
    mass = Fraction(_mass(held)).limit_denominator(1000)
    return tuple(
        content.ingredient.item
        for content in held
        if content.staple
        and (content.staple.composition is None or "grain" in content.staple.tags)
        and content.staple.tags & _SWEET
        and _weight(content) > _LITTLE * mass
    )


def _weight(content: Content) -> Fraction:
    return content.grams or content.volume_ml


def _mass(held: Sequence[Content]) -> float:
    return sum(
        float(content.grams or Fraction(0)) or float(content.volume_ml) * WATER_DENSITY
        for content in held
        if content.liquid or content.dissolves
    )


def _drunk_soon(recipe: Recipe) -> bool:
    return usable_after_days(recipe.stages) < _SOON_DAYS
