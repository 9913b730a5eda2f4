"""What does not grow with the batch: times, oven heat, pans; and what grows otherwise.

Oven settings are a table (staples/ovens.yml). Pans compare by area or by volume. A preserve takes
longer to boil down in a bigger batch, by how much nobody can say from the recipe: so a test for set
is named rather than a false time. Leaves out amounts: scaling.py.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.bottling import overflow_ml
from stillroom.core.quantities import show_decimal
from stillroom.core.recipe import Recipe
from stillroom.core.rounding import round_measure, share_named
from stillroom.core.scaling import ScaledBatch
from stillroom.core.units import convert, read_data


@dataclass(frozen=True)
class OvenHeat:
    """One oven setting in °C, °F and gas mark; the mark is "" outside the table."""

    celsius: int
    fahrenheit: int
    gas_mark: str
    source: str

    @property
    def text(self) -> str:
        """All three: "160 °C, 325 °F, gas mark 3"."""
        gas = f", gas mark {self.gas_mark}" if self.gas_mark else ""
        return f"{self.celsius} °C, {self.fahrenheit} °F{gas}"


def read_oven(celsius: Fraction) -> OvenHeat:
    """Return an oven setting in all three scales.

    Fahrenheit is exact (F = 1.8 C + 32, NIST SP 811) and then rounded to the 25 that a dial shows;
    below 100 °C to the 5. The gas mark is the one within 5 °C.

    >>> read_oven(Fraction(160)).text
    '160 °C, 325 °F, gas mark 3'
    """
    table = read_data("ovens.yml")
    exact = celsius * Fraction(9, 5) + 32
    step = 25 if celsius >= 100 else 5
    near = [row for row in table["gas_marks"] if abs(row["c"] - celsius) <= 5]
    mark = min(near, key=lambda row: abs(row["c"] - celsius))["mark"] if near else ""
    dial = int((exact / step + Fraction(1, 2)).__floor__() * step)
    return OvenHeat(int(celsius), dial, mark, table["source"])


def round_pan_cm2(across_cm: Fraction) -> Fraction:
    """Return the area of a round pan."""
    return Fraction(math.pi).limit_denominator(10**6) / 4 * across_cm**2


def pan_factor(own_cm2: Fraction, other_cm2: Fraction) -> Fraction:
    """Return by how much a recipe grows to stand as high in another pan (areas in cm²).

    >>> pan_factor(Fraction(20 * 20), Fraction(30 * 20))
    Fraction(3, 2)
    """
    if own_cm2 <= 0 or other_cm2 <= 0:
        raise ValueError("A pan has some area.")
    return other_cm2 / own_cm2


def notes_on_scaling(recipe: Recipe, batch: ScaledBatch) -> tuple[str, ...]:
    """Say what a cook must know beyond the amounts when a batch is not as written."""
    if batch.factor == 1:
        return ()
    notes = ["Times and temperatures stay as written."]
    kind = recipe.kind.name
    if kind in ("preserve", "confection"):
        notes = [
            "Temperatures stay as written. A "
            + ("larger batch boils down more slowly" if batch.factor > 1 else "smaller one faster")
            + ": go by the test for set, not by the clock (common practice, no published source)."
        ]
    elif kind == "bake":
        notes.append(f"Bake in {_trays(batch.factor)}; a fuller oven bakes a little more slowly.")
    overflow = vessel_note(recipe, batch.factor)
    return (*notes, overflow) if overflow else tuple(notes)


def _trays(factor: Fraction) -> str:
    count = max(factor.__ceil__(), 1)
    return f"as many as {count} times the trays" if count > 1 else "one go"


def vessel_note(recipe: Recipe, factor: Fraction) -> str:
    """Say when the recipe's largest vessel would overflow, and how large a one is wanted."""
    sizes = [
        convert(vessel.capacity.middle, vessel.capacity.unit, "ml")
        for vessel in recipe.vessels
        if vessel.capacity
    ]
    if not sizes or not overflow_ml(recipe, max(sizes), factor):
        return ""
    largest = max(sizes)
    too_much = overflow_ml(recipe, largest, factor)
    wanted = (largest * (1 + too_much / largest) / 100).__ceil__() * 100
    near = share_named("near", "plain")
    size = round_measure(Fraction(wanted), "metric", "volume", near).text
    return (
        f"It would not fit the {show_decimal(largest / 1000)} l vessel: take about {size} in all, "
        "or two vessels."
    )
