"""A little spirit in a dough is no pour, and a spoonful into boiling sugar is minded all the same.

After the Engineering ToolBox on flash points; the lines are of families' biscuits and toffees, the
German and French from memory; written before the code.
"""

from __future__ import annotations

import pytest

from care_cases import ask
from stillroom.core.book import BookSettings

LITTLE = """
etwas Rum
ein Schuss Rum
some rum
a splash of rum
1 dash brandy
rum to taste
a little brandy
un peu de rhum
un trait de rhum
3 tbsp rum
"""
A_POUR = """
300 ml rum
1 bottle rum
rum
2 cups rum
"""
SPITS = """
Boil butter and sugar to 150 °C, stirring. | Off heat add bourbon (it spits). Pour.
Boil butter and sugar to 300°F, stirring. | Stir in the bourbon and pour.
Boil butter and sugar to the hard crack stage, then add the bourbon. | Pour.
Cook the sugar to an amber caramel. | Add the butter and the bourbon.
"""
CALM = """
Boil butter and sugar to 150 °C, stirring. Pour into a tin. | Cool, then brush with the bourbon.
Boil butter and sugar to 116 °C. Cool to room temperature. | Beat in the bourbon.
Melt the butter over hot water, stir in the sugar. | Chill, then roll in bourbon.
Beat the butter and sugar. | Add the bourbon and roll into balls.
"""


def _baked(line: str) -> frozenset[str]:
    written = {
        "title": "Lebkuchen",
        "kind": "bake",
        "makes": "40 biscuits",
        "ingredients": ["400 g ground almonds", "350 g sugar", "5 eggs", line],
        "method": ["Mix and bake at 150 °C for 20 minutes."],
    }
    return ask(written, BookSettings()).cautions


def _sweet(method: str, spirit: str = "3 tbsp bourbon") -> frozenset[str]:
    written = {
        "title": "Pecan sweets",
        "kind": "confection",
        "ingredients": ["225 g butter", "300 g sugar", spirit, "1 tsp salt"],
        "method": method.split(" | "),
    }
    return ask(written, BookSettings()).cautions


@pytest.mark.parametrize("line", LITTLE.strip().splitlines())
def test_a_little_in_a_dough_is_no_vapour(line: str) -> None:
    rules = _baked(line)
    assert "spirit-vapour" not in rules
    assert "alcohol-in-food" in rules


@pytest.mark.parametrize("line", A_POUR.strip().splitlines())
def test_a_pour_is_vapour(line: str) -> None:
    assert "spirit-vapour" in _baked(line)


@pytest.mark.parametrize("method", SPITS.strip().splitlines())
def test_a_spoonful_into_boiling_sugar_is_minded(method: str) -> None:
    assert "spirit-heated" in _sweet(method)
    assert "spirit-heated" not in _sweet(method, "1 tsp vanilla extract")


@pytest.mark.parametrize("method", CALM.strip().splitlines())
def test_a_spoonful_into_what_is_cool_is_not(method: str) -> None:
    assert "spirit-heated" not in _sweet(method)
