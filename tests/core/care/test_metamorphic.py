"""What changes nothing in a recipe may lose no caution; what is innocent may add no refusal.

A sample of the cases, always the same one, is tried in every run, all of them with
STILLROOM_CARE_CASES=1: only then a line of the known ones that has come right is asked for.
"""

from __future__ import annotations

import copy
import os
import re
from collections.abc import Callable, Iterator
from fractions import Fraction
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest

from care_cases import Case, Said, ask, load_cases, settings_of
from stillroom.core.care.safety_table import all_rules
from stillroom.core.words.problems import ProblemsFound

ALL = os.environ.get("STILLROOM_CARE_CASES") == "1"
SAMPLE = 90
# what is not yet right; a line goes when its case does, and none is added
KNOWN = Path(__file__).parents[2] / "golden/care/metamorphic_known.txt"

Written = dict[str, Any]
Change = Callable[[Written], Iterator[Written]]
LARDER = Path(__file__).parents[3] / "builder/stillroom/core/larder"
_AMOUNT = re.compile(r"^(\d+(?:\.\d+)?) ?(g|kg|ml|l|litres?|tbsp|tsp|cups?|c\.)\s+(?=[A-Za-z])")
_PLAIN = re.compile(r"^(\d+(?:\.\d+)?)( ?[A-Za-z].*)$")
# exact by definition: the avoirdupois ounce, the metric spoon, the US customary cup
_OTHER = {
    "g": ("oz", Fraction("28.349523125")),
    "kg": ("g", Fraction(1, 1000)),
    "ml": ("tsp", Fraction(5)),
    "l": ("cups", Fraction("0.2365882365")),
}
_SPELT = (
    ("aubergine", "eggplant"), ("courgette", "zucchini"), ("beetroot", "beets"),
    ("icing sugar", "powdered sugar"), ("double cream", "heavy cream"),
    ("plain flour", "all-purpose flour"), ("caster sugar", "superfine sugar"),
    ("chillies", "chilies"), ("whisky", "whiskey"), ("yoghurt", "yogurt"),
    ("garlic cloves", "cloves of garlic"), ("bicarbonate of soda", "baking soda"),
    ("elderberries", "elder berries"), ("birch sugar", "birch-sugar"), ("dry ice", "dry-ice"),
)  # fmt: skip
# these speak from an amount on (RULES.md), so that half a batch may honestly fall below it
_BY_AMOUNT = {
    "spirit-vapour", "spirit-heated", "boiling-sugar", "alcohol-in-food", "nutmeg", "chilli",
    "coumarin", "choking", "soda-excess",
}  # fmt: skip


def _number(value: Fraction) -> str:
    return f"{float(value):.6f}".rstrip("0").rstrip(".")


def _lines(written: Written, lines: list[str]) -> Iterator[Written]:
    """Yield the recipe with other lines, nothing when they are the same."""
    if lines != written["ingredients"]:
        yield {**copy.deepcopy(written), "ingredients": lines}


def _turn(written: Written, among: int) -> int:
    """Choose one of several by the recipe, always the same, so that all have their turn."""
    return len("".join([written["title"], *written["ingredients"]])) % among


def split(written: Written) -> Iterator[Written]:
    lines: list[str] = []
    for line in written["ingredients"]:
        if found := _AMOUNT.match(line):
            half = _number(Fraction(found[1]) / 2) + line[len(found[1]) :]
            lines += [half, half]
        else:
            lines.append(line)
    yield from _lines(written, lines)


def turn_round(written: Written) -> Iterator[Written]:
    yield from _lines(written, written["ingredients"][::-1])


def measure_otherwise(written: Written) -> Iterator[Written]:
    lines = list(written["ingredients"])
    for place, line in enumerate(lines):
        if (found := _AMOUNT.match(line)) and found[2] in _OTHER:
            unit, size = _OTHER[found[2]]
            lines[place] = f"{_number(Fraction(found[1]) / size)} {unit} {line[found.end() :]}"
    yield from _lines(written, lines)


def spell_otherwise(written: Written) -> Iterator[Written]:
    lines = list(written["ingredients"])
    for place, line in enumerate(lines):
        for ours, theirs in _SPELT:
            if ours in line and theirs not in line:
                line = line.replace(ours, theirs)
        if found := _AMOUNT.match(line):
            line = line[: found.end()] + line[found.end() :].capitalize()
        lines[place] = line
    yield from _lines(written, lines)


def _scale(written: Written, factor: Fraction) -> Iterator[Written]:
    found = [_PLAIN.match(line) for line in written["ingredients"]]
    if all(found):  # a line left unscaled would make another recipe
        lines = [_number(Fraction(one[1]) * factor) + one[2] for one in found if one]
        yield from _lines(written, lines)


def halve(written: Written) -> Iterator[Written]:
    yield from _scale(written, Fraction(1, 2))


def multiply(written: Written) -> Iterator[Written]:
    yield from _scale(written, Fraction(2 + _turn(written, 2)))


def move_to_method(written: Written) -> Iterator[Written]:
    lines = list(written["ingredients"])
    moved = lines.pop(_turn(written, len(lines)))
    if lines:
        (changed,) = _lines(written, lines)
        changed["method"].insert(0, f"Start with {moved.split(',')[0]}.")
        yield changed


@cache
def _foreign_names() -> dict[str, tuple[str, ...]]:
    """Return the names of each English food, the first of every language's list in the larder.

    A row of a list is the food, a tab, and its names parted by semicolons.
    """
    names: dict[str, tuple[str, ...]] = {}
    for path in sorted(LARDER.glob("names_*.tsv")):
        for row in path.read_text("utf-8").splitlines()[1:]:
            food, _, abroad = row.partition("\t")
            if first := abroad.split(";")[0].strip():
                names[food.casefold()] = (*names.get(food.casefold(), ()), first)
    return names


def name_abroad(written: Written) -> Iterator[Written]:
    lines = list(written["ingredients"])
    for place, line in enumerate(lines):
        if found := _AMOUNT.match(line):
            names = _foreign_names().get(line[found.end() :].casefold(), ())
            if names:
                lines[place] = line[: found.end()] + names[_turn(written, len(names))]
    yield from _lines(written, lines)


def add_water(written: Written) -> Iterator[Written]:
    yield {
        **copy.deepcopy(written), "ingredients": [*written["ingredients"], "100 ml water"]
    }  # fmt: skip


def add_garnish(written: Written) -> Iterator[Written]:
    changed = copy.deepcopy(written)
    changed["ingredients"].append("1 mint leaf, to garnish")
    changed["method"].append("Lay the mint leaf on it when it is served.")
    yield changed


KEEPS_ALL: dict[str, Change] = {
    "lines split in two": split,
    "the order turned round": turn_round,
    "another unit": measure_otherwise,
    "another spelling": spell_otherwise,
    "half the batch": halve,
    "two or three times the batch": multiply,
    "moved to the method": move_to_method,
    "named in another language": name_abroad,
}
ADDS_NONE: dict[str, tuple[Change, frozenset[str]]] = {
    # water thins what keeps by its acid or its salt, and there a refusal would be right
    "100 ml of water": (add_water, frozenset({"low_acid", "oil", "ferments"})),
    # fresh leaves in oil, in a sealed jar or for an animal are no innocent garnish
    "a mint leaf to garnish": (add_garnish, frozenset({"low_acid", "oil", "pets", "infants"})),
}


def _sample_of(cases: tuple[Case, ...]) -> list[Case]:
    """Return a sample by the cases' own names, so that new ones change few of it."""

    def place(case: Case) -> str:
        return sha256(f"{case['area']}: {case['name']}".encode()).hexdigest()

    return sorted(cases, key=place)[:SAMPLE]


@cache
def _before() -> list[tuple[Case, Said]]:
    """Return every case that reads, with what the book says of it unchanged."""
    read = []
    cases = load_cases()
    for case in cases if ALL else _sample_of(cases):
        try:
            read.append((case, ask(case["recipe"], settings_of(case))))
        except ProblemsFound:
            continue  # the reader asks about a line: test_care_cases.py counts those
    return read


def _lost(before: Said, after: Said, spared: set[str]) -> set[str]:
    """Return what no longer speaks; a caution that has become a refusal is not lost.

    Nor is how to keep it well, where it is refused now as a thing that must not be kept.
    """
    cautions = before.cautions - after.cautions - after.refusals - spared
    if after.refusals - before.refusals:
        cautions -= {name for name, rule in all_rules().items() if rule.silent_beside_refusal}
    return cautions | (before.refusals - after.refusals) | (before.allergens - after.allergens)


def _hold(name: str, wrong: list[str]) -> None:
    """Fail for what is wrong and not known, and in a whole run for what is known and right."""
    known = {line for line in KNOWN.read_text("utf-8").splitlines() if line.startswith(f"{name}: ")}
    found = {f"{name}: {line}" for line in wrong}
    assert found - known == set()
    if ALL:
        assert known - found == set()


def _report(name: str, tried: int, asked: int, wrong: list[str]) -> str:
    return f"{name}: {tried} tried, {asked} asked about, {len(wrong)} wrong"


@pytest.mark.parametrize("name", KEEPS_ALL)
def test_what_changes_nothing_loses_nothing(name: str) -> None:
    if name == "named in another language" and not _foreign_names():
        pytest.skip(f"{name}: 0 tried, the larder has no names_*.tsv")
    spared = _BY_AMOUNT if name == "half the batch" else set()
    tried, asked, wrong = 0, 0, list[str]()
    for case, before in _before():
        for changed in KEEPS_ALL[name](case["recipe"]):
            tried += 1
            try:
                lost = _lost(before, ask(changed, settings_of(case)), spared)
            except ProblemsFound:
                asked += 1  # a refusal to read is loud, and loses nothing
                continue
            if lost:
                wrong.append(f"{case['area']}: {case['name']} lost {', '.join(sorted(lost))}")
    print(_report(name, tried, asked, wrong))
    assert tried
    _hold(name, wrong)


@pytest.mark.parametrize("name", ADDS_NONE)
def test_what_is_innocent_adds_no_refusal(name: str) -> None:
    change, but = ADDS_NONE[name]
    tried, asked, wrong = 0, 0, list[str]()
    for case, before in _before():
        thins = (change is add_water and "+pickle" in case["expect"]) or (
            # the acid that leaves are soaked in before the oil, which water thins and leaves use up
            "acidified-oil" in case["expect"]
        )
        if not case["innocent"] or case["area"] in but or thins:
            continue
        for changed in change(case["recipe"]):
            tried += 1
            try:
                added = ask(changed, settings_of(case)).refusals - before.refusals
            except ProblemsFound:
                asked += 1
                continue
            if added:
                wrong.append(f"{case['area']}: {case['name']} gained {', '.join(sorted(added))}")
    print(_report(name, tried, asked, wrong))
    assert tried
    _hold(name, wrong)
