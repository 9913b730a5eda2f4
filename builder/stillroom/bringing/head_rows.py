"""Whether a row of a paper heads a part of a recipe: its list, its method, what stands beside.

Leaves out which words do: heads.py, words.yml.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.heads import heads_tools, plain, section_of, words

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


def tools_end(rows: Sequence[Row], at: int) -> int:
    """Return the head of the ingredients that follows a head of tools at `at`; `at` for none."""
    if not is_head(rows[at]) or not heads_tools(rows[at].text):
        return at
    behind = next((one for one in range(at + 1, len(rows)) if is_head(rows[one])), at)
    return behind if section_of(rows[behind].text) == "ingredients" else at


def is_a_recipe_head(text: str) -> bool:
    """Whether a line says "Recipe" and no more: behind a list it heads the method."""
    return plain(text) in ("recipe", "rezept", "recette", "ricetta", "receta", "recept")


def heads_method(row: Row) -> bool:
    """Whether a row heads a method behind a list in words of its own: "How to make plum gin"."""
    return row.shape in ("heading", "line") and bool(_HOW_TO.fullmatch(row.text.strip()))
