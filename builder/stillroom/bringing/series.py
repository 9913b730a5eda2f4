"""Heads of one form on one paper: each begins a recipe, and what stands between them is its own.

A book's page sets all its recipes alike, so what is not plain of one head is plain of several. What
heads nothing ("PICKLES." above "SPICED PEARS.") is the head of a section, and of no recipe. Leaves
out how a head is set: series_heads.py; and papers on which each has a list below a title of any
form: list_titles.py.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

from stillroom.bringing.bylines import is_addressed
from stillroom.bringing.found import Row
from stillroom.bringing.heads import plain, words
from stillroom.bringing.naming import says_kind_or_doubt
from stillroom.bringing.prose import measured_in_prose
from stillroom.bringing.series_heads import Head, heads_at
from stillroom.bringing.sorting import is_ingredient, is_sentence
from stillroom.bringing.tails import begins_to_bid, ends_in_doing
from stillroom.core.lines.staple_table import staples_named

_LEAST: Final = 2
_LEAST_WORDS: Final = 5
"""Words below a head, from which on something is told there: "Make the same as plum jelly."."""
_LEAST_TOLD: Final = 12
_MOST_PARTS: Final = 4
"""Of so many heads one may be a part's name: a book has "Orange icing" among its cakes."""
_WEAK: Final = ("plain", "dash plain")
_LOOKED_AT: Final = 400


@dataclass(frozen=True)
class Series:
    """The recipes that a paper's heads part: each one's rows, its title the first of them.

    `above` are the rows over the first of them, `sections` what heads several and is of none.
    """

    parts: list[list[Row]]
    above: list[Row]
    sections: list[Row]


def series_of(rows: Sequence[Row]) -> Series | None:
    """Return the recipes that heads of one form part; None where no two stand on a paper.

    >>> page = ("PLUM JAM.", "Boil six pounds of plums with four of sugar until it is thick.",
    ...         "PEAR JAM.", "Boil six pounds of pears with five of sugar until it is thick.")
    >>> [part[0].text for part in series_of([Row(one, gap=True) for one in page]).parts]
    ['PLUM JAM', 'PEAR JAM']
    """
    by_form: dict[str, list[Head]] = {}
    for at in range(len(rows)):
        for head in heads_at(rows, at):
            by_form.setdefault(head.form, []).append(head)
    found = [_told(rows, heads) for form, heads in by_form.items() if form not in _WEAK]
    series = [heads for heads in found if _are_recipes(rows, heads)]
    if not series:
        return None
    heads = max(series, key=lambda some: (len(some), -some[0].at))
    return _parted(rows, heads, {head.at for some in by_form.values() for head in some})


def _told(rows: Sequence[Row], heads: Sequence[Head]) -> list[Head]:
    """Return those of some heads that are each one's own, and below which something is told.

    What stands twice is a label: "PROCESS.--", "_Time_.--".
    """
    said = [plain(head.title) for head in heads]
    own = [head for head, one in zip(heads, said, strict=True) if said.count(one) == 1]
    ends = [head.at for head in own[1:]] + [len(rows)]
    told = [head for head, end in zip(own, ends, strict=True) if _tells(_below(rows, head, end))]
    parts = [head for head in told if _names_a_part(head.title)]
    kept = len(parts) * _MOST_PARTS <= len(told)
    return told if kept else [head for head in told if head not in parts]


def _below(rows: Sequence[Row], head: Head, end: int) -> list[str]:
    return [text for text in (head.told, *(row.text for row in rows[head.at + 1 : end])) if text]


def _tells(texts: Iterable[str]) -> bool:
    """Whether there is more below a head than a few words: a sentence, or a thing of a list."""
    texts = list(texts)
    return len(" ".join(texts).split()) >= _LEAST_WORDS or any(map(is_ingredient, texts))


def _names_a_part(title: str) -> bool:
    last = plain(title).split(" ")[-1]
    ends = any(last.endswith(end) for end in words("part_ends"))
    return ends or (last in words("parts") and not says_kind_or_doubt(title))


def _are_recipes(rows: Sequence[Row], heads: Sequence[Head]) -> bool:
    """Whether heads of one form are recipes' and no steps', parts' or stories'."""
    if len(heads) < _LEAST:
        return False
    counted = heads[0].form == "number"
    if counted and not _count_on(heads):
        return False
    named = sum(_says_what(head.title) for head in heads)
    bids = sum(begins_to_bid(head.title) for head in heads)
    if bids * 2 > len(heads):
        return False
    texts = [" ".join(_below(rows, *two)) for two in zip(heads, _ends(rows, heads), strict=True)]
    long = sum(len(text.split()) >= _LEAST_TOLD for text in texts)
    if counted and heads[0].number == 1:  # "1. Boil the brine", and what is done below it
        doing = sum(ends_in_doing(head.title) for head in heads)
        return not (bids or doing) and named * 2 > len(heads) and long == len(heads)
    return long > 0 and (named * 2 >= len(heads) or _measure(rows, heads) * 2 >= len(heads))


def _count_on(heads: Sequence[Head]) -> bool:
    return all(above.number < below.number for above, below in pairwise(heads))


def _ends(rows: Sequence[Row], heads: Sequence[Head]) -> list[int]:
    return [*(head.at for head in heads[1:]), len(rows)]


def _says_what(title: str) -> bool:
    return says_kind_or_doubt(title) or bool(staples_named(title))


def _measure(rows: Sequence[Row], heads: Sequence[Head]) -> int:
    """Return below how many heads something is measured."""
    count = 0
    for head, end in zip(heads, _ends(rows, heads), strict=True):
        texts = _below(rows, head, min(end, head.at + _LOOKED_AT))
        count += sum(map(is_ingredient, texts)) >= _LEAST or bool(
            measured_in_prose([" ".join(texts)])
        )
    return count


def _parted(rows: Sequence[Row], heads: Sequence[Head], may_head: set[int]) -> Series:
    parts: list[list[Row]] = []
    sections: list[Row] = []
    for head, end in zip(heads, _ends(rows, heads), strict=True):
        last = end
        while last - 1 > head.at and _heads_nothing(rows, last - 1, may_head, end < len(rows)):
            last -= 1
        sections += rows[last:end]
        parts.append(_part(rows, head, last))
    return Series(parts, list(rows[: heads[0].at]), sections)


def _heads_nothing(rows: Sequence[Row], at: int, may_head: set[int], followed: bool) -> bool:
    """Whether a row right above the next recipe's head is a section's: "PICKLES."."""
    row = rows[at]
    return followed and row.gap and at in may_head and not is_sentence(row.text)


def _part(rows: Sequence[Row], head: Head, end: int) -> list[Row]:
    first = Row(head.title, "heading", 1, True)
    below = list(rows[head.at + 1 : end])
    if head.writer:
        below.insert(0, Row(f"By {head.writer}", "line", 0, True))
    elif below and is_addressed(below[0].text):
        below[0] = replace(below[0], text=f"By {below[0].text.strip(' .').title()}")
    if head.told:
        wraps = rows[head.at].wraps
        below.insert(0, Row(head.told, "line", 0, True, wraps))
    return [first, *below]
