"""How a cook types the size of a batch: "half", "four 200 ml jars", "plums 2 kg".

Put into the words that targets.py reads, by the same table as the browser (js/size/typed-sizes.js).
Leaves out what the words come to.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex

_SIGNS: Final = r"\s*(?:\+|;|,(?!\d)|\band\b)\s*"
BETWEEN: Final = late_regex(_SIGNS)
_BETWEEN_KEPT: Final = late_regex(f"({_SIGNS})")
_IN_PARTS: Final = ("fill", "have")


def plainly_typed(sort: str, text: str) -> str:
    """Return a size in plainer words; `sort` is "times", "makes", "fill", "have" or "vessel".

    >>> plainly_typed("times", "double"), plainly_typed("makes", "half a litre")
    ('2', '1/2 litre')
    >>> plainly_typed("fill", "four 200 ml jars and 2 jars (1 pint)")
    '4 x 200 ml jars and 2 jars of 1 pint'
    """
    text = _put("all", text.strip()).strip()
    if sort not in _IN_PARTS:
        return _put(sort, text)
    return "".join(_put(sort, part) for part in _BETWEEN_KEPT.split(text))


@cache
def typed_sizes() -> dict[str, list[tuple[str, str]]]:
    """Return what stands for what, by sort: patterns and what is put in their place."""
    return {
        sort: [(pattern, str(put)) for pattern, put in rows]
        for sort, rows in read_data("typed_sizes.yml").items()
    }


@cache
def _patterns(sort: str) -> list[tuple[re.Pattern[str], str]]:
    return [
        (re.compile(pattern, re.IGNORECASE | re.ASCII), re.sub(r"\$(\d)", r"\\g<\1>", put))
        for pattern, put in typed_sizes().get(sort, [])
    ]


def _put(sort: str, text: str) -> str:
    for pattern, put in _patterns(sort):
        text = pattern.sub(put, text)
    return text
