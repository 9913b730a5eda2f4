"""How old a thing is when it may be used and is best: a fact of its page and its card."""

from __future__ import annotations

from stillroom.core.recipe.kind_dates import ferments_untimed
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.timeline_words import describe_ages, say_age_name


def ages_of(recipe: Recipe) -> tuple[tuple[str, str, str], ...]:
    """Return how old it is when it may be used and is best, as facts; or that it is not known."""
    if ferments_untimed(recipe):
        return (("usable", say_age_name("usable"), "not known"),)
    return describe_ages(recipe.stages)
