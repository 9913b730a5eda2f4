"""A recipe made in stages, each with a list of its own and what is done with it below.

"STEP #1", "Day 4", "For the jelly:", "Topping". Told by what stands right above a list that follows
a method: the list is a part of the recipe's, and the words head that part of the method too. Leaves
out the parts of one list: list_parts.py; and where a list begins: lists.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

from stillroom.bringing.found import List, Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.heads import plain, section_of, words
from stillroom.bringing.known_work import is_plainly_work, words_of
from stillroom.bringing.list_parts import FOR_A_PART, heads_stage, is_part_alone
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.sorting import is_ingredient, is_sentence
from stillroom.bringing.titles import part_of

_MOST_OF_A_HEAD: Final = 6
_LEAST_STEM: Final = 4
# "In a saucepan combine:", "Add:", "Mix together and add": what is done with what stands below it
_LEADS: Final = re.compile(
    r"(?:.*\s)?(?:add|combine|mix|blend|cream|beat|stir in|mix in|fold in|together|mit|hinzufügen"
    r"|mischen|ajouter|ajoutez|mélanger|mélangez|aggiungere|mescolare|añadir|mezclar|toevoegen|mengen|of)\s*:?",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class Stage:
    """A list amid a method: its rows, the row that heads it or leads to it, whether for sure."""

    rows: tuple[int, ...]
    head: int | None = None
    lead: int | None = None
    plainly: bool = False


def stage_above(rows: Sequence[Row], begin: int, behind: int = 0) -> int | None:
    """Return the row that heads a list as a stage, "Ingredients" between them or none."""
    at = begin - 1
    while at > behind and is_head(rows[at]) and section_of(rows[at].text) == "ingredients":
        at -= 1
    return at if at >= behind and names_stage(rows[at]) else None


def names_stage(row: Row) -> bool:
    """Whether words by themselves name a stage: "Day 4", "For the jelly", "Topping"."""
    named = heads_stage(row) or FOR_A_PART.match(row.text.strip(" :")) is not None
    if row.shape not in ("line", "heading") or len(row.text.split()) > _MOST_OF_A_HEAD + 2:
        return False
    return named or is_part_alone(replace(row, shape="heading"))


def is_stage_of(rows: Sequence[Row], above: List, title: int, end: int) -> bool:
    """Whether what seems the title of a list names a part of the recipe above it: "Butter icing".

    Its last word is a part's, and the recipe above speaks of that, or it of what that one makes.
    """
    said = plain(rows[title].text).split()
    if not said or said[-1] not in words("parts") or len(said) > _MOST_OF_A_HEAD:
        return False
    over = [row for row in rows[: above.begin] if row.text]
    whole = plain(over[0].text).split() if over else []
    if not whole or whole[-1] in words("parts") - {"biscuits", "cookies", "cake"}:
        return False  # a sheet of several icings
    told = _words(rows[above.end : title])
    below = _words(rows[title + 1 : end])
    return _speaks_of(said[-1], told) or _speaks_of(whole[-1], {*said[:-1], *below})


def _words(rows: Sequence[Row]) -> set[str]:
    return {word for row in rows for word in words_of(row.text)}


def _speaks_of(word: str, said: set[str]) -> bool:
    """Whether some words have one in another form: "frosting", "frost"."""
    stem = word.removesuffix("ing").removesuffix("s")
    forms = len(stem) >= _LEAST_STEM - 1
    return word in said or any(
        forms and one.startswith(stem) and len(one) - len(stem) <= _LEAST_STEM for one in said
    )


def stages_of(rows: Sequence[Row], found: List) -> list[Stage]:
    """Return the lists that stand amid the method of one, each with what stands above it."""
    begins = [at for one, at in pairwise([-2, *found.later]) if at != one + 1]
    runs = [
        tuple(at for at in found.later if begin <= at and (end is None or at < end))
        for begin, end in pairwise([*begins, None])
        if begin is not None
    ]
    return [_stage(rows, found, run) for run in runs]


def _stage(rows: Sequence[Row], found: List, run: tuple[int, ...]) -> Stage:
    first = run[0] - 1 if is_head(rows[run[0]]) else run[0]
    at = run[0] - 1
    while at > found.end and is_head(rows[at]) and section_of(rows[at].text) == "ingredients":
        if part_of(rows[at].text):
            return Stage(run, head=at, plainly=True)
        at -= 1
    over = rows[at] if at >= found.end else Row("")
    if names_stage(over):
        alone = over.gap or over.shape == "heading" or over.text.rstrip().endswith(":")
        return Stage(run, head=at, plainly=alone or heads_stage(over))
    if not over.text or is_ingredient(over.text) or is_only_makes(over.text):
        return Stage(run)
    text = over.text.strip()
    few = len(text.split()) <= _MOST_OF_A_HEAD and over.shape in ("line", "heading")
    said = plain(text).split()
    mixture = said[-1:] == ["mix"] and said[0] not in words("told_first")  # "Frosting mix:"
    if text.endswith(":") and not mixture and (_LEADS.fullmatch(text) or is_plainly_work(text)):
        return Stage(run, lead=at, plainly=first == run[0])
    if is_sentence(text) or not few or is_plainly_work(text):
        return Stage(run)
    part = is_named(said[:-1] if mixture else said)
    headed = over.shape == "heading" or text.endswith(":") or part
    sure = part and (text.endswith(":") or over.shape == "heading")
    return Stage(run, head=at if headed else None, plainly=sure)


def is_named(said: Sequence[str]) -> bool:
    """Whether words end with that of a part: "No cook filling"."""
    return bool(said) and said[-1] in words("parts")


def heads_first_stage(rows: Sequence[Row], found: List, at: int) -> bool:
    """Whether a row above a list heads the first stage, as others head those below: "Crust:"."""
    row = rows[at]
    few = row.shape in ("line", "heading") and len(row.text.split()) <= _MOST_OF_A_HEAD
    if not few or is_only_makes(row.text) or is_head(row):
        return False
    if names_stage(row) and row.text.rstrip().endswith(":"):
        return True
    if all(one.head is None for one in stages_of(rows, found)):
        return False
    named = names_stage(row) or is_named(plain(row.text).split())
    return named or (row.text.rstrip().endswith(":") and not is_plainly_work(row.text))
