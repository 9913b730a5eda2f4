"""Units against the published definitions; the source stands beside each row."""

from fractions import Fraction

import pint
import pytest

from stillroom.core.amounts.quantities import parse_amount, show_amount
from stillroom.core.amounts.units import System, all_units, convert, find_unit
from stillroom.core.words.problems import Unreadable

# unit, to, exact value, source
EXACT = [
    ("us_gallon", "l", "3.785411784", "NIST Handbook 44 App. C: 231 cubic inches"),
    ("us_quart", "ml", "946.352946", "NIST Handbook 44 App. C, gallon/4"),
    ("us_pint", "ml", "473.176473", "NIST Handbook 44 App. C, gallon/8"),
    ("us_cup", "ml", "236.5882365", "NIST Handbook 44 App. C, gallon/16"),
    ("us_fl_oz", "ml", "29.5735295625", "NIST Handbook 44 App. C, gallon/128"),
    ("us_tbsp", "ml", "14.78676478125", "NIST Handbook 44 App. C, gallon/256"),
    ("us_tsp", "ml", "4.92892159375", "NIST Handbook 44 App. C, gallon/768"),
    ("label_cup", "ml", "240", "21 CFR 101.9(b)(5)(viii)"),
    ("oz", "g", "28.349523125", "NIST SP 811 App. B (from memory)"),
    ("lb", "g", "453.59237", "Weights and Measures Act 1985 s.1 (from memory)"),
    ("inch", "mm", "25.4", "NIST SP 811 App. B (from memory)"),
    ("imp_gallon", "l", "4.54609", "Weights and Measures Act 1985 Sch. 1"),
    ("imp_pint", "ml", "568.26125", "Weights and Measures Act 1985 Sch. 1, gallon/8"),
    ("imp_fl_oz", "ml", "28.4130625", "Weights and Measures Act 1985 Sch. 1, gallon/160"),
    ("tsp", "ml", "5", "common metric practice (from memory)"),
    ("tbsp", "ml", "15", "common metric practice (from memory)"),
    ("cup", "ml", "250", "common metric practice (from memory)"),
    ("au_tbsp", "ml", "20", "AS 1325 (from memory)"),
]


@pytest.mark.parametrize(("unit", "to_unit", "value", "source"), EXACT, ids=lambda row: str(row))
def test_unit_is_the_published_size(unit: str, to_unit: str, value: str, source: str) -> None:
    assert convert(Fraction(1), unit, to_unit) == Fraction(value), source


# every unit in the words of pint, an independent table of units
INDEPENDENT = {
    "ml": "milliliter", "cl": "centiliter", "dl": "deciliter", "l": "liter", "mg": "milligram",
    "g": "gram", "kg": "kilogram", "pfund": "500 * gram", "ons": "100 * gram",
    "etto": "100 * gram", "hg": "100 * gram", "dag": "dekagram", "mm": "millimeter",
    "cm": "centimeter", "m": "meter", "inch": "inch", "foot": "foot", "yard": "yard",
    "oz": "ounce", "lb": "pound", "tsp": "5 * milliliter", "tbsp": "15 * milliliter",
    "cup": "250 * milliliter", "us_tsp": "teaspoon", "us_tbsp": "tablespoon",
    "us_fl_oz": "fluid_ounce", "us_cup": "cup", "us_pint": "pint", "us_quart": "quart",
    "us_gallon": "gallon", "label_cup": "240 * milliliter", "us_gill": "4 * fluid_ounce",
    "imp_fl_oz": "imperial_fluid_ounce", "imp_gill": "5 * imperial_fluid_ounce",
    "imp_cup": "10 * imperial_fluid_ounce", "imp_pint": "imperial_pint",
    "imp_quart": "imperial_quart", "imp_gallon": "imperial_gallon", "dsp": "10 * milliliter",
    "au_tbsp": "20 * milliliter", "named_us_fl_oz": "fluid_ounce", "named_us_cup": "cup",
    "named_us_pint": "pint", "named_us_quart": "quart", "named_us_gallon": "gallon",
    "named_us_gill": "4 * fluid_ounce", "named_imp_fl_oz": "imperial_fluid_ounce",
    "named_imp_gill": "5 * imperial_fluid_ounce", "named_imp_cup": "10 * imperial_fluid_ounce",
    "named_imp_pint": "imperial_pint", "named_imp_quart": "imperial_quart",
    "named_imp_gallon": "imperial_gallon",
}  # fmt: skip


def test_every_unit_is_as_large_as_elsewhere() -> None:
    table = pint.UnitRegistry(non_int_type=Fraction)
    base = {"volume": "milliliter", "mass": "gram", "length": "millimeter"}
    ours = {name: (unit.size, unit.in_base) for name, unit in all_units().items()}
    theirs = {
        name: (ours[name][0], table.parse_expression(words).to(base[ours[name][0]]).magnitude)
        for name, words in INDEPENDENT.items()
    }
    assert ours == theirs


# word, metric, us, imperial
READINGS = [
    ("pint", "imp_pint", "us_pint", "imp_pint"),
    ("cup", "cup", "us_cup", "imp_cup"),
    ("tablespoon", "tbsp", "us_tbsp", "tbsp"),
    ("fl oz", "imp_fl_oz", "us_fl_oz", "imp_fl_oz"),
    ("US cup", "named_us_cup", "us_cup", "named_us_cup"),
    ("imperial pint", "imp_pint", "named_imp_pint", "imp_pint"),
    ("imperial cup", "named_imp_cup", "named_imp_cup", "imp_cup"),
    ("g", "g", "g", "g"),
]


@pytest.mark.parametrize(("word", "metric", "us", "imperial"), READINGS, ids=lambda row: str(row))
def test_word_is_read_by_system(word: str, metric: str, us: str, imperial: str) -> None:
    found = [find_unit(word, system) for system in ("metric", "us", "imperial")]
    assert found == [metric, us, imperial]


@pytest.mark.parametrize(
    ("written", "system", "shown"),
    [
        ("1 imperial gallon", "us", "1 imperial gallon"),
        ("2 imperial pints", "us", "2 imperial pints"),
        ("1 imperial gallon", "metric", "1 gallon"),
        ("2 US cups", "metric", "2 US cups"),
        ("2 US cups", "us", "2 cups"),
        ("1 US gallon", "imperial", "1 US gallon"),
        ("16 US fl oz", "metric", "16 US fl oz"),
    ],
)
def test_a_measure_of_another_country_keeps_its_name(
    written: str, system: System, shown: str
) -> None:
    assert show_amount(parse_amount(written, system)) == shown


def test_weight_is_not_volume() -> None:
    with pytest.raises(Unreadable, match="does not measure the same"):
        convert(Fraction(1), "g", "ml")
