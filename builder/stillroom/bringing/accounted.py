"""What of a paper stands in none of its recipes, and was not told to be left out: one question.

Leaves out what is plainly nobody's words, or of no recipe: sorting.py, and what was for one person,
which is told without being repeated: farewell.py, greetings.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import Final

from stillroom.bringing.doubted import quoted, some_of
from stillroom.bringing.found import Recipe, Row
from stillroom.bringing.head_rows import heads_method, is_head
from stillroom.bringing.heads import STEP_WORD, heads_comments, plain, section_of, words
from stillroom.bringing.known_work import words_of
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.page_figures import is_labelled_time
from stillroom.bringing.sorting import is_passed
from stillroom.bringing.titles import titled, writer_of
from stillroom.core.words.patterns import late_regex

# what was for one person is told, and not repeated; so is what stands above several
_TOLD: Final = late_regex(r"\b(?:letter|for one|to one person|above the first of several)\b")
_LABEL: Final = late_regex(rf"(?:{STEP_WORD}\s*\d|Reply\s?Delete)", re.IGNORECASE)
_CREDITS: Final = late_regex(r"(?:from|de|von|van|da|av|af|od)\b(?:\W+\w+){1,4}\W*$", re.I)
_RUN: Final = 3
"""Words that stand together in a recipe as they do in a row, where it is in it."""
_LEAST: Final = 3
_MOST_NAMED: Final = 4


def tell_lost(recipes: Sequence[Recipe], rows: Sequence[Row]) -> None:
    """Ask about rows of which nothing stands in any of the recipes, and nothing was told."""
    if any(_TOLD.search(what) for one in recipes for _, what, _ in one.doubts):
        return
    texts = [words_of(text) for one in recipes for text in _texts(one)]
    runs = {run for said in texts for run in _runs(said)}
    known = {word for said in texts for word in said}
    lost = [row.text for row in _of_a_recipe(rows) if _is_lost(row.text, runs, known)]
    if lost:
        named = some_of(list(map(quoted, lost)), _MOST_NAMED)
        what = f"Left out, as no known part of a recipe: {named}."
        recipes[0].doubt("title", what, "If a word of it belongs to one, write it there.")


def _texts(recipe: Recipe) -> Iterator[str]:
    yield from recipe.texts()
    yield recipe.address
    yield from (what for _, what, _ in recipe.doubts)


def _runs(said: Sequence[str]) -> Iterator[tuple[str, ...]]:
    yield from (tuple(said[at : at + _RUN]) for at in range(max(1, len(said) - _RUN + 1)))


def _of_a_recipe(rows: Iterable[Row]) -> Iterator[Row]:
    """Yield the rows that may be of a recipe: none below "Comments" or "More recipes"."""
    dropped = False
    for row in rows:
        if is_head(row) or heads_method(row) or heads_comments(row.text):
            dropped = plain(row.text) in words("dropped") or heads_comments(row.text)
        elif not (dropped or _is_read(row.text)):
            yield row


def _is_read(text: str) -> bool:
    """Whether a row says a fact, heads a part, or is a reader's own words below a page."""
    fact = (
        is_passed(text)
        or is_labelled_time(text)
        or is_only_makes(text)
        or writer_of(text)
        or _CREDITS.match(text)
    )
    return bool(fact or section_of(text) or _LABEL.match(text) or titled(text))


def _is_lost(text: str, runs: set[tuple[str, ...]], known: set[str]) -> bool:
    """Whether no words of a row stand together in a recipe, and few of them at all."""
    said = words_of(text)
    if len(said) < _LEAST or any(run in runs for run in _runs(said)):
        return False
    return sum(word in known for word in said) * 2 < len(said)
