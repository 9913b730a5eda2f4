"""Whether what is written of needs is several, or one sentence that is only understood whole."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from stillroom.core.allergens.sentences import read_avoided


def as_understood(said: Any, words: Sequence[str]) -> Sequence[str]:
    """Return needs as one text a need; a sentence that is only understood whole stays whole.

    >>> as_understood("nuts and dairy", ["nuts", "dairy"])
    ['nuts', 'dairy']
    >>> as_understood("eats everything, except nuts", ["eats everything", "except nuts"])
    ['eats everything, except nuts']
    """
    if not isinstance(said, str) or len(words) < 2 or all(map(_understood, words)):
        return words
    return [said.strip()] if _understood(said) else words


def _understood(words: str) -> bool:
    found = read_avoided(words)
    return found is not None and not found.ask
