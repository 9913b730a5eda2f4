"""How much a line says is made, taken into a recipe, with what else the line says.

Leaves out how such a line is known: makes_said.py.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.bringing.found import Recipe
from stillroom.bringing.makes_said import KEPT_TOO, MAKES, makes_of
from stillroom.bringing.sorting import is_passed
from stillroom.core.lines.staple_table import find_staple

_JOINING: Final = re.compile(r"^[\s,:.–-]*(?:and|which)?\s*", re.IGNORECASE)


def besides_makes(text: str) -> str:
    """Return what a line says beside how much the recipe makes: how long that keeps, or where.

    >>> besides_makes("Makes 36 pieces. Keeps 2 weeks in a tin.")
    'Keeps 2 weeks in a tin.'
    >>> besides_makes("Makes 4 (8 ounce) jars"), besides_makes("Serves 4 | Prep time: 20 minutes")
    ('', '')
    """
    found = MAKES.search(text)
    if not found:
        return ""
    kept = KEPT_TOO.search(text, found.start("said"), found.end())
    end = kept.start() if kept else found.end()
    rest = f"{text[: found.start()]}.{text[end:]}"
    parts = re.split(r"[.;!|]+(?=\s|[A-Z]|$)", rest)
    said = [_JOINING.sub("", part).strip(" ,*_()") for part in parts]
    told = [
        one
        for one in said
        if find_staple(one) or (len(one.split()) >= 3 and not is_passed(f"{one}:"))
    ]
    return " ".join(f"{one[:1].upper()}{one[1:]}." for one in told)


def take_makes(recipe: Recipe, text: str) -> None:
    """Take how much a line says is made, and what else it says as a note."""
    recipe.say_makes(makes_of(text))
    said = besides_makes(text)
    if find_staple(said.rstrip(".")):
        take_food(recipe, said.rstrip("."))
    elif said:
        recipe.notes.append(("Notes", [said]))


def take_food(recipe: Recipe, food: str) -> None:
    """Take a food that stands behind how much is made into the list, and ask about it."""
    recipe.ingredients.append(("", food))
    what = f'"{food}" stood behind how much it makes, and stands in the list now.'
    recipe.doubt("ingredients", what, "Look whether it goes in, and where.")
