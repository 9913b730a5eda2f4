"""A recipe read again is the very one that was read first, as long as anybody holds that."""

from __future__ import annotations

import gc
import weakref

from stillroom.core.reading.recipe_file import read_recipe

TEXT = """---
title: Quince jelly
kind: jelly
makes: 6 jars of 200 ml
ingredients:
  - 1 kg quinces
  - 600 g sugar
---
## Method
1. Boil the {quinces} with the {sugar}.
"""


def test_the_same_recipe_written_otherwise_is_the_one_that_was_read_first() -> None:
    first = read_recipe(TEXT, "quince-jelly.md", "quince-jelly")
    again = read_recipe(
        TEXT.replace("1 kg quinces", "1 kg  quinces"), "quince-jelly.md", "quince-jelly"
    )
    assert again is first
    other = read_recipe(
        TEXT.replace("1 kg quinces", "2 kg quinces"), "quince-jelly.md", "quince-jelly"
    )
    assert other is not first
    assert other != first


def test_what_was_changed_is_not_held_for_ever() -> None:
    gone = weakref.ref(read_recipe(TEXT, "gone.md", "gone"))
    assert gone() is not None
    read_recipe.cache_clear()
    gc.collect()
    assert gone() is None
