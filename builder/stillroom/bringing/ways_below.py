"""Heads that stand below a head of variations: each is another way, and no recipe of its own.

Leaves out which other ways a line may tell of: other_ways.py.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from stillroom.bringing.found import Row
from stillroom.bringing.heads import says_otherwise


def with_ways_below(rows: Sequence[Row]) -> list[Row]:
    """Return rows with the lesser heads below one of variations before what stands below them.

    They are items, as a line before a colon may name a recipe of several.

    >>> page = [Row("Variations", "heading", 3), Row("With rum", "heading", 4), Row("Add rum.")]
    >>> [row.text for row in with_ways_below([*page, Row("More", "heading", 3)])]
    ['Variations', 'With rum: Add rum.', 'More']
    """
    found: list[Row] = []
    level = 0
    head: Row | None = None
    for row in rows:
        lesser = row.shape == "heading" and 0 < level < row.level
        if head is not None:
            told = replace(head, text=head.text.rstrip(" :"), shape="item", level=0)
            if row.shape != "heading":
                told = replace(told, text=f"{told.text}: {row.text}")
            found.append(told)
        if lesser:
            head = row
            continue
        if row.shape == "heading":
            level = row.level if says_otherwise(row.text) else 0
        found += [row] if head is None or row.shape == "heading" else []
        head = None
    return found if head is None else [*found, replace(head, shape="item", level=0)]
