"""Patterns as Python made them, so that none need be made twice.

To make a pattern of a hundred words Python reads it letter by letter and writes down, in numbers,
what its engine is to follow: of a command that reads one recipe that was a fifth of the time. From
the same numbers the same pattern is there at once. They hold for one version of Python. Leaves out
where they are kept from one command to the next: saving/kept_patterns.py.
"""

from __future__ import annotations

import re
from array import array
from importlib import import_module
from re import _compiler, _parser  # type: ignore[attr-defined]
from typing import Any, Final, cast

_sre: Any = import_module("_sre")

Key = tuple[str | bytes, int]
"""What is written of a pattern, and its flags as they were asked for."""
Made = tuple[int, bytes, int, dict[str, int], tuple[str | None, ...]]
"""All its flags, its numbers, how many groups it has, each name's group and each group's name."""

MADE_BY: Final = (_sre.MAGIC, _sre.CODESIZE)
"""What tells one engine from another, beside the version of Python."""
_NUMBERS: Final = next(sign for sign in "BHIL" if array(sign).itemsize == _sre.CODESIZE)

made_before: Final[dict[Key, Made]] = {}
"""Every pattern that is known by its numbers; what makes one notes it where `notes` says so."""
notes: Final[list[bool]] = [False]


def make_pattern(words: str | bytes, flags: int) -> re.Pattern[Any]:
    """Return what `re.compile` returns, by its numbers where these are known.

    >>> make_pattern("(?P<first>a)|b", re.IGNORECASE) == re.compile("(?P<first>a)|b", re.IGNORECASE)
    True
    """
    key = (words, int(flags))
    made = made_before.get(key)
    if made is None:
        if not notes[0]:
            return re.compile(cast(Any, words), flags)
        made = made_before[key] = _made(words, flags)
    known_flags, code, groups, places, names = made
    numbers = array(_NUMBERS)
    numbers.frombytes(code)
    pattern = _sre.compile(words, known_flags, numbers.tolist(), groups, places, names)
    return cast("re.Pattern[Any]", pattern)


def _made(words: str | bytes, flags: int) -> Made:
    """Make a pattern's numbers, as the last lines of `re.compile` in Python's own library do."""
    parts = _parser.parse(words, flags)
    code = array(_NUMBERS, map(int, _compiler._code(parts, flags)))
    places = {name: int(place) for name, place in parts.state.groupdict.items()}
    names: list[str | None] = [None] * parts.state.groups
    for name, place in places.items():
        names[place] = name
    known_flags = int(flags) | int(parts.state.flags)
    return known_flags, code.tobytes(), int(parts.state.groups) - 1, places, tuple(names)
