"""What a line weighs for the rules, where no source gives its weight: never lighter than it is.

A rule that asks whether acid is enough must not be misled by a vegetable taken too light, nor by
vinegar taken too heavy. Leaves out the weights that are shown to anybody: contents.py.
"""

from __future__ import annotations

import re
from fractions import Fraction

from stillroom.core.amounts.units import convert, size_of
from stillroom.core.batch.contents import middle_of
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import late_regex

# the heaviest cup of cut vegetables in USDA SR is 0.75 g per ml (cooked beans 177 g, corn 154,
# onions 160, peppers 149, carrots 128, cucumber 104 to 133, cabbage 89); mashed pumpkin has 245 g
_CUT_G_PER_ML = Fraction(3, 4)
_MASHED_G_PER_ML = Fraction(105, 100)
_MASHED = late_regex(r"\b(?:pur[eé]e[ds]?|mash\w*|pulp\w*|paste|crushed|cooked down)\b", re.I)
# USDA SR 11670: one hot pepper 45 g; a jalapeño is less
_ONE_CHILLI_G = 45
_ONE_DRIED_CHILLI_G = 2
_SOLID = frozenset({"vegetable", "fruit", "cooked-pulse", "mushroom", "low-acid"})


def weigh_for_rules(
    ingredient: Ingredient, tags: frozenset[str], recipe: Recipe
) -> Fraction | None:
    """Return the grams of a line that no source weighs, on the safe side; None when it cannot."""
    measured = middle_of(ingredient, recipe)
    if measured is None:
        return None
    value, unit = measured
    if size_of(unit) == "count":
        one = _ONE_DRIED_CHILLI_G if "spice" in tags else _ONE_CHILLI_G
        return value * one if "chilli" in tags and not unit else None
    if size_of(unit) != "volume":
        return None
    if "acid" in tags:  # vinegar or juice as water: a little less than it is
        return convert(value, unit, "ml")
    if tags & _SOLID:
        mashed = _MASHED.search(f"{ingredient.item} {ingredient.note}")
        return convert(value, unit, "ml") * (_MASHED_G_PER_ML if mashed else _CUT_G_PER_ML)
    if "spice" in tags:  # USDA SR: ground spices 0.3 to 0.5 g per ml
        return convert(value, unit, "ml") / 2
    return None
