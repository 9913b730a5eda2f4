"""Hundreds in words: "three hundred grams of sugar" was three packs of 100 g, shown as "3 sugar".

A family written down before the code was changed, on 29 November 2026; in seven languages.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from stillroom.core.amounts.quantities import Amount
from stillroom.core.lines.reader import read_line
from stillroom.core.words.problems import Unreadable

LINES = [
    ("three hundred grams of sugar", "300 g", "sugar"),
    ("a hundred grams of raisins", "100 g", "raisins"),
    ("hundred grams sugar", "100 g", "sugar"),
    ("two hundred grams flour", "200 g", "flour"),
    ("six hundred ml milk", "600 ml", "milk"),
    ("one hundred and fifty grams sugar", "150 g", "sugar"),
    ("two hundred and twenty-five g butter", "225 g", "butter"),
    ("two hundred fifty ml water", "250 ml", "water"),
    ("a thousand grams of plums", "1000 g", "plums"),
    ("seven hundred millilitres gin", "700 ml", "gin"),
    ("a couple of hundred grams of sugar", "200 g", "sugar"),
    ("zweihundert Gramm Zucker", "200 g", "Zucker"),
    ("zweihundertfünfzig Gramm Mehl", "250 g", "Mehl"),
    ("deux cents grammes de sucre", "200 g", "sucre"),
    ("deux cent cinquante grammes de farine", "250 g", "farine"),
    ("cent grammes de sucre", "100 g", "sucre"),
    ("trecento grammi di zucchero", "300 g", "zucchero"),
    ("doscientos gramos de azúcar", "200 g", "azúcar"),
    ("tweehonderd gram suiker", "200 g", "suiker"),
    ("tvåhundra gram socker", "200 g", "socker"),
    # what only sounds so
    ("two dozen eggs", "24", "eggs"),
    ("three 100 g bars dark chocolate", "3", "dark chocolate"),
    ("one and a half kilos of plums", "3/2 kg", "plums"),
]


@pytest.mark.parametrize(("line", "amount", "item"), LINES)
def test_hundreds_are_read(line: str, amount: str, item: str) -> None:
    reading = read_line(line)
    assert isinstance(reading.amount, Amount)
    assert reading.amount.low == reading.amount.high == Fraction(amount.split()[0])
    assert reading.amount.unit == " ".join(amount.split()[1:])
    assert reading.item == item


def test_a_hundredweight_is_no_hundred() -> None:
    try:
        reading = read_line("a hundredweight of apples")
    except Unreadable:
        return
    assert isinstance(reading.amount, Amount)
    assert reading.amount.low != 100
