"""What a must of honey or sugar may come to: gravity, potential alcohol, alcohol made.

Sources: sugar for 1 % vol 16.83 g per litre, French order of 14 September 2011, Annex IV, after
OIV Oeno 21/2004 Table II; (OG - FG) x 131.25, common brewing formula, no published source. The two
differ by about 3 %, so home mead is told to the nearest half percent, as "about".
"""

from __future__ import annotations

from stillroom.core.batch.estimates import Estimate
from stillroom.core.batch.syrups import density_of_brix

SUGAR_G_PER_L_PER_ABV = 16.83
GRAVITY_FACTOR = 131.25
# % vol: MadSci Network, E. Richter, Ohio State University, 18 November 1999 (yeast stops at 12 to
# 16), and an encyclopaedia's article on fortified wine as copied by altsci.com (at 16 to 18).
MOST_YEAST_MAKES = 18
SOURCE = "French order of 14 September 2011, Annex IV, after OIV Oeno 21/2004"


def potential_abv(sugar_g_per_l: float) -> float:
    """Return the % vol that so much sugar in a litre of must can come to, fermented dry.

    >>> round(potential_abv(191.9), 2)
    11.4
    """
    return sugar_g_per_l / SUGAR_G_PER_L_PER_ABV


def abv_from_gravities(original: float, final: float) -> float:
    """Return % vol made between two hydrometer readings; raises ValueError when it rose.

    >>> round(abv_from_gravities(1.050, 1.010), 2)
    5.25
    """
    if final > original:
        raise ValueError("The gravity after fermenting cannot be above the one before.")
    return (original - final) * GRAVITY_FACTOR


def must_of(sugar_g: float, mass_g: float) -> Estimate:
    """Return the potential alcohol of a must weighing `mass_g` with `sugar_g` of sugars in it.

    Raises ValueError above 65 Brix.

    >>> must_of(800, 4000).shown(1)
    'about 13.0 % vol'
    """
    brix = 100 * sugar_g / mass_g
    per_litre = brix / 100 * density_of_brix(brix) * 1000
    highest = potential_abv(per_litre)
    return Estimate(
        value=round(highest * 2) / 2,
        low=highest * 0.85,
        high=max(highest, round(highest * 2) / 2),
        unit="% vol",
        rule=f"{per_litre:.0f} g of sugar in a litre of must, 16.83 g for each % vol",
        source=SOURCE,
        uncertainty=(
            "At most this, if the yeast leaves no sugar; honeys and fruits differ in sugar and "
            "yeasts in appetite, so what is finished may be one or two percent weaker."
        ),
    )
