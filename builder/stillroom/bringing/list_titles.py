"""Which lists are one recipe's, and the title that each recipe stands under.

Leaves out how a list is found: lists.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from stillroom.bringing.found import FARTHEST, List, Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.heads import heads_tools, plain, section_of, words
from stillroom.bringing.joining import joined
from stillroom.bringing.known_work import is_plainly_work
from stillroom.bringing.list_parts import is_part_alone
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.naming import kind_of_title, says_its_kind
from stillroom.bringing.shared_method import are_siblings
from stillroom.bringing.sorting import is_ingredient, is_passed, is_sentence, is_title
from stillroom.bringing.stages import is_stage_of, names_stage, stage_above
from stillroom.bringing.titles import titled, writer_of
from stillroom.core.amounts.quantities import Amount
from stillroom.core.lines.reader import read_line
from stillroom.core.lines.staple_table import find_staple, staples_named
from stillroom.core.words.problems import Unreadable

_CHAPTERS: Final = 3
"""A title stands so close below the names of the chapters it is in."""
_FIRST_ROWS: Final = 12
_MOST_TYPED_SMALL: Final = 6
_MOST_OF_A_TITLE: Final = 8
_LEAST_TOLD: Final = 5
_FIGURE: Final = re.compile(r"[\d½⅓⅔¼¾]")


def join_lists(lists: list[List], rows: Sequence[Row]) -> list[List]:
    """Join lists that have no method between them: they are one recipe's."""
    whole: list[List] = []
    for one in _without_facts(lists, rows):
        if whole and (
            _tools_head(rows, whole[-1].end, one.begin) or _needed_beside(rows, whole[-1], one)
        ):
            behind = range(one.end, len(rows))
            end = next((at for at in behind if is_head(rows[at]) or _told(rows[at])), len(rows))
            above_it = _tools_begin(rows, whole[-1].end, one.begin)
            whole[-1].tools += [*range(above_it, one.begin), *one.rows, *range(one.end, end)]
            whole[-1].end = end
        elif whole and are_siblings(rows, whole[-1].begin, one.begin):
            whole.append(one)
        elif whole and not _has_method(rows, whole[-1], one.begin):
            above = whole[-1]
            if (
                one.named
                and above.named
                and not any(_FIGURE.search(rows[at].text) for at in above.rows)
            ):
                above.tools, above.rows = above.rows, []
            above.rows += [*range(above.end, one.begin), *one.rows]
            whole[-1].end = one.end
        elif whole and not _begins_another(rows, whole, one, _end_of(rows, lists, one)):
            if not _in_aside(rows, max(whole[-1].end, one.begin - FARTHEST), one.begin):
                whole[-1].later += one.rows  # a second list amid the method of one recipe
        else:
            whole.append(one)
    return whole


def _told(row: Row) -> bool:
    """Whether a row is told of and no thing: a step, a sentence, or work behind a gap."""
    return row.shape == "step" or is_sentence(row.text) or (row.gap and is_plainly_work(row.text))


def _end_of(rows: Sequence[Row], lists: Sequence[List], one: List) -> int:
    """Return where what is told below a list ends at the latest: where the next one begins."""
    return next((other.begin for other in lists if other.begin > one.begin), len(rows))


def _begins_another(rows: Sequence[Row], before: list[List], one: List, end: int) -> bool:
    """Whether a list that follows a method is another recipe's: a title of its own says so."""
    behind = max(before[-1].end, one.begin - FARTHEST)
    title = title_above(rows, behind, one.begin)
    if stage_above(rows, one.begin, behind) is not None:
        return False  # "Day 4", "For the jelly": a stage of the one above
    if title is not None and is_stage_of(rows, before[-1], title, end):
        return False
    if title and is_head(rows[title - 1]) and section_of(rows[title - 1].text) == "method":
        return False  # what heads the first things of a method is no recipe's title
    if title and is_part_alone(rows[title]):
        return False  # "Topping": a part of the one above, as that has "Base"
    if title is None:
        return _is_listed_anew(rows, before[-1], one)
    if one.named or rows[title].shape != "heading":
        return True
    above = [
        rows[at].level
        for at in range(before[0].begin)
        if rows[at].shape == "heading" and not is_head(rows[at])
    ]
    return not above or rows[title].level <= above[-1]


def _is_listed_anew(rows: Sequence[Row], above: List, one: List) -> bool:
    """Whether a list stands under the same bare head as the one above, a method's head between."""
    if not (above.named and one.named):
        return False
    heads = [plain(rows[at].text) for at in (above.begin, one.begin)]
    bare = heads[0] == heads[1] and len(heads[0].split()) == 1
    between = rows[above.end : one.begin]
    return bare and any(is_head(row) and section_of(row.text) == "method" for row in between)


def _in_aside(rows: Sequence[Row], begin: int, end: int) -> bool:
    """Whether what follows stands in notes or the like, after the method."""
    heads = [section_of(row.text) for row in rows[begin:end] if is_head(row)]
    return bool(heads) and heads[-1] == "aside"


def _tools_head(rows: Sequence[Row], begin: int, end: int) -> bool:
    """Whether "Equipment" heads what follows a list: tools, and no more of its foods."""
    heads = [at for at in range(begin, end) if is_head(rows[at])]
    if not heads or not heads_tools(rows[heads[-1]].text):
        return False
    between = rows[heads[-1] + 1 : end]  # tools that no amount stands before
    return all(row.shape in ("item", "line") and not is_sentence(row.text) for row in between)


def _tools_begin(rows: Sequence[Row], begin: int, end: int) -> int:
    """Return the row behind the last head above a list of tools: some have no amount."""
    return next((at + 1 for at in reversed(range(begin, end)) if is_head(rows[at])), end)


def _needed_beside(rows: Sequence[Row], above: List, one: List) -> bool:
    """Whether "Benodigdheden" follows a list of ingredients: beside one, it means the tools."""
    return one.named and above.named and plain(rows[one.begin].text) in words("either")


def _without_facts(lists: Sequence[List], rows: Sequence[Row]) -> list[List]:
    """Return lists without facts in figures above one with a head of its own: "Weight: 981 g"."""
    kept: list[List] = []
    for place, one in enumerate(lists):
        below = lists[place + 1] if place + 1 < len(lists) else None
        headed = below is not None and below.named and not one.named
        if headed and not any(staples_named(rows[at].text) for at in one.rows):
            continue
        kept.append(one)
    return kept


def _has_method(rows: Sequence[Row], above: List, end: int) -> bool:
    between = rows[above.end : end]
    # below bare lines, items say what is done
    listed = sum(row.shape == "item" for row in between) > 1
    if listed and all(rows[at].shape == "line" for at in above.rows):
        return True
    return any(
        row.shape == "step"
        or is_sentence(row.text)
        or _is_short_step(row)
        or section_of(row.text) == "method"
        for row in joined(between)
    )


def _is_short_step(row: Row) -> bool:
    """Whether a few words that end as a sentence may be all of a method: "Boil until it sets."."""
    said = re.search(r"[^\W\d]{2}[.!]$", row.text) and len(row.text.split()) > 2
    return row.shape == "line" and bool(said) and not is_ingredient(row.text)


def list_begins(lists: list[List], rows: Sequence[Row]) -> list[int]:
    """Return the row at which each recipe begins: that of its title."""
    begins = [0]
    for above, one in pairwise(lists):
        title = title_above(rows, above.end, one.begin)
        leads = one.named and rows[one.begin - 1].gap and rows[one.begin - 1].text.endswith(":")
        begins.append(one.begin - leads if title is None else title)
    return begins


def first_title(rows: Sequence[Row], lists: list[List], begins: list[int]) -> int | None:
    """Return the row of the first recipe's title: of several recipes, a heading like the others."""
    if len(lists) > 1 and rows[begins[1]].shape == "heading":
        level = rows[begins[1]].level
        alike = [
            at
            for at in range(lists[0].begin)
            if rows[at].shape == "heading" and rows[at].level == level and not is_head(rows[at])
        ]
        if alike:
            return alike[-1]
    title = title_above(rows, 0, lists[0].begin)
    last = lists[0].begin - 1
    nearer = title is not None and title < last and rows[last].shape == "line" and len(lists) > 1
    if nearer and is_title(rows[last].text) and says_its_kind(rows[last].text):
        return last  # what stands above it is about them all
    return title


def _told_above(rows: Sequence[Row], at: int) -> bool:
    """Whether a sentence ends right above a title: a story, or the last step of another recipe."""
    above = rows[at - 1].text
    if writer_of(above):  # the recipe above ends with whose it is
        return True
    ended = bool(re.search(r"[.!?:][\"”’)]*$", above)) and len(above.split()) > 2
    return ended and (is_sentence(above) or says_its_kind(rows[at].text))


def _says_beside(text: str) -> bool:
    """Whether a line between a title and its list says something else: a yield, a starred note."""
    return is_only_makes(text) or is_passed(text) or text.startswith(("*", "\\*"))


def _named_above(rows: Sequence[Row], first: int, at: int) -> bool:
    """Whether a title stands above a sentence that says it again: "To make sloe gin you need"."""
    if first == at or section_of(rows[at].text) is None or not is_title(rows[first].text):
        again = first < at and is_sentence(rows[at].text) and is_title(rows[first].text)
        if not again:
            return False
    said = set(re.findall(r"[^\W\d_]+", rows[at].text.lower()))
    return said.issuperset(re.findall(r"[^\W\d_]+", rows[first].text.lower()))


def _headed_above(rows: Sequence[Row], first: int, at: int) -> bool:
    """Whether a sentence speaks of the recipe below a page's own title, which says its kind."""
    over = [row for row in rows[first:at] if row.shape == "heading" and row.level == 1]
    told = rows[at].shape == "line" and len(rows[at].text.split()) > _MOST_OF_A_TITLE
    named = (part for row in over for part in row.text.split(":"))  # "Elder, part 1: the syrup"
    return told and any(map(says_its_kind, named))


def _is_half_told(rows: Sequence[Row], at: int) -> bool:
    """Whether a row is the first line of what somebody tells: "For years I have made a" cake."""
    few = len(rows[at].text.split()) < _LEAST_TOLD
    below = rows[at + 1] if at + 1 < len(rows) else None
    if few or below is None or below.gap or below.shape != "line" or is_ingredient(below.text):
        return False
    return below.text[:1].islower()


def title_above(rows: Sequence[Row], behind: int, list_begin: int) -> int | None:
    """Return the row of the title of the list at `list_begin`, looked for down to `behind`."""
    span = range(behind, list_begin)
    for at in span:
        if titled(rows[at].text) and not _headed_above(rows, span.start, at):
            return span.start if _named_above(rows, span.start, at) else at
    headings = [at for at in span if rows[at].shape == "heading" and not is_head(rows[at])]
    headings = [at for at in headings if not is_passed(rows[at].text)]  # the day it was posted
    if headings:
        highest = min(rows[at].level for at in headings)
        top = [at for at in headings if rows[at].level == highest][-1]
        others = [at for at in headings if at > top and not names_stage(rows[at])]
        named = [at for at in others if kind_of_title(rows[at].text).word]
        close = bool(named) and named[-1] - top < _CHAPTERS
        return named[-1] if close and not kind_of_title(rows[top].text).word else top
    found: int | None = None
    first = rows[behind] if behind == 0 and behind < list_begin else None
    for at in reversed(span):
        row = rows[at]
        below = rows[at + 1 : list_begin]
        right_above = all(_says_beside(one.text) for one in below)
        told_above = right_above and at > 0 and _told_above(rows, at)
        open_above = (
            row.gap
            or at == 0
            or told_above
            or (found is not None and at == found - 1)
            or at == behind
        )
        if (
            row.shape == "line"
            and is_title(row.text)
            and open_above
            and not _is_half_told(rows, at)
        ):
            found = at
        elif found is not None and not (writer_of(row.text) or is_passed(row.text)):
            break
    counted = first is not None and first.shape == "line" and says_its_kind(first.text)
    if found is None and counted and list_begin > behind + 1 and rows[behind + 1].gap:
        return behind  # "1-Gallon Mead", alone at the head of the page
    return found if found is not None or behind else _typed_small(rows, list_begin)


def _typed_small(rows: Sequence[Row], list_begin: int) -> int | None:
    """Return the row of a title without a capital: right above the list, or at the page's head."""
    above = rows[:list_begin]
    last = above[-1] if above else None
    named = last is not None and last.gap and says_its_kind(last.text) and _is_small_title(last)
    if named and len(above) > 1:
        return list_begin - 1
    at = next((at for at, row in enumerate(above) if not is_passed(row.text)), None)
    return at if at is not None and _is_small_title(above[at]) else None


def _is_small_title(row: Row) -> bool:
    few = row.shape == "line" and len(row.text.split()) <= _MOST_TYPED_SMALL
    return few and is_title(row.text.capitalize())


def with_first_line_named(rows: Sequence[Row]) -> list[Row]:
    """Return rows with a first line that only looks like a thing of the list as the title.

    "Salt dough stars", "3-C Bread", "Cucumber Pickles -- 8 Pints"; "1 kg plums" stays a thing.
    """
    first = rows[0] if rows else None
    listed = any(is_ingredient(row.text) for row in rows[1:_FIRST_ROWS])
    if first is None or first.shape != "line" or not listed or not is_ingredient(first.text):
        return list(rows)
    begins = re.match(r"[\d½¼¾⅓⅔]", first.text)
    apart = len(rows) > 1 and rows[1].gap
    few = len(first.text.split()) <= _MOST_OF_A_TITLE
    if (
        not few
        or _is_known_thing(first.text)
        or (begins and not apart and not says_its_kind(first.text))
    ):
        return list(rows)
    return [replace(first, shape="heading", level=1), *rows[1:]]


def _is_known_thing(text: str) -> bool:
    """Whether a line is an amount and a food that is known by the whole of its name."""
    try:
        line = read_line(text)
    except Unreadable:
        return False
    measured = isinstance(line.amount, Amount) and bool(line.amount.unit)
    named = says_its_kind(text) and len(text.split()) > 1 and not measured
    return find_staple(line.item) is not None and not named
