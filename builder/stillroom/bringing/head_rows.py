"""Whether a row of a paper heads a part of a recipe: its list, its method, what stands beside.

Leaves out which words do: heads.py, words.yml.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import takewhile
from typing import Final

from stillroom.bringing.found import FARTHEST, Row
from stillroom.bringing.heads import plain, section_of, words
from stillroom.bringing.sorting import is_ingredient, is_title
from stillroom.core.lines.staple_table import staples_named

_SHOWN: Final = 6
_FOODS: Final = 2
"""Measured foods below a heading, from which on they are a list whatever heads them."""

_HOW_TO: Final = re.compile(
    r"(?:how\s+(?:to|i|we)\s+make|to\s+make|so\s+macht\s+man|cómo\s+(?:hacer|preparar|se\s+hace)|comment\s+(?:faire|préparer)"
    r"|come\s+(?:fare|preparare)|(?:hoe|zo)\s+maak\s+je|(?:preparing|making|using|feeding)\s+(?:the|your|it))"
    r"\s*(?:[^\W\d][\w'’-]*\s*){1,6}(?:,\s*(?:step\s+by\s+step|paso\s+a\s+paso|passo\s+(?:dopo|per)\s+passo"
    r"|étape\s+par\s+étape|stap\s+voor\s+stap))?:?",
    re.IGNORECASE,
)


def is_head(row: Row) -> bool:
    """Whether a row heads a part of a recipe."""
    if row.shape == "item":  # "- Instructions", where a page made items of all its lines
        return plain(row.text) in words("ingredients") | words("method")
    return row.shape in ("heading", "line") and section_of(row.text) is not None


def list_behind(rows: Sequence[Row], at: int) -> int:
    """Return the head of the ingredients behind what stands beside them; `at` where none follows.

    "Equipment", "Notes" or "Good to know" with lines of their own, above "Ingredients".
    """
    if not _heads_beside(rows, at):
        return at
    foods = 0
    for behind in range(at + 1, min(len(rows), at + FARTHEST)):
        row = rows[behind]
        section = section_of(row.text) if is_head(row) else None
        if section == "ingredients":
            return behind
        foods += _measures_food(row.text)
        if section == "method" or row.shape == "step" or foods >= _FOODS:
            return at
    return at


def _heads_beside(rows: Sequence[Row], at: int) -> bool:
    """Whether a row heads what is beside the list: by its words, or by bullets without amounts."""
    if is_head(rows[at]):
        return section_of(rows[at].text) == "aside"
    named = rows[at].shape in ("heading", "line") and is_title(rows[at].text)
    if not at or not named:
        return False
    below = [row.text for row in takewhile(_is_item, rows[at + 1 : at + 1 + _SHOWN])]
    return bool(below) and sum(map(is_ingredient, below)) * 2 < len(below)


def _is_item(row: Row) -> bool:
    return row.shape == "item"


def _measures_food(text: str) -> bool:
    return is_ingredient(text) and any("craft" not in food.tags for food in staples_named(text))


def is_a_recipe_head(text: str) -> bool:
    """Whether a line says "Recipe" and no more: behind a list it heads the method."""
    return plain(text) in ("recipe", "rezept", "recette", "ricetta", "receta", "recept")


def heads_method(row: Row) -> bool:
    """Whether a row heads a method behind a list in words of its own: "How to make plum gin"."""
    return row.shape in ("heading", "line") and bool(_HOW_TO.fullmatch(row.text.strip()))
