"""A number or an e-mail in a recipe is warned of at its line, by the check and by the build."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner

from stillroom.beginning.book import Answers, begin_book
from stillroom.cli import main
from stillroom.core.book import open_book
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.private_words import warn_of_contacts
from stillroom.publish.leaves import open_library
from stillroom.publish.listed import warnings

PLUM = """---
title: Plum jam
kind: preserve
makes: 5 jars of 250 ml
summary: {summary}
ingredients:
  - 1 kg plums
  - 800 g sugar
timeline:
  - make: 1 hour
---

{intro}

## Method

1. Boil {{plums}} with {{sugar}} at 104 C for 10-12 minutes.
2. {step}

## Notes

From the book of 1998, ISBN 978-0-14-118276-5.

{note}
"""
PLAIN = {"summary": "Good.", "intro": "Dark.", "step": "Fill jars.", "note": "Keep it dark."}


@pytest.mark.parametrize("place", PLAIN)
@pytest.mark.parametrize("said", ["07700 900123", "joan@vane.example"])
def test_it_is_named_at_its_line(place: str, said: str) -> None:
    text = PLUM.format(**PLAIN | {place: f"Ask Joan, {said}."})
    line = next(at for at, row in enumerate(text.split("\n"), 1) if said in row)
    (problem,) = warn_of_contacts(read_recipe(text, "plum-jam.md", "plum-jam"))
    assert (problem.file, problem.line) == ("plum-jam.md", line)
    assert said in problem.what


def test_a_recipe_with_figures_alone_is_not_warned_of() -> None:
    assert warn_of_contacts(read_recipe(PLUM.format(**PLAIN), "plum-jam.md", "plum-jam")) == ()


def test_check_and_build_warn(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    begin_book(tmp_path, Answers(title="Tried"))
    text = PLUM.format(**PLAIN | {"step": "Ring 07700 900123."})
    (tmp_path / "recipes" / "plum-jam.md").write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    done = CliRunner().invoke(main, ["check"])
    said = "recipes/plum-jam.md:18: A telephone number stands in the recipe"
    assert done.exit_code == 0
    assert f"warning: {said}" in done.stderr
    library = open_library(open_book(tmp_path / "mkdocs.yml"), date(2027, 1, 10))
    built = [str(one) for recipe in library.recipes for one in warnings(recipe, library)]
    assert [one.startswith(said) for one in built] == [True]
