"""What the words of a line still tell of danger where no food explains the whole of it.

"Venison strips" are unknown, and meat all the same. Leaves out their allergens: allergen_words.py.
"""

from __future__ import annotations

from stillroom.core.care.acid import low_acid_tag
from stillroom.core.larder.staple import Staple
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.recipe.model import Recipe

_TELLS_IN_UNKNOWN = frozenset(
    {"meat", "fish", "shellfish", "garlic", "mushroom", "wild-mushroom", "low-acid-vegetable"}
    | {"foraged", "look-alike", "raw-elder", "cannabis", "liver", "raw-cassava", "curing-salt"}
    | {"lye", "quinine", "thujone", "pyrrolizidine", "medicine-herb", "liquorice", "grapefruit"}
    | {"remedy-herb", "liver-harm", "cyanide-kernel"}
    | {"honey", "xylitol", "caffeine-powder", "star-anise", "seaweed", "essential-oil"}
)


def seen_in_unknown(ingredient: Ingredient) -> frozenset[str]:
    """Return the graver tags of the foods that the words of an unknown line name."""
    return (
        frozenset(tag for food in food_of(ingredient).named for tag in food.tags)
        & _TELLS_IN_UNKNOWN
    )


def low_acid_of(
    recipe: Recipe, ingredient: Ingredient, staple: Staple | None, tags: frozenset[str]
) -> frozenset[str]:
    """Return the tag of low acid; of a line that is not known, what its words name counts."""
    found = low_acid_tag(staple, tags, recipe.kind.name)
    if staple is None:
        for food in food_of(ingredient).named:
            found |= low_acid_tag(food, food.tags, recipe.kind.name)
    return found
