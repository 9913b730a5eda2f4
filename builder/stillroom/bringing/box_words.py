"""The words that stand in the boxes of a draft, one after another, and where they stand.

Leaves out which lines of a paper they came of: line_by_line.py.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from functools import cached_property
from typing import Final, TypeVar

from stillroom.bringing.overlap import Text, Word, words_in

_Line = TypeVar("_Line")
_SAME_WORDS: Final = 0.8
"""Of the words of a line that was put otherwise ("sugar, 2 cups"), so many are the same."""
MOST_LIKE: Final = 50
"""Lines with a word in common that are looked at, in either direction."""
FEW: Final = 2
"""Words of a line that is too short for a run of three."""


@dataclass(frozen=True)
class BoxWords:
    """The words of every box, one after another: their letters, their box, their lines."""

    texts: Mapping[str, str]
    words: tuple[Word, ...]
    boxes: tuple[str, ...]
    lines: tuple[range, ...]
    breaks: frozenset[int]

    @classmethod
    def of(cls, texts: Mapping[str, str]) -> BoxWords:
        """Return the words of what stands in each box."""
        words: list[Word] = []
        boxes: list[str] = []
        lines: list[range] = []
        breaks: set[int] = set()
        for box, text in texts.items():
            breaks.add(len(words))
            start = 0
            for line in text.split("\n"):
                first = len(words)
                words += [
                    Word(one.said, one.first + start, one.last + start) for one in words_in(line)
                ]
                lines += [range(first, len(words))] if len(words) > first else []
                start += len(line) + 1
            boxes += [box] * (len(words) - len(boxes))
        return cls(texts, tuple(words), tuple(boxes), tuple(lines), frozenset(breaks))

    @cached_property
    def text(self) -> Text:
        """All of them, in which others are looked for."""
        return Text([one.said for one in self.words], self.breaks)

    @property
    def said(self) -> Sequence[str]:
        """The words as they are compared."""
        return self.text.said

    @cached_property
    def _lines_with(self) -> Mapping[str, list[range]]:
        return by_word((line, self.said[line.start : line.stop]) for line in self.lines)

    def line_like(self, words: Sequence[str], used: Set[int], near: int) -> range | None:
        """Return the line of a box that says the same, in whatever order, nearest to a word.

        One of which a word is used is not taken, and of two words both are the same.
        """
        rarest = min(words, key=lambda one: len(self._lines_with.get(one, ())))
        lines = self._lines_with.get(rarest, ())
        at = bisect_left(lines, near, key=lambda line: line.start)
        like = (
            line
            for line in lines[max(0, at - MOST_LIKE) : at + MOST_LIKE]
            if not any(one in used for one in line) and self._is_like(words, line)
        )
        return min(like, key=lambda line: abs(line.start - near), default=None)

    def _is_like(self, words: Sequence[str], line: range) -> bool:
        same = (Counter(words) & Counter(self.said[line.start : line.stop])).total()
        return same >= _SAME_WORDS * max(len(words), len(line))

    def matched(self, words: Sequence[str], line: range) -> dict[int, int]:
        """Return which word stands as which of a line."""
        free = list(line)
        found: dict[int, int] = {}
        for at, word in enumerate(words):
            if (place := next((one for one in free if self.said[one] == word), None)) is not None:
                free.remove(place)
                found[at] = place
        return found

    def short_lines(self) -> Iterator[range]:
        """Yield the lines of a word or two, which no run of three finds within another."""
        yield from (line for line in self.lines if len(line) <= FEW)


def part_of(box: str) -> str:
    """Return which part of a recipe a box is; before its name may stand the number of its draft.

    >>> part_of("2 title"), part_of("title")
    ('title', 'title')
    """
    return box.rpartition(" ")[2]


def by_word(lines: Iterable[tuple[_Line, Sequence[str]]]) -> Mapping[str, list[_Line]]:
    """Return which lines hold a word, in their order."""
    found: dict[str, list[_Line]] = defaultdict(list)
    for line, words in lines:
        for word in dict.fromkeys(words):
            found[word].append(line)
    return found
