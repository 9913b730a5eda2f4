"""Lists typed with dots or dashes that lead from a food to its amount, or from that to its food.

"Sugar ........ 2 cups", "2 cups ..... sugar", "Water . . . 1 pint", two of them on one line. A list
of contents, with the numbers of pages behind its dots, stays as it is.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.one_line import foods_named

_LEADER: Final = re.compile(r"\s*(?:\.(?:\s?\.){2,}|…[\s.…]*|_{3,}|-{3,}|[–—]{2,}|[·•]{3,})\s*")
_SHORT: Final = re.compile(r"\s+\.{1,2}\s+")
_NUMBER: Final = (
    r"(?:(?:about|ca\.?|etwa|environ)\s+)?(?:[\d½¼¾⅓⅔⅛]|(?:an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve|half|pinch|dash"
    r"|einen?|eine|zwei|drei|vier|une?|deux|trois|quatre|uno|una|due|tre|quattro|dos|tres|cuatro|een|twee|drie|vier)(?:\s|$)|prise\b)"
)
_AMOUNT: Final = re.compile(_NUMBER, re.IGNORECASE)
_BARE: Final = re.compile(r"\d{1,4}\.?|[ivxl]+", re.IGNORECASE)
# "4 lb.     Sugar": an amount, and the food of a second column
_AND_MORE: Final = re.compile(
    r"(?P<amount>[\d½¼¾⅓⅔][\d\s./½¼¾⅓⅔-]*(?:[^\W\d]+\.?)?)\s+(?P<food>[A-ZÀ-Ý][^\d.…_]{2,40})"
)
_MOST_OF_A_LINE: Final = 100
_LEAST: Final = 2
_PAIR: Final = 2


def with_leaders_taken(rows: Sequence[Row]) -> list[Row]:
    """Return rows with each amount before its food where dots lead from one to the other.

    >>> dots = ["Plums ..... 4 lb.", "Sugar . . . 3 lb.", "Salt ... a pinch", "Boil it..."]
    >>> [row.text for row in with_leaders_taken([Row(one) for one in dots])]
    ['4 lb Plums', '3 lb Sugar', 'a pinch Salt', 'Boil it...']
    >>> pages = [Row("Plum jam ....... 12"), Row("Quince jelly ... 14")]
    >>> with_leaders_taken(pages) == pages
    True
    """
    led = {at: parts for at, row in enumerate(rows) if (parts := _parts(row, _LEADER))}
    if len(led) < _LEAST or not _measure(list(led.values())):
        return list(rows)
    found: list[Row] = []
    for at, row in enumerate(rows):
        close = {at - 1, at + 1} & led.keys()
        parts = led.get(at) or (_parts(row, _SHORT) if close else [])
        found += [replace(row, text=_turned(*one)) for one in parts] or [row]
    return found


def _parts(row: Row, leader: re.Pattern[str]) -> list[tuple[str, str]]:
    """Return what stands before the dots of a row and behind them, of each column a pair."""
    if row.shape not in ("line", "item") or len(row.text) > _MOST_OF_A_LINE:
        return []
    said = [one.strip() for one in leader.split(row.text.strip())]
    if len(said) < _PAIR or not all(said):
        return []
    pairs: list[tuple[str, str]] = []
    first = said[0]
    for one in said[1:-1]:
        more = _AND_MORE.fullmatch(one)
        if more is None:
            return []
        pairs.append((first, more["amount"].strip()))
        first = more["food"].strip()
    pairs.append((first, said[-1]))
    led = all(bool(_AMOUNT.match(one)) != bool(_AMOUNT.match(two)) for one, two in pairs)
    return pairs if led or len(pairs) == 1 else []


def _measure(lines: Sequence[Sequence[tuple[str, str]]]) -> bool:
    """Whether most pairs are an amount and a known food, and the numbers are none of pages."""
    pairs = [pair for line in lines for pair in line]
    amounts = [one if _AMOUNT.match(one) else two for one, two in pairs]
    foods = sum(bool(foods_named(f"{one} {two}")) for one, two in pairs)
    measured = sum(bool(_AMOUNT.match(one)) and not _BARE.fullmatch(one) for one in amounts)
    return foods * 2 >= len(pairs) and measured * 2 > len(pairs)


def _turned(before: str, behind: str) -> str:
    if _AMOUNT.match(behind) and not _AMOUNT.match(before):
        return f"{behind.rstrip('.')} {before}"
    return f"{before} {behind}" if _AMOUNT.match(before) else f"{before}, {behind}"
