"""What does not grow with the batch: times, oven heat, pans; and what grows otherwise.

Oven settings are a table (staples/ovens.yml). Tins compare by area (tins.py), vessels by volume. A
preserve takes longer to boil down in a bigger batch, by how much nobody can say from the recipe: so
a test for set is named rather than a false time. Leaves out amounts: scaling.py.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.amounts.rounding import rounding_data
from stillroom.core.amounts.tins import tin_note
from stillroom.core.size.scalable import Scalable
from stillroom.core.words.data_files import read_data
from stillroom.core.words.said import Said

_say = Said("stillroom.core.size", "size")

_VESSELS_TOLD = 4  # nobody has more of one size: then the litres must do


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
    below 100 °C to the 5. The gas mark is the one within 5 °C, else the two it lies between.

    >>> read_oven(Fraction(160)).text
    '160 °C, 325 °F, gas mark 3'
    """
    table = read_data("ovens.yml")
    exact = celsius * Fraction(9, 5) + 32
    step = 25 if celsius >= 100 else 5
    dial = int((exact / step + Fraction(1, 2)).__floor__() * step)
    return OvenHeat(int(celsius), dial, _gas_mark(table["gas_marks"], celsius), table["source"])


def _gas_mark(rows: Sequence[Mapping[str, Any]], celsius: Fraction) -> str:
    """Return the mark within 5 °C, "3–4" for an oven between two, "" outside the table."""
    near = min(rows, key=lambda row: abs(row["c"] - celsius))
    if abs(near["c"] - celsius) <= 5:
        return str(near["mark"])
    cooler = [row["mark"] for row in rows if row["c"] < celsius]
    hotter = [row["mark"] for row in rows if row["c"] > celsius]
    return f"{cooler[-1]}–{hotter[0]}" if cooler and hotter else ""


def notes_on_scaling(recipe: Scalable, factor: Fraction, own_tin: bool = False) -> tuple[str, ...]:
    """Say what a cook must know beyond the amounts when a batch is not as written.

    With `own_tin` the cook has named the tin, and is told of no other.
    """
    if factor == 1:
        return ()
    of_vessels = notes_on_vessels(recipe, factor)
    if own_tin:
        of_vessels = tuple(note for note in of_vessels if note != tin_note(recipe.tin, factor))
    return (*growth_notes(recipe.kind, larger=factor > 1), *of_vessels)


def notes_on_vessels(recipe: Scalable, factor: Fraction) -> tuple[str, ...]:
    """Say those of `notes_on_scaling` that are of the recipe's own vessel or tin."""
    if factor == 1:
        return ()
    return tuple(
        note for note in (vessel_note(recipe, factor), tin_note(recipe.tin, factor)) if note
    )


def growth_notes(kind: str, larger: bool) -> tuple[str, ...]:
    """Say what a larger or a smaller batch of a kind changes and what it leaves alone."""
    if kind in ("preserve", "confection"):
        pace = (
            "larger batch boils down more slowly" if larger else "smaller batch boils down faster"
        )
        return (
            f"Temperatures stay as written. A {pace}: go by the test for set, not by the clock "
            "(common practice, no published source).",
        )
    if kind == "bake" and larger:
        return (
            "Times and temperatures stay as written for one tray; more trays at once bake a little "
            "more slowly (common practice, no published source).",
        )
    return ("Times and temperatures stay as written.",)


def vessel_note(recipe: Scalable, factor: Fraction) -> str:
    """Say when the recipe's largest vessel would overflow, and how large a one is wanted.

    Of what is made in batches each has the vessel to itself: boiling_warnings says how many.
    """
    wanted = _filled_ml(recipe, factor)
    if recipe.vessel_ml is None or wanted <= recipe.vessel_ml or _is_boiled_apart(recipe, factor):
        return ""
    litres = Fraction((wanted / 100).__ceil__(), 10)
    vessels = (wanted / recipe.vessel_ml).__ceil__()
    own, wants = show_decimal(recipe.vessel_ml / 1000), show_decimal(litres, 1)
    words = "vessels" if vessels <= _VESSELS_TOLD else "vessel"
    return _say(words, own=own, litres=wants, count=vessels)


def _filled_ml(recipe: Scalable, factor: Fraction) -> Fraction:
    """Return how large a vessel is wanted, of which only its share may be filled."""
    return recipe.stands_ml * factor / recipe.vessel_share


def _is_boiled_apart(recipe: Scalable, factor: Fraction) -> bool:
    most = boiled_at_most(recipe.kind)
    return most is not None and factor > most


def boiling_warnings(recipe: Scalable, factor: Fraction) -> tuple[str, ...]:
    """Warn when more is boiled at once than sets; source: beside the words in the data.

    As many batches as set and as the recipe's own vessel holds.
    """
    if not _is_boiled_apart(recipe, factor):
        return ()
    rule = rounding_data()["boiled_at_once"]
    batches = (factor / rule["most"]).__ceil__()
    if recipe.vessel_ml:
        batches = max(batches, (_filled_ml(recipe, factor) / recipe.vessel_ml).__ceil__())
    return (str(rule["words"]).format(batches=batches),)


def boiled_at_most(kind: str) -> int | None:
    """Return how many times its batch a kind is boiled at once at most; None for any."""
    rule = rounding_data()["boiled_at_once"]
    return int(rule["most"]) if kind in rule["kinds"] else None
