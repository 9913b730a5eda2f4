"""A title that says how much it makes, right above its list: "Blackcurrant cordial, about 1 litre".

Leaves out "Granola (makes 5 cups)" and the like, which say so in words: rows.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.heads import plain
from stillroom.bringing.sorting import begins_with_amount, is_ingredient, is_title
from stillroom.bringing.titles import LIST_FOR
from stillroom.bringing.yield_labels import labelled_yield
from stillroom.bringing.yield_lines import amount_of_nothing, yield_of_line

_SO_MANY: Final = re.compile(
    r"(?P<title>[^\W\d][^.!?:;,\d]{2,60}?)(?:\s*,\s*|\s+[-–—]\s+|\s+)"
    r"(?P<makes>(?:ca\.?|circa|cirka|about|approx\.?|etwa|environ|ongeveer|ungefär|unos|unas)\s+\d[^.!?:;]{0,30})",
    re.IGNORECASE,
)
_BEHIND: Final = re.compile(
    r"(?P<title>[^\W\d][^.!?:;,\d]{2,60}?)(?:\s*,|\s+[-–—])\s+(?P<makes>\d[^.!?:;,]{2,30})"
)
_LEAST: Final = 2


def with_makes_apart(rows: Sequence[Row]) -> list[Row]:
    """Return rows with how much a title above a list says is made on a row of its own.

    >>> rows = [Row("Rose syrup, ca 1 l"), Row("2 l petals"), Row("6 dl water")]
    >>> [row.text for row in with_makes_apart(rows)]
    ['Rose syrup', 'Makes ca 1 l', '2 l petals', '6 dl water']
    """
    found: list[Row] = []
    for place, row in enumerate(rows):
        said = _SO_MANY.fullmatch(row.text) if row.shape in ("line", "heading") else None
        said = said or _so_many_in_plain(row)
        below = rows[place + 1 : place + 1 + _LEAST]
        heads = len(below) == _LEAST and all(
            is_ingredient(one.text) and begins_with_amount(one.text) for one in below
        )
        above = rows[place - 1].text if place and not row.gap else ""
        yields = labelled_yield(row.text) or yield_of_line(row.text)  # "Det blir ca 4 glass"
        named = said and _names(said["title"]) and not yields
        if said and named and heads and not is_ingredient(above):
            found.append(replace(row, text=said["title"], shape="heading", level=row.level or 1))
            found.append(Row(f"Makes {said['makes']}", "line"))
        else:
            found.append(row)
    return found


def _so_many_in_plain(row: Row) -> re.Match[str] | None:
    """Return a title and a number of jars or the like behind a sign: "Plum jam, 6 jars"."""
    found = _BEHIND.fullmatch(row.text) if row.shape in ("line", "heading") else None
    return found if found and amount_of_nothing(found["makes"]) else None


def _names(title: str) -> bool:
    """Whether words may name what is made: "Makes", "Voor" and "For" name nothing."""
    headed = LIST_FOR.match(f"{title} 4 jars") is not None
    return is_title(title) and plain(title) not in _LEADS and not headed


_LEADS: Final = frozenset(
    {
        "for",
        "to make",
        "makes",
        "für",
        "ergibt",
        "pour",
        "per",
        "para",
        "voor",
        "till",
        "till ca",
        "quantity",
        "yield",
    }
)
