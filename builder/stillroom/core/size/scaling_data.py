"""What the browser needs to scale as Python does: a recipe's lines, and the book's shared tables.

Fractions are text ("3/2"); keys that hold their default are left out, so a page stays light. Both
are made from what Python itself reads, never written by hand.
"""

from __future__ import annotations

from dataclasses import fields
from fractions import Fraction
from typing import Any

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.rounding import (
    halves_below,
    ladder,
    least_part,
    most_times,
    rounding_data,
    share_named,
)
from stillroom.core.amounts.tins import Tin
from stillroom.core.amounts.units import (
    DECIMAL_UNITS,
    MARKET_WEIGHTS,
    all_units,
    plain_nouns,
)
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.finished_data import finished_data, finished_tables
from stillroom.core.size.scalable import ScaleLine, scalable_of
from stillroom.core.size.typed_sizes import typed_sizes
from stillroom.core.size.what_stays import growth_notes
from stillroom.core.words.data_files import read_data
from stillroom.core.words.plurals import plural_tables

_SYSTEMS = ("metric", "us", "imperial")
_DEFAULTS = tuple((field.name, field.default) for field in fields(ScaleLine))
"""What a line holds where nothing else is said; `MISSING`, which nothing equals, where it must."""


def scaling_data(recipe: Recipe) -> dict[str, Any]:
    """Return one recipe for the browser's engine; raises Unreadable as scalable_of does."""
    scalable = scalable_of(recipe)
    found = {
        field.name: _plain(getattr(scalable, field.name))
        for field in fields(scalable)
        if field.name != "lines"
    }
    found["notes"] = {
        "larger": list(growth_notes(scalable.kind, larger=True)),
        "smaller": list(growth_notes(scalable.kind, larger=False)),
    }
    found["finished"] = finished_data(recipe)
    found["lines"] = [_line(line) for line in scalable.lines]
    return found


def shared_data(country: str = "GB") -> dict[str, Any]:
    """Return units, nouns and the ladders of kitchen rounding, the same for the whole book."""
    return {
        "units": {
            name: {
                "size": unit.size,
                "base": str(unit.in_base),
                "shown": unit.shown,
                "many": unit.many,
                "decimal": name in DECIMAL_UNITS,
                "words": list(unit.words),
            }
            for name, unit in all_units().items()
        },
        "reads": read_data("units.yml")["reads"],
        "elsewhere": read_data("units.yml")["elsewhere"],
        "never_offered": list(MARKET_WEIGHTS),
        "counted": {form: list(pair) for form, pair in plain_nouns().items()},
        "one_and_many": plural_tables(),
        "near": {"plain": str(share_named("near", "plain"))},
        "blind": {name: str(share) for name, share in rounding_data()["blind"].items()},
        "typed_sizes": typed_sizes(),
        "most_times": most_times(),
        "least_part": least_part(),
        "boiled_at_once": rounding_data()["boiled_at_once"],
        "halves_below": halves_below(),
        "finished": finished_tables(country),
        "ladders": {system: _ladders(system) for system in _SYSTEMS},
    }


def _ladders(system: Any) -> dict[str, Any]:
    names: tuple[Any, ...] = ("volume", "spoon", "mass", "length")
    return {
        name: [
            {
                "begins": str(rung.begins),
                "steps": [str(step) for step in rung.steps],
                "also": [str(size) for size in rung.also],
                "parts": [
                    {"unit": part.unit, "of": [str(share) for share in part.fractions]}
                    for part in rung.parts
                ],
                "between": rung.between,
                "finer": [str(step) for step in rung.finer],
            }
            for rung in ladder(system, name)
        ]
        for name in names
    }


def _line(line: ScaleLine) -> dict[str, Any]:
    found = {}
    for name, default in _DEFAULTS:
        value = getattr(line, name)
        # most hold the very default: to compare fractions takes as long as to write them
        if value is not default and value != default:
            found[name] = _plain(value)
    return found


def _plain(value: Any) -> Any:
    if isinstance(value, Fraction):
        return str(value)
    if isinstance(value, Amount):
        return {
            "low": str(value.low),
            "high": str(value.high),
            "unit": value.unit,
            "about": value.about,
        }
    if isinstance(value, Tin):
        along = None if value.along is None else str(value.along)
        across = str(value.across)
        return {"words": value.words, "unit": value.unit, "across": across, "along": along}
    return value
