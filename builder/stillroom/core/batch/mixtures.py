"""Mixing and cutting spirits by mass: ethanol and water shrink when they meet.

Every mixture is reckoned in grams with the published densities, so 50 ml and 50 ml do not make
100 ml. Sugar is added by the volume it takes when dissolved; what ethanol and sugar do to each
other is left out (within about 1 % of the volume at liqueur strengths: from memory).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from stillroom.core.batch.spirit_density import (
    ETHANOL_DENSITY,
    WATER_DENSITY,
    density_of_abv,
    density_of_mass_fraction,
    mass_fraction_of_abv,
)
from stillroom.core.batch.syrups import SUGAR_ML_PER_G


@dataclass(frozen=True)
class Mixture:
    """Grams of ethanol, water and dissolved sugar standing together at 20 °C.

    `rest_ml` is the room that fat, protein and other solids take up among them.
    """

    ethanol_g: float
    water_g: float
    sugar_g: float = 0.0
    rest_ml: float = 0.0

    @property
    def mass_g(self) -> float:
        """The weight of ethanol, water and sugar in grams."""
        return self.ethanol_g + self.water_g + self.sugar_g

    @property
    def volume_ml(self) -> float:
        """The volume in ml at 20 °C, contraction included."""
        liquid = self.ethanol_g + self.water_g
        solids = self.sugar_g * SUGAR_ML_PER_G + self.rest_ml
        if liquid == 0:
            return solids
        return liquid / density_of_mass_fraction(self.ethanol_g / liquid) + solids

    @property
    def abv(self) -> float:
        """The strength in % vol: ml of ethanol, alone at 20 °C, in 100 ml of the mixture."""
        volume = self.volume_ml
        return 100 * self.ethanol_g / ETHANOL_DENSITY / volume if volume else 0.0

    def __add__(self, other: Mixture) -> Mixture:
        return Mixture(
            self.ethanol_g + other.ethanol_g,
            self.water_g + other.water_g,
            self.sugar_g + other.sugar_g,
            self.rest_ml + other.rest_ml,
        )

    def share(self, part: float) -> Mixture:
        """Return a part (0 to 1 and beyond) of the mixture, as strong as the whole."""
        return Mixture(
            self.ethanol_g * part,
            self.water_g * part,
            self.sugar_g * part,
            self.rest_ml * part,
        )


def spirit(volume_ml: float, abv: float) -> Mixture:
    """Return a spirit of this volume and % vol as grams; raises ValueError for a false strength.

    >>> round(spirit(50, 40).ethanol_g, 3)
    15.785
    """
    mass = volume_ml * density_of_abv(abv)
    share = mass_fraction_of_abv(abv)
    return Mixture(mass * share, mass * (1 - share))


def water(volume_ml: float) -> Mixture:
    """Return so many ml of water at 20 °C."""
    return Mixture(0.0, volume_ml * WATER_DENSITY)


def syrup(sugar_g: float, water_g: float) -> Mixture:
    """Return sugar dissolved in water, in grams."""
    return Mixture(0.0, water_g, sugar_g)


def mix(parts: Iterable[Mixture]) -> Mixture:
    """Return all parts together; grams of ethanol, water and sugar are conserved.

    >>> mixed = mix([spirit(50, 100), water(50)])
    >>> round(mixed.volume_ml, 1), round(mixed.abv, 1)
    (96.5, 51.8)
    """
    ethanol_g = water_g = sugar_g = rest_ml = 0.0
    for part in parts:
        ethanol_g += part.ethanol_g
        water_g += part.water_g
        sugar_g += part.sugar_g
        rest_ml += part.rest_ml
    return Mixture(ethanol_g, water_g, sugar_g, rest_ml)


def water_to_reach_ml(volume_ml: float, abv: float, wanted_abv: float) -> float:
    """Return the ml of water that cuts a spirit to the wanted % vol, contraction included.

    Raises ValueError when the wanted strength is nothing or above what there is.

    >>> round(water_to_reach_ml(1000, 96, 40)), round(water_to_reach_ml(700, 40, 35))
    (1471, 101)
    """
    if not 0 < wanted_abv <= abv:
        raise ValueError(f"Water cannot bring {abv} % vol to {wanted_abv} % vol.")
    there = spirit(volume_ml, abv)
    wanted_mass = there.ethanol_g / mass_fraction_of_abv(wanted_abv)
    return (wanted_mass - there.mass_g) / WATER_DENSITY


def syrup_to_reach_ml(there: Mixture, wanted_abv: float, brix: float) -> float:
    """Return the ml of a syrup of this Brix that brings a mixture to the wanted % vol.

    Raises ValueError when the wanted strength is nothing or above what there is.

    >>> round(syrup_to_reach_ml(spirit(700, 40), 30, 50))
    235
    """
    if not 0 < wanted_abv <= there.abv:
        raise ValueError(f"Syrup cannot bring {there.abv:.1f} % vol to {wanted_abv} % vol.")
    low, high = 0.0, 1.0
    gram = Mixture(0.0, 1 - brix / 100, brix / 100)
    while (there + gram.share(high)).abv > wanted_abv:
        high *= 2
    for _ in range(60):
        middle = (low + high) / 2
        if (there + gram.share(middle)).abv > wanted_abv:
            low = middle
        else:
            high = middle
    return gram.share(high).volume_ml
