"""What a cook tells to keep so long is how long it keeps, unless it may be how it is made.

"Pot hot. Keep 6 months in a cupboard" got the book's year, longer than the cook's own word. Forms
of 29 November 2026, written down before the code; two-sided.
"""

from __future__ import annotations

import pytest

from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.keeps import Keeping

JAM = """---
title: Plum jam
kind: {kind}
makes: {makes}
ingredients:
  - 1 kg plums
  - 1 kg sugar
---

## Method

1. Boil {{plums}} and {{sugar}} to 105 °C.
2. {last}
"""
MAKES = {"preserve": "4 jars of 250 ml", "bake": "20 biscuits", "infusion": "1 l"}
KEPT = [
    ("preserve", "Pot hot. Keep 6 months in a cupboard.", "6 months"),
    ("preserve", "Pot hot. Keep for 6 months.", "6 months"),
    ("preserve", "Pot hot. Store 9 months.", "9 months"),
    ("preserve", "Pot. Keep 1 yr unopened.", "1 year"),
    ("preserve", "Keep in the fridge 2 weeks.", "2 weeks"),
    ("bake", "Keep in a tin 4 wks.", "4 weeks"),
    ("bake", "Keep for a fortnight.", "2 weeks"),
]
# they wait, or may: nothing is taken for a keeping
NOT_TAKEN = [
    ("preserve", "Keep for 6 months before eating."),
    ("preserve", "Keep for 6 weeks."),
    ("preserve", "Keep for 4 months to mature."),
    ("preserve", "Keep in the dark for 4 months, then eat."),
    ("preserve", "Keep it for 4 months in the dark, shaking daily."),
    ("preserve", "Keep warm for 2 hours."),
    ("preserve", "Keep 14 days in brine."),
    ("bake", "Keep two weeks before eating."),
    ("bake", "Keep for 2 days."),
    ("infusion", "Bottle. Keep 6 months."),
]


@pytest.mark.parametrize(("kind", "last", "span"), KEPT)
def test_it_keeps_so_long(kind: str, last: str, span: str) -> None:
    keeps = read(kind, last)
    assert (str(keeps.unopened), keeps.by) == (span, "method")


@pytest.mark.parametrize(("kind", "last"), NOT_TAKEN)
def test_what_may_be_a_wait_is_no_keeping(kind: str, last: str) -> None:
    assert read(kind, last).by != "method"


def read(kind: str, last: str) -> Keeping:
    text = JAM.format(kind=kind, makes=MAKES[kind], last=last)
    return read_recipe(text, "recipes/plum-jam.md", "plum-jam").keeps
