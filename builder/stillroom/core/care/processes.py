"""Published processes for filled jars, for the foods and the proportions they were tested with.

The figures are in processes.yml, each with its source; none is ever carried over to another food.
Altitude steps differ by recipe. Leaves out what a recipe holds: whoever knows that hands over
grams by the staple's name.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from importlib.resources import files

import yaml

from stillroom.core.altitude import FEET_PER_METRE

# a kitchen's measures, and a vegetable's weight by the cup, are good to a tenth
_NEAR_ENOUGH = Fraction(9, 10)
# garlic, ginger, chilli and the like season a brine in less than this share of what is pickled
_SEASONING = Fraction(3, 100)
# the same food to a jar of pickles
_SAME = {
    "pickling cucumber": "cucumber", "gherkin": "cucumber", "zucchini": "courgette",
    "sweet red pepper": "sweet pepper", "sweet green pepper": "sweet pepper",
    "bell pepper": "sweet pepper", "pimiento": "sweet pepper", "pimento": "sweet pepper",
    "button mushroom": "mushroom", "chestnut mushroom": "mushroom", "jalapeno": "chilli",
    "serrano pepper": "chilli", "serrano chile": "chilli", "hot pepper": "chilli",
    "canned chickpea": "chickpeas", "cooked chickpea": "chickpeas",
    "canned kidney bean": "kidney beans", "cooked kidney bean": "kidney beans",
    "canned red kidney bean": "kidney beans", "red kidney bean": "kidney beans",
    "yellow onion": "onion", "white onion": "onion", "red onion": "onion", "shallot": "onion",
    "green beans": "green bean", "wax bean": "green bean", "yellow bean": "green bean",
    "white cabbage": "cabbage", "green cabbage": "cabbage",
}  # fmt: skip


@dataclass(frozen=True)
class Process:
    """One published process; ratios in g to g, `jars` minutes by size, one for each altitude."""

    name: str
    main: frozenset[str]
    beside: frozenset[str]
    vinegar: Fraction
    lemon: Fraction
    water: Fraction
    sugar: Fraction
    pack: str
    steps_ft: tuple[int, ...]
    jars: Mapping[str, tuple[int, ...]]
    headspace_in: Fraction
    source: str
    read: str

    def minutes(self, jar: str, altitude_m: Fraction | int) -> int | None:
        """Return the minutes in boiling water; None for a jar that was not tested.

        >>> beets = next(one for one in all_processes() if one.name == "pickled beets")
        >>> beets.minutes("pint", 0), beets.minutes("pint", 1000), beets.minutes("half-pint", 0)
        (30, 40, None)
        """
        if jar not in self.jars:
            return None
        feet = altitude_m * FEET_PER_METRE
        return self.jars[jar][sum(feet > step for step in self.steps_ft)]


@dataclass(frozen=True)
class Filling:
    """What goes into the jars, in g: low-acid and fruit by staple, and what keeps them."""

    foods: Mapping[str, Fraction]
    vinegar_g: Fraction = Fraction(0)
    lemon_g: Fraction = Fraction(0)
    water_g: Fraction = Fraction(0)
    sugar_g: Fraction = Fraction(0)

    @property
    def food_g(self) -> Fraction:
        """The weight of everything that must be made safe."""
        return sum(self.foods.values(), Fraction(0))


@cache
def all_processes() -> tuple[Process, ...]:
    """Return every published process of the book, in the order of the file."""
    text = (files("stillroom.core.care") / "processes.yml").read_text(encoding="utf-8")
    return tuple(
        Process(
            name=row["name"],
            main=frozenset(row["main"]),
            beside=frozenset(row["with"]),
            vinegar=Fraction(str(row["vinegar"])),
            lemon=Fraction(str(row.get("lemon", 0))),
            water=Fraction(str(row["water"])),
            sugar=Fraction(str(row.get("sugar", 0))),
            pack=row["pack"],
            steps_ft=tuple(row["steps_ft"]),
            jars={jar: tuple(minutes) for jar, minutes in row["jars"].items()},
            headspace_in=Fraction(str(row["headspace_in"])),
            source=row["source"],
            read=row["read"],
        )
        for row in yaml.safe_load(text)
    )


def find_process(filling: Filling) -> Process | None:
    """Return the published process whose foods and proportions a filling keeps, or None.

    More vinegar, lemon juice or sugar than published keeps it; less, or more water, does not, and
    neither does any food the recipe was not tested with beyond a seasoning.
    """
    foods: dict[str, Fraction] = {}
    for name, grams in filling.foods.items():
        same = _SAME.get(name, name)
        foods[same] = foods.get(same, Fraction(0)) + grams
    plain = replace(filling, foods=foods)
    return next((one for one in all_processes() if _keeps_to(one, plain)), None)


def _keeps_to(process: Process, filling: Filling) -> bool:
    food = filling.food_g
    tested = process.main | process.beside
    foreign = sum((g for name, g in filling.foods.items() if name not in tested), Fraction(0))
    main = sum((g for name, g in filling.foods.items() if name in process.main), Fraction(0))
    if not food or foreign > food * _SEASONING or 2 * main < food:
        return False
    everything = food + filling.vinegar_g + filling.lemon_g + filling.water_g + filling.sugar_g
    return (
        filling.vinegar_g >= food * process.vinegar * _NEAR_ENOUGH
        and filling.lemon_g >= food * process.lemon * _NEAR_ENOUGH
        and filling.water_g * _NEAR_ENOUGH <= filling.vinegar_g * process.water
        and filling.sugar_g >= everything * process.sugar * _NEAR_ENOUGH
    )
