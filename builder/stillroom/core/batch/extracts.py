"""How strong a vanilla extract is, in folds of the US standard of identity.

Source: 21 CFR 169.3(b) (unit weight 13.35 oz at 25 % moisture or less; moister beans by the same
dry solids), 169.175(a) (single fold: one unit per US gallon of finished extract, at least 35 % vol)
and 169.175(b), 169.176(b) (n-fold: whole units, fractions disregarded, named from 2). The standard
governs what is sold as vanilla extract; a present need not meet it. A count of pods is no standard:
work by weight.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.amounts.units import convert
from stillroom.core.words.said import Said

_say = Said("stillroom.core.batch", "strength")

SOURCE = "21 CFR 169.3(b), 169.175, 169.176"
UNIT_OUNCES = Fraction(1335, 100)
DRY_LIMIT = Fraction(25, 100)
LEAST_ABV = 35


@dataclass(frozen=True)
class Fold:
    """Units of vanilla per US gallon, the fold that may be named, and what is said of it."""

    units_per_gallon: Fraction
    fold: int
    strong_enough: bool
    text: str
    source: str = SOURCE
    uncertainty: str = (
        "Reckoned on the volume of spirit, which is a little more than the finished extract, "
        "and on beans of 25 % moisture or less unless told otherwise."
    )


def unit_weight_oz(moisture: Fraction = DRY_LIMIT) -> Fraction:
    """Return the ounces of beans in one unit of vanilla at this moisture (0 to below 1).

    Raises ValueError for a moisture outside that.

    >>> unit_weight_oz(), unit_weight_oz(Fraction(3325, 10000))
    (Fraction(267, 20), Fraction(15, 1))
    """
    if not 0 <= moisture < 1:
        raise ValueError("Moisture is a share from 0 to below 1.")
    return UNIT_OUNCES * (1 - DRY_LIMIT) / (1 - max(moisture, DRY_LIMIT))


def single_fold_g_per_l(moisture: Fraction = DRY_LIMIT) -> Fraction:
    """Return the grams of beans in a litre of single-fold extract.

    >>> round(float(single_fold_g_per_l()), 2)
    99.98
    """
    grams = convert(unit_weight_oz(moisture), "oz", "g")
    return grams / convert(Fraction(1), "us_gallon", "l")


def fold_of(
    beans_g: Fraction, volume_ml: Fraction, abv: float, moisture: Fraction = DRY_LIMIT
) -> Fold:
    """Return the fold of an extract from grams of beans, ml of extract and its % vol.

    Raises ValueError when there is no extract.

    >>> fold_of(Fraction(150), Fraction(700), 40).text
    'double strength (2-fold): 2.14 units of vanilla per US gallon'
    """
    if volume_ml <= 0:
        raise ValueError("An extract needs some volume.")
    units = beans_g / (volume_ml / 1000) / single_fold_g_per_l(moisture)
    whole = units.__floor__()
    enough = abv >= LEAST_ABV
    text = _say("fold_units", name=_say("fold", count=whole), count=show_decimal(units))
    if not enough:
        text = _say("fold_too_weak", text=text, least=LEAST_ABV)
    return Fold(units, whole, enough, text)
