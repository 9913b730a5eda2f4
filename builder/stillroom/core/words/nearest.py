"""What a misspelt word was probably meant to be, among those that are known."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import Final

from stillroom.core.words.said import Said

say: Final = Said("stillroom.core.words", "words")
LISTED: Final = 24
"""More words than this are not listed."""


@lru_cache(maxsize=65_536)
def _letters(word: str) -> int:
    """Return which letters are in a word, each as a bit; of two that share one, either."""
    held = 0
    for letter in word:
        held |= 1 << (ord(letter) & 63)
    return held


def nearest(word: str, known: Iterable[str], likeness: float = 0.6) -> str | None:
    """Return the known word most like `word` (1 is the same), or None when none is close.

    >>> nearest("cupp", ["cup", "clove"])
    'cup'
    """
    lowered = {candidate.lower(): candidate for candidate in known}
    # words of too unlike a length, or with too few letters in common, are never so alike
    said = word.lower()
    alike = [
        one for one in lowered if 2 * min(len(one), len(said)) >= likeness * (len(one) + len(said))
    ]
    letters = _letters(said) if alike else 0
    near = [
        one
        for one in alike
        if 2 * min(len(one) - (_letters(one) & ~letters).bit_count(), len(said))
        >= likeness * (len(one) + len(said))
    ]
    import difflib  # late: only a slip needs it

    found = difflib.get_close_matches(said, near, n=1, cutoff=likeness) if near else []
    return lowered[found[0]] if found else None


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """Say which known word was probably meant, or list what may be written if that is short.

    >>> did_you_mean("titel", ["title", "kind"])
    'Did you mean "title"?'
    >>> did_you_mean("xyzzy", ["title", "kind"])
    'It may be: kind, title.'
    >>> did_you_mean("xyzzy", [])
    ''
    """
    choices = sorted(known)
    match = nearest(word, choices)
    if match:
        return say("did_you_mean", word=match)
    # A list longer than a glance helps nobody.
    return (
        ""
        if not choices or len(choices) > LISTED
        else say("it_may_be", words=say("comma").join(choices))
    )
