"""Drafts of a text in any language, and what tests ask of one: facts, list, steps, questions."""

from __future__ import annotations

from stillroom.bringing import BroughtRecipe, bring
from stillroom.core.larder.shelves import Larder
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
