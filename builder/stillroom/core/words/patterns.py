"""Patterns that wait: each is made when it is first asked, not when its module is loaded.

A command that reads one recipe asks a third of those that the house knows, and making them all
took it longer than reading. What a pattern finds is as `re.compile` would find it. A module's own
patterns are written so; what is made of data inside a function waits there already, behind a cache.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any, AnyStr, cast

_ASKED = ("search", "match", "fullmatch", "finditer", "findall", "split", "sub", "subn")


def late_regex(words: AnyStr, flags: int = 0) -> re.Pattern[AnyStr]:
    """Return a pattern that is made once it is asked something.

    >>> late_regex("[a-z]+", re.IGNORECASE).fullmatch("Quince")[0]
    'Quince'
    """
    return cast("re.Pattern[AnyStr]", LateRegex(words, flags))


def any_word(words: Iterable[str]) -> re.Pattern[str]:
    """Return the pattern of whole words in any capitals; "back*" is all that begins so.

    >>> pattern = any_word(["back*", "Ei"])
    >>> [found[0] for found in pattern.finditer("Eier backen, ein Ei")]
    ['backen', 'Ei']
    """
    longest = sorted(words, key=len, reverse=True)
    either = "|".join(re.escape(word).replace(r"\*", r"\w*") for word in longest)
    return re.compile(rf"(?<!\w)(?:{either})(?!\w)", re.IGNORECASE)


class LateRegex:
    """Stands where a pattern is wanted, and answers all that one answers."""

    def __init__(self, words: str | bytes, flags: int) -> None:
        self.words, self.flags_given = words, flags

    def __getattr__(self, asked: str) -> Any:
        """Make the pattern, and keep its ways of searching, so that no search comes here again."""
        if asked.startswith("__"):
            raise AttributeError(asked)
        made = re.compile(self.words, self.flags_given)
        self.__dict__.update({way: getattr(made, way) for way in _ASKED})
        return getattr(made, asked)
