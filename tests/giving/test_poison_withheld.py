"""What the safety box says can sicken is given to nobody whom it would hurt most.

A cordial of elderberries crushed raw went to a pregnant woman with a child of three. CDC MMWR,
Poisoning from elderberry juice, California 1983; BfR 22/2018 on comfrey and borage. Written before.
"""

from __future__ import annotations

from datetime import date

import pytest

from giving.test_charities import read_household
from stillroom.core.reading.loading import read_recipe
from stillroom.giving.facts import facts_of
from stillroom.giving.rules import why_refused

DAY = date(2026, 12, 20)
RAW = (
    ("500 g elderberries", "400 g honey", "400 ml water"),
    "Crush the berries raw with the honey. Strain. Keeps 6 months in the freezer.",
    "preserve",
)
SPIRIT = (
    ("500 g elderberries", "700 ml vodka", "200 g sugar"),
    "Steep for 3 months. Strain and bottle. Keeps 2 years.",
    "infusion",
)
COOKED = (
    ("500 g elderberries", "400 g sugar", "400 ml water"),
    "Boil the berries with the water for 20 minutes, strain, boil with the sugar. Keeps 1 "
    "month in the fridge.",
    "preserve",
)
# healingspiritsherbfarm.com; LactMed knows no data on doses of it, and jelly is no dose
SYRUP = (
    ("100 g dried elderberries", "700 ml water", "340 g honey"),
    "Boil for 45 minutes, strain, stir in the honey. Bottle the syrup. Keeps 1 month in the "
    "fridge.",
    "preserve",
)
JELLY = (
    ("1 kg elderberries", "1 kg sugar", "1 lemon"),
    "Boil the berries, strain, boil with the sugar to a set. Fill jars.",
    "preserve",
)
TEA = (("50 g dried elderberries", "50 g dried mint"), "Mix. Keeps 1 year.", "dry mix")
BORAGE = (("50 g comfrey leaves", "300 g sugar"), "Pound together. Keeps 1 year.", "infused sugar")
KAVA = (("50 g kava root", "50 g dried mint"), "Mix. Keeps 1 year.", "dry mix")
MUSHROOM = (("100 g chanterelles", "300 g salt"), "Grind. Keeps 1 year.", "infused salt")

ADULTS = {"adults": 2}
CHILD = {"adults": 1, "children": ["3 years"]}
PREGNANT = {"adults": 1, "pregnant": True}
WITHHELD = [
    (RAW, ADULTS, True), (RAW, CHILD, True), (RAW, PREGNANT, True),
    (SPIRIT, ADULTS, False), (SPIRIT, PREGNANT, True),
    (COOKED, ADULTS, False), (COOKED, CHILD, False), (COOKED, PREGNANT, False),
    (SYRUP, ADULTS, False), (SYRUP, CHILD, False), (SYRUP, PREGNANT, True),
    (JELLY, ADULTS, False), (JELLY, CHILD, False), (JELLY, PREGNANT, False),
    (TEA, ADULTS, False), (TEA, CHILD, True), (TEA, PREGNANT, True),
    (BORAGE, CHILD, True), (BORAGE, PREGNANT, True), (BORAGE, ADULTS, False),
    (KAVA, CHILD, True), (KAVA, PREGNANT, True),
    (MUSHROOM, CHILD, True), (MUSHROOM, PREGNANT, True), (MUSHROOM, ADULTS, False),
]  # fmt: skip


@pytest.mark.parametrize(("made", "who", "withheld"), WITHHELD)
def test_what_sickens_is_withheld_and_what_is_cooked_is_not(made, who, withheld):
    lines, method, kind = made
    listed = "".join(f"  - {line}\n" for line in lines)
    head = f"---\ntitle: It\nkind: {kind}\nmakes: 6 jars\ningredients:\n{listed}---\n"
    recipe = read_recipe(f"{head}\n## Method\n\n1. {method}\n", "recipes/a.md", "a")
    household = read_household({"needs": who})
    assert bool(why_refused(household, facts_of(recipe), DAY)) is withheld
