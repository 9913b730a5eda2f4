"""Heat in a method that is not English: German, French, Spanish, Italian, Dutch and Swedish.

Only what surely cooks counts, by the words of heat_elsewhere.yml: a sentence that denies anything,
boils jars or water, or only makes the oven hot cooks nothing, and so what was not understood stays
raw. Leaves out English, and which lines the heat reaches: heat.py.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache
from typing import Any

from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import any_word, clause_regex

_OVEN_HOT = clause_regex(
    r"\b(?:1[5-9]\d|2[0-5]\d) ?(?:°|grad\w*|c\b).*\b[1-9]\d ?(?:min\w*|')"
    r"|\b[1-9]\d ?(?:min\w*|').*\b(?:1[5-9]\d|2[0-5]\d) ?(?:°|grad\w*|c\b)",
    re.IGNORECASE,
)
_EGGS = ("egg", "egg yolk", "egg white")


def cooks_elsewhere(clause: str, sentence: str) -> bool:
    """Whether a clause, within its sentence, says in another language that something is cooked.

    >>> told = "Bei 180° ca. 12 Min backen."
    >>> cooks_elsewhere(told, told), cooks_elsewhere("nicht backen", "Kühlen, nicht backen.")
    (True, False)
    >>> cooks_elsewhere("Den Ofen vorheizen", "Den Ofen vorheizen")
    False
    """
    if _tells_nothing(sentence):
        return False
    if is_apart_elsewhere(clause):
        return False
    if _any_of("cooked").search(clause) or _any_of("baked").search(clause):
        return True
    return bool(_any_of("oven").search(clause)) and not _any_of("made_hot").search(sentence)


@lru_cache(maxsize=512)
def _tells_nothing(sentence: str) -> bool:
    """Whether a sentence denies something, or is of jars and water."""
    return any(_any_of(name).search(sentence) for name in ("denied", "something_else"))


def bakes_elsewhere(clause: str) -> bool:
    """Whether heat that is in another language is an oven's: all that is in the dough goes in."""
    if any(_any_of(name).search(clause) for name in ("baked", "oven")):
        return True
    # "cuocere a 170 °C per 50 minuti": no pan is that hot for so long, unless it holds sugar or fat
    return bool(_OVEN_HOT.search(clause)) and not _any_of("hot_in_a_pan").search(clause)


def is_everything_elsewhere(clause: str) -> bool:
    """Whether a clause speaks of all that is on the list."""
    return bool(_any_of("everything").search(clause))


def is_apart_elsewhere(clause: str) -> bool:
    """Whether a clause speaks of an icing, which no oven sees."""
    return bool(_any_of("apart").search(clause))


@lru_cache(maxsize=2048)
def eggs_elsewhere(clause: str) -> frozenset[str]:
    """Return in English what a clause calls an egg, its yolk or its white.

    >>> sorted(eggs_elsewhere("Die Eier trennen, Eischnee schlagen"))
    ['egg', 'egg white']
    """
    return frozenset(name for name in _EGGS if _any_of(name).search(clause))


@cache
def _table() -> dict[str, Any]:
    table: dict[str, Any] = read_data("heat_elsewhere.yml", "method")
    return table


@cache
def _any_of(name: str) -> re.Pattern[str]:
    """Return the pattern of one list of the file."""
    listed: list[Any] = _table()[name]
    return any_word(word for row in listed for word in (row if isinstance(row, list) else [row]))
