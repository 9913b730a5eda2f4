"""Round an exact amount to what a kitchen can measure, and say it as a cook would.

The steps are data (staples/kitchen_rounding.yml), read by the browser as well; this module only
climbs the ladder. Never rounds to nothing. Leaves out what an amount should be: scaling.py.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache, lru_cache
from typing import Any, Literal

from stillroom.core.amounts.quantities import decimal_sign, show_decimal, show_number
from stillroom.core.amounts.units import DECIMAL_UNITS, System, all_units
from stillroom.core.words.data_files import read_data
from stillroom.core.words.kept_apart import kept_apart

Ladder = Literal["volume", "spoon", "mass", "length"]
_HALF = Fraction(1, 2)


@dataclass(frozen=True)
class Part:
    """A unit an amount is spoken in, and the fractions of it that are spoken."""

    unit: str
    fractions: tuple[Fraction, ...]


@dataclass(frozen=True)
class Rung:
    """From `begins` (in ml, g or mm) on: steps from easy to fine, all in that base."""

    begins: Fraction
    steps: tuple[Fraction, ...]
    also: tuple[Fraction, ...]
    parts: tuple[Part, ...]
    between: str = " + "
    finer: tuple[Fraction, ...] = ()


@dataclass(frozen=True)
class Rounded:
    """A kitchen amount: its size in ml, g or mm (or a count), its words and the step used."""

    value: Fraction
    text: str
    step: Fraction


@cache
def rounding_data() -> dict[str, Any]:
    """Return the rounding file as it was written."""
    found: dict[str, Any] = read_data("kitchen_rounding.yml")
    return found


@cache
def ladder(system: System, name: Ladder) -> tuple[Rung, ...]:
    """Return the rungs of one ladder, sizes resolved to exact ml, g or mm."""
    return tuple(_read_rung(row) for row in rounding_data()["ladders"][system][name])


def _read_rung(row: dict[str, Any]) -> Rung:
    number, unit = str(row["from"]).split()
    base = all_units()[row["unit"]].in_base
    first = all_units()[row["parts"][0]["unit"]].in_base
    parts = tuple(
        Part(part["unit"], tuple(Fraction(str(share)) for share in part["of"]))
        for part in row["parts"]
    )
    return Rung(
        begins=Fraction(number) * all_units()[unit].in_base,
        steps=tuple(Fraction(str(step)) * base for step in row["steps"]),
        also=tuple(Fraction(str(share)) * first for share in row.get("also", [])),
        parts=parts,
        between=row.get("between", " + "),
        finer=tuple(Fraction(str(step)) * base for step in row.get("finer", [])),
    )


def nearest_multiple(value: Fraction, step: Fraction) -> Fraction:
    """Return the multiple of a step nearest to a value, halves up, and never nothing.

    >>> nearest_multiple(Fraction(7, 2), Fraction(1)), nearest_multiple(Fraction(1, 9), Fraction(1))
    (Fraction(4, 1), Fraction(1, 1))
    """
    steps = 2 * value.numerator * step.denominator
    one = value.denominator * step.numerator
    return max((steps + one) // (2 * one), 1) * step


@kept_apart(decimal_sign, 8192)  # a book weighs out the same amounts again and again
def round_measure(
    value: Fraction, system: System, name: Ladder, near: Fraction, tight: bool = False
) -> Rounded:
    """Round ml, g or mm to the easiest step that comes within `near` (a share of the value).

    When none comes so near, the finest step of the rung is used; `tight` opens the finer ones kept
    for ratios that matter. Raises ValueError for nothing.

    >>> round_measure(Fraction(667), "metric", "volume", Fraction(1, 50)).text
    '675 ml'
    >>> round_measure(Fraction(1500), "metric", "mass", Fraction(1, 50)).text
    '1.5 kg'
    >>> round_measure(Fraction(19), "metric", "spoon", Fraction(1, 50)).text
    '1 tbsp + ¾ tsp'
    """
    if value <= 0:
        raise ValueError("There is nothing to round.")
    rungs = ladder(system, name)
    rung = next(rung for rung in reversed(rungs) if rung.begins <= value)
    best, used = value, rung.steps[-1]
    for step in (*rung.steps, *(rung.finer if tight else ())):
        choices = [nearest_multiple(value, size) for size in (step, *rung.also)]
        best, used = min(choices, key=lambda choice: abs(choice - value)), step
        if abs(best - value) <= near * value:
            break
    return Rounded(best, say(best, rungs), used)


def say(value: Fraction, rungs: tuple[Rung, ...]) -> str:
    """Say an amount in the units of the rung it stands on: "1 tbsp + ¾ tsp"."""
    rung = next(rung for rung in reversed(rungs) if rung.begins <= value)
    words = []
    rest = value
    for part in rung.parts:
        size = all_units()[part.unit].in_base
        number = rest / size
        last = part is rung.parts[-1]
        if not last and not any((number / share).denominator == 1 for share in part.fractions):
            number = (number / part.fractions[0]).__floor__() * part.fractions[0]
        if number:
            words.append(say_unit(number, part.unit))
            rest -= number * size
        if not rest:
            break
    return rung.between.join(words)


def say_unit(number: Fraction, unit: str) -> str:
    """Say a number of a unit: decimals for metric, kitchen fractions for the rest.

    >>> say_unit(Fraction(3, 2), "us_cup"), say_unit(Fraction(3, 2), "l")
    ('1½ cups', '1.5 l')
    """
    shown = show_decimal(number) if unit in DECIMAL_UNITS else show_number(number)
    known = all_units()[unit]
    return f"{shown} {known.many if number > 1 else known.shown}"


def round_count(
    value: Fraction, low: Fraction, high: Fraction, halves: bool = False
) -> tuple[Rounded, bool]:
    """Round a count to the nearest whole (or half) inside its window, and tell whether one is.

    Outside the window it is the nearest whole to `value`, but never none.

    >>> rounded, holds = round_count(Fraction(13, 4), Fraction(5, 2), Fraction(4))
    >>> rounded.text, holds
    ('3', True)
    >>> round_count(Fraction(1, 3), Fraction(3, 10), Fraction(11, 30))[1]
    False
    """
    step = _HALF if halves else Fraction(1)
    nearest = nearest_multiple(value, step)
    inside = [
        choice for choice in (nearest, nearest - step, nearest + step) if low <= choice <= high
    ]
    chosen = inside[0] if inside else nearest
    return Rounded(chosen, show_number(chosen), step), bool(inside)


@lru_cache(maxsize=4096)  # each line of a book asks, and most say the same few foods
def tight_class(item: str, strength: Fraction | None) -> str:
    """Return which ratio that matters an item is ("salt", "spirit", ...), or "".

    >>> tight_class("fine sea salt", None), tight_class("vodka", Fraction(40))
    ('salt', 'spirit')
    """
    words = item.lower()
    for name, marks in rounding_data()["tight"].items():
        if any(f" {mark} " in f" {words} " for mark in marks):
            return str(name)
    if strength is not None and strength >= rounding_data()["spirit_from"]:
        return "spirit"
    return ""


def near_of(tight: str) -> Fraction:
    """Return how near, as a share, the rounded amount must come to one of such a ratio.

    >>> near_of(""), near_of("salt"), near_of("lye")
    (Fraction(1, 50), Fraction(1, 100), Fraction(1, 400))
    """
    exact = tight in rounding_data()["exact"]
    return share_named("near", "exact" if exact else "tight" if tight else "plain")


def binds_all(tight: str) -> bool:
    """Whether all that is weighed beside such a thing is weighed as exactly: the fats of a soap."""
    return bool(tight == rounding_data()["with_all_it_meets"])


def allows_halves(item: str, noun: str = "", packed: bool = False) -> bool:
    """Whether a cook would take half of such a thing: half a lemon, but never half an egg.

    Of a noun only a pack whose weight is known is halved, and a stick that is marked in spoons.
    """
    stems = {word.rstrip("s") for word in item.lower().split()}
    if noun == "stick":
        return any(name in stems for name in rounding_data()["half_sticks"])
    if noun:
        return packed and noun in rounding_data()["half_packs"]
    return any(name in stems for name in rounding_data()["halves"])


def halves_below() -> int:
    """Return the count from which nobody halves a lemon any more."""
    return int(rounding_data()["halves_below"])


@cache
def spoon_share() -> Fraction:
    """Return the share of an amount within which no spoon is levelled."""
    return Fraction(str(rounding_data()["spoon"]))


def most_times() -> int:
    """Return how many times a recipe may be made at most."""
    return int(rounding_data()["most_times"])


def least_part() -> int:
    """Return the number of parts a recipe may be divided into at most."""
    return int(rounding_data()["least_part"])


@cache
def share_named(group: str, name: str) -> Fraction:
    """Return one of the file's shares, for example ``share_named("near", "tight")``.

    >>> share_named("tolerance", "plain")
    Fraction(1, 20)
    """
    return Fraction(str(rounding_data()[group][name]))
