"""Allergens told in languages that the larder does not speak: "hakkede hasselnødder".

What holds such a word is never known by it: it says only what must not be called free of it. Leaves
out the foods that the larder does know, in whichever language: shelves.py.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator, Sequence
from functools import cache
from itertools import accumulate
from typing import Final

from stillroom.core.larder.data import read_larder_data
from stillroom.core.larder.phrases import Words
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import letters_of, normal_form
from stillroom.core.words.patterns import late_regex

FILE: Final = "allergen_words.yml"
_SURE: Final = 5
"""Letters from which on a word counts in a note too, beside a food that is known."""
_SPOKEN = frozenset({"en", "de", "fr", "es", "it", "nl", "sv"})
"""In these a short word of another language may be a word of theirs: Polish "ser" is cheese."""
Place = tuple[int, int, str]
"""Where a word of a text begins and ends, and its letters."""
_BRACKET = late_regex(r"[()\[\];]")
_WORDS = late_regex(r"[^\W\d_]+")


def told_elsewhere(text: str, larder: Larder, note: bool = False) -> tuple[Staple, ...]:
    """Return the foods, by their allergens, that words of other languages in a text tell of.

    In a `note` beside a food that is known, short words count in the languages of their own.

    >>> from stillroom.core.larder.shelves import common_larder
    >>> [food.name for food in told_elsewhere("50 g hakkede hasselnødder", common_larder())]
    ['hazelnuts']
    >>> told_elsewhere("kookosmaitoa", common_larder())
    ()
    """
    short = note and larder.language[:2] in _SPOKEN
    told = dict.fromkeys(
        food
        for start, end, word, food in places_told(text, larder)
        if not short or end - start >= _SURE or word in _sure()
    )
    return tuple(told)


def places_told(text: str, larder: Larder) -> Iterator[tuple[int, int, str, Staple]]:
    """Yield where in a text such a word stands, the word found in it, and the food it tells of.

    >>> from stillroom.core.larder.shelves import common_larder
    >>> [one[:3] for one in places_told("Lisää hasselpähkinät.", common_larder())]
    [(6, 20, 'hasselpahk')]
    """
    found = [(one.start(), one.end(), letters_of(one[0])) for one in _WORDS.finditer(text)]
    kept = [one for one in _affirmed(found, text) if not _without().search(f"{one[2]} ")]
    joined = f" {' '.join(word for _, _, word in kept)} "
    starts = list(accumulate((len(word) + 1 for _, _, word in kept), initial=1))
    for said in _pattern().finditer(joined):
        name = _foods()[said[0]]
        food = larder.named(normal_form(name)) if name else None
        if food is not None:
            begins, ends = (bisect_right(starts, at) - 1 for at in (said.start(), said.end() - 1))
            yield kept[max(begins, 0)][0], kept[min(ends, len(kept) - 1)][1], said[0], food


def _affirmed(found: list[Place], text: str) -> Iterator[Place]:
    """Yield the words of a text that none of its denials reaches.

    >>> words = [(m.start(), m.end(), m[0]) for m in _WORDS.finditer("uden sten, mandler")]
    >>> [word for _, _, word in _affirmed(words, "uden sten, mandler")]
    ['mandler']
    """
    denying = listing = False
    before, last = 0, ""
    for start, end, word in found:
        between = text[before:start]
        apart = bool(_BRACKET.search(between)) or (not listing and "," in between)
        more = word in _listed("again") and last not in _listed("denials")  # but "not with"
        denying = denying and not apart and not more
        if word in _listed("denials") and last not in _listed("elder"):
            denying, listing = True, False
        elif denying:
            listing = listing or bool(_pattern().search(f" {word} "))
        else:
            yield start, end, word
        before, last = end, word


def told_beside(
    text: str, notes: Sequence[Words], named: tuple[Staple, ...], known: bool, larder: Larder
) -> tuple[Staple, ...]:
    """Return what such words add to the foods that a phrase names, each of another allergen.

    Of a phrase that is known only its notes are looked through, and of those what names no food.
    """
    if known:
        words = (one for note in notes for one in note if not larder.named(one.form))
        strangers = (text[one.start : one.end] for one in words)  # "kiks" has lost its s as a form
        told = told_elsewhere(" ".join(strangers), larder, note=True)
    else:
        told = told_elsewhere(text, larder)
    held = {name for food in named for name in food.allergens}
    return tuple(food for food in told if not set(food.allergens) <= held)


@cache
def _foods() -> dict[str, str]:
    """Return the food of each word as it is found, "" of what names another food."""
    table = read_larder_data(FILE)
    named = {word: food for food, words in table["words"].items() for word in words}
    other = {word: "" for words in table["others"] for word in words}
    return {word.strip("_"): food for word, food in (named | other).items()}


@cache
def _pattern() -> re.Pattern[str]:
    """Return the pattern of every word, the longest tried first."""
    table = read_larder_data(FILE)
    rows = [*table["words"].values(), *table["others"]]
    words = sorted((word for row in rows for word in row), key=len, reverse=True)
    return late_regex("|".join(map(_as_pattern, words)))


def _as_pattern(word: str) -> str:
    """Return the pattern of one word: "_" is a blank beside it, and none of it."""
    before = "(?<= )" if word.startswith("_") else ""
    after = "(?= )" if word.endswith("_") else ""
    return before + re.escape(word.strip("_")) + after


@cache
def _without() -> re.Pattern[str]:
    return late_regex("|".join(map(_as_pattern, read_larder_data(FILE)["without"])))


@cache
def _sure() -> frozenset[str]:
    return frozenset(read_larder_data(FILE)["sure"])


@cache
def _listed(name: str) -> frozenset[str]:
    return frozenset(read_larder_data(FILE)[name])
