"""Several ingredients that were written on one line, taken apart where that is certain enough.

"1 tbsp salt; 1 kg sugar" is two. Commas part things only where three or more of them begin with an
amount, since a comma also says how a thing is prepared. Whoever brings a recipe in is asked.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.core.lines.reader import read_line
from stillroom.core.words.problems import Unreadable

_AMOUNT: Final = re.compile(r"(?:about |ca\.? )?(?:\d|[½⅓⅔¼¾⅛⅜⅝⅞])")
_SIGNS: Final = re.compile(r"\s*(?:;|\s\+\s)\s*(?=(?:about |ca\.? )?[\d½⅓⅔¼¾⅛⅜⅝⅞])")
_COMMAS: Final = re.compile(r"\s*,\s*(?![^()]*\))(?!\d+\s*%)")
_LEAST: Final = 3
"""Parts that begin with an amount, from which on commas part things."""


def things_on(row: str) -> list[str]:
    """Return what stands on one line of a list, each thing by itself; mostly it is one.

    >>> things_on("1 tbsp salt; 1kg sugar"), things_on("1 cup + 2 tbsp sugar")
    (['1 tbsp salt', '1kg sugar'], ['1 cup + 2 tbsp sugar'])
    >>> things_on("1 kg oranges, 1 lemon, 2 kg sugar, a large pan")
    ['1 kg oranges', '1 lemon', '2 kg sugar', 'a large pan']
    >>> things_on("500 g plums, 50 g of them unripe, stoned")
    ['500 g plums, 50 g of them unripe, stoned']
    """
    found: list[str] = []
    for piece in _SIGNS.split(row) if _certain(_SIGNS.split(row)) else [row]:
        parts = [part for part in (one.strip() for one in _COMMAS.split(piece)) if part]
        amounts = [part for part in parts if _AMOUNT.match(part)]
        apart = len(amounts) >= _LEAST and _certain(amounts)
        found += parts if apart else [piece.strip()]
    return found


def _certain(parts: list[str]) -> bool:
    """Whether each part is a thing by itself: an amount, and what of."""
    return len(parts) > 1 and all(_names_a_thing(part) for part in parts)


def _names_a_thing(part: str) -> bool:
    if not _AMOUNT.match(part):
        return False
    try:
        return bool(read_line(part).item)
    except Unreadable:
        return False
