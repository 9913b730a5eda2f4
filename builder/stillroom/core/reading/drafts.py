"""What can be read of a recipe that has problems: enough to say in one run what else is wrong.

A draft is never published or shown. It stands only where every ingredient, the method and all
that safety hangs on did read, so that a misspelt kind does not hide that something is dangerous.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from stillroom.core.amounts.units import System
from stillroom.core.recipe.kinds import kind_to_try
from stillroom.core.recipe.model import Recipe

# facts on which no rule of safety hangs, and what stands in for those that every recipe has
_APART: Final = frozenset(
    {
        "summary",
        "picture",
        "picture_focus",
        "picture_alt",
        "season",
        "author",
        "date",
        "was",
        "card",
    }
)
_IN_PLACE: Final = {"title": "It", "makes": "1 l"}


def draft_recipe(
    data: Mapping[str, Any], errors: list[ErrorDetails], doubtful: frozenset[str], system: System
) -> Recipe | None:
    """Return a recipe from the facts that did read; None where too little did."""
    wrong = {str(error["loc"][0]) for error in errors if error["loc"]} | doubtful
    if wrong - _APART - {*_IN_PLACE, "kind"} or not data.get("method"):
        return None
    refused = {str(error["loc"][0]) for error in errors if error["loc"]}
    kept = {key: value for key, value in data.items() if key not in refused}
    if "kind" in wrong and (kind := kind_to_try(str(data.get("kind", "")))):
        kept["kind"] = kind.name
    for key, value in _IN_PLACE.items():
        kept.setdefault(key, value)
    try:
        context = {"system": system, "language": data.get("language", "en_GB")}
        return Recipe.model_validate(kept, context=context)
    except ValidationError:  # what is wrong with it was told from the errors themselves
        return None
