"""What a method in another language does between its waits: "abseihen und in Flaschen füllen".

German, French, Spanish, Italian, Dutch, Swedish, Danish, Norwegian, Portuguese and Polish, by the
words of work_elsewhere.yml. Leaves out English (method_order.py) and waits (waits_elsewhere.py).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import Final, Literal

from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import any_word

Work = Literal["strain", "bottle"]
_FEW_WORDS: Final = r"(?:[^\s.;]+\s+){0,5}?"


def work_elsewhere(sentence: str) -> Iterator[tuple[int, Work]]:
    """Yield what a sentence that is not English does, and where in it that stands.

    >>> [act for _, act in work_elsewhere("abseihen und in saubere Flaschen füllen")]
    ['strain', 'bottle']
    >>> list(work_elsewhere("strain it through a filter")), list(work_elsewhere("nicht filtern"))
    ([], [])
    """
    if _pattern("english").search(sentence):
        return
    at_use = _stems("at_use").search(sentence)
    for found in _stems("strain").finditer(sentence):
        if not at_use and not _denied(sentence, found.start()):
            yield found.start(), "strain"
    for pattern in (_stems("bottle"), _filled()):
        for found in pattern.finditer(sentence):
            if not _denied(sentence, found.start()):
                yield found.start(), "bottle"


def _denied(sentence: str, at: int) -> bool:
    return bool(_pattern("not").search(sentence[max(0, at - 12) : at]))


@cache
def _words(name: str) -> list[str]:
    return list(read_data("work_elsewhere.yml")[name])


@cache
def _stems(name: str) -> re.Pattern[str]:
    return any_word(f"{word}*" for word in _words(name))


@cache
def _pattern(name: str) -> re.Pattern[str]:
    return any_word(_words(name))


@cache
def _filled() -> re.Pattern[str]:
    """Return the pattern of a verb of filling and a vessel beside it."""
    fills, into, vessels = (
        "|".join(sorted(map(re.escape, _words(name)), key=len, reverse=True))
        for name in ("fills", "into", "vessels")
    )
    verb, vessel = rf"\b(?:{fills})\w*", rf"\b(?:{vessels})\w*"
    return re.compile(
        rf"{verb}\s+{_FEW_WORDS}(?:{into})\s+{_FEW_WORDS}{vessel}"
        rf"|\b(?:{into})\s+{_FEW_WORDS}{vessel}\s+{_FEW_WORDS}{verb}"
        rf"|\b(?:fyll|fyld|ench|vul|rempl|llen|rellen|riempi)\w*\s+{_FEW_WORDS}{vessel}"
        rf"|{vessel}\s+{_FEW_WORDS}(?:be|ab)?füll\w*",
        re.IGNORECASE,
    )
