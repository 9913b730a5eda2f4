"""How much nitrite and nitrate a cure brings to the kilo of meat, and what laws allow of each.

Reckoned as inspectors do: to the meat as it goes in, and in a brine to the meat and its water. What
a curing salt holds is curing.yml. Leaves out the salt of vegetables: brine.py.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import convert, size_of
from stillroom.core.care.safety_facts import Thing
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import clause_regex

_CURED = frozenset({"meat", "fish", "shellfish"})


@dataclass(frozen=True)
class Cure:
    """Milligrams of sodium or potassium nitrite and nitrate to the kilo.

    `known` is False where the weight of a cure, or of what it cures, or what it holds, is not.
    """

    nitrite_mg: Fraction
    nitrate_mg: Fraction
    known: bool


def cure_of(recipe: Recipe, things: Sequence[Thing]) -> Cure:
    """Return what the curing salts of a recipe come to, to the kilo of the meat they cure."""
    rows = [(_grams(recipe, one), _holds(one)) for one in things if "curing-salt" in one.tags]
    wet = [one for one in things if "water" in one.tags and not one.drained]
    meat = [one for one in things if one.tags & _CURED]
    cured = [one.grams for one in (*wet, *meat)]
    if not meat or any(grams is None for grams in cured):
        return Cure(Fraction(0), Fraction(0), known=False)
    kilos = sum((grams or Fraction(0) for grams in cured), Fraction(0)) / 1000

    def to_the_kilo(salt: str) -> Fraction:
        held = [grams * Fraction(str(row[salt])) / 100 for grams, row in rows if grams and row]
        return sum(held, Fraction(0)) * 1000 / kilos

    sure = all(grams is not None and row is not None for grams, row in rows)
    return Cure(to_the_kilo("nitrite"), to_the_kilo("nitrate"), known=sure)


def _grams(recipe: Recipe, cure: Thing) -> Fraction | None:
    """Return what a cure weighs; of a spoonful about, since no two brands lie alike."""
    if cure.grams is not None or cure.place >= len(recipe.ingredients):
        return cure.grams
    amount = recipe.ingredients[cure.place].amount
    if not isinstance(amount, Amount) or size_of(amount.unit) != "volume":
        return None
    ml = convert(amount.middle, amount.unit, "ml")
    return ml * Fraction(str(_table()["spoon_g_per_ml"]))


def cures_over(which: str, recipe: Recipe, things: Sequence[Thing]) -> tuple[Thing, ...]:
    """Return the cures that pass a limit of curing.yml, "home" or "any"; none where none does.

    What is known of them is enough, whatever else is not.
    """
    cure, limit = cure_of(recipe, things), _table()["limits"][which]
    over = cure.nitrite_mg > limit["nitrite"] or cure.nitrate_mg > limit["nitrate"]
    return tuple(one for one in things if over and "curing-salt" in one.tags)


def say_cure(recipe: Recipe, things: Sequence[Thing]) -> str:
    """Say what the cure comes to, or that it is not known."""
    cure = cure_of(recipe, things)
    told = [
        f"{_round(mg):,} mg of {name}"
        for name, mg in (("nitrite", cure.nitrite_mg), ("nitrate", cure.nitrate_mg))
        if mg
    ]
    if not cure.known or not told:
        return "How much nitrite or nitrate comes to each kilo could not be reckoned."
    return f"Here it is about {' and '.join(told)} to the kilo."


def _round(mg: Fraction) -> int:
    """Return milligrams as coarse as a spoon of salt is known."""
    step = 100 if mg >= 1000 else 10 if mg >= 100 else 5
    return round(mg / step) * step


def _holds(thing: Thing) -> Mapping[str, Any] | None:
    """Return what a curing salt holds, by its line first; None where it is not known."""
    words = f"{thing.words} {thing.staple.name if thing.staple else ''}"
    for row in _table()["holds"]:
        if clause_regex(row["words"], re.IGNORECASE).search(words):
            return row if "nitrite" in row else None
    return None


@cache
def _table() -> Mapping[str, Any]:
    table: Mapping[str, Any] = read_data("curing.yml", "care")
    return table
