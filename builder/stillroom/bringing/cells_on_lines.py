"""Amount, unit and food that were cells of one row and were copied onto lines of their own.

"1", "Qt", "Cider Vinegar", one below the other, are one line of a list, and so are "50 g" and
"Sucre". Leaves out cells that are still a table's: tables.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.heads import AMOUNT_ALONE
from stillroom.bringing.one_line import names_a_food
from stillroom.bringing.sorting import is_sentence
from stillroom.core.amounts.quantities import Amount
from stillroom.core.lines.reader import read_line
from stillroom.core.words.problems import Unreadable

_NUMBER: Final = re.compile(
    r"(?:\d{1,4}(?:[.,]\d{1,3})?(?:\s+\d/\d)?|\d/\d|(?:\d{1,3}\s?)?[½¼¾⅓⅔⅛])"
)
_UNIT: Final = re.compile(r"[^\W\d_]{1,12}\.?(?:\s[^\W\d_]{1,12}\.?)?")
_COUNT_ALONE: Final = re.compile(r"\d{1,2}|[½¼]")
_MOST_OF_A_FOOD: Final = 9
_LEAST: Final = 2
"""Rows of three cells from which on a number alone is an amount."""


def with_cells_joined(rows: Sequence[Row]) -> list[Row]:
    """Return rows with a number, a unit and a food on three lines as the one line that they are.

    >>> cells = [Row(one) for one in ("1", "Qt", "Vinegar", "6", "Cups", "Sugar", "2", "Lemons")]
    >>> [row.text for row in with_cells_joined(cells)]
    ['1 Qt Vinegar', '6 Cups Sugar', '2 Lemons']
    >>> [row.text for row in with_cells_joined([Row("1"), Row("Boil"), Row("2"), Row("Pour")])]
    ['1', 'Boil', '2', 'Pour']
    """
    whole = sum(_cells_from(rows, at) == 3 for at in range(len(rows)))
    if whole < _LEAST:
        return list(rows)
    found: list[Row] = []
    at = 0
    while at < len(rows):
        count = _cells_from(rows, at)
        if count:
            text = " ".join(row.text.strip() for row in rows[at : at + count])
            found.append(replace(rows[at], text=text, shape="line"))
        else:
            found.append(rows[at])
        at += max(count, 1)
    return found


def _cells_from(rows: Sequence[Row], at: int) -> int:
    """Return how many rows from one on are the cells of a line of a list; 0 for none."""
    if not (_is_cell(rows, at) and _NUMBER.fullmatch(rows[at].text.strip())):
        return 0
    has_unit = _is_cell(rows, at + 1) and is_unit(rows[at + 1].text.strip())
    count = 3 if has_unit else 2
    return count if _is_food(rows, at + count - 1) else 0


def _is_cell(rows: Sequence[Row], at: int) -> bool:
    return at < len(rows) and rows[at].shape in ("line", "item", "row")


def _is_food(rows: Sequence[Row], at: int) -> bool:
    if not _is_cell(rows, at) or is_head(rows[at]) or is_sentence(rows[at].text):
        return False
    text = rows[at].text.strip()
    return text[:1].isalpha() and len(text.split()) <= _MOST_OF_A_FOOD and not is_unit(text)


@lru_cache(maxsize=512)
def is_unit(text: str) -> bool:
    """Whether a word alone is a unit that any book knows: "Qt", "Cups", "łyżka"."""
    if not _UNIT.fullmatch(text):
        return False
    try:
        reading = read_line(f"2 {text} sugar")
    except Unreadable:
        return False
    return (
        isinstance(reading.amount, Amount) and bool(reading.amount.unit) and reading.item == "sugar"
    )


def with_amounts_joined(rows: list[Row]) -> list[Row]:
    """Return rows with "50 g" and the "Sucre" below or above it on one line, as pages part them.

    Where a block does not show on which side of its food an amount stands, none is joined: each
    is asked.
    """
    above: set[int] = set()
    below: set[int] = set()
    for block in _amounts_and_names(rows):
        amounts = [at for at in block if _is_amount_alone(rows[at])]
        if len(amounts) >= 2:
            side = _side_of_amounts(rows, block)
            above |= {at for at in amounts if side == "above" and at + 1 in block}
            below |= {at for at in amounts if side == "below" and at - 1 in block}
            if side == "below" and _counts_what_is_above(rows, block.stop):
                below.add(block.stop)
    gone = {at + 1 for at in above} | below
    found = []
    for at, row in enumerate(rows):
        if at in above:
            found.append(replace(row, text=f"{row.text} {rows[at + 1].text}"))
        elif at + 1 in below:
            found.append(replace(row, text=f"{rows[at + 1].text} {row.text}"))
        elif at not in gone:
            found.append(row)
    return found


def _amounts_and_names(rows: list[Row]) -> list[range]:
    """Return the runs of rows that are amounts alone and names, no two amounts next to another."""
    found: list[range] = []
    start = 0
    for at in range(len(rows) + 1):
        ends = at == len(rows) or not (_is_amount_alone(rows[at]) or _is_name(rows[at]))
        twice = not ends and at > start and all(map(_is_amount_alone, rows[at - 1 : at + 1]))
        if ends or twice:
            found.append(range(start, at))
            start = at + ends
    return found


def _counts_what_is_above(rows: list[Row], at: int) -> bool:
    """Whether a number alone is how many of the food above it: "Lemon", "1"."""
    counts = at < len(rows) and rows[at].shape in ("line", "item") and not rows[at].gap
    number = counts and _COUNT_ALONE.fullmatch(rows[at].text.strip())
    return bool(number) and _is_name(rows[at - 1]) and not rows[at - 1].gap


def _side_of_amounts(rows: list[Row], block: range) -> str:
    """Return whether amounts stand "above" their foods or "below" them; "" where nobody can say."""
    first, last = rows[block[0]], rows[block[-1]]
    if _is_amount_alone(first):
        return "above"
    if _is_amount_alone(last) or _counts_what_is_above(rows, block.stop):
        return "below"
    if rows[block[1]].gap and not rows[block[2]].gap:  # a title, or a heading with a gap below
        return "above"
    heads, ends = names_a_food(first.text), names_a_food(last.text)
    return "" if heads == ends else "below" if heads else "above"


def _is_amount_alone(row: Row) -> bool:
    return row.shape in ("line", "item") and bool(AMOUNT_ALONE.fullmatch(row.text.strip()))


def _is_name(row: Row) -> bool:
    return (
        row.shape in ("line", "item")
        and row.text[:1].isalpha()
        and not is_sentence(row.text)
        and not is_head(row)
    )
