"""What only garnishes a thing when it is served: it lies in no jar.

Counted so only where the list and the method both say it: a sprig "to garnish" that is pushed into
the bottle lies in it. Leaves out its allergens, which count however it comes to the table.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from stillroom.core.words.patterns import clause_regex
from stillroom.core.words.plurals import singular_word

_A_GARNISH = clause_regex(
    r"\b(?:to (?:garnish|serve|decorate)|for (?:garnish\w*|serving))\b", re.IGNORECASE
)
_SERVED = clause_regex(r"\b(?:serv(?:e|ed|ing)|garnish\w*)\b", re.IGNORECASE)


def laid_on_when_served(item: str, words: str, clauses: Sequence[str]) -> bool:
    """Whether a line is a garnish, and whatever names it in the method says that it is served.

    >>> laid_on_when_served("mint", "mint to garnish", ["stir", "lay the mint on it to serve"])
    True
    >>> laid_on_when_served("mint", "mint to garnish", ["push the mint into the oil"])
    False
    """
    if not _A_GARNISH.search(words):
        return False
    own = _long_words(item)
    naming = [clause for clause in clauses if own & _long_words(clause)]
    return bool(naming) and all(_SERVED.search(clause) for clause in naming)


def _long_words(text: str) -> set[str]:
    return {singular_word(word) for word in re.findall(r"[^\W\d_]{4,}", text.lower())}
