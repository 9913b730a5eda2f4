"""The normal form of a food's words, by which it is looked up: one form however it is written.

Capitals, accents, ligatures, hyphens, apostrophes and plurals make no other food: "Crème-Fraîche"
and "creme fraiche" are one, "Confectioners' sugar" and "confectioner sugars" another. Leaves out
what the words mean.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from functools import lru_cache

from stillroom.core.plurals import singular_word

_WORD = re.compile(r"\d+(?:[.,]\d+)?\s?%|[^\W_]+(?:['’‘ʼ][^\W_]+)*['’]?|&", re.UNICODE)
_LIGATURES = {"œ": "oe", "æ": "ae", "ß": "ss", "ø": "o", "ł": "l", "đ": "d"}
_APOSTROPHES = str.maketrans("", "", "'’‘ʼ")
# articles say nothing of which food is meant
# whose plural is another food: "pepper" is ground, "peppers" are vegetables
_MANY_OF_ITS_OWN = frozenset({"peppers"})
_ARTICLES = frozenset({"the", "a", "an"})


@dataclass(frozen=True)
class Word:
    """One word of a text: its normal form and where it stands, from `start` up to `end`."""

    form: str
    start: int
    end: int


@lru_cache(maxsize=32768)
def normal_word(word: str) -> str:
    """Return the normal form of one word.

    >>> [normal_word(word) for word in ("Crème", "Œufs", "baker’s", "Leaves")]
    ['creme', 'oeuf', 'baker', 'leaf']
    """
    plain = word.casefold().translate(_APOSTROPHES)
    if not plain.isascii():
        plain = "".join(_LIGATURES.get(letter, letter) for letter in plain)
        parts = unicodedata.normalize("NFKD", plain)
        plain = "".join(letter for letter in parts if not unicodedata.combining(letter))
    if plain == "&":
        return "and"
    return plain if plain in _MANY_OF_ITS_OWN else singular_word(plain.replace(" ", ""))


def words_of(text: str) -> tuple[Word, ...]:
    """Return the words of a text in their normal form; hyphens part words, articles are left out.

    >>> [word.form for word in words_of("the Self-Raising flours")]
    ['self', 'raising', 'flour']
    """
    found = (
        Word(normal_word(match[0]), match.start(), match.end()) for match in _WORD.finditer(text)
    )
    return tuple(word for word in found if word.form and word.form not in _ARTICLES)


def normal_form(text: str) -> str:
    """Return a text as the table of names holds it.

    >>> normal_form("Confectioners’ Sugar"), normal_form("crème-fraîche")
    ('confectioner sugar', 'creme fraiche')
    """
    return " ".join(word.form for word in words_of(text))
