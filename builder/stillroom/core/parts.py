"""The smaller parts of a recipe, each read from the plain words a cook writes.

Ingredient, what a recipe makes, vessel, container. Each `read_*` takes the words
as written (or several facts) and raises Unreadable in plain words. recipe.py puts them together.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any, Literal

from stillroom.core.larder.food_reading import FoodReading
from stillroom.core.line_ingredient import amount_of_line
from stillroom.core.making import Makes, read_making
from stillroom.core.problems import Unreadable, did_you_mean, say_written
from stillroom.core.quantities import (
    Amount,
    AnyAmount,
    Unmeasured,
    parse_amount,
    parse_leading_amount,
)
from stillroom.core.units import System, convert, size_of

Scales = Literal["with the batch", "per container", "per batch"]
SCALES: tuple[Scales, ...] = ("with the batch", "per container", "per batch")

# "5% acidity" and "70% cocoa" are no strengths
_STRENGTH = re.compile(r"(\d+(?:[.,]\d+)?)\s*%(?=\s*(?:vol|abv|alc|,|$))", re.IGNORECASE)
_WEIGHT = re.compile(r"about\s+(.+?)(\s+each|\s+apiece)?$", re.IGNORECASE)
INGREDIENT_KEYS = (
    "item",
    "amount",
    "note",
    "staple",
    "strength",
    "each",
    "scales",
    "tolerance",
    "optional",
    "group",
    "parts",
    "left in",
)


@dataclass(frozen=True)
class Ingredient:
    """One line of a recipe: how much of what, and what a computation must know of it.

    `strength` is in % vol, `each_g` the weight in grams of one counted thing, `tolerance` a
    fraction of 1, `parts` a compound's own ingredients in descending order. `left_in` is None
    when the kind decides whether it is strained out. `also` is the amount measured again. `found`
    is what the book's larder knows of the item, `found_parts` what of each part; they are filled
    in when the recipe is loaded.
    """

    item: str
    amount: AnyAmount
    note: str = ""
    staple: str = ""
    strength: Fraction | None = None
    each_g: Fraction | None = None
    scales: Scales = "with the batch"
    tolerance: Fraction | None = None
    optional: bool = False
    group: str = ""
    parts: tuple[str, ...] = ()
    left_in: bool | None = None
    also: tuple[Amount, ...] = ()
    found: FoodReading | None = field(default=None, compare=False, repr=False)
    found_parts: tuple[FoodReading, ...] = field(default=(), compare=False, repr=False)


@dataclass(frozen=True)
class Vessel:
    """What a batch is made in; the capacity is to the brim."""

    words: str
    capacity: Amount | None = None


@dataclass(frozen=True)
class Container:
    """What a batch is filled into to be given: its name, nominal size and closure."""

    name: str
    size: Amount | None = None
    closure: str = ""


def read_ingredient(value: Any, system: System, language: str = "en_GB") -> Ingredient:
    """Read an ingredient from its line or its mapping; numbers as the language writes them."""
    if isinstance(value, dict):
        return _read_ingredient_mapping(value, system)
    if not isinstance(value, str):
        raise Unreadable(
            f"{say_written(value)} is not an ingredient.", 'Write a line such as "250 g sugar".'
        )
    line = amount_of_line(value, system, language)
    weight = line.each_g
    if weight is None and isinstance(line.amount, Amount):
        weight = _weight_of_one(line.amount, line.note, system)
    return Ingredient(
        line.item,
        line.amount,
        line.note,
        strength=_strength(line.note),
        each_g=weight,
        also=line.also,
        optional=line.amount == Unmeasured("optional"),
    )


def _strength(note: str) -> Fraction | None:
    found = _STRENGTH.search(note)
    if not found:
        return None
    percent = Fraction(found[1].replace(",", "."))
    if percent > 100:
        raise Unreadable(f'"{found[0]}" is stronger than pure alcohol.', 'Write "40% vol".')
    return percent


def _weight_of_one(amount: Amount, note: str, system: System) -> Fraction | None:
    """Read "about 900 g" beside a count as the weight of all, "about 150 g each" as of one."""
    if amount.unit:
        return None
    for part in note.split(","):
        found = _WEIGHT.match(part.strip())
        weight, rest = parse_leading_amount(found[1], system) if found else (None, "")
        if found and weight and not rest and weight.unit and size_of(weight.unit) == "mass":
            grams = convert(weight.middle, weight.unit, "g")
            return grams if found[2] else grams / amount.middle
    return None


def _read_ingredient_mapping(value: dict[str, Any], system: System) -> Ingredient:
    for key in value:
        if key not in INGREDIENT_KEYS:
            raise Unreadable(
                f'An ingredient has no "{key}:".', did_you_mean(str(key), INGREDIENT_KEYS)
            )
    for key in ("item", "amount"):
        if not str(value.get(key) or "").strip():
            raise Unreadable(f'The ingredient has no "{key}".', f'Add "{key}:" to it.')
    amount = parse_amount(str(value["amount"]), system)
    scales = value.get("scales", "with the batch")
    if scales not in SCALES:
        raise Unreadable(f'"{scales}" is not a way to scale.', did_you_mean(str(scales), SCALES))
    note = str(value.get("note", ""))
    parts = value.get("parts", [])
    if not isinstance(parts, list):
        raise Unreadable('"parts" is not a list.', "Write one part a line, each after a dash.")
    return Ingredient(
        item=str(value["item"]),
        amount=amount,
        note=note,
        staple=str(value.get("staple", "")),
        strength=_strength(str(value.get("strength", note))),
        each_g=_each(value.get("each"), amount, note, system),
        scales=scales,
        tolerance=_percent(value.get("tolerance")),
        optional=_yes_or_no(value.get("optional", False), "optional"),
        group=str(value.get("group", "")),
        parts=tuple(str(part) for part in parts),
        left_in=_yes_or_no(value["left in"], "left in") if "left in" in value else None,
    )


def _each(text: Any, amount: AnyAmount, note: str, system: System) -> Fraction | None:
    if text is None:
        return _weight_of_one(amount, note, system) if isinstance(amount, Amount) else None
    weight = parse_amount(str(text), system)
    if not isinstance(weight, Amount) or size_of(weight.unit) != "mass":
        raise Unreadable(f'"{text}" is not a weight.', 'Write "each: about 130 g".')
    return convert(weight.middle, weight.unit, "g")


def _percent(text: Any) -> Fraction | None:
    if text is None:
        return None
    found = re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*%\s*", str(text))
    if not found:
        raise Unreadable(f'"{text}" is not a percentage.', 'Write "tolerance: 5%".')
    return Fraction(found[1]) / 100


def _yes_or_no(value: Any, key: str) -> bool:
    said = str(value).strip().lower()
    if said not in _YES_OR_NO:
        raise Unreadable(f'"{key}" is neither yes nor no.', f'Write "{key}: yes" or "{key}: no".')
    return _YES_OR_NO[said]


_YES_OR_NO = {"yes": True, "true": True, "on": True, "no": False, "false": False, "off": False}


def _one_line(value: Any, wanted: str) -> str:
    if not isinstance(value, str | int | float):
        raise Unreadable("This is not words on one line.", f'Write "{wanted}".')
    return str(value)


def _holds_something(amount: Amount, text: str) -> Amount:
    if amount.low <= 0:
        raise Unreadable(f'"{text}" holds nothing.', "Write a size above 0.")
    return amount


def read_makes(text: str, system: System) -> Makes:
    """Read "900 ml", "24 biscuits", "about 1.2 kg" or "6 jars of 200 ml"."""
    return read_making(_one_line(text, "900 ml"), system)


def read_vessel(text: str, system: System) -> Vessel:
    """Read "1.5 l clip-top jar"; a vessel without a size is only named."""
    text = _one_line(text, "1.5 l clip-top jar")
    amount, _rest = parse_leading_amount(text, system)
    sized = amount is not None and amount.unit and size_of(amount.unit) == "volume"
    return Vessel(text, _holds_something(amount, text) if amount and sized else None)


def read_container(text: str, system: System) -> Container:
    """Read "bottle, 100 ml, cork" or "100 ml bottle"."""
    name, size, closure = "", None, []
    text = _one_line(text, "bottle, 100 ml")
    for part in re.split(r",|:\s", text):
        amount, rest = parse_leading_amount(part, system)
        if amount and amount.unit and size is None:
            size = _holds_something(amount, text)
            name = name or rest
        elif not name:
            name = part.strip()
        else:
            closure.append(part.strip())
    if not name:
        raise Unreadable(f'"{text}" does not name a container.', 'Write "bottle, 100 ml".')
    return Container(name, size, ", ".join(closure))
