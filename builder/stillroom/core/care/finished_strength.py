"""How strong the finished thing is for the rules, with what only its method pours in.

Leaves out how a strength is worked out: strength.py.
"""

from __future__ import annotations

from fractions import Fraction

from stillroom.core.batch.strength import strength_of
from stillroom.core.method.foods_in_method import foods_in_method
from stillroom.core.recipe.model import Recipe


def finished_percent(recipe: Recipe) -> Fraction | None:
    """Return the finished strength in % vol to two places, None where it is not known."""
    strength = strength_of(_with_foods_of_method(recipe))
    return Fraction(str(round(strength.abv_percent, 2))) if strength else None


def _with_foods_of_method(recipe: Recipe) -> Recipe:
    """Return the recipe with what only its method measures among its ingredients."""
    told = tuple(one.ingredient for one in foods_in_method(recipe) if one.measured)
    if not told:
        return recipe
    return recipe.model_copy(update={"ingredients": (*recipe.ingredients, *told)})
