"""A place under "keeps" without a time is the recipe's own word: what lies in the fridge is cold.

A relish with a fifth of chorizo, "keeps: where: in the fridge", got a shelf's month.
"""

from __future__ import annotations

import pytest

from stillroom.core.label.how_long import planned_span
from stillroom.core.method.keeping_said import kept_at
from stillroom.core.reading.loading import read_recipe

RELISH = """---
title: Tomato and chorizo relish
kind: preserve
makes: 4 jars of 250 ml
{keeps}ingredients:
  - 1 kg tomatoes
  - 300 g chorizo
  - 200 ml cider vinegar, 5%
  - 100 g sugar
---

## Method

1. Cook {{tomatoes}}, {{chorizo}}, {{cider vinegar}} and {{sugar}} for an hour.
2. {last}
"""


@pytest.mark.parametrize(
    ("keeps", "last"),
    [("keeps:\n  where: in the fridge\n", "Pot."), ("", "Pot and keep in the fridge.")],
)
def test_a_place_without_a_time_counts(keeps: str, last: str) -> None:
    relish = read_recipe(RELISH.format(keeps=keeps, last=last), "recipes/r.md", "r")
    assert kept_at(relish) == "fridge"
    assert str(planned_span(relish)) == "4 days"


def test_a_place_that_only_the_book_named_makes_nothing_safe() -> None:
    relish = read_recipe(RELISH.format(keeps="", last="Pot."), "recipes/r.md", "r")
    assert kept_at(relish) != "fridge"
