"""Lists that a word processor's tabs set in two columns: each thing on a row of its own.

What stands alone in the right column goes on with the thing above it there: "sweetened," over
"condensed milk". Leaves out columns that blanks part: plain_text.py and one_line.py.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.one_line import names_a_food
from stillroom.bringing.sorting import is_ingredient
from stillroom.bringing.typed_marks import bare

_TABS: Final = re.compile(r"\s*\t[\t ]*")
_OPEN: Final = re.compile(
    r"(?:,|\b(?:sweetened|unsweetened|or|and|of|with|semi-?sweet|baking|evaporated|powdered|brown|chopped))$",
    re.I,
)
# "or 1 can green beans", below what it may stand for
_OTHERWISE: Final = re.compile(r"(?:or|oder|ou|oppure|o|of)\s", re.IGNORECASE)
_COLUMNS: Final = 2
_FEW: Final = 4
_MOST: Final = 6


def _is_thing(cell: str) -> bool:
    """Whether a cell in a few words is no sentence: "Chicken broth, enough to moisten"."""
    return len(cell.split()) <= _MOST and not re.search(r"[.!?:]", cell)


def _is_bare_thing(cell: str) -> bool:
    """Whether a cell may be a thing without an amount: "Assorted icings or peanut butter"."""
    return len(cell.split()) <= _MOST and not re.search(r"[\d.!?:]", cell)


def add_columns(rows: list[Row], text: str, gap: bool) -> bool:
    r"""Add the things of a line in two columns to the rows; False for any other line.

    >>> rows: list[Row] = []
    >>> add_columns(rows, "2 cups sugar\t\t1 cup sweetened", True)
    True
    >>> add_columns(rows, "1 tsp vanilla\t\tcondensed milk", False)
    True
    >>> [row.text for row in rows]
    ['2 cups sugar', '1 cup sweetened condensed milk', '1 tsp vanilla']
    >>> add_columns(rows, "Hot water\t\t1 can limeade", False), rows[-1].text
    (True, '1 can limeade')
    """
    cells = [bare(cell) for cell in _TABS.split(text.strip())]
    if len(cells) != _COLUMNS:
        return False
    left, right = cells
    above = rows[-1] if rows else None
    if not is_ingredient(left):
        amid = above is not None and above.shape == "item" and not gap
        if amid and len(rows) >= _COLUMNS and _OTHERWISE.match(left) and is_ingredient(right):
            rows[-_COLUMNS] = replace(rows[-_COLUMNS], text=f"{rows[-_COLUMNS].text} {left}")
            rows.append(Row(right, "item"))
            return True
        if amid and _is_thing(left) and is_ingredient(right):
            rows += [Row(left, "item"), Row(right, "item")]
            return True
        if not amid or not all(map(_is_bare_thing, cells)):
            return False
        rows += [Row(cell.rstrip(","), "item") for cell in cells]
        return True
    if is_ingredient(right):
        rows += [Row(left, "item", 0, gap), Row(right, "item")]
        return True
    short = len(right.split()) <= _FEW and not re.search(r"[\d.!?:]", right)
    if short and above and not gap and above.shape == "item" and _OPEN.search(above.text):
        rows[-1] = Row(f"{above.text} {right}", "item", 0, above.gap)
        rows.append(Row(left, "item"))
        return True
    if short and names_a_food(right):
        rows += [Row(left, "item", 0, gap), Row(right, "item")]
        return True
    return False
