"""Sugar in water: Brix (g of sugar in 100 g) and density at 20 °C, and what sugar adds in volume.

Source: sucrose density table at 20 °C, Korean Food Code 12.7, for 44 to 54 Brix (found); the rows
outside it are NBS Circular C440 figures from memory, good to about 0.0003 g/ml. Between rows the
specific volume is read off a straight line. The popular gravity formula is left out on purpose: it
is 0.0012 wrong at 50 Brix.
"""

from __future__ import annotations

import itertools

from stillroom.core.batch.spirit_density import WATER_DENSITY

SOURCE = "sucrose density table at 20 °C, Korean Food Code 12.7 (44 to 54 Brix)"
SOURCE_OUTSIDE = "sucrose density, NBS Circular C440 (from memory)"

# (Brix, g per ml at 20 °C). 51.3 and 54.3 are misprinted in the stored table and are not used.
_TABLE = (
    (0.0, WATER_DENSITY),
    (10.0, 1.0381),
    (20.0, 1.0810),
    (30.0, 1.1270),
    (40.0, 1.1765),
    (44.0, 1.197247),
    (45.0, 1.202540),
    (46.0, 1.207870),
    (48.0, 1.218643),
    (50.0, 1.229567),
    (52.0, 1.240641),
    (54.0, 1.251866),
    (60.0, 1.2865),
    (65.0, 1.3165),
)

#: ml that a gram of sugar adds to what it dissolves in (0.6233 at 44 to 0.6259 at 54 Brix).
SUGAR_ML_PER_G = 0.62


def density_of_brix(brix: float) -> float:
    """Return g per ml at 20 °C of a sugar syrup; raises ValueError outside 0 to 65 Brix.

    >>> round(density_of_brix(50), 6), round(density_of_brix(47), 4)
    (1.229567, 1.2132)
    """
    if not 0 <= brix <= 65:
        raise ValueError(f"The sugar table reaches from 0 to 65 Brix, not {brix}.")
    for (low, low_density), (high, high_density) in itertools.pairwise(_TABLE):
        if brix <= high:
            share = (brix - low) / (high - low)
            return 1 / ((1 - share) / low_density + share / high_density)
    raise AssertionError("the table covers 0 to 65")


def brix_of_density(density: float) -> float:
    """Return the Brix of a syrup of this density in g per ml at 20 °C.

    Raises ValueError when it is thinner than water or thicker than 65 Brix.

    >>> round(brix_of_density(1.229567), 2)
    50.0
    """
    if not WATER_DENSITY <= density <= _TABLE[-1][1]:
        raise ValueError(f"The sugar table does not reach a density of {density} g/ml.")
    low, high = 0.0, 65.0
    for _ in range(50):
        middle = (low + high) / 2
        if density_of_brix(middle) < density:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def brix_of_gravity(gravity: float) -> float:
    """Return the Brix of a specific gravity 20/20 °C.

    >>> round(brix_of_gravity(1.0829), 1)
    20.0
    """
    return brix_of_density(gravity * WATER_DENSITY)


def gravity_of_brix(brix: float) -> float:
    """Return the specific gravity 20/20 °C of a sugar solution.

    >>> round(gravity_of_brix(50), 5)
    1.23178
    """
    return density_of_brix(brix) / WATER_DENSITY


def brix_of_syrup(sugar_g: float, water_g: float) -> float:
    """Return the Brix of sugar dissolved in water, both in grams.

    Raises ValueError when both are nothing or one is below it.

    >>> brix_of_syrup(500, 500), round(brix_of_syrup(200, 236.16), 1)
    (50.0, 45.9)
    """
    if sugar_g < 0 or water_g < 0 or sugar_g + water_g == 0:
        raise ValueError("A syrup needs sugar and water of no less than nothing.")
    return 100 * sugar_g / (sugar_g + water_g)


def volume_of_syrup_ml(sugar_g: float, water_g: float) -> float:
    """Return the ml at 20 °C of a syrup made of these grams.

    >>> round(volume_of_syrup_ml(500, 500), 2)
    813.29
    """
    return (sugar_g + water_g) / density_of_brix(brix_of_syrup(sugar_g, water_g))
