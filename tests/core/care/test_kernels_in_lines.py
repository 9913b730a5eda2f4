"""Kernels of stone fruit told in a line in other words than their name, and what only sounds so.

The lines are a family's of liqueurs, written before the code; EFSA Journal 2016;14(4):4424 on what
apricot kernels hold.
"""

from __future__ import annotations

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety

KERNELS = """
the kernels of 40 apricot stones
120 g peach stones, cracked
1 handful kernels out of the stones of apricots
1 handful of kernels from apricot stones
kernels of 20 cherries
40 apricot stones, kernels only
40 apricot stones (the kernels)
100 g cracked cherry stones
100 g crushed plum pits
1 cup cherry pits, crushed
100 g ground apricot pits
20 damson stones, broken open
30 g plum stone kernels
1 cup kernels taken from nectarines
12 nectarine kernels
100 g apricot kernels, crushed
50 g peach kernels
6 greengage kernels
1 cup insides of apricot stones
100 g bitter apricot kernels
1 handful blanched kernels of peaches
"""
NO_KERNELS = """
500 g stoned apricots
500 g apricots, stoned
1 kg plums, stones removed
1 kg plums, stones taken out
1 kg cherries, pitted
1 kg cherries, pits removed
1 kg sloes
500 g damsons, whole
100 g pumpkin seed kernels
100 g sunflower kernels
100 g sweet almonds
100 g walnut kernels
100 g pine kernels
100 g hazelnut kernels
100 g cashew kernels
100 g corn kernels
10 ml apricot kernel oil
10 ml peach kernel oil
200 g dried apricots and walnut kernels
200 g dried apricots, with 50 g almond kernels
1 pinch cracked pepper
500 g apricots, halved and stoned, skins cracked
200 g cherry jam, stone free
1 kg peaches without stones
200 g stone-ground flour
"""


def _rules(line: str) -> set[str]:
    front = {"title": "A liqueur", "kind": "infusion", "makes": "1 litre"}
    lines = ["700 ml vodka 40%", line, "250 g sugar"]
    method = ["Put everything in a jar for 2 months.", "Strain."]
    box = assess_safety(
        recipe_of({**front, "ingredients": lines, "method": method}), BookSettings()
    )
    return {one.rule for one in box.refusals}


@pytest.mark.parametrize("line", KERNELS.strip().splitlines())
def test_kernels_are_refused_in_any_words(line: str) -> None:
    assert "cyanide-kernels" in _rules(line)


@pytest.mark.parametrize("line", NO_KERNELS.strip().splitlines())
def test_what_is_no_kernel_is_not_refused(line: str) -> None:
    assert "cyanide-kernels" not in _rules(line)
