"""The normal form of a food's words, by which it is looked up: one form however it is written.

Capitals, accents, ligatures, hyphens, apostrophes and plurals make no other food: "Crème-Fraîche"
and "creme fraiche" are one, "Confectioners' sugar" and "confectioner sugars" another. Leaves out
what the words mean.
"""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache
from typing import NamedTuple

from stillroom.core.words.patterns import late_regex
from stillroom.core.words.plurals import singular_word

# French and Italian run "de" and "the" into the word behind: "gousse d'ail", "all'olio"
_ELIDED = r"\b(?:d|l|dell|all|nell|dall|sull|un|qu)['’‘ʼ](?=[^\W\d_]{2})"
_WORD = late_regex(
    rf"\d+(?:[.,]\d+)?\s?%|{_ELIDED}|[^\W_]+(?:['’‘ʼ][^\W_]+)*['’]?|&", re.UNICODE | re.IGNORECASE
)
_LIGATURES = {"œ": "oe", "æ": "ae", "ß": "ss", "ø": "o", "ł": "l", "đ": "d", "ı": "i"}
# whose sign is of one language alone: "øl" is beer and no German oil, "óleo" oil, "thé" no article
_BY_ITS_SIGN = {
    "øl": "beer",
    "øller": "beer",
    "óleo": "oil",
    "óleos": "oil",
    "thé": "tea",
    "thés": "tea",
}
_ELISIONS = "'’‘ʼ"
_APOSTROPHES = str.maketrans("", "", _ELISIONS)
# whose plural is another food: "pepper" is ground, "framboise" also a spirit
_MANY_OF_ITS_OWN = frozenset({"peppers", "framboises"})
# articles say nothing of which food is meant
_ARTICLES = frozenset(
    {"the", "a", "an", "l", "un", "une", "ein", "eine", "einer", "eines", "una", "uno", "een"}
)
# what a cook's card shortens, and nothing else is called by
_SHORTENED = {
    "choc": "chocolate", "cinn": "cinnamon", "marg": "margarine", "marge": "margarine",
    "evap": "evaporated", "unsw": "unsweetened", "pwdr": "powder", "pwd": "powdered",
    "bkg": "baking", "parm": "parmesan", "mozz": "mozzarella", "worc": "worcestershire",
    "crm": "cream", "gran": "granulated", "butr": "butter", "brn": "brown", "nutm": "nutmeg",
    "ext": "extract", "cocoanut": "coconut", "veg": "vegetable", "conf": "confectioner",
}  # fmt: skip
# how what is run into the next word is written alone
_WRITTEN_OUT = {"d": "de"}


class Word(NamedTuple):
    """One word of a text: its normal form and where it stands, from `start` up to `end`."""

    form: str
    start: int
    end: int


def letters_of(word: str) -> str:
    """Return a word in small letters without accents or ligatures.

    >>> letters_of("Mjölk"), letters_of("Æg"), letters_of("fındık")
    ('mjolk', 'aeg', 'findik')
    """
    plain = word.casefold()
    if plain.isascii():
        return plain
    plain = "".join(_LIGATURES.get(letter, letter) for letter in plain)
    parts = unicodedata.normalize("NFKD", plain)
    return "".join(letter for letter in parts if not unicodedata.combining(letter))


@lru_cache(maxsize=32768)
def normal_word(word: str) -> str:
    """Return the normal form of one word.

    >>> [normal_word(word) for word in ("Crème", "Œufs", "baker’s", "Leaves")]
    ['creme', 'oeuf', 'baker', 'leaf']
    >>> normal_word("cinn")
    'cinnamon'
    """
    plain = word.casefold().translate(_APOSTROPHES)
    if plain in _BY_ITS_SIGN:
        return _BY_ITS_SIGN[plain]
    plain = letters_of(plain)
    if plain == "&":
        return "and"
    if plain in _SHORTENED:
        return _SHORTENED[plain]
    return plain if plain in _MANY_OF_ITS_OWN else singular_word(plain.replace(" ", ""))


@lru_cache(maxsize=4096)
def words_of(text: str) -> tuple[Word, ...]:
    """Return the words of a text in their normal form; hyphens part words, articles are left out.

    >>> [word.form for word in words_of("the Self-Raising flours")]
    ['self', 'raising', 'flour']
    >>> [word.form for word in words_of("gousse d’ail")]
    ['gousse', 'de', 'ail']
    """
    found = (Word(_form(match[0]), match.start(), match.end()) for match in _WORD.finditer(text))
    return tuple(word for word in found if word.form and word.form not in _ARTICLES)


def _form(word: str) -> str:
    form = normal_word(word)
    return _WRITTEN_OUT.get(form, form) if word[-1] in _ELISIONS else form


def normal_form(text: str) -> str:
    """Return a text as the table of names holds it.

    >>> normal_form("Confectioners’ Sugar"), normal_form("crème-fraîche")
    ('confectioner sugar', 'creme fraiche')
    """
    return " ".join(word.form for word in words_of(text))
