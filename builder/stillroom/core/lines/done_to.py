"""What is done to a food, said behind its name without a comma: "2 onions diced" are onions.

The words move to the note, so that a list, a card and a shop call the food by its name. Leaves out
words that make another food of it ("tomatoes dried"), and which food is meant: ingredient_food.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from stillroom.core.larder.phrases import phrase_words
from stillroom.core.words.data_files import read_data

_MOST_WORDS = 5
_APART = frozenset("-–—")


def names_before_what_is_done(item: str, language: str) -> Iterator[tuple[str, str]]:
    """Yield how an item may be cut into its name and what is done to it, the shortest name first.

    >>> list(names_before_what_is_done("onions finely chopped", "en"))
    [('onions', 'finely chopped'), ('onions finely', 'chopped')]
    >>> list(names_before_what_is_done("diced onions", "en"))
    []
    """
    words = item.split()
    done, how = _patterns(language)
    if _APART.intersection(words) or _lasting().search(item):
        return
    start = len(words)
    while start > 1 and (done.fullmatch(words[start - 1]) or how.fullmatch(words[start - 1])):
        start -= 1
    if len(words) - start > _MOST_WORDS:
        return
    for place in range(start, len(words)):
        said = words[place:]
        joined = {said[0], words[place - 1]} & phrase_words("joins")
        if not joined and (done.fullmatch(said[-1]) or done.fullmatch(said[0])):
            yield " ".join(words[:place]), " ".join(said)


@cache
def _lasting() -> re.Pattern[str]:
    """Return the pattern of what is done long before and stays in the name: dried, smoked."""
    words: list[str] = read_data("line_words.yml")["done_before"]
    return re.compile(rf"\b(?:{'|'.join(words)})")


@cache
def _patterns(language: str) -> tuple[re.Pattern[str], re.Pattern[str]]:
    """Return the patterns of words of doing and of how it is done, in a language and in English."""
    table = read_data("line_words.yml")["done_to"]
    rows = [table[one] for one in dict.fromkeys((language, "en")) if one in table]
    done, how = ("|".join(row[part] for row in rows) for part in ("done", "how"))
    return re.compile(done), re.compile(how)
