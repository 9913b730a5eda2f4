"""A title at the head of a paper with a sign behind it: "Damson jam.", "How to make damson jam:".

Leaves out old books, whose titles all have one: told.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.heads import plain, words
from stillroom.bringing.known_work import is_plainly_work
from stillroom.bringing.naming import is_said_again, says_its_kind
from stillroom.bringing.sorting import is_ingredient, is_title
from stillroom.bringing.tails import does_something
from stillroom.core.lines.staple_table import staples_named
from stillroom.core.words.patterns import late_regex

_FIRST_ROWS: Final = 12
_MOST_WORDS: Final = 6
_SIGNS: Final = late_regex(r"[.,;:!?…\d]")
# "We love plums", "Plums are in", "Jam again": somebody tells
_TELLS: Final = late_regex(
    r"\b(?:i|we|it|this|these|they|my|our|you|is|are|was|were|has|have|got|again|ich|wir|es|ist"
    r"|sind|war|gibt|je|nous|on|c['’]est|est|sont|è|sono|ho|es|son|hay|he|ik|we|het|zijn|jag|vi"
    r"|det|är|jeg|er|eu)\b",
    re.IGNORECASE,
)
# "How to make fizzy bath bombs:", at the head of all that is told of it
_HOW_TO: Final = late_regex(
    r"(?:how\s+(?:to|i|we|you)\s+make|how\s+to\s+prepare|so\s+macht\s+man|so\s+geht|comment\s+(?:faire|préparer)"
    r"|come\s+(?:fare|preparare)|cómo\s+(?:hacer|preparar)|hoe\s+maak\s+je|så\s+(?:gör|lagar|bakar)\s+du|sådan\s+laver\s+du"
    r"|slik\s+lager\s+du|jak\s+zrobić|como\s+fazer)\s+[^\W\d][^.!?:;\d]{2,50}:",
    re.IGNORECASE,
)
# "Pflaumen waschen": what is done stands at the end of it
_DONE_AT_LAST: Final = late_regex(r"\s[a-zäöüß]{2,}(?:en|ern|eln)$")


def with_title_unstopped(rows: Sequence[Row]) -> list[Row]:
    """Return rows with a title that ends in a stop without it, where a list stands below.

    >>> rows = [Row("Damson jelly."), Row("1 lb damsons", "item", gap=True)]
    >>> [row.text for row in with_title_unstopped(rows)]
    ['Damson jelly', '1 lb damsons']
    >>> rows = [Row("We love plums."), Row("1 lb plums", "item", gap=True)]
    >>> with_title_unstopped(rows)[0].text
    'We love plums.'
    >>> with_title_unstopped([Row("How to make plum jam:"), Row("You will need jars.")])[0].text
    'How to make plum jam'
    """
    if rows and rows[0].shape == "line" and _HOW_TO.fullmatch(rows[0].text.strip()):
        return [replace(rows[0], text=rows[0].text.strip().rstrip(" :")), *rows[1:]]
    below = rows[1 : _FIRST_ROWS + 1]
    begins = next((at for at, row in enumerate(below) if is_head(row) or _is_thing(row)), None)
    if begins is None or (begins == 0 and not below[0].gap):
        return list(rows)
    others = any(row.shape == "heading" or is_title(row.text) for row in below[:begins])
    said = " ".join(row.text for row in rows[1:]).lower()
    if others or rows[0].shape != "line" or not is_stopped_title(rows[0].text, said):
        return list(rows)
    return [replace(rows[0], text=rows[0].text.strip().removesuffix(".")), *rows[1:]]


def is_stopped_title(text: str, said_below: str) -> bool:
    """Whether a few words with a stop name what is made, and nothing that is done or told.

    `said_below`, in small letters, are the words of the rest: what they name is said there again.

    >>> is_stopped_title("Turkish delight.", "cut the delight"), is_stopped_title("Enjoy.", "")
    (True, False)
    """
    bare = text.strip().removesuffix(".")
    if bare == text.strip() or _SIGNS.search(bare) or len(bare.split()) > _MOST_WORDS:
        return False
    first = plain(bare).split(" ")[0]
    bids = first in words("told_first") | words("told_last") or is_plainly_work(bare)
    told = does_something(bare) or _TELLS.search(bare) or _DONE_AT_LAST.search(bare)
    if bids or told or not is_title(bare):
        return False
    return says_its_kind(bare) or bool(staples_named(bare)) or is_said_again(bare, said_below)


def tells(text: str) -> bool:
    """Whether a few words are somebody's sentence and no name: "Die Zubereitung ist leicht:".

    >>> tells("Die Zubereitung ist kinderleicht:"), tells("Advocaat volgens oud recept:")
    (True, False)
    """
    return _TELLS.search(text) is not None


def _is_thing(row: Row) -> bool:
    return row.shape == "item" or is_ingredient(row.text)
