"""What has no price is written as a shop sells it: by weight, by length, by the litre."""

from __future__ import annotations

from fractions import Fraction

import pytest

from stillroom.core.lines.staple_table import find_staple
from stillroom.giving.money.shopping import Row, _density_by_weight, show_size

CUP = Fraction(473176473, 2000000)  # ml, 27 CFR and NIST Handbook 44: half a US pint
# spoons and cups by volume, and the weight by USDA SR: household weights of WEIGHT.txt, read
# (19335 granulated sugar 200 g, 20080 whole-wheat flour 120 g, 02047 table salt 1 tsp = 6 g)
BY_WEIGHT = [
    ("granulated sugar", "sugar and baking", 3 * CUP, "about 600 g (710 ml)"),
    ("granulated sugar", "sugar and baking", Fraction(7, 2) * CUP, "about 700 g (828 ml)"),
    ("table salt", "spices and herbs", Fraction(15, 2), "about 10 g (1½ tsp)"),
]


def row(item: str, section: str, unit: str, need: Fraction) -> Row:
    return Row(
        item=item, section=section, unit=unit, need=need, there=Fraction(0),
        months=(((2027, 3), need),), uses={}, density=_density_by_weight(item, section),
    )  # fmt: skip


@pytest.mark.parametrize(("item", "section", "need", "said"), BY_WEIGHT)
def test_what_is_sold_by_weight_is_written_so(item, section, need, said):
    assert find_staple(item) is not None
    assert row(item, section, "ml", need).to_buy == said


@pytest.mark.parametrize(("item", "section", "said"), [
    ("vodka", "spirits and wine", "500 ml"), ("olive oil", "oils and vinegars", "500 ml"),
    ("coconut milk", "dried goods", "500 ml"), ("whole milk", "dairy and eggs", "500 ml"),
    ("moon dust", "spices and herbs", "500 ml"),
])  # fmt: skip
def test_a_liquid_and_the_unknown_stay_as_they_are(item, section, said):
    assert row(item, section, "ml", Fraction(500)).to_buy == said


def test_a_long_string_is_bought_by_the_metre():
    assert show_size(Fraction(2500), "mm") == "2.5 m"
    assert show_size(Fraction(300), "mm") == "300 mm"
