"""All foods that a clause of a method names, also in a language that the larder does not speak.

There at least the allergens are found, by their words: allergen_words.py. Leaves out whether what
is named goes in: foods_in_method.py.
"""

from __future__ import annotations

from collections.abc import Iterator

from stillroom.core.larder.allergen_words import places_told
from stillroom.core.larder.index import load_index
from stillroom.core.larder.staple import Staple
from stillroom.core.method.reading import named_in
from stillroom.core.method.spoken import tongue_of_recipe
from stillroom.core.method.tongue import speaks_no_english
from stillroom.core.method.words import no_food_in
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.model import Recipe


def all_named(clause: str, recipe: Recipe) -> Iterator[tuple[int, int, Staple]]:
    """Yield every food that a clause names; in a strange language allergens at least."""
    places = []
    for start, end, food in named_in(clause, recipe.larder, tongue_of_recipe(recipe)):
        places.append((start, end))
        yield start, end, food
    if not _is_strange(recipe):
        return
    others = no_food_in(recipe.larder.language.partition("_")[0])
    for start, end, _, food in places_told(clause, recipe.larder):
        known = any(start < stop and begin < end for begin, stop in places)
        if not known and clause[start:end].casefold() not in others:
            yield start, end, food


@once_a_recipe
def _is_strange(recipe: Recipe) -> bool:
    """Whether a method is in a language in which the larder knows few foods or none."""
    if tongue_of_recipe(recipe):
        return False
    own = recipe.larder.language.partition("_")[0]
    method = " ".join(step.text for step in recipe.method)
    return speaks_no_english(method) if own == "en" else own not in load_index()["foreign"]
