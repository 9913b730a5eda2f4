"""Amounts as a kitchen measures them: worked by hand on the ladders of kitchen_rounding.yml."""

from __future__ import annotations

from fractions import Fraction

import pytest

from stillroom.core.amounts.quantities import Amount, parse_number
from stillroom.core.amounts.rounding import (
    Ladder,
    allows_halves,
    ladder,
    round_count,
    round_measure,
    say,
    tight_class,
)
from stillroom.core.amounts.units import System, all_units
from stillroom.core.words.problems import Unreadable

NEAR = Fraction(1, 50)
US_CUP = Fraction("236.5882365")  # NIST Handbook 44 App. C: gallon/16

# in ml, g or mm -> what is said. Where a rung begins it is the upper rung that counts: a tablespoon
# of 15 ml is said in ml, a thousand of them as a litre.
MEASURED: list[tuple[Fraction | str, System, Ladder, str]] = [
    ("0.5", "metric", "volume", "⅛ tsp"),
    ("13.7", "metric", "volume", "2¾ tsp"),
    ("15", "metric", "volume", "15 ml"),
    ("99", "metric", "volume", "100 ml"),
    ("974", "metric", "volume", "975 ml"),
    ("1000", "metric", "volume", "1 l"),
    ("5000", "metric", "volume", "5 l"),
    ("60", "metric", "spoon", "4 tbsp"),
    ("120", "metric", "spoon", "120 ml"),
    ("0.34", "metric", "mass", "0.3 g"),
    ("5.3", "metric", "mass", "5.5 g"),
    ("20", "metric", "mass", "20 g"),
    ("1000", "metric", "mass", "1 kg"),
    ("2345", "metric", "mass", "2.35 kg"),
    ("20", "metric", "length", "2 cm"),
    ("2000", "metric", "length", "2 m"),
    (US_CUP / 3, "us", "volume", "⅓ cup"),
    (US_CUP * 2 / 3, "us", "volume", "⅔ cup"),
    (US_CUP * 5 / 3, "us", "volume", "1⅔ cups"),
    (US_CUP / 4, "us", "volume", "¼ cup"),
    (US_CUP * 3 / 8, "us", "volume", "¼ cup + 2 tbsp"),
    (US_CUP * 8, "us", "volume", "2 quarts"),
    (US_CUP * 9, "us", "volume", "2 quarts + 1 cup"),
    (US_CUP * 16, "us", "volume", "1 gallon"),
    (Fraction("453.59237"), "us", "mass", "1 lb"),
    (Fraction("453.59237") * 5 / 4, "us", "mass", "1 lb 4 oz"),
    (Fraction("568.26125"), "imperial", "volume", "1 pint"),
]


@pytest.mark.parametrize(("size", "system", "name", "said"), MEASURED, ids=lambda one: str(one))
def test_measured_as_a_kitchen_can(
    size: Fraction | str, system: System, name: Ladder, said: str
) -> None:
    assert round_measure(Fraction(size), system, name, NEAR).text == said


def test_a_ratio_that_matters_is_weighed_finer() -> None:
    """From 5 g on a scale shows halves; for salt and the like its tenths are used."""
    plain = round_measure(Fraction("6.2"), "metric", "mass", Fraction(1, 100))
    tight = round_measure(Fraction("6.2"), "metric", "mass", Fraction(1, 100), tight=True)
    assert (plain.text, tight.text) == ("6 g", "6.2 g")


# value, window, halves -> what is taken and whether it lies in the window
COUNTS = [
    ("13/4", "13/4", "4", False, "4", True),  # 3 is nearest, but only 4 is inside
    ("11/4", "2", "11/4", False, "2", True),  # 3 is nearest, but only 2 is inside
    ("13/4", "3", "13/4", True, "3", True),  # 3½ is nearest, but only 3 is inside
    ("11/5", "11/5", "13/5", True, "2½", True),
    ("1/3", "3/10", "11/30", False, "1", False),
    ("7/2", "17/5", "18/5", False, "4", False),
]


@pytest.mark.parametrize(("value", "low", "high", "halves", "taken", "holds"), COUNTS)
def test_counts_stay_in_their_window(
    value: str, low: str, high: str, halves: bool, taken: str, holds: bool
) -> None:
    rounded, inside = round_count(Fraction(value), Fraction(low), Fraction(high), halves)
    assert (rounded.text, inside) == (taken, holds)


@pytest.mark.parametrize(
    ("item", "strength", "found"),
    [("sherry", 15, "spirit"), ("mead", 14, ""), ("gin", None, ""), ("wine vinegar", None, "acid")],
)  # fmt: skip
def test_what_is_rounded_tighter(item: str, strength: int | None, found: str) -> None:
    assert tight_class(item, None if strength is None else Fraction(strength)) == found


def test_half_a_lemon_but_no_half_egg() -> None:
    assert [allows_halves(item) for item in ("unwaxed lemons", "eggs")] == [True, False]


def test_both_ends_of_a_range_are_multiplied() -> None:
    range_ = Amount(Fraction(2), Fraction(3), "g").times(Fraction(5))
    assert (range_.low, range_.high, range_.middle) == (10, 15, Fraction(25, 2))


# thousands stand in groups of three: only there can a comma part them
@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("0,5", "has a comma for a point"),
        ("1,25", "has a comma for a point"),
        ("1,2345", "has a comma for a point"),
        ("1.500", "could be read in two ways"),
        ("1,2,3", "is not a number"),
    ],
)
def test_a_comma_is_told_for_what_it_is(text: str, told: str) -> None:
    with pytest.raises(Unreadable, match=told):
        parse_number(text)


@pytest.mark.parametrize(
    ("cups", "said"),
    [
        # a US cup is 16 tablespoons: what is no quarter or third of one is said in both
        (Fraction(17, 16), "1 cup + 1 tbsp"),
        (Fraction(9, 16), "½ cup + 1 tbsp"),
        (Fraction(2, 3), "⅔ cup"),
    ],
)
def test_a_cup_and_a_spoon_are_said_by_the_quarters_of_the_cup(cups: Fraction, said: str) -> None:
    rungs = ladder("us", "volume")
    assert say(cups * all_units()["us_cup"].in_base, rungs) == said
