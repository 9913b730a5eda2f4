"""What a batch comes to: it follows the scale, and filling and bottling agree."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from stillroom.core.reading.loading import load_recipe, read_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.finished import facts_of_batch, size_means
from stillroom.core.size.scaling import ScaledBatch, scale_recipe
from stillroom.core.size.targets import read_target
from stillroom.core.words.problems import Unreadable

RECIPES = Path(__file__).resolve().parents[3] / "recipes"


def demo(slug: str) -> Recipe:
    return load_recipe(RECIPES / f"{slug}.md")


def asked(recipe: Recipe, **target: str) -> ScaledBatch:
    return scale_recipe(recipe, read_target(target, "metric"))


def facts(slug: str, **target: str) -> dict[str, str]:
    recipe = demo(slug)
    return {fact.name: fact.text for fact in facts_of_batch(recipe, asked(recipe, **target))}


def test_twelve_bottles_are_what_is_made_and_filled() -> None:
    batch = asked(demo("bitter-orange-spirit"), fill="12 x 50 ml")
    assert batch.makes_in_full == "about 600 ml: 12 bottles of 50 ml"
    found = facts("bitter-orange-spirit", fill="12 x 50 ml")
    assert found["Into"] == "12 bottles of 50 ml"
    assert found["To bottle"] == "600–650 ml"
    assert found["Servings"] == "about 120 teaspoons or 24 small glasses"  # 600 ml of 5 and 25 ml


def test_jars_asked_for_stand_for_the_jars_of_the_recipe() -> None:
    batch = asked(demo("bramble-jelly"), fill="12 x 100 ml")
    assert batch.makes_in_full == "12 jars of 100 ml"
    assert batch.factor == 1  # 6 jars of 200 ml


@pytest.mark.parametrize("times", ["1/3", "2", "7"])
def test_what_is_filled_of_itself_is_what_would_be_asked_for(times: str) -> None:
    recipe = demo("quince-ratafia")
    batch = asked(recipe, times=times)
    words = facts("quince-ratafia", times=times)["Into"]
    again = asked(recipe, fill=words.split(";")[0])
    assert again.containers == batch.makes_ml // 100
    assert again.factor <= batch.factor < again.factor + Fraction(100, 1350)


def test_a_yield_that_may_fall_short_says_so() -> None:
    assert facts("quince-ratafia", fill="13 x 100 ml")["Into"].endswith("the last may not be full")
    assert facts("coffee-cacao-extract", fill="20 x 50 ml")["Into"].endswith(
        "the last few may not be full"
    )


@pytest.mark.parametrize("slug", ["quince-ratafia", "heather-mead", "double-vanilla-extract"])
def test_strength_does_not_grow_with_the_batch(slug: str) -> None:
    assert facts(slug)["Strength"] == facts(slug, times="4")["Strength"]


LEMONS = """---
title: A lemon spirit
kind: infusion
makes: 1 l
ingredients:
  - 1 l vodka, 40% vol
  - 6 lemons
containers: bottle, 50 ml
---

## Method

1. Steep.
"""


def test_a_whole_fruit_too_many_makes_it_weaker() -> None:
    """A twentieth asks for a third of a lemon; a half is taken, and its juice waters 50 ml."""
    recipe = read_recipe(LEMONS, "lemon.md", "lemon")
    batch = asked(recipe, times="1/20")
    assert batch.lines[1].amount_text == "½"
    texts = [
        {fact.name: fact.text for fact in facts_of_batch(recipe, one)}["Strength"]
        for one in (asked(recipe), batch)
    ]
    assert int(texts[1].split()[1]) < int(texts[0].split()[1])


def test_fold_follows_the_pods_that_are_taken() -> None:
    assert "2.06 units" in facts("double-vanilla-extract")["Vanilla"]
    assert "2.06 units" not in facts("double-vanilla-extract", times="1/10")["Vanilla"]


def test_what_a_size_means_is_said() -> None:
    recipe = demo("bitter-orange-spirit")
    into = {fact.name: fact.how for fact in facts_of_batch(recipe, asked(recipe))}["Into"]
    assert size_means() in into


def test_jars_known_by_their_brim_take_less() -> None:
    """Headspace as in test_bottling.py: a quarter of an inch, 16.3 ml of a 2 1/4 inch neck."""
    brim = asked(demo("bramble-jelly"), fill="6 jars of 200 ml to the brim")
    assert float(brim.factor) == pytest.approx((200 - 16.29) / 200, abs=1e-3)
    assert brim.makes_in_full == "6 jars of 200 ml to the brim"


@pytest.mark.parametrize(
    ("slug", "fill", "words"),
    [
        ("quince-ratafia", "6 x 100 ml to the brim", "Only the jars of a preserve"),
        ("bramble-jelly", "6 x 10 ml to the brim", "all headspace"),
    ],
)
def test_a_brim_that_cannot_be_reckoned(slug: str, fill: str, words: str) -> None:
    with pytest.raises(Unreadable, match=words):
        asked(demo(slug), fill=fill)


def test_a_craft_comes_to_nothing_that_is_poured() -> None:
    assert facts("felted-bauble") == {}
    assert facts("salted-honey-toffee") == {}  # its pieces fill no bag by the ml
