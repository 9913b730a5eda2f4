"""What a cook writes of a food in larder.yml, read from plain words."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Any

from stillroom.core.amounts.quantities import Amount, parse_amount
from stillroom.core.amounts.summed import refuse_too_much
from stillroom.core.amounts.units import System, convert, size_of
from stillroom.core.larder.acidity import ACIDITIES, Acidity
from stillroom.core.words.data_files import read_data
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.problems import Unreadable, say_written

KNOWN_ORIGINS = (
    "plant", "mineral", "fungus", "milk", "egg", "honey", "beeswax", "wool", "gelatine", "fish",
    "meat", "calf rennet",
)  # fmt: skip
_NOTHING = frozenset({"nothing", "none", "no allergens"})
_OTHER_WORDS = {
    "egg": "eggs", "peanuts": "peanut", "soy": "soya", "soybeans": "soya", "almonds": "almond",
    "hazelnuts": "hazelnut", "walnuts": "walnut", "cashews": "cashew", "pecans": "pecan",
    "brazil nuts": "brazil-nut", "pistachios": "pistachio", "sulfites": "sulphites",
    "tree nuts": "nuts", "shellfish": "crustaceans", "crustacean": "crustaceans",
    "mollusc": "molluscs", "mollusks": "molluscs", "oat": "oats", "dairy": "milk",
}  # fmt: skip


def read_allergens(written: Any) -> tuple[str, ...]:
    """Return the ids of the allergens that are named; () for "nothing"; raises Unreadable."""
    if written is None:
        return ()
    rows = written if isinstance(written, list) else str(written).split(",")
    words = [str(row).strip().lower() for row in rows if str(row).strip()]
    if len(words) == 1 and words[0] in _NOTHING:
        return ()
    return tuple(_allergen(word) for word in words)


def _allergen(word: str) -> str:
    table = read_data("allergens.yml")
    says = {row["say"].lower(): name for name, row in table.items()}
    if word == "gluten":
        mend = 'Write "wheat", "barley", "rye" or "oats".'
        raise Unreadable("Gluten is of one cereal or another, and a label names it.", mend)
    for name in (word, word.replace(" ", "-"), _OTHER_WORDS.get(word, ""), says.get(word, "")):
        if name in table:
            return name
    known = sorted({*says, "nothing"})
    raise Unreadable(f'"{word}" is no allergen that a label must name.', did_you_mean(word, known))


def read_acidity(written: Any) -> Acidity:
    """Return acid, borderline, low or dry; raises Unreadable."""
    word = str(written).strip().lower().removesuffix(" in acid").removesuffix(" acid")
    for acidity in ACIDITIES:
        if word == acidity:
            return acidity
    mend = 'Write "acid", "borderline", "low" or "dry".'
    raise Unreadable(f"{say_written(written)} does not say how acid it is.", mend)


def read_density(text: str, system: System = "metric") -> Fraction:
    """Return g per ml of "1.1 g per ml" or "1 cup weighs 130 g"; raises Unreadable.

    >>> read_density("1 litre weighs 900 g")
    Fraction(9, 10)
    """
    mend = 'Write "1 cup weighs 130 g" or "1.05 g per ml".'
    found = re.fullmatch(r"\s*(.+?)\s+(weighs|per)\s+(.+?)\s*", text)
    if not found:
        raise Unreadable(f'"{text}" does not say what a measure of it weighs.', mend)
    first, second = found[1], found[3]
    if found[2] == "per":
        first, second = (second if second[:1].isdigit() else f"1 {second}"), first
    volume, weight = parse_amount(first, system), parse_amount(second, system)
    good = (
        isinstance(volume, Amount)
        and isinstance(weight, Amount)
        and size_of(volume.unit) == "volume"
        and size_of(weight.unit) == "mass"
    )
    if not good or not isinstance(volume, Amount) or not isinstance(weight, Amount):
        raise Unreadable(f'"{text}" does not say what a measure of it weighs.', mend)
    density = convert(weight.middle, weight.unit, "g") / convert(volume.middle, volume.unit, "ml")
    if not Fraction(1, 50) < density < 25:
        raise Unreadable(f'"{text}" is lighter or heavier than any food.', mend)
    return density


def read_figure(text: str) -> Fraction:
    """Return the grams of "12 g" or "1/2 oz"; raises Unreadable."""
    weight = parse_amount(text)
    if isinstance(weight, Amount) and size_of(weight.unit) == "mass" and weight.low > 0:
        refuse_too_much(weight, text, "anything weighs")
        return convert(weight.middle, weight.unit, "g")
    raise Unreadable(f'"{text}" is not a weight.', 'Write "12 g".')


def read_strength(text: str) -> Fraction:
    """Return the % vol of "20% vol"; raises Unreadable."""
    found = re.fullmatch(r"\s*(\d+(?:[.,]\d+)?)\s*%(?:\s*(?:vol|abv))?\.?\s*", text)
    strength = Fraction(found[1].replace(",", ".")) if found else None
    if strength is None or strength > 100:
        raise Unreadable(f'"{text}" is not a strength.', 'Write "20% vol".')
    return strength
