"""Cutting a spirit to a wanted strength, and the fold of one's own pods: as a cook asks.

Reads "500 ml at 96%" and "150 g in 700 ml", asks mixtures.py and extracts.py, and keeps what the
answer rests on beside it. Leaves out what a recipe comes to: strength.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.amounts.quantities import Amount, parse_amount, parse_number
from stillroom.core.amounts.units import System, convert, size_of
from stillroom.core.batch import spirit_density, syrups
from stillroom.core.batch.extracts import DRY_LIMIT, LEAST_ABV, Fold, fold_of
from stillroom.core.batch.mixtures import mix, spirit, syrup, syrup_to_reach_ml, water_to_reach_ml
from stillroom.core.batch.spirit_density import WATER_DENSITY
from stillroom.core.batch.syrups import density_of_brix
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

CUT_DOUBT = (
    "A bottle may differ from its label by 0.3 % vol (Regulation (EU) 1169/2011, Annex XII), a "
    "kitchen jug by a percent or two: weigh what you add."
)
SYRUP_DOUBT = (
    "What sugar and alcohol do to each other's volume is left out, about 1 % (from memory)."
)
_HOW_CUT = 'Write "500 ml at 96%".'
_HOW_PODS = 'Write "150 g in 700 ml", or "150 g in 700 ml at 40%".'
_MOST_ML = 1_000_000
_PERCENT = late_regex(r"^(?P<number>[^%]+?)\s*(?:%\s*(?:vol\.?|abv)?)?$", re.IGNORECASE)


@dataclass(frozen=True)
class Cut:
    """A spirit brought to a strength: ml and % vol at 20 °C, what is added in ml and g.

    `brix` is the grams of sugar in 100 g of what is added, 0 for water. `naive_ml` is what adding
    up volumes would say; `shrinks_ml` is what goes missing when the two meet.
    """

    volume_ml: float
    abv: float
    wanted_abv: float
    brix: float
    added_ml: float
    added_g: float
    gives_ml: float
    naive_ml: float
    source: str
    uncertainty: str

    @property
    def shrinks_ml(self) -> float:
        """The ml by which the mixture is less than its parts."""
        return self.volume_ml + self.added_ml - self.gives_ml


@dataclass(frozen=True)
class Pods:
    """Pods in a spirit: grams, ml, the % vol where it was said, and the fold they come to."""

    grams: Fraction
    volume_ml: Fraction
    abv: float | None
    fold: Fold
    uncertainty: str


def cut(volume_ml: float, abv: float, wanted_abv: float, brix: float = 0.0) -> Cut:
    """Return how much water, or syrup of this Brix, brings a spirit to the wanted % vol.

    Source: OIML R 22; syrups.SOURCE. Raises ValueError when it cannot be reached by adding.

    >>> found = cut(1000, 96, 40)
    >>> round(found.added_ml), round(found.added_g), round(found.naive_ml), round(found.gives_ml)
    (1471, 1468, 1400, 2400)
    """
    there = spirit(volume_ml, abv)
    density = density_of_brix(brix) if brix else WATER_DENSITY
    if brix:
        # mixtures.py tells the volume it takes in what it meets; a jug shows the syrup's own
        added_g = _grams_of_syrup(syrup_to_reach_ml(there, wanted_abv, brix), brix)
    else:
        added_g = water_to_reach_ml(volume_ml, abv, wanted_abv) * WATER_DENSITY
    mixed = mix([there, syrup(added_g * brix / 100, added_g * (1 - brix / 100))])
    return Cut(
        volume_ml=volume_ml,
        abv=abv,
        wanted_abv=wanted_abv,
        brix=brix,
        added_ml=added_g / density,
        added_g=added_g,
        gives_ml=mixed.volume_ml,
        naive_ml=volume_ml * (abv / wanted_abv - 1),
        source="; ".join((spirit_density.SOURCE, *_syrup_sources(brix))),
        uncertainty=f"{CUT_DOUBT} {SYRUP_DOUBT}" if brix else CUT_DOUBT,
    )


def _syrup_sources(brix: float) -> tuple[str, ...]:
    """Name the table a syrup is read from: its found rows reach from 44 to 54 Brix."""
    if not brix:
        return ()
    return (syrups.SOURCE if 44 <= brix <= 54 else syrups.SOURCE_OUTSIDE,)


def _grams_of_syrup(modelled_ml: float, brix: float) -> float:
    gram = syrup(brix / 100, 1 - brix / 100)
    return modelled_ml / gram.volume_ml


def read_cut(there: str, wanted: str, sugar: str = "", system: System = "metric") -> Cut:
    """Read "500 ml at 96%", "40%" and the sugar of a syrup ("50%" by weight); raises Unreadable."""
    amount, between, strength = there.partition(" at ")
    if not between:
        raise Unreadable(f'"{there}" does not say how strong it is.', _HOW_CUT)
    volume = float(_read_ml(amount, system, _HOW_CUT))
    abv, aim = _read_percent(strength, _HOW_CUT), _read_percent(wanted, 'Write "40%".')
    brix = _read_percent(sugar, 'Write "50%".') if sugar else 0.0
    if aim > abv:
        raise Unreadable(
            f"Nothing added brings {abv:g} % vol up to {aim:g} % vol.",
            f"Name a strength below {abv:g}%, or a stronger spirit.",
        )
    if brix > 65:
        raise Unreadable(f"No syrup holds {brix:g} % of sugar.", "Up to 65% stays dissolved.")
    return cut(volume, abv, aim, brix)


def read_pods(text: str, moist: str = "", system: System = "metric") -> Pods:
    """Read "150 g in 700 ml", "12 pods in 70 cl at 40%" and their moisture; raises Unreadable.

    Source of the fold: extracts.SOURCE.

    >>> read_pods("70 g in 700 ml at 40%").fold.text
    'single strength: 1 unit of vanilla per US gallon'
    """
    beans, between, liquid = text.partition(" in ")
    if not between:
        raise Unreadable(f'"{text}" does not say in how much spirit.', _HOW_PODS)
    bottle, stated, strength = liquid.partition(" at ")
    volume = _read_ml(bottle, system, _HOW_PODS)
    abv = _read_percent(strength, _HOW_PODS) if stated else None
    grams, counted = _read_pods_g(beans, system)
    share = _read_moisture(moist) if moist else DRY_LIMIT
    fold = fold_of(grams, volume, abv if abv is not None else LEAST_ABV, share)
    doubts = [fold.uncertainty]
    if counted:
        doubts.insert(0, counted)
    if abv is None:
        doubts.append(
            f"Its strength was not said; the standard asks for {LEAST_ABV} % vol or more."
        )
    return Pods(grams, volume, abv, fold, " ".join(doubts))


def _read_pods_g(text: str, system: System) -> tuple[Fraction, str]:
    """Return the grams of pods, and a doubt in words where they were only counted."""
    amount = _read_exact(text.removesuffix(" of pods"), system, _HOW_PODS)
    if amount.unit and size_of(amount.unit) == "mass":
        return convert(amount.middle, amount.unit, "g"), ""
    staple = find_staple("vanilla pods")
    if amount.noun != "pod" or staple is None or staple.each_g is None:
        raise Unreadable(f'"{text.strip()}" is no weight of pods.', _HOW_PODS)
    each = float(staple.each_g)
    source = staple.sources.get("each_g", "common practice, no published source")
    doubt = f"Pods differ widely; one is taken as {each:g} g ({source}): weigh them."
    return amount.middle * staple.each_g, doubt


def _read_moisture(text: str) -> Fraction:
    percent = _read_percent(text, 'Write "30%".')
    if percent == 100:
        raise Unreadable("Pods of 100 % moisture are water.", 'Write "30%".')
    return Fraction(str(percent)) / 100


def _read_exact(text: str, system: System, how: str) -> Amount:
    amount = parse_amount(text, system)
    if not isinstance(amount, Amount) or amount.low != amount.high:
        raise Unreadable(f'"{text.strip()}" is not one amount.', how)
    return amount


def _read_ml(text: str, system: System, how: str) -> Fraction:
    amount = _read_exact(text, system, how)
    if not amount.unit or size_of(amount.unit) != "volume":
        raise Unreadable(f'"{text.strip()}" is not a volume.', how)
    volume = convert(amount.middle, amount.unit, "ml")
    if volume > _MOST_ML:
        raise Unreadable(f'"{text.strip()}" is more than a kitchen holds.', "Up to 1000 l.")
    return volume


def _read_percent(text: str, how: str) -> float:
    """Read "40%", "40 % vol" or "40" as a percentage above 0 and up to 100."""
    found = _PERCENT.match(text.strip())
    try:
        value = float(parse_number(found["number"])) if found else 0.0
    except (ValueError, OverflowError):
        value = 0.0
    if not 0 < value <= 100:
        raise Unreadable(f'"{text.strip()}" is not a percentage above 0 and up to 100.', how)
    return value
