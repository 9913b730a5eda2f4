"""What a letter says to one person between its recipe and its farewell: "Call me tonight".

A sentence stays where something is done, measured or kept in it, or a food is named and nobody's
day. Leaves out what stands above the recipe: greetings.py, and the farewell: farewell.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from typing import Final

from stillroom.bringing.accents import without_accents
from stillroom.bringing.found import Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.heads import SENTENCE_ENDS, section_of, words
from stillroom.bringing.known_work import (
    TONGUES,
    is_work,
    small_words,
    tongues_of,
    vessels,
    words_of,
)
from stillroom.bringing.makes_said import makes_of
from stillroom.bringing.one_line import foods_named
from stillroom.bringing.said_to_one import MEASURED
from stillroom.bringing.sorting import begins_with_amount, is_ingredient, is_told
from stillroom.core.method.keeping_said import may_say_keeping
from stillroom.core.words.patterns import late_regex

_I: Final = late_regex(r"\bI(?:['’](?:m|ve|d|ll))?\b")
# "on the 14th", "am 14.", "le 14", "den 14"
_DATE: Final = late_regex(
    r"\b(?:on the|am|le|el|il|den|op|dia)\s\d{1,2}(?:st|nd|rd|th|\.)?(?=[\s,.!?]|$)", re.IGNORECASE
)
_OVER_NIGHT: Final = late_regex(
    r"\b(?:overnight|über nacht|toute la nuit|une nuit|tutta la notte"
    r"|toda la noche|över natten|een nacht|natten over)\b",
    re.IGNORECASE,
)
_NO_SIGN: Final = frozenset({"salt", "water", "cardoon"})
"""Foods whose names in one language are everyday words of others: "sale", "eau", "card"."""
_LEAST_WORD: Final = 4
"""Letters of a word of the list by which a sentence speaks of it."""


def without_private_end(rows: Sequence[Row]) -> tuple[tuple[Row, ...], bool]:
    """Return the rows of a letter without what is said to one behind its recipe; whether any was.

    Behind numbered steps whatever speaks of nothing of the recipe is the letter's.

    >>> letter = [Row("1 kg plums", "item"), Row("Boil the plums.", "step")]
    >>> told = [Row("Call me tonight. It is good on toast.", gap=True), Row("Tom lost his job.")]
    >>> [row.text for row in without_private_end([*letter, *told])[0]]
    ['1 kg plums', 'Boil the plums.', 'It is good on toast.']
    """
    first, numbered = _behind_list(rows)
    tongues = tongues_of([row.text for row in rows]) or TONGUES
    listed = frozenset(word for row in rows[:first] for word in words_of(row.text))
    listed = frozenset(word for word in listed if len(word) >= _LEAST_WORD) - small_words(tongues)
    kept = list(rows)
    while len(kept) > first and kept[-1].shape == "line" and section_of(kept[-1].text) is None:
        told = SENTENCE_ENDS.split(kept[-1].text.strip())
        of_recipe = [one for one in told if is_of_recipe(one, tongues, listed)]
        others = [one for one in told if one not in of_recipe]
        if not others or not (numbered or any(map(_is_private, others))):
            break
        if of_recipe:  # what is said beside them is the letter's
            kept[-1] = replace(kept[-1], text=" ".join(of_recipe))
            break
        kept.pop()
    return tuple(kept), kept != list(rows)


def _behind_list(rows: Sequence[Row]) -> tuple[int, bool]:
    """Return the row behind the list and one step at the least; whether those have numbers."""
    of_list = (
        at
        for at, row in enumerate(rows)
        if is_head(row)
        or row.shape in ("item", "step", "row", "sizes", "heading")
        or (is_ingredient(row.text) and begins_with_amount(row.text))
    )
    last = max(of_list, default=len(rows))
    steps = last < len(rows) and rows[last].shape == "step"
    return last + (1 if steps else 2), steps


def is_of_recipe(sentence: str, tongues: Sequence[str], listed: frozenset[str]) -> bool:
    """Whether a sentence does, measures or keeps something, or speaks of what is made."""
    if may_say_keeping(sentence) or MEASURED.search(sentence) or makes_of(sentence):
        return True
    said = frozenset(words_of(sentence))
    if is_day(sentence) or said & _known("calls_up"):
        return False
    if said & (listed | _known("of_the_thing")):
        return True
    named = said & vessels() or _eaten(sentence) or _OVER_NIGHT.search(sentence)
    return bool(named) or is_told(sentence) or is_work(sentence, tongues, listed)


def _eaten(sentence: str) -> bool:
    """Whether a sentence names a food; "Papa" is somebody, and potatoes in Spanish."""
    bare = " ".join(one for one in sentence.split() if not frozenset(words_of(one)) & _known("kin"))
    return bool(foods_named(bare) - _NO_SIGN)


def _is_private(sentence: str) -> bool:
    """Whether a sentence speaks of somebody, or of a day of hers."""
    said = frozenset(words_of(sentence))
    persons = _known("to_one") | _known("of_oneself") | _known("kin") | _known("calls_up")
    return bool(said & persons or _I.search(sentence)) or is_day(sentence)


def is_day(sentence: str) -> bool:
    """Whether a sentence names a day, or a date of a month."""
    return bool(frozenset(words_of(sentence)) & _known("day_words") or _DATE.search(sentence))


@cache
def _known(which: str) -> frozenset[str]:
    return frozenset(map(without_accents, words(which)))
