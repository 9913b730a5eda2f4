"""Lists that stand in groups below what is done with them, and lists whose parts are only named.

In the shape of one cook's web pages (numbered steps with what goes in nested below each; read 1
December 2026 in a public repository, 60 pages: 38 changed, each looked at) and of typed cards that
say "Combine:", "Add:" above their lines. 60 pages and 40 Danish texts of two other repositories,
whose lists have heads of other forms, did not change at all.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, listed, steps

_NUMBERED = """<html><body><h1>Ginger loaf</h1><ul><li>Heat the oven to 160°C</li></ul>
<ol><li>Melt slowly in a pan<ul><li>200g butter</li><li>150g black treacle</li></ul></li>
<li>Mix in a bowl<ul><li>250g plain flour</li><li>1 tbsp ground ginger</li><li>salt</li></ul></li>
<li>Stir both together</li><li>Beat and add<ul><li>2 eggs</li></ul></li>
<li>Bake for 50 mins</li></ol>{more}</body></html>"""


def test_things_nested_below_numbered_steps_are_one_list_and_each_step_names_its_own() -> None:
    (one,) = brought(_NUMBERED.format(more=""), name="a.html")
    assert listed(one) == [
        "200g butter",
        "150g black treacle",
        "250g plain flour",
        "1 tbsp ground ginger",
        "salt",
        "2 eggs",
    ]
    assert steps(one) == [
        "Heat the oven to 160°C",
        "Melt slowly in a pan: butter, black treacle",
        "Mix in a bowl: plain flour, ground ginger, salt",
        "Stir both together",
        "Beat and add: eggs",
        "Bake for 50 mins",
    ]
    assert "above the list" not in asked(one)
    assert "amid the method" not in asked(one)


def test_parts_with_groups_head_the_list_and_the_method() -> None:
    more = """<h2>Icing</h2><ol><li>Mix<ul><li>80g icing sugar</li><li>1 tsp water</li></ul></li>
    <li>Spread over the loaf</li></ol><h2>Notes</h2><ul><li>Better the day after</li></ul>"""
    (one,) = brought(_NUMBERED.format(more=more), name="a.html")
    assert listed(one)[-3:] == ["Icing:", "80g icing sugar", "1 tsp water"]
    assert steps(one)[-2:] == ["Mix: icing sugar, water", "Spread over the loaf"]
    assert "### Icing" in one.text
    assert "Better the day after" in one.text.partition("## Notes")[2]


@pytest.mark.parametrize(
    ("language", "text", "things", "told"),
    [
        (
            "en_GB",
            "Treacle Squares\n\nCombine:\n2 cups flour\n1 cup brown sugar\n1 cup butter\n\n"
            "Stir in:\n2 eggs\n1/2 cup treacle\n\nBake in a moderate oven for 30 minutes.\n",
            ["2 cups flour", "1 cup brown sugar", "1 cup butter", "2 eggs", "1/2 cup treacle"],
            ["Combine: flour, brown sugar, butter", "Stir in: eggs, treacle"],
        ),
        (
            "de",
            "Honigschnitten\n\nSchmelzen:\n250 g Honig\n100 g Butter\n\n"
            "Verrühren:\n400 g Mehl\n2 Eier\n\nBei 180 °C 30 Minuten backen.\n",
            ["250 g Honig", "100 g Butter", "400 g Mehl", "2 Eier"],
            ["Schmelzen: Honig, Butter", "Verrühren: Mehl, Eier"],
        ),
        (
            "fr",
            "Gâteau au miel\n\nFaire fondre :\n250 g de miel\n100 g de beurre\n\n"
            "Ajouter :\n400 g de farine\n2 œufs\n\nCuire 30 minutes à 180 °C.\n",
            ["250 g de miel", "100 g de beurre", "400 g de farine", "2 œufs"],
            ["Faire fondre: miel, beurre", "Ajouter: farine, œufs"],
        ),
    ],
)
def test_typed_groups_below_what_is_done_are_one_list(
    language: str, text: str, things: list[str], told: list[str]
) -> None:
    (one,) = brought(text, language)
    assert listed(one) == things
    assert steps(one)[:-1] == told


def test_a_step_that_would_read_as_a_time_is_kept() -> None:
    page = _NUMBERED.replace("Beat and add", "Cook").format(more="")
    (one,) = brought(page, name="a.html")
    assert steps(one)[-2:] == ["Cook – eggs", "Bake for 50 mins"]


def test_what_may_stand_in_place_of_a_group_is_asked_and_not_listed_beside_it() -> None:
    page = _NUMBERED.replace(
        "<li>Stir both", "<li>or<ul><li>250g ground almonds</li></ul></li><li>Stir both"
    )
    (one,) = brought(page.format(more=""), name="a.html")
    assert "250g ground almonds" not in listed(one)
    assert "ground almonds" in asked(one)


def test_the_same_thing_twice_keeps_its_amounts_in_the_steps() -> None:
    page = _NUMBERED.replace("<li>2 eggs</li>", "<li>2 eggs</li><li>20g butter</li>")
    (one,) = brought(page.format(more=""), name="a.html")
    assert steps(one)[1] == "Melt slowly in a pan: 200g butter, black treacle"
    assert steps(one)[4] == "Beat and add: eggs, 20g butter"


@pytest.mark.parametrize(
    "text",
    [
        # named by what it is for, and by what it is
        "Plum slice\n\nFor the base:\n200 g flour\n100 g butter\n\nFor the top:\n1 kg plums\n"
        "50 g sugar\n\nRub the butter into the flour. Lay the plums on it and bake it.\n",
        "Plum slice\n\nDry ingredients\n200 g flour\n5 g salt\n\nWet ingredients\n2 eggs\n"
        "100 ml milk\n\nBeat the eggs and milk into the flour, and bake it for 20 minutes.\n",
        # titles and parts that begin with a word of work
        "Drop cookies\n200 g flour\n100 g butter\n\nBake them for ten minutes on a tray.\n\n"
        "Roast almonds\n200 g almonds\n5 g salt\n\nRoast them for ten minutes on a tray.\n",
        # a list of its own, and what is done with it again below
        "Plum slice\n\n200 g flour\n100 g butter\n2 eggs\n\nCombine:\n200 g flour\n100 g butter\n\n"
        "Stir in:\n2 eggs\n\nBake it in a moderate oven for twenty minutes.\n",
        # the parts of a recipe have their heads
        "Plum slice\n\nIngredients\n\nMix:\n200 g flour\n100 g butter\nAdd:\n2 eggs\n\nMethod\n\n"
        "1. Mix the flour and butter and add the eggs.\n2. Bake it.\n",
    ],
)
def test_other_lists_in_parts_name_no_step(text: str) -> None:
    for one in brought(text):
        for step in steps(one):
            assert ": " not in step, step


def test_parts_that_are_whole_recipes_are_not_run_together() -> None:
    page = """<html><body><h1>Rices</h1>
    <h2>Dill rice</h2><ol><li>Cook together<ul><li>200g rice</li><li>500g water</li></ul></li>
    <li>Stir in<ul><li>10g dill</li></ul></li></ol>
    <h2>Lime rice</h2><ol><li>Cook together<ul><li>200g rice</li><li>500g water</li></ul></li>
    <li>Stir in<ul><li>1 lime</li></ul></li></ol></body></html>"""
    titles = [
        one.text.partition("title: ")[2].partition("\n")[0] for one in brought(page, name="a.html")
    ]
    assert titles == ["Dill rice", "Lime rice"]
