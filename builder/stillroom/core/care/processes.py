"""Published processes for filled jars, for the foods and the proportions they were tested with.

The figures are in processes.yml, each with its page; none is ever carried over to another food.
Altitude steps differ by recipe. Leaves out what a recipe holds: whoever knows that hands over
grams by the staple's name.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from functools import cache
from typing import Any

from stillroom.core.batch.altitude import FEET_PER_METRE
from stillroom.core.words.data_files import read_data

# a kitchen's measures, and a vegetable's weight by the cup, are good to a tenth
_NEAR_ENOUGH = Fraction(9, 10)
# garlic, ginger, chilli and the like season a brine in less than this share of what is pickled
_SEASONING = Fraction(3, 100)
# the altitudes in feet at which the columns of a table end, by how many columns it has
_STEPS_FT = {3: (1000, 6000), 4: (1000, 3000, 6000)}
# Guide 1, page 1-23: a half-pint takes the time of a pint
_LARGER = {"half-pint": "pint"}
# the same food to a jar
_SAME = {
    name: kept
    for kept, names in {
        "cucumber": ("pickling cucumber", "gherkin"),
        "garlic": ("garlic bulb", "garlic head"),
        "courgette": ("zucchini", "summer squash"),
        "sweet pepper": (
            "sweet red pepper", "sweet green pepper", "bell pepper", "pimiento", "pimento",
            "yellow pepper", "orange pepper", "red pepper", "green pepper",
        ),
        "mushroom": ("button mushroom", "chestnut mushroom"),
        "chilli": (
            "jalapeno", "jalapeno pepper", "serrano pepper", "serrano chile", "hot pepper",
            "green chilli", "red chilli", "green chile", "red chile", "chile pepper",
            "anaheim pepper", "anaheim chile", "banana pepper", "hungarian pepper",
        ),
        "chickpeas": (
            "canned chickpea", "cooked chickpea", "tinned chickpea", "tinned chickpeas",
            "tinned garbanzo bean", "canned garbanzo bean", "garbanzo bean",
        ),
        "kidney beans": (
            "canned kidney bean", "cooked kidney bean", "canned red kidney bean", "red kidney bean",
            "tinned kidney bean", "tinned red kidney bean", "tinned kidney beans",
        ),
        "onion": (
            "yellow onion", "white onion", "red onion", "brown onion", "sweet onion", "shallot",
        ),
        "green bean": ("green beans", "wax bean", "yellow bean"),
        "cabbage": ("white cabbage", "green cabbage"),
        "cherry": ("sour cherry", "montmorency cherry", "tart cherry", "bing cherry"),
        "apple": (
            "cooking apple", "bramley apple", "eating apple", "windfall apple", "braeburn apple",
            "cox apple", "fuji apple", "gala apple", "golden delicious apple", "tart apple",
            "granny smith apple", "pink lady apple",
        ),
        "pear": (
            "cooking pear", "anjou pear", "bartlett pear", "bosc pear", "comice pear",
            "conference pear", "williams pear",
        ),
        "asian pear": ("nashi pear",),
        "plum": ("victoria plum", "prune plum"),
        "grapefruit": ("pink grapefruit", "red grapefruit", "ruby grapefruit"),
        "grape": ("concord grape", "muscat grape"),
        "tomato": (
            "roma tomato", "san marzano tomato", "beefsteak tomato", "red tomato", "salad tomato",
            "vine-ripened tomato",
        ),
    }.items()
    for name in names
}  # fmt: skip


@dataclass(frozen=True)
class Process:
    """One published process; ratios in g to g, `packs` minutes by pack, jar and altitude.

    `water` is None where any covering liquid will do; `sour` names what of each is enough.
    """

    name: str
    main: frozenset[str]
    beside: frozenset[str]
    share: Fraction
    style: str
    said: str
    needs: frozenset[str]
    together: frozenset[str]
    vinegar: Fraction
    lemon: Fraction
    water: Fraction | None
    sugar: Fraction
    sour: Mapping[str, Fraction]
    packs: Mapping[str, Mapping[str, tuple[int, ...]]]
    headspace_in: Fraction
    source: str
    read: str

    def minutes(self, jar: str, altitude_m: Fraction | int, pack: str = "") -> int | None:
        """Return the minutes in boiling water; None for a jar or a pack that was not tested.

        Without a pack the longest of them.

        >>> beets = next(one for one in all_processes() if one.name == "pickled beets")
        >>> beets.minutes("pint", 0), beets.minutes("pint", 1000), beets.minutes("half-pint", 0)
        (30, 40, 30)
        """
        found = [
            columns
            for name, jars in self.packs.items()
            if name == (pack or name)
            and (columns := jars.get(jar) or jars.get(_LARGER.get(jar, "")))
        ]
        feet = altitude_m * FEET_PER_METRE
        times = [row[sum(feet > step for step in _STEPS_FT[len(row)])] for row in found]
        return max(times, default=None)


@dataclass(frozen=True)
class Filling:
    """What goes into the jars, in g: low-acid and fruit by staple, and what keeps them.

    `style` is how it is made (jar_styles.py), "" where nobody says; `others` names all that is in
    it, `untested` whether something is that no table of fruit was tested with; `beyond` names what
    no table of the guide was, unless the table names it itself: nuts, meat, milk, grain.
    """

    foods: Mapping[str, Fraction]
    vinegar_g: Fraction = Fraction(0)
    lemon_g: Fraction = Fraction(0)
    citric_g: Fraction = Fraction(0)
    water_g: Fraction = Fraction(0)
    sugar_g: Fraction = Fraction(0)
    style: str = ""
    said: str = ""
    others: frozenset[str] = field(default_factory=frozenset)
    untested: bool = False
    beyond: frozenset[str] = field(default_factory=frozenset)

    @property
    def food_g(self) -> Fraction:
        """The weight of everything that must be made safe."""
        return sum(self.foods.values(), Fraction(0))


@cache
def all_processes() -> tuple[Process, ...]:
    """Return every published process of the book, in the order of the file."""
    table = read_data("processes.yml", "care")
    return tuple(_read(row, table) for row in table["rows"])


def _read(row: Mapping[str, Any], table: Mapping[str, Any]) -> Process:
    return Process(
        name=row["name"],
        main=frozenset(row["main"]),
        beside=frozenset(row["with"]),
        share=Fraction(str(row.get("share", "0.5"))),
        style=row.get("style", ""),
        said=row.get("said", ""),
        needs=frozenset(row.get("needs", ())),
        together=frozenset(row.get("together", ())),
        vinegar=Fraction(str(row.get("vinegar", 0))),
        lemon=Fraction(str(row.get("lemon", 0))),
        water=None if row["water"] == "any" else Fraction(str(row["water"])),
        sugar=Fraction(str(row.get("sugar", 0))),
        sour={name: Fraction(str(ratio)) for name, ratio in row.get("sour", {}).items()},
        packs={
            pack: {jar: tuple(minutes) for jar, minutes in jars.items()}
            for pack, jars in row["packs"].items()
        },
        headspace_in=Fraction(str(row["headspace_in"])),
        source=f"{table['guide']}, {row['where']}",
        read=table["read"],
    )


def find_process(filling: Filling) -> Process | None:
    """Return the published process whose foods and proportions a filling keeps, or None.

    More vinegar, lemon juice or sugar than published keeps it; less, or more water, does not, and
    neither does any food the recipe was not tested with beyond a seasoning. What is made of fruit
    alone must be made as published, too.
    """
    foods: dict[str, Fraction] = {}
    for name, grams in filling.foods.items():
        same = same_food(name)
        foods[same] = foods.get(same, Fraction(0)) + grams
    plain = replace(filling, foods=foods, beyond=frozenset(map(same_food, filling.beyond)))
    return next((one for one in all_processes() if _keeps_to(one, plain)), None)


def same_food(name: str) -> str:
    """Return the name under which the tables know a food: "shallot" is "onion" to a jar."""
    return _SAME.get(name, name)


def _keeps_to(process: Process, filling: Filling) -> bool:
    return (
        _made_so(process, filling)
        and _of_these_foods(process, filling)
        and _sour_enough(process, filling)
    )


def _made_so(process: Process, filling: Filling) -> bool:
    if process.style and (process.style != filling.style or filling.untested):
        return False
    if filling.beyond - process.main - process.beside:
        return False
    if process.said and not re.search(process.said, filling.said, re.IGNORECASE):
        return False
    # boiled down with sugar and dried fruit it is thicker in the jar than a relish
    if "chutney" not in process.name and re.search(r"\bchutney\b", filling.said, re.IGNORECASE):
        return False
    return process.needs <= filling.others and process.together <= set(filling.foods)


def _of_these_foods(process: Process, filling: Filling) -> bool:
    food = filling.food_g
    tested = process.main | process.beside
    foreign = sum((g for name, g in filling.foods.items() if name not in tested), Fraction(0))
    main = sum((g for name, g in filling.foods.items() if name in process.main), Fraction(0))
    least = process.share if process.share == Fraction(1, 2) else process.share * _NEAR_ENOUGH
    return bool(food) and foreign <= food * _SEASONING and main >= least * food


def _sour_enough(process: Process, filling: Filling) -> bool:
    food = filling.food_g
    everything = food + filling.vinegar_g + filling.lemon_g + filling.water_g + filling.sugar_g
    has = {"lemon": filling.lemon_g, "citric": filling.citric_g, "vinegar": filling.vinegar_g}
    enough = not process.sour or any(
        has[name] >= food * ratio * _NEAR_ENOUGH for name, ratio in process.sour.items()
    )
    drier = process.water is None or (
        filling.water_g * _NEAR_ENOUGH <= filling.vinegar_g * process.water
    )
    return (
        enough
        and drier
        and filling.vinegar_g >= food * process.vinegar * _NEAR_ENOUGH
        and filling.lemon_g >= food * process.lemon * _NEAR_ENOUGH
        and filling.sugar_g >= everything * process.sugar * _NEAR_ENOUGH
    )
