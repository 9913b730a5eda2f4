"""Recipes that are told in sentences: where each begins, and how much its title says it makes.

Leaves out what their sentences measure: prose.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from stillroom.bringing.found import Row
from stillroom.bringing.heads import section_of
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.prose import those_that_measure
from stillroom.bringing.sorting import is_sentence, is_title, makes_of
from stillroom.bringing.titles import unstopped


def told_apart(rows: Sequence[Row]) -> list[Sequence[Row]]:
    """Part recipes that are told in sentences, each below a title between two empty lines."""
    begins = [
        at
        for at in range(len(rows) - 1)
        if rows[at].shape in ("heading", "line")
        and is_title(unstopped(rows[at].text))
        and (rows[at].gap or at == 0)
        and (rows[at + 1].gap or says_its_kind(rows[at].text))
        and is_sentence(rows[at + 1].text)
        and section_of(rows[at].text) is None
    ]
    begins = those_that_measure(begins, [row.text for row in rows])
    if len(begins) < 2:
        return [rows]
    above = [0] if begins[0] else []  # the end of one whose beginning was not copied
    return [rows[begin:end] for begin, end in pairwise([*above, *begins, len(rows)])]


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
