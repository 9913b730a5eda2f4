"""Which words may stand beside a food and leave it the same food; harmless.yml declares them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from stillroom.core.larder.data import read_larder_data
from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import normal_form

LONGEST = 4


@dataclass(frozen=True)
class _Row:
    """One declared class: beside which foods its words count."""

    only: frozenset[str]
    never: frozenset[str]
    after: bool

    def counts(self, food: Staple, behind: bool) -> bool:
        own = food.tags | {f"={food.name}"}
        if self.never & own or (self.after and not behind):
            return False
        return not self.only or bool(self.only & own)


@cache
def _table() -> dict[str, tuple[_Row, ...]]:
    table: dict[str, tuple[_Row, ...]] = {}
    for row in read_larder_data("harmless.yml"):
        rule = _Row(
            frozenset(row.get("only", ())), frozenset(row.get("never", ())), row.get("after", False)
        )
        for words in row["words"].split(","):
            form = normal_form(words)
            table[form] = (*table.get(form, ()), rule)
    return table


def harmless_run(words: Sequence[str], food: Staple, behind: bool) -> tuple[str, ...]:
    """Return the words that are left over when every harmless one is taken away.

    `words` are normal forms standing together, before the food's name or `behind` it.
    """
    left: list[str] = []
    place = 0
    while place < len(words):
        for size in range(min(LONGEST, len(words) - place), 0, -1):
            rows = _table().get(" ".join(words[place : place + size]), ())
            if any(row.counts(food, behind) for row in rows):
                place += size
                break
        else:
            left.append(words[place])
            place += 1
    return tuple(left)
