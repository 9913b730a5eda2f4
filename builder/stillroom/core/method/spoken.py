"""In which language a recipe is written, and the larder that reads its foods as it means them.

"1 kg de prunes" are plums in a French recipe, whatever the language of the book that it stands in.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from functools import lru_cache

from stillroom.core.larder.shelves import Larder
from stillroom.core.method.reading import tongue_of_foods
from stillroom.core.method.tongue import is_english, tongue_of
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.model import Recipe

# near languages that no method is told by: a Danish book's recipe is no Swedish one
_NEAR = {"da": {"sv"}, "nb": {"sv"}, "nn": {"sv"}, "no": {"sv"}, "pt": {"es", "it"}}


@once_a_recipe
def tongue_of_recipe(recipe: Recipe) -> str:
    """Return the language of the method by its code, "" for English or where it is not told.

    A method of one short sentence tells it by the list above it.
    """
    own = recipe.larder.language.partition("_")[0]
    told = _told(_method_of(recipe), (one.item for one in recipe.ingredients), own)
    return "" if told in _NEAR.get(own, ()) else told


def larder_spoken(recipe: Recipe, larder: Larder) -> Larder:
    """Return what a book knows of foods, each named as in the language of this recipe."""
    return spoken_in(_method_of(recipe), (one.item for one in recipe.ingredients), larder)


def spoken_in(method: str, items: Iterable[str], larder: Larder) -> Larder:
    """Return a larder in the language of a method; as it is where none is plainly told."""
    own = larder.language.partition("_")[0]
    told = _told(method, items, own)
    if not told and own != "en" and is_english(method):
        told = "en"
    own_too = told in ("", own) or told in _NEAR.get(own, ())
    return larder if own_too else _in_language(larder, told)


def _told(method: str, items: Iterable[str], own: str) -> str:
    return tongue_of(method) or tongue_of_foods(method, items, own)


@lru_cache(maxsize=64)  # one of each language, so that what is kept of its foods is found again
def _in_language(larder: Larder, language: str) -> Larder:
    return replace(larder, language=language)


def _method_of(recipe: Recipe) -> str:
    return " ".join(step.text for step in recipe.method)
