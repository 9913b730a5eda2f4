"""Heads of one form on one paper: each begins a recipe, and what stands between them is its own.

A book's page sets all its recipes alike, so what is not plain of one head is plain of several. What
heads nothing ("PICKLES." above "SPICED PEARS.") is the head of a section, and of no recipe. Leaves
out how a head is set: series_heads.py; and papers on which each has a list below a title of any
form: list_titles.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

from stillroom.bringing.bylines import is_addressed
from stillroom.bringing.found import Row
from stillroom.bringing.heads import SENTENCE_ENDS, plain, words
from stillroom.bringing.known_work import is_plainly_work
from stillroom.bringing.naming import says_kind_or_doubt
from stillroom.bringing.outside import is_one_of_foods
from stillroom.bringing.prose import measured_in_prose
from stillroom.bringing.series_heads import Head, below_other_ways, heads_at, in_small
from stillroom.bringing.sorting import begins_with_amount, is_ingredient, is_sentence
from stillroom.bringing.tails import begins_to_bid, ends_in_doing
from stillroom.core.lines.staple_table import staples_named
from stillroom.core.words.patterns import late_regex

_LEAST: Final = 2
_LEAST_WORDS: Final = 5
"""Words below a head, from which on something is told there: "Make the same as plum jelly."."""
_LEAST_TOLD: Final = 12
_MOST_SAID: Final = 40
_ONE_OF_SO_MANY: Final = 3
"""Sentences of which one at least does something, where they are how a thing is made."""
_MOST_PARTS: Final = 4
"""Of so many heads one may be a part's name: a book has "Orange icing" among its cakes."""
_COUNTED: Final = 3
"""Heads that count on by one, from which on they need not say what they make."""
_LOOKED_AT: Final = 400
_LEAST_STEM: Final = 5
_MOST_AKIN: Final = 4
"""Words of a line that may be a head because it names what another does, or is a section's."""
_COUNT: Final = late_regex(r"[,.]\s(?:No|Nr|N[°º])\.?\s?\d{1,2}$", re.IGNORECASE)
# what is said besides and told of no recipe: "(For two persons.)", a line of verse
_BESIDE: Final = late_regex(r"[(\[].*[)\]]\.?|[\"“„«].*|--.*", re.DOTALL)


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
    by_form = _by_form(rows)
    found = [_told(rows, some) for form, some in by_form.items() if not _is_weak(form)]
    series = [heads for heads in found if _are_recipes(rows, heads)]
    if not series:
        return None
    heads = max(series, key=lambda some: (len(some), -some[0].at))
    if heads[0].form == "dash capitals":  # "_Strawberry Vinegar_--Is made in the above manner"
        also = [one for one in by_form.get("dash slanted", ()) if says_kind_or_doubt(one.title)]
        heads = sorted((*heads, *also), key=lambda head: head.at)
    return _parted(rows, heads, {head.at for some in by_form.values() for head in some})


def weaker_series_of(rows: Sequence[Row]) -> Series | None:
    """Return the recipes that short lines without a mark of their own part, where all name theirs.

    Each says its kind or begins or ends as another does ("Herbed oils", "Herbed vinegars"), and
    enough is told below each to be a recipe.

    >>> page = ("Plum jam", "Boil six pounds of plums with four of sugar until it is thick.",
    ...         "Pear jam", "Boil six pounds of pears with five of sugar until it is thick.")
    >>> [part[0].text for part in weaker_series_of([Row(one) for one in page]).parts]
    ['Plum jam', 'Pear jam']
    """
    by_form = _by_form(rows)
    series = []
    ways = below_other_ways(rows)
    for form, some in by_form.items():
        heads = (
            _told(rows, _once(_akin(rows, [one for one in some if one.at not in ways])))
            if _is_weak(form)
            else []
        )
        parts = any(_names_a_part(head.title) for head in heads)
        heads = [] if parts else _telling_enough(rows, heads)
        if len(heads) >= _LEAST:
            series.append(heads)
    heads = max(series, key=len, default=[])
    if not heads:
        return None
    others = [head.at for head in by_form["colon"]] if heads[0].form == "colon" else []
    ends = [at for at in others if at > heads[-1].at]  # "Other gifts: a journal", told besides
    return _parted(rows[: min(ends, default=len(rows))], heads, {head.at for head in heads})


def _by_form(rows: Sequence[Row]) -> dict[str, list[Head]]:
    found: dict[str, list[Head]] = {}
    for at in range(len(rows)):
        for head in heads_at(rows, at):
            found.setdefault(head.form, []).append(head)
    return found


def _is_weak(form: str) -> bool:
    return form in ("plain", "dash plain", "colon") or form.startswith("heading")


def _akin(rows: Sequence[Row], heads: Sequence[Head]) -> list[Head]:
    """Return those heads that say their kind, or name what one that does begins or ends with.

    Beside two that say it a food's name between two gaps is one too: "Grape juice".
    """
    may = [head for head in heads if not _bids(head.title) and not is_one_of_foods(rows, head.at)]
    sure = [head for head in may if says_kind_or_doubt(head.title) or _is_over_a_line(rows, head)]
    stems = {stem for head in sure for stem in _stems(head.title)}
    few = [head for head in may if len(head.title.split()) <= _MOST_AKIN]
    akin = [head for head in few if any(stem in plain(head.title) for stem in stems)]
    apart = [head for head in few if len(sure) >= _LEAST and _is_apart(rows, head)]
    found = {head.at: head for head in (*sure, *akin, *apart)}
    return sorted(found.values(), key=lambda head: head.at)


def _is_apart(rows: Sequence[Row], head: Head) -> bool:
    """Whether a head names a food, or is written as titles are, between two gaps: "Sea Foam"."""
    gaps = [row.gap for row in rows[head.at : head.at + 2]]
    said = head.title.split()
    titled = len(said) > 1 and not head.told and all(word[:1].isupper() for word in said)
    return gaps == [True, True] and (titled or bool(staples_named(head.title)))


def _is_over_a_line(rows: Sequence[Row], head: Head) -> bool:
    """Whether right below a head a line lists what goes in."""
    return any(_lists_on_a_line(row.text) for row in rows[head.at + 1 : head.at + 2])


def _once(heads: Sequence[Head]) -> list[Head]:
    """Return heads without the page's own that the one below it says again: "Fudge".

    And without what the one above names too, a part of it: "Plum dip" of "Crisps with plum dip".
    """
    kept: list[Head] = []
    for head in heads:
        said = set(plain(head.title).split())
        above = set(plain(kept[-1].title).split()) if kept else set()
        if kept and above <= said:
            kept[-1] = head
        elif not kept or not said <= above:
            kept.append(head)
    return kept


def _bids(title: str) -> bool:
    """Whether a title begins with what is to be done: "Boil the plums"."""
    first = plain(title).split(" ")[0]
    return " " in title and first in words("told_first") | words("told_last")


def _stems(title: str) -> set[str]:
    """Return how the first word of a title begins and what its last is: "Herbed oils"."""
    said = plain(title).split()
    ends = {said[0][:_LEAST_STEM], said[-1]} if said else set()
    return {stem for stem in ends if len(stem) >= _LEAST_STEM}


def _telling_enough(rows: Sequence[Row], heads: Sequence[Head]) -> list[Head]:
    """Return those heads below which things are listed or measured, or something is done.

    Behind a list that takes another food than it has: "Boil the other plums" is a part of it.
    """
    listed: set[str] = set()
    kept: list[Head] = []
    idle: Head | None = None  # an introduction to those below it, if they have lists
    for head, end in zip(heads, _ends(rows, heads), strict=True):
        texts = _below(rows, head, min(end, head.at + _LOOKED_AT))
        things = list(filter(is_ingredient, texts))
        beside = sum(len(text.split()) for text in texts if text not in things)
        if len(things) >= _LEAST and beside < _LEAST_WORDS:
            return []  # its method stands below heads of its own
        if len(" ".join(texts).split()) < _LEAST_TOLD:
            continue
        if len(things) >= _LEAST or _lists_on_a_line(texts[0]):
            listed = _foods(things or texts[:1])
            kept.append(head)
            continue
        foods = _foods(measured_in_prose([" ".join(texts)]))
        if (not listed or foods - listed) and _does(texts):
            idle = head if not kept and not foods else idle
            kept.append(head)
    return [head for head in kept if not listed or head is not idle]


def _lists_on_a_line(text: str) -> bool:
    """Whether a line lists several things: "1 T salt, 2 T cumin, 1 t pepper"."""
    return begins_with_amount(text) and text.count(",") >= _LEAST


def _foods(things: Sequence[str]) -> set[str]:
    return {food.name for thing in things for food in staples_named(thing)}


def _told(rows: Sequence[Row], heads: Sequence[Head]) -> list[Head]:
    """Return those of some heads that are each one's own, and below which something is told.

    What stands twice is a label: "PROCESS.--", "_Time_.--".
    """
    said = [plain(head.title) for head in heads]
    own = [
        head
        for head, one in zip(heads, said, strict=True)
        if said.count(one) == 1 or head.number  # "202. Carrots (old)", below "201. Carrots (young)"
    ]
    spans = zip(own, _ends(rows, own), strict=True)
    told = [head for head, end in spans if _tells(rows, head, end)]
    if len(told) > _LEAST and _goes_on_above(rows, told[0]):
        told = told[1:]
    if len(told) > _LEAST and not told[0].number and not _does(_below(rows, told[0], told[1].at)):
        told = told[1:]
    parts = [head for head in told if _names_a_part(head.title)]
    few = len(parts) * _MOST_PARTS <= len(told)
    kept = few or (len(told) > _COUNTED and len(parts) * 2 >= len(told))  # a chapter of icings
    return told if kept else [head for head in told if head not in parts]


def _below(rows: Sequence[Row], head: Head, end: int) -> list[str]:
    return [text for text in (head.told, *(row.text for row in rows[head.at + 1 : end])) if text]


def _tells(rows: Sequence[Row], head: Head, end: int) -> bool:
    """Whether there is more below a head than a few words: a sentence, or a thing of a list."""
    paragraphs = [[head.told]]
    for row in rows[head.at + 1 : end]:
        if row.gap:
            paragraphs.append([])
        paragraphs[-1].append(row.text)
    told = [" ".join(one).strip() for one in paragraphs]
    told = [text for text in told if text and not _BESIDE.fullmatch(text)]
    listed = any(is_ingredient(row.text) for row in rows[head.at + 1 : end])
    return listed or len(" ".join(told).split()) >= _LEAST_WORDS


def _does(texts: Sequence[str]) -> bool:
    """Whether below a head something is done, listed or measured: a chapter only speaks of it."""
    said = " ".join(texts)
    if any(map(is_ingredient, texts)) or len(measured_in_prose([said])) >= _LEAST:
        return True
    sentences = SENTENCE_ENDS.split(said)[:_MOST_SAID]
    works = [one for one in sentences if is_plainly_work(one) or begins_to_bid(one)]
    return len(works) * _ONE_OF_SO_MANY >= len(sentences)


def _goes_on_above(rows: Sequence[Row], head: Head) -> bool:
    """Whether below the first head of a page the end of another recipe stands: "pint of juice"."""
    texts = (row.text for row in rows[head.at + 1 :] if re.search(r"[^\W\d]", row.text))
    return not head.told and next(texts, "")[:1].islower()


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
    bids = sum(_bids(head.title) for head in heads)
    if bids * 2 > len(heads):
        return False
    texts = [" ".join(_below(rows, *two)) for two in zip(heads, _ends(rows, heads), strict=True)]
    long = sum(len(text.split()) >= _LEAST_TOLD for text in texts)
    doing = sum(ends_in_doing(head.title) for head in heads)
    if counted and doing * 2 >= len(heads):  # "2. Teig anrühren", "3. Formen"
        return False
    if counted and heads[0].number <= _COUNTED:  # "1. Boil the brine", and what is done below it
        return not (bids or doing) and named * 2 > len(heads) and long == len(heads)
    by_one = all(one.number + 1 == other.number for one, other in pairwise(heads))
    if heads[0].number and len(heads) >= _COUNTED and by_one:
        return long > 0
    if named * 2 >= len(heads):
        return long > 0
    if len(heads) < _COUNTED:
        return False
    measured = _measure(rows, heads)
    many = len(heads) > _COUNTED and measured * 4 >= len(heads) * 3
    return many or measured == len(heads) or (named > 0 and measured * 2 >= len(heads))


def _count_on(heads: Sequence[Head]) -> bool:
    return all(above.number < below.number for above, below in pairwise(heads))


def _ends(rows: Sequence[Row], heads: Sequence[Head]) -> list[int]:
    return [*(head.at for head in heads[1:]), len(rows)] if heads else []


def _says_what(title: str) -> bool:
    bare = _COUNT.sub("", title)
    return says_kind_or_doubt(bare) or bool(staples_named(bare))


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
    few = len(row.text.split()) <= _MOST_AKIN or row.text.isupper()
    return followed and few and row.gap and at in may_head and not is_sentence(row.text)


def _part(rows: Sequence[Row], head: Head, end: int) -> list[Row]:
    first = Row(head.title, "heading", 1, True)
    below = list(rows[head.at + 1 : end])
    if head.writer:
        below.insert(0, Row(f"By {head.writer}", "line", 0, True))
    elif below and is_addressed(below[0].text):
        below[0] = replace(below[0], text=f"By {in_small(below[0].text.strip(' .'))}")
    if head.told:
        wraps = rows[head.at].wraps
        below.insert(0, Row(head.told, "line", 0, True, wraps))
    return [first, *below]
