"""Amounts read as a cook writes them, and shown again."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stillroom.core.amounts.quantities import (
    Amount,
    Ratio,
    Unmeasured,
    parse_amount,
    parse_leading_amount,
    parse_number,
    show_amount,
    show_decimal,
)
from stillroom.core.amounts.rounding import round_count, round_measure, say_unit, tight_class
from stillroom.core.amounts.units import all_units
from stillroom.core.words.problems import Unreadable

# text, low, high, unit, noun, what is left
LINES = [
    ("1 l vodka", "1", "1", "l", "", "vodka"),
    ("750ml spirit", "750", "750", "ml", "", "spirit"),
    ("1 1/2 tsp salt", "3/2", "3/2", "tsp", "", "salt"),
    ("1½ tsp salt", "3/2", "3/2", "tsp", "", "salt"),
    ("½ tsp salt", "1/2", "1/2", "tsp", "", "salt"),
    ("2 ⅓ tbsp honey", "7/3", "7/3", "tbsp", "", "honey"),
    ("4-5 pods vanilla", "4", "5", "", "pod", "vanilla"),
    ("4 to 5 sprigs rosemary", "4", "5", "", "sprig", "rosemary"),
    ("6 unwaxed Seville oranges", "6", "6", "", "", "unwaxed Seville oranges"),
    ("1,500 g sugar", "1500", "1500", "g", "", "sugar"),
    ("0.5 kg quinces", "1/2", "1/2", "kg", "", "quinces"),
    ("3 fl oz water", "3", "3", "imp_fl_oz", "", "water"),
]


@pytest.mark.parametrize(("text", "low", "high", "unit", "noun", "rest"), LINES, ids=lambda v: v)
def test_line_is_split(text: str, low: str, high: str, unit: str, noun: str, rest: str) -> None:
    amount, left = parse_leading_amount(text)
    assert amount == Amount(Fraction(low), Fraction(high), unit, noun)
    assert left == rest


def test_ratio_keeps_its_own_tolerance() -> None:
    ratio = parse_amount("1 per 250-400 ml of vodka")
    assert isinstance(ratio, Ratio)
    assert (ratio.per.low, ratio.per.high, ratio.of) == (250, 400, "vodka")


@pytest.mark.parametrize("words", ["to taste", "to fill", "To Taste"])
def test_unmeasured_is_kept_as_said(words: str) -> None:
    assert parse_amount(words) == Unmeasured(words.lower())


@pytest.mark.parametrize("text", ["", "plenty", "0 g", "5-3 g", "1/0 g", "3 cupp", "1 l bottel"])
def test_bad_amount_is_refused_in_words(text: str) -> None:
    with pytest.raises(Unreadable) as refused:
        parse_amount(text)
    assert refused.value.what
    assert refused.value.mend


SHOWN = [
    ("2 1/2 cups", "2½ cups"),
    ("1/2 cup", "½ cup"),
    ("1 pod", "1 pod"),
    ("4-5 pods", "4–5 pods"),
    ("about 900 g", "about 900 g"),
    ("About 900 g", "about 900 g"),
    ("0.25 l", "0.25 l"),
    ("to taste", "to taste"),
    ("1 per 250-400 ml of vodka", "1 per 250–400 ml of vodka"),
]


@pytest.mark.parametrize(("written", "shown"), SHOWN)
def test_amount_is_shown_as_a_cook_writes(written: str, shown: str) -> None:
    assert show_amount(parse_amount(written)) == shown


@given(st.integers(0, 999), st.integers(0, 98), st.integers(1, 99))
def test_mixed_numbers_are_exact(whole: int, top: int, bottom: int) -> None:
    assert parse_number(f"{whole} {top}/{bottom}") == whole + Fraction(top, bottom)


@given(st.fractions(min_value=0, max_value=10**6))
def test_decimals_are_within_half_a_hundredth(value: Fraction) -> None:
    assert abs(Fraction(show_decimal(value)) - value) <= Fraction(1, 200)


@pytest.mark.parametrize("text", ["1,5 kg", "0,5 l", "1.500 kg", "12,34 g", "1,2,3 g", "1-2,5 l"])
def test_a_mark_that_half_the_world_reads_otherwise_is_asked(text: str) -> None:
    with pytest.raises(Unreadable):
        parse_amount(text)


@pytest.mark.parametrize(
    ("text", "low"), [("1,500 g", 1500), ("12,000 g", 12000), ("1,250.5 g", 1250.5)]
)
def test_thousands_are_read_as_english_writes_them(text: str, low: float) -> None:
    amount = parse_amount(text)
    assert isinstance(amount, Amount)
    assert amount.low == Fraction(low)


@pytest.mark.parametrize("unit", sorted(all_units()))
@pytest.mark.parametrize("number", ["1/4", "1/2", "1", "3/2", "9/4", "10", "1/3"])
def test_a_measure_is_said_alike_as_written_and_when_scaled(unit: str, number: str) -> None:
    size = Fraction(number)
    assert show_amount(Amount(size, size, unit)) == say_unit(size, unit)


def test_a_metre_and_a_half_is_said_in_decimals() -> None:
    assert show_amount(parse_amount("1½ m")) == "1.5 m"
    assert show_amount(parse_amount("1½ yards")) == "1½ yards"


# the groups of a number written with spaces; what could be one thing of so many is asked
@pytest.mark.parametrize(("text", "number"), [("1 000", 1000), ("12 000 500", 12_000_500)])
def test_groups_that_begin_with_nought_are_one_number(text: str, number: int) -> None:
    assert parse_number(text) == number


@pytest.mark.parametrize("text", ["1 400", "2 500 000"])
def test_groups_that_could_be_two_numbers_are_asked(text: str) -> None:
    with pytest.raises(Unreadable, match="could be read in two ways"):
        parse_number(text)


@pytest.mark.parametrize("value", [0, -1])
def test_nothing_cannot_be_rounded(value: int) -> None:
    with pytest.raises(ValueError, match="nothing to round"):
        round_measure(Fraction(value), "metric", "mass", Fraction(1, 50))


# value, the window, what is shown: both ends of the window are inside it
@pytest.mark.parametrize(
    ("value", "low", "high", "shown", "holds"),
    [(3, 3, 4, "3", True), (5, 4, 5, "5", True), ("13/4", "5/2", "3", "3", True)],
)
def test_the_ends_of_a_window_hold(
    value: str, low: str, high: str, shown: str, holds: bool
) -> None:
    rounded, inside = round_count(Fraction(value), Fraction(low), Fraction(high))
    assert (rounded.text, inside) == (shown, holds)


def test_most_things_are_of_no_class_that_is_rounded_tighter() -> None:
    assert tight_class("plain flour", None) == ""
    assert tight_class("wine", Fraction(12)) == ""
