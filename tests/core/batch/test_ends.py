"""Where a rule of a batch begins and ends, and sums that can be done by hand."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from stillroom.core.batch.altitude import FEET_PER_METRE, process_minutes, setting_point_c
from stillroom.core.batch.bottling import fill_containers
from stillroom.core.batch.contents import contents_of
from stillroom.core.batch.cutting import read_cut, read_pods
from stillroom.core.batch.extracts import fold_of, unit_weight_oz
from stillroom.core.batch.mixtures import spirit, syrup_to_reach_ml, water_to_reach_ml
from stillroom.core.batch.musts import abv_from_gravities, must_of
from stillroom.core.batch.spirit_density import density_of_mass_fraction, mass_fraction_of_abv
from stillroom.core.batch.strength import doubt_of, strength_of, strength_parts, to_float
from stillroom.core.batch.strength_words import (
    cut_document,
    cut_text,
    milder_text,
    pods_document,
    strength_document,
)
from stillroom.core.batch.syrups import brix_of_density, density_of_brix
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Unreadable


def drink(*lines: str, kind: str = "infusion") -> Recipe:
    rows = "".join(f"  - {line}\n" for line in lines)
    front = f"title: A try\nkind: {kind}\nmakes: 1 l\ningredients:\n{rows}"
    return read_recipe(f"---\n{front}---\n\n## Method\n\n1. Mix.\n2. Strain.\n", "try.md", "try")


# feet, °F at which jelly sets: USDA Guide 7 by thousands of feet, half a step halfway between, and
# two degrees to the thousand above its last row
@pytest.mark.parametrize(
    ("feet", "sets_f"),
    [(-500, 220), (500, 219), (4500, "211.5"), (5000, 211), (5500, 210), (6000, 209), (7000, 207),
     (8000, 205), (9000, 203)],
)  # fmt: skip
def test_jelly_sets_between_the_rows(feet: int, sets_f: int | str) -> None:
    assert setting_point_c(feet / FEET_PER_METRE) * Fraction(9, 5) + 32 == Fraction(sets_f)


@pytest.mark.parametrize("minutes", [4, 6, 9, 11])
def test_only_processes_of_five_and_ten_minutes_have_these_steps(minutes: int) -> None:
    with pytest.raises(ValueError, match="steps of its own"):
        process_minutes(minutes, 0)


def test_a_great_batch_is_filled_as_well_as_a_small_one() -> None:
    """30,011 = 4,286 x 7 + 3 x 3: one 7 more would leave 2."""
    filling = fill_containers(Fraction(30_011), [Fraction(3), Fraction(7)])
    assert (filling.counts, filling.left_ml) == (((7, 4286), (3, 3)), 0)


@pytest.mark.parametrize("sizes", [[], [0], [50, 0], [-1]])
def test_no_container_is_filled_without_a_size(sizes: list[int]) -> None:
    with pytest.raises(ValueError, match="at least one container"):
        fill_containers(Fraction(100), [Fraction(size) for size in sizes])


def test_more_kept_than_there_is_fills_nothing() -> None:
    filling = fill_containers(Fraction(40), [Fraction(50)], keep_ml=Fraction(90))
    assert (filling.counts, filling.left_ml) == (((50, 0),), 0)


# a US cup of 236.588 ml holds 339 g of honey (USDA SR 19296) and 244 g of whole milk (01077)
@pytest.mark.parametrize("line", ["339 g honey", "244 g whole milk"])
def test_a_cup_by_weight_takes_the_room_of_a_cup(line: str) -> None:
    held = contents_of(drink("1 l vodka, 40% vol", line))[1]
    assert held.liquid
    assert float(held.volume_ml) == pytest.approx(236.6, rel=0.01)


def test_fruit_brings_its_water_and_sugar_and_at_least_half_of_them() -> None:
    """Raspberries: 85.75 g of water and 4.42 g of sugars in 100 g (USDA SR 09302)."""
    [_, fruit] = strength_parts(drink("1 l vodka, 40% vol", "200 g raspberries"))
    assert (fruit.likely.ethanol_g, fruit.least.ethanol_g) == (0, 0)
    assert (fruit.likely.water_g, fruit.least.water_g) == pytest.approx((171.5, 85.75), rel=0.01)
    assert (fruit.likely.sugar_g, fruit.least.sugar_g) == pytest.approx((8.84, 4.42), rel=0.01)


@pytest.mark.parametrize(
    ("lines", "why"),
    [
        (["100 ml zanzibar elixir"], "zanzibar elixir is not known and taken as water"),
        (
            ["100 ml zanzibar elixir", "50 ml moon syrup"],
            "zanzibar elixir and moon syrup are not known and taken as water",
        ),
        (["200 g raspberries"], "fruit differs in juice and gives it up slowly"),
        (["100 g sugar"], "kitchen measures are good to a few percent"),
    ],
)
def test_why_a_strength_is_a_range(lines: list[str], why: str) -> None:
    assert doubt_of(drink("500 ml vodka, 40% vol", *lines)) == why


@pytest.mark.parametrize(
    ("value", "shown"), [("1/3", 0.333333), ("2/3", 0.666667), ("5/2", 2.5), ("1/2000000", 1e-6)]
)
def test_shares_are_known_to_the_millionth(value: str, shown: float) -> None:
    assert to_float(Fraction(value)) == shown


def test_a_must_is_told_in_halves() -> None:
    """17.9 Brix are 191.9 g to the litre, 11.4 % vol (Annex IV): the nearest half is 11.5."""
    must = must_of(179, 1000)
    assert (must.value, must.high) == (11.5, 11.5)
    assert must.low == pytest.approx(11.4 * 0.85, abs=0.05)
    assert "192 g of sugar in a litre" in must.rule


def test_a_must_is_reckoned_by_all_that_stands_in_it() -> None:
    """200 g of sugar and 800 ml of water are 20 Brix, 216 g to the litre: 12.85 % vol (E8)."""
    found = strength_of(drink("200 g sugar", "800 ml water", "5 g wine yeast", kind="ferment"))
    assert found is not None
    assert found.abv_percent == 13.0


def test_a_cut_is_written_to_the_hundredth() -> None:
    cut = read_cut("333.33 ml at 96%", "40%")
    document = cut_document(cut)
    assert document["spirit_ml"] == 333.33
    # E5: a litre takes 1,470.5 ml of 1,467.9 g and makes 2,400 ml; a third of each
    wanted = {"added_ml": 1470.5, "added_g": 1467.9, "gives_ml": 2400, "shrinks_ml": 70.5}
    for name, litre in wanted.items():
        assert document[name] == pytest.approx(litre / 3, rel=0.005), name
        assert abs(document[name] - getattr(cut, name)) <= 0.005, name


def test_documents_carry_the_published_figures() -> None:
    """E1: 150 g in 700 ml are 2.143 units; E6: 25 ml at 40 % are one UK unit, 5 ml a fifth."""
    pods = pods_document(read_pods("150 g in 700 ml at 40%"))
    assert (pods["pods_g"], pods["spirit_ml"], pods["fold"]["fold"]) == (150, 700, 2)
    assert pods["fold"]["units_per_us_gallon"] == pytest.approx(2.143, abs=0.001)
    served = strength_document(drink("700 ml vodka, 40% vol"))["servings"]
    assert [(one["ml"], one["drinks"]) for one in served[:2]] == [(5, 0.2), (25, 1)]


# a whole five at least three below, and never above 40
@pytest.mark.parametrize(
    ("abv", "wanted"), [(30, 25), (37.9, 30), (38, 35), (42.9, 35), (43, 40), (48, 40), (96, 40)]
)
def test_milder_by_a_whole_five(abv: float, wanted: int) -> None:
    assert milder_text(abv).endswith(f"brings it to {wanted} % vol")


# at the very end a rule still holds: nothing to add, no moisture, the ends of a table
HOLDS: list[tuple[Callable[[], float | Fraction], float, float]] = [
    (lambda: water_to_reach_ml(700, 40, 40), 0, 1e-9),
    (lambda: syrup_to_reach_ml(spirit(700, 40), 39.999, 50), 0, 0.1),
    (lambda: abv_from_gravities(1.050, 1.050), 0, 1e-9),
    (lambda: unit_weight_oz(Fraction(0)), 13.35, 1e-9),
    (lambda: unit_weight_oz(Fraction(1, 4)), 13.35, 1e-9),
    (lambda: density_of_brix(0), 0.99820, 1e-5),
    (lambda: density_of_brix(65), 1.3165, 1e-9),
    (lambda: brix_of_density(1.3165), 65, 1e-6),
    (lambda: density_of_mass_fraction(0), 0.99820, 1e-5),
    (lambda: density_of_mass_fraction(1), 0.78924, 1e-5),
    (lambda: mass_fraction_of_abv(0), 0, 1e-9),
    (lambda: mass_fraction_of_abv(100), 1, 1e-9),
]
REFUSED: list[Callable[[], object]] = [
    lambda: water_to_reach_ml(700, 40, 40.1),
    lambda: water_to_reach_ml(700, 40, 0),
    lambda: syrup_to_reach_ml(spirit(700, 40), 40.1, 50),
    lambda: syrup_to_reach_ml(spirit(700, 40), 0, 50),
    lambda: abv_from_gravities(1.050, 1.051),
    lambda: unit_weight_oz(Fraction(1)),
    lambda: unit_weight_oz(Fraction(-1, 100)),
    lambda: density_of_brix(-0.1),
    lambda: density_of_brix(65.1),
    lambda: brix_of_density(0.998),
    lambda: brix_of_density(1.3166),
    lambda: density_of_mass_fraction(-0.01),
    lambda: density_of_mass_fraction(1.01),
    lambda: mass_fraction_of_abv(-1),
    lambda: mass_fraction_of_abv(100.1),
    lambda: fold_of(Fraction(70), Fraction(0), 40),
]


@pytest.mark.parametrize(("reckon", "value", "off"), HOLDS)
def test_a_rule_holds_to_its_end(
    reckon: Callable[[], float | Fraction], value: float, off: float
) -> None:
    assert float(reckon()) == pytest.approx(value, abs=off)


@pytest.mark.parametrize("reckon", REFUSED)
def test_a_rule_ends_where_it_ends(reckon: Callable[[], object]) -> None:
    with pytest.raises(ValueError):  # noqa: PT011 - each says what it wants in words of its own
        reckon()


def test_an_extract_of_the_standard_has_35_percent() -> None:
    """21 CFR 169.175(a)."""
    weak, enough = (fold_of(Fraction(100), Fraction(1000), abv) for abv in (34.9, 35))
    assert (weak.strong_enough, enough.strong_enough) == (False, True)


@pytest.mark.parametrize("there", ["1000 l at 50%", "1 ml at 100%"])
def test_as_much_as_a_kitchen_holds(there: str) -> None:
    assert read_cut(there, "50%").wanted_abv == 50


@pytest.mark.parametrize(("there", "sugar"), [("1001 l at 50%", ""), ("1 l at 50%", "66%")])
def test_more_than_a_kitchen_holds(there: str, sugar: str) -> None:
    with pytest.raises(Unreadable):
        read_cut(there, "40%", sugar)


def test_oil_by_the_jug_is_poured_and_butter_is_not() -> None:
    """Sunflower oil: 0.92 g per ml, and no water in it (USDA SR 04506)."""
    _, oil, butter = contents_of(
        drink("1 l vodka, 40% vol", "100 ml sunflower oil", "100 g butter")
    )
    assert (oil.liquid, butter.liquid) == (True, False)


def test_many_small_ones_are_filled_where_no_large_one_is() -> None:
    """Six of 100 ml are in 650 ml, and no 700."""
    filling = fill_containers(Fraction(650), [Fraction(700), Fraction(100)])
    assert (filling.counts, filling.left_ml) == (((700, 0), (100, 6)), 50)


@pytest.mark.parametrize(
    ("there", "wanted", "shrinks"),
    [("1 l at 96%", "40%", True), ("10 ml at 42%", "40%", False)],
)
def test_what_shrinks_is_said_from_half_a_millilitre(
    there: str, wanted: str, shrinks: bool
) -> None:
    said = cut_text(read_cut(there, wanted))
    assert ("less than its parts" in said) is shrinks
