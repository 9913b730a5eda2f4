"""Sums of a batch that can be done by hand: room taken, liquid kept back, what is said of it."""

from __future__ import annotations

from fractions import Fraction
from statistics import median

import pytest

from stillroom.core.batch.bottling import estimate_yield, kept_ml, makes_ml
from stillroom.core.batch.contents import Content, bottling_data, contents_of
from stillroom.core.batch.cutting import read_cut
from stillroom.core.batch.preserves import finished_g
from stillroom.core.batch.strength import fold_of_recipe, not_told, strength_of
from stillroom.core.batch.strength_words import cut_document, strength_document, strength_text
from stillroom.core.batch.syrups import SOURCE, SOURCE_OUTSIDE, brix_of_syrup
from stillroom.core.larder.shelves import all_staples
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe


def recipe_of(*lines: str, kind: str = "infusion", makes: str = "1 l") -> Recipe:
    rows = "".join(f"  - {line}\n" for line in lines)
    front = f"title: A try\nkind: {kind}\nmakes: {makes}\ningredients:\n{rows}"
    return read_recipe(f"---\n{front}---\n\n## Method\n\n1. Mix.\n2. Strain.\n", "try.md", "try")


def content(line: str) -> Content:
    return contents_of(recipe_of("1 l vodka, 40% vol", line))[1]


# line -> ml it pushes aside; USDA composition of the staple, the shares of bottling.yml: water
# 1.002 ml to the gram, sugar 0.62, fat 1.09, all the rest 0.66
@pytest.mark.parametrize(
    ("line", "volume"),
    [
        ("100 g powdered moonwort", "66"),  # of what nothing is known
        ("50 g powdered moonwort", "33"),
    ],
)
def test_what_is_laid_in_takes_its_room(line: str, volume: str) -> None:
    assert content(line).volume_ml == Fraction(volume)


# Sugars as they are sold: what a liqueur or a mead is sweetened with is in the glass, none of it is
# strained out and none keeps spirit back. Sucrose 99.8 g in 100 (USDA SR 19335; rock, pearl sugar:
# the same in larger pieces); glucose with its one water 90.9 (molar mass 180.16 of 198.17); the
# raw ones from memory; a sugar without figures goes with the liquid too, how sweet is not known.
@pytest.mark.parametrize(
    ("name", "sugar"),
    [
        ("rock sugar", "99.8"), ("brown rock sugar", "99.8"), ("candy sugar", "99.8"),
        ("Belgian candi sugar", "99.8"), ("pearl sugar", "99.8"), ("loaf sugar", "99.8"),
        ("jam sugar", "97"), ("raw cane sugar", "99.19"), ("soft dark brown sugar", "97.02"),
        ("panela", "90"), ("piloncillo", "90"), ("jaggery", "85"), ("palm sugar", "85"),
        ("maple sugar", "84.87"), ("dextrose", "90.9"), ("priming sugar", "90.9"),
        ("date sugar", "0"), ("invert sugar", "0"),
    ],
)  # fmt: skip
def test_a_sugar_stays_in_the_bottle(name: str, sugar: str) -> None:
    found = content(f"100 g {name}")
    assert found.staple, "it is known"
    assert found.dissolves, "it melts into the liquid"
    assert found.grams_of("sugar") == Fraction(sugar)


@pytest.mark.parametrize(
    "line",
    ["100 g rock candy sticks", "100 g raisins", "100 g candied orange", "100 g sugar snap peas"],
)
def test_what_is_only_named_after_sugar_does_not(line: str) -> None:
    assert not content(line).dissolves


def test_a_liqueur_with_rock_sugar_fills_what_it_does_with_plain() -> None:
    fruit = ("0.7 l vodka", "500 g sloes")
    plain, rock = (
        estimate_yield(recipe_of(*fruit, f"250 g {name}")) for name in ("sugar", "rock sugar")
    )
    assert plain
    assert rock
    assert (plain.low_ml, plain.high_ml) == (rock.low_ml, rock.high_ml)


# Fresh fruit, peel, chillies and herbs without figures give up their water as their like do (damson
# gin came out stronger and scarcer than sloe gin); dried ones have none to give.
@pytest.mark.parametrize(
    ("name", "water"),
    [
        ("damsons", 85), ("mirabelles", 85), ("bilberries", 85), ("lingonberries", 85),
        ("mulberries", 85), ("rowan berries", 85), ("calamondins", 85), ("cherry plums", 85),
        ("kiwis", 85), ("hawthorn berries", 85), ("jalapeños", 90), ("lemongrass", 85),
        ("mandarin peel", 77), ("lime zest", 77), ("freeze-dried raspberries", 0),
        ("dried kiwi", 0), ("raspberry powder", 0), ("juniper berries", 0),
        ("dried lemongrass", 0), ("dried orange peel", 0), ("dried damsons", 0), ("raisins", 0),
        ("candied lemon peel", 0), ("chilli flakes", 0),
    ],
)  # fmt: skip
def test_fresh_things_without_figures_give_juice_as_their_like_do(name: str, water: int) -> None:
    assert content(f"100 g {name}").juice_g == water


def test_the_water_of_fresh_things_is_the_middle_of_those_that_have_a_figure() -> None:
    for tag, share in bottling_data()["fresh_water"].items():
        found = [
            float(one.composition.water)
            for one in all_staples().values()
            if tag in one.tags and not one.kind_of and one.acidity != "dry"
            if one.composition and one.composition.water and one.composition.water > 40
        ]
        assert found
        assert abs(median(found) - share) < 1, tag


# Fruit that is only counted, or measured by the cup, and has no weight here: with enough of it
# nobody can say how strong the drink comes out or what it fills (a nocino of thirty walnuts was
# told as 73 % vol). A few chillies change nothing. USDA SR weights: kumquat 19 g, clementine 74 g.
@pytest.mark.parametrize(
    ("line", "known"),
    [
        ("20 damsons", False), ("10 medlars", False), ("2 cups mirabelles", False),
        ("1 watermelon", True), ("40 rosehips", False), ("10 crab apples", False),
        ("30 green walnuts", True), ("20 kumquats", True), ("6 clementines", True),
        ("3 quinces", True), ("500 g damsons", True), ("2 cups raspberries", True),
        ("3 jalapeños", True), ("1 handful damsons", True), ("10 lemons, the peel only", True),
        ("20 blackcurrant leaves", True), ("1 bunch mint", True), ("44 coffee beans", True),
        ("1 vanilla pod", True), ("10 elderflower heads", True), ("5 sprigs rosemary", True),
    ],
)  # fmt: skip
def test_fruit_without_a_weight_is_no_known_strength(line: str, known: bool) -> None:
    recipe = recipe_of("1 l vodka, 40% vol", line)
    assert (strength_of(recipe) is not None, estimate_yield(recipe) is not None) == (known, known)
    assert ("juice" in not_told(recipe)) is not known


def test_thirty_green_walnuts_water_their_spirit() -> None:
    recipe = recipe_of("1 l alcohol, 95% vol", "30 green walnuts", "500 g sugar")
    strength = strength_of(recipe)
    assert strength
    assert 40 < strength.abv_percent < 50


# line -> ml kept back; fresh things 0.75 ml to the gram, dry ones 1: common practice
@pytest.mark.parametrize(
    ("line", "kept"),
    [("100 g powdered moonwort", 100), ("200 g raspberries", 150)],
)
def test_what_is_strained_out_keeps_liquid_back(line: str, kept: int) -> None:
    assert kept_ml(content(line)) == kept


def test_what_has_no_weight_keeps_nothing_back() -> None:
    unweighed = content("3 moonwort stalks")
    assert unweighed.grams is None
    assert kept_ml(unweighed) == 0


VANILLA = ("500 ml vodka, 40% vol", "60 g vanilla pods")
NO_FOLD = {
    "another kind": (VANILLA, "ferment"),
    "no pods": (("500 ml vodka, 40% vol",), "infusion"),
    "no spirit": (("500 ml water", "60 g vanilla pods"), "infusion"),
    "another thing in it": ((*VANILLA, "100 g sugar"), "infusion"),
}


def test_vanilla_in_spirit_has_its_fold() -> None:
    """60 g in 500 ml are 120 g a litre, and 100 g a litre are one fold: 21 CFR 169.3(b)."""
    fold = fold_of_recipe(recipe_of(*VANILLA))
    assert fold is not None
    assert 1 <= fold.fold < 2


@pytest.mark.parametrize("name", NO_FOLD)
def test_what_is_not_vanilla_in_spirit_alone_has_no_fold(name: str) -> None:
    lines, kind = NO_FOLD[name]
    assert fold_of_recipe(recipe_of(*lines, kind=kind)) is None


# worked by hand: 100 g sugar are 62.5 ml, a raspberry is 86 % water (USDA SR 09302) and keeps back
# 0.75 ml to the gram, lees take a hundredth and the spoon 5 ml; common practice
SAID = """
To bottle: 1000 to 1130 ml
  liquids poured in: 1000 ml
  sugar dissolved in it: 63 ml
  juice the fresh solids give: 172 ml
  kept back by what is strained out: −150 ml
  lees and filter: −12.3 ml
  the tasting spoon: −5 ml
"""


def test_what_can_be_bottled_is_said_with_its_parts() -> None:
    said = strength_text(recipe_of("1 l vodka, 40% vol", "200 g raspberries", "100 g sugar"))
    assert SAID in said


def test_half_sugar_ferments_and_two_thirds_do_not() -> None:
    """Above 65 % of sugar no yeast works: honey keeps (common practice)."""
    must = ("500 g sugar", "500 ml water", "5 g wine yeast")
    assert strength_of(recipe_of(*must, kind="ferment")) is not None
    syrup = ("700 g sugar", "300 ml water", "5 g wine yeast")
    assert strength_of(recipe_of(*syrup, kind="ferment")) is None


# kind, makes -> ml; granulated sugar weighs 200 g to the US cup of 236.588 ml: USDA SR 19335
@pytest.mark.parametrize(
    ("kind", "makes", "ml"),
    [
        ("infused sugar", "500 g", 591),
        ("infusion", "75 cl", 750),
        ("infusion", "500 g", 500),  # near water: common practice
        ("infused sugar", "6 jars", None),
        ("bake", "500 g", None),
    ],
)
def test_what_it_makes_in_ml(kind: str, makes: str, ml: int | None) -> None:
    found = makes_ml(recipe_of("500 g granulated sugar", "5 g salt", kind=kind, makes=makes))
    assert found == (None if ml is None else pytest.approx(ml, rel=0.02))


# makes -> g; by weight as it stands, else by a density of 1.3 g to the ml (bottling.yml)
@pytest.mark.parametrize(("makes", "grams"), [("1.6 kg", 1600), ("2 lb", 907), ("1 l", 1300)])
def test_what_a_preserve_weighs(makes: str, grams: int) -> None:
    plums = recipe_of("1 kg plums", "1 kg granulated sugar", kind="preserve", makes=makes)
    assert finished_g(plums) == pytest.approx(grams, abs=1)


@pytest.mark.parametrize(
    ("sugar", "water", "brix"), [(0, 5, 0), (5, 0, 100), (0.5, 0.5, 50), (0.2, 0.3, 40)]
)
def test_brix_of_little(sugar: float, water: float, brix: float) -> None:
    assert brix_of_syrup(sugar, water) == pytest.approx(brix)


@pytest.mark.parametrize(("sugar", "water"), [(-1, 5), (5, -1), (0, 0)])
def test_a_syrup_of_nothing_has_no_brix(sugar: float, water: float) -> None:
    with pytest.raises(ValueError, match="no less than nothing"):
        brix_of_syrup(sugar, water)


# the rows of the table that were found reach from 44 to 54 Brix, both of them included
@pytest.mark.parametrize(
    ("sugar", "found"), [("43%", False), ("44%", True), ("54%", True), ("55%", False)]
)
def test_a_cut_names_the_table_its_syrup_is_read_from(sugar: str, found: bool) -> None:
    source = read_cut("500 ml at 96%", "30%", sugar).source
    assert (SOURCE in source) is found
    assert (SOURCE_OUTSIDE in source) is not found


def test_documents_are_no_finer_than_a_spoon_can_measure() -> None:
    cut = cut_document(read_cut("500 ml at 96%", "41%"))
    for name in ("spirit_ml", "added_ml", "added_g", "gives_ml", "shrinks_ml"):
        assert cut[name] == round(cut[name], 2), name
    reckoned = strength_document(recipe_of("997 ml vodka, 40% vol", "213 g raspberries"))
    there = reckoned["to_bottle_ml"]
    for value in (there["low"], there["likely"], there["high"], *there["parts"].values()):
        assert value == round(value, 1)


# a figure is of what it says: USDA SR 11215 a clove of garlic, 11143 a stalk of celery, 11282 an
# onion
@pytest.mark.parametrize(
    ("line", "grams"),
    [
        ("3 cloves garlic", 9),
        ("2 sticks celery", 80),
        ("2 onions", 220),
        ("1 bulb of garlic", None),
        ("1 head celery", None),
        ("2 slices onion", None),
        ("a bunch of carrots", None),
        ("a punnet of strawberries", None),
        ("2 slices lemon", None),
        ("1 bag of apples", None),
        ("1 thumb of ginger", None),
        ("2 heads of elderflower", 20),
    ],
)
def test_a_bunch_or_a_slice_weighs_not_what_one_weighs(line: str, grams: int | None) -> None:
    assert content(line).grams == grams
