"""The published boiling time of a filling in words, or that none is published for it.

A time is never carried over to a food, a jar or an altitude that it was not tested for. Leaves out
which process a filling keeps to: processes.py.
"""

from __future__ import annotations

from fractions import Fraction

from stillroom.core.batch.altitude import jelly_minutes
from stillroom.core.care.processes import Process
from stillroom.core.words.joining import join_and

SWEET = ("sugar", "honey", "syrup")
# a jam or jelly of USDA's tables is a third sugar or more as it goes in; fruit in syrup is less
_JAM_FROM_PERCENT = 33
# as much sugar as this in fruit is a jam whatever it is called, if not in a syrup or for a drink
_JAM_BY_ITSELF_PERCENT = 45
# Guide 7, page 7-5: a pound of fruit gives a cup of strained juice, and 3/4 cup (150 g) of sugar at
# least goes to each; what stays in the bag is weighed with the fruit, so that a share misleads
_JELLY_SUGAR_TO_FRUIT = Fraction(150, 454)
_THICK = ("pieces", "crushed", "puree")
_JARS = ("half-pint", "pint", "quart")
_HEADSPACE = {
    Fraction(1, 8): "an eighth of an inch (3 mm)",
    Fraction(1, 4): "a quarter of an inch (6 mm)",
    Fraction(1, 2): "half an inch (13 mm)",
    Fraction(1): "an inch (25 mm)",
}


def say_process(process: Process | None, altitude_m: Fraction | int) -> str:
    """Return what the published guide asks for, pack by pack and jar by jar, and who says so.

    >>> say_process(None, 0)[:42]
    'This book knows no published time for this'
    """
    if process is None:
        return (
            "This book knows no published time for this mixture. Take a tested recipe and its own "
            "time, or keep it in the fridge."
        )
    times = "; ".join(_say_pack(process, pack, altitude_m) for pack in process.packs)
    asks = f"{times}; {_HEADSPACE[process.headspace_in]} of space under the lid ({process.source})."
    if process.style:
        return (
            f"American guidance boils {process.name}, when made as its guide has it, at this "
            f"altitude: {asks}"
        )
    return (
        f"These are the proportions of its tested {process.name}, which American guidance boils at "
        f"this altitude: {asks}"
    )


def _say_pack(process: Process, pack: str, altitude_m: Fraction | int) -> str:
    """Return the minutes of one pack: "filled hot, half-pint and pint jars 20 minutes"."""
    by_minutes: dict[int, list[str]] = {}
    for jar in _JARS:
        minutes = process.minutes(jar, altitude_m, pack)
        if minutes is not None:
            by_minutes.setdefault(minutes, []).append(jar)
    told = [f"{join_and(jars)} jars {minutes} minutes" for minutes, jars in by_minutes.items()]
    return f"filled {pack}, {', '.join(told)}"


def say_jam_process(
    sweet_percent: Fraction | None,
    style: str,
    process: Process | None,
    altitude_m: Fraction | int,
    sugar_to_strained: Fraction | None = None,
) -> str:
    """Return the minutes for jam and jelly; other fruit has times of its own, if any.

    `sugar_to_strained` is the sugar to each g of fruit that drips through a bag, None where none
    does.

    >>> say_jam_process(Fraction(26), "jam", None, 0, Fraction(45, 100))[:44]
    'American guidance boils filled jars of jam o'
    """
    sweet = sweet_percent or Fraction(0)
    jelly = sugar_to_strained is not None and sugar_to_strained >= _JELLY_SUGAR_TO_FRUIT
    is_jam = style == "jam" and (sweet >= _JAM_FROM_PERCENT or jelly)
    if is_jam or (style in _THICK and sweet >= _JAM_BY_ITSELF_PERCENT):
        return (
            f"American guidance boils filled jars of jam or jelly, half-pints or pints, for "
            f"{jelly_minutes(altitude_m)} minutes at this altitude, a quarter of an inch (6 mm) of "
            f"space under the lid. Other countries seal them hot; follow your own."
        )
    if process is not None:
        return say_process(process, altitude_m)
    return (
        "The published time for jam is not for this, and this book knows none that is. Fruit in "
        "syrup, juice, purée and pie filling have times of their own, by fruit, jar and altitude; "
        "take a tested recipe's."
    )
