"""A name that is a spice or a fruit and also a drink is told by how much of it is said.

Each row: the book's language, the line, what it means: "food", "drink", or "both" where a pour may
be either and each is counted. Lines as German, French, Spanish, Italian, Dutch, Swedish and English
recipes write them (from memory); what each is, common knowledge.
"""

import pytest

from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of
from stillroom.core.reading.recipe_file import read_recipe

LINES = [
    ("de", "1 TL Kümmel", "food"),
    ("en", "1 TL Kümmel", "food"),
    ("en", "5 g Kümmel, ganz", "food"),
    ("en", "1 Prise Kümmel", "food"),
    ("en", "1 EL kümmel, gemahlen", "food"),
    ("de", "4 cl Kümmel", "drink"),
    ("en", "25 ml kummel", "drink"),
    ("en", "1 tbsp kummel", "drink"),
    ("de", "100 ml Kümmel, 32 % vol", "drink"),
    ("de", "700 ml Korn", "drink"),
    ("sv", "100 g korn", "food"),
    ("en", "1 TL Wacholder", "food"),
    ("de", "500 ml Wacholder, 38 % vol", "drink"),
    ("fr", "10 baies de genièvre", "food"),
    ("fr", "50 cl de genièvre", "drink"),
    ("es", "1 l de anís", "drink"),
    ("es", "10 g de anís", "food"),
    ("es", "1 cucharada de anís en grano", "food"),
    ("en", "1 tl anijs", "food"),
    ("it", "50 ml di anice", "drink"),
    ("it", "1 cucchiaino di anice", "food"),
    ("it", "50 ml di mirto", "drink"),
    ("it", "500 g di mirto", "food"),
    ("fr", "500 g de cassis", "food"),
    ("fr", "20 cl de cassis", "drink"),
    ("en", "30 ml cassis", "drink"),
    ("fr", "250 ml de cassis", "food"),
    ("fr", "5 cl de framboise", "both"),
    ("fr", "500 g de framboises", "food"),
    ("fr", "1 kg de mirabelles", "food"),
    ("fr", "5 cl de mirabelle", "both"),
    ("de", "4 cl Williams", "drink"),
    ("es", "200 ml de moscatel", "drink"),
    ("es", "500 g de moscatel", "food"),
    ("es", "100 ml de manzanilla", "both"),
    ("es", "20 g de manzanilla", "food"),
    ("en", "1 tbsp anisette", "drink"),
    ("en", "1 tsp anise", "food"),
    ("en", "2 cl Kirschwasser", "drink"),
    ("en", "200 ml rosé", "drink"),
    ("en", "1 bottle Rosé", "drink"),
    ("en", "2 cups rosé", "drink"),
    ("en", "75 cl rose", "drink"),
    ("en", "2 cups rose petals", "food"),
    ("en", "1 tbsp rose", "food"),
    ("fr", "20 cl de rosé", "drink"),
    ("fr", "2 roses", "food"),
    ("de", "1 Flasche Rosé", "drink"),
    ("sv", "2 dl rosé", "drink"),
    ("da", "en flaske rosé", "drink"),
    ("nl", "200 ml rosé", "drink"),
]


@pytest.mark.parametrize(("language", "line", "means"), LINES, ids=lambda one: str(one))
def test_a_name_means_the_food_or_the_drink(language: str, line: str, means: str) -> None:
    read = food_of(find_foods(read_ingredient(line, "metric", language), Larder((), language)))
    drinks = ["alcohol" in food.tags for food in read.foods]
    assert read.known
    assert drinks == {"food": [False], "drink": [True], "both": [True, False]}[means]


@pytest.mark.parametrize(
    ("language", "line", "brine"),
    [("nb", "1 l lake", True), ("nb", "laken", True), ("nb", "500 g lake", False),
     ("nb", "1 lake", False), ("sv", "1 l lake (5 %)", True), ("sv", "500 g lake", False),
     ("de", "2 l Salzlake", True), ("da", "2 dl lage", True), ("fr", "1 l de saumure", True)],
)  # fmt: skip
def test_northern_lake_is_brine_by_the_litre_and_may_be_a_fish(
    language: str, line: str, brine: bool
) -> None:
    read = food_of(find_foods(read_ingredient(line, "metric", language), Larder((), language)))
    assert read.known is brine
    assert not brine or [food.kind_of or food.name for food in read.foods] == ["brine"]


RECIPE = """---
title: A recipe
kind: {kind}
makes: 1 l
ingredients:
{lines}
---
## Method

1. {method}
"""

WHOLE = [
    # kind, lines, method, the line asked, its food
    ("ferment", ["2 kg Weißkohl", "2 TL Kümmel"], "Den Kohl mit Kümmel in den Topf.",
        1, "caraway seeds"),
    ("infusion", ["5 dl öl", "1 dl socker"], "Häll öl i en kastrull med socker.", 0, "beer"),
    ("preserve", ["1 kg de coings", "1 citron"], "Laver les coings et les cuire dans le jus.",
        1, "lemon"),
    ("bake", ["500 g rye flour", "1 tbsp kummel"], "Mix the flour with it and bake it.",
        1, "kummel"),
    ("infusion", ["500 ml cassis", "100 g sugar"], "Stir the sugar into the cassis.", 0, "cassis"),
]  # fmt: skip


@pytest.mark.parametrize("case", WHOLE, ids=lambda case: case[4])
def test_a_recipe_of_another_language_is_read_in_its_own(case: tuple) -> None:  # type: ignore[type-arg]
    kind, lines, method, place, food = case
    listed = "\n".join(f"  - {one}" for one in lines)
    written = RECIPE.format(kind=kind, lines=listed, method=method)
    recipe = read_recipe(written, "recipes/one.md", "one")
    found = food_of(recipe.ingredients[place]).food
    assert found is not None
    assert found.name == food


@pytest.mark.parametrize(
    ("line", "food"),
    [("100 g muscat wine", "muscat wine"), ("50 g manzanilla sherry", "manzanilla sherry"),
     ("100 g muscat", "muscat grape")],
)  # fmt: skip
def test_a_drink_by_its_whole_name_is_no_fruit(line: str, food: str) -> None:
    read = food_of(find_foods(read_ingredient(line, "metric", "en"), Larder((), "en")))
    assert [one.name for one in read.foods] == [food]


@pytest.mark.parametrize(
    ("line", "known"),
    [
        ("100 g white buttons", False),  # of chocolate, perhaps
        ("2 tbsp buttons", False),
        ("2 buttons", True),
        ("4 small buttons", True),
        ("50 g glass beads", True),
        ("1 sponge", False),  # a cake, or for wiping
        ("8 cones", False),  # of a pine, or for ice cream
        ("8 pine cones", True),
    ],
)
def test_a_thing_that_may_be_food_of_that_shape_is_not_known(line: str, known: bool) -> None:
    assert food_of(find_foods(read_ingredient(line, "metric"), Larder())).known is known


def test_a_honeycomb_may_be_of_bees() -> None:
    reading = food_of(find_foods(read_ingredient("50 g honeycomb", "metric"), Larder()))
    assert reading.food is not None
    assert reading.food.vegan is None
    assert "honey" in reading.food.tags
    toffee = food_of(find_foods(read_ingredient("50 g honeycomb toffee", "metric"), Larder()))
    assert toffee.food is not None
    assert "honey" not in toffee.food.tags
