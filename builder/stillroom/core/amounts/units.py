"""The units a cook may write, with their exact sizes.

Reads staples/units.yml. Conversions are exact fractions. Leaves out how an amount is written
in a recipe: quantities.py reads that.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Literal, get_args

from stillroom.core.words.data_files import read_data
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

System = Literal["metric", "us", "imperial"]
_SYSTEMS_SAID = {"usa": "us", "american": "us", "british": "imperial"}
Size = Literal["volume", "mass", "length", "count"]

# a metric measure is said in decimals, "1.5 m"; every other one in a kitchen's fractions, "1½ cups"
DECIMAL_UNITS = frozenset({"ml", "cl", "dl", "l", "mg", "g", "kg", "mm", "cm", "m"})
MARKET_WEIGHTS = ("pfund", "ons", "etto", "hg", "dag")  # read where they are written, never offered


@dataclass(frozen=True)
class Unit:
    """One unit: its id, what it measures, its size in ml, g or mm, and how it is shown."""

    name: str
    size: Size
    system: System
    in_base: Fraction
    shown: str
    many: str
    words: tuple[str, ...]


def system_said(written: object) -> object:
    """Return the system that a word means, in any capitals; what means none is left as it is.

    >>> system_said("US"), system_said("Imperial"), system_said("cups")
    ('us', 'imperial', 'cups')
    """
    if not isinstance(written, str):
        return written
    word = written.strip(" .").replace(".", "").lower()
    word = _SYSTEMS_SAID.get(word, word)
    return word if word in get_args(System) else written


@cache
def all_units() -> dict[str, Unit]:
    """Return every unit by id, sized in ml, g or mm."""
    found = {}
    for name, row in read_data("units.yml")["units"].items():
        shown = row.get("shown", row["words"][0])
        found[name] = Unit(
            name=name,
            size=row["size"],
            system=row["system"],
            in_base=Fraction(str(row["is"])),
            shown=shown,
            many=row.get("many", shown),
            words=tuple(row["words"]),
        )
    return found


@cache
def unit_words(system: System) -> dict[str, str]:
    """Return what may be written in a recipe of this system, word to unit id."""
    words = dict(offered_words(system))
    for spoken, meaning in read_data("units.yml")["elsewhere"].items():
        words.update(dict.fromkeys(spoken.split(", "), meaning))
    for name in MARKET_WEIGHTS:
        words.update(dict.fromkeys(all_units()[name].words, name))
    return words


@cache
def offered_words(system: System) -> dict[str, str]:
    """Return the words of units that may be offered in place of a misspelt one."""
    ours = (unit for unit in all_units().values() if unit.name not in MARKET_WEIGHTS)
    words = {word: unit.name for unit in ours for word in unit.words}
    for spoken, meaning in read_data("units.yml")["reads"].items():
        for word in spoken.split(", "):
            words[word] = meaning[system]
    return words


@cache
def plain_nouns() -> dict[str, tuple[str, str]]:
    """Return the nouns that are counted whatever stands behind them, each form to (one, many)."""
    rows = read_data("units.yml")["counted"]
    return {form: (row[0], row[1]) for row in rows for form in row}


@cache
def counted_nouns() -> dict[str, tuple[str, str]]:
    """Return the nouns of counted things, each form to (one, many)."""
    rows = [row["nouns"] for row in read_data("units.yml")["counted_of"]]
    return {**{form: (row[0], row[1]) for row in rows for form in row}, **plain_nouns()}


@cache
def nouns_before() -> dict[str, re.Pattern[str]]:
    """Return of the nouns that are counted before some words only, by form, those words."""
    rows = read_data("units.yml")["counted_of"]
    return {
        form: late_regex(rf"\s+{row['before']}", re.IGNORECASE)
        for row in rows
        for form in row["nouns"]
    }


@cache
def nouns_of_several() -> frozenset[str]:
    """Return the nouns, as one, that stand for several of a thing or for a part of it."""
    words: str = read_data("units.yml")["not_one"]
    return frozenset(word.strip() for word in words.split(","))


def find_unit(word: str, system: System) -> str:
    """Return the id of a unit as written, or raise Unreadable with the nearest word.

    >>> find_unit("pint", "us"), find_unit("pint", "metric")
    ('us_pint', 'imp_pint')
    """
    words = unit_words(system)
    bare = word.rstrip(".")
    for candidate in (bare, bare.lower()):
        if candidate in words:
            return words[candidate]
    mend = (
        did_you_mean(word, offered_words(system))
        or 'Write "g", "ml", "tsp", "cup" or another unit.'
    )
    raise Unreadable(f'"{word}" is not a unit.', mend)


def size_of(unit: str) -> Size:
    """Return what a unit measures; the empty unit counts things."""
    return all_units()[unit].size if unit else "count"


def base_size(unit: str) -> Fraction:
    """Return the size of a unit in ml, g or mm; counted things are 1.

    >>> base_size("tbsp"), base_size("")
    (Fraction(15, 1), Fraction(1, 1))
    """
    return all_units()[unit].in_base if unit else Fraction(1)


def convert(value: Fraction, unit: str, to_unit: str) -> Fraction:
    """Convert exactly between two units of one size; raises Unreadable when sizes differ.

    >>> convert(Fraction(1), "us_gallon", "ml")
    Fraction(473176473, 125000)
    """
    if unit == to_unit:
        return value
    if size_of(unit) != size_of(to_unit) or not unit:
        raise Unreadable(
            f'"{unit or "a count"}" does not measure the same thing as "{to_unit or "a count"}".'
        )
    units = all_units()
    return value * units[unit].in_base / units[to_unit].in_base
