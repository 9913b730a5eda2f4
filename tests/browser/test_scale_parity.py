"""One truth: Python and a real Chromium give the same amounts, words and warnings, to the digit."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser

from scale_table import BROWSER_ANSWERS, answer, questions
from stillroom.core.reading.loading import load_recipe, read_recipe
from stillroom.core.size.scaling_data import scaling_data, shared_data

from .conftest import serve_folder

ROOT = Path(__file__).resolve().parents[2]
SCRIPTS = ROOT / "builder" / "stillroom" / "publish" / "assets"
FIXED = json.loads((ROOT / "tests" / "data" / "scale_cases.json").read_text(encoding="utf-8"))
DEMO = {
    recipe.slug: recipe
    for recipe in (load_recipe(path) for path in sorted((ROOT / "recipes").glob("*.md")))
}


def ask_browser(browser: Browser, recipes: list[Any], asked: list[dict[str, str]]) -> Any:
    """Open one page and put every question to its engine at once."""
    page = browser.new_page()
    page.goto(f"{serve_folder(SCRIPTS)}/js/amounts/fraction.js")
    question = {
        "base": f"{serve_folder(SCRIPTS)}/js",
        "shared": shared_data(),
        "recipes": [scaling_data(recipe) for recipe in recipes],
        "questions": asked,
    }
    found = page.evaluate(BROWSER_ANSWERS, question)
    page.close()
    return found


def test_generated_table_agrees(browser: Browser) -> None:
    asked = list(questions(list(DEMO.values())))
    assert len(asked) >= 5000
    expected = [answer(DEMO[question["recipe"]], question) for question in asked]
    shown = ask_browser(browser, list(DEMO.values()), asked)
    differing = [
        (question, python, chromium)
        for question, python, chromium in zip(asked, expected, shown, strict=True)
        if python != chromium
    ]
    assert differing == []
    refused = sum("refused" in found for found in expected)
    assert refused < len(asked) / 3, "most questions must be answered, or the table says little"


@pytest.fixture(scope="module")
def fixed_recipes() -> dict[str, Any]:
    return {slug: read_recipe(text, slug, slug) for slug, text in FIXED["recipes"].items()}


def test_fixed_cases_hold_in_python(fixed_recipes: dict[str, Any]) -> None:
    assert len(FIXED["cases"]) >= 200
    for case in FIXED["cases"]:
        asked = case["asked"]
        assert answer(fixed_recipes[asked["recipe"]], asked) == case["answer"], asked


def test_fixed_cases_hold_in_chromium(browser: Browser, fixed_recipes: dict[str, Any]) -> None:
    asked = [case["asked"] for case in FIXED["cases"]]
    shown = ask_browser(browser, list(fixed_recipes.values()), asked)
    for case, found in zip(FIXED["cases"], shown, strict=True):
        assert found == case["answer"], case["asked"]
