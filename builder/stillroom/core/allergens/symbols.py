"""Small pictures between the words of what somebody must not have: "no 🥜", "coeliac 🌾🚫".

Each is put into words or says nothing more; one that is in no row leaves the whole not understood.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from functools import cache

from stillroom.core.allergens.near import named_in
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex

# joins pictures, or chooses how one is drawn or what colour its skin has
_DRAWN = late_regex("[\u200d\ufe0e\ufe0f\U0001f3fb-\U0001f3ff]")
_LEADS_ON = frozenset({"no", "to", "with", "of", "and", "or", "any", "free", "from", "&", "+"})


def in_words(text: str) -> str | None:
    """Return a text with its pictures in words, None where one of them is not known.

    >>> in_words("no 🥜"), in_words("vegan 🌱"), in_words("nut allergy ⚠️")
    ('no peanuts', 'vegan', 'nut allergy')
    >>> in_words("no 🪁") is None
    True
    """
    if text.isascii():
        return text
    # "shellfish 🐟" and "coconut milk 🥛" do not name the fish and the milk of the pictures yet
    named, found = named_in(text), list[str]()
    for piece in _DRAWN.sub("", text).split():
        word = ""
        for letter in piece:
            if unicodedata.category(letter) != "So":
                word += letter
                continue
            if (said := _meaning().get(letter)) is None:
                return None
            _put(found, word)
            word = ""
            if said and said not in named and not (said == "is fine" and said in text.lower()):
                leads = not found or found[-1].lower() in _LEADS_ON or said.startswith("is ")
                found[-1:] = found[-1:] if leads else [f"{found[-1].rstrip(',')},"]
                _put(found, said)
        _put(found, word)
    return " ".join(found)


def _put(found: list[str], word: str) -> None:
    if word:
        found.append(word)


@cache
def _meaning() -> Mapping[str, str]:
    rows = read_data("symbols.yml", "allergens")
    meaning = {picture: words for words, said in rows["means"].items() for picture in said.split()}
    bare = _DRAWN.sub("", rows["nothing"])
    return meaning | dict.fromkeys(re.sub(r"\s", "", bare), "")
