"""Oil is hot where a method says so, by words or by degrees; a frying pan's spoonful is not."""

from __future__ import annotations

import pytest

from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.reading.loading import read_recipe

RECIPE = """---
title: Something fried
kind: bake
makes: 10 pieces
ingredients:
  - 500 g flour
  - 500 ml sunflower oil
---

## Method

1. {}
"""


@pytest.mark.parametrize(
    ("step", "told"),
    [
        ("Warm the oil to 120 °C, pour over the chillies.", True),
        ("Pour the sizzling oil over the chillies.", True),
        ("Heat the oil to 350 F and fry the dough.", True),
        ("Fry the crullers in deep fat until brown.", True),
        ("In heißem Fett ausbacken.", True),
        ("Faire frire les beignets.", True),
        ("Heat the oil in a pan and fry the onions gently.", False),
        ("Fry the onion in oil gently until soft.", False),
        ("Warm the oil to 60 °C and leave overnight.", False),
        ("Oil the tin and heat the oven to 200 °C.", False),
        ("Melt the coconut oil at 40 °C. Bake at 180 °C.", False),
    ],
)
def test_hot_oil_is_told_where_it_is_hot(step: str, told: bool) -> None:
    """Fire services on chip pans warn of the depth and the heat, not of a film in a pan."""
    box = assess_safety(read_recipe(RECIPE.format(step), "it.md", "it"), BookSettings())
    assert ("hot-oil" in {one.rule for one in box.cautions}) is told
