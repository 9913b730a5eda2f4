"""What a box says of boiling filled jars and of hot glass, on preserves as cooks write them.

Jelly: USDA Complete Guide to Home Canning, Guide 7, page 7-5 (water to a pound of fruit, sugar to a
cup of strained juice, a pound of fruit gives at least a cup). Beets: Guide 6, pages 6-15 and 6-16.
"""

from __future__ import annotations

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.filling import filled_hot
from stillroom.core.care.safety import assess_safety

DRIPS = [
    "Simmer the fruit with the water until it is soft.",
    "Let it drip through a jelly bag overnight.",
    "Boil the juice with the sugar to the setting point.",
    "Fill hot jars and boil them for 5 minutes.",
]
# fruit, water to each pound in g, sugar in g to the cup of juice that a pound gives
GUIDE_7 = {
    "cooking apples": (237, 150),
    "blackberries": (59, 150),
    "crab apples": (237, 200),
    "grapes": (59, 150),
    "plums": (118, 150),
}


def of_the_jars(written: dict[str, object]) -> str:
    box = assess_safety(recipe_of(written), BookSettings())
    said = [one.to_maker for one in box.cautions if one.title == "Boiling the filled jars"]
    assert len(said) <= 1
    return " ".join(said)


def jelly(fruit: str, water: int, sugar: int, method: list[str] = DRIPS) -> str:
    lines = [f"{4 * 454} g {fruit}", f"{4 * water} g water", f"{4 * sugar} g granulated sugar"]
    title = f"{fruit.removesuffix('s')} jelly"
    return of_the_jars({"title": title, "kind": "preserve", "ingredients": lines, "method": method})


@pytest.mark.parametrize("fruit", GUIDE_7)
def test_a_jelly_of_the_guide_has_the_guides_time_and_with_half_the_sugar_it_has_none(
    fruit: str,
) -> None:
    water, sugar = GUIDE_7[fruit]
    assert "jars of jam or jelly, half-pints or pints, for 5 minutes" in jelly(fruit, water, sugar)
    assert "jam or jelly" not in jelly(fruit, water, sugar // 2)


def test_what_is_not_strained_goes_by_all_that_is_in_it() -> None:
    stirred = ["Simmer the fruit and the sugar to a pulp.", "Fill hot jars."]
    assert "is not for this" in jelly("cooking apples", 237, 150, stirred)


BEETS = {
    "title": "Beetroot relish",
    "kind": "preserve",
    "ingredients": ["1 kg beetroot", "300 ml malt vinegar", "200 g sugar"],
    "method": ["Boil it for 20 minutes.", "Fill hot jars."],
}


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("1 tsp cloves", ""),
        ("2 tsp mustard seeds", ""),
        ("15 g garlic", "When it was tested, no garlic was in it."),
        ("100 g walnuts, chopped", "no published time for this mixture"),
        ("100 g mixed nuts", "no published time for this mixture"),
        ("100 g cooked rice", "no published time for this mixture"),
        ("50 g butter", "no published time for this mixture"),
    ],
)
def test_a_tested_time_is_said_of_what_was_tested(line: str, said: str) -> None:
    words = of_the_jars(BEETS | {"ingredients": [*BEETS["ingredients"], line]})
    assert said in words
    assert ("tested pickled beets" in words) == ("no published" not in said)
    assert ("When it was tested" in words) == said.startswith("When")


@pytest.mark.parametrize(
    ("line", "refused"),
    [
        ("1 kg crab apples", False),
        ("1 kg crab-apples", False),
        ("1 kg crabapples", False),
        ("1 kg brown turkey figs", False),
        ("1 kg beef tomatoes", False),
        ("200 g lamb's lettuce", False),
        ("1 kg crab", True),
        ("1 kg crab meat", True),
        ("1 kg turkey", True),
        ("1 kg lamb", True),
        ("1 kg beef and tomatoes", True),
    ],
)
def test_a_plant_called_after_an_animal_is_no_meat(line: str, refused: bool) -> None:
    written = {"title": "A jar", "kind": "preserve", "ingredients": [line], "method": DRIPS}
    box = assess_safety(recipe_of(written), BookSettings())
    assert ("animal-food-sealed" in {one.rule for one in box.refusals}) == refused


@pytest.mark.parametrize(
    ("butter", "refused"),
    [("a knob of butter", False), ("a dab of butter", False), ("2 kg butter", True)],
)
def test_a_little_butter_in_a_chutney_is_little(butter: str, refused: bool) -> None:
    lines = ["1 kg apples", "1/2 pt malt vinegar (or a bit less if you like it mild)", butter]
    lines += ["15 g garlic", "300 g sugar"]
    written = {"title": "A jar", "kind": "preserve", "ingredients": lines, "method": DRIPS}
    said = {one.rule for one in assess_safety(recipe_of(written), BookSettings()).refusals}
    assert bool(said) == refused, said


# common practice, no published source: what is warm there is not what goes into the glass
COLD = [
    ["Scrub the oranges in hand-hot water.", "Put the peel into the jar and pour in the vodka."],
    ["Wash the fruit in warm, soapy water.", "Fill the jar with it."],
    ["Strain it through a scalded muslin.", "Fill small bottles."],
    ["Use a boiled cloth to strain it into bottles."],
    ["Chop the chocolate, so that it melts in the mug.", "Fill the jars."],
    ["Mix the hot chocolate powder and the sugar.", "Fill jars."],
    ["Layer the roasted hazelnuts in a jar."],
    ["On a hot day it takes less time.", "Bottle it."],
    ["Keep it away from the hot stove.", "Fill bottles."],
    ["Mix the hot paprika with the salt and fill a jar."],
]
HOT = [
    ["Boil the jam.", "Ladle into jars."],
    ["Wash the fruit.", "Boil it in water.", "Pour into the jar."],
    ["Pour the hot syrup over the fruit in the jars."],
    ["Roast the nuts.", "Pack them into jars at once."],
    ["Simmer the hot chilli sauce.", "Fill the bottles."],
    ["Strain the boiling cordial through muslin into bottles."],
    ["Melt the chocolate in a pan.", "Pour into a jar."],
    ["Pour it from the pan, hot, into a glass jar."],
]


@pytest.mark.parametrize("clauses", COLD, ids=" ".join)
def test_heat_that_the_filling_never_had_cracks_no_glass(clauses: list[str]) -> None:
    assert filled_hot(clauses, sure_of_glass=False) == ""


@pytest.mark.parametrize("clauses", HOT, ids=" ".join)
def test_what_goes_hot_into_glass_is_told(clauses: list[str]) -> None:
    assert filled_hot(clauses, sure_of_glass=False) != ""
