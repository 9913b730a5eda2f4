"""Whether a row of a paper heads a part of a recipe: its list, its method, what stands beside.

Leaves out which words do: heads.py, words.yml.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import takewhile
from typing import Final

from stillroom.bringing.found import FARTHEST, Row
from stillroom.bringing.heads import plain, section_of, words
from stillroom.bringing.one_line import foods_named
from stillroom.bringing.sorting import is_ingredient, is_title
from stillroom.bringing.titles import RECIPE_WORD

_SHOWN: Final = 6
# "Cómo elaborar la receta de Polvorones:", "So werden die Kekse gemacht:"
_HOW: Final = re.compile(
    r"(?:and\s+|und\s+)?(?:how|wie|so|come|cómo|como|comment|voici\s+comment|hoe|zo|hur|så|hvordan|sådan|slik|jak|hogyan|miten)\s+"
    r"(?:[^\W\d][\w'’-]*\s*){2,9}:",
    re.IGNORECASE,
)
_MOST_OF_A_PART: Final = 4
_LEAST_OF_A_TITLE: Final = 3
_LEAST_PARTS: Final = 2
"""Words that stand both in a list and in its method, from which on they are the parts of both."""
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
    return is_ingredient(text) and bool(foods_named(text))


def says_title(row: Row, title: str) -> bool:
    """Whether a line below a list is the title again, or some words at its end.

    >>> says_title(Row("Great Grandma's Fudge"), "Essay: Great Grandma's Fudge")
    True
    >>> says_title(Row("Fudge"), "Great Grandma's Fudge"), says_title(Row("Boil."), "Fudge")
    (False, False)
    """
    said, whole = plain(row.text), plain(title)
    last = len(said.split()) >= _LEAST_OF_A_TITLE and whole.endswith(f" {said}")
    return row.shape == "line" and bool(said) and (said == whole or last)


def is_a_recipe_head(text: str) -> bool:
    """Whether a line says "Recipe" and no more: behind a list it heads the method."""
    plural = r"(?:s|[ae]?n|er?)?|ricette"  # "Recettes", alone above what is done
    return bool(re.fullmatch(rf"{RECIPE_WORD}{plural}", plain(text)))


def heads_method(row: Row) -> bool:
    """Whether a row heads a method behind a list in words of its own: "How to make plum gin"."""
    text = row.text.strip()
    return row.shape in ("heading", "line") and bool(
        _HOW_TO.fullmatch(text) or _HOW.fullmatch(text)
    )


def with_parts_named_twice(rows: Sequence[Row], listed: Sequence[int], end: int) -> list[Row]:
    """Return rows with the words that head the same parts of a list and of its method as headings.

    "Biscuit" and "Ganache" alone on a line, in the list and again among the steps below it.

    >>> text = ("Dough", "1 lb flour", "Icing", "1 lb sugar", "Dough", "Knead.", "Icing", "Beat.")
    >>> rows = with_parts_named_twice([Row(one) for one in text], range(4), 8)
    >>> [row.text for row in rows if row.shape == "heading"]
    ['Dough', 'Icing', 'Dough', 'Icing']
    """
    if not listed:
        return list(rows)
    above = [at for at in listed if _may_name_a_part(rows, at)]
    below = [at for at in range(max(listed) + 1, end) if _may_name_a_part(rows, at)]
    twice = {plain(rows[at].text) for at in above} & {plain(rows[at].text) for at in below}
    if len(twice) < _LEAST_PARTS:
        return list(rows)
    heads = {at for at in (*above, *below) if plain(rows[at].text) in twice}
    return [
        replace(row, shape="heading", level=6) if at in heads else row
        for at, row in enumerate(rows)
    ]


def _may_name_a_part(rows: Sequence[Row], at: int) -> bool:
    """Whether a few words without an amount or a stop stand above something."""
    row = rows[at]
    few = row.shape in ("line", "item", "heading") and len(row.text.split()) <= _MOST_OF_A_PART
    bare = row.text[:1].isalpha() and not re.search(r"[\d½¼¾.!?;,]", row.text)
    below = rows[at + 1 : at + 2]
    return few and bare and section_of(row.text) is None and bool(below) and not below[0].gap
