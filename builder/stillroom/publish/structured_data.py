"""A recipe in the vocabulary of schema.org, for programs that read pages (JSON-LD 1.1).

Food and drink are a `Recipe`; a craft is a `HowTo`. Only what the recipe says or a computation
knows is stated: an unknown diet is left out, never guessed.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from stillroom.core.recipe.model import Recipe

_A_DATE: Final = re.compile(r"\d{4}(?:-\d{2}(?:-\d{2})?)?")
"""A date as the standard has it (ISO 8601); "one wet June" is none."""
MINUTES_A_DAY = 24 * 60

# schema.org RestrictedDiet members (schema.org/RestrictedDiet), for what a label can know.
DIETS = {
    "vegan": "https://schema.org/VeganDiet",
    "vegetarian": "https://schema.org/VegetarianDiet",
    "gluten free": "https://schema.org/GlutenFreeDiet",
}


@dataclass(frozen=True)
class RecipeFacts:
    """What the page already worked out: texts as shown, minutes, and what is known of the diet."""

    url: str
    picture_url: str
    yields: str
    ingredients: tuple[str, ...]
    steps: tuple[str, ...]
    hands_on_minutes: int
    total_days: int | None
    diets: tuple[str, ...] = ()


def iso_duration(minutes: int) -> str:
    """Return a duration as ISO 8601-1:2019 writes it, in days, hours and minutes.

    Months and years are not fixed lengths and weeks stand alone, so days are used.

    >>> [iso_duration(90), iso_duration(14 * 24 * 60), iso_duration(0)]
    ['PT1H30M', 'P14D', 'PT0M']
    """
    days, rest = divmod(minutes, MINUTES_A_DAY)
    hours, rest = divmod(rest, 60)
    clock = (f"{hours}H" if hours else "") + (f"{rest}M" if rest else "")
    text = (f"{days}D" if days else "") + (f"T{clock}" if clock else "")
    return f"P{text}" if text else "PT0M"


def describe_recipe(recipe: Recipe, facts: RecipeFacts) -> dict[str, Any]:
    """Return the JSON-LD object of one recipe."""
    edible = recipe.kind.edible
    things = {
        "@context": "https://schema.org",
        "@type": "Recipe" if edible else "HowTo",
        "name": recipe.title,
        "description": recipe.summary,
        "url": facts.url,
        "image": facts.picture_url,
        "author": {"@type": "Person", "name": recipe.author} if recipe.author else None,
        "datePublished": _A_DATE.fullmatch(recipe.date) and recipe.date,
        "prepTime": iso_duration(facts.hands_on_minutes),
        "totalTime": _total_time(facts),
    }
    things |= _of_food(recipe, facts) if edible else _of_craft(recipe, facts)
    return {key: value for key, value in things.items() if value}


def _total_time(facts: RecipeFacts) -> str | None:
    if facts.total_days is None:
        return None
    return iso_duration(max(facts.total_days * MINUTES_A_DAY, facts.hands_on_minutes))


def _of_food(recipe: Recipe, facts: RecipeFacts) -> Mapping[str, Any]:
    return {
        "recipeCategory": recipe.kind.spoken,
        "recipeYield": facts.yields,
        "recipeIngredient": list(facts.ingredients),
        "recipeInstructions": _steps(facts),
        "suitableForDiet": [DIETS[diet] for diet in facts.diets],
    }


def _of_craft(recipe: Recipe, facts: RecipeFacts) -> Mapping[str, Any]:
    return {
        "yield": facts.yields,
        "supply": [{"@type": "HowToSupply", "name": words} for words in facts.ingredients],
        "tool": [{"@type": "HowToTool", "name": vessel.words} for vessel in recipe.vessels],
        "step": _steps(facts),
    }


def _steps(facts: RecipeFacts) -> list[dict[str, Any]]:
    numbered: Iterable[tuple[int, str]] = enumerate(facts.steps, start=1)
    return [
        {
            "@type": "HowToStep",
            "position": number,
            "text": text,
            "url": f"{facts.url}#step-{number}",
        }
        for number, text in numbered
    ]
