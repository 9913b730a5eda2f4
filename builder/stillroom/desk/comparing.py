"""Two versions of a file side by side, line by line."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher


@dataclass(frozen=True)
class Pair:
    """One line of each version; `is_same` where both say the same."""

    one: str
    other: str
    is_same: bool


def side_by_side(one: str, other: str) -> list[Pair]:
    r"""Return the lines of two versions in pairs.

    >>> [(pair.one, pair.other) for pair in side_by_side("a\nb", "a\nc\nd")]
    [('a', 'a'), ('b', 'c'), ('', 'd')]
    """
    return list(
        _pairs(one.replace("\r\n", "\n").split("\n"), other.replace("\r\n", "\n").split("\n"))
    )


def _pairs(one: list[str], other: list[str]) -> Iterator[Pair]:
    for way, i1, i2, j1, j2 in SequenceMatcher(a=one, b=other, autojunk=False).get_opcodes():
        for place in range(max(i2 - i1, j2 - j1)):
            left = one[i1 + place] if i1 + place < i2 else ""
            right = other[j1 + place] if j1 + place < j2 else ""
            yield Pair(left, right, way == "equal")
