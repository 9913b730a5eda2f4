"""Facts that a recipe's words tell, each with the words it stands on, asked for by their names.

Leaves out facts of single foods, which the things of safety_facts.py carry as tags.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from types import MappingProxyType

from stillroom.core.care.claims import contradicted_claim
from stillroom.core.care.hung import hung_to_dry
from stillroom.core.care.oil_left_warm import (
    stands_warm,
    stands_warm_in_honey,
    stands_warm_in_oil,
)
from stillroom.core.care.pets import fruit_for_birds, pet_poisons
from stillroom.core.care.soap import lye_left_over, lye_not_weighed, stands_too_short
from stillroom.core.care.title_only import named_in_title_only
from stillroom.core.method.distilling import strengthens_alcohol
from stillroom.core.method.resugaring import sugars_again
from stillroom.core.method.who import said_for_children
from stillroom.core.method.working import may_make_alcohol, works_by_itself
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex

Tags = frozenset[str]
# what is said to ferment makes alcohol, whatever it is made of
_FERMENTS = clause_regex(
    r"\b(?:ferment\w*|mash(?:ed)? (?:and|bill)|vergär\w*|vergor\w*|gären|gärung|maische"
    r"|vinacce|marc de|moût|mosto|vergist\w*|gisting)\b",
    re.IGNORECASE,
)


def _distils(recipe: Recipe, tags: Tags) -> str:
    """Look for it where there is alcohol, or where a ferment makes some."""
    holds = tags & {"alcohol", "yeast"} or recipe.kind.is_("living")
    ferments = holds or any(_FERMENTS.search(step.text) for step in recipe.method)
    return strengthens_alcohol(recipe) if ferments else ""


def _resugars(recipe: Recipe, tags: Tags) -> str:
    lives = recipe.kind.is_("living") and tags & {"yeast", "live-culture"}
    return sugars_again(recipe) if lives or works_by_itself(recipe, tags) else ""


def _contradicts(recipe: Recipe, _: Tags) -> str:
    return contradicted_claim(recipe) if recipe.kind.is_eaten else ""


def _poisons_pets(recipe: Recipe, _: Tags) -> str:
    return pet_poisons(recipe)


def _lye_left_over(recipe: Recipe, tags: Tags) -> str:
    return lye_left_over(recipe) if "lye" in tags else ""


def _lye_not_weighed(recipe: Recipe, tags: Tags) -> str:
    return lye_not_weighed(recipe) if "lye" in tags else ""


def _fruit_for_birds(recipe: Recipe, _: Tags) -> str:
    return fruit_for_birds(recipe)


def _title_only(recipe: Recipe, tags: Tags) -> str:
    return named_in_title_only(recipe, tags) if recipe.kind.edible else ""


def _stands_too_short(recipe: Recipe, tags: Tags) -> str:
    return stands_too_short(recipe) if "lye" in tags else ""


def _warm_in_oil(recipe: Recipe, _: Tags) -> str:
    return stands_warm_in_oil(recipe)


def _warm_in_honey(recipe: Recipe, _: Tags) -> str:
    return stands_warm_in_honey(recipe)


def _warm(recipe: Recipe, _: Tags) -> str:
    return stands_warm(recipe)


def _for_children(recipe: Recipe, _: Tags) -> str:
    return said_for_children(recipe)


def _hung(recipe: Recipe, _: Tags) -> str:
    return hung_to_dry(recipe)


TOLD: Mapping[str, Callable[[Recipe, Tags], str]] = MappingProxyType(
    {
        "hung": _hung,
        "distils": _distils,
        "sugars_again": _resugars,
        "works_by_itself": works_by_itself,
        "may_make_alcohol": may_make_alcohol,
        "contradicts_itself": _contradicts,
        "poisons_pets": _poisons_pets,
        "for_children": _for_children,
        "fruit_for_birds": _fruit_for_birds,
        "lye_left_over": _lye_left_over,
        "lye_not_weighed": _lye_not_weighed,
        "title_only": _title_only,
        "stands_warm": _warm,
        "stands_warm_in_oil": _warm_in_oil,
        "stands_warm_in_honey": _warm_in_honey,
        "soap_stands_too_short": _stands_too_short,
    }
)
