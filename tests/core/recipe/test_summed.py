"""A recipe's sum is made once, and goes neither to a copy nor to another process."""

from __future__ import annotations

import pickle
from pathlib import Path

from stillroom.core.reading.loading import load_recipe

QUINCE = Path(__file__).parents[3] / "recipes" / "quince-ratafia.md"


def test_the_sum_is_kept_and_equal_recipes_have_one() -> None:
    recipe = load_recipe(QUINCE)
    again = recipe.model_copy()
    assert hash(recipe) == hash(again) == hash(recipe.kept_by())
    assert "_sum" in vars(recipe)
    assert recipe == again


def test_a_copy_that_says_something_else_has_a_sum_of_its_own() -> None:
    recipe = load_recipe(QUINCE)
    assert hash(recipe)
    copy = recipe.model_copy(update={"title": "Another"})
    assert "_sum" not in vars(copy)
    assert hash(copy) != hash(recipe)


def test_another_process_is_told_no_sum() -> None:
    recipe = load_recipe(QUINCE).model_copy(update={"larder": None})
    assert hash(recipe)
    assert "_sum" not in vars(pickle.loads(pickle.dumps(recipe)))
    assert hash(pickle.loads(pickle.dumps(recipe))) == hash(recipe)
