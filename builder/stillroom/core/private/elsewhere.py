"""A text's words for a household's keys in other languages, said as the wall knows them.

"Korb = klein", "nombre,cesta,evita" and "<mand>" stand where "basket" does. The words are data
(list_names.yml, held against the list's own). Leaves out what a list is: shapes.py, laid_out.py.
"""

from __future__ import annotations

import re
from functools import cache

from stillroom.core.words.data_files import read_data

_GIVEN = "basket"
_KEPT_FROM = ("avoid", "never")


def in_known_words(lowered: str) -> str:
    """Return a text of small letters with such keys in English; "" where it has none to speak of.

    >>> in_known_words("name;korb;meidet"), in_known_words("korb = klein"), in_known_words("jam")
    ('name;basket;avoid', '', '')
    """
    # somebody is given something, and is kept from something: else it is no list
    given, kept_from = _telling()
    if not any(word in lowered for word in given):
        return ""
    spaced = lowered.replace("-", " ").replace("_", " ")
    if not any(word in spaced for word in kept_from):
        return ""
    said = _meant()
    return _any_word().sub(lambda found: said[re.sub(r"[\s_-]+", " ", found[0])], lowered)


@cache
def _meant() -> dict[str, str]:
    rows = read_data("list_names.yml", "private")["elsewhere"]
    return {word: key for key, words in rows.items() for word in words}


@cache
def _telling() -> tuple[frozenset[str], frozenset[str]]:
    rows = read_data("list_names.yml", "private")["elsewhere"]
    return frozenset(rows[_GIVEN]), frozenset(w for key in _KEPT_FROM for w in rows[key])


@cache
def _any_word() -> re.Pattern[str]:
    said = "|".join(
        re.escape(word).replace(r"\ ", r"[ _-]") for word in sorted(_meant(), key=len)[::-1]
    )
    return re.compile(rf"(?<![^\W_])(?:{said})(?![^\W_])")
