"""Notes as they are typed into a telephone: title, amounts and what is done, one short line each.

Without heads and without stops nothing but the words tells where a list ends: known_work.py. Made
into rows with heads, as papers have them that say them.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from stillroom.bringing.accents import without_accents
from stillroom.bringing.found import Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.heads import section_of
from stillroom.bringing.known_work import TONGUES, is_work, tongues_of
from stillroom.bringing.makes_said import is_only_makes, makes_of
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.one_line import foods_named, names_a_food
from stillroom.bringing.sorting import is_ingredient
from stillroom.core.words.patterns import late_regex

_MOST_OF_A_TITLE: Final = 8
_MOST_OF_A_LINE: Final = 14
_MOST_OF_A_THING: Final = 4
_LEAST_LISTED: Final = 2
_RUNS_ON: Final = late_regex(r"[.!?]\s+[^\W\d_]")
"""A sentence begins amid a line: a machine broke the lines off, and none is a step of its own."""


def with_notes_told(rows: Sequence[Row]) -> list[Row]:
    """Return the rows of short notes with their titles, lists and methods as such; others stay.

    >>> typed = ["damson gin", "500g damsons", "70cl gin", "shake daily", "strain and bottle"]
    >>> notes = [Row(one, gap=at == 0) for at, one in enumerate(typed)]
    >>> [row.shape for row in with_notes_told(notes)]
    ['heading', 'item', 'item', 'heading', 'step', 'step']
    """
    if any(row.shape != "line" or _is_part(row) for row in rows) or not rows:
        return list(rows)
    tongues = tongues_of([row.text for row in rows]) or TONGUES
    begins = [at for at in range(len(rows) - 1) if _is_title(rows, at, tongues)]
    found = list(rows[: begins[0]] if begins else rows)
    for begin, end in pairwise([*begins, len(rows)]):
        told = _told(rows[begin:end], tongues)
        if not told:
            return list(rows)
        found += told
    return found


def _is_part(row: Row) -> bool:
    return is_head(row) or section_of(row.text) in ("ingredients", "method")


def _is_title(rows: Sequence[Row], at: int, tongues: Sequence[str]) -> bool:
    """Whether a row is a name above amounts: the first of the sheet, or below an empty line."""
    text = rows[at].text
    free = (at == 0 or rows[at].gap) and len(text.split()) <= _MOST_OF_A_TITLE
    named = free and not (is_ingredient(text) or is_only_makes(text) or text.endswith((".", ":")))
    begins = named and is_ingredient(rows[at + 1].text)
    return begins and (says_its_kind(text) or not is_work(text, tongues))


def _is_listed(text: str, tongues: Sequence[str]) -> bool:
    """Whether a line is a thing of a list: an amount, or a food alone."""
    few = len(text.split()) <= _MOST_OF_A_THING
    eaten = few and bool(foods_named(text)) and names_a_food(text)
    return eaten or (is_ingredient(text) and not is_work(text, tongues))


def _told(rows: Sequence[Row], tongues: Sequence[str]) -> list[Row]:
    """Return one note as title, list and method; [] for one that is not typed so."""
    end = 1
    while end < len(rows) and _is_listed(rows[end].text, tongues):
        end += 1
    listed, done = rows[1:end], rows[end:]
    short = all(len(row.text.split()) <= _MOST_OF_A_LINE for row in done)
    short = short and not any(_RUNS_ON.search(row.text) for row in done)
    stops = any(row.text.endswith(".") for row in done)
    amid = any(is_ingredient(row.text) and not is_work(row.text, tongues) for row in done)
    if len(listed) < _LEAST_LISTED or not done or not short or amid or stops:
        return []
    named = frozenset(word for row in listed for word in without_accents(row.text).split())
    if not is_work(done[0].text, tongues, named):
        return []
    return [
        replace(rows[0], shape="heading", level=1),
        *(replace(row, shape="item") for row in listed),
        Row("Method", "heading", 6),
        *_steps(done),
    ]


def _steps(done: Sequence[Row]) -> list[Row]:
    """Return what is done as steps; a line that says how much it makes is none."""
    found: list[Row] = []
    for row in done:
        above = found[-1] if found else None
        if above and above.shape == "step" and above.text.endswith(","):
            found[-1] = replace(above, text=f"{above.text} {row.text}")
        elif makes_of(row.text):
            found.append(replace(row, gap=True, wraps=False))
        else:
            found.append(replace(row, shape="step", gap=False, wraps=False))
    return found
