"""What lies in food is never left out of its contents, though only crafts know it.

Shea butter in biscuits and coconut wax in fudge were a newcomer's; what wraps food was left out
before, and is still. Foods from memory.
"""

import pytest
from tests.care_cases import recipe_of

from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe
from stillroom.core.method.foods_in_method import foods_in_method
from stillroom.core.recipe.settings import BookSettings

MIX = {"title": "Biscuits", "kind": "biscuit", "method": ["Rub together and bake at 170 C."]}
FLOUR = ["200 g rice flour", "60 g sugar"]


def _contents(line: str, **more: object) -> tuple[str, tuple[str, ...]]:
    recipe = recipe_of({**MIX, "ingredients": [*FLOUR, line], **more})
    label = label_recipe(recipe, BookSettings())
    return ", ".join(one.whole for one in label.contents), label.unknown


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("80 g shea butter", "shea butter"),
        ("20 g coconut wax", "coconut wax"),
        ("5 g mica powder", "mica powder"),
        ("2 ml lavender fragrance oil", "lavender fragrance oil"),
    ],
)
def test_what_is_for_the_skin_is_listed_and_not_known(line: str, name: str) -> None:
    contents, unknown = _contents(line)
    assert name in contents
    assert name in unknown


@pytest.mark.parametrize("line", ["12 paper cases", "1 m string", "8 cocktail sticks", "3 jars"])
def test_what_wraps_it_is_not_in_it(line: str) -> None:
    contents, unknown = _contents(line)
    assert contents == "rice flour, sugar"
    assert unknown == ()


@pytest.mark.parametrize(
    ("lines", "method", "more"),
    [
        (["250 g Salz", "20 g Rosmarin"], "Die Kräuter hacken und mit dem Salz mischen.", []),
        (["250 g Salz"], "Mit frischen Kräutern mischen.", ["frischen Kräuter"]),
        (
            ["280 g Mehl", "50 g Puderzucker", "2 Pck. Vanillezucker"],
            "Noch heiß im Vanille-Puderzucker wälzen.",
            [],
        ),
        (["280 g Mehl", "50 g Puderzucker"], "Mit Vanille kneten und backen.", ["Vanille"]),
    ],
)
def test_the_herbs_of_the_list_are_no_further_food(
    lines: list[str], method: str, more: list[str]
) -> None:
    recipe = recipe_of({**MIX, "ingredients": lines, "method": [method]})
    assert [one.ingredient.item for one in foods_in_method(recipe)] == more


def test_alcohol_harms_children_more_than_others() -> None:
    drink = {"title": "Cream drink", "kind": "infusion", "method": ["Blend."], "keeps": "1 week"}
    lines = ["400 ml whisky, 40% vol", "400 ml double cream"]
    box = assess_safety(recipe_of({**drink, "ingredients": lines}), BookSettings())
    (babies,) = (one for one in box.looked if one.what.startswith("Babies"))
    assert babies.answer == "said above"
