"""A pack told before its size, as recipe pages of seven languages write it.

The shapes are those of printed lists (tins, bars, sachets); the page of this book shows "½ tin of
397 g" itself, which a newcomer typed (30 November 2026) and was refused.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from stillroom.core.amounts.quantities import Amount
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.reader import read_line
from stillroom.core.words.problems import Unreadable


@pytest.mark.parametrize(
    ("line", "language", "count", "size", "item"),
    [
        ("1 tin of 397 g condensed milk", "en_GB", 1, 397, "condensed milk"),
        ("½ tin of 397 g condensed milk", "en_GB", Fraction(1, 2), 397, "condensed milk"),
        ("2 tins of 400g chopped tomatoes, drained", "en_GB", 2, 400, "chopped tomatoes"),
        ("a bar of 100 g dark chocolate", "en_GB", 1, 100, "dark chocolate"),
        ("6 sachets of 7 g yeast", "en_GB", 6, 7, "yeast"),
        ("1 tin of 397 g of condensed milk", "en_GB", 1, 397, "condensed milk"),
        ("2 Dosen à 400 g Tomaten", "de_DE", 2, 400, "Tomaten"),
        ("1 Packung zu je 250 g Butter", "de_DE", 1, 250, "Butter"),
        ("2 boîtes de 400 g de tomates", "fr_FR", 2, 400, "tomates"),
        ("1 plaquette de 250 g de beurre", "fr_FR", 1, 250, "beurre"),
        ("1 sachet de 11 g d'agar-agar", "fr_FR", 1, 11, "agar-agar"),
        ("1 lata de 400 g de tomate", "es_ES", 1, 400, "tomate"),
        ("1 scatola da 400 g di pomodori", "it_IT", 1, 400, "pomodori"),
        ("1 pakje van 250 g boter", "nl_NL", 1, 250, "boter"),
        ("2 burkar à 400 g tomater", "sv_SE", 2, 400, "tomater"),
    ],
)
def test_a_pack_has_its_size_wherever_it_stands(
    line: str, language: str, count: Fraction | int, size: int, item: str
) -> None:
    reading = read_line(line, "metric", language)
    assert isinstance(reading.amount, Amount)
    assert (reading.amount.low, reading.item) == (count, item)
    assert reading.each is not None
    assert (reading.each.low, reading.each.unit) == (size, "g")


@pytest.mark.parametrize(
    ("line", "ml"), [("3 bottles of 700 ml vodka", 2100), ("1 pot of 300 ml cream", 300)]
)
def test_what_is_poured_is_so_much_of_it(line: str, ml: int) -> None:
    one = read_ingredient(line, "metric")
    assert isinstance(one.amount, Amount)
    assert (one.amount.low, one.amount.unit) == (ml, "ml")


@pytest.mark.parametrize("line", ["8 lrg onions", "8 lrg. onions", "8 lge onions"])
def test_large_in_short_is_no_food(line: str) -> None:
    assert read_ingredient(line, "metric").item == "large onions"


@pytest.mark.parametrize("line", ["2 pieces of 30 cm ribbon", "1 bunch of parsley", "2 tins of 3"])
def test_no_weight_makes_no_pack_of_it(line: str) -> None:
    try:
        reading = read_line(line, "metric")
    except Unreadable:
        return
    assert reading.each is None or reading.each.unit != "g"
