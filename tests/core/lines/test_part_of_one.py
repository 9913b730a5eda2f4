"""A part of one thing, and of one pack: how recipe pages of ten languages write it.

Lines marked * stand in text read in open repositories on 30 November 2026 (a dip's "1/2 of a 14 oz
can", a tortilla's "1/2 boîte de haricots noirs de 540 ml", an extension office's strawberry jam
with "1/2 of 6 oz. bottle liquid fruit pectin"); the others say the same of another food or in
another language.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from stillroom.core.amounts.quantities import Amount, Unmeasured
from stillroom.core.lines.reader import read_line
from stillroom.core.words.problems import Unreadable

HALF = Fraction(1, 2)


@pytest.mark.parametrize(
    ("line", "language", "part", "size", "noun", "item"),
    [
        ("1/2 of 6 oz. bottle liquid pectin", "en_US", HALF, 6, "bottle", "liquid pectin"),  # *
        ("1/2 of a 14 oz can artichoke hearts", "en_US", HALF, 14, "can", "artichoke hearts"),  # *
        ("1/2 of 1 14-oz can condensed milk", "en_US", HALF, 14, "can", "condensed milk"),
        ("1/3 of a 200g packet biscuits", "en_GB", Fraction(1, 3), 200, "packet", "biscuits"),
        ("1/2 a 250g block butter", "en_GB", HALF, 250, "block", "butter"),
        ("1/2 boîte de 400g de tomates", "fr_FR", HALF, 400, "boîte", "tomates"),  # *
        ("une demi-boîte de 400 g de tomates", "fr_FR", HALF, 400, "boîte", "tomates"),
        ("1/2 d'une boîte de 400 g de tomates", "fr_FR", HALF, 400, "boîte", "tomates"),
        ("media lata de 400 g de tomate", "es_ES", HALF, 400, "lata", "tomate"),
        ("1/2 lata de 395 g de leite condensado", "pt_BR", HALF, 395, "lata", "leite condensado"),
        ("mezza confezione da 250 g di burro", "it_IT", HALF, 250, "confezione", "burro"),
        ("halve blik van 400 g tomaten", "nl_NL", HALF, 400, "blik", "tomaten"),
        ("en halv burk à 400 g tomater", "sv_SE", HALF, 400, "burk", "tomater"),
        ("1/2 pakke à 250 g smør", "da_DK", HALF, 250, "pakke", "smør"),
        ("1/2 Päckchen à 250 g Butter", "de_DE", HALF, 250, "Päckchen", "Butter"),
        ("die Hälfte einer 400-g-Dose Tomaten", "de_DE", HALF, 400, "Dose", "Tomaten"),
        ("2 400-g-Dosen Tomaten", "de_DE", 2, 400, "Dosen", "Tomaten"),
    ],
)
def test_a_part_of_a_pack(
    line: str, language: str, part: Fraction | int, size: int, noun: str, item: str
) -> None:
    reading = read_line(line, "us" if language == "en_US" else "metric", language)
    assert isinstance(reading.amount, Amount)
    assert reading.each is not None
    assert (reading.amount.low, reading.each.low, reading.item) == (part, size, item)
    assert noun.startswith(reading.amount.noun)


@pytest.mark.parametrize(
    ("line", "language", "part", "item"),
    [
        ("half of one orange", "en_GB", HALF, "orange"),
        ("1/4 of 1 nutmeg", "en_GB", Fraction(1, 4), "nutmeg"),
        ("la moitié d'un oignon", "fr_FR", HALF, "oignon"),  # *
        ("1/2 d'un citron", "fr_FR", HALF, "citron"),
        ("la mitad de un limón", "es_ES", HALF, "limón"),
        ("1/4 de 1 cebolla", "es_ES", Fraction(1, 4), "cebolla"),
        ("metà di un'arancia", "it_IT", HALF, "arancia"),
        ("metade de um limão", "pt_BR", HALF, "limão"),
        ("de helft van een citroen", "nl_NL", HALF, "citroen"),
        ("hälften av en citron", "sv_SE", HALF, "citron"),
        ("halvdelen af en citron", "da_DK", HALF, "citron"),
        ("halvparten av en sitron", "nb_NO", HALF, "sitron"),
        ("die Hälfte von einer Orange", "de_DE", HALF, "Orange"),
        ("połowa jednej cytryny", "pl_PL", HALF, "cytryny"),
    ],
)
def test_a_part_of_one(line: str, language: str, part: Fraction, item: str) -> None:
    reading = read_line(line, "metric", language)
    assert isinstance(reading.amount, Amount)
    assert (reading.amount.low, reading.amount.high, reading.item) == (part, part, item)


@pytest.mark.parametrize(
    ("line", "language"),
    [
        ("la moitié du sucre", "fr_FR"),
        ("la mitad de la harina", "es_ES"),
        ("die Hälfte des Zuckers", "de_DE"),
        ("hälften av sockret", "sv_SE"),
    ],
)
def test_a_part_of_what_is_there_is_no_amount(line: str, language: str) -> None:
    assert isinstance(read_line(line, "metric", language).amount, Unmeasured)


@pytest.mark.parametrize(
    "line",
    ["1/2 of 1 1/2 cups milk", "1/2 of 2 lemons", "1/2 of 6 oz chocolate", "1/2 a 1 kg de harina"],
)
def test_a_part_of_several_is_asked(line: str) -> None:
    with pytest.raises(Unreadable):
        read_line(line, "us", "en_US")


def test_from_a_half_to_one_is_no_half_of_one() -> None:
    reading = read_line("1/2 a 1 kg de harina", "metric", "es_ES")
    assert isinstance(reading.amount, Amount)
    assert (reading.amount.low, reading.amount.high) == (HALF, 1)


@pytest.mark.parametrize(
    ("line", "language", "item", "noun"),
    [
        ("12 oz. pkg. frozen spinach", "en_US", "frozen spinach", "pkg"),  # *
        ("500-g-Packung Mehl", "de_DE", "Mehl", "Packung"),
        ("200 g Becher Sahne", "de_DE", "Sahne", "Becher"),
        ("300 g busta di mandorle", "it_IT", "mandorle", "busta"),
        ("250 g pak boter", "nl_NL", "boter", "pak"),
        ("200 g kostka masła", "pl_PL", "masła", "kostka"),
    ],
)
def test_a_pack_behind_its_weight_is_no_food(
    line: str, language: str, item: str, noun: str
) -> None:
    reading = read_line(line, "us" if language == "en_US" else "metric", language)
    assert (reading.item, reading.fullness) == (item, noun)
