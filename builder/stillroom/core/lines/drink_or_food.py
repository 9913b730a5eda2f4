"""What a name means by its amount: "1 TL Kümmel" a spice, "4 cl Kümmel" a spirit.

The names are drink_or_food.yml. Leaves out what a language calls it: the larder knows.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING, Any, Literal

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import convert, size_of
from stillroom.core.larder.food_reading import FoodReading
from stillroom.core.larder.shelves import staple_named
from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import normal_form, words_of
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import any_word

if TYPE_CHECKING:
    from stillroom.core.lines.ingredient import Ingredient

Told = Literal["poured", "dry", "neither"]
_POURED = frozenset({"ml", "cl", "l", "us_fl_oz", "imp_fl_oz"})
_SMALL_POUR_ML = 100


def by_its_amount(reading: FoodReading, ingredient: Ingredient) -> FoodReading:
    """Return the reading of a line whose name is a food and a drink, by how much of it is said."""
    if _is_measured_thing(reading, ingredient):
        left = tuple(word.form for word in words_of(ingredient.item))
        return replace(reading, food=None, foods=(), doubted=reading.foods, leftover=left)
    row = _row_of(reading, ingredient.item)
    if row is None:
        return reading
    told = _told(ingredient, row)
    if row.get("drink_spelt", "\n") in ingredient.item.casefold():
        told = "poured"
    elif told == "neither" and row.get("spelt", "\n") in ingredient.item:
        told = "dry"
    asked = reading.larder.language[:2] in row.get("asks", ())
    foods = _meant(row, told, known=reading.food is not None or asked)
    if not foods:
        return reading
    if reading.food is not None:  # what stands beside it stays: "poires, pochées au vin rouge"
        beside = tuple(one for one in reading.foods if one not in (reading.food, *foods))
        return replace(reading, food=foods[0], foods=(*foods, *beside))
    return replace(reading, food=foods[0], foods=foods, hinted=(), doubted=(), leftover=())


def _is_measured_thing(reading: FoodReading, ingredient: Ingredient) -> bool:
    """Whether a thing that is counted is weighed or spooned here: "100 g white buttons"."""
    amount = ingredient.amount
    measured = isinstance(amount, Amount) and size_of(amount.unit) in ("mass", "volume")
    said = words_of(ingredient.item)
    thing = reading.food is not None and "craft" in reading.food.tags
    return bool(measured and thing and said and said[-1].form in _table()["counted"])


def _meant(row: Mapping[str, Any], told: Told, known: bool) -> tuple[Staple, ...]:
    if told == "poured":
        names = [row["also"]] if "also" in row else [row["food"]] if "both" in row else []
        names = [row["drink"], *names]
    elif told == "dry" or (not known and row.get("spoon") == "food"):
        names = [row["food"]] if "food" in row else []
    else:
        names = []
    return tuple(staple_named(name) for name in names)


def _row_of(reading: FoodReading, item: str) -> Mapping[str, Any] | None:
    """Return the row of a name that the item holds and that nothing longer explained."""
    rows = _rows()
    said = [word.form for word in words_of(item)]
    named = [rows[form] for form in said if form in rows]
    if not named:
        return None
    row = named[0]
    if len(said) > 1 and reading.larder.named(normal_form(item)) == reading.food is not None:
        return None  # "100 g muscat wine", "licor de anís": a whole name is no fruit
    if reading.food is not None:
        return row if reading.food.name in (row.get("food"), row["drink"]) else None
    return row if all(word in rows for word in reading.leftover) else None


def _told(ingredient: Ingredient, row: Mapping[str, Any]) -> Told:
    """Say whether a line is poured or dry by its strength, its words and its amount."""
    if ingredient.strength is not None:
        return "poured"
    if _dry().search(f"{ingredient.item}, {ingredient.note}"):
        return "dry"
    amount = ingredient.amount
    if not isinstance(amount, Amount):
        return "neither"
    if amount.unit in _POURED:
        small = convert(amount.high, amount.unit, "ml") <= Fraction(_SMALL_POUR_ML)
        return "poured" if row.get("poured") != "cl" or amount.unit == "cl" or small else "neither"
    if size_of(amount.unit) == "volume":
        return "neither"
    if amount.noun in _table()["pours"]:
        return "poured"
    return "dry" if amount.unit or amount.noun else "neither"


@cache
def _rows() -> dict[str, Mapping[str, Any]]:
    return {name: row for row in _table()["names"] for name in row["names"]}


@cache
def _dry() -> re.Pattern[str]:
    return any_word(_table()["dry"])


@cache
def _table() -> Mapping[str, Any]:
    table: Mapping[str, Any] = read_data("drink_or_food.yml", "lines")
    return table
