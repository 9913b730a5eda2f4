"""Allergens: the two lists of law, and what somebody who avoids one is told."""

from __future__ import annotations

import pytest

from stillroom.core.allergens.of_foods import (
    all_allergens,
    answer_avoid,
    contains,
    know_recipe,
    may_contain,
    say_allergen,
)
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe

ANNEX_II = "Reg. (EU) 1169/2011 Annex II (reference.md 6.1)"
FALCPA = "21 USC 321(qq), FALCPA 2004 and FASTER 2021 (reference.md 6.2)"


def recipe_of(*lines: str, kind: str = "bake", more: str = "") -> Recipe:
    items = "\n".join(
        f'  - "{line}"' if not line.startswith("{") else f"  - {line}" for line in lines
    )
    front = f"title: A thing\nkind: {kind}\nmakes: 1 kg\ningredients:\n{items}\n{more}"
    return read_recipe(f"---\n{front}\n---\n\n## Method\n\n1. Stir.\n", "recipes/a.md", "a")


def test_the_fourteen_of_annex_ii() -> None:
    headings = {a.eu for a in all_allergens().values() if a.eu}
    assert headings == {
        "cereals containing gluten", "crustaceans", "eggs", "fish", "peanuts", "soya", "milk",
        "nuts", "celery", "mustard", "sesame", "sulphites", "lupin", "molluscs",
    }, ANNEX_II  # fmt: skip


def test_the_nine_of_the_united_states() -> None:
    headings = {a.us for a in all_allergens().values() if a.us}
    assert headings == {
        "milk", "eggs", "fish", "crustacean shellfish", "tree nuts", "peanuts", "wheat",
        "soybeans", "sesame",
    }, FALCPA  # fmt: skip


def test_the_eight_nuts_of_annex_ii_and_no_coconut() -> None:
    nuts = {a.name for a in all_allergens().values() if a.eu == "nuts"} - {"nuts", "other-nuts"}
    assert nuts == {
        "almond", "hazelnut", "walnut", "cashew", "pecan", "brazil-nut", "pistachio", "macadamia",
    }, ANNEX_II  # fmt: skip


# (item, contained by the European list, by the American list, source)
CONTAINED = [
    ("200 g plain flour", {"wheat"}, {"wheat"}, ANNEX_II),
    ("200 g spelt flour", {"wheat"}, {"wheat"}, ANNEX_II + " item 1 names spelt"),
    ("200 g rye flour", {"rye"}, set(), FALCPA + ": wheat only"),
    ("100 g pearl barley", {"barley"}, set(), FALCPA + ": wheat only"),
    ("200 g rolled oats", {"oats"}, set(), ANNEX_II + " item 1 names oats"),
    ("50 g barley malt extract", {"barley"}, set(), ANNEX_II),
    ("1 tbsp worcester-type sauce", {"fish", "barley"}, {"fish"}, "anchovy and malt vinegar"),
    ("200 g marzipan", {"almond"}, {"almond"}, ANNEX_II),
    ("100 g dried apricots", {"sulphites"}, set(), ANNEX_II + " item 12"),
    ("100 g dried apricots, unsulphured", set(), set(), ANNEX_II + " item 12"),
    ("60 ml bottled lemon juice", {"sulphites"}, set(), ANNEX_II + " item 12"),
    ("60 ml lemon juice", set(), set(), ANNEX_II),
    ("750 ml red wine", {"sulphites"}, set(), ANNEX_II + " item 12"),
    ("1 l vodka", set(), set(), ANNEX_II + ": distillates from cereals are exempt"),
    ("1 l whisky", set(), set(), ANNEX_II + ": distillates from cereals are exempt"),
    ("330 ml beer", {"barley"}, set(), ANNEX_II + ": beer is not distilled"),
    ("100 g glucose syrup", set(), set(), ANNEX_II + " item 1(a): exempt"),
    ("100 g desiccated coconut", set(), set(), ANNEX_II + " has no coconut; FDA dropped it"),
    ("50 g pine nuts", set(), {"pine-nut"}, ANNEX_II + " has none; FDA counts it (memory)"),
    ("2 tsp mustard seeds", {"mustard"}, set(), ANNEX_II),
    ("2 tsp celery salt", {"celery"}, set(), ANNEX_II),
    ("1 tbsp tahini", {"sesame"}, {"sesame"}, FALCPA + ": FASTER Act"),
    ("1 tbsp soy sauce", {"soya", "wheat"}, {"soya", "wheat"}, ANNEX_II),
    ("100 g dark chocolate", {"soya"}, {"soya"}, "soya lecithin"),
    ("100 g peanuts", {"peanut"}, {"peanut"}, ANNEX_II),
    ("100 g lupin flour", {"lupin"}, set(), ANNEX_II),
    ("2 eggs", {"eggs"}, {"eggs"}, ANNEX_II),
    ("50 ml amaretto", {"almond"}, {"almond"}, "to be careful"),
    ("100 g butter", {"milk"}, {"milk"}, ANNEX_II),
    ("100 ml coconut milk", set(), set(), "no milk in it"),
    ("100 ml almond milk", {"almond"}, {"almond"}, ANNEX_II),
]


@pytest.mark.parametrize(("line", "eu", "us", "source"), CONTAINED, ids=[r[0] for r in CONTAINED])
def test_what_law_lists_is_found(line: str, eu: set[str], us: set[str], source: str) -> None:
    known = know_recipe(recipe_of(line))
    assert {a.name for a in contains(known, "eu")} == eu, source
    assert {a.name for a in contains(known, "us")} == us, source


def test_an_infusion_keeps_the_allergen_of_what_is_strained_out() -> None:
    known = know_recipe(recipe_of("1 l brandy", "20 g almonds", kind="infusion"))
    assert [a.name for a in contains(known, "eu")] == ["almond"]


def test_parts_written_by_the_maker_are_searched() -> None:
    line = "{item: mystery powder, amount: 10 g, parts: [salt, celery, emulsifier (soya lecithin)]}"
    known = know_recipe(recipe_of(line))
    assert {a.name for a in contains(known, "eu")} == {"celery", "soya"}
    assert known[0].unknown == ()


def test_a_part_nobody_knows_is_named() -> None:
    line = "{item: mystery powder, amount: 10 g, parts: [salt, moon dust]}"
    assert know_recipe(recipe_of(line))[0].unknown == ("moon dust",)


def test_traces_are_not_said_of_what_is_contained() -> None:
    known = know_recipe(recipe_of("200 g rolled oats", "200 g plain flour"))
    assert may_contain(known, "eu") == ()


# (avoid, ingredient lines, kind, answer)
AVOID = [
    ("almond", ["100 g marzipan"], "bake", "contains"),
    ("nuts", ["100 g marzipan"], "bake", "contains"),
    ("nuts", ["100 g dark chocolate"], "bake", "may contain"),
    ("hazelnut", ["100 g dark chocolate"], "bake", "may contain"),
    ("hazelnut", ["100 g almonds"], "bake", "may contain"),
    ("milk", ["100 g dark chocolate"], "bake", "may contain"),
    ("milk", ["100 g coconut milk"], "bake", "free"),
    ("gluten", ["100 g rolled oats"], "bake", "contains"),
    ("gluten", ["100 g rice"], "dry mix", "free"),
    ("gluten", ["100 g red lentils"], "dry mix", "may contain"),
    ("gluten", ["100 g moon dust"], "dry mix", "not known"),
    ("wheat", ["100 g rolled oats"], "bake", "may contain"),
    ("alcohol", ["1 l vodka"], "infusion", "contains"),
    ("alcohol", ["1 tsp vanilla extract"], "bake", "contains"),
    ("alcohol", ["1 kg honey", "5 g yeast"], "ferment", "contains"),
    ("alcohol", ["200 g flour", "5 g yeast"], "bake", "free"),
    ("alcohol", ["1 kg cabbage", "25 g salt"], "ferment", "may contain"),
    ("alcohol", ["250 ml cider vinegar"], "preserve", "free"),
    ("alcohol", ["100 g moon dust"], "bake", "not known"),
    ("vegan", ["100 g honey"], "bake", "contains"),
    ("vegan", ["100 g marshmallows"], "dry mix", "contains"),
    ("vegan", ["750 ml red wine"], "infusion", "not known"),
    ("vegan", ["100 g sugar"], "bake", "free"),
    ("vegetarian", ["100 g honey"], "bake", "free"),
    ("vegetarian", ["100 g marshmallows"], "dry mix", "contains"),
    ("vegetarian", ["1 tbsp worcester-type sauce"], "preserve", "contains"),
    ("vegetarian", ["50 g parmesan"], "bake", "contains"),
    ("coriander", ["2 tsp ground coriander"], "preserve", "contains"),
    ("onion", ["1 tsp worcester-type sauce"], "preserve", "contains"),
    ("coconut", ["100 g sugar"], "bake", "free"),
    # Reg. (EC) 1333/2008 Annex II: dried grapes, prunes and figs may be treated; safefood: many
    ("sulphites", ["100 g raisins"], "bake", "may contain"),
    ("sulphites", ["100 g prunes"], "bake", "may contain"),
    ("sulphites", ["100 g unsulphured prunes"], "bake", "free"),
    # what is only wished for, or said of one of two, may be of the others
    ("sulphites", ["100 g raisins (unsulphured if you can)"], "bake", "may contain"),
    ("sulphites", ["100 g prunes, ideally unsulphured"], "bake", "may contain"),
    ("sulphites", ["100 g dried apricots, preferably unsulphured"], "bake", "may contain"),
    ("sulphites", ["100 g unsulphured raisins or sultanas"], "bake", "may contain"),
    ("sulphites", ["100 g raisins (regular or unsulphured)"], "bake", "may contain"),
    ("sulphites", ["100 g unsulphured raisins, chopped or snipped"], "bake", "free"),
    ("sulphites", ["1 bag of unsulphured raisins"], "bake", "free"),
]


@pytest.mark.parametrize(("avoid", "lines", "kind", "answer"), AVOID)
def test_somebody_who_avoids_it_is_told(
    avoid: str, lines: list[str], kind: str, answer: str
) -> None:
    assert answer_avoid(recipe_of(*lines, kind=kind), avoid) == answer


def test_tools_and_wrappings_are_no_ingredients() -> None:
    recipe = recipe_of("200 g flour", "1 square greaseproof paper")
    assert [one.ingredient.item for one in know_recipe(recipe)] == ["flour"]


def test_pine_nuts_are_known() -> None:
    assert find_staple("pine kernels") is not None


@pytest.mark.parametrize(
    ("food", "held"),
    [
        ("wheat beer", {"wheat", "barley"}),
        ("hefeweizen", {"wheat", "barley"}),
        ("mince pies", {"wheat"}),
        ("shredded wheat", {"wheat"}),
        ("brownie mix", {"wheat"}),
        ("Yorkshire puddings", {"wheat", "eggs", "milk"}),
        ("custard tarts", {"wheat", "eggs", "milk"}),
        ("cookies", {"wheat"}),
        ("Biscoff spread", {"wheat"}),
        ("Baileys", {"milk"}),
        ("granola", {"oats"}),
        ("rice noodles", set()),
        ("pizza sauce", set()),
        ("pumpkin pie spice", set()),
    ],
)
def test_what_a_bought_food_always_holds_is_contained(food: str, held: set[str]) -> None:
    found = {a.name for a in contains(know_recipe(recipe_of(f"100 g {food}")), "eu")}
    assert found == held


@pytest.mark.parametrize(
    ("food", "denied"),
    [
        ("gluten-free pizza", "wheat"),
        ("gluten free cake mix", "wheat"),
        ("gluten-free granola", "oats"),
        ("nut-free nougat", "nuts"),
    ],
)
def test_what_its_name_denies_is_not_contained_and_not_free(food: str, denied: str) -> None:
    known = know_recipe(recipe_of(f"100 g {food}"))
    assert denied not in {a.name for a in contains(known, "eu")}
    assert denied in {a.name for a in may_contain(known, "eu")}
    assert known[0].unknown


def test_a_nut_of_no_kind_is_a_tree_nut_in_the_united_states() -> None:
    # 21 USC 321(qq): "tree nuts", "crustacean shellfish", by these names
    allergens = all_allergens()
    for name in ("nuts", "other-nuts", "crustaceans", "soya"):
        said = say_allergen(allergens[name], "us")
        assert said in ("tree nuts", "other tree nuts", "crustacean shellfish", "soy")
