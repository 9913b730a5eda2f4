"""Heat in a method that is not English, in eight languages from German to Norwegian.

Only what surely cooks counts, by the words of heat_elsewhere.yml: a sentence that denies anything,
boils jars or water, or only makes the oven hot cooks nothing, and so what was not understood stays
raw. Leaves out English, and which lines the heat reaches: heat.py.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache
from typing import Any, Literal

from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import any_word, clause_regex

_OVEN_HOT = clause_regex(
    r"\b(?:1[5-9]\d|2[0-5]\d) ?(?:°|grad\w*|c\b).*\b[1-9]\d ?(?:min\w*|')"
    r"|\b[1-9]\d ?(?:min\w*|').*\b(?:1[5-9]\d|2[0-5]\d) ?(?:°|grad\w*|c\b)",
    re.IGNORECASE,
)
# at 71 °C an egg is cooked (160 °F: US FDA, as the rule "raw-egg" has it)
_SETS = clause_regex(r"\b(?:7[1-9]|[89]\d) ?(?:°|grad)", re.IGNORECASE)
_TILL = clause_regex(
    r"\b(?:bis|jusqu['’]|hasta que|finché|fino a|tot(?:dat)?|tills?)\b", re.IGNORECASE
)
How = Literal["", "cooks", "thickens"]
_EGGS = ("egg", "egg yolk", "egg white")
_IN_WATER = clause_regex(
    r"\b(?:mit(?: dem)?|im|in dem|avec(?: l['’])?|dans(?: l['’])?|con(?: el)?|en el|nell['’]"
    r"|con l['’]"
    r"|met(?: het)?|in het|\d+ ?m?l(?: de)?(?: d['’])?) ?(?:wasser|eau|agua|acqua|water)\b",
    re.IGNORECASE,
)
_AND = clause_regex(r"\b(?:und|et|y|e|en|dann|puis|luego|poi|dan)\b", re.IGNORECASE)


def cooks_elsewhere(clause: str, sentence: str) -> How:
    """Say how a clause, within its sentence, cooks in another language; "" where it does not.

    What "thickens" there is egg: over hot water, or where 71 °C and more are said.

    >>> told = "Bei 180° ca. 12 Min backen."
    >>> cooks_elsewhere(told, told), cooks_elsewhere("nicht backen", "Kühlen, nicht backen.")
    ('cooks', '')
    >>> cooks_elsewhere("Den Ofen vorheizen", "Den Ofen vorheizen")
    ''
    >>> told = "Im Topf auf 80 °C erhitzen"
    >>> cooks_elsewhere(told, told), cooks_elsewhere("Auf 80 °C abkühlen", "Auf 80 °C abkühlen")
    ('thickens', '')
    """
    if _thickens(clause, sentence):
        return "thickens"
    cooks = _any_of("cooked").search(clause) or _any_of("baked").search(clause)
    if not cooks and (not _any_of("oven").search(clause) or _any_of("made_hot").search(sentence)):
        return ""
    no = _denies(sentence) or _is_of_something_else(clause) or is_apart_elsewhere(clause)
    return "" if no else "cooks"


def _thickens(clause: str, sentence: str) -> bool:
    """Whether a clause heats, and its sentence says that it thickens there or how hot it gets.

    >>> told = "Eigelb über dem Wasserbad aufschlagen, bis die Masse dickt, ohne zu kochen."
    >>> _thickens("Eigelb über dem Wasserbad aufschlagen", told)
    True
    >>> _thickens("Eigelb über dem Wasserbad", "Eigelb über dem Wasserbad schaumig.")
    False
    """
    if _any_of("cools").search(sentence) or not _any_of("thickens").search(sentence):
        return False
    heats = _any_of("heats").search(clause) and not _is_of_something_else(clause)
    by_heat = heats and _SETS.search(sentence)
    if not by_heat and not _any_of("water_bath").search(clause):
        return False
    return not _denies(_any_of("not_boiled").sub(" ", sentence))


@lru_cache(maxsize=512)
def _denies(sentence: str) -> bool:
    return bool(_any_of("denied").search(_any_of("denies_nothing").sub(" ", sentence)))


def _is_of_something_else(clause: str) -> bool:
    """Whether a clause is of jars or water alone, and not of food that then goes into them.

    >>> _is_of_something_else("Die Gläser kochen"), _is_of_something_else("Wasser aufkochen")
    (True, True)
    >>> _is_of_something_else("Beeren im Wasser kochen und in Gläser füllen")
    False
    """
    plain = _IN_WATER.sub(" ", clause)
    other, heat = _any_of("something_else").search(plain), _any_of("cooked").search(plain)
    if other is None or heat is None or eggs_elsewhere(clause):
        return other is not None
    return heat.end() > other.start() or not _AND.search(plain[heat.end() : other.start()])


def without_its_end(clause: str) -> str:
    """Return a clause without how long it is done.

    >>> without_its_end("Chauffer jusqu'à ce que la crème épaississe")
    'Chauffer '
    """
    return _TILL.split(clause)[0]


def bakes_elsewhere(clause: str) -> bool:
    """Whether heat that is in another language is an oven's: all that is in the dough goes in."""
    if any(_any_of(name).search(clause) for name in ("baked", "oven")):
        return True
    # "cuocere a 170 °C per 50 minuti": no pan is that hot for so long, unless it holds sugar or fat
    return bool(_OVEN_HOT.search(clause)) and not _any_of("hot_in_a_pan").search(clause)


def is_everything_elsewhere(clause: str) -> bool:
    """Whether a clause speaks of all that is on the list."""
    return bool(_any_of("everything").search(clause))


def is_liquor(clause: str) -> bool:
    """Whether a clause, English or not, is of the liquor that is poured over what lies in the jar.

    >>> is_liquor("Koka upp lagen"), is_liquor("Koka sillen")
    (True, False)
    """
    return bool(_any_of("liquor").search(clause))


def is_sour(clause: str) -> bool:
    """Whether a clause, English or not, names vinegar.

    >>> is_sour("Koka upp ättika"), is_sour("Weinessig aufkochen"), is_sour("Koka upp vatten")
    (True, True, False)
    """
    return bool(_any_of("sour").search(clause))


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
