"""Words of a recipe that would be HTML in a page are refused, and plain words are not."""

from __future__ import annotations

from pathlib import Path

import pytest

from markup_payloads import HARMLESS, PAYLOADS
from stillroom.core.reading.loading import load_recipe
from stillroom.core.reading.markup import check_markup, find_markup

FIELDS = {
    "title": ("title: Zest", "title: Zest {}"),
    "summary": ("summary: One.", "summary: One {}"),
    "author": ("author: A cook", "author: A cook {}"),
    "picture_alt": ("picture_alt: A jar", "picture_alt: A jar {}"),
    "ingredient": ("  - 200 g caster sugar", "  - 200 g caster sugar, sieved {}"),
    "card use": ("  use: On porridge.", "  use: On porridge {}"),
    "caution": ("  - Wash the fruit.", "  - Wash the fruit {}"),
    "intro": ("An old way.", "An old way {}"),
    "method": ("1. Stir {all of it}.", "1. Stir well {}"),
    "section": ("It clumps.", "It clumps {}"),
}
RECIPE = """---
title: Zest
kind: infused sugar
summary: One.
makes: 200 g
ingredients:
  - 200 g caster sugar
keeps: 1 year unopened
author: A cook
picture_alt: A jar
cautions:
  - Wash the fruit.
card:
  use: On porridge.
---

An old way.

## Method

1. Stir {all of it}.

## Notes

It clumps.
"""


@pytest.mark.parametrize("payload", PAYLOADS)
def test_what_would_run_or_fetch_is_found(payload: str) -> None:
    assert find_markup(f"Some words {payload} and more") is not None


@pytest.mark.parametrize("words", HARMLESS)
def test_plain_words_are_let_through(words: str) -> None:
    assert find_markup(words) is None


@pytest.mark.parametrize("field", FIELDS)
def test_it_is_told_at_its_line_in_every_field(tmp_path: Path, field: str) -> None:
    before, after = FIELDS[field]
    planted = after.replace("{}", "<img src=x onerror=pwned=1>")
    text = RECIPE.replace("{all of it}", "it").replace(before.replace("{all of it}", "it"), planted)
    assert text.count("onerror") == 1, field
    path = tmp_path / "zest.md"
    path.write_text(text, encoding="utf-8")
    problems = list(check_markup(load_recipe(path, "zest.md"), path))
    lines = {number for number, line in enumerate(text.splitlines(), 1) if "onerror" in line}
    assert {problem.line for problem in problems} == lines
    assert all("HTML" in problem.what for problem in problems)


def test_a_recipe_of_plain_words_has_no_such_problem(tmp_path: Path) -> None:
    path = tmp_path / "zest.md"
    path.write_text(RECIPE.replace("{all of it}", "it"), encoding="utf-8")
    assert list(check_markup(load_recipe(path, "zest.md"), path)) == []
