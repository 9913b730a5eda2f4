"""In which language a method is written, by its smallest words: a German page in an English book.

What it denies there is told too. Leaves out what it says: said_elsewhere.py, heat_elsewhere.py.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache

from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import any_word, clause_regex

_WORD = clause_regex(r"[^\W\d_]+")
_FEWEST = 2


@lru_cache(maxsize=2048)
def tongue_of(text: str) -> str:
    """Return a text's language ("de", "fr", "es", "it", "nl"), "" for English or too few words.

    >>> tongue_of("Die Zwiebeln mit dem Honig mischen."), tongue_of("Mix the onions with honey.")
    ('de', '')
    >>> tongue_of("Sand in the mould, de luxe"), tongue_of("Verser le lait dans les pots.")
    ('', 'fr')
    """
    words = _WORD.findall(text.lower())
    told = {name: sum(word in small for word in words) for name, small in _small_words().items()}
    english = told.pop("en")
    found = max(told, key=lambda name: told[name])
    others = max(count for name, count in told.items() if name != found)
    sure = told[found] >= _FEWEST and told[found] > english and told[found] > others
    return found if sure else ""


def denied_in(sentence: str) -> str:
    """Return a sentence without the clauses that deny something in its own language.

    >>> denied_in("Ohne Zwiebeln mischen, dann bei 170 °C backen.")
    ' dann bei 170 °C backen.'
    >>> denied_in("Den Zucker ohne Rühren schmelzen.")
    'Den Zucker ohne Rühren schmelzen.'
    """
    if not _denials().search(sentence):
        return sentence
    kept = [part for part in sentence.split(",") if not _denies(part)]
    return ",".join(kept)


def _denies(clause: str) -> bool:
    return bool(_denials().search(_harmless().sub(" ", clause)))


@cache
def _small_words() -> dict[str, frozenset[str]]:
    table: dict[str, list[str]] = read_data("tongues.yml", "method")["small_words"]
    return {name: frozenset(words) for name, words in table.items()}


@cache
def _denials() -> re.Pattern[str]:
    return any_word(read_data("tongues.yml", "method")["denials"])


@cache
def _harmless() -> re.Pattern[str]:
    return any_word(read_data("tongues.yml", "method")["deny_nothing"])
