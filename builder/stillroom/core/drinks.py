"""How much alcohol is in a pour: UK units, US standard drinks, grams.

Sources: UK Chief Medical Officers' guidelines 2016 (a unit is 10 ml of ethanol; ml x % vol / 1000);
NIAAA, "What is a standard drink?" (14 g of ethanol); UK strength for duty rounded down to one
decimal, HMRC alcoholic products technical guide, section 11.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.spirit_density import ETHANOL_DENSITY

UK_SOURCE = "UK Chief Medical Officers' guidelines 2016"
US_SOURCE = "NIAAA, What is a standard drink?"
US_DRINK_G = 14


@dataclass(frozen=True)
class Pour:
    """One serving: its volume and the alcohol in it."""

    name: str
    volume_ml: Fraction
    uk_units: float
    us_drinks: float
    ethanol_g: float


def ethanol_g(volume_ml: float, abv: float) -> float:
    """Return the grams of ethanol in so many ml at this % vol.

    >>> round(ethanol_g(50, 40), 3)
    15.785
    """
    return volume_ml * abv / 100 * ETHANOL_DENSITY


def uk_units(volume_ml: float, abv: float) -> float:
    """Return UK units: ml x % vol / 1000.

    >>> uk_units(50, 40), uk_units(700, 40)
    (2.0, 28.0)
    """
    return volume_ml * abv / 1000


def us_drinks(volume_ml: float, abv: float) -> float:
    """Return US standard drinks of 14 g.

    >>> round(us_drinks(50, 40), 3)
    1.127
    """
    return ethanol_g(volume_ml, abv) / US_DRINK_G


def pour(name: str, volume_ml: Fraction, abv: float) -> Pour:
    """Return what is in one serving of this name and volume."""
    ml = float(volume_ml)
    return Pour(name, volume_ml, uk_units(ml, abv), us_drinks(ml, abv), ethanol_g(ml, abv))


def duty_strength(abv: float) -> float:
    """Return a strength rounded down to one decimal, as UK duty states it.

    >>> duty_strength(7.59)
    7.5
    """
    return math.floor(round(abv * 10, 6)) / 10
