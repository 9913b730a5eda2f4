"""What the page says of safety and of what is in a thing, from core.safety and core.labelling."""

from __future__ import annotations

from stillroom.core.book import BookSettings
from stillroom.core.recipe import Recipe


def list_free_from(recipe: Recipe, settings: BookSettings) -> tuple[str, ...]:
    """Return what a thing is known to be free from."""
    return ()


def say_free_from(name: str) -> str:
    """Return what stands after "free from"."""
    return name
