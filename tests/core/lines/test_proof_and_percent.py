"""A percentage and proof at once is no strength, many French cc no amount: asked; others are read.

American proof is twice the % vol: 27 CFR 5.1 ("proof"), restated. Lines as labels and papers have
them.
"""

import pytest

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import System
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.words.problems import Unreadable


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize(
    "line",
    ["500 ml 95% proof alcohol", "500 ml alcohol (95 % proof)", "1 l vodka, 95 percent proof",
     "1 l 40%-proof vodka", "1 l rum, proof 40%"],
)  # fmt: skip
def test_both_at_once_is_asked(line: str, system: System) -> None:
    with pytest.raises(Unreadable, match="percentage and proof at once"):
        read_ingredient(line, system)


@pytest.mark.parametrize(
    ("line", "system", "note"),
    [
        ("750 ml 80-proof vodka", "us", "40% vol"),
        ("1 l 190 proof (95% abv) alcohol", "us", "95% vol, 95% abv"),
        ("750 ml vodka, 40% vol (80 proof)", "metric", "40% vol, (80 proof)"),
        ("500 ml 95% alcohol", "metric", "95% vol"),
        ("1 kg bread dough, 20% rye, proofed", "metric", "20% rye, proofed"),
    ],
)
def test_one_of_them_is_read(line: str, system: System, note: str) -> None:
    assert read_ingredient(line, system).note == note


@pytest.mark.parametrize("line", ["15 cc cannelle", "10 cc de sel", "20 cc de farine"])
def test_many_cc_of_what_is_dry_are_asked(line: str) -> None:
    """French "cc" is a coffee spoon, and a cubic centimetre of what is poured."""
    with pytest.raises(Unreadable, match="coffee spoons or millilitres"):
        read_ingredient(line, "metric", "fr_FR")


@pytest.mark.parametrize("line", ["15 cc de canela", "1 cc de canela", "2 cc de polvo de hornear"])
def test_few_cc_in_spanish_are_asked(line: str) -> None:
    """In Spanish "cc" is a cubic centimetre, and in some books a coffee spoon: from memory."""
    with pytest.raises(Unreadable, match="coffee spoons or millilitres"):
        read_ingredient(line, "metric", "es_ES")


@pytest.mark.parametrize(
    ("line", "language", "unit"),
    [
        ("200 cc de leche", "es_ES", "ml"),
        ("15 cc de zumo de limón", "es_ES", "ml"),
        ("100 cc de aceite", "es_ES", "ml"),
        ("2 cc cannelle", "fr_FR", "tsp"),
        ("15 cc de lait", "fr_FR", "ml"),
        ("10 cc d'eau", "fr_FR", "ml"),
        ("15 cc d'extrait de vanille", "fr_FR", "ml"),
        ("100 cc de lait", "fr_FR", "ml"),
        ("15 cc de leche", "es_ES", "ml"),
    ],
)
def test_cc_that_are_plain_are_read(line: str, language: str, unit: str) -> None:
    amount = read_ingredient(line, "metric", language).amount
    assert isinstance(amount, Amount)
    assert amount.unit == unit
