"""Plants of a craft's table in what is eaten: nobody said which they are, nor that they may be."""

from __future__ import annotations

import pytest

from stillroom.core.reading.loading import read_recipe
from stillroom.core.unknown_foods import unknown_foods

TEXT = (
    "---\ntitle: Mix\nkind: {kind}\nmakes: 2 jars of 200 ml\n{list}:\n  - 100 g black tea\n"
    "  - 10 g {thing}\n---\n\n## Method\n\n1. Mix and fill jars.\n"
)


def unknown(kind: str, thing: str) -> list[str]:
    named = "materials" if kind == "craft" else "ingredients"
    text = TEXT.format(kind=kind, thing=thing, list=named)
    return [food.words for food in unknown_foods((read_recipe(text, "a.md", "a", "metric"),))]


@pytest.mark.parametrize("thing", ["dried flowers", "moss", "pine cones", "fir branches"])
def test_in_food_they_are_not_known_and_in_a_craft_they_are(thing: str) -> None:
    assert unknown("dry mix", thing) == [thing]
    assert unknown("craft", thing) == []


@pytest.mark.parametrize("thing", ["dried rose petals", "beeswax", "twine"])
def test_what_is_said_by_name_or_is_no_plant_stays_known(thing: str) -> None:
    assert unknown("dry mix", thing) == []
