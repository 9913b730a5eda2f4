"""What in a treat, or in a present, would poison an animal: the foods of pets.yml, with sources.

Leaves out for whom a treat is: its kind, or who.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
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
    birds: str = ""  # "may" have it, or "only" they must not


@cache
def _poisons() -> tuple[_Poison, ...]:
    rows = read_data("pets.yml", "care")
    return tuple(
        _Poison(
            _names(row["foods"]),
            _names(row["not"]) if row.get("not") else None,
            frozenset(row["tags"]),
            row["why"],
            row.get("birds", ""),
        )
        for row in rows
    )


_WILD_BIRDS = clause_regex(
    r"\b(?:(?:wild |garden )?birds?|robins?|blackbirds?|tits|suet (?:cakes?|balls?|blocks?)"
    r"|fat ?balls?|vogel\w*|meisen\w*|oiseaux|uccelli\w*|pájaros|vogels)\b",
    re.IGNORECASE,
)
_OTHER_ANIMALS = clause_regex(
    r"\b(?:dogs?|pupp\w+|cats?|kittens?|parrots?|budgie\w*|budgerigar\w*|canar\w+|cage\w*|hens?"
    r"|chickens?|ducks?|pets?|rabbits?|hamsters?|hunde?|katzen?|chiens?|chats?)\b",
    re.IGNORECASE,
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
    spared = "may" if _is_for_birds(recipe) else "only"
    poisons = [one for one in _poisons() if one.birds != spared]
    known = know_recipe(recipe)
    return "; ".join(dict.fromkeys(filter(None, (_poison_in(one, poisons) for one in known))))


def fruit_for_birds(recipe: Recipe) -> str:
    """Return what wild birds may have of it and other animals may not, "" for none."""
    if not _is_for_birds(recipe):
        return ""
    poisons = [one for one in _poisons() if one.birds == "may"]
    items = (one.ingredient.item for one in know_recipe(recipe) if _poison_in(one, poisons))
    return ", ".join(dict.fromkeys(items))


def _is_for_birds(recipe: Recipe) -> bool:
    """Whether it is for wild birds by its kind's word or its title, and names no other animal."""
    said = f"{recipe.kind.called} {recipe.title}"
    meant = recipe.kind.eaten_by == "pets" and bool(_WILD_BIRDS.search(said))
    return meant and not _OTHER_ANIMALS.search(f"{said} {recipe.summary}")


def harmful_to_pets(recipe: Recipe) -> tuple[str, ...]:
    """Return the foods of people's food that poison animals, by the recipe's own words.

    Nobody means them for an animal: it is said to whoever has one.
    """
    poisons = [one for one in _poisons() if one.birds != "only"]
    held = (one for one in know_recipe(recipe) if recipe.kind.is_eaten and _poison_in(one, poisons))
    return tuple(dict.fromkeys(one.ingredient.item for one in held))


def _poison_in(known: Known, poisons: Iterable[_Poison]) -> str:
    tags = {tag for food in known.staples for tag in food.tags}
    item = _FREE.sub(" ", f"{known.ingredient.item} {known.ingredient.note}")
    named = [item, *known.ingredient.parts]
    named += [name for food in known.staples for name in (food.name, *food.parts)]
    for poison in poisons:
        plain = [
            poison.but.sub(" ", form) if poison.but else form for form in map(normal_form, named)
        ]
        harmless = poison.but is not None and poison.but.search(normal_form(item)) is not None
        if any(poison.foods.search(form) for form in plain) or (
            tags & poison.tags and not harmless
        ):
            return f"{known.ingredient.item} – {poison.why}"
    return ""
