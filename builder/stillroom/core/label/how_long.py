"""How long a recipe keeps, as it is asked while a recipe is read.

Most recipes say so themselves. Only where one does not, or where the card is asked for, are the
rules of care and the published times needed: keeping.py, which is loaded then.
"""

from __future__ import annotations

from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.keeps import Keeping
from stillroom.core.recipe.kind_dates import waits_within_keeping
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.spans import Span
from stillroom.core.when.stages import Stage


def known_keeping(recipe: Recipe) -> Keeping:
    """Return the recipe's keeping; where it says nothing, its method's word, else the book's own.

    The book itself says nothing of a craft or of what animals eat, nor of what holds a food it
    does not know: that stays open.
    """
    if recipe.keeps.unopened is not None:
        return recipe.keeps
    if not recipe.kind.edible:
        from stillroom.core.method.keeping_said import keeping_of_method  # late: few recipes ask

        return keeping_of_method(recipe) or recipe.keeps
    from stillroom.core.label.keeping import keeping_of_guidance  # late: with it comes all of care

    return keeping_of_guidance(recipe)


def known_stages(recipe: Recipe) -> tuple[Stage, ...]:
    """Return the timeline to go by of a recipe of which is known how long it keeps."""
    if recipe.kind.is_eaten:
        return waits_within_keeping(recipe)
    from stillroom.core.care.soap import cured_stages  # late: few recipes ask

    return cured_stages(recipe)


@once_a_recipe
def planned_span(recipe: Recipe) -> Span | None:
    """Return how long it is planned to keep: nothing is given beyond the date on its card."""
    if recipe.keeps.unopened is None or not recipe.kind.edible:
        return recipe.keeps.unopened
    from stillroom.core.label.keeping import span_on_card  # late: with it comes all of care

    return span_on_card(recipe)
