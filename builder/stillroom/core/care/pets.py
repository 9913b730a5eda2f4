"""What in a treat, or in a present, would poison an animal: the foods of pets.yml, with sources.

Leaves out for whom a treat is: its kind, or who.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache

from stillroom.core.allergens.of_foods import Known, know_recipe
from stillroom.core.larder.words import normal_form
from stillroom.core.method.who import said_for_pets
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import clause_regex


@dataclass(frozen=True)
class _Poison:
    foods: re.Pattern[str]
    but: re.Pattern[str] | None
    tags: frozenset[str]
    why: str


@cache
def _poisons() -> tuple[_Poison, ...]:
    rows = read_data("pets.yml", "care")
    return tuple(
        _Poison(
            _names(row["foods"]),
            _names(row["not"]) if row.get("not") else None,
            frozenset(row["tags"]),
            row["why"],
        )
        for row in rows
    )


# "xylitol-free" peanut butter; but sugar-free things are what xylitol is in
_FREE = clause_regex(
    r"\b(?!sugar)[\w-]+[- ]free\b|\b(?:no|not|without|free (?:from|of)) (?:added |any )?[\w-]+"
    r"(?: (?:or|nor) (?:any )?[\w-]+)*",
    re.IGNORECASE,
)


def _names(names: list[str]) -> re.Pattern[str]:
    either = "|".join(re.escape(normal_form(name)) for name in names)
    return re.compile(rf"\b(?:{either})\b")


def pet_poisons(recipe: Recipe) -> str:
    """Return what of it poisons animals and why, "" when nothing known does or it is for none."""
    if recipe.kind.eaten_by != "pets" and not (recipe.kind.edible and said_for_pets(recipe)):
        return ""
    found = dict.fromkeys(words for one in know_recipe(recipe) if (words := _poison_in(one)))
    return "; ".join(found)


def harmful_to_pets(recipe: Recipe) -> tuple[str, ...]:
    """Return the foods of people's food that poison animals, by the recipe's own words.

    Nobody means them for an animal: it is said to whoever has one.
    """
    held = (one for one in know_recipe(recipe) if recipe.kind.is_eaten and _poison_in(one))
    return tuple(dict.fromkeys(one.ingredient.item for one in held))


def _poison_in(known: Known) -> str:
    tags = {tag for food in known.staples for tag in food.tags}
    item = _FREE.sub(" ", f"{known.ingredient.item} {known.ingredient.note}")
    named = [item, *known.ingredient.parts]
    named += [name for food in known.staples for name in (food.name, *food.parts)]
    for poison in _poisons():
        plain = [
            poison.but.sub(" ", form) if poison.but else form for form in map(normal_form, named)
        ]
        harmless = poison.but is not None and poison.but.search(normal_form(item)) is not None
        if any(poison.foods.search(form) for form in plain) or (
            tags & poison.tags and not harmless
        ):
            return f"{known.ingredient.item} – {poison.why}"
    return ""
