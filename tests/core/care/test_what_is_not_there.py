"""What pages of strangers made the book say that was not so: a food that is none, heat of nothing.

The cases are recipes read on 30 November 2026, each page named in what_is_not_there.yml, the
expectation fixed before the book was asked; beside each stands one where the same words do mean it.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe
from stillroom.core.words.plain_yaml import read_plain

BOOK = BookSettings()
CASES = read_plain(Path(__file__).with_name("what_is_not_there.yml").read_text("utf-8"))
MIX = ["200 g plain flour", "1 tsp baking powder", "100 g brown sugar", "100 g oats"]


def _contents(title: str, kind: str, lines: list[str], *steps: str) -> str:
    recipe = recipe_of({"title": title, "kind": kind, "ingredients": lines, "method": list(steps)})
    return " | ".join(one.whole for one in label_recipe(recipe, BOOK).contents).casefold()


def _said(title: str, kind: str, lines: list[str], *steps: str) -> set[str]:
    recipe = recipe_of({"title": title, "kind": kind, "ingredients": lines, "method": list(steps)})
    box = assess_safety(recipe, BOOK)
    return {one.rule for one in (*box.cautions, *box.refusals)}


@pytest.mark.parametrize(
    ("title", "kind", "lines", "method", "there", "not_there"), CASES["contents"]
)
def test_what_is_made_is_no_part_of_itself(
    title: str, kind: str, lines: list[str], method: str, there: str, not_there: str
) -> None:
    found = _contents(title, kind, lines, method)
    assert there in found
    assert not (not_there and not_there in found)


@pytest.mark.parametrize("steps", CASES["handed_on"])
def test_directions_handed_on_are_not_the_makers(steps: list[str]) -> None:
    found = _contents("Cookie mix in a jar", "dry mix", MIX, "Layer it all in a jar.", *steps)
    assert "butter" not in found
    assert "egg" not in found


def test_what_goes_in_before_the_jar_is_closed_does() -> None:
    step = "Toast the oats in 20 g butter and let them cool, then layer in the jar."
    assert "butter (" in _contents("Cookie mix in a jar", "dry mix", MIX, "Mix the rest.", step)


@pytest.mark.parametrize(("rule", "speaks", "kind", "lines", "steps"), CASES["rules"])
def test_a_rule_speaks_of_what_is_done(
    rule: str, speaks: bool, kind: str, lines: list[str], steps: list[str]
) -> None:
    assert (rule in _said("Something", kind, lines, *steps)) is speaks


@pytest.mark.parametrize(("lines", "speaks"), [(["200 ml epoxy resin"], False), ([], True)])
def test_flowers_in_resin_do_not_catch_fire(lines: list[str], speaks: bool) -> None:
    """tongyitangusa.com, Flowers in epoxy resin."""
    found = _said("Flowers for a wreath", "craft", ["1 handful dried flowers", *lines], "Lay them.")
    assert ("dry-decoration" in found) is speaks
