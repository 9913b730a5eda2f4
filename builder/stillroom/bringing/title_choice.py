"""Another line above a list that names the recipe, where the one taken for its title does not.

A site's name, the head of a page's part, a word of its menu: of such, nothing is in the list or its
method. Leaves out which line is the title by where it stands: list_titles.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.list_parts import is_part_alone
from stillroom.bringing.naming import says_kind_or_doubt
from stillroom.bringing.sorting import is_sentence, is_title
from stillroom.core.lines.staple_table import staples_named
from stillroom.core.words.patterns import late_regex

_MOST_LOOKED: Final = 60
_MOST_WORDS: Final = 12
_LEAST_STEM: Final = 5
_STEM: Final = 6
_SURELY: Final = 2
"""What is said again weighs as much as a kind and a food together."""
# "Butter for the tin": a thing without an amount
_FOR_THAT: Final = late_regex(
    r"\b(?:for|für|pour|per|para|voor|till|til)\s+(?:the|d(?:ie|as|en)|l[ae]|il|el|de|het|dusting|greasing|rolling|brushing)\b",
    re.IGNORECASE,
)
_WORD: Final = late_regex(r"[^\W\d_]+")
# "Vin de noix aux épices : recette traditionnelle": a sign parts what it is called from the rest
_TAIL: Final = late_regex(r"\s+[:|–—-]\s+.*$")


def named_better(
    rows: Sequence[Row], begin: int, title: int, list_begin: int, end: int
) -> int | None:
    """Return the row above a list that names the recipe where its title names nothing of it.

    >>> text = ("Around my stove", "Quince jelly", "2 lb quinces", "1 lb sugar", "Boil them.")
    >>> named_better([Row(one) for one in text], 0, 0, 2, 5)
    1
    >>> text = ("Aunt Ann's best", "Quince jelly", "2 lb damsons", "Boil it.", "Her best.")
    >>> named_better([Row(one) for one in text], 0, 0, 2, 5) is None
    True
    """
    below = " ".join(row.text for row in rows[list_begin:end]).lower()
    if _names(rows[title].text, below):
        return None
    others = [
        at
        for at in range(begin, list_begin)[:_MOST_LOOKED]
        if at != title and _may_be_title(rows[at]) and _names(rows[at].text, below) > _SURELY
    ]
    return max(others, key=lambda at: (_names(rows[at].text, below), -at), default=None)


def _may_be_title(row: Row) -> bool:
    bare = _TAIL.sub("", row.text)
    few = len(bare.split()) <= _MOST_WORDS and row.shape in ("line", "heading")
    few = few and not _FOR_THAT.search(bare)
    return few and is_title(bare) and not (is_head(row) or is_part_alone(row) or is_sentence(bare))


def _names(text: str, below: str) -> int:
    """Return how surely a line names what is made: by its kind, a food, what is said below it."""
    bare = _TAIL.sub("", text)
    stems = [one.lower()[:_STEM] for one in _WORD.findall(bare) if len(one) >= _LEAST_STEM]
    again = any(re.search(rf"(?<!\w){stem}", below) for stem in stems)
    return _SURELY * again + says_kind_or_doubt(bare) + bool(staples_named(bare))
