"""What a web page shows around the words that are read of it: menus, comments, other recipes.

None of it is brought in. It is kept beside the draft, so that what was left out can be looked at.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import islice
from typing import Final

from stillroom.bringing.overlap import words_in
from stillroom.bringing.tags import Tag

MOST_AROUND: Final = 300
"""Lines that are kept; of a page with more it is told how many there are."""
_UNSEEN: Final = frozenset(
    {"head", "script", "style", "template", "noscript", "svg", "select", "textarea", "iframe"}
)
_RUN: Final = 3
_LONGEST: Final = 300
"""Letters of a line that are kept: a page may have a book in one."""


def around(page: Tag, read: Iterable[str]) -> tuple[str, ...]:
    """Return the lines that a page shows and that stand in none of those which were read.

    Each once, in their order; the last says how many more there are.
    """
    words = [one.said for row in read for one in words_in(row)]
    runs = set(_runs(words))
    single = set(words)
    found: dict[str, None] = {}
    for line in _seen(page).text().split("\n"):
        own = [one.said for one in words_in(line)]
        is_read = runs.issuperset(_runs(own)) if len(own) >= _RUN else single.issuperset(own)
        if not is_read:
            found[line[:_LONGEST]] = None
    kept = list(islice(found, MOST_AROUND))
    more = len(found) - len(kept)
    return (*kept, f"… {more} lines more") if more else tuple(kept)


def _runs(words: Sequence[str]) -> Iterator[tuple[str, ...]]:
    return (tuple(words[at : at + _RUN]) for at in range(len(words) - _RUN + 1))


def _seen(tag: Tag) -> Tag:
    """Return an element without what no reader of its page sees."""
    inner = (one for one in tag.inner if isinstance(one, str) or one.name not in _UNSEEN)
    kept = [one if isinstance(one, str) else _seen(one) for one in inner]
    return Tag(tag.name, tag.said, kept)
