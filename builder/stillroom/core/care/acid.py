"""Whether what is sour is enough for what is not, by weight and not by the word.

Proportions: vinegar or lemon juice at least as much as the water that covers, and at least a
quarter of the low-acid food; or those of a published process (processes.yml). What cannot be
weighed counts against the recipe. Leaves out pH, and where it is kept: the rules.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from typing import Protocol

from stillroom.core.care.jar_styles import style_of
from stillroom.core.care.processes import Filling, Process, find_process, same_food
from stillroom.core.larder.staple import Staple
from stillroom.core.words.patterns import clause_regex

# what stands above pH 4.6 in a jar; meat, fish, egg and milk have rules of their own
_LOW = frozenset(
    {"low-acid-vegetable", "low-acid-fruit", "cooked-pulse", "mushroom", "wild-mushroom"}
    | {"chestnut", "coconut", "seaweed", "preserved-vegetable", "garlic"}
)
# dry as they are bought, and wet in a preserve
_SWELLS = frozenset({"pulse", "kidney-bean", "lectin-bean", "grain", "rice", "pasta"})
_DRIED = frozenset({"dried-vegetable", "dried-herb", "dried-garlic", "spice"})
_LEAST_OF_FOOD = Fraction(1, 4)
LOW_ACID = "low-acid"
# what the tables of processes call food, and the juices that they bottle by themselves
_IN_JARS = frozenset({LOW_ACID, "fruit", "vegetable", "borderline-acid"})
_JUICES = frozenset({"apple juice", "grape juice", "tomato juice"})
_LEMON = frozenset({"lemon juice", "bottled lemon juice", "lime juice", "bottled lime juice"})
_CITRIC = frozenset({"citric acid", "citric acid crystals", "citric acid powder", "sour salt"})
# what no table of fruit was tested with
_NEVER_TESTED = frozenset(
    {"alcohol", "dairy", "butter", "egg", "meat", "fish", "oil", "fat", "nut", "coconut", "cacao"}
    | {"starch", "flour", "raw-flour", "gelatine", "grain", "rice", "pasta", "pulse", "seed"}
)
# nor with any of these in vinegar, where starch, oil and seeds are of some recipes
_IN_NO_PICKLE = _NEVER_TESTED - {"oil", "starch", "flour", "raw-flour", "seed"}
# sour to the tongue, and much too weak by weight to make a low-acid food safe
_HARDLY_SOUR = frozenset({"orange juice", "ascorbic acid", "vitamin c", "vitamin c powder"})
# what every tested recipe was tested with
_TESTED_WITH = 5
# Michigan State Univ. Extension 01600585; less liquid than half of the fish covers none of it
_SOUR_ENOUGH = Fraction(5, 2)
_COVERS = 2
_PERCENT = clause_regex(r"(\d+(?:[.,]\d+)?)\s?(?:%|per ?cent)")
_HOME_MADE = clause_regex(
    r"\b(?:home[- ]?made|my own|our own|selbst ?gemacht\w*|fait maison|maison|casero|fatto in casa"
    r"|zelfgemaakt\w*|scraps?)\b"
)
# of a line that is not known as a whole the word still tells: "home-made pear peel vinegar"
_VINEGAR = clause_regex(
    r"\bvinegar\b|\w*essig\b|\bvinaigre\b|\bvinagre\b|\baceto\b|\w*azijn\b", re.IGNORECASE
)
_SOAKS = clause_regex(r"\b(?:soak|steep)", re.IGNORECASE)
_AT_3_PERCENT = clause_regex(r"(?<![\d.,])3 ?(?:%|per ?cent)", re.IGNORECASE)
_FOR_A_DAY = clause_regex(
    r"\b(?:2[4-9]|[3-9]\d) ?h(?:ours?|rs?)?\b|\b(?:a|one|two|1|2) (?:whole "
    r"|full )?days?\b|\bday and a night",
    re.IGNORECASE,
)


class Weighed(Protocol):
    """One line of a recipe, as far as acid is concerned."""

    @property
    def staple(self) -> Staple | None:
        """What it is known as."""

    @property
    def words(self) -> str:
        """Its words and its note, in small letters."""

    @property
    def tags(self) -> frozenset[str]:
        """What the rules look for in it."""

    @property
    def grams(self) -> Fraction | None:
        """Its weight in a batch; None when it is not known."""

    @property
    def at_most_g(self) -> Fraction | None:
        """The most that it can weigh, where its weight is not known."""

    @property
    def drained(self) -> bool:
        """Whether it is poured off before anything is filled."""


def low_acid_tag(staple: Staple | None, tags: frozenset[str], kind: str) -> frozenset[str]:
    """Return the tag of what lies above pH 4.6 in a jar, nothing for what does not.

    Dried pulses and grain are dry in a mix, and low in acid once they are cooked in a preserve.
    """
    if staple is None:
        return frozenset({LOW_ACID}) if tags & _LOW else frozenset()
    if staple.acidity == "acid" or tags & _DRIED:
        return frozenset()
    wet = _LOW | _SWELLS if kind == "preserve" else _LOW
    return frozenset({LOW_ACID}) if tags & wet else frozenset()


def too_little_acid(things: Iterable[Weighed]) -> bool:
    """Say whether low-acid food lies in too little acid; True when it cannot be weighed."""
    rows = tuple(row for row in things if not row.drained)
    low = [row for row in rows if LOW_ACID in row.tags]
    heaviest = [row.at_most_g if row.grams is None else row.grams for row in low]
    low_g = sum((grams for grams in heaviest if grams is not None), Fraction(0))
    if None in heaviest:
        return True
    sour = [row for row in rows if "acid" in row.tags and _name(row) not in _HARDLY_SOUR]
    # essence sours as that much more vinegar, and bears that much more water: half as sour will do
    # (100 g of 25 % in 900 g of water are 2.5 %, as are 500 g of vinegar in 500 g)
    beyond_g = _beyond_vinegar(sour)
    acid_g = _sum(sour) + beyond_g - _sum(_sour_fruit(rows)) / 2
    water = [row for row in rows if "water" in row.tags]
    if any(row.grams is None for row in water):
        return True
    if acid_g >= _LEAST_OF_FOOD * low_g and acid_g + beyond_g >= _sum(water) and acid_g > 0:
        return False
    # a process goes by its proportions, and those cannot be seen where something has no weight
    unseen = any(row.grams is None and row.at_most_g != 0 for row in low)
    return unseen or published_process(rows) is None


def unweighed(things: Iterable[Weighed]) -> tuple[Weighed, ...]:
    """Return what keeps the acid from being judged: low-acid food, water, acid without a weight."""
    rows = tuple(row for row in things if not row.drained and row.grams is None)
    low = [row for row in rows if LOW_ACID in row.tags and row.at_most_g is None]
    wet = [row for row in rows if {"water", "acid"} & row.tags and LOW_ACID not in row.tags]
    return (*low, *wet)


def counted_at_most(things: Iterable[Weighed]) -> tuple[Weighed, ...]:
    """Return the low-acid food that is only counted, and so was taken at its heaviest."""
    return tuple(
        row for row in things if LOW_ACID in row.tags and row.grams is None and row.at_most_g
    )


def is_weak_vinegar(row: Weighed) -> bool:
    """Whether it is a vinegar said to be under 5 %, or one nobody has measured: home-made."""
    if "vinegar" not in row.tags and not (row.staple is None and _VINEGAR.search(row.words)):
        return False
    said = (float(found.replace(",", ".")) for found in said_percent(row))
    return bool(_HOME_MADE.search(row.words)) or any(percent < _TESTED_WITH for percent in said)


def sours_fish(things: Iterable[Weighed]) -> bool:
    """Say whether fish lies in a liquid of 2.5 % acetic acid and more, as published.

    The source stands in keeping.yml. Vinegar counts by what its line says, else as of 5 %; what
    cannot be weighed counts against it.
    """
    rows = tuple(row for row in things if not row.drained)
    vinegar = [*_essence(rows), *(row for row in rows if "vinegar" in row.tags)]
    wet = [*vinegar, *(row for row in rows if "water" in row.tags)]
    if not vinegar or any(row.grams is None for row in wet) or any(map(is_weak_vinegar, vinegar)):
        return False
    acid = sum((_sum([row]) * _percent_of(row) for row in vinegar), Fraction(0))
    fish = [row for row in rows if "fish" in row.tags]
    covers = _sum(wet) * _COVERS >= _sum(fish) and all(row.grams is not None for row in fish)
    return covers and acid >= _SOUR_ENOUGH * _sum(wet)


def _essence(rows: Iterable[Weighed]) -> list[Weighed]:
    """Return acetic acid that is sold to be thinned, where its line says how strong it is."""
    strong = [row for row in rows if "strong-acid" in row.tags and said_percent(row)]
    return [row for row in strong if _percent_of(row) >= _TESTED_WITH]


def _beyond_vinegar(sour: Iterable[Weighed]) -> Fraction:
    """Return the grams of vinegar of 5 % by which essence is sourer than as much of that."""
    more = (_sum([row]) * (_percent_of(row) / _TESTED_WITH - 1) for row in _essence(sour))
    return sum(more, Fraction(0))


def _percent_of(row: Weighed) -> Fraction:
    said = [Fraction(found.replace(",", ".")) for found in said_percent(row)]
    return min(said, default=Fraction(_TESTED_WITH))


def said_percent(row: Weighed) -> tuple[str, ...]:
    """Return the percentages that stand in a line: "rice vinegar, 4 % acidity"."""
    return tuple(_PERCENT.findall(row.words))


def soaked_in_acid(things: Iterable[Weighed], sentences: Iterable[str]) -> bool:
    """Say whether garlic or herbs are soaked as published: 3 % of citric acid, a day, in plenty.

    One part by weight of garlic to three of solution, of leaves to ten; said in words or weighed.
    """
    soaks = [text for text in sentences if _SOAKS.search(text)]
    if not any(_FOR_A_DAY.search(text) or _AT_3_PERCENT.search(text) for text in soaks):
        return False
    if any(_AT_3_PERCENT.search(text) for text in soaks):
        return True
    rows = tuple(things)
    acid_g = _sum(row for row in rows if row.staple and row.staple.name == "citric acid")
    water_g = _sum(row for row in rows if "water" in row.tags)
    garlic = [row for row in rows if "garlic" in row.tags]
    leaves = [row for row in rows if "fresh-herb" in row.tags]
    if not acid_g or any(row.grams is None for row in (*garlic, *leaves)):
        return False
    enough = 3 * _sum(garlic) + 10 * _sum(leaves)
    # a level tablespoon to two cups is the published 3 %, and weighs a little less
    return 1000 * acid_g >= 27 * water_g and water_g + acid_g >= enough > 0


def _sour_fruit(rows: Iterable[Weighed]) -> list[Weighed]:
    """Return whole sour fruit: half of its weight is juice (a lemon of 84 g gives 48, USDA SR)."""
    return [row for row in rows if "acid" in row.tags and "fruit" in row.tags]


def published_process(
    things: Iterable[Weighed], title: str = "", clauses: Iterable[str] = ()
) -> Process | None:
    """Return the published process whose foods and proportions these keep, or None.

    Without words only what goes by its vinegar or lemon juice is found.
    """
    told = tuple(clauses)
    filling = _filling(tuple(row for row in things if not row.drained))
    if title or told:
        style = style_of(title, told).replace("in syrup", "pieces")
        filling = replace(filling, style=style, said=" . ".join((title, *told)))
    return find_process(filling)


def foods_beyond(process: Process, things: Iterable[Weighed]) -> tuple[str, ...]:
    """Return what seasons a filling that keeps to a process, and was not in it when tested."""
    foods = _filling(tuple(row for row in things if not row.drained)).foods
    tested = process.main | process.beside
    return tuple(name for name in foods if same_food(name) not in tested)


def _filling(rows: tuple[Weighed, ...]) -> Filling:
    foods: dict[str, Fraction] = {}
    juices = [row for row in rows if _name(row) in _JUICES]
    for row in (*(row for row in rows if row.staple and row.tags & _IN_JARS), *juices):
        if row.tags & {"acid", "dried-fruit", "spice"}:
            continue
        foods[_name(row)] = foods.get(_name(row), Fraction(0)) + (row.grams or 0)
    if set(foods) - _JUICES:
        foods = {name: grams for name, grams in foods.items() if name not in _JUICES}
    vinegar = [row for row in rows if "vinegar" in row.tags]
    return Filling(
        foods=foods,
        vinegar_g=_sum(vinegar),
        lemon_g=_sum(row for row in rows if _name(row) in _LEMON),
        citric_g=_sum(row for row in rows if _name(row) in _CITRIC),
        water_g=_sum(row for row in rows if "water" in row.tags),
        sugar_g=_sum(row for row in rows if "sugar" in row.tags),
        others=frozenset(_name(row) for row in rows),
        untested=any(row.tags & _NEVER_TESTED and "flavouring" not in row.tags for row in rows),
        beyond=frozenset(
            _name(row) or row.words
            for row in rows
            if row.tags & _IN_NO_PICKLE and not row.tags & {"flavouring", "spice", "acid"}
        ),
    )


def _name(row: Weighed) -> str:
    return row.staple.name if row.staple else ""


def _sum(rows: Iterable[Weighed]) -> Fraction:
    return sum((row.grams or Fraction(0) for row in rows), Fraction(0))
