"""Several words as one phrase: "a, b and c"."""

from __future__ import annotations


def join_and(words: list[str]) -> str:
    """Join with commas and a last "and".

    >>> join_and(["a", "b", "c"])
    'a, b and c'
    """
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)
