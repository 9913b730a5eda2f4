"""By which words a giving list says what: each key of its model, and what else it is called.

The words are data (list_words.yml). Leaves out what is said under them: as_written.py.
"""

from __future__ import annotations

import re
from functools import cache
from importlib.resources import files
from typing import Any

import yaml

from stillroom.core.private.shapes import GIVING_LIST_KEY
from stillroom.core.words.nearest import nearest

_A_SLIP = 6
"""A shorter word is near many a name: "Kurt" is no slip of "kurv"."""


@cache
def words_by_part() -> dict[str, dict[str, str]]:
    """Return for each part of a list which key every word stands for."""
    text = (files("stillroom.giving") / "list_words.yml").read_text(encoding="utf-8")
    return {
        part: {plain_key(word): key for key, also in rows.items() for word in (key, *also)}
        for part, rows in yaml.safe_load(text).items()
    }


def said_key(part: str, data: Any, key: str) -> str:
    """Return the word under which a part of the list has something: "allergies" for avoid.

    >>> said_key("household", {"Allergies": "nuts"}, "avoid")
    'Allergies'
    """
    if key in data:
        return key
    known = words_by_part()[part]
    return next((w for w in data if known.get(plain_key(str(w)), w) == key), key)


def plain_key(word: str) -> str:
    """Return a key as it is compared: without capitals, hyphens and underscores."""
    return " ".join(re.split(r"[\s_-]+", word.strip().lower().replace("’", "'")))


def near_key(part: str, word: str, name: str) -> bool:
    """Say whether a word is a key of a part of the list, or one that is misspelt.

    >>> near_key("household", "Alergies", "name"), near_key("household", "Kurt", "name")
    (True, False)
    """
    known = {name, *words_by_part()[part], *words_by_part()[part].values()}
    plain = plain_key(word)
    slips = [one for one in known if len(one) >= _A_SLIP] if len(plain) >= _A_SLIP else []
    return plain in known or nearest(plain, slips, 0.75) is not None


def is_private(word: str) -> bool:
    """Whether a key may be for the giver's own eyes: "note", "Notiz", "about them".

    >>> is_private("Notes"), is_private("message")
    (True, False)
    """
    return plain_key(word) in words_by_part()["private"]


def has_a_name(data: dict[Any, Any]) -> bool:
    """Whether a file says by any word what list it is: "Geschenkliste", "title"."""
    return said_key("list", data, GIVING_LIST_KEY) in data


def is_named_so(data: dict[Any, Any]) -> bool:
    """Whether a file names a giving list among its keys: "giving list", "Giving List"."""
    return any(plain_key(str(key)) == GIVING_LIST_KEY for key in data)
