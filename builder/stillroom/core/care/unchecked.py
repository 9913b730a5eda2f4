"""The third answer: what of a recipe could not be checked, and because of what.

Leaves out who asks: the page, the papers and the pack all say the same sentences.
"""

from __future__ import annotations

from fractions import Fraction

from stillroom.core.allergens.of_foods import know_recipe
from stillroom.core.batch.contents import contents_by_place
from stillroom.core.method.keeping_said import kept_at
from stillroom.core.recipe.model import Recipe

# less of it than a tenth changes no jar
_COUNTS_FROM = Fraction(1, 10)
# neither sour nor food, and what is refused anyhow
_NO_MATTER = frozenset({"water", "toxic", "grave", "alcohol", "additive"})


def unknown_foods_of(recipe: Recipe) -> tuple[str, ...]:
    """Return the words of a recipe that no food explains, each once."""
    return tuple(dict.fromkeys(word for one in know_recipe(recipe) for word in one.unknown))


def acidity_not_known(recipe: Recipe) -> tuple[str, ...]:
    """Return the foods of a jar for the shelf that are known, but not how sour they are."""
    if not recipe.kind.is_("put up") or kept_at(recipe) != "room":
        return ()
    rows = list(zip(know_recipe(recipe), contents_by_place(recipe), strict=False))
    weights = [content.grams if content else None for _, content in rows]
    whole = sum((grams for grams in weights if grams), Fraction(0))
    return tuple(
        food.name
        for (line, _), grams in zip(rows, weights, strict=True)
        for food in line.staples
        if food.acidity is None and not food.tags & _NO_MATTER
        if grams is not None and grams >= whole * _COUNTS_FROM
    )


def could_not_check(recipe: Recipe) -> tuple[str, ...]:
    """Return one sentence for each thing that is not known, in the order of the list."""
    names = unknown_foods_of(recipe)
    if not recipe.kind.is_eaten:
        return tuple(f"“{name}” is not known: its dangers could not be checked." for name in names)
    unknown = tuple(
        f"“{name}” is not known: its allergens and dangers could not be checked." for name in names
    )
    return unknown + tuple(
        f"How sour “{name}” is, the book does not know: a closed jar of it could not be checked."
        for name in acidity_not_known(recipe)
    )
