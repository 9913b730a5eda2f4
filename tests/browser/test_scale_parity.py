"""One truth: Python and a real Chromium give the same amounts, words and warnings, to the digit."""

from __future__ import annotations

from pathlib import Path
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser

from sampling import share
from scale_table import BROWSER_ANSWERS, answer, own_recipes, questions
from stillroom.core.reading.loading import load_recipe
from stillroom.core.size.scaling_data import scaling_data, shared_data

ROOT = Path(__file__).resolve().parents[2]
DEMO = [load_recipe(path) for path in sorted((ROOT / "recipes").glob("*.md"))]


def ask_browser(
    browser: Browser, address: str, recipes: list[Any], asked: list[dict[str, str]]
) -> Any:
    """Open one page and put every question to its engine at once."""
    page = browser.new_page()
    page.goto(f"{address}/js/amounts/fraction.js")
    question = {
        "base": f"{address}/js",
        "shared": shared_data(),
        "recipes": [scaling_data(recipe) for recipe in recipes],
        "questions": asked,
    }
    found = page.evaluate(BROWSER_ANSWERS, question)
    page.close()
    return found


@pytest.mark.sampled
def test_python_and_chromium_answer_alike(browser: Browser, scripts_address: str) -> None:
    recipes = [*own_recipes(), *DEMO]
    asked = list(questions(recipes))
    assert len(asked) >= 6000
    asked = Random(2026).sample(asked, share(1000, len(asked)))
    by_slug = {recipe.slug: recipe for recipe in recipes}
    expected = [answer(by_slug[question["recipe"]], question) for question in asked]
    shown = ask_browser(browser, scripts_address, recipes, asked)
    differing = [
        (question, python, chromium)
        for question, python, chromium in zip(asked, expected, shown, strict=True)
        if python != chromium
    ]
    assert differing == []
    refusals = [found["refused"] for found in expected if "refused" in found]
    assert len(refusals) < len(asked) / 2, "many must be answered, or the table says little"
    assert len(set(refusals)) >= 50, "refusals of many kinds, each by the same words"
