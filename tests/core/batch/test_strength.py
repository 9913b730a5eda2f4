"""Strength against the outside: each row names where its value was published.

"found" and "found-2" as in the team's reference: read in the source, or restated by a third party.
"""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stillroom.core.batch.bottling import estimate_yield
from stillroom.core.batch.drinks import duty_strength, ethanol_g, measure_of, standard_drinks
from stillroom.core.batch.extracts import fold_of, single_fold_g_per_l, unit_weight_oz
from stillroom.core.batch.mixtures import (
    Mixture,
    mix,
    spirit,
    syrup,
    syrup_to_reach_ml,
    water,
    water_to_reach_ml,
)
from stillroom.core.batch.musts import abv_from_gravities, must_of, potential_abv
from stillroom.core.batch.preserves import solids_of
from stillroom.core.batch.spirit_density import (
    ETHANOL_DENSITY,
    abv_of_mass_fraction,
    density_of_abv,
    density_of_mass_fraction,
    mass_fraction_of_abv,
)
from stillroom.core.batch.strength import fold_of_recipe, strength_of
from stillroom.core.batch.strength_words import strength_text
from stillroom.core.batch.syrups import (
    brix_of_density,
    brix_of_gravity,
    brix_of_syrup,
    density_of_brix,
    gravity_of_brix,
    volume_of_syrup_ml,
)
from stillroom.core.reading.loading import load_recipe, read_recipe
from stillroom.core.recipe.model import Recipe

RECIPES = Path(__file__).resolve().parents[3] / "recipes"

# % vol, % mass, kg/m3: OIML R 22 / Dir. 76/766/EEC formula, computed table of the reference
OIML = [
    (0, 0, 998.20), (5, 3.982, 991.06), (10, 8.015, 984.71), (12, 9.641, 982.35),
    (15, 12.093, 978.97), (20, 16.214, 973.56), (24, 19.543, 969.21), (30, 24.607, 962.21),
    (35, 28.907, 955.59), (37.5, 31.091, 951.94), (40, 33.300, 948.05), (43, 35.986, 943.06),
    (50, 42.426, 930.14), (60, 52.088, 909.11), (70, 62.386, 885.56), (80, 73.480, 859.27),
    (90, 85.665, 829.18), (95, 92.408, 811.38), (96, 93.838, 807.42), (100, 100, 789.24),
]  # fmt: skip


@pytest.mark.parametrize(("abv", "mass", "density"), OIML)
def test_oiml_table(abv: float, mass: float, density: float) -> None:
    assert 100 * mass_fraction_of_abv(abv) == pytest.approx(mass, abs=0.001)
    assert 1000 * density_of_abv(abv) == pytest.approx(density, abs=0.006)


def told_by_coolprop(*asked: object) -> float:
    """Return what CoolProp says. To load it takes seconds: no other worker waits for it."""
    from CoolProp.CoolProp import PropsSI

    return float(PropsSI(*asked))


@pytest.mark.parametrize("percent", [5, 10, 20, 30, 40, 50, 60])
def test_density_against_an_independent_library(percent: int) -> None:
    """CoolProp's ethanol-water (M. Melinder, 2010, fitted to its own data): within 0.4 kg/m3."""
    theirs = told_by_coolprop("D", "T", 293.15, "P", 101325, f"INCOMP::MEA[{percent / 100}]")
    assert 1000 * density_of_mass_fraction(percent / 100) == pytest.approx(theirs, abs=0.4)


def test_pure_ends_against_equations_of_state() -> None:
    """Water: IAPWS-95; ethanol: Schroeder et al. 2014, both through CoolProp."""
    ours = density_of_mass_fraction(0), ETHANOL_DENSITY
    theirs = [
        told_by_coolprop("D", "T", 293.15, "P", 101325, name) / 1000
        for name in ("Water", "Ethanol")
    ]
    assert ours == pytest.approx(theirs, abs=0.0003)


# ml of water to a litre of 95 % vol at 20 C: a published dilution table (Table 1.2 of a page on
# diluting alcohol, found-2); its last figure is rounded, hence the tolerance
DILUTION_95 = [
    (85, 130, 4), (80, 209, 1), (75, 294, 1), (70, 391, 1), (65, 501, 1), (60, 629, 1),
    (55, 779, 1), (50, 957, 1), (45, 1170, 6), (40, 1440, 6), (35, 1780, 7), (30, 2230, 11),
    (25, 2870, 11), (20, 3810, 15),
]  # fmt: skip
# ml, % vol, wanted % vol, ml of water: E5 of the reference, from OIML R 22
DILUTION_E5 = [(1000, 96, 40, 1470.5), (700, 40, 35, 101.0), (700, 40, 20, 700.6)]


@pytest.mark.parametrize(("wanted", "published", "off"), DILUTION_95)
def test_published_dilution(wanted: float, published: float, off: float) -> None:
    assert water_to_reach_ml(1000, 95, wanted) == pytest.approx(published, abs=off)


@pytest.mark.parametrize(("volume", "abv", "wanted", "published"), DILUTION_E5)
def test_dilution_with_contraction(
    volume: float, abv: float, wanted: float, published: float
) -> None:
    assert water_to_reach_ml(volume, abv, wanted) == pytest.approx(published, rel=0.001)


def test_adding_without_contraction_is_70_ml_short() -> None:
    """E5: a litre of 96 % and the naive 1,400 ml give 41.2 % vol, not 40."""
    assert mix([spirit(1000, 96), water(1400)]).abv == pytest.approx(41.2, abs=0.05)


def test_fifty_and_fifty_is_not_a_hundred() -> None:
    assert mix([spirit(50, 100), water(50)]).volume_ml == pytest.approx(96.47, abs=0.05)


def test_sweetened_infusion() -> None:
    """E7: 700 ml of 40 % and 200 g of sugar: 33.94 % vol, by the volume sugar takes up."""
    mixed = mix([spirit(700, 40), syrup(200, 0)])
    assert mixed.abv == pytest.approx(33.94, abs=0.05)
    assert mixed.volume_ml == pytest.approx(824.96, abs=1.1)


def test_cutting_with_syrup_reaches_the_strength() -> None:
    there = spirit(500, 96)
    volume = syrup_to_reach_ml(there, 33, 35)
    grams = volume / (0.35 * 0.62 + 0.65 / density_of_mass_fraction(0))
    assert (there + syrup(grams * 0.35, grams * 0.65)).abv == pytest.approx(33, abs=0.01)


# 21 CFR 169.3(b), 169.175: E1 and E2
def test_vanilla_unit() -> None:
    assert float(single_fold_g_per_l()) == pytest.approx(99.980, abs=0.001)
    assert unit_weight_oz(Fraction(3325, 10000)) == 15
    assert float(single_fold_g_per_l(Fraction(3325, 10000))) == pytest.approx(112.337, abs=0.001)


@pytest.mark.parametrize(
    ("grams", "volume", "abv", "fold", "enough"),
    [
        (70, 700, 40, 1, True),  # E1: 69.986 g for a 700 ml batch
        (69, 700, 40, 0, True),
        (75, 750, 40, 1, True),  # E1: 74.985 g
        (150, 700, 40, 2, True),  # E1: 2.14 units, fractions disregarded
        (150, 700, 30, 2, False),  # 169.175(a): at least 35 % vol
    ],
)
def test_fold(grams: int, volume: int, abv: int, fold: int, enough: bool) -> None:
    found = fold_of(Fraction(grams), Fraction(volume), abv)
    assert (found.fold, found.strong_enough) == (fold, enough)


def test_drinks() -> None:
    """E6: UK CMO 2016 (10 ml), NIAAA (14 g)."""
    assert standard_drinks(50, 40, measure_of("GB")) == 2.0
    assert standard_drinks(700, 40, measure_of("GB")) == 28.0
    assert ethanol_g(50, 40) == pytest.approx(15.785, abs=0.001)
    assert standard_drinks(50, 40, measure_of("US")) == pytest.approx(1.127, abs=0.001)
    assert standard_drinks(50, 40, measure_of("AU")) == pytest.approx(1.578, abs=0.001)


# what a country says is one drink: Canada 341 ml at 5 %, 142 ml at 12 %, 43 ml at 40 %; Australia
# and New Zealand litres x % vol x 0.789; Ireland 10 g, which is 12.7 ml
@pytest.mark.parametrize(
    ("country", "volume", "abv", "drinks", "off"),
    [
        ("CA", 341, 5, 1, 0.01),
        ("CA", 142, 12, 1, 0.01),
        ("CA", 43, 40, 1, 0.015),
        ("AU", 375, 4.9, 0.375 * 4.9 * 0.789, 0.01),
        ("NZ", 330, 5, 0.330 * 5 * 0.789, 0.01),
        ("IE", 12.7, 100, 1, 0.01),
        ("GB", 568, 5, 2.84, 0.01),
    ],
)
def test_a_country_counts_in_its_own_drinks(
    country: str, volume: float, abv: float, drinks: float, off: float
) -> None:
    assert standard_drinks(volume, abv, measure_of(country)) == pytest.approx(drinks, abs=off)


# Volumes simply added up from the weight of a cup (USDA SR WEIGHT.txt), without contraction, which
# takes at most 1 %: what is beaten or stirred in takes its room, however it is measured.
BEATEN_IN = [
    ("cream liqueur", ["350 ml whisky, 40% vol", "397 g condensed milk", "300 ml double cream"],
     140, 350 + 397 / 1.293 + 300),
    ("egg nog", ["6 large eggs", "200 g caster sugar", "500 ml whole milk", "250 ml double cream",
                 "350 ml dark rum, 40% vol"], 140, 6 * 60 / 1.03 + 200 * 0.62 + 500 + 250 + 350),
    ("coconut rum", ["500 ml white rum, 40% vol", "400 ml coconut milk", "150 g sugar"],
     200, 500 + 400 + 150 * 0.62),
    ("coffee liqueur", ["500 ml vodka, 40% vol", "500 ml strong coffee", "400 g sugar"],
     200, 500 + 500 + 400 * 0.62),
    ("by weight", ["350 g double cream", "500 ml brandy, 40% vol"], 200, 350 / 1.006 + 500),
    ("yolks", ["8 egg yolks", "250 g sugar", "250 ml condensed milk", "300 ml brandy, 40% vol"],
     120, 8 * 17 / 1.027 + 250 * 0.62 + 250 + 300),
    ("chocolate", ["150 g dark chocolate", "300 ml single cream", "300 ml whiskey, 40% vol"],
     120, 150 / 1.25 + 300 + 300),
]  # fmt: skip


def drink(*lines: str) -> Recipe:
    listed = "\n".join(f"  - {line}" for line in lines)
    text = f"---\ntitle: A drink\nkind: infusion\nmakes: 1 l\ningredients:\n{listed}\n---\n"
    return read_recipe(f"{text}\n## Method\n\n1. Stir.\n", "drink.md", "drink")


@pytest.mark.parametrize(
    ("lines", "ethanol", "volume"),
    [row[1:] for row in BEATEN_IN],
    ids=[row[0] for row in BEATEN_IN],
)
def test_what_is_beaten_in_takes_its_room(lines: list[str], ethanol: int, volume: float) -> None:
    found = strength_of(drink(*lines))
    assert found is not None
    assert found.abv_percent == pytest.approx(100 * ethanol / volume, rel=0.03)


def test_a_bottle_of_no_said_size_leaves_strength_and_yield_unknown() -> None:
    unsized = drink("1 bottle gin", "200 g sugar")
    assert (strength_of(unsized), estimate_yield(unsized)) == (None, None)
    assert 'Write its size, such as "700 ml gin".' in strength_text(unsized)
    sized = drink("1 bottle gin (70cl)", "200 g sugar")
    assert strength_of(sized) is not None
    assert "no alcohol" not in strength_text(sized)


def test_coffee_by_the_spoon_is_no_drink() -> None:
    beans = strength_of(drink("500 ml vodka, 40% vol", "50 g coffee beans"))
    assert beans is not None
    assert beans.abv_percent == pytest.approx(40, abs=0.5)


def test_a_liquid_nobody_knows_is_told() -> None:
    found = strength_of(drink("500 ml vodka, 40% vol", "100 ml zanzibar elixir"))
    assert found is not None
    assert found.text.endswith(", if there is no alcohol in the zanzibar elixir")
    assert "not known" in found.uncertainty


@pytest.mark.parametrize(("ounces", "abv"), [(12, 5), (5, 12), (1.5, 40)])
def test_us_standard_drinks_of_niaaa(ounces: float, abv: float) -> None:
    ours = standard_drinks(ounces * 29.5735295625, abv, measure_of("US"))
    assert ours == pytest.approx(1, abs=0.01)


def test_duty_strength_is_rounded_down() -> None:
    """HMRC alcoholic products technical guide, section 11."""
    assert [duty_strength(abv) for abv in (7.59, 40.0, 37.5)] == [7.5, 40.0, 37.5]


# sucrose at 20 C: Korean Food Code 12.7 (found); the rest NBS C440 from memory, wider
BRIX = [
    (44, 1.197247, 1e-6), (45, 1.202540, 1e-6), (46, 1.207870, 1e-6), (48, 1.218643, 1e-6),
    (50, 1.229567, 1e-6), (52, 1.240641, 1e-6), (54, 1.251866, 1e-6), (10, 1.0381, 3e-4),
    (20, 1.0810, 3e-4), (60, 1.2865, 3e-4),
]  # fmt: skip


@pytest.mark.parametrize(("brix", "density", "off"), BRIX)
def test_syrup_density(brix: float, density: float, off: float) -> None:
    assert density_of_brix(brix) == pytest.approx(density, abs=off)
    assert brix_of_density(density) == pytest.approx(brix, abs=0.1)


def test_between_rows_the_table_is_met() -> None:
    """47 Brix: between the found rows 46 and 48, by a quadratic through 46, 48 and 50: 1.213241."""
    assert density_of_brix(47) == pytest.approx(1.213241, abs=2e-5)


def test_syrup_of_equal_weights() -> None:
    """E4; the popular gravity formula gives 1.23297 and must not be met."""
    assert volume_of_syrup_ml(500, 500) == pytest.approx(813.29, abs=0.01)
    assert gravity_of_brix(50) == pytest.approx(1.23178, abs=0.0005)
    assert abs(gravity_of_brix(50) - 1.23297) > 0.0005
    assert brix_of_syrup(200, 236.16) == pytest.approx(45.9, abs=0.05)
    assert brix_of_gravity(1.0829) == pytest.approx(20, abs=0.05)


# g/l of sugar, % vol: French order of 14 Sept 2011, Annex IV (OIV Oeno 21/2004)
@pytest.mark.parametrize(
    ("sugar", "abv"), [(82.2, 4.88), (140.5, 8.35), (147.1, 8.74), (169.4, 10.06), (203.3, 12.08)]
)
def test_potential_alcohol(sugar: float, abv: float) -> None:
    assert potential_abv(sugar) == pytest.approx(abv, abs=0.01)


def test_mead_must() -> None:
    """E8: 800 g of solids in 4,000 g is 20 Brix, 216.2 g/l, 12.8 % vol at most; told in halves."""
    must = must_of(800, 4000)
    assert potential_abv(216.2) == pytest.approx(12.85, abs=0.01)
    assert must.value == must.high == 13.0
    assert must.shown(1) == "about 13.0 % vol"
    assert abv_from_gravities(1.050, 1.010) == pytest.approx(5.25)


# what the demo recipes come to; the bounds are what their own notes say
@pytest.mark.parametrize(
    ("slug", "low", "high"),
    [
        ("lemon-verbena-cut-spirit", 32, 36),
        ("quince-ratafia", 22, 30),
        ("double-vanilla-extract", 39, 41),
        ("heather-mead", 11, 13),
    ],
)
def test_strength_of_demo_recipes(slug: str, low: float, high: float) -> None:
    strength = strength_of(load_recipe(RECIPES / f"{slug}.md"))
    assert strength is not None
    assert strength.low <= strength.abv_percent <= strength.high
    assert low <= strength.abv_percent <= high
    assert strength.source
    assert strength.uncertainty


def test_what_holds_no_alcohol_has_no_strength() -> None:
    assert strength_of(load_recipe(RECIPES / "almond-shortbread.md")) is None


def test_double_vanilla_is_double() -> None:
    fold = fold_of_recipe(load_recipe(RECIPES / "double-vanilla-extract.md"))
    assert fold is not None
    assert fold.fold == 2


def test_bramble_jelly_reaches_the_published_sugar() -> None:
    solids = solids_of(load_recipe(RECIPES / "bramble-jelly.md"))
    assert solids is not None
    assert solids.reaches


def test_chutney_is_no_jam() -> None:
    assert solids_of(load_recipe(RECIPES / "quince-chutney.md")) is None


MIXTURES = st.builds(
    Mixture,
    st.floats(0.1, 2000),
    st.floats(0.1, 2000),
    st.floats(0, 500),
)


@given(st.lists(MIXTURES, min_size=1, max_size=5))
def test_mixing_conserves_ethanol_and_never_grows(parts: list[Mixture]) -> None:
    mixed = mix(parts)
    assert mixed.ethanol_g == pytest.approx(sum(part.ethanol_g for part in parts))
    # two weak ones grow by a breath: the published formula itself is curved so below 20 % vol
    assert mixed.volume_ml <= sum(part.volume_ml for part in parts) * 1.002
    assert min(part.abv for part in parts) - 3 <= mixed.abv <= max(part.abv for part in parts) + 3


@given(st.floats(0, 100))
def test_strength_by_volume_and_by_mass_undo_each_other(abv: float) -> None:
    assert abv_of_mass_fraction(mass_fraction_of_abv(abv)) == pytest.approx(abv, abs=1e-6)


@given(st.floats(100, 5000), st.floats(20, 96), st.floats(0.05, 0.99))
def test_diluted_spirit_is_as_strong_as_wanted(volume: float, abv: float, share: float) -> None:
    there = spirit(volume, abv)
    cut = mix([there, water(water_to_reach_ml(volume, abv, abv * share))])
    assert cut.abv == pytest.approx(abv * share, abs=1e-6)
    assert cut.ethanol_g == pytest.approx(there.ethanol_g)
