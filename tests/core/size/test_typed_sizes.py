"""Sizes as cooks type them, each with what it comes to for one jam; written down before the code.

The jam makes six jars of 250 ml, 1.5 l in all, of 1.5 kg plums, 1 kg sugar, a lemon and two sticks.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from stillroom.core.reading.loading import read_recipe
from stillroom.core.size.scalable import scalable_of
from stillroom.core.size.targets import read_target, solve_target
from stillroom.core.words.problems import Unreadable

JAM = """---
title: Plum jam
kind: preserve
makes: 6 jars of 250 ml
ingredients:
  - 1.5 kg plums
  - 1 kg sugar
  - juice of 1 lemon
  - 2 cinnamon sticks
---

## Method

1. Boil {plums}, {sugar}, {lemon} and {cinnamon sticks}.
"""
PINT_OF_ALL = Fraction("0.56826125") / Fraction("1.5")  # an imperial pint, as the book is metric
TYPED = [
    ("times", "double", 2),
    ("times", "Twice", 2),
    ("times", "triple", 3),
    ("times", "half", Fraction(1, 2)),
    ("times", "a quarter", Fraction(1, 4)),
    ("times", "two thirds", Fraction(2, 3)),
    ("times", "one and a half", Fraction(3, 2)),
    ("times", "2 and a half", Fraction(5, 2)),
    ("times", "3x", 3),
    ("times", "x 2", 2),
    ("times", "4 times", 4),
    ("times", "150%", Fraction(3, 2)),
    ("makes", "a dozen jars", 2),
    ("makes", "three jars", Fraction(1, 2)),
    ("makes", "half a litre", Fraction(1, 3)),
    ("makes", "a couple of jars", Fraction(1, 3)),
    ("makes", "one litre", Fraction(2, 3)),
    # counted as jars of the recipe's own size before, whatever they hold
    ("makes", "1 jar of 500 ml", Fraction(1, 3)),
    ("makes", "12 jars of 125 ml", 1),
    ("makes", "12 jars (125 ml)", 1),
    ("makes", "two 250 ml jars", Fraction(1, 3)),
    ("makes", "2 pint jars", 2 * PINT_OF_ALL),
    ("makes", "4 half-pint jars", 2 * PINT_OF_ALL),
    ("makes", "6 small jars", 1),
    ("fill", "four 200 ml jars", Fraction(8, 15)),
    ("fill", "4 jars (200 ml)", Fraction(8, 15)),
    ("fill", "3 jars 200ml", Fraction(2, 5)),
    ("fill", "a dozen 50 ml bottles and 2 jars (150 ml)", Fraction(3, 5)),
    ("fill", "2 pint jars", 2 * PINT_OF_ALL),
    ("fill", "12 half-pint jars", 6 * PINT_OF_ALL),
    ("fill", "6 x 100-ml phials", Fraction(2, 5)),
    ("have", "plums 3 kg", 2),
    ("have", "plums: 750 g", Fraction(1, 2)),
    ("have", "half a kilo of sugar", Fraction(1, 2)),
    ("have", "three lemons", 3),
    ("have", "cinnamon sticks 4", 2),
    ("have", "plums 3 kg and sugar 1 kg", 1),
]
ASKED = [
    ("times", "often"), ("times", "half a jar"), ("times", "-50%"), ("times", "x"),
    ("makes", "some jars"), ("makes", "a lot"), ("makes", "a few jars"), ("makes", "jars"),
    ("fill", "6 jars"), ("fill", "four jars"),
    ("fill", "half-pint jars"), ("have", "plums"), ("have", "2 kg"), ("have", "apples 2 kg"),
]  # fmt: skip


@pytest.mark.parametrize(("sort", "text", "factor"), TYPED)
def test_a_size_is_read_as_it_is_typed(sort: str, text: str, factor: Fraction) -> None:
    recipe = read_recipe(JAM, "recipes/plum-jam.md", "plum-jam")
    assert solve_target(scalable_of(recipe), read_target({sort: text}, "metric")).factor == factor


@pytest.mark.parametrize(("sort", "text"), ASKED)
def test_what_says_no_size_is_asked_about(sort: str, text: str) -> None:
    recipe = scalable_of(read_recipe(JAM, "recipes/plum-jam.md", "plum-jam"))
    with pytest.raises(Unreadable):
        solve_target(recipe, read_target({sort: text}, "metric"))
