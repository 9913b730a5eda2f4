"""The safety box against what the sources ask, written down in golden/safety/cases.yml first."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from stillroom.core.book import BookSettings
from stillroom.core.loading import read_recipe
from stillroom.core.recipe import Recipe
from stillroom.core.safety import assess_safety
from stillroom.core.safety_rules import all_rules

CASES = yaml.safe_load((Path(__file__).parents[1] / "golden/safety/cases.yml").read_text("utf-8"))
GB = BookSettings()
_NOT_OF_THE_RECIPE = ("name", "source", "expect", "refuse", "absent", "method")


def recipe_of(case: dict[str, Any]) -> Recipe:
    front = {"title": "Something to give", "makes": "1 kg"}
    front |= {key: value for key, value in case.items() if key not in _NOT_OF_THE_RECIPE}
    steps = "\n".join(f"{place}. {step}" for place, step in enumerate(case["method"], 1))
    text = f"---\n{yaml.safe_dump(front)}---\n\n## Method\n\n{steps}\n"
    return read_recipe(text, "recipes/case.md", "case")


@pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])
def test_a_recipe_is_warned_of_as_the_source_asks(case: dict[str, Any]) -> None:
    box = assess_safety(recipe_of(case), GB)
    said = {caution.rule for caution in box.cautions}
    assert set(case.get("expect", ())) <= said, case["source"]
    assert {caution.rule for caution in box.refusals} == set(case["refuse"]), case["source"]
    assert not said & set(case.get("absent", ())), case["source"]
    for caution in (*box.cautions, *box.refusals):
        assert caution.because
        assert "{" not in caution.to_maker + caution.to_receiver + caution.because


def test_every_rule_of_the_table_has_a_case() -> None:
    tried = {rule for case in CASES for rule in (*case.get("expect", ()), *case["refuse"])}
    assert set(all_rules()) - tried == set()


def test_every_word_of_the_cases_is_a_rule() -> None:
    words = {
        rule
        for case in CASES
        for key in ("expect", "refuse", "absent")
        for rule in case.get(key, ())
    }
    assert words - set(all_rules()) == set()
