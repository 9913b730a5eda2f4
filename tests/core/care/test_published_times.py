"""Every published time against the tables as printed, and none for a jar or pack they leave out.

The table beside this file was typed from the text of the guide, apart from the data.
"""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.processes import Process, all_processes
from stillroom.core.care.safety import assess_safety

FOOT = Fraction("0.3048")
# an altitude at each end of each printed column, and its place among three columns and among four
ALTITUDES = [(0, 0, 0), (1000, 0, 0), (1001, 1, 1), (3000, 1, 1), (3001, 1, 2), (6000, 1, 2)]
ALTITUDES += [(6001, 2, 3), (9000, 2, 3)]
JARS = ("half-pint", "pint", "quart")
Row = tuple[str, str, str, tuple[int, ...]]


def rows() -> list[Row]:
    text = (Path(__file__).parent / "published_times.tsv").read_text(encoding="utf-8")
    found: list[Row] = []
    for line in text.splitlines():
        if not line.startswith("#"):
            name, page, pack, jars, minutes = line.split("\t")
            figures = tuple(int(one) for one in minutes.split())
            found += [(name, pack, jar, figures) for jar in jars.split()]
            assert page in by_name(name).source
    return found


def by_name(name: str) -> Process:
    return next(process for process in all_processes() if process.name == name)


@pytest.mark.parametrize("row", rows(), ids=lambda row: " ".join(row[:3]))
def test_the_minutes_are_those_printed(row: Row) -> None:
    name, pack, jar, figures = row
    for feet, of_three, of_four in ALTITUDES:
        printed = figures[of_three if len(figures) == 3 else of_four]
        assert by_name(name).minutes(jar, feet * FOOT, pack) == printed


def test_nothing_else_has_a_time() -> None:
    printed = {(name, pack, jar) for name, pack, jar, _ in rows()}
    # Guide 1, page 1-23: a half-pint takes the time of a pint
    printed |= {(name, pack, "half-pint") for name, pack, jar in printed if jar == "pint"}
    told = {
        (process.name, pack, jar)
        for process in all_processes()
        for pack in ("hot", "raw")
        for jar in JARS
        if process.minutes(jar, 0, pack) is not None
    }
    assert told == printed


def test_a_process_has_sense() -> None:
    for process in all_processes():
        assert set(process.packs) <= {"hot", "raw"}
        for jars in process.packs.values():
            assert set(jars) <= set(JARS)
            for minutes in jars.values():
                assert list(minutes) == sorted(minutes)
        assert process.read == "read"


def said_of(title: str, ingredients: list[str], *method: str) -> str:
    facts = {"title": title, "kind": "preserve", "ingredients": ingredients, "method": list(method)}
    box = assess_safety(recipe_of(facts | {"keeps": "1 year"}), BookSettings())
    return " ".join(one.to_maker for one in box.cautions if one.rule.startswith("process-"))


BOIL = "Fill hot jars and boil the filled jars."


CHILE_SALSA = ["5 lb tomatoes", "2 lb chile peppers", "1 lb onions", "1 cup white vinegar"]
TOMATOES = ["3 kg tomatoes", "500 ml water", "130 ml lemon juice"]


@pytest.mark.parametrize(
    ("title", "ingredients", "method", "part"),
    [
        ("Peaches in syrup", ["2 kg peaches", "300 g sugar", "1 l water"], "Boil.", "jars 25 m"),
        ("Peach jam", ["1 kg peaches", "800 g sugar"], "Boil to a set.", "jam or jelly"),
        ("Bottled raspberries", ["1 kg raspberries", "500 ml water"], "Pack.", "filled raw"),
        ("Raspberry syrup", ["800 g raspberries", "1.35 kg sugar"], "Strain.", "jars 10 min"),
        ("Figs", ["1.1 kg figs", "500 ml water", "2 tbsp lemon juice"], "Boil.", "quart jars 50 m"),
        ("Tomatoes", TOMATOES, "Peel.", "quart jars 45"),
        ("Chile salsa", CHILE_SALSA, "Simmer.", "pint jars 15"),
    ],
)
def test_a_recipe_is_told_its_own_time(
    title: str, ingredients: list[str], method: str, part: str
) -> None:
    assert part in said_of(title, ingredients, method, BOIL)


@pytest.mark.parametrize(
    ("title", "ingredients", "method"),
    [
        ("Quinces in syrup", ["1 kg quinces", "300 g sugar", "500 ml water"], "Boil."),
        ("Peaches in brandy", ["1 kg peaches", "300 g sugar", "500 ml brandy"], "Boil."),
        ("Elderflower cordial", ["1 kg sugar", "700 ml water", "50 g citric acid"], "Strain."),
        ("Cranberry sauce", ["500 g cranberries", "300 g sugar", "250 ml water"], "Boil."),
        ("Apple pie filling", ["2 kg apples", "200 g cornflour", "140 ml lemon juice"], "Boil."),
        ("Peaches and quinces", ["1 kg peaches", "300 g quinces", "500 ml water"], "Boil."),
        ("Plum butter", ["2 kg plums", "500 g sugar"], "Sieve and cook until thick."),
    ],
)
def test_another_is_told_no_time(title: str, ingredients: list[str], method: str) -> None:
    assert "minutes" not in said_of(title, ingredients, method, BOIL)
