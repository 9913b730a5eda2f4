"""Allergens told in languages that the larder does not speak: "hakkede hasselnødder".

What holds such a word is never known by it: it says only what must not be called free of it. Leaves
out the foods that the larder does know, in whichever language: shelves.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
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
_WORDS = late_regex(r"[^\W\d_]+")


def told_elsewhere(text: str, larder: Larder, note: bool = False) -> tuple[Staple, ...]:
    """Return the foods, by their allergens, that words of other languages in a text tell of.

    In a `note` beside a food that is known, short words are left out: Polish "ser" is cheese.

    >>> from stillroom.core.larder.shelves import common_larder
    >>> [food.name for food in told_elsewhere("50 g hakkede hasselnødder", common_larder())]
    ['hazelnuts']
    >>> told_elsewhere("kookosmaitoa", common_larder())
    ()
    """
    words = [letters_of(word) for word in _WORDS.findall(text)]
    first = next((place for place, word in enumerate(words) if word in _denials()), len(words))
    kept = [word for word in words[:first] if not _without().search(f"{word} ")]
    found = []
    for said in _pattern().finditer(f" {' '.join(kept)} "):
        name = _foods()[said[0]]
        if name and not (note and len(said[0]) < _SURE):
            food = larder.named(normal_form(name))
            found += [food] if food is not None else []
    return tuple(dict.fromkeys(found))


def told_beside(
    text: str, notes: Sequence[Words], named: tuple[Staple, ...], known: bool, larder: Larder
) -> tuple[Staple, ...]:
    """Return what such words add to the foods that a phrase names, each of another allergen.

    Of a phrase that is known only its notes are looked through, and of those what names no food.
    """
    if known:
        strangers = (one.form for note in notes for one in note if not larder.named(one.form))
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
    return re.compile("|".join(map(_as_pattern, words)))


def _as_pattern(word: str) -> str:
    """Return the pattern of one word: "_" is a blank beside it, and none of it."""
    before = "(?<= )" if word.startswith("_") else ""
    after = "(?= )" if word.endswith("_") else ""
    return before + re.escape(word.strip("_")) + after


@cache
def _without() -> re.Pattern[str]:
    return re.compile("|".join(map(_as_pattern, read_larder_data(FILE)["without"])))


@cache
def _denials() -> frozenset[str]:
    return frozenset(read_larder_data(FILE)["denials"])
