"""A title that is set between signs, as typed pages have it: "-Play Dough-", "*** Fudge ***".

Leaves out marks that writing programs know: plain_text.py.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.sorting import is_title
from stillroom.core.words.patterns import late_regex

_FIRST_ROWS: Final = 40
_BETWEEN: Final = late_regex(
    r"(?P<sign>[-–—=*~_•+<«¤°✿❀♥])(?P=sign){0,20}\s?(?P<title>[^\W_][^=*~_•+]{1,60}?)\s?[-–—=*~_•+>»¤°✿❀♥]{1,21}"
)


def with_set_titles_bared(rows: Sequence[Row]) -> list[Row]:
    """Return rows with titles between the same signs as headings without them.

    >>> bared = with_set_titles_bared([Row("-Play Dough-"), Row("- a -")])
    >>> [(row.text, row.shape) for row in bared]
    [('Play Dough', 'heading'), ('- a -', 'line')]
    """
    return [_bared(row) if at < _FIRST_ROWS else row for at, row in enumerate(rows)]


def _bared(row: Row) -> Row:
    found = _BETWEEN.fullmatch(row.text.strip()) if row.shape in ("line", "heading") else None
    if found is None or not is_title(found["title"]):
        return row
    return replace(row, text=found["title"], shape="heading", level=row.level or 2)
