"""Several words as one phrase: "a, b and c"."""

from __future__ import annotations

from collections.abc import Sequence

from stillroom.core.words.said import Said

say = Said("stillroom.core.words", "words")


def join_and(words: Sequence[str]) -> str:
    """Join with commas and a last "and".

    >>> join_and(["a", "b", "c"])
    'a, b and c'
    """
    if len(words) < 2:
        return "".join(words)
    return say("and", others=say("comma").join(words[:-1]), last=words[-1])


def join_range(texts: Sequence[str]) -> str:
    """Join the two ends of a range, saying a common unit once.

    >>> join_range(["100 g", "150 g"]), join_range(["1 cup", "2 cups"]), join_range(["1 l", "2 kg"])
    ('100–150 g', '1–2 cups', '1 l to 2 kg')
    """
    if len(texts) == 1:
        return texts[0]
    low, high = texts
    number, _, unit = low.partition(" ")
    other, _, its_unit = high.partition(" ")
    if unit.rstrip("s") == its_unit.rstrip("s") and " " not in its_unit:
        return f"{number}–{other} {its_unit}"
    return say("to", low=low, high=high)
