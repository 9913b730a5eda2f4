"""Recipes that are told in sentences: where each begins, and how much its title says it makes.

Leaves out what their sentences measure: prose.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from stillroom.bringing.bylines import first_told
from stillroom.bringing.found import List, Row
from stillroom.bringing.heads import plain, section_of, words
from stillroom.bringing.joining import joined
from stillroom.bringing.makes_said import makes_of
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.outside import is_one_of_foods
from stillroom.bringing.page_figures import is_leaf_number
from stillroom.bringing.prose import measured_in_prose, those_that_measure
from stillroom.bringing.sorting import is_sentence, is_title
from stillroom.bringing.titles import unstopped
from stillroom.core.lines.staple_table import staples_named

_COUNTED: Final = re.compile(r"(?:no|nr|n[°º]|№)\.?\s{0,2}\d{1,4}\s{0,2}[.:)]", re.IGNORECASE)
_TO_MAKE: Final = re.compile(r"to\s+make\s+(?:an?\s+)?(?=\w)", re.IGNORECASE)
_FOODS: Final = 2
"""Foods measured in sentences, from which on they may be a recipe's."""
_MOST_WORDS: Final = 8
_LONG_WORD: Final = 4


def told_apart(rows: Sequence[Row]) -> list[Sequence[Row]]:
    """Part recipes that are told in sentences, each below a title between two empty lines."""
    rows, named = _with_titles_bare(rows)
    begins = [
        at
        for at in range(len(rows) - 1)
        if rows[at].shape in ("heading", "line")
        and is_title(unstopped(rows[at].text))
        and (rows[at].gap or at == 0)
        and (rows[at + 1].gap or says_its_kind(rows[at].text) or at in named or _is_by(rows, at))
        and is_sentence(rows[first_told(rows, at)].text)
        and section_of(rows[at].text) is None
        and not is_one_of_foods(rows, at)
    ]
    counted = [at for at in begins if _COUNTED.match(rows[at].text)]
    begins = those_that_measure(begins, [row.text for row in rows])
    if len(counted) > 1:  # "No. 151. Currant Vinegar": "made in the same way"
        begins = sorted({*begins, *counted})
    if len(begins) < 2:
        return [rows]
    above = [0] if begins[0] else []  # the end of one whose beginning was not copied
    return [rows[begin:end] for begin, end in pairwise([*above, *begins, len(rows)])]


def _is_by(rows: Sequence[Row], at: int) -> bool:
    """Whether a title stands above whose recipe it is."""
    return first_told(rows, at) > at + 1


def told_behind(rows: Sequence[Row], found: List, end: int) -> list[int]:
    """Return where recipes told in sentences begin behind the method of one with a list.

    "Damson jelly" between two blank lines, and below it what is boiled of things that the list does
    not have. A part of the recipe above names its foods in its list.
    """
    listed = {food.name for at in found.rows for food in staples_named(rows[at].text)}
    begins = [at for at in range(found.end + 1, end - 1) if _heads_another(rows, at)]
    kept = []
    for at, below in pairwise([*begins, end]):
        things = measured_in_prose(row.text for row in joined(rows[at + 1 : below]))
        foods = {food.name for thing in things for food in staples_named(thing)}
        if len(things) >= _FOODS and foods - listed:
            kept.append(at)
    return kept


def _heads_another(rows: Sequence[Row], at: int) -> bool:
    """Whether a row amid a method names by its kind what the sentences below it make."""
    row, first = rows[at], first_told(rows, at)
    below = rows[first]
    apart = row.gap and (below.gap or row.shape == "heading")
    named = row.shape in ("line", "heading") and is_title(unstopped(row.text))
    if not (apart and named) or section_of(row.text) is not None or below.shape != "line":
        return False
    known = says_its_kind(unstopped(row.text)) or _is_by(rows, at)
    return known and is_sentence(joined(rows[first : first + 7])[0].text)


def _with_titles_bare(rows: Sequence[Row]) -> tuple[list[Row], set[int]]:
    """Return rows without pages' numbers and stops behind old books' titles; and those titles.

    "Spruce Beer." above its paragraph, where another such one stands on the sheet.
    """
    kept = [row for row in rows if not is_leaf_number(row.text)]
    named = {
        at
        for at, row in enumerate(kept[:-1])
        if row.gap and row.shape == "line" and _named_with_a_stop(row.text)
        if is_sentence(kept[at + 1].text) and (kept[at + 1].gap or row.indent or row.wraps)
    }
    if len(named) < 2:
        return kept, set()
    bare = [
        replace(row, text=_TO_MAKE.sub("", row.text.rstrip(". ")), shape="heading", level=1)
        if at in named
        else row
        for at, row in enumerate(kept)
    ]
    return bare, named


def _named_with_a_stop(text: str) -> bool:
    """Whether a few words with a stop are a name and nothing that is done: "Spruce Beer."."""
    bare = _TO_MAKE.sub("", text.strip()).removesuffix(".")
    said = bare.split()
    if not text.strip().endswith(".") or len(said) > _MOST_WORDS or not is_title(bare):
        return False
    long = [word for word in said if len(word) >= _LONG_WORD]
    capital = all(word[0].isupper() for word in long) and len(long) > 1
    return (capital or says_its_kind(bare)) and plain(said[0]) not in words("told_first")


def made_by_title(title: str) -> str:
    """Return how much a title says it makes: "Mead recipe for 1 gallon"."""
    found = re.search(
        r"\b(?:recipe|rezept|recette|ricetta|receta|recept)\s+\S+\s+\d.*", title, re.I
    )
    return makes_of(found[0]) if found else ""


def made_before(text: str) -> str:
    """Return how much the words that lead to a list say is made: "To make 1.5 kg mincemeat"."""
    so_many = re.search(r"\b(?:makes?|for|voor|für|pour|per|para)\s+\d.*", text, re.I)
    bare = (
        re.split(r",?\s+(?:you|il|man|heb|necesitas|occorrono)\b", so_many[0])[0] if so_many else ""
    )
    return makes_of(bare)
