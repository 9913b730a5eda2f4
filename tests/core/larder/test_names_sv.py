"""Swedish names of foods: each in the larder, none given twice, none doubtful elsewhere."""

from __future__ import annotations

import csv
from collections import Counter

import pytest

from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.index import SEVERAL, load_index
from stillroom.core.larder.index_file import HOUSE
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.words import normal_form
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of

SWEDISH = Larder(language="sv")
with (HOUSE / "names_sv.tsv").open(encoding="utf-8") as file:
    TABLE = [
        (row["food"], row["names"].split("; "))
        for row in csv.DictReader((one for one in file if one[0] != "#"), delimiter="\t")
    ]


def test_every_named_food_is_in_the_larder_and_no_name_is_given_twice() -> None:
    foods = load_index()["rows"]
    assert [food for food, _ in TABLE if food not in foods and food != SEVERAL] == []
    forms = Counter(normal_form(name) for _, names in TABLE for name in names)
    assert [form for form, times in forms.items() if times > 1] == []


# lines of Swedish pages on caramels and elderflower cordial (November 2026), and everyday ones
@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("10 msk honung", "honey"),
        ("60 klasar fläderblommor", "elderflower"),
        ("40 blomklasar fläder", "elderflower"),
        ("2-3 ekologiska citroner", "lemon"),
        ("1,5 dl ekologisk vispgrädde", "whipping cream"),
        ("1 påse skalad och hackad mandel", "almonds"),
        ("100 g smör, eko", "butter"),
        ("3 dl vetemjöl", "plain flour"),
        ("2 äggulor", "egg yolk"),
        ("1 krm malda nejlikor", "ground cloves"),
        ("33 cl öl", "beer"),
        ("2 klyftor vitlök", "garlic"),
        ("1 kanelstång", "cinnamon stick"),
        ("lite flingsalt", "sea salt flakes"),
    ],
)
def test_a_swedish_line_is_known_as_its_food(line: str, food: str) -> None:
    reading = food_of(find_foods(read_ingredient(line, "metric", "sv_SE"), SWEDISH))
    assert reading.known
    meant = read_food(food).food
    assert meant is not None
    assert [one.name for one in reading.foods] == [meant.name]


@pytest.mark.parametrize("name", ["anis", "paprika", "nötter", "saft"])
def test_a_word_that_may_mean_two_foods_stays_unknown(name: str) -> None:
    assert not read_food(name, SWEDISH).known


def test_swedish_makes_no_german_name_doubtful() -> None:
    assert read_food("Öl", Larder(language="en")).food == read_food("vegetable oil").food
    assert read_food("öl", SWEDISH).food == read_food("beer").food
