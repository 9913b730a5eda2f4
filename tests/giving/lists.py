"""Giving lists for tests, made from the demo book's recipes. All names are invented."""

from __future__ import annotations

import random
import re
from datetime import date
from functools import cache
from pathlib import Path

import yaml

from stillroom.core.book import open_book
from stillroom.core.reading.loading import load_recipes
from stillroom.giving.reading import ReadList, read_giving_list

ROOT = Path(__file__).resolve().parents[2]
TODAY = date(2026, 11, 25)
MAKES = [
    {"recipe": "quince-ratafia", "container": "bottle, 100 ml"},
    {"recipe": "bitter-orange-spirit", "sort": "eat"},
    {"recipe": "heather-mead"},
    {"recipe": "cocoa-marshmallow-mix", "sort": "drink", "per batch": 3},
    {"recipe": "rosemary-salt"},
    {"recipe": "quince-chutney"},
    {"recipe": "bramble-jelly"},
    {"recipe": "almond-shortbread", "per batch": 3},
    {"recipe": "oat-thyme-biscuits", "per batch": 3},
    {"recipe": "salted-honey-toffee", "per batch": 4},
    {"recipe": "dried-orange-garland", "per batch": 1},
    {"recipe": "beeswax-wraps", "per batch": 2},
    {"recipe": "felted-bauble", "per batch": 3},
]
PRICES = [
    {"item": "granulated sugar", "packs": ["1 kg for 1.15", "5 kg for 5.25"]},
    {"item": "coarse sea salt", "packs": ["250 g for 1.90"]},
    {"item": "jar, 200 ml", "packs": ["1 for 0.75", "12 for 6.60"], "section": "containers"},
    {"item": "brandy", "packs": ["700 ml for 16.50", "1 l for 21.50"]},
]
AVOIDS = [
    "gluten",
    "nuts",
    "milk",
    "eggs",
    "mustard",
    "celery",
    "soya",
    "alcohol",
    "animal products",
]


@cache
def demo_book():
    return open_book(ROOT / "mkdocs.yml")


@cache
def demo_recipes():
    book = demo_book()
    return load_recipes(book.recipe_files(), book.root, book.settings.units)


def read_dict(data: dict) -> ReadList:
    return read_giving_list(yaml.safe_dump(data, sort_keys=False, allow_unicode=True), "list.yml")


def small_list(**changes) -> dict:
    """Return a list of two households, changed as told."""
    data = {
        "giving list": "Winter 2027",
        "giving day": "2027-12-18",
        "from": "Hob and Nan",
        "baskets": {"small": {"eat": 2, "drink": 1, "cost": 1.2}},
        "makes": MAKES,
        "households": [
            {"name": "Ysolde Fennimore", "basket": "small"},
            {"name": "The Cragbies", "basket": "small", "avoid": ["gluten"], "adults": 2},
        ],
    }
    return data | changes


def random_list(seed: int) -> dict:
    """Return a list with random needs, some of which nothing on offer can meet."""
    dice = random.Random(seed)
    households = []
    for n in range(dice.randint(2, 6)):
        household = {"name": f"Household {n}", "basket": dice.choice(["small", "large"])}
        household["avoid"] = dice.sample(AVOIDS, dice.choice([0, 0, 1, 1, 2, 3]))
        if dice.random() < 0.2:
            household["avoid ingredients"] = [dice.choice(["cinnamon", "quince", "lemon"])]
        household["adults"] = dice.choice([1, 2, 2, 0])
        ages = [
            dice.choice(["3 months", "11 months", 1, 2, 4, 5, 9]) for _ in range(dice.randint(0, 2))
        ]
        household["children"] = ages or ([9] if household["adults"] == 0 else [])
        household["pregnant"] = dice.random() < 0.15
        household["delivery"] = dice.choice(["by hand", "by hand", "by post"])
        household["never"] = dice.sample([m["recipe"] for m in MAKES], dice.choice([0, 0, 1]))
        household["likes"] = dice.sample([m["recipe"] for m in MAKES], dice.choice([0, 1]))
        households.append(household)
    makes = [
        {**make, "batches": dice.randint(0, 2)} for make in dice.sample(MAKES, dice.randint(5, 13))
    ]
    baskets = {
        "small": {"eat": dice.randint(1, 2), "drink": 1},
        "large": {"eat": dice.randint(2, 4), "drink": 1, "craft": 1},
    }
    on_offer = {make["recipe"] for make in makes}
    for household in households:
        household["likes"] = [slug for slug in household["likes"] if slug in on_offer]
    return small_list(baskets=baskets, makes=makes, households=households)


def tiny_list(seed: int) -> dict:
    """Return a list of one or two baskets and three makes, with prices, hours and a shelf."""
    dice = random.Random(seed)
    makes = [{**make, "batches": dice.choice([0, 1, 1])} for make in dice.sample(MAKES, 3)]
    households = [
        {
            "name": f"Household {n}",
            "basket": "small",
            "avoid": dice.sample(AVOIDS, dice.choice([0, 0, 1])),
            "delivery": dice.choice(["by hand", "by hand", "by post"]),
        }
        for n in range(dice.randint(1, 2))
    ]
    changes: dict = {
        "baskets": {"small": {"eat": dice.randint(1, 2), "drink": 1, "craft": dice.randint(0, 1)}},
        "makes": makes,
        "households": households,
        "giving day": dice.choice(["2026-12-24", "2027-06-19", "2027-12-18"]),
    }
    if dice.random() < 0.7:
        changes["prices"] = dice.sample(PRICES, dice.randint(1, 4))
    if dice.random() < 0.4:
        changes["hours"] = {"every month": dice.choice([1, 2, 4])}
    if dice.random() < 0.3:
        made = {"recipe": makes[0]["recipe"], "number": 2, "made on": "2026-11-01"}
        container = makes[0].get("container")
        changes["stock"] = {"made": [made | ({"container": container} if container else {})]}
    return small_list(**changes)


def write_somebody(path: Path, name: str = "The Marrables") -> None:
    """Write one household into a list that was begun, as its own hints show it."""
    said = {"name": name, "avoid": "nuts, dairy", "children": "[8 months, 4]"}

    def written(found: re.Match[str]) -> str:
        return f"{found[1]}{found[2]}: {said.get(found[2], found[3])}"

    text = path.read_text(encoding="utf-8")
    head, _, below = text.partition("households:\n")
    hints, _, others = below.partition("\n\n")
    shown = re.compile(r"^#(  (?:- |  ))([a-z ]+): *([^#\n]*)(?:#.*)?$", re.MULTILINE)
    rows = shown.sub(written, hints)
    path.write_text(f"{head}households:\n{rows}\n\n{others}", encoding="utf-8")
