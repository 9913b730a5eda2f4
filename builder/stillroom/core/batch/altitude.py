"""What altitude changes: minutes of boiling jars, jam in its jars, and the heat at which jam sets.

Leaves out every other food: its time must come from a tested recipe for that food.
"""

from __future__ import annotations

from fractions import Fraction

FEET_PER_METRE = 1 / Fraction("0.3048")
_STEPS_FT = (1000, 6000)
SETTING_SOURCE = (
    "USDA Complete Guide to Home Canning (2015), Guide 7, page 7-5, the jellying temperature by "
    "thousands of feet"
)
# °F at which jelly sets, by whole thousands of feet from sea level, as that page lists them
_SETS_F = (220, 218, 216, 214, 212, 211, 209, 207, 205)


def sterilise_minutes(altitude_m: Fraction | int) -> int:
    """Return the minutes to boil clean empty jars.

    USDA Complete Guide to Home Canning (AIB 539), Guide 1: 10 minutes below 1,000 ft and one more
    for each additional 1,000 ft. Between thousands the fuller step is taken.

    >>> sterilise_minutes(0), sterilise_minutes(305), sterilise_minutes(1609)
    (10, 11, 15)
    """
    return 10 + max(0, altitude_m * FEET_PER_METRE // 1000)


def jelly_minutes(altitude_m: Fraction | int) -> int:
    """Return the minutes to boil filled half-pint or pint jars of jam or jelly.

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


def setting_point_c(altitude_m: Fraction | int) -> Fraction:
    """Return the °C at which jam sets at an altitude, between the published rows in a line.

    8 °F above the boiling point of water, which falls with the altitude: see SETTING_SOURCE. Above
    the last row (8,000 ft) it goes on falling by 2 °F for each 1,000 ft.

    >>> float(round(setting_point_c(0), 1)), float(round(setting_point_c(1609), 1))
    (104.4, 99.1)
    """
    feet = max(Fraction(altitude_m) * FEET_PER_METRE, Fraction(0))
    step = min(int(feet // 1000), len(_SETS_F) - 2)
    low, high = _SETS_F[step], _SETS_F[step + 1]
    fahrenheit = low + (high - low) * (feet / 1000 - step)
    return (fahrenheit - 32) * Fraction(5, 9)
