"""Minutes of boiling by altitude: sterilising jars, and jam or jelly in its jars.

Leaves out every other food: its time must come from a tested recipe for that food.
"""

from __future__ import annotations

from fractions import Fraction

FEET_PER_METRE = 1 / Fraction("0.3048")
_STEPS_FT = (1000, 6000)


def sterilise_minutes(altitude_m: Fraction | int) -> int:
    """Return the minutes to boil clean empty jars.

    USDA Complete Guide to Home Canning (AIB 539), Guide 1: 10 minutes below 1,000 ft and one more
    for each additional 1,000 ft. Between thousands the fuller step is taken.

    >>> sterilise_minutes(0), sterilise_minutes(305), sterilise_minutes(1609)
    (10, 11, 15)
    """
    return 10 + max(0, altitude_m * FEET_PER_METRE // 1000)


def jelly_minutes(altitude_m: Fraction | int) -> int:
    """Return the minutes to boil filled half-pint jars of jam or jelly.

    USDA Complete Guide to Home Canning (AIB 539), Guide 7: 5 minutes to 1,000 ft, 10 to 6,000 ft,
    15 above.

    >>> jelly_minutes(0), jelly_minutes(305), jelly_minutes(1829)
    (5, 10, 15)
    """
    return process_minutes(5, altitude_m)


def process_minutes(at_sea_level: int, altitude_m: Fraction | int) -> int:
    """Return a boiling-water process of 5 or 10 minutes as it stands at an altitude.

    USDA tables for jams, jellies, chutneys and relishes in half-pints: 5 minutes more above
    1,000 ft, 10 more above 6,000 ft. Other processes have other steps: refused with ValueError.

    >>> process_minutes(10, 0), process_minutes(10, 305), process_minutes(10, 1829)
    (10, 15, 20)
    """
    if at_sea_level not in (5, 10):
        raise ValueError(f"A process of {at_sea_level} minutes has steps of its own.")
    feet = altitude_m * FEET_PER_METRE
    return at_sea_level + sum(5 for step in _STEPS_FT if feet > step)
