"""Published processes against the published recipes: their own amounts are found, changed ones not.

Amounts: Michigan State University Extension, Preserving Food Safely (1997), which repeats USDA's
Complete Guide to Home Canning, and the 1994 bulletin as public pages repeat it. Grams of a cup:
USDA SR (vinegar 239, water 237, sugar 200; onions, chopped 160; peppers, chopped 149; cucumbers
133; corn 164; celery 101; cabbage, chopped 89; green tomatoes 180).
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from stillroom.core.care.processes import Filling, Process, all_processes, find_process

LB = Fraction("453.59237")
CUP = {"vinegar": 239, "water": 237, "sugar": 200, "lemon": 244}


def filling(foods: dict[str, Fraction | float], **cups: float) -> Filling:
    grams = {name: Fraction(str(count)) * CUP[name] for name, count in cups.items()}
    return Filling(
        {name: Fraction(str(float(g))) for name, g in foods.items()},
        vinegar_g=grams.get("vinegar", Fraction(0)),
        lemon_g=grams.get("lemon", Fraction(0)),
        water_g=grams.get("water", Fraction(0)),
        sugar_g=grams.get("sugar", Fraction(0)),
    )


PUBLISHED = {
    "bread-and-butter pickles": filling(
        {"cucumber": 6 * LB, "onion": 3 * LB}, vinegar=4, sugar=4.5
    ),
    "quick fresh-pack dill pickles": filling({"cucumber": 8 * LB}, vinegar=6, water=8, sugar=0.25),
    "pickle relish": filling(
        {"cucumber": 12 * 133, "sweet pepper": 6 * 149, "onion": 160}, vinegar=6, sugar=2
    ),
    "pickled beets": filling({"beetroot": 7 * LB, "onion": 550}, vinegar=4, water=2, sugar=2),
    "pickled corn relish": filling(
        {"sweetcorn": 1640, "sweet pepper": 745, "celery": 253, "onion": 200},
        vinegar=5,
        sugar=1.75,
    ),
    "piccalilli": filling(
        {"green tomato": 1080, "sweet pepper": 447, "onion": 360, "cabbage": 668},
        vinegar=4.5,
        sugar=3,
    ),
    "pickled dilled beans": filling({"green bean": 4 * LB}, vinegar=4, water=4),
    "pickled bell peppers": filling({"sweet pepper": 7 * LB}, vinegar=3, water=3, sugar=3.5),
    "marinated peppers": filling({"sweet pepper": 4 * LB, "onion": 80}, vinegar=2, lemon=1),
    "mango chutney": filling(
        {"mango": 4 * LB, "onion": 0.75 * float(LB), "root ginger": 15, "garlic": 12},
        vinegar=3,
        sugar=4.5,
    ),
    "apple butter": filling({"apple": 8 * LB}, vinegar=2, sugar=4.5),
    "pickled asparagus": filling({"asparagus": 10 * LB, "garlic": 30}, vinegar=4.5, water=4.5),
    "marinated whole mushrooms": filling(
        {"button mushroom": 7 * LB, "onion": 80, "pimiento": 48, "garlic": 6}, vinegar=2.5
    ),
    "pickled mixed vegetables": filling(
        {"pickling cucumber": 4 * LB, "onion": 2 * LB, "celery": 404, "carrot": 256}
        | {"sweet red pepper": 298, "cauliflower": 214},
        vinegar=5,
        sugar=3.5,
    ),
    "pickled three-bean salad": filling(
        {"green bean": 150, "canned kidney bean": 266, "canned chickpea": 164}
        | {"onion": 80, "celery": 50, "sweet pepper": 75},
        vinegar=0.5,
        lemon=0.25,
        water=1.25,
    ),
    "pickled pearl onions": filling({"pearl onion": 8 * 160}, vinegar=5.5, water=1, sugar=2),
    "pickled dilled okra": filling(
        {"okra": 7 * LB, "hot pepper": 120, "garlic": 27}, vinegar=6, water=6
    ),
}


def test_every_process_has_its_published_amounts_here() -> None:
    assert set(PUBLISHED) == {process.name for process in all_processes()}


@pytest.mark.parametrize("name", sorted(PUBLISHED))
def test_the_published_amounts_are_found(name: str) -> None:
    found = find_process(PUBLISHED[name])
    assert found is not None
    assert found.name == name


@pytest.mark.parametrize("name", sorted(PUBLISHED))
def test_half_the_vinegar_is_no_published_process(name: str) -> None:
    own = PUBLISHED[name]
    assert find_process(replace(own, vinegar_g=own.vinegar_g / 2)) is None


@pytest.mark.parametrize("name", sorted(PUBLISHED))
def test_another_food_or_more_water_is_none(name: str) -> None:
    own = PUBLISHED[name]
    other = replace(own, foods={**own.foods, "parsnip": own.food_g / 5})
    assert find_process(other) is None
    assert find_process(replace(own, water_g=own.water_g + own.vinegar_g)) is None


def by_name(name: str) -> Process:
    return next(process for process in all_processes() if process.name == name)


@pytest.mark.parametrize(
    ("name", "jar", "feet", "minutes"),
    [
        ("bread-and-butter pickles", "pint", 1000, 10),
        ("bread-and-butter pickles", "quart", 1001, 15),
        ("quick fresh-pack dill pickles", "quart", 6001, 25),
        ("pickled beets", "pint", 1000, 30),
        ("pickled beets", "pint", 1001, 35),
        ("pickled beets", "quart", 3001, 40),
        ("pickled beets", "quart", 6001, 45),
        ("pickled corn relish", "half-pint", 500, 15),
        ("pickled dilled beans", "pint", 5000, 10),
        ("apple butter", "quart", 7000, 20),
        ("pickled dilled beans", "quart", 0, None),
        ("marinated whole mushrooms", "half-pint", 3000, 25),
        ("marinated whole mushrooms", "half-pint", 6001, 35),
        ("pickled asparagus", "pint", 6000, 15),
        ("pickled mixed vegetables", "quart", 500, 10),
    ],
)
def test_published_minutes(name: str, jar: str, feet: int, minutes: int | None) -> None:
    assert by_name(name).minutes(jar, feet * Fraction("0.3048")) == minutes


def test_columns_fit_their_steps() -> None:
    for process in all_processes():
        for minutes in process.jars.values():
            assert len(minutes) == len(process.steps_ft) + 1
            assert list(minutes) == sorted(minutes)
