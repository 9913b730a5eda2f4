"""A clause of a method in another language with the English words by which the rules know it.

German, French, Spanish, Italian, Dutch and Swedish, by the words of said_elsewhere.yml; the clause
itself goes on standing in front, since that is what is shown. A clause that denies anything is left
as it is. Leaves out what is cooked through: heat_elsewhere.py.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache

from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import any_word, clause_regex

# these deny nothing that is done: "sans cesser de remuer"
_DENIES_NOTHING = clause_regex(
    r"\b(?:sans cesse\w*|sans arrêt|ohne unterlass|sin dejar|sin parar|senza smettere"
    r"|zonder te stoppen)\b",
    re.IGNORECASE,
)
_DENIES = clause_regex(
    r"\b(?:nicht|kein\w*|ohne|niemals|statt|pas|jamais|sans|évite\w*|nunca|jamás|sin|evitar|mai"
    r"|senza|evitare|niet|geen|zonder|nooit)\b",
    re.IGNORECASE,
)


@lru_cache(maxsize=4096)
def in_english_too(clause: str) -> str:
    """Return a clause, behind it the English of what it does in another language.

    >>> in_english_too("Den Zucker mit dem Wasser aufkochen")
    'Den Zucker mit dem Wasser aufkochen (boil / sugar)'
    >>> in_english_too("nicht kochen"), in_english_too("boil the sugar")
    ('nicht kochen', 'boil the sugar')
    """
    if _DENIES.search(_DENIES_NOTHING.sub(" ", clause)):
        return clause
    english = [word for word, pattern in _patterns().items() if pattern.search(clause)]
    # parted, so that no two words of it are read as one phrase: "boil hot jars"
    return f"{clause} ({' / '.join(english)})" if english else clause


@cache
def _patterns() -> dict[str, re.Pattern[str]]:
    table: dict[str, list[str]] = read_data("said_elsewhere.yml", "method")
    return {word: any_word(listed) for word, listed in table.items()}
