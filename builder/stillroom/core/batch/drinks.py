"""How much alcohol is in a pour: in the units or standard drinks of the book's country, and grams.

Every country draws its own line; they are data (staples/standard_drinks.yml), each with its source.
UK strength for duty is rounded down to one decimal: HMRC alcoholic products technical guide,
section 11.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from stillroom.core.batch.spirit_density import ETHANOL_DENSITY
from stillroom.core.words.data_files import read_data


@dataclass(frozen=True)
class DrinkMeasure:
    """What a country counts alcohol by: one and many of it in words, its ml of ethanol, who says.

    `amount` says the same as the country does: "10 ml of ethanol", "14 g of ethanol".
    """

    one: str
    many: str
    ethanol_ml: float
    amount: str
    source: str


@dataclass(frozen=True)
class Pour:
    """One serving: its volume and the alcohol in it."""

    name: str
    volume_ml: Fraction
    abv: float
    ethanol_g: float

    def drinks(self, measure: DrinkMeasure) -> float:
        """Return how many units or standard drinks of a country it holds."""
        return standard_drinks(float(self.volume_ml), self.abv, measure)


@cache
def measure_of(country: str) -> DrinkMeasure:
    """Return what a country counts alcohol by; without a line of its own, the WHO's ten grams.

    >>> measure_of("GB").many, measure_of("US").many, measure_of("FR").amount
    ('UK units', 'US standard drinks', '10 g of ethanol')
    """
    rows = read_data("standard_drinks.yml")
    row = rows.get(country, rows["other"])
    if "ml" in row:
        volume, amount = float(row["ml"]), f"{row['ml']} ml of ethanol"
    else:
        volume, amount = row["g"] / ETHANOL_DENSITY, f"{row['g']} g of ethanol"
    return DrinkMeasure(row["one"], row["many"], volume, amount, row["source"])


def ethanol_g(volume_ml: float, abv: float) -> float:
    """Return the grams of ethanol in so many ml at this % vol.

    >>> round(ethanol_g(50, 40), 3)
    15.785
    """
    return volume_ml * abv / 100 * ETHANOL_DENSITY


def standard_drinks(volume_ml: float, abv: float, measure: DrinkMeasure) -> float:
    """Return how many units or standard drinks are in so many ml at this % vol.

    >>> standard_drinks(50, 40, measure_of("GB")), standard_drinks(700, 40, measure_of("GB"))
    (2.0, 28.0)
    >>> round(standard_drinks(50, 40, measure_of("US")), 3)
    1.127
    """
    return volume_ml * abv / 100 / measure.ethanol_ml


def pour(name: str, volume_ml: Fraction, abv: float) -> Pour:
    """Return what is in one serving of this name and volume."""
    return Pour(name, volume_ml, abv, ethanol_g(float(volume_ml), abv))


def duty_strength(abv: float) -> float:
    """Return a strength rounded down to one decimal, as UK duty states it.

    >>> duty_strength(7.59)
    7.5
    """
    return math.floor(round(abv * 10, 6)) / 10
