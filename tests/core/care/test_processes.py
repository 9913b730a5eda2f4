"""Published processes against the published recipes: their own amounts are found, changed ones not.

Amounts: USDA Complete Guide to Home Canning (AIB 539), 2015 revision, guides 2, 3 and 6. Grams of a
cup: USDA SR (vinegar 239, water 237, sugar 200; onions, chopped 160; peppers, chopped 149;
cucumbers 133; corn 164; celery 101; cabbage, chopped 89; green tomatoes and tomatoes 180; chiles
150; cauliflower 107; peaches 154; apples 110; blueberries 148; sour cherries 155; tomatillos 132).
"""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

import pytest

from stillroom.core.care.processes import Filling, Process, all_processes, find_process

LB = Fraction("453.59237")
CUP = {"vinegar": 239, "water": 237, "sugar": 200, "lemon": 244}


def made(style: str, foods: dict[str, Fraction | float], **cups: float) -> Filling:
    """Return a filling made so; any water and thickener by name, citric acid in g."""
    others = {name for name in ("water", "modified starch") if cups.pop(name[:5], 0)}
    citric = cups.pop("citric", 0)
    found = filling(foods, **cups)
    return replace(
        found, style=style, citric_g=Fraction(str(citric)), others=frozenset(others), said=style
    )


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
    "apple butter": made("butter", {"apple": 8 * LB}, vinegar=2, sugar=4.5),
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
    "pickled hot peppers": filling(
        {"hot pepper": 4 * LB, "sweet pepper": 3 * LB, "garlic": 6}, vinegar=5, water=1
    ),
    "pickled carrots": filling({"carrot": 2.75 * float(LB)}, vinegar=5.5, water=1, sugar=2),
    "pickled cauliflower or Brussels sprouts": filling(
        {"cauliflower": 12 * 107, "onion": 230, "sweet red pepper": 149}, vinegar=4, sugar=2
    ),
    "pickled sweet green tomatoes": filling(
        {"green tomato": 10.5 * float(LB), "onion": 230}, vinegar=4, sugar=3
    ),
    "pickled green tomato relish": filling(
        {"green tomato": 10 * LB, "sweet pepper": 3 * LB, "onion": 2 * LB}, vinegar=4, sugar=4
    ),
    "pickled pepper-onion relish": filling(
        {"onion": 960, "sweet pepper": 894}, vinegar=6, sugar=1.5
    ),
    "cranberry orange chutney": filling(
        {"cranberry": 680, "onion": 320, "root ginger": 8}, vinegar=2, sugar=3
    ),
    "spicy cranberry salsa": filling(
        {"cranberry": 2.75 * float(LB), "onion": 960, "serrano pepper": 60},
        vinegar=1.5,
        water=1.5,
        sugar=1.33,
    ),
    "mango or peach salsa": filling(
        {"green mango": 6 * 165, "sweet red pepper": 224, "onion": 80, "garlic": 6}
        | {"root ginger": 4},
        vinegar=1.25,
        water=0.5,
        sugar=1.1,
    ),
    "peach apple salsa": filling(
        {"peach": 1540, "apple": 220, "tomato": 1080, "onion": 400, "sweet pepper": 298},
        vinegar=2.25,
        sugar=2.83,
    ),
    "spiced apple rings": filling({"apple": 12 * LB}, vinegar=1.25, water=6, sugar=12),
    "spiced crab apples": filling(
        {"crab apple": 5 * LB, "root ginger": 15}, vinegar=4.5, water=3.75, sugar=7.5
    ),
    "cantaloupe pickles": filling({"cantaloupe": 5 * LB}, vinegar=4.5, water=2, sugar=3),
    "apples, sliced and boiled 5 minutes": made("pieces", {"apple": 5 * LB}, water=2),
    "applesauce": made("puree", {"apple": 3 * LB}, water=0.5, sugar=0.125),
    "apple juice": made("juice", {"apple juice": 2000}),
    "whole currants, blueberries or gooseberries": made("pieces", {"blueberry": 800}, water=2),
    "whole soft berries": made("pieces", {"raspberry": 800}, water=2, sugar=1),
    "berry syrup": made("syrup", {"raspberry": 6.5 * 123}, sugar=6.75),
    "whole cherries": made("pieces", {"sour cherry": 1000}, water=2, sugar=2),
    "figs, boiled and acidified": made(
        "pieces", {"fig": 2.5 * float(LB)}, water=2, sugar=0.5, lemon=0.125
    ),
    "grapefruit and orange sections": made("pieces", {"grapefruit": 500, "orange": 500}, water=2),
    "grape juice": made("juice", {"grape": 3.5 * float(LB)}, water=1),
    "whole grapes": made("pieces", {"grape": 2 * LB}, water=2, sugar=0.5),
    "mixed fruit cocktail": made(
        "pieces",
        {"peach": 3 * LB, "pear": 3 * LB, "grape": 1.5 * float(LB), "cherry": 200},
        water=4,
        sugar=3,
    ),
    "peaches, nectarines or apricots, halved or sliced": made(
        "pieces", {"peach": 2.5 * float(LB)}, water=2, sugar=1
    ),
    "pears, halved and boiled 5 minutes": made("pieces", {"pear": 1100}, water=2, sugar=1),
    "Asian pears, boiled and acidified": made(
        "pieces", {"asian pear": 2.75 * float(LB)}, water=2, lemon=0.125
    ),
    "pineapple, simmered 10 minutes": made("pieces", {"pineapple": 3 * LB}, water=2),
    "plums, halved or whole": made("pieces", {"plum": 2 * LB}, water=2, sugar=1),
    "stewed rhubarb": made("pieces", {"rhubarb": 1.5 * float(LB)}, sugar=0.5),
    "fruit puree": made("puree", {"apricot": 1000}, water=1),
    "mango sauce": made("puree", {"mango": 3.25 * float(LB)}, lemon=0.25, sugar=0.75),
    "zucchini-pineapple": replace(
        filling({"zucchini": 16 * 124}, lemon=1.5, sugar=3), others=frozenset({"pineapple juice"})
    ),
    "apple pie filling": made(
        "pie filling", {"apple": 24 * 110}, water=2.5, sugar=5.5, lemon=0.75, modif=1.5
    ),
    "blueberry pie filling": made(
        "pie filling", {"blueberry": 24 * 148}, water=7, sugar=6, lemon=0.5, modif=2.25
    ),
    "cherry pie filling": made(
        "pie filling", {"sour cherry": 24 * 155}, water=9.33, sugar=7, lemon=0.5, modif=1.75
    ),
    "peach pie filling": made(
        "pie filling", {"peach": 24 * 154}, water=5.25, sugar=7, lemon=1.75, modif=2.2
    ),
    "whole tomatoes in water": made("pieces", {"tomato": 3 * LB}, water=1, lemon=0.125),
    "whole tomatoes raw, without added liquid": made("pieces", {"tomato": 3 * LB}, citric=2.4),
    "crushed tomatoes": made("crushed", {"tomato": 2.75 * float(LB)}, lemon=0.125),
    "tomato juice": made("juice", {"tomato": 3.25 * float(LB)}, vinegar=0.25),
    "tomato sauce of nothing but tomatoes": made("puree", {"tomato": 5 * LB}, lemon=0.125),
    "tomato ketchup": made("ketchup", {"tomato": 24 * LB, "onion": 480}, vinegar=3, sugar=1.5),
    "chile salsa": filling({"tomato": 5 * LB, "chile pepper": 2 * LB, "onion": LB}, vinegar=1),
    "tomato salsa of paste tomatoes": filling(
        {"roma tomato": 28 * 180, "chilli": 675, "onion": 800, "garlic": 18}, lemon=2
    ),
    "tomato salsa of slicing tomatoes": filling(
        {"tomato": 720, "chilli": 375, "onion": 120, "garlic": 12}, vinegar=2
    ),
    "tomato and green chile salsa": filling(
        {"tomato": 540, "chilli": 464, "onion": 120, "garlic": 18}, vinegar=1.5
    ),
    "tomato and tomato paste salsa": filling(
        {"tomato": 2160, "tomato purée": 680, "onion": 480, "chilli": 184, "garlic": 12}, lemon=2
    ),
    "tomato taco sauce": filling(
        {"tomato": 5760, "onion": 800, "chilli": 236, "garlic": 6}, vinegar=2.5
    ),
    "tomatillo green salsa": filling(
        {"tomatillo": 660, "chilli": 300, "onion": 640, "garlic": 18}, lemon=1
    ),
}
# whose amounts a stricter or an equal row before them keeps as well, with the same time
ALSO = {
    "whole currants, blueberries or gooseberries": "whole soft berries",
    "tomato taco sauce": "chile salsa",
    "tomato salsa of slicing tomatoes": "chile salsa",
}


def by_name(name: str) -> Process:
    return next(process for process in all_processes() if process.name == name)


def test_every_process_has_its_published_amounts_here() -> None:
    assert set(PUBLISHED) == {process.name for process in all_processes()}


@pytest.mark.parametrize("name", sorted(PUBLISHED))
def test_the_published_amounts_are_found(name: str) -> None:
    found = find_process(PUBLISHED[name])
    assert found is not None
    assert found.name in {name, ALSO.get(name)}


def is_soured(name: str) -> bool:
    needs = by_name(name)
    return bool(needs.vinegar or needs.lemon or needs.sour)


def test_only_fruit_sour_in_itself_is_put_up_without_souring() -> None:
    fruit = "apple|currants|berr|cherries|grape|fruit|peaches|pears|pineapple|plums|rhubarb"
    plain = [name for name in PUBLISHED if not is_soured(name)]
    assert len(plain) == 17
    assert [name for name in plain if not re.search(fruit, name)] == []


@pytest.mark.parametrize("name", sorted(filter(is_soured, PUBLISHED)))
def test_half_of_what_is_sour_is_no_published_process(name: str) -> None:
    own = PUBLISHED[name]
    half = replace(
        own,
        vinegar_g=own.vinegar_g / 2,
        lemon_g=own.lemon_g / 2,
        citric_g=own.citric_g / 2,
    )
    found = find_process(half)
    assert found is None or found.name != name


@pytest.mark.parametrize("name", sorted(PUBLISHED))
def test_with_another_food_it_is_none(name: str) -> None:
    own = PUBLISHED[name]
    assert find_process(replace(own, foods={**own.foods, "parsnip": own.food_g / 5})) is None


@pytest.mark.parametrize(
    "name", sorted(one.name for one in all_processes() if one.water is not None)
)
def test_with_more_water_it_is_none(name: str) -> None:
    own = PUBLISHED[name]
    wetter = replace(own, water_g=own.water_g + own.vinegar_g + own.food_g / 10)
    found = find_process(wetter)
    assert found is None or found.name != name


@pytest.mark.parametrize("name", [one.name for one in all_processes() if one.style])
def test_made_another_way_or_with_another_thing_it_is_none(name: str) -> None:
    own = PUBLISHED[name]
    assert find_process(replace(own, untested=True)) is None
    found = find_process(replace(own, style="curd"))
    assert found is None or found.name != name
