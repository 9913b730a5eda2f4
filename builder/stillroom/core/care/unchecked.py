"""The third answer: what of a recipe could not be checked, and because of what.

Leaves out who asks: the page, the papers and the pack all say the same sentences.
"""

from __future__ import annotations

from stillroom.core.allergens import know_recipe
from stillroom.core.recipe import Recipe


def unknown_foods_of(recipe: Recipe) -> tuple[str, ...]:
    """Return the words of a recipe that no food explains, each once."""
    return tuple(dict.fromkeys(word for one in know_recipe(recipe) for word in one.unknown))


def could_not_check(recipe: Recipe) -> tuple[str, ...]:
    """Return one sentence for each thing that is not known, in the order of the list."""
    names = unknown_foods_of(recipe)
    if not recipe.kind.is_eaten:
        return tuple(f"“{name}” is not known: its dangers could not be checked." for name in names)
    return tuple(
        f"“{name}” is not known: its allergens and dangers could not be checked." for name in names
    )
