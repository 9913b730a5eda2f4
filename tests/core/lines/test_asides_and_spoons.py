"""Amounts in brackets behind a note, spoons of other kitchens, and amounts that are no number.

Lines of public recipe collections (Swedish, French, Flemish, Spanish, Polish, Brazilian, British
of the 1970s) and their families, written down before the code was changed, on 30 November 2026.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from stillroom.core.amounts.quantities import Amount, Unmeasured
from stillroom.core.lines.reader import read_line
from stillroom.core.words.problems import Unreadable

ASIDES = [  # the amount was left out, and the line read "as needed"
    ("schalottenlök, finhackad (1 stor)", "sv_SE", "1", "schalottenlök", "stor, finhackad"),
    ("gul lök, tärnad (1/2)", "sv_SE", "1/2", "gul lök", "tärnad"),
    ("schalottenlök, fint hackad (1 st)", "sv_SE", "1", "schalottenlök", "fint hackad"),
    ("kikärtor, avrunna (1 burk à 425 g)", "sv_SE", "1 burk", "kikärtor", "avrunna"),
    ("ägg (2 st)", "sv_SE", "2", "ägg", ""),
    ("shallot, chopped (1 large)", "en_US", "1", "shallot", "large, chopped"),
    ("eggs, beaten (2 large)", "en_US", "2", "eggs", "large, beaten"),
    ("egg, beaten (1)", "en_US", "1", "egg", "beaten"),
    ("Zwiebel, gehackt (1 große)", "de_DE", "1", "Zwiebel", "große, gehackt"),
    ("Kichererbsen, abgetropft (1 Dose à 400 g)", "de_DE", "1 Dose", "Kichererbsen", "abgetropft"),
    ("pois chiches, égouttés (1 boîte de 400 g)", "fr_FR", "1 boîte", "pois chiches", "égouttés"),
    ("cebolla, picada (1 grande)", "es_ES", "1", "cebolla", "grande, picada"),
    ("ui, gesnipperd (1 grote)", "nl_NL", "1", "ui", "grote, gesnipperd"),
]


@pytest.mark.parametrize(("line", "language", "amount", "item", "note"), ASIDES)
def test_an_amount_behind_a_note_is_read(
    line: str, language: str, amount: str, item: str, note: str
) -> None:
    reading = read_line(line, "metric", language)
    number, _, noun = amount.partition(" ")
    assert isinstance(reading.amount, Amount)
    assert (reading.amount.low, reading.amount.noun) == (Fraction(number), noun)
    assert reading.item == item
    assert note == ", ".join(part for part in (reading.fullness, reading.note) if part)


@pytest.mark.parametrize(
    "line",
    [
        "carrots, sliced (2 cm)",  # two centimetres of carrot
        "lemons, cut in wedges (8)",
        "flour, sifted (see page 12)",
        "milk, warm (37)",
        "cream, whipped (35%)",
        "chocolate, chopped (70% cocoa)",
        "butter, for the tins (2)",
    ],
)
def test_what_stands_in_brackets_and_is_no_amount_stays_a_note(line: str) -> None:
    reading = read_line(line)
    assert isinstance(reading.amount, Unmeasured)


VAGUE = [  # the first three were one of "peu d'eau", "po' d'acqua", "filo d'olio"
    ("Un peu d’eau", "fr_FR", "eau"),
    ("un po' d'acqua", "it_IT", "acqua"),
    ("un filo d'olio", "it_IT", "olio"),
    ("un po’ di latte", "it_IT", "latte"),
    ("un peu beurre, pour le moule", "fr_FR", "beurre"),
    ("een weinig melk", "nl_NL", "melk"),
    ("en gnutta salt", "sv_SE", "salt"),
    ("a wee drop of whisky", "en_GB", "whisky"),
    ("a tad of salt", "en_GB", "salt"),
    ("a good bit of butter", "en_GB", "butter"),
    ("a suspicion of mace", "en_GB", "mace"),
]


@pytest.mark.parametrize(("line", "language", "item"), VAGUE)
def test_a_little_is_no_number(line: str, language: str, item: str) -> None:
    reading = read_line(line, "metric", language)
    assert isinstance(reading.amount, Unmeasured)
    assert reading.item == item


SPOONS = [
    (
        "1 cucharada postre de vainilla",
        "es_ES",
        "1 dsp",
        "vainilla",
    ),  # was a tablespoon of "postre"
    ("1 cucharada de café de canela", "es_ES", "1 tsp", "canela"),  # was a tablespoon of coffee
    ("2 cucharadas de té de canela", "es_ES", "2 tsp", "canela"),
    ("1 cucharada sopera de azúcar", "es_ES", "1 tbsp", "azúcar"),
    ("1 cucharita de canela", "es_ES", "1 tsp", "canela"),
    ("1 cucchiaio da tè di zucchero", "it_IT", "1 tsp", "zucchero"),
    ("2 soeplepels sojasaus", "nl_NL", "2 tbsp", "sojasaus"),
    ("2 spsk. sukker", "da_DK", "2 tbsp", "sukker"),
    ("2 ss sukker", "nb_NO", "2 tbsp", "sukker"),
    ("2 łyżki cukru", "pl_PL", "2 tbsp", "cukru"),
    ("2 łyżeczki cukru", "pl_PL", "2 tsp", "cukru"),
    ("20 dkg masła", "pl_PL", "20 dag", "masła"),
    ("20 dag Butter", "de_AT", "20 dag", "Butter"),
    ("1 1/2 colher de chá de açúcar", "pt_BR", "3/2 tsp", "açúcar"),
    ("2 colheres de sopa de açúcar", "pt_BR", "2 tbsp", "açúcar"),
    ("1 x 15 ml spoon (1 tbsp) cocoa powder", "en_GB", "1 tbsp", "cocoa powder"),
    ("2 x 5 ml spoons ground ginger", "en_GB", "2 tsp", "ground ginger"),
    ("1 level 15 ml spoon sugar", "en_GB", "1 tbsp", "sugar"),
    ("1 dessert spoon sugar", "en_GB", "1 dsp", "sugar"),
]


@pytest.mark.parametrize(("line", "language", "amount", "item"), SPOONS)
def test_spoons_of_other_kitchens(line: str, language: str, amount: str, item: str) -> None:
    reading = read_line(line, "metric", language)
    number, _, unit = amount.partition(" ")
    assert isinstance(reading.amount, Amount)
    assert (reading.amount.low, reading.amount.unit) == (Fraction(number), unit)
    assert reading.item == item


@pytest.mark.parametrize(
    ("line", "amount"),
    [("vitlöksklyfta (3, pressad)", "3"), ("garlic clove (3, minced)", "3")],
)
def test_a_count_at_the_head_of_a_note_is_read(line: str, amount: str) -> None:
    reading = read_line(line)
    assert isinstance(reading.amount, Amount)
    assert reading.amount.low == Fraction(amount)


def test_a_decimal_comma_parts_no_food_from_its_note() -> None:
    reading = read_line("100 g Frischkäse 0,8% Fett", "metric", "de_DE")
    assert (reading.item, reading.note) == ("Frischkäse", "0,8% Fett")


@pytest.mark.parametrize(
    "line",
    ["1 egg, nearly 1/4 pint of milk", "1 egg, about 3 tbsp milk"],  # the milk was left out
)
def test_a_second_food_is_asked_about_however_much_of_it(line: str) -> None:
    with pytest.raises(Unreadable, match="more than one amount"):
        read_line(line)


@pytest.mark.parametrize(
    "line",
    [
        "2 lemons, about 100 ml juice",
        "4 apples, about 2 lb fruit",
        "2 lb plums, about 30",
        "2 oz chocolate, about 1/3 cup chips",
        "1 onion, about 1 cup",
    ],
)
def test_the_same_food_measured_again_is_not_asked_about(line: str) -> None:
    assert isinstance(read_line(line).amount, Amount)
