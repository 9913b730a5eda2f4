"""Which words of one text stand in another: the longest runs first, each word once.

Greedy string tiling (M. J. Wise, "String Similarity via Greedy String Tiling", Sydney, 1993), with
an index of runs of three, so that long texts are compared in one going-through. Leaves out what
the texts are.
"""

from __future__ import annotations

import heapq
import re
from collections import defaultdict
from collections.abc import Iterator, Sequence, Set
from dataclasses import dataclass
from typing import Final
from unicodedata import normalize

from stillroom.bringing.accents import without_accents

LEAST: Final = 3
"""Words that a run has at least: "cup of sugar" stands in many places, "of" in all."""
_MOST_PLACES: Final = 60
"""Places of three words that are looked at: what is said so often tells nothing apart."""
_MOST_A_WORD: Final = 60
"""Words of runs that are gone through for each word of the texts; a recipe has some ten."""
_WORD: Final = re.compile(r"\d+|[^\W\d_]+")


@dataclass(frozen=True)
class Word:
    """One word of a text as it is compared, and where it stands in it."""

    said: str
    first: int
    last: int


@dataclass(frozen=True, order=True)
class Run:
    """Words that stand in both texts: the first of each, and how many."""

    ours: int
    theirs: int
    length: int


def words_in(text: str) -> list[Word]:
    """Return the words and figures of a text, accents and capitals apart.

    >>> [one.said for one in words_in("1½ tsp Crème-fraîche")]
    ['1', '1', '2', 'tsp', 'creme', 'fraiche']
    """
    return [
        Word(without_accents(piece), found.start(), found.end())
        for found in _WORD.finditer(text)
        for piece in _WORD.findall(normalize("NFKC", found[0]))
    ]


class Text:
    """Words in which others are looked for, and where something else begins among them.

    No run goes over one of the `breaks`.
    """

    def __init__(self, said: Sequence[str], breaks: Set[int] = frozenset()) -> None:
        self.said = said
        self.breaks = breaks
        self._places: dict[tuple[str, ...], list[int]] = defaultdict(list)
        for at in range(len(said) - LEAST + 1):
            if not any(place in breaks for place in range(at + 1, at + LEAST)):
                self._places[tuple(said[at : at + LEAST])].append(at)

    def runs(self, ours: Sequence[str]) -> Iterator[Run]:
        """Yield every run of words that goes on neither before nor behind.

        Where the same words come again and again ("1 1 1 …") every place goes with every other:
        such are not gone through to their end.
        """
        left = _MOST_A_WORD * (len(ours) + len(self.said))
        for first in range(len(ours) - LEAST + 1):
            for other in self._places.get(tuple(ours[first : first + LEAST]), ())[:_MOST_PLACES]:
                begins = other in self.breaks or not (first and other)
                if left > 0 and (begins or ours[first - 1] != self.said[other - 1]):
                    length = self._length(ours, first, other)
                    left -= length
                    yield Run(first, other, length)

    def _length(self, ours: Sequence[str], first: int, other: int) -> int:
        end = min(len(ours) - first, len(self.said) - other)
        at = LEAST
        while at < end and ours[first + at] == self.said[other + at]:
            if other + at in self.breaks:
                break
            at += 1
        return at

    def runs_apart(self, ours: Sequence[str]) -> list[Run]:
        """Return the runs of words that stand in both, no word in two of them, the longest first.

        Of two as long the one that stands nearer to the same place of its text is taken.

        >>> Text("d e f a b c".split()).runs_apart("a b c x d e f".split())
        [Run(ours=0, theirs=3, length=3), Run(ours=4, theirs=0, length=3)]
        """
        mine, used = [False] * len(ours), [False] * len(self.said)
        sizes = max(1, len(ours)), max(1, len(self.said))
        heap = [_weighed(run, *sizes) for run in self.runs(ours)]
        heapq.heapify(heap)
        found: list[Run] = []
        while heap:
            run = heapq.heappop(heap)[2]
            free = list(_free(mine, used, run))
            if free == [run]:
                mine[run.ours : run.ours + run.length] = [True] * run.length
                used[run.theirs : run.theirs + run.length] = [True] * run.length
                found.append(run)
                continue
            for part in free:
                if part.length >= LEAST:
                    heapq.heappush(heap, _weighed(part, *sizes))
        return sorted(found)


def _weighed(run: Run, size: int, others: int) -> tuple[int, float, Run]:
    """Return a run so that the longest is the least, and of two as long the one nearer by."""
    return -run.length, abs(run.ours / size - run.theirs / others), run


def _free(mine: Sequence[bool], used: Sequence[bool], run: Run) -> Iterator[Run]:
    """Yield the parts of a run of which no word is taken."""
    taken = [mine[run.ours + at] or used[run.theirs + at] for at in range(run.length)]
    for begin, end in untaken(taken):
        yield Run(run.ours + begin, run.theirs + begin, end - begin)


def untaken(taken: Sequence[bool]) -> Iterator[tuple[int, int]]:
    """Yield where places that are not taken stand together: the first, and the one behind them.

    >>> list(untaken([False, True, False, False]))
    [(0, 1), (2, 4)]
    """
    begin = 0
    for at, is_taken in enumerate((*taken, True)):
        if is_taken:
            if at > begin:
                yield begin, at
            begin = at + 1
