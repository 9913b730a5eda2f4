"""Vinegar essence is minded before it is thinned, and ordinary vinegar is not.

After the German ordinance on vinegar, § 2 (above 11 g of acid in 100 ml: "not to be consumed
undiluted") and the Swiss office of public health on concentrated acetic acid.
"""

from __future__ import annotations

import pytest

from care_cases import ask
from stillroom.core.book import BookSettings


def _rules(line: str, language: str = "en_GB") -> frozenset[str]:
    written = {
        "title": "Pickled cucumbers",
        "kind": "preserve",
        "makes": "4 jars of 500 ml",
        "ingredients": ["1 kg cucumbers", line, "1 l water", "100 g sugar", "30 g salt"],
        "method": ["Boil the water with the rest and pour it over the cucumbers."],
    }
    return ask(written, BookSettings(language=language)).cautions


@pytest.mark.parametrize(
    ("line", "language"),
    [
        ("100 ml vinegar essence", "en_GB"),
        ("100 ml vinegar essence, 25 %", "en_GB"),
        ("50 ml acetic essence", "en_GB"),
        ("2 dl ättika", "sv_SE"),
        ("500 ml ättika, 12 %", "sv_SE"),
        ("100 ml Essigessenz", "de_DE"),
        ("100 ml Essigessenz, 25 %", "de_DE"),
        ("10 ml glacial acetic acid", "en_GB"),
    ],
)
def test_vinegar_essence_is_minded(line: str, language: str) -> None:
    assert "strong-acid" in _rules(line, language)


@pytest.mark.parametrize(
    ("line", "language"),
    [
        ("1 l vinegar", "en_GB"),
        ("1 l white wine vinegar, 6 %", "en_GB"),
        ("10 g citric acid", "en_GB"),
        ("100 ml lemon juice", "en_GB"),
        ("500 ml Weinessig, 5 %", "de_DE"),
        ("1 tsp vanilla essence", "en_GB"),
    ],
)
def test_vinegar_is_not(line: str, language: str) -> None:
    assert "strong-acid" not in _rules(line, language)
