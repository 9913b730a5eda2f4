"""A need that calls somebody of the household by a name written small: "ann is coeliac".

Whoever is called so is known by the household's own name. A name that is a food's as well stays as
it is written: "rosemary" may be what she is called, or what she must not have.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, Final

from stillroom.core.lines.staple_table import staples_named

_WORDS: Final = re.compile(r"[^\W\d_]+")
_CALLED: Final = re.compile(r"(?:(?<=[,;])\s*|^\s*)(?:[^\W\d_]+(?:['’]s\b)?[\s:]+)+(?=\S)")


def with_names(household: Mapping[str, Any]) -> dict[str, Any]:
    """Return a household whose needs call its people as its name does.

    >>> with_names({"name": "Ann and Will", "avoid": ["ann is coeliac", "nuts"]})["avoid"]
    ['Ann is coeliac', 'nuts']
    >>> with_names({"name": "Rosemary", "avoid": "rosemary, nuts"})["avoid"]
    'rosemary, nuts'
    """
    found, name, needs = dict(household), household.get("name"), household.get("avoid")
    names = _names_in(name) if isinstance(name, str) else {}
    if names and isinstance(needs, str):
        found["avoid"] = _called(needs, names)
    if names and isinstance(needs, list):
        found["avoid"] = [_called(one, names) if isinstance(one, str) else one for one in needs]
    return found


def _names_in(name: str) -> dict[str, str]:
    """Return the names of people in a household's name by their small letters."""
    said = [word for word in _WORDS.findall(name) if word[:1].isupper() and len(word) > 1]
    return {word.lower(): word for word in said if not staples_named(word)}


def _called(need: str, names: Mapping[str, str]) -> str:
    """Return a need with the names that it begins with, and no other word, as they are written."""

    def in_full(found: re.Match[str]) -> str:
        told: list[str] = []
        is_name = True
        for part in re.split(r"([^\W\d_]+)", found[0]):
            if _WORDS.fullmatch(part) and part != "and":
                is_name = is_name and part.lower() in names
            told.append(names[part.lower()] if is_name and part.lower() in names else part)
        return "".join(told)

    return _CALLED.sub(in_full, need)
