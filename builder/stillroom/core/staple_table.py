"""The staples: what is known of each thing a recipe may use, and who says so.

Reads the files under staples/ that hold a `staples:` table; README.md there explains the keys.
An item of a recipe finds its staple by its words. Leaves out what follows from a staple:
safety.py, labelling.py and the computations of amounts decide that.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache, lru_cache
from typing import Any

from stillroom.core.larder.acidity import Acidity, acidity_by_tags
from stillroom.core.parts import Ingredient
from stillroom.core.problems import did_you_mean
from stillroom.core.quantities import Amount
from stillroom.core.units import read_data

FILES = (
    "spirits.yml",
    "sugars.yml",
    "fruit.yml",
    "vegetables.yml",
    "nuts_and_seeds.yml",
    "flours_and_grains.yml",
    "pulses.yml",
    "dairy_and_eggs.yml",
    "fats_and_oils.yml",
    "vinegars_and_sauces.yml",
    "spices.yml",
    "herbs_and_flowers.yml",
    "toxic_plants.yml",
    "craft.yml",
)
FIGURES = ("density", "each", "composition", "solid_density", "soak_uptake", "strength")
KEYS = frozenset(
    {"also", "section", "allergens", "may_contain", "allergen_source", "from", "vegan", "tags"}
    | {"parts", "note", "acidity", "water_activity", *FIGURES}
)
GLUTEN_CEREALS = frozenset({"wheat", "barley", "rye", "oats"})
_ANIMAL_BUT_VEGETARIAN = frozenset({"milk", "egg", "honey", "beeswax", "wool"})
_NOT_ANIMAL = frozenset({"plant", "mineral", "fungus"})
_WORD = re.compile(r"[a-zà-öø-ÿ']+")
# where the head of an item ends: what follows says how it is cut, or what it is for
_BREAK = re.compile(r"[,(;]|\b(?:for|from|with|in|to|or|into|without|on)\b")


@dataclass(frozen=True)
class Composition:
    """Grams in 100 g; None where no source gives a figure."""

    water: Fraction | None = None
    sugar: Fraction | None = None
    alcohol: Fraction | None = None
    acid: Fraction | None = None
    fat: Fraction | None = None


@dataclass(frozen=True)
class Staple:
    """One thing a recipe may use. Every figure has its source under its own name in `sources`.

    `density` in g per ml as it lies in the spoon; `solid_density` in g per ml without the air
    between pieces; `each_g` in g; `soak_uptake` in ml of liquid kept back per g; `strength` in
    % vol as usually sold; `water_activity` from 0 to 1, where it is published. `acidity` is None
    when it is not known. `animal` names where it comes from. `parts` opens a compound, in
    descending order. `vegan_note` is "" unless only the maker can tell.
    """

    name: str
    section: str
    also: tuple[str, ...] = ()
    density: Fraction | None = None
    solid_density: Fraction | None = None
    each_g: Fraction | None = None
    each_of: str = ""
    composition: Composition | None = None
    strength: Fraction | None = None
    soak_uptake: Fraction | None = None
    allergens: tuple[str, ...] = ()
    may_contain: tuple[str, ...] = ()
    animal: tuple[str, ...] = ("plant",)
    vegan_note: str = ""
    tags: frozenset[str] = frozenset()
    acidity: Acidity | None = None
    water_activity: Fraction | None = None
    parts: tuple[str, ...] = ()
    note: str = ""
    sources: Mapping[str, str] = field(default_factory=dict, hash=False)

    @property
    def gluten(self) -> str:
        """Say "contains", "may contain" or "none"."""
        if GLUTEN_CEREALS & set(self.allergens):
            return "contains"
        return "may contain" if GLUTEN_CEREALS & set(self.may_contain) else "none"

    @property
    def vegan(self) -> bool | None:
        """Whether nothing of it is from an animal; None when only the maker can tell."""
        if not set(self.animal) <= _NOT_ANIMAL:
            return False
        return None if self.vegan_note else True

    @property
    def vegetarian(self) -> bool | None:
        """Whether no animal was killed for it; None when only the maker can tell."""
        if not set(self.animal) <= _NOT_ANIMAL | _ANIMAL_BUT_VEGETARIAN:
            return False
        return None if self.vegan_note else True


@cache
def all_staples() -> dict[str, Staple]:
    """Return every staple by name; raises ValueError for a key that means nothing here."""
    found: dict[str, Staple] = {}
    for file in FILES:
        table = read_data(file)
        for name, row in table["staples"].items():
            if name in found:
                raise ValueError(f'{file}: "{name}" is already a staple.')
            found[name] = _read_staple(file, name, row, table["section"])
    return found


def _read_staple(file: str, name: str, row: dict[str, Any], section: str) -> Staple:
    for key in row:
        if key not in KEYS:
            raise ValueError(f'{file}: {name}: "{key}" is no key. {did_you_mean(key, KEYS)}')
    figures = (*FIGURES, "acidity", "water_activity")
    sources: dict[str, str] = {key: row[key]["source"] for key in figures if key in row}
    if "allergen_source" in row:
        sources["allergens"] = row["allergen_source"]
    composition = _read_composition(row.get("composition"))
    tags = frozenset(row.get("tags", ()))
    own = row["acidity"]["is"] if "acidity" in row else None
    return Staple(
        name=name,
        section=row.get("section", section),
        also=tuple(row.get("also", ())),
        density=_figure(row, "density", "g_per_ml"),
        solid_density=_figure(row, "solid_density", "g_per_ml"),
        each_g=_figure(row, "each", "g"),
        each_of=row.get("each", {}).get("of", ""),
        composition=composition,
        strength=_figure(row, "strength", "abv"),
        soak_uptake=_figure(row, "soak_uptake", "ml_per_g"),
        allergens=tuple(row.get("allergens", ())),
        may_contain=tuple(row.get("may_contain", ())),
        animal=tuple(row.get("from", ("plant",))),
        vegan_note=row.get("vegan", ""),
        tags=tags,
        acidity=own or acidity_by_tags(tags, composition.water if composition else None),
        water_activity=_figure(row, "water_activity", "aw"),
        parts=tuple(row.get("parts", ())),
        note=row.get("note", ""),
        sources=sources,
    )


def _figure(row: dict[str, Any], key: str, unit: str) -> Fraction | None:
    return Fraction(str(row[key][unit])) if key in row else None


def _read_composition(row: dict[str, Any] | None) -> Composition | None:
    if row is None:
        return None
    return Composition(
        **{key: Fraction(str(value)) for key, value in row.items() if key != "source"}
    )


_ODD_PLURALS = {
    "leaves": "leaf",
    "halves": "half",
    "loaves": "loaf",
    "chillies": "chilli",
    "chilies": "chili",
}


def _singular(word: str) -> str:
    if word in _ODD_PLURALS:
        return _ODD_PLURALS[word]
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("oes", "shes", "ches")):
        return word[:-2]
    if word.endswith("s") and not word.endswith(("ss", "us", "is")) and len(word) > 3:
        return word[:-1]
    return word


def _words(text: str) -> tuple[str, ...]:
    plain = text.lower().replace("-", " ").replace("’", "'")
    return tuple(_singular(word) for word in _WORD.findall(plain))


@cache
def _by_words() -> dict[tuple[str, ...], Staple]:
    table: dict[tuple[str, ...], Staple] = {}
    for staple in all_staples().values():
        table.setdefault(_words(staple.name), staple)
    for staple in all_staples().values():
        for other in staple.also:
            table.setdefault(_words(other), staple)
    return table


@cache
def _harmless() -> frozenset[str]:
    """Words that say how a thing is cut or bought and leave it the same thing."""
    return frozenset(
        word
        for line in read_data("plain_words.yml")
        for text in line.split()
        for word in _words(text)
    )


@cache
def _longest_name() -> int:
    return max(len(key) for key in _by_words())


def _matches(words: tuple[str, ...]) -> list[tuple[int, int, Staple]]:
    table = _by_words()
    longest = _longest_name()
    found = []
    for start in range(len(words)):
        for end in range(min(len(words), start + longest), start, -1):
            staple = table.get(words[start:end])
            if staple:
                found.append((start, end, staple))
    return found


@lru_cache(maxsize=4096)
def find_staple(item: str) -> Staple | None:
    """Return the staple an item's words name, or None when no staple is meant.

    The longest name wins, then the last in the head of the item ("heather honey vinegar" is no
    honey). A head that ends in a word no staple knows is another thing: None.

    >>> find_staple("unwaxed Seville oranges, thinly peeled").name
    'seville orange'
    >>> find_staple("almond biscuits") is None
    True
    """
    head = _words(_BREAK.split(item, maxsplit=1)[0])
    if not head:
        return None
    whole = _words(item)
    size = len(head)
    candidates = [match for match in _matches(whole) if match[0] < size]
    for _start, end, staple in sorted(
        candidates, key=lambda match: (match[1] - match[0], match[0]), reverse=True
    ):
        if all(word in _harmless() for word in head[end:]):
            return staple
    return None


@lru_cache(maxsize=4096)
def staples_named(item: str) -> tuple[Staple, ...]:
    """Return every staple the head of an item names, without overlap, for careful reading.

    "oatmeal and honey" names two. Used where missing one would hurt: allergens.
    """
    head = _words(_BREAK.split(item, maxsplit=1)[0])
    taken: set[int] = set()
    found = []
    for start, end, staple in sorted(
        _matches(head), key=lambda match: (match[1] - match[0], match[0]), reverse=True
    ):
        if not taken & set(range(start, end)):
            taken |= set(range(start, end))
            found.append(staple)
    return tuple(found)


def _counted(noun: str, item: str) -> Staple | None:
    """Read "3 stars of anise" and "2 leaves rhubarb" whole: the noun may be part of the name."""
    table = _by_words()
    return table.get(_words(f"{noun} {item}")) or table.get(_words(f"{item} {noun}"))


def name_of(ingredient: Ingredient) -> str:
    """Return what an ingredient is called: its item, with the noun when that is part of the name.

    "3 star anise" is read as three stars of "anise", and called "star anise" again here.
    """
    noun = ingredient.amount.noun if isinstance(ingredient.amount, Amount) else ""
    whole = f"{noun} {ingredient.item}"
    return whole if noun and _words(whole) in _by_words() else ingredient.item


def staple_of(ingredient: Ingredient) -> Staple | None:
    """Return an ingredient's staple: the one it names, or the one its words and note find."""
    if ingredient.staple:
        return find_staple(ingredient.staple)
    if isinstance(ingredient.amount, Amount) and ingredient.amount.noun:
        counted = _counted(ingredient.amount.noun, ingredient.item)
        if counted:
            return counted
    if ingredient.note:
        return find_staple(f"{ingredient.item}, {ingredient.note}") or find_staple(ingredient.item)
    return find_staple(ingredient.item)
