"""Cutting and folds as a cook asks them; each row names where its value was published."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner
from hypothesis import given
from hypothesis import strategies as st

from stillroom.cli import main
from stillroom.core.batch.cutting import cut, read_cut, read_pods
from stillroom.core.batch.mixtures import mix, spirit, syrup
from stillroom.core.batch.strength_words import milder_text
from stillroom.core.words.problems import Unreadable

RECIPES = Path(__file__).resolve().parents[3] / "recipes"

# spirit, wanted, ml of water, g of water, ml it makes: E5 of the reference, from OIML R 22 /
# Dir. 76/766/EEC; tolerance 0.1 % as E5 states
E5 = [
    ("1 l at 96%", "40%", 1470.5, 1467.9, 2400),
    ("700 ml at 40% vol", "35 % vol", 101.0, 100.84, 800),
    ("70 cl at 40", "20", 700.6, 699.35, 1400),
]
# pods, moisture, units per US gallon, fold: E1 and E2 of the reference, from 21 CFR 169.3(b) and
# 169.175; E1 tells 69.986 and 74.985 g rounded, and folds disregard fractions: a milligram more
E1_E2 = [
    ("69.9870 g in 700 ml at 40%", "", 1.000, 1),
    ("74.9860 g in 750 ml at 40%", "", 1.000, 1),
    ("150 g in 0.7 l", "", 2.143, 2),
    ("69 g in 700 ml", "", 0.986, 0),
    ("13.35 oz in 3785.411784 ml", "", 1.000, 1),
    ("15 oz in 3785.411784 ml", "33.25%", 1.000, 1),
    ("112.4 g in 1 l", "33.25%", 1.001, 1),
]


@pytest.mark.parametrize(("there", "wanted", "water_ml", "water_g", "gives"), E5)
def test_water_to_cut_with(
    there: str, wanted: str, water_ml: float, water_g: float, gives: float
) -> None:
    found = read_cut(there, wanted)
    assert found.added_ml == pytest.approx(water_ml, rel=0.001)
    assert found.added_g == pytest.approx(water_g, rel=0.001)
    assert found.gives_ml == pytest.approx(gives, rel=0.001)


def test_what_shrinks_and_what_adding_up_would_say() -> None:
    """E5: the naive litre and 400 ml is 70 ml short."""
    found = read_cut("1 l at 96%", "40%")
    assert found.naive_ml == pytest.approx(1400)
    assert found.shrinks_ml == pytest.approx(70.5, abs=0.5)


@pytest.mark.parametrize(("pods", "moisture", "units", "fold"), E1_E2)
def test_fold_of_pods(pods: str, moisture: str, units: float, fold: int) -> None:
    found = read_pods(pods, moisture).fold
    assert float(found.units_per_gallon) == pytest.approx(units, abs=0.0006)
    assert found.fold == fold


def test_weak_spirit_makes_no_extract_of_the_standard() -> None:
    """E1: 40 % vol passes and 30 % does not (21 CFR 169.175(a))."""
    assert read_pods("150 g in 700 ml at 40%").fold.strong_enough
    assert not read_pods("150 g in 700 ml at 30%").fold.strong_enough


def test_counted_pods_say_that_they_are_a_guess() -> None:
    found = read_pods("12 pods in 700 ml at 40%")
    assert found.grams == 36
    assert "weigh them" in found.uncertainty


@given(st.floats(50, 5000), st.floats(20, 96), st.floats(0.1, 0.95), st.floats(1, 65))
def test_syrup_brings_it_to_the_strength(
    volume: float, abv: float, share: float, brix: float
) -> None:
    found = cut(volume, abv, abv * share, brix)
    added = syrup(found.added_g * brix / 100, found.added_g * (1 - brix / 100))
    assert mix([spirit(volume, abv), added]).abv == pytest.approx(abv * share, abs=1e-6)


@pytest.mark.parametrize("there", ["500 ml", "dragons at 9%", "500 g at 50%", "1-2 l at 50%"])
def test_a_spirit_that_cannot_be_read(there: str) -> None:
    with pytest.raises(Unreadable):
        read_cut(there, "40%")


@pytest.mark.parametrize("wanted", ["97%", "0%", "-3%", "cold", "101%"])
def test_a_strength_that_cannot_be_had(wanted: str) -> None:
    with pytest.raises(Unreadable):
        read_cut("500 ml at 96%", wanted)


@pytest.mark.parametrize("pods", ["150 g", "3 dragons in 700 ml", "150 ml in 700 ml", "9 g in 3 g"])
def test_pods_that_cannot_be_read(pods: str) -> None:
    with pytest.raises(Unreadable):
        read_pods(pods)


def test_milder_never_names_what_is_drunk_as_it_is() -> None:
    assert milder_text(96).endswith("40 % vol")
    assert milder_text(34).endswith("30 % vol")
    assert milder_text(29.9) == ""


def run(*words: str):
    return CliRunner().invoke(main, ["strength", *words])


def test_the_command_answers_a_recipe_a_cut_and_pods() -> None:
    told = run(str(RECIPES / "double-vanilla-extract.md")).stdout
    assert "about 40 % vol" in told
    assert "2-fold" in told
    assert "OIML R 22" in told
    assert (
        "add 735 ml of water, which weighs 734 g"
        in run("--cut", "500 ml at 96%", "--to", "40%").stdout
    )
    assert json.loads(run("--pods", "150 g in 700 ml", "--json").stdout)["fold"]["fold"] == 2
    nothing = run(str(RECIPES / "almond-shortbread.md"), "--json")
    assert json.loads(nothing.stdout)["strength"] is None


@pytest.mark.parametrize(
    "words",
    [
        (),
        ("--cut", "500 ml at 96%"),
        ("--to", "40%"),
        ("--cut", "500 ml at 30%", "--to", "40%"),
        ("--cut", "500 ml at 96%", "--to", "40%", "--pods", "150 g in 700 ml"),
        ("--cut", "500 ml at 96%", "--to", "40%", "--syrup", "80%"),
        ("--pods", "150 g"),
        ("--pods", "150 g in 700 ml", "--moisture", "100%"),
    ],
)
def test_wrong_questions_are_told_once_and_leave_with_2(words: tuple[str, ...]) -> None:
    told = run(*words)
    assert told.exit_code == 2
    assert told.stderr.count("Error:") == 1
    assert told.stdout == ""
