"""One and many of a counted item: "egg" and "eggs", "bay leaf" and "bay leaves".

English rules and the kitchen's exceptions are data (words/plurals.yml); the look-up of foods, the
printed amounts and the browser all read the same.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Any

from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex

# "Plätzchen", "Löffel", "Nüsse", "weiß", "Weckglas": no rule of English makes two of them
_NOT_ENGLISH = late_regex(r"[äöüßœø]|[a-z]{2}(?:chen|glas)$")
_HEAD = late_regex(r"[\s,](?:(?<=,)|(?:of|or|for|with|in|to)\s)")


def plural_tables() -> dict[str, Any]:
    """Return the rules as data: `same`, `odd` and `counted` (many to one), `endings` in order."""
    return dict(read_data("plurals.yml", "words"))


@cache
def _same() -> frozenset[str]:
    return frozenset(plural_tables()["same"])


@cache
def _to_one() -> dict[str, str]:
    return dict(plural_tables()["odd"])


@cache
def _to_many() -> dict[str, str]:
    """Return the plurals that no rule makes; of several the first in the table counts."""
    named: dict[str, list[str]] = {}
    for many, one in _to_one().items():
        named.setdefault(one, []).append(many)
    return {one: many[0] for one, many in named.items() if _by_rule(one) != many[0]}


@cache
def _counted() -> dict[str, str]:
    return dict(plural_tables()["counted"])


@cache
def _endings() -> tuple[tuple[str, str], ...]:
    return tuple((many, one) for many, one in plural_tables()["endings"])


@cache
def singular_word(word: str) -> str:
    """Return the singular of one word in small letters.

    >>> [singular_word(word) for word in ("pouches", "glasses", "leaves", "olives", "couscous")]
    ['pouch', 'glass', 'leaf', 'olive', 'couscous']
    """
    if word in _same() or len(word) < 3:
        return word
    if word in _to_one():
        return _to_one()[word]
    for many, one in _endings():
        if word.endswith(many) and len(word) > len(many):
            return word[: len(word) - len(many)] + one
    return word


def _by_rule(word: str) -> str:
    if re.search(r"[^aeiou]y$", word):
        return word[:-1] + "ies"
    return word + ("es" if re.search(r"(s|x|z|ch|sh)$", word) else "s")


def plural(item: str) -> str:
    """Return the plural of an item, by its last word.

    A word with letters that English does not have is left as it is written.

    >>> plural("Seville orange"), plural("bay leaf"), plural("sheet of paper"), plural("berry")
    ('Seville oranges', 'bay leaves', 'sheets of paper', 'berries')
    """
    head, last, rest = _split(item)
    word = last.lower()
    if not word or word in _same() or word != singular_word(word) or _NOT_ENGLISH.search(word):
        return item
    many = _to_many().get(word) or _by_rule(word)
    return head + _as_written(last, word, many) + rest


def counted(count: int, noun: str) -> str:
    """Say so many of a thing.

    >>> counted(1, "batch"), counted(3, "batch"), counted(0, "bay leaf")
    ('1 batch', '3 batches', '0 bay leaves')
    """
    return f"{count} {noun if count == 1 else plural(noun)}"


def singular(item: str) -> str:
    """Return the singular of an item, by its last word.

    >>> singular("unwaxed Seville oranges"), singular("star anise"), singular("quinces")
    ('unwaxed Seville orange', 'star anise', 'quince')
    """
    head, last, rest = _split(item)
    word = last.lower()
    one = _counted().get(word) or singular_word(word)
    return head + _as_written(last, word, one) + rest


def _as_written(last: str, word: str, changed: str) -> str:
    """Change the end of a word and keep the capitals of its beginning."""
    kept = 0
    while kept < min(len(word), len(changed)) and word[kept] == changed[kept]:
        kept += 1
    return last[:kept] + changed[kept:]


def _split(item: str) -> tuple[str, str, str]:
    """Split "big sheets of paper" into what stands before the counted word, the word, the rest."""
    found = _HEAD.search(item)
    counted, rest = (item[: found.start()], item[found.start() :]) if found else (item, "")
    head, space, last = counted.rpartition(" ")
    return head + space, last, rest
