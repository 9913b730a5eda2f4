"""Density of ethanol and water mixtures at 20 °C, and the two ways of writing their strength.

Source: OIML R 22 (1973/1975) general formula, the same as Council Directive 76/766/EEC, Annex,
section 4 (coefficients A1-A5 read there; A6-A12 read in public copies that agree with it). At
20 °C the temperature terms of the formula are nothing, so they are left out: a kitchen is not a
laboratory, and spirit is labelled at 20 °C.
"""

from __future__ import annotations

from functools import lru_cache

SOURCE = "OIML R 22 (1975) / Council Directive 76/766/EEC, Annex, section 4"

COEFFICIENTS = (
    9.982012300e2,
    -1.929769495e2,
    3.891238958e2,
    -1.668103923e3,
    1.352215441e4,
    -8.829278388e4,
    3.062874042e5,
    -6.138381234e5,
    7.470172998e5,
    -5.478461354e5,
    2.234460334e5,
    -3.903285426e4,
)


def density_of_mass_fraction(mass_fraction: float) -> float:
    """Return g per ml at 20 °C of a mixture holding this mass fraction (0 to 1) of ethanol.

    Raises ValueError outside 0 to 1.

    >>> round(density_of_mass_fraction(0.333), 4), round(density_of_mass_fraction(1), 5)
    (0.948, 0.78924)
    """
    if not 0 <= mass_fraction <= 1:
        raise ValueError(f"A mass fraction lies between 0 and 1, not {mass_fraction}.")
    total = 0.0
    for coefficient in reversed(COEFFICIENTS):
        total = total * mass_fraction + coefficient
    return total / 1000


WATER_DENSITY = density_of_mass_fraction(0.0)
ETHANOL_DENSITY = density_of_mass_fraction(1.0)


def abv_of_mass_fraction(mass_fraction: float) -> float:
    """Return % vol at 20 °C of a mixture holding this mass fraction of ethanol.

    >>> round(abv_of_mass_fraction(0.40), 1)
    47.4
    """
    return 100 * mass_fraction * density_of_mass_fraction(mass_fraction) / ETHANOL_DENSITY


@lru_cache(maxsize=512)
def mass_fraction_of_abv(abv: float) -> float:
    """Return the mass fraction of ethanol of a spirit of this % vol, by halving the interval.

    Raises ValueError outside 0 to 100.

    >>> round(100 * mass_fraction_of_abv(40.0), 2)
    33.3
    """
    if not 0 <= abv <= 100:
        raise ValueError(f"A strength lies between 0 and 100 % vol, not {abv}.")
    low, high = 0.0, 1.0
    for _ in range(60):  # 2**-60: far finer than the formula
        middle = (low + high) / 2
        if abv_of_mass_fraction(middle) < abv:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def density_of_abv(abv: float) -> float:
    """Return g per ml at 20 °C of a spirit of this % vol.

    >>> round(density_of_abv(96.0), 5)
    0.80742
    """
    return density_of_mass_fraction(mass_fraction_of_abv(abv))
