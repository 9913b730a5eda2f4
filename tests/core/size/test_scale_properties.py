"""What must hold of every scale, whatever is asked: tried by hypothesis over the demo book."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from stillroom.core.amounts.quantities import parse_leading_amount
from stillroom.core.amounts.rounding import ladder, nearest_multiple, round_measure
from stillroom.core.amounts.units import base_size
from stillroom.core.reading.loading import load_recipe
from stillroom.core.size.scalable import scalable_of
from stillroom.core.size.scaling import Measures, scale
from stillroom.core.size.targets import ByFactor

RECIPES = [
    scalable_of(load_recipe(path))
    for path in sorted((Path(__file__).resolve().parents[3] / "recipes").glob("*.md"))
]
FACTORS = st.fractions(Fraction(1, 50), Fraction(50), max_denominator=60)
SYSTEMS = st.sampled_from(["metric", "us", "imperial"])
LADDERS = st.sampled_from(["volume", "spoon", "mass", "length"])
NEAR = Fraction(1, 50)
TRIES = settings(max_examples=60, deadline=None)


@TRIES
@given(st.sampled_from(RECIPES), FACTORS)
def test_up_and_down_again_is_the_same_before_rounding(recipe: Any, factor: Fraction) -> None:
    there = scale(recipe, ByFactor(factor))
    back = scale(recipe, ByFactor(there.factor / factor))
    written = scale(recipe, ByFactor(Fraction(1)))
    assert [line.exact for line in back.lines] == [line.exact for line in written.lines]
    for line, own, scales in zip(there.lines, written.lines, recipe.lines, strict=True):
        if own.exact is not None and scales.scales == "with the batch":
            assert line.exact == own.exact * factor


@TRIES
@given(st.sampled_from(RECIPES), FACTORS, SYSTEMS, st.sampled_from(["written", "weight", "volume"]))
def test_amounts_are_above_nothing_and_windows_hold_them(
    recipe: Any, factor: Fraction, system: Any, by: Any
) -> None:
    for line in scale(recipe, ByFactor(factor), Measures(system, by)).lines:
        if line.exact is None:
            continue
        assert line.exact > 0
        assert line.low is not None
        assert line.high is not None
        assert 0 <= line.low <= line.exact <= line.high
        assert line.kitchen is not None
        assert line.kitchen > 0
        assert not line.amount_text.startswith("0 ")


@given(st.fractions(Fraction(1, 20), Fraction(20000), max_denominator=500), SYSTEMS, LADDERS)
def test_rounding_stays_within_its_step(value: Fraction, system: Any, name: Any) -> None:
    rounded = round_measure(value, system, name, NEAR)
    finest = ladder(system, name)[0].steps[-1]
    assert rounded.value > 0
    assert abs(rounded.value - value) <= max(rounded.step / 2, finest)
    assert rounded.text


@given(st.fractions(Fraction(0), Fraction(1000)), st.fractions(Fraction(1, 100), Fraction(100)))
def test_the_nearest_multiple_is_a_multiple_and_never_none(value: Fraction, step: Fraction) -> None:
    nearest = nearest_multiple(value, step)
    assert (nearest / step).denominator == 1
    assert nearest >= step
    assert abs(nearest - value) <= step / 2 or nearest == step


@given(st.fractions(Fraction(1, 2), Fraction(20000), max_denominator=100), SYSTEMS, LADDERS)
def test_the_words_say_the_value(value: Fraction, system: Any, name: Any) -> None:
    """What is said, read back, is what was rounded to, but for decimals cut at the second place."""
    rounded = round_measure(value, system, name, NEAR)
    said = Fraction(0)
    rest = rounded.text
    while rest:
        amount, rest = parse_leading_amount(rest.removeprefix("+").strip(), system)
        assert amount is not None
        said += amount.low * base_size(amount.unit)
    assert abs(said - rounded.value) <= rounded.value / 1000
