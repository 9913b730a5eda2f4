"""The published boiling time of a filling in words, or that none is published for it.

A time is never carried over to a food, a jar or an altitude that it was not tested for. Leaves out
which process a filling keeps to: processes.py.
"""

from __future__ import annotations

from fractions import Fraction

from stillroom.core.altitude import jelly_minutes
from stillroom.core.care.processes import Process

SWEET = ("sugar", "honey", "syrup")
# a jam or jelly of USDA's tables is a third sugar or more as it goes in; fruit in syrup is less
_JAM_FROM_PERCENT = 33
_JARS = {"half-pint": "half-pint", "pint": "pint", "quart": "quart"}
_HEADSPACE = {
    Fraction(1, 4): "a quarter of an inch (6 mm)",
    Fraction(1, 2): "half an inch (13 mm)",
}


def say_process(process: Process | None, altitude_m: Fraction | int) -> str:
    """Return what the published guide asks for, jar by jar, and who says so.

    >>> say_process(None, 0)[:42]
    'This book knows no published time for this'
    """
    if process is None:
        return (
            "This book knows no published time for this mixture. Take a tested recipe and its own "
            "time, or keep it in the fridge."
        )
    times = [
        f"{_JARS[jar]} jars {process.minutes(jar, altitude_m)} minutes" for jar in process.jars
    ]
    return (
        f"American guidance boils its tested {process.name}, which keep to these proportions, at "
        f"this altitude: {', '.join(times)}; {_HEADSPACE[process.headspace_in]} of space under "
        f"the lid ({process.source})."
    )


def say_jam_process(sweet_percent: Fraction | None, altitude_m: Fraction | int) -> str:
    """Return the minutes for jam and jelly; fruit with less sugar has times of its own."""
    if sweet_percent is None or sweet_percent < _JAM_FROM_PERCENT:
        return (
            "The published time for jam is not for this: it has too little sugar. Fruit in syrup, "
            "juice and pie filling have times of their own, by fruit, jar and altitude; take a "
            "tested recipe's."
        )
    return (
        f"American guidance boils filled jars of jam or jelly, half-pints or pints, for "
        f"{jelly_minutes(altitude_m)} minutes at this altitude, a quarter of an inch (6 mm) of "
        f"space under the lid. Other countries seal them hot; follow your own."
    )
