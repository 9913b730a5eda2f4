"""Lists within lists, and what a writer says around them.

The shapes are those of a public collection of recipes (based.cooking), of which all 348 were read
and their lists, steps and titles counted; the texts here are new.
"""

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

CAKE = """# Spice cake

## Ingredients

- 2 cups flour
- Spices:
    - 1 teaspoon cinnamon
    - 1/4 teaspoon nutmeg
- 1/4 teaspoon salt
- 2 eggs
- Optional:
    - 1 handful walnuts

## Directions

1. Mix it all in a bowl.
2. Bake the cake for an hour.
"""


def test_what_stands_further_out_is_no_longer_of_the_group() -> None:
    (cake,) = brought(CAKE)
    assert "  - Spices:\n    - 1 teaspoon cinnamon\n    - 1/4 teaspoon nutmeg\n  - 1/4" in cake.text
    assert "  - 2 eggs\n  - Optional:\n    - 1 handful walnuts\n" in cake.text
    assert '"item"' not in asked(cake)


@pytest.mark.parametrize(
    "first",
    [
        "Since I mostly make this for friends, the list below\nis for a whole tin. I would say "
        "that only the eggs\nand the flour are a must, and all the rest is not.",
        "The list is for a whole tin, but only the eggs and the flour are needed in it.",
    ],
)
def test_what_is_said_above_the_first_thing_is_a_note(first: str) -> None:
    (cake,) = brought(CAKE.replace("- 2 cups flour", f"{first}\n\n- 2 cups flour"))
    assert listed(cake)[0] == "2 cups flour"
    assert " ".join(first.split()) in cake.text.split("## Notes")[1]


def test_a_thing_that_ends_in_a_stop_stays_in_its_list() -> None:
    text = (
        "# Potato salad\n\n## Ingredients\n\n- 3 onions (medium size)\n"
        "- Around 120g of cooked ham per person.\n"
        "- ~150g (1/3 lb) medium soft cheese. Gruyère would be my choice.\n"
        "- a jar of apple sauce\n\n"
        "Feel free to vary these amounts, it is nothing strict.\n\n"
        "## Directions\n\n1. Cut the onions.\n2. Add all the rest.\n"
    )
    (salad,) = brought(text)
    assert len(listed(salad)) == 4
    assert steps(salad) == ["Cut the onions.", "Add all the rest."]


def test_for_so_many_in_brackets_below_the_heading_is_how_much_is_made() -> None:
    (cake,) = brought(CAKE.replace("## Ingredients\n", "## Ingredients\n(for 13 cookies)\n"))
    assert (fact(cake, "makes"), listed(cake)[0]) == ("13 cookies", "2 cups flour")


@pytest.mark.parametrize(
    "said",
    [
        "This recipe for jerky is not heavily brined, so that it does not keep for long",
        "To fill your stamina bars for the day, I have just the\nperfect recipe for you.",
    ],
)
def test_a_sentence_with_recipe_for_in_it_is_no_title(said: str) -> None:
    (cake,) = brought(CAKE.replace("\n## Ingredients", f"\n{said}\n\n## Ingredients", 1))
    assert fact(cake, "title") == "Spice cake"


def test_where_it_was_published_is_no_step() -> None:
    address = "https://www.kitchen.example/food/spice-cake/"
    (cake,) = brought(f"{CAKE}\nOriginally published at [{address}]({address})\n")
    assert steps(cake) == ["Mix it all in a bowl.", "Bake the cake for an hour."]
    assert address in cake.text.split("## Source")[1]
