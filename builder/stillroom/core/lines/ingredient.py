"""An ingredient of a recipe, read from its line or from several facts.

Raises Unreadable in plain words. What a recipe makes and is kept in: holders.py. recipe.py puts
them together.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any, Literal

from stillroom.core.amounts.quantities import Amount, AnyAmount, Unmeasured
from stillroom.core.amounts.units import System, convert, size_of
from stillroom.core.larder.food_reading import FoodReading
from stillroom.core.lines.doubts import spirit_words
from stillroom.core.lines.ingredient_amount import amount_of_line
from stillroom.core.lines.sizes import (
    Sized,
    comma_parts,
    read_amount,
    read_leading,
)
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable, say_written

Scales = Literal["with the batch", "per container", "per batch"]
SCALES: tuple[Scales, ...] = ("with the batch", "per container", "per batch")

# "5% acidity" and "70% cocoa" are no strengths; a line's own reader says "% vol" where one is meant
# and in "1e9%" stand no nine
_PERCENT = r"(?<![\d./⁄])(?<!\d,)(?<!\d[a-zA-Z])(?<!\d[eE][+-])(\d+(?:[.,]\d+)?)\s*%"
_STRENGTH = late_regex(rf"{_PERCENT}(?=\s*(?:vol|abv|alc))", re.IGNORECASE)
_BARE_STRENGTH = late_regex(rf"{_PERCENT}(?=\s*(?:vol|abv|alc|,|$))", re.IGNORECASE)
# what weighs: "about 900 g" all of them, "400 g each" and "je 400 g" one
_ABOUT = (
    r"about|approx\.?|approximately|around|roughly|c\.?|ca\.?|circa|some|just (?:over|under)|nearly"
    r"|etwa|ungefähr|rund|zusammen|insgesamt|environ|soit|d['’]environ|à peu près|ongeveer|samen"
    r"|unos|unas|aproximadamente|en total|alrededor de|in tutto|cirka|ungefär|omkring|totalt|około"
)
_WEIGHS = (
    r"(?:together |altogether |in total |in all )?(?:weighing|weigh(?:s|ed)?|(?:total )?weight"
    r"|to weigh|with a weight of|pesant|pesando|che pesa|que pesen?|met een gewicht van)"
    r"(?: (?:in total|in all|together|altogether|of|of about))?"
)
_WEIGHT = late_regex(
    r"(?P<one>(?:each|per piece|jeweils|chacune?|ciascun[oa]|cada un[oa]|elk)\s+)?"
    rf"(?:(?P<weighs>{_WEIGHS})\s+)?(?P<about>(?:{_ABOUT})\s+)?"
    r"(?P<of>(?:of|à|je|zu(?:\s+je)?|de|da|van|di)\s+)?(?P<size>[\d½¼¾⅓⅔⅛].*?)"
    r"(?P<each>\s+(?:each|apiece|per\s+\w+|jeweils|chacune?|l['’]un[oa]|ciascun[oa]|cadauno"
    r"|cada\s+un[oa]|elk|per\s+stuk|styck|vardera))?"
    r"(?P<total>\s+(?:(?:in|as a) total|total(?: weight)?|in all|all together|altogether|together"
    r"|combined|insgesamt|zusammen|au total|en tout|en total|in tutto|in totale|samen|in totaal"
    r"|totalt|sammanlagt|no total|razem))?[. ]*$",
    re.IGNORECASE,
)
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
    when the kind decides whether it is strained out. `also` is the amount measured again, `pack`
    the weight of one as it was written, before its food: "2 x 400 g tins". `found`
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
    pack: Amount | None = None
    found: FoodReading | None = field(default=None, compare=False, repr=False)
    found_parts: tuple[FoodReading, ...] = field(default=(), compare=False, repr=False)


def read_ingredient(value: Any, system: System, language: str = "en_GB") -> Ingredient:
    """Read an ingredient from its line or its mapping; numbers as the language writes them."""
    if isinstance(value, dict):
        return _read_ingredient_mapping(value, system, language)
    if not isinstance(value, str):
        raise Unreadable(
            f"{say_written(value)} is not an ingredient.", 'Write a line such as "250 g sugar".'
        )
    line = amount_of_line(value, system, language)
    weight = line.each_g
    if weight is None and isinstance(line.amount, Amount):
        weight = _weight_of_one(line.amount, line.note, system, language)
    _weighs_something(weight, value)
    return Ingredient(
        line.item,
        line.amount,
        line.note,
        strength=_strength(line.note),
        each_g=weight,
        also=line.also,
        pack=line.pack,
        optional=line.amount == Unmeasured("optional"),
    )


def _strength(note: str, bare: bool = False) -> Fraction | None:
    found = (_BARE_STRENGTH if bare else _STRENGTH).search(note)
    if not found:
        return None
    percent = Fraction(found[1].replace(",", "."))
    if percent > 100:
        raise Unreadable(f'"{found[0]}" is stronger than pure alcohol.', 'Write "40% vol".')
    return percent


def _weight_of_one(amount: Amount, note: str, system: System, language: str) -> Fraction | None:
    """Read "about 900 g" beside a count as the weight of all, "150 g each" as that of one.

    A weight of which neither is said counts beside one alone: "1 tin condensed milk (397 g)".
    """
    if amount.unit:
        return None
    for part in comma_parts(note):
        found = _WEIGHT.match(part)
        if found is None:
            continue
        of_all = any(found[sign] for sign in ("about", "total", "weighs"))
        of_one = any(found[sign] for sign in ("of", "each", "one")) and not found["total"]
        if not (of_all or of_one or amount.high == 1):
            continue
        said = read_leading(found["size"], system, language)
        if said and not said.rest and said.each is None and size_of(said.amount.unit) == "mass":
            grams = convert(said.amount.middle, said.amount.unit, "g")
            return grams if of_one else grams / amount.middle
    return None


def _read_ingredient_mapping(value: dict[str, Any], system: System, language: str) -> Ingredient:
    for key in value:
        if key not in INGREDIENT_KEYS:
            raise Unreadable(
                f'An ingredient has no "{key}:".', did_you_mean(str(key), INGREDIENT_KEYS)
            )
    value = {key: said for key, said in value.items() if said is not None}  # empty says nothing
    for key in ("item", "amount", "note", "scales", "each"):
        if isinstance(value.get(key), dict | list):
            raise Unreadable(f'"{key}:" of an ingredient holds a list.', "Write it in a few words.")
    for key in ("item", "amount"):
        if not str(value.get(key) or "").strip():
            raise Unreadable(f'The ingredient has no "{key}".', f'Add "{key}:" to it.')
    said = read_amount(str(value["amount"]), system, language)
    amount = said.amount if isinstance(said, Sized) else said
    scales = value.get("scales", "with the batch")
    if scales not in SCALES:
        raise Unreadable(f'"{scales}" is not a way to scale.', did_you_mean(str(scales), SCALES))
    note = str(value.get("note", ""))
    each = _each(value.get("each"), said, note, system, language)
    _weighs_something(each, str(value["item"]))
    parts = value.get("parts", [])
    if not isinstance(parts, list):
        raise Unreadable('"parts" is not a list.', "Write one part a line, each after a dash.")
    return Ingredient(
        item=str(value["item"]),
        amount=amount,
        note=note,
        staple=str(value.get("staple", "")),
        strength=_written_strength(value, note),
        each_g=each,
        also=said.also if isinstance(said, Sized) else (),
        pack=said.each if isinstance(said, Sized) and value.get("each") is None else None,
        scales=scales,
        tolerance=_percent(value.get("tolerance")),
        optional=_yes_or_no(value.get("optional", False), "optional"),
        group=str(value.get("group", "")),
        parts=tuple(str(part) for part in parts),
        left_in=_yes_or_no(value["left in"], "left in") if "left in" in value else None,
    )


def _written_strength(value: dict[str, Any], note: str) -> Fraction | None:
    """Return the strength that an ingredient states, or a spirit's in its note."""
    if "strength" in value:
        said = _strength(str(value["strength"]), bare=True)
        if said is None:
            raise Unreadable(f'"{value["strength"]}" is not a strength.', 'Write "40% vol".')
        return said
    return _strength(note, bare=bool(spirit_words().search(str(value["item"]))))


def _weighs_something(weight: Fraction | None, said: str) -> None:
    if weight is not None and weight <= 0:
        raise Unreadable(f'"{said}": one of it weighs nothing.', "Write a weight above 0.")


def _each(
    text: Any, said: Sized | AnyAmount, note: str, system: System, language: str
) -> Fraction | None:
    pack = said.each if isinstance(said, Sized) else None
    if text is None and pack is not None:
        if size_of(pack.unit) != "mass":
            raise Unreadable(
                "A pack that is not weighed cannot be reckoned with.",
                'Write the whole amount: "660 ml" rather than "2 x 330 ml".',
            )
        return convert(pack.middle, pack.unit, "g")
    if text is None:
        whole = said.amount if isinstance(said, Sized) else None
        return _weight_of_one(whole, note, system, language) if whole else None
    weight = read_amount(str(text), system, language)
    if not isinstance(weight, Sized) or size_of(weight.amount.unit) != "mass":
        raise Unreadable(f'"{text}" is not a weight.', 'Write "each: about 130 g".')
    return convert(weight.amount.middle, weight.amount.unit, "g")


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
