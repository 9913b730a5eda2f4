"""How well lines that other people wrote are read, against what people labelled.

    python tests/bench/bench_lines.py FOLDER [--show 20] [--half held-out] [--theirs]

FOLDER holds the labelled lines of the open-source library ingredient-parser (MIT; its `train/data`,
one folder a publisher): CSV with input, name, quantity, unit, size, preparation, comment, purpose.
Nothing of it is kept here. The sample is fixed by a rule: labelled rows in the order of the SHA-256
of their text, the first 4,600 of each publisher; those whose hash is even may be looked at while
working, the odd ones are held out. The library's own parser is scored on the same rows, by the
same rules, where it is installed. A line is right when amount, unit and food are; a refusal is
counted apart.
"""

from __future__ import annotations

import argparse
import csv
import hashlib
import random
import re
import time
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import all_units, convert, size_of
from stillroom.core.lines.reader import read_line
from stillroom.core.words.problems import Unreadable

SAMPLE = 4600
PUBLISHERS = {"bbc": "metric", "cookstr": "us"}
SIZES = set(
    [
        "small",
        "medium",
        "large",
        "big",
        "little",
        "tiny",
        "heaped",
        "heaping",
        "scant",
        "level",
        "rounded",
        "generous",
        "good",
        "fat",
        "thin",
        "thick",
        "whole",
        "fine",
        "long",
        "plump",
        "very",
        "medium-size",
        "medium-sized",
        "thumb-sized",
        "extra-large",
        "baby",
        "short",
        "jumbo",
        "good-sized",
        "paper-thin",
        "well-rounded",
        "extra",
        "double",
    ]
)
SAME = {
    "tablespoon": "tbsp",
    "tb": "tbsp",
    "tbs": "tbsp",
    "tsbp": "tbsp",
    "teaspoon": "tsp",
    "ounce": "oz",
    "pound": "lb",
    "gram": "g",
    "gramme": "g",
    "kilogram": "kg",
    "kilo": "kg",
    "litre": "l",
    "liter": "l",
    "milliliter": "ml",
    "millilitre": "ml",
    "floz": "fl oz",
    "pt": "pint",
    "dessertspoon": "dsp",
    "inch": "inch",
    "in": "inch",
    "fluid": "fl oz",
    "centimetre": "cm",
    "fl": "fl oz",
    "qt": "quart",
    "pack": "packet",
    "package": "packet",
    "quarts": "quart",
}
SUMMED = {
    "lb": "lb",
    "oz": "oz",
    "cup": "us_cup",
    "tbsp": "us_tbsp",
    "tsp": "us_tsp",
    "pint": "imp_pint",
    "fl oz": "imp_fl_oz",
    "kg": "kg",
    "g": "g",
    "quart": "us_quart",
    "l": "l",
    "ml": "ml",
}


def same_size(unit: str, other: str) -> bool:
    return size_of(SUMMED[unit]) == size_of(SUMMED[other])


def unit_name(word: str) -> str:
    bare = word.lower().strip(".")
    if bare.endswith("s") and bare not in ("glass", "molasses"):
        bare = {"leaves": "leaf", "loaves": "loaf", "pinches": "pinch", "bunches": "bunch"}.get(
            bare, bare[:-1]
        )
    bare = bare.removesuffix("-thick").removesuffix("-long")
    return SAME.get(bare, bare)


def numbers(text: str) -> list[Fraction]:
    found = []
    for token in text.replace("-", " ").split():
        match = re.fullmatch(r"(\d*)#(\d+)\$(\d+)", token)
        if match:
            found.append(Fraction(match[1] or 0) + Fraction(int(match[2]), int(match[3])))
        elif re.fullmatch(r"\d*\.?\d+", token):
            found.append(Fraction(token))
    return found


def units_of(text: str) -> list[str]:
    joined = re.sub(
        r"\bfl(?:uid)?\.?\s+oz\b|\bfl(?:uid)?\s+ounces?\b", "floz", text, flags=re.IGNORECASE
    )
    return [unit_name(word) for word in joined.split() if word.lower() not in SIZES]


@dataclass(frozen=True)
class Said:
    """What a reader made of a line, so that both are scored by the same rules."""

    low: Fraction | None
    high: Fraction | None
    units: tuple[str, ...]
    item: str
    note: str
    measured: bool
    one: Fraction | None = None


def ours(line: str, system: Any) -> Said:
    reading = read_line(line, system)
    amount = reading.amount
    counted = amount if isinstance(amount, Amount) else None
    words = [counted.noun] if counted and counted.noun else []
    for one in (counted, reading.each, *reading.also) if counted else ():
        if one is not None and one.unit:
            words.append(all_units()[one.unit].shown)
    return Said(
        counted and counted.low,
        counted and counted.high,
        tuple(unit_name(word) for word in words),
        reading.item,
        reading.note,
        bool(counted and counted.unit),
        reading.each and reading.each.low,
    )


def theirs(line: str) -> Said:
    from ingredient_parser import parse_ingredient

    parsed = parse_ingredient(line, string_units=True)
    amounts = [one for part in parsed.amount for one in getattr(part, "amounts", [part])]
    ends = [
        Fraction(str(value)).limit_denominator(1000)
        if isinstance(value, (int, float, Fraction))
        else None
        for value in (
            getattr(amounts[0] if amounts else None, name, None)
            for name in ("quantity", "quantity_max")
        )
    ]
    units = [name for one in amounts for name in units_of(str(getattr(one, "unit", "")))]
    note = " ".join(
        part.text for part in (parsed.comment, parsed.preparation, parsed.purpose) if part
    )
    item = " ".join(name.text for name in parsed.name)
    own = bool(amounts) and bool(units_of(str(getattr(amounts[0], "unit", ""))))
    return Said(ends[0], ends[1] or ends[0], tuple(units), item, note, own)


def amount_right(said: Said, row: dict[str, str]) -> bool:
    wanted = numbers(row["quantity"])
    if not wanted:
        return said.low is None or said.low == said.high == 1
    if said.low is None or said.high is None:
        return False
    first = wanted[0]
    near = any(abs(end - first) < Fraction(1, 100) for end in (said.low, said.high))
    if near and (
        said.low == said.high or any(abs(said.high - w) < Fraction(1, 100) for w in wanted[:3])
    ):
        return True
    if said.one is not None and said.one == first:
        return True
    units = units_of(row["unit"])
    if units[:1] == ["stick"] and said.measured:  # of butter: eight tablespoons, as it is marked
        first, units = first * 8, ["tbsp", *units[1:]]
    if len(wanted) > 1 and said.measured and len(units) > 1:  # a sum
        for unit, other in ((units[0], units[1]), (units[0], units[0])):
            if unit in SUMMED and other in SUMMED and same_size(unit, other):
                total = first + convert(wanted[1], SUMMED[other], SUMMED[unit])
                if abs(total - said.low) < Fraction(1, 50) * total:
                    return True
    return False


def unit_right(said: Said, row: dict[str, str]) -> bool:
    wanted = units_of(row["unit"])
    if not wanted:  # a size is no unit to those who labelled: "8 (6-inch) tortillas"
        return not said.units or not said.measured
    if said.units and said.units[0] in wanted:
        return True
    # "garlic cloves", "(about 6 ounces each)": kept with the food or its note, not lost
    kept = units_of(re.sub(r"[^A-Za-z ]", " ", f"{said.item} {said.note}"))
    return not said.measured and set(wanted) <= set(kept) | set(said.units)


def stems(text: str) -> set[str]:
    words = re.findall(r"[a-zà-ÿ0-9½¼¾]+", text.lower().replace("’", "'"))
    odd = {"leaves": "leaf", "halves": "half", "loaves": "loaf"}
    return {_one(odd.get(word, word)) for word in words if len(word) > 1}


def _one(word: str) -> str:
    """Return one of it, so that "cloves" and "clove", "berries" and "berry" are the same food."""
    word = re.sub(r"ies$", "y", word)
    word = re.sub(r"(?<=ss|sh|ch|to)es$|(?<=x|z)es$", "", word)
    return re.sub(r"(?<=[^su])s$", "", word)


def food_right(item: str, note: str, row: dict[str, str]) -> bool:
    """Say whether the label's name stands in the item, with nothing but words said beside it."""
    name, own = stems(row["name"]), stems(item)
    beside = stems(
        " ".join(row[key] for key in ("size", "preparation", "comment", "purpose", "unit", "name"))
    )
    loose = {"fresh", "freshly", "the", "of", "and", "or", "finely", "roughly"}
    return (
        bool(name - loose <= own | stems(note))
        and bool(own - beside - loose == set())
        and bool(own & name)
    )


def sample(folder: Path, publisher: str, half: str) -> list[dict[str, str]]:
    path = next(folder.rglob(f"{publisher}*.csv"))
    with path.open(encoding="utf-8", newline="") as file:
        rows = [row for row in csv.DictReader(file) if row["name"]]
    hashed = sorted(
        (hashlib.sha256(row["input"].encode()).hexdigest(), place) for place, row in enumerate(rows)
    )
    chosen = [(int(code[-1], 16) % 2, rows[place]) for code, place in hashed[:SAMPLE]]
    return [row for odd, row in chosen if half == "both" or odd == (half == "held-out")]


def score(
    rows: list[dict[str, str]], read: Callable[[str], Said]
) -> tuple[Counter[str], list[tuple[str, str, Any]]]:
    """Score a reader; what it refuses is asked, and never counted among the right."""
    counted: Counter[str] = Counter()
    missed = []
    for row in rows:
        counted["lines"] += 1
        try:
            said = read(row["input"])
        except Unreadable as asked:
            counted["asked"] += 1
            missed.append(("asked", row["input"], str(asked)))
            continue
        right = {
            "amount": amount_right(said, row),
            "unit": unit_right(said, row),
            "food": food_right(said.item, said.note, row),
        }
        counted.update(name for name, good in right.items() if good)
        counted["all"] += all(right.values())
        counted["amount and unit"] += right["amount"] and right["unit"]
        if not (right["amount"] and right["unit"]):
            missed.append(("amount or unit", row["input"], (said, row["quantity"], row["unit"])))
        elif not right["food"]:
            missed.append(("food", row["input"], (said.item, said.note, row["name"])))
    return counted, missed


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("folder", type=Path)
    options.add_argument("--half", choices=["working", "held-out", "both"], default="working")
    options.add_argument("--show", type=int, default=0)
    options.add_argument("--theirs", action="store_true")
    asked = options.parse_args()
    heads = ("lines", "all", "amount and unit", "amount", "unit", "food", "asked")
    print(f"{'':24}" + "".join(f"{head:>17}" for head in heads))
    for publisher, system in PUBLISHERS.items():
        rows = sample(asked.folder, publisher, asked.half)
        begun = time.process_time()
        counted, missed = score(rows, lambda line, system=system: ours(line, system))
        spent = (time.process_time() - begun) / max(len(rows), 1) * 1e6
        print(
            f"{publisher + ' ours':24}" + "".join(f"{counted[head]:>17}" for head in heads),
            f"{spent:.0f} us a line",
        )
        if asked.theirs:
            other, _ = score(rows, theirs)
            print(f"{publisher + ' theirs':24}" + "".join(f"{other[head]:>17}" for head in heads))
        random.Random(7).shuffle(missed)
        for kind in ("asked", "amount or unit", "food"):
            for row in [one for one in missed if one[0] == kind][: asked.show]:
                print("  ", *row)


if __name__ == "__main__":
    main()
