"""Which words may stand beside a food and leave it the same food; harmless.yml declares them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache

from stillroom.core.larder.index import load_index
from stillroom.core.larder.shares_said import is_sold_by_its_share
from stillroom.core.larder.staple import Staple

LONGEST = 6


@dataclass(frozen=True)
class _Row:
    """One declared class: beside which foods its words count."""

    only: frozenset[str]
    never: frozenset[str]
    after: bool
    before: bool

    def counts(self, food: Staple, behind: bool) -> bool:
        own = food.tags | {f"={food.name}", f"={food.kind_of}"}
        if self.never & own or (self.before if behind else self.after):
            return False
        return not self.only or bool(self.only & own)


@cache
def _table() -> dict[str, tuple[_Row, ...]]:
    held = load_index()["harmless"]
    rows = [_Row(frozenset(only), frozenset(never), *sides) for only, never, *sides in held["rows"]]
    return {form: tuple(rows[place] for place in places) for form, places in held["words"].items()}


def all_harmless(words: Sequence[str]) -> bool:
    """Whether every word may stand beside some food and leave it the same food.

    >>> all_harmless(("large", "ripe")), all_harmless(("flour",))
    (True, False)
    """
    return all(word in _table() or word == "and" for word in words)


def says_how_alone(words: Sequence[str]) -> bool:
    """Whether words are nothing but phrases that are said of foods: "bone-in", "skin on".

    >>> says_how_alone(("bone", "in")), says_how_alone(("half", "and", "half"))
    (True, False)
    """
    place = 0
    while place < len(words):
        ends = range(min(place + LONGEST, len(words)), place + 1, -1)
        end = next((end for end in ends if " ".join(words[place:end]) in _table()), None)
        if end is None:
            return False
        place = end
    return True


def harmless_run(words: Sequence[str], food: Staple, behind: bool) -> tuple[str, ...]:
    """Return the words that are left over when every harmless one is taken away.

    `words` are normal forms standing together, before the food's name or `behind` it.
    """
    return tuple(_left_over(words, food, behind))


def is_all_harmless(words: Sequence[str], food: Staple, behind: bool) -> bool:
    """Whether nothing is left over of words beside a food's name; it looks no further than that."""
    return next(_left_over(words, food, behind), None) is None


def _left_over(words: Sequence[str], food: Staple, behind: bool) -> Iterator[str]:
    place = 0
    while place < len(words):
        for size in range(min(LONGEST, len(words) - place), 0, -1):
            rows = _table().get(" ".join(words[place : place + size]), ())
            if any(row.counts(food, behind) for row in rows):
                place += size
                break
        else:
            if not (words[place].endswith("%") and is_sold_by_its_share(food)):
                yield words[place]
            place += 1
