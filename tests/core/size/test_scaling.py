"""Targets, kitchen amounts and what holds. Published values name their source beside them."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from stillroom.core.book import BookSettings
from stillroom.core.reading.loading import load_recipe, read_recipe
from stillroom.core.recipe.method import split_step
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scalable import scalable_of
from stillroom.core.size.scale_words import scaling_document, scaling_table
from stillroom.core.size.scaling import Measures, ScaledBatch, scale_recipe
from stillroom.core.size.step_amounts import step_amount
from stillroom.core.size.targets import parse_fill, parse_have, parse_times, read_target
from stillroom.core.size.what_stays import notes_on_scaling, read_oven
from stillroom.core.words.problems import Unreadable
from stillroom.publish.amounts_page import show_amounts

RECIPES = Path(__file__).resolve().parents[3] / "recipes"


def recipe_of(
    *ingredients: str, makes: str = "1 l", kind: str = "infusion", more: str = ""
) -> Recipe:
    lines = "\n".join(f"  - {line}" for line in ingredients)
    text = f"---\ntitle: A try\nkind: {kind}\nmakes: {makes}\n{more}ingredients:\n{lines}\n---\n\n"
    return read_recipe(f"{text}## Method\n\n1. Do it.\n", "try.md", "try")


def scaled(
    recipe: Recipe, system: Any = "metric", by: Any = "written", **asked: str
) -> ScaledBatch:
    return scale_recipe(recipe, read_target(asked, system), Measures(system, by))


SPIRIT = recipe_of(
    "1 l vodka, 40% vol",
    "{item: cinnamon stick, amount: 1 per 250-400 ml of vodka}",
    "{item: honey, amount: to taste}",
    more="vessel: 1.5 l jar\n",
)


# target -> factor, each a fraction that can be worked out by hand
@pytest.mark.parametrize(
    ("asked", "factor"),
    [
        ({"times": "1½"}, "3/2"),
        ({"makes": "200 ml"}, "1/5"),
        ({"makes": "1 pint"}, "113652250000/200000000000"),  # 568.26125 ml: W&M Act 1985 Sch. 1
        ({"fill": "12 x 50 ml"}, "3/5"),
        ({"fill": "12 x 50 ml + 6 x 100 ml"}, "6/5"),
        ({"fill": "12 bottles of 50 ml and 1 x 100 ml"}, "7/10"),
        ({"have": "17 cinnamon sticks"}, "68/13"),  # nominal 3.25 a litre: (2.5 + 4) / 2
        ({"have": "500 ml vodka"}, "1/2"),
    ],
)
def test_target_comes_to_its_factor(asked: dict[str, str], factor: str) -> None:
    assert scaled(SPIRIT, **asked).factor == Fraction(factor)


def test_a_us_gallon_is_231_cubic_inches() -> None:
    """NIST Handbook 44 App. C: 3785.411784 ml; E10: 32 bottles of 4 fl oz fill from it exactly."""
    assert scaled(SPIRIT, "us", makes="1 gallon").factor == Fraction("3.785411784")
    assert scaled(SPIRIT, "us", fill="32 x 4 fl oz").factor == Fraction("3.785411784")


# vodka in ml -> low and high of the ratio, sticks shown, holds; issue 2, "1 per 250-400 ml"
@pytest.mark.parametrize(
    ("makes", "low", "high", "shown", "holds"),
    [
        ("1 l", "5/2", "4", "3", True),
        ("250 ml", "5/8", "1", "1", True),
        ("500 ml", "5/4", "2", "2", True),
        ("200 ml", "1/2", "4/5", "1", False),
        ("450 ml", "9/8", "9/5", "1", False),
        ("5 l", "25/2", "20", "16", True),
    ],
)
def test_whole_sticks_of_a_ratio(makes: str, low: str, high: str, shown: str, holds: bool) -> None:
    batch = scaled(SPIRIT, makes=makes)
    stick = batch.lines[1]
    assert (stick.low, stick.high) == (Fraction(low), Fraction(high))
    assert (stick.amount_text, stick.holds) == (shown, holds)
    assert stick.exact == (Fraction(low) + Fraction(high)) / 2
    assert bool(batch.warnings) is not holds


def test_scarcest_decides_and_the_rest_is_told() -> None:
    batch = scaled(SPIRIT, have="17 cinnamon stick + 2 l vodka")
    assert batch.factor == 2
    assert batch.scarcest == "vodka"
    [left] = batch.left
    assert (left.item, left.amount) == ("cinnamon stick", Fraction(21, 2))


TWICE = recipe_of(
    "200 g sugar", "300 g flour", "50 g sugar", "sugar, to dust", makes="24 buns", kind="bake"
)


# by hand: of sugar one batch wants 200 g and 50 g, and what dusts it is not said
@pytest.mark.parametrize(
    ("asked", "factor", "left"),
    [
        ("500 g sugar", 2, []),
        ("500 g sugar + 900 g flour", 2, [("flour", 300)]),
        ("1000 g sugar + 600 g flour", 2, [("sugar", 500)]),
    ],
)
def test_what_is_there_does_for_every_line_of_its_name(
    asked: str, factor: int, left: list[tuple[str, int]]
) -> None:
    batch = scaled(TWICE, have=asked)
    assert batch.factor == factor
    assert [(one.item, one.amount) for one in batch.left] == left


def test_a_food_of_two_lines_is_named_once_to_whoever_has_some() -> None:
    shown = show_amounts(TWICE, BookSettings())
    assert shown.choices == ("sugar", "flour")


def test_of_two_lines_of_a_name_that_grow_otherwise_none_is_guessed() -> None:
    recipe = recipe_of("200 g sugar", "{item: sugar, amount: 50 g, scales: per batch}")
    with pytest.raises(Unreadable, match="does not grow"):
        scaled(recipe, have="500 g sugar")


def test_vessel_is_filled_to_its_headspace() -> None:
    """1,000 ml and 13 g of bark stand in it at most to 95 % of 1,500 ml."""
    batch = scaled(SPIRIT, vessel="1.5 l")
    assert Fraction(14, 10) < batch.factor < Fraction(1425, 1000)


def test_nearest_batch_of_whole_counts() -> None:
    recipe = recipe_of("100 g flour", "2 eggs", "3 walnuts", makes="24 biscuits", kind="bake")
    batch = scaled(recipe, times="1.2")
    assert not batch.lines[1].holds
    assert batch.fit is not None
    assert batch.fit.factor == 1
    assert scaled(recipe, times="2").fit is None


# line, factor or measure -> what a cook would write. No "0.33 egg", no "3¾ tsp".
@pytest.mark.parametrize(
    ("line", "times", "system", "by", "shown"),
    [
        ("48 tsp sugar", "1", "us", "written", "1 cup"),  # 240 ml in metric spoons: 1.4 % off
        ("500 g sugar", "3", "metric", "written", "1.5 kg"),
        ("250 g sugar", "1/3", "metric", "written", "85 g"),
        ("1 l water", "2/3", "metric", "written", "675 ml"),
        ("1 l water", "5", "metric", "written", "5 l"),
        ("1¼ tsp mace", "3", "metric", "written", "1 tbsp + ¾ tsp"),
        ("1 tsp mace", "1/12", "metric", "written", "⅛ tsp"),
        ("1 egg", "1/3", "metric", "written", "1"),
        ("1 lemon", "1/2", "metric", "written", "½"),
        ("3 lemons", "5", "metric", "written", "15"),
        ("4-5 vanilla pods", "2", "metric", "written", "8–10"),
        ("500 g granulated sugar", "1", "us", "volume", "2½ cups"),  # E11: USDA SR 19335
        ("339 g honey", "1", "us", "volume", "1 cup"),  # E11: USDA SR 19296
        ("243 g rolled oats", "1", "us", "volume", "3 cups"),  # E11: USDA SR 08120
        ("125 g plain flour", "1", "us", "volume", "1 cup"),  # USDA SR 20081
        ("1 lb sugar", "2", "metric", "written", "900 g"),  # 453.592 37 g: NIST SP 811
        ("8 oz sugar", "1", "imperial", "written", "8 oz"),
        ("20 oz sugar", "1", "imperial", "written", "1 lb 4 oz"),
        ("2 cm ginger", "2", "metric", "written", "4 cm"),
    ],
)
def test_kitchen_amount(line: str, times: str, system: Any, by: Any, shown: str) -> None:
    batch = scaled(recipe_of("1 l vodka, 40% vol", line), system, by, times=times)
    assert batch.lines[1].amount_text == shown


def test_48_us_teaspoons_are_a_cup() -> None:
    """NIST Handbook 44: a cup is 16 tablespoons of 3 teaspoons."""
    recipe = recipe_of("24 tsp sugar", makes="1 pint", more="units: us\n")
    assert scaled(recipe, "us", times="2").lines[0].amount_text == "1 cup"


def test_as_written_is_as_written() -> None:
    recipe = recipe_of("3 tsp salt", "255 ml water", "1 1/2 lb apples")
    shown = [line.amount_text for line in scale_recipe(recipe).lines]
    assert shown == ["3 tsp", "255 ml", "1½ lb"]


def test_what_matters_is_rounded_tighter() -> None:
    recipe = recipe_of("326 g plain flour", "326 g fine salt", makes="1 kg", kind="bake")
    flour, salt = scaled(recipe, times="1/2").lines
    assert flour.amount_text == "160 g"
    assert salt.amount_text == "163 g"


def test_stated_tolerance_decides() -> None:
    strict = recipe_of("1 l vodka, 40% vol", "{item: mace, amount: 1 tsp, tolerance: 1%}")
    assert not scaled(strict, times="1/12").lines[1].holds
    loose = recipe_of("1 l vodka, 40% vol", "{item: mace, amount: 1 tsp, tolerance: 60%}")
    assert scaled(loose, times="1/12").lines[1].holds


def test_per_container_and_per_batch() -> None:
    recipe = recipe_of(
        "1 l vodka, 40% vol",
        "{item: piece of peel, amount: 1, scales: per container}",
        "{item: square of muslin, amount: 1, scales: per batch}",
        more="containers: bottle, 50 ml\n",
    )
    peel, muslin = scaled(recipe, fill="12 x 50 ml").lines[1:]
    assert (peel.amount_text, peel.item_text, peel.aside) == (
        "12",
        "pieces of peel",
        "1 for each of 12",
    )
    assert (muslin.amount_text, muslin.item_text) == ("1", "square of muslin")


def test_amounts_in_the_method_scale() -> None:
    recipe = recipe_of("1 l vodka, 40% vol", "300 g sugar", "3 lemons")
    batch = scaled(recipe, times="1/3")
    words = []
    for step in ("{vodka}", "{100 g sugar}", "{lemons}"):
        [segment] = split_step(step, recipe.ingredients, "metric")
        words.append(step_amount(recipe, batch, segment).text)
    assert words == ["330 ml vodka", "33 g sugar", "1 lemon"]


def test_document_has_the_shape_of_issue_2() -> None:
    document = scaling_document(scaled(SPIRIT, makes="200 ml"), SPIRIT)
    asked_for = ["recipe", "factor", "makes", "ingredients", "warnings"]
    assert list(document) == [*asked_for, "notes", "comes_to"]
    assert document["factor"] == "1/5"
    assert document["makes"] == "200 ml"
    assert document["ingredients"][0] == {
        "item": "vodka",
        "amount": "200 ml",
        "exact": "1/5",
        "unit": "l",
        "low": "39/200",
        "high": "41/200",
        "holds": True,
    }
    assert document["ingredients"][2]["exact"] is None


def test_table_says_what_does_not_fit() -> None:
    table = scaling_table(scaled(SPIRIT, times="3"), SPIRIT)
    assert "would not fit the 1.5 l vessel" in table
    assert "Times and temperatures stay as written." in table


def test_a_preserve_names_a_test_and_no_time() -> None:
    recipe = recipe_of("1 kg plums", "1 kg sugar", makes="1.6 kg", kind="preserve")
    assert "test for set" in scaling_table(scaled(recipe, times="3"), recipe)


# what is written -> a piece of what is answered
@pytest.mark.parametrize(
    ("asked", "answer"),
    [
        ({"times": "0"}, "nothing cannot be made"),
        ({"times": "lots"}, "is not a number"),
        ({"makes": "5 cupps"}, '"cupps" is not a unit'),
        ({"makes": "2 kisses"}, "is not a unit"),
        ({"fill": "12"}, "does not name containers"),
        ({"fill": "12 x 3"}, "how much a container holds"),
        ({"have": "17"}, "how much of what"),
        ({"have": "17 dragons"}, "is not in this recipe"),
        ({"have": "1 kg honey"}, "does not grow with the batch"),
        ({"have": "1 cm vodka"}, "is not measured so"),
        ({"vessel": "big"}, "is not the size of a vessel"),
        ({"times": "2", "makes": "1 l"}, "cannot both decide"),
    ],
)
def test_mistakes_are_answered_in_words(asked: dict[str, str], answer: str) -> None:
    with pytest.raises(Unreadable, match=answer):
        scaled(SPIRIT, **asked)


def test_counted_things_are_not_poured() -> None:
    biscuits = recipe_of("100 g flour", makes="24 biscuits", kind="bake")
    with pytest.raises(Unreadable, match="counted, not poured"):
        scaled(biscuits, fill="3 x 50 ml")
    assert scaled(biscuits, makes="36").factor == Fraction(3, 2)


def test_parsers_read_what_a_cook_types() -> None:
    assert parse_times("2 1/2").factor == Fraction(5, 2)
    assert [one.count for one in parse_fill("2×50ml; 3 jars of 8 fl oz").containers] == [2, 3]
    assert [words for _amount, words in parse_have("17 sticks and 1 l vodka").have] == [
        "stick",
        "vodka",
    ]


# C -> F, gas mark. F exact: NIST SP 811; gas marks: common practice, no published source
@pytest.mark.parametrize(
    ("celsius", "text"),
    [
        (160, "160 °C, 325 °F, gas mark 3"),
        (180, "180 °C, 350 °F, gas mark 4"),
        (200, "200 °C, 400 °F, gas mark 6"),
        (60, "60 °C, 140 °F"),
    ],
)
def test_oven(celsius: int, text: str) -> None:
    assert read_oven(Fraction(celsius)).text == text


# usable room of the 1.5 l jar by its headspace; need is what stands in it, times the factor
@pytest.mark.parametrize(
    ("times", "told"), [("2", "or 2 such vessels."), ("4", "or 4 such vessels."), ("12", "in all.")]
)
def test_as_many_vessels_as_it_takes_and_litres_beyond_four(times: str, told: str) -> None:
    recipe = load_recipe(RECIPES / "bitter-orange-spirit.md")
    notes = notes_on_scaling(scalable_of(recipe), Fraction(times))
    assert notes[-1].startswith("It would not fit the 1.5 l vessel")
    assert notes[-1].endswith(told)


# common practice; stricter in the USDA Complete Guide to Home Canning, Guide 7: one batch at a time
@pytest.mark.parametrize(("times", "batches"), [("1", ""), ("2", ""), ("2.5", "2"), ("5", "3")])
def test_a_preserve_beyond_twice_is_made_in_batches(times: str, batches: str) -> None:
    recipe = recipe_of("1 kg plums", "1 kg sugar", makes="1.6 kg", kind="preserve")
    warnings = scaled(recipe, times=times).warnings
    assert any(f"make it in {batches} batches" in one for one in warnings) is bool(batches)


# stands in 14.5 l at three times, the pan of the recipe holds 6 l: as many batches as it takes
@pytest.mark.parametrize(("times", "batches"), [("2", ""), ("2.1", "2"), ("3", "3"), ("8", "7")])
def test_batches_of_a_preserve_fit_its_pan_and_nothing_else_is_said(
    times: str, batches: str
) -> None:
    batch = scaled(load_recipe(RECIPES / "bramble-jelly.md"), times=times)
    warned = [one for one in batch.warnings if "batches" in one]
    assert [f"in {batches} batches" in one for one in warned] == ([True] if batches else [])
    assert any("such vessels" in one for one in batch.notes) is not bool(batches)


@pytest.mark.parametrize("asked", [{"makes": "99999999 l"}, {"times": "1001"}])
def test_more_than_a_kitchen_can_make_is_refused(asked: dict[str, str]) -> None:
    with pytest.raises(Unreadable, match="more than a kitchen can make"):
        scaled(SPIRIT, **asked)
    assert scaled(SPIRIT, times="1000").factor == 1000


@pytest.mark.parametrize("asked", [{"makes": "1 ml"}, {"times": "1/51"}, {"times": "0.001"}])
def test_less_than_a_spoon_can_measure_is_refused(asked: dict[str, str]) -> None:
    with pytest.raises(Unreadable, match="too little to measure"):
        scaled(SPIRIT, **asked)
    assert scaled(SPIRIT, times="1/50").factor == Fraction(1, 50)


@pytest.mark.parametrize("sort", ["times", "makes", "fill", "have", "vessel"])
def test_an_empty_wish_is_no_wish_for_the_recipe_as_written(sort: str) -> None:
    with pytest.raises(Unreadable):
        read_target({sort: ""}, "metric")


def test_a_spoon_that_is_as_near_as_spoons_come_holds() -> None:
    recipe = recipe_of("1 tsp fine salt", "100 g flour", kind="bake", makes="24 biscuits")
    assert scaled(recipe, times="0.52").warnings == ()  # ½ tsp for 0.52 tsp
    assert len(scaled(recipe, times="1/12").warnings) == 1  # ⅛ tsp is half as much again


def test_as_written_it_makes_what_the_file_says() -> None:
    recipe = recipe_of("1 l vodka", makes="about 963 ml")
    assert scaled(recipe).makes == "about 963 ml"
    assert scaled(recipe, times="2").makes == "about 1.9 l"


@pytest.mark.parametrize(
    ("note", "counts"),
    [
        ("the peel of 6 oranges, each pared in one strip", True),
        ("from about 45 g fresh leaves", True),
        ("a strain that stands 14% vol", False),
        ("750 g for each litre of juice", False),
        ("cut in 1 cm dice", False),
        ("about 50 g each", False),
    ],
)
def test_a_note_that_counts_says_it_is_for_the_recipe_as_written(note: str, counts: bool) -> None:
    recipe = recipe_of(f'{{item: plums, amount: 1 kg, note: "{note}"}}')
    assert scaled(recipe).lines[0].note == note
    told = f"{note} (for the recipe as written)" if counts else note
    assert scaled(recipe, times="3").lines[0].note == told


def test_a_food_in_another_language_is_counted_as_it_is_written() -> None:
    text = (
        "---\ntitle: Tried\nkind: biscuits\nmakes: 60 Stück\ningredients:\n"
        "  - 2 Eigelb\n  - 3 eggs\n  - 2 lemon\n---\n\n## Method\n\n1. Bake.\n"
    )
    made = scalable_of(read_recipe(text, "tried.md", "tried"))
    assert [(line.one, line.many) for line in made.lines] == [
        ("Eigelb", "Eigelb"),
        ("egg", "eggs"),
        ("lemon", "lemons"),
    ]
    assert (made.thing, made.things) == ("Stück", "Stück")


def test_lye_and_all_that_it_is_to_turn_into_soap_are_weighed_to_the_gram() -> None:
    """Common practice, no published source: each fat takes its own weight of lye."""
    parts = ("737 g olive oil", "1701 g lard", "312 g lye", "907 g water")
    soap = scaled(recipe_of(*parts, makes="24 bars", kind="soap"), times="1.37")
    assert [line.amount_text for line in soap.lines] == ["1.01 kg", "2.33 kg", "427 g", "1.24 kg"]
    for line in soap.lines:
        assert line.kitchen is not None
        assert line.exact is not None
        assert abs(line.kitchen - line.exact) <= line.exact / 300
    without = scaled(recipe_of(*parts[:2], makes="24 bars", kind="craft"), times="1.37")
    assert [line.amount_text for line in without.lines] == ["1 kg", "2.35 kg"]


def test_curing_salt_is_weighed_to_the_gram() -> None:
    meat = scaled(recipe_of("5 kg pork", "125 g curing salt no. 1", kind="preserve"), times="1.1")
    assert [line.amount_text for line in meat.lines] == ["5.5 kg", "138 g"]


# What a pack holds stands with it on every page; "1 (5 oz) can" is the shape of American pages, the
# tins are British ones. Half a can is said as one; where no noun is counted the note says the size.
@pytest.mark.parametrize(
    ("line", "times", "amount", "note"),
    [
        ("1 (5 oz) can evaporated milk", "1", "1 can of 5 oz", ""),
        ("1 (5 oz) can evaporated milk", "1/2", "½ can of 5 oz", ""),
        ("1 (5 oz) can evaporated milk", "3", "3 cans of 5 oz", ""),
        ("2 x 400 g tins tomatoes", "2", "4 tins of 400 g", ""),
        ("4 (8-oz) potatoes", "2", "8", "8 oz each"),
        ("1 stick butter", "1/2", "½ stick", ""),
        ("1 tin condensed milk (397 g)", "1", "1 tin", "397 g"),
        ("1 stick cinnamon", "1/2", "1 stick", ""),
    ],
)
def test_a_pack_says_what_it_holds(line: str, times: str, amount: str, note: str) -> None:
    batch = scaled(recipe_of(line, more="units: us\n"), system="us", times=times)
    assert (batch.lines[0].amount_text, batch.lines[0].note) == (amount, note)
