"""Drafts of a text in any language, and what tests ask of one: facts, list, steps, questions."""

from __future__ import annotations

import re

from stillroom.bringing import BroughtRecipe, bring
from stillroom.core.larder.shelves import Larder
from stillroom.core.reading.recipe_file import read_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.recipe.settings import BookSettings


def brought(text: str, language: str = "en_GB", name: str = "a.txt") -> tuple[BroughtRecipe, ...]:
    """Return the drafts of a text, as a book of a language reads it."""
    settings = BookSettings(language=language)
    return bring(name, text.encode(), settings, Larder(language=language)).recipes


def fact(recipe: BroughtRecipe, name: str) -> str:
    """Return what a draft says of one fact."""
    rows = recipe.text.split("\n---\n")[0].split("\n")
    return next((row.partition(": ")[2] for row in rows if row.startswith(f"{name}:")), "")


def listed(recipe: BroughtRecipe) -> list[str]:
    """Return the lines of the list, heads among them."""
    front = recipe.text.split("\n---\n")[0]
    return [row.strip()[2:].strip('"') for row in front.split("\n") if row.strip()[:2] == "- "]


def steps(recipe: BroughtRecipe) -> list[str]:
    """Return the steps without their numbers, up to the next part."""
    method = recipe.text.split("## Method\n")[1].split("\n## ")[0]
    rows = [row for row in method.split("\n") if row and row[0].isdigit()]
    return [row.partition(". ")[2] for row in rows]


def asked(recipe: BroughtRecipe) -> str:
    """Return all that is asked of a draft."""
    return " ".join(one.what for one in recipe.questions)


def one_of(name: str, data: bytes) -> BroughtRecipe:
    """Return the only draft of a file, as a book in English reads it."""
    found = bring(name, data, BookSettings())
    assert found.problems == ()
    (recipe,) = found.recipes
    return recipe


def read(brought: BroughtRecipe) -> Recipe:
    """Return a draft as the book reads it."""
    return read_recipe(brought.text, "x.md", brought.slug)


def list_of(text: str) -> list[str]:
    """Return the lines of the list of a text's only draft, without their questions."""
    block = one_of("a.txt", text.encode()).text.partition("ingredients:\n")[2].partition("\n---")[0]
    rows = [row.strip().removeprefix("- ") for row in block.split("\n")]
    return [row for row in rows if row and not row.startswith(("# ?", "units:", "author:"))]


def steps_of(text: str) -> list[str]:
    """Return the numbered lines below a draft's method."""
    return re.findall(r"^\d+\. (.*)$", text.partition("## Method")[2], re.MULTILINE)
