"""Patterns as Python made them, so that none need be made twice.

To make a pattern of a hundred words Python reads it letter by letter and writes down, in numbers,
what its engine is to follow: of a command that reads one recipe that was a fifth of the time. From
the same numbers the same pattern is there at once. They hold for one version of Python. Leaves out
where they are kept from one command to the next: saving/kept_patterns.py.
"""

from __future__ import annotations

import re
from array import array
from functools import cache
from importlib import import_module
from typing import Any, Final, NamedTuple, cast

Key = tuple[str | bytes, int]
"""What is written of a pattern, and its flags as they were asked for."""
Made = tuple[int, bytes, int, dict[str, int], tuple[str | None, ...]]
"""All its flags, its numbers, how many groups it has, each name's group and each group's name."""


class Engine(NamedTuple):
    """The parts of Python that read a pattern, write its numbers, and follow them."""

    parser: Any
    compiler: Any
    engine: Any
    numbers: str

    @property
    def told_by(self) -> tuple[int, int]:
        """What tells one engine from another, beside the version of Python."""
        return self.engine.MAGIC, self.engine.CODESIZE


made_before: Final[dict[Key, Made]] = {}
"""Every pattern that is known by its numbers; what makes one notes it where `notes` says so."""
notes: Final[list[bool]] = [False]
_TRIED: Final = (r"(?P<one>[ä-ö]{2,}?)|\bquince(?!s)|(\d)", re.IGNORECASE)


@cache
def engine_of_python() -> Engine | None:
    """Return these parts; None where this Python has them elsewhere, or works otherwise.

    They are Python's own and no part of its promise to others: one pattern is made by its numbers
    first, and where it is not the one that `re.compile` makes, none is.
    """
    try:
        parser, compiler, engine = map(import_module, ("re._parser", "re._compiler", "_sre"))
        size = engine.CODESIZE
        found = Engine(parser, compiler, engine, {array(one).itemsize: one for one in "BHIL"}[size])
        alike = _by_numbers(found, _TRIED[0], _made(found, *_TRIED)) == re.compile(*_TRIED)
    except (ImportError, AttributeError, KeyError, TypeError, ValueError, RuntimeError):
        return None
    return found if alike else None


def make_pattern(words: str | bytes, flags: int) -> re.Pattern[Any]:
    """Return what `re.compile` returns, by its numbers where these are known.

    >>> make_pattern("(?P<first>a)|b", re.IGNORECASE) == re.compile("(?P<first>a)|b", re.IGNORECASE)
    True
    """
    flags = int(flags)  # of a number the parser asks sooner what is in it than of named flags
    key = (words, flags)
    made = made_before.get(key)
    engine = engine_of_python() if made is not None or notes[0] else None
    if engine is None:
        return re.compile(cast(Any, words), flags)
    if made is None:
        made = made_before[key] = _made(engine, words, flags)
    return _by_numbers(engine, words, made)


def _by_numbers(engine: Engine, words: str | bytes, made: Made) -> re.Pattern[Any]:
    flags, code, groups, places, names = made
    numbers = array(engine.numbers)
    numbers.frombytes(code)
    pattern = engine.engine.compile(words, flags, numbers.tolist(), groups, places, names)
    return cast("re.Pattern[Any]", pattern)


def _made(engine: Engine, words: str | bytes, flags: int) -> Made:
    """Make a pattern's numbers, as the last lines of `re.compile` in Python's own library do."""
    parts = engine.parser.parse(words, flags)
    code = array(engine.numbers, map(int, engine.compiler._code(parts, flags)))
    places = {name: int(place) for name, place in parts.state.groupdict.items()}
    names: list[str | None] = [None] * parts.state.groups
    for name, place in places.items():
        names[place] = name
    known_flags = int(flags) | int(parts.state.flags)
    return known_flags, code.tobytes(), int(parts.state.groups) - 1, places, tuple(names)
