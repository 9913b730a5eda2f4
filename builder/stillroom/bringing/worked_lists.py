"""A list that stands in groups, each below what is done with it: "Combine:" above 2 cups of flour.

So cooks type who work as they read, and so do pages whose numbered steps hold what goes in. The
things become one list, and each group a step that names them. Leaves out lists whose parts are
named by what they are for: list_parts.py.
"""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Iterator, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from itertools import pairwise, takewhile
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.heads import plain, section_of, words
from stillroom.bringing.known_work import is_plainly_work, is_work
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.one_line import foods_named, names_a_food
from stillroom.bringing.sorting import is_ingredient, is_passed, is_sentence, is_title
from stillroom.bringing.tails import begins_to_bid
from stillroom.core.larder.words import normal_form
from stillroom.core.lines.reader import read_line
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.words.problems import Unreadable

_LEAST: Final = 2
"""Groups from which on they are how a paper is written."""
_MOST_WORDS: Final = 8
_MOST_NUMBERED: Final = 16
_LONGEST: Final = 120
_STOPPED: Final = re.compile(r"[.!?;,…]$")
_PART_LEVEL: Final = 6
# what a part is for: "Pour servir", "Til pynt", "Mix-ins"
_FOR: Final = re.compile(
    r"(?:for|to|für|zum|zur|pour|per|para|voor|om|till?|na|do)\b|.*(?:\bspread|-(?:in|on)s)$",
    re.IGNORECASE,
)
_INFINITIVE: Final = re.compile(r"[^\W\d]{2,}(?:en|ern|eln)")
# "Recipe 2", "Variante II": another whole recipe for the same thing
_COUNTED: Final = re.compile(
    r"(?:recipe|version|variant\w*|variation|option|method|rezept|recette|ricetta|receta|recept|opskrift|oppskrift|receita|przepis)"
    r"\s*(?:no\.?|nr\.?|#)?\s*(?:\d|[ivx]+|two|zwei|deux|due|dos|twee|två|to)\b.*",
    re.IGNORECASE,
)
_INSTEAD: Final = re.compile(
    r"(?:or|oder|ou|oppure|o|of|eller|lub|albo|nebo|alternativ\w*|instead|stattdessen)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class _Group:
    """What is done, at row `at`, and what it is done with, in the rows up to `end`."""

    at: int
    end: int


def with_work_told(rows: Sequence[Row]) -> list[Row]:
    """Return rows with one list and its steps, where things stand in groups below what is done.

    >>> text = ("Fudge", "Melt:", "1 lb sugar", "1 cup milk", "Stir in:", "2 oz butter")
    >>> for row in with_work_told([Row(one) for one in text]):
    ...     print(row.shape, row.text)
    line Fudge
    heading Ingredients
    line 1 lb sugar
    line 1 cup milk
    line 2 oz butter
    heading Method
    step Melt: sugar, milk
    step Stir in: butter
    """
    if any(is_head(row) and section_of(row.text) != "aside" for row in rows):
        return list(rows)
    groups = list(_groups(rows))
    if len(groups) < _LEAST or not any(_is_plain(rows[one.at]) for one in groups):
        return list(rows)
    found: list[Row] = []
    for begin, end in pairwise([0, *_titles_between(rows, groups), len(rows)]):
        inside = [
            _Group(one.at - begin, one.end - begin) for one in groups if begin <= one.at < end
        ]
        part = rows[begin:end]
        found += _told(part, inside) if len(inside) >= _LEAST else part
    return found


def _groups(rows: Sequence[Row]) -> Iterator[_Group]:
    at = 0
    while at < len(rows) - 1:
        end = _end_of_things(rows, at + 1) if _leads(rows[at]) else at
        if end > at + 1:
            yield _Group(at, end)
        at = max(end, at + 1)


def _leads(row: Row) -> bool:
    """Whether a row may say what is done with the things below it."""
    long = len(row.text.split())
    if len(row.text) > _LONGEST or _STOPPED.search(row.text):
        return False
    if is_head(row) or is_ingredient(row.text):
        return False
    if _INSTEAD.match(row.text):  # what stands below it may be in place of the group above
        return False
    if row.shape == "step":
        return long <= _MOST_NUMBERED
    if row.shape not in ("line", "heading") or long > _MOST_WORDS:
        return False
    bare = row.text.rstrip(" :")
    last = plain(bare).split(" ")[-1]
    if last in words("parts") or any(map(last.endswith, words("part_ends"))):
        return False  # "Cream filling:"
    if any(map(section_of, plain(bare).split(" "))):
        return False  # "Dry ingredients"
    if _FOR.match(bare) or find_staple(bare) is not None or says_its_kind(bare):
        return False
    return _bids(bare)


def _bids(text: str) -> bool:
    """Whether words say what is to be done: "Melt", "Faire fondre", "Verrühren"."""
    if begins_to_bid(text) or (len(text.split()) > 1 and is_plainly_work(text)):
        return True
    # alone at the head of a line a German infinitive looks like a thing
    alone = bool(_INFINITIVE.fullmatch(text))
    return alone and is_work(text.lower(), ("de", "nl"))


def _is_plain(row: Row) -> bool:
    """Whether a lead is plainly one: numbered, ended with a colon, or of several words."""
    return row.shape == "step" or row.text.endswith(":") or len(row.text.split()) > 1


def _end_of_things(rows: Sequence[Row], begin: int) -> int:
    """Return the row behind the things that stand right below a lead; `begin` where none do."""
    first = rows[begin]
    if first.shape not in ("line", "item") or (first.gap and rows[begin - 1].shape != "heading"):
        return begin
    end = begin
    while end < len(rows) and _goes_in(rows[end], first) and not (end > begin and rows[end].gap):
        end += 1
    measured = any(is_ingredient(row.text) for row in rows[begin:end])
    return end if measured or _nested(rows, begin, end) else begin


def _nested(rows: Sequence[Row], begin: int, end: int) -> bool:
    """Whether things stand as items below a numbered step: they need no amount to be its own."""
    return rows[begin - 1].shape == "step" and all(one.shape == "item" for one in rows[begin:end])


def _goes_in(row: Row, first: Row) -> bool:
    if row.shape != first.shape or is_only_makes(row.text) or is_sentence(row.text):
        return False
    if is_ingredient(row.text):
        return True
    return not begins_to_bid(row.text) and (names_a_food(row.text) or bool(foods_named(row.text)))


def _titles_between(rows: Sequence[Row], groups: Sequence[_Group]) -> list[int]:
    """Return the rows that name another recipe, with groups of its own behind it and before."""
    highest = rows[0].level if rows[0].shape == "heading" else 0
    places = [one.at for one in groups]
    found: list[int] = []
    for at, row in enumerate(rows):
        so_far = bisect_left(places, at)
        before = so_far - (bisect_left(places, found[-1]) if found else 0)
        if before < _LEAST or len(places) - bisect_right(places, at) < _LEAST:
            continue
        alike = row.shape == "heading" and row.level == highest
        named = not highest and row.gap and is_title(row.text) and says_its_kind(row.text)
        if alike or (named and not _leads(row)):
            found.append(at)
    return found


def _told(rows: Sequence[Row], groups: Sequence[_Group]) -> list[Row]:
    """Return the rows of one recipe with its list above its steps."""
    begin = _begins(rows, groups[0].at)
    if any(is_ingredient(one.text) and foods_named(one.text) for one in rows[:begin]):
        return list(rows)  # a list of its own above: what stands in groups may be the same again
    end = _ends(rows, groups[-1].end)
    if _are_several(rows, groups):
        return list(rows)
    things = [one.text for group in groups for one in rows[group.at + 1 : group.end]]
    again = Counter(map(_food, things))
    listed: list[Row] = []
    steps: list[Row] = []
    group_at = {one.at: one for one in groups}
    at = begin
    while at < end:
        row = rows[at]
        if group := group_at.get(at):
            inside = [one.text for one in rows[at + 1 : group.end]]
            listed += [Row(one) for one in inside]  # an item without an amount may head a part
            called = [_food(one) if again[_food(one)] == 1 else one for one in inside]
            steps.append(Row(_step(row.text.rstrip(" :"), called), "step"))
            at = group.end
            continue
        if row.shape == "heading":
            part = Row(row.text, "heading", _PART_LEVEL, gap=True)
            listed += [part] if _has_things(rows, group_at.keys(), at) else []
            steps.append(part)
        else:
            steps.append(Row(row.text, "step"))
        at += 1
    heads = Row("Ingredients", "heading", 2, gap=True), Row("Method", "heading", 2, gap=True)
    return [*rows[:begin], heads[0], *listed, heads[1], *steps, *rows[end:]]


def _step(lead: str, called: Sequence[str]) -> str:
    """Return what is done, and with what: "Stir in: sugar, milk"; a dash where that is a time's."""
    named = ("; " if any("," in one for one in called) else ", ").join(called)
    told = f"{lead}: {named}"
    return f"{lead} – {named}" if is_passed(told) else told


def _are_several(rows: Sequence[Row], groups: Sequence[_Group]) -> bool:
    """Whether parts measure the same things, or count recipes: each is one of its own."""
    heads = [at for at, row in enumerate(rows) if row.shape == "heading"]
    if any(_COUNTED.fullmatch(rows[at].text.strip()) for at in heads):
        return True
    parts: dict[int, set[str]] = {}
    for group in groups:
        head = bisect_left(heads, group.at)
        lines = {one.text for one in rows[group.at + 1 : group.end] if is_ingredient(one.text)}
        parts[head] = parts.get(head, set()) | lines
    return any(len(one & other) >= _LEAST for one, other in pairwise(parts.values()))


def _begins(rows: Sequence[Row], first: int) -> int:
    """Return the row at which the work begins: what is done before the first group, too."""
    highest = min((one.level for one in rows[:first] if one.shape == "heading"), default=0)
    at = first
    while at > 1 and _is_of_the_work(rows[at - 1], highest):
        at -= 1
    return at


def _is_of_the_work(row: Row, highest: int) -> bool:
    if is_head(row) or is_only_makes(row.text):
        return False
    if row.shape == "heading":
        return row.level > highest
    return row.shape == "step" or is_plainly_work(row.text)


def _ends(rows: Sequence[Row], last: int) -> int:
    """Return the row behind the work: the first that heads what stands beside it."""
    return next((at for at in range(last, len(rows)) if is_head(rows[at])), len(rows))


def _has_things(rows: Sequence[Row], places: AbstractSet[int], at: int) -> bool:
    """Whether something goes in between a heading and the next one."""
    within = takewhile(lambda one: rows[one].shape != "heading", range(at + 1, len(rows)))
    return not places.isdisjoint(within)


def _food(text: str) -> str:
    """Return the food of a line that begins with an amount; the whole of any other line.

    >>> _food("1 cup butter, softened"), _food("zest 1 lemon")
    ('butter', 'zest 1 lemon')
    """
    try:
        read = read_line(text)
    except Unreadable:
        return text
    first = read.spans.get("amount", (0, 0))[0] == 0
    return read.item if first and normal_form(read.item) else text
