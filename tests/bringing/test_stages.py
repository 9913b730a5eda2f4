"""Recipes in stages, each with a list and steps of its own: one recipe, everything in its order.

Measured on 22 papers of strangers (a family's typed cards, pages of pickles, November 2026) chosen
before the code; these are invented after them. On both sides: a sheet of several stays several.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

MORE = "More amounts stand amid the method"
CAKE = (
    "APPLE SLICES\n\n{0}\n{1}3 cups flour\n1 cup butter\n\nRub the butter in and press it in a tin."
    "\n\n{2}\n{1}6 cups sliced apples\n1 tsp cinnamon\n\n"
    "Lay the apples on it and bake for an hour.\n"
)


def heads(text: str) -> list[str]:
    """Return the headings among the steps of a draft."""
    return [row[4:] for row in text.split("\n") if row.startswith("### ")]


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("Crust:", "Filling:"),
        ("CRUST", "FILLING"),
        ("STEP #1", "STEP #2"),
        ("Step 1:", "Step 2:"),
        ("Day 1", "Day 2"),
        ("1st day", "2nd day"),
        ("For the crust:", "For the filling:"),
        ("First stage", "Second stage"),
    ],
)
@pytest.mark.parametrize("gap", ["", "\n"], ids=["close", "apart"])
def test_each_stage_has_its_things_and_its_steps(first: str, second: str, gap: str) -> None:
    (found,) = brought(CAKE.format(first, gap, second), "en_US")
    assert fact(found, "title") == "Apple slices"
    rows = listed(found)
    assert [row for row in rows if row.endswith(":")] == [
        f"{one.replace('#', '').strip(' :')}:" for one in (first, second)
    ]
    assert [row for row in rows if not row.endswith(":")] == [
        "3 cups flour", "1 cup butter", "6 cups sliced apples", "1 tsp cinnamon"
    ]  # fmt: skip
    assert heads(found.text) == [first.strip(" :"), second.strip(" :")]
    assert steps(found) == [
        "Rub the butter in and press it in a tin.",
        "Lay the apples on it and bake for an hour.",
    ]
    assert MORE not in asked(found)
    assert "Is this part" not in asked(found)


def test_the_lists_of_stages_may_have_heads_of_their_own() -> None:
    text = CAKE.format("STEP #1\nIngredients:", "", "STEP #2\nIngredients:")
    (found,) = brought(f"{text}\nSTEP #3\nCut it in squares when it is cold.\n", "en_US")
    assert heads(found.text) == ["STEP #1", "STEP #2", "STEP #3"]
    assert len(listed(found)) == 6
    assert len(steps(found)) == 3


def test_headings_of_a_page_for_its_parts_begin_no_recipes() -> None:
    part = "## For the {0}\n\n- 50 g {1}\n- 2 eggs\n\n1. Whisk the eggs with the {1}.\n\n"
    text = "# Winter treats\n\n" + part.format("jelly", "sugar") + part.format("cakes", "butter")
    (found,) = brought(f"{text}## For the top\n\n- 150 g chocolate\n\n1. Melt it.\n", name="a.md")
    assert found.title == "Winter treats"
    assert heads(found.text) == ["For the jelly", "For the cakes", "For the top"]
    assert listed(found)[-2:] == ["For the top:", "150 g chocolate"]


def test_one_thing_alone_may_be_all_of_a_day() -> None:
    text = "Pickles\n\nDay 1\n7 lb cucumbers\n1 cup salt\n\nCover them with water and the salt.\n\n"
    (found,) = brought(f"{text}Day 4\n1 tbsp alum\n\nDrain them and cover with the alum.\n")
    assert listed(found) == ["Day 1:", "7 lb cucumbers", "1 cup salt", "Day 4:", "1 tbsp alum"]
    assert heads(found.text) == ["Day 1", "Day 4"]


def test_what_leads_to_a_list_amid_the_method_is_a_step_with_its_things() -> None:
    text = "Fudge\n\n3 packets chocolate\n2 cups walnuts\n\nPut them in a bowl.\n\n"
    (found,) = brought(
        f"{text}In a pan combine:\n\n4 cups sugar\n1 tin milk\n\nBoil it for six minutes.\n"
    )
    assert steps(found)[1] == "In a pan combine: 4 cups sugar, 1 tin milk."
    assert len(steps(found)) == 3
    assert MORE not in asked(found)
    assert listed(found)[-2:] == ["4 cups sugar", "1 tin milk"]


@pytest.mark.parametrize("title", ["Frosting", "Butter icing", "Banana cake frosting"])
def test_a_part_below_a_title_of_its_own_is_of_the_recipe_above(title: str) -> None:
    text = "Banana cake\n\n2 cups flour\n1 cup sugar\n\nMix it and bake it. Make the icing.\n\n"
    (found,) = brought(f"{text}{title}\n\n1 cup butter\n2 cups icing sugar\n\nBeat it well.\n")
    assert heads(found.text) == [title]
    assert f"{title}:" in listed(found)


@pytest.mark.parametrize(
    "titles",
    [
        ("Orange icing", "Coffee icing", "Mocha frosting"),
        ("Plum jam", "Pear chutney"),
        ("Pulled pork", "Coleslaw dressing"),
        ("Carrot cake", "Barbecue marinade"),
    ],
)
def test_recipes_of_a_sheet_stay_recipes(titles: tuple[str, ...]) -> None:
    one = "{0}\n\n2 cups sugar\n1 cup vinegar\n\nMix it all well together and keep it cold.\n\n"
    found = brought("".join(map(one.format, titles)))
    assert [each.title for each in found] == list(titles)


@pytest.mark.parametrize("head", ["Recipe doubled:", "For six people:"])
def test_the_same_things_again_are_asked_about(head: str) -> None:
    text = (
        "Cake\n\n{0}\n\nMix it all and bake it for an hour.\n\n" + head + "\n{1}\n\nMix the same.\n"
    )
    rows = ("1 cup flour\n1 cup sugar\n2 eggs", "2 cups flour\n2 cups sugar\n4 eggs")
    (found,) = brought(text.format(*rows))
    assert MORE in asked(found)
