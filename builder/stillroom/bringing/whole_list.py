"""A whole list that was typed on one line, right above what is done: "1 lb sugar, 4 oz butter".

Between typed recipes such a line is all that says where the next one begins. It is taken apart only
where each part is something that goes in. Leaves out lines within a list: one_line.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.heads import SENTENCE_ENDS
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.one_line import names_a_food
from stillroom.bringing.sorting import (
    begins_with_amount,
    is_ingredient,
    is_sentence,
    is_title,
    number_of,
)
from stillroom.core.amounts.quantities import Amount
from stillroom.core.larder.harmless import all_harmless
from stillroom.core.larder.words import normal_form
from stillroom.core.lines.reader import read_line
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.words.patterns import OUTSIDE_BRACKETS
from stillroom.core.words.problems import Unreadable

_FIGURE: Final = re.compile(r"(?:about |ca\.? )?[\d½⅓⅔¼¾⅛⅜⅝⅞]")
# what stands for an amount: "few drops vanilla", "small tin evaporated milk", "juice of 2 lemons"
_LOOSE: Final = re.compile(
    r"(?:an?\s+)?(?:few|some|little|pinch|dash|knob|handful|small|large|medium|half|tin|can|packet|pkt|jar|bottle|stick"
    r"|juice|rind|zest|peel|grated|muslin\s+bag|spice\s+bag|bag)\b",
    re.IGNORECASE,
)
_COMMAS: Final = re.compile(rf"\s*,(?!\d)\s*{OUTSIDE_BRACKETS}")
_SEMICOLONS: Final = re.compile(rf"\s*;\s*{OUTSIDE_BRACKETS}")
_DASHES: Final = re.compile(r"\s+[-–—]\s+")
_FOR_WHAT: Final = re.compile(r"\s+(?:to|for)\s+[^\W\d]+(?:\s[^\W\d]+)?$")
_ENTRY: Final = re.compile(
    r"(?P<title>[A-ZÀ-Þ][^:.,;\d]{2,40}):\s+(?P<list>[\d½¼¾][^.!?]*(?:(?<=oz|lb|pt)\.[^.!?]*)*)[.!]\s+(?P<told>\S.*)"
)
_ENTRY_LEVEL: Final = 2
_TITLE_WORDS: Final = 6
_JOINED: Final = re.compile(rf"\s+(?:and|und|et|y|&|\+)\s+(?=[\d½¼¾]){OUTSIDE_BRACKETS}")
# "1 cup soft butter ½ cup brown sugar, packed 2 cups flour": one after the other
_NEXT: Final = re.compile(rf"(?<=[^\W\d])\)?,?\s+(?=[\d½⅓⅔¼¾⅛]){OUTSIDE_BRACKETS}")
_GOES_ON: Final = re.compile(
    r"(?:\b(?:of|for|in|an?|the|x|to|about|or|and|plus|from|by|with|each|type|no|nr|size|over|at)\.?|[-–/(])$",
    re.IGNORECASE,
)
_BESIDE: Final = re.compile(r"(?:w/|with|or|to|for|if|from|strange|plus)\b", re.IGNORECASE)
_STARRED: Final = re.compile(
    r"(?P<head>[^\W\d]+)\s*:?\s+(?=[*•·]\s?[\d½¼¾])(?P<list>(?:[*•·]\s?[^*•·]{2,60}){3,})"
)
# "turmeric half oz", "cauliflower one large"
_WORDED: Final = re.compile(
    r"(?<=[^\W\d]),?\s+(?=(?:half|quarter|one|two|three|four|six|a\sfew)\s+[a-z]+$)"
)
# "gebrochener Zimt. Die Früchte": what a list's last thing is called, on the line below it
_ENDS_WITHIN: Final = re.compile(r"(?P<said>[^\W\d_A-ZÀ-Þ][^.!?:;\d]{2,40}\.)\s+(?=[A-ZÀ-Þ])")
_STAR: Final = re.compile(r"\s*[*•·]\s*")
_MOST_WORDS: Final = 9
_LONGEST: Final = 500
_LEAST: Final = 3
_FIRST: Final = 8
_FEW: Final = 2


def with_lists_apart(rows: Sequence[Row]) -> list[Row]:
    """Return rows with a list that stands on one line as items, where what is done follows it."""
    rows = _with_numbered_titles(_with_two_lines_joined(rows))
    entries = {place: one for place, row in enumerate(rows) if (one := _entry(row))}
    found: list[Row] = []
    for place, row in enumerate(rows):
        if place in entries and len(entries) >= _FEW:
            title, things, told = entries[place]
            found.append(Row(title, "heading", _ENTRY_LEVEL, True))
            found += [Row(one, "item") for one in things]
            found.append(Row(told, "line", 0, True, row.wraps))
            continue
        starred = _STARRED.fullmatch(row.text.strip()) if row.shape == "line" else None
        if starred:
            found.append(Row(starred["head"], "heading", 6, row.gap))
            found += [Row(one, "item") for one in _STAR.split(starred["list"]) if one.strip()]
            continue
        things = things_of_line(row.text) if _stands_alone(rows, place) else []
        found += [replace(row, text=one, shape="item", gap=row.gap and not at, wraps=False)
                  for at, one in enumerate(things)] or [row]  # fmt: skip
    return found


def _with_two_lines_joined(rows: Sequence[Row]) -> list[Row]:
    """Return rows with a list whose line a book broke at a comma on one row.

    >>> rows = [Row("2 quarts of plums, 1 pint of vinegar,", gap=True), Row("Sugar.", wraps=True)]
    >>> [row.text for row in _with_two_lines_joined(rows)]
    ['2 quarts of plums, 1 pint of vinegar, Sugar.']
    >>> rows = [Row("1 kg Zucker, 1 kg Birnen, 5 g grob", gap=True)]
    >>> rows += [Row("gestoßener Zimt. Man", wraps=True)]
    >>> [row.text for row in _with_two_lines_joined(rows)]
    ['1 kg Zucker, 1 kg Birnen, 5 g grob gestoßener Zimt.', 'Man']
    """
    found: list[Row] = []
    for row in rows:
        above = found[-1] if found else None
        broken = above and above.text.endswith(",") and above.gap and above.shape == "line"
        if above and broken and not row.gap and row.shape == "line" and row.wraps:
            whole = f"{above.text} {row.text}"
            if len(whole) <= _LONGEST and things_of_line(whole):
                found[-1] = replace(above, text=whole)
                continue
        rest = _ENDS_WITHIN.match(row.text) if above and above.gap and not row.gap else None
        if above and rest and above.shape == row.shape == "line" and row.wraps:
            whole = f"{above.text} {rest['said']}"
            if len(whole) <= _LONGEST and things_of_line(above.text) and things_of_line(whole):
                found[-1] = replace(above, text=whole)
                row = replace(row, text=row.text[rest.end() :])
        found.append(row)
    return found


def _entry(row: Row) -> tuple[str, list[str], str] | None:
    """Return title, things and method of a recipe that is one paragraph; None for any other row.

    "Lemon curd: 4 lemons, 1 lb sugar, 4 oz butter. Grate the rind ...", as old notebooks have it.
    """
    said = _ENTRY.fullmatch(row.text.strip()) if row.shape == "line" else None
    things = things_of_line(said["list"]) if said else []
    return (said["title"].strip(), things, said["told"]) if said and things else None


def _with_numbered_titles(rows: Sequence[Row]) -> list[Row]:
    """Return rows with "1. Plum jam", "2. Apple jelly" as titles, where a list follows each."""
    numbered = [place for place, row in enumerate(rows) if row.shape == "step"]
    named = [
        place
        for place in numbered
        if len(number_of(rows[place].text).split()) <= _TITLE_WORDS
        and is_title(number_of(rows[place].text))
        and place + 1 < len(rows)
        and (is_ingredient(rows[place + 1].text) or is_head(rows[place + 1]))
    ]
    if len(named) < _FEW or named != numbered:
        return list(rows)
    return [
        replace(row, text=number_of(row.text), shape="heading", level=_ENTRY_LEVEL)
        if place in named
        else row
        for place, row in enumerate(rows)
    ]


def _stands_alone(rows: Sequence[Row], place: int) -> bool:
    """Whether a line stands below a title and above a sentence: no line of a longer list."""
    row = rows[place]
    if row.shape != "line" or len(row.text) > _LONGEST or place + 1 >= len(rows) or place == 0:
        return False
    above, below = rows[place - 1], rows[place + 1]
    if is_head(above):  # a list with a heading is read as one
        return False
    if not row.gap and (above.shape == "item" or is_ingredient(above.text)):
        return False
    if _heads_another_list(rows, place):
        return True
    said = _paragraph(rows, place + 1) if below.gap else below.text
    told = below.shape == "step" or is_head(below) or is_sentence(said)
    return told or (len(below.text.split()) >= _LEAST and below.text.rstrip().endswith("."))


def _heads_another_list(rows: Sequence[Row], place: int) -> bool:
    """Whether a heading like the one above stands below, with such a line of its own."""
    above, below, more = rows[place - 1], rows[place + 1], rows[place + 2 : place + 3]
    alike = above.shape == below.shape == "heading" and above.level == below.level
    return alike and not is_head(below) and bool(more) and bool(things_of_line(more[0].text))


def _paragraph(rows: Sequence[Row], at: int) -> str:
    """Return the words of a row, and of those that its machine broke off it."""
    text = rows[at].text
    for row in rows[at + 1 : at + _FIRST]:
        if row.gap or not row.wraps or row.shape != "line" or is_sentence(text):
            break
        text = f"{text} {row.text}"
    return text


def things_of_line(text: str) -> list[str]:
    """Return the things of a line that is a whole list; [] for any other line.

    >>> things_of_line("1 lb sugar, 1/4 lb butter, small tin evaporated milk, few drops vanilla")
    ['1 lb sugar', '1/4 lb butter', 'small tin evaporated milk', 'few drops vanilla']
    >>> things_of_line("1 cup soft butter 1/2 cup brown sugar, packed 2 cups flour, sifted")
    ['1 cup soft butter', '1/2 cup brown sugar, packed', '2 cups flour, sifted']
    >>> things_of_line("1 bottle gin; rind of 2 oranges; 4 oz sugar")
    ['1 bottle gin', 'rind of 2 oranges', '4 oz sugar']
    >>> things_of_line("10 quarts of raspberries, cider vinegar, sugar.")
    ['10 quarts of raspberries', 'cider vinegar', 'sugar']
    >>> things_of_line("2 weeks later, 3 at most, strain it"), things_of_line("500 g plums, stoned")
    ([], [])
    >>> things_of_line("almonds 200g, egg white 1, sugar 100g, salt half tsp")
    ['almonds 200g', 'egg white 1', 'sugar 100g', 'salt, half tsp']
    """
    bare = text.strip().rstrip(".")
    if is_only_makes(bare):
        return []
    if not begins_with_amount(bare):
        return _named_first(bare)
    signs = _SEMICOLONS if ";" in bare else _COMMAS
    signs = _DASHES if len(_DASHES.split(bare)) >= _LEAST and "," not in bare else signs
    parts = [one for part in signs.split(bare) for one in _JOINED.split(part)]
    parts = _with_what_is_said([part.strip() for part in parts if part.strip()])
    if ";" not in bare and any(_NEXT.search(part) for part in parts):
        beside = _one_after_the_other(bare)
        parts = beside if len(beside) > len(parts) else parts
    least = _FEW if ";" in bare else _LEAST
    figures = sum(bool(_FIGURE.match(part)) for part in parts)
    few = figures < _FEW and not (figures and all(map(names_a_food, parts)))  # "..., Sugar."
    if len(parts) < least or few or not all(map(_goes_in, parts)):
        return []
    return parts


def things_in_sentences(texts: Sequence[str]) -> list[str]:
    """Return the things that one sentence among the first lists whole; [] where none does.

    >>> things_in_sentences(["It is the usual. Damsons 500 g, sugar 250 g, gin 70 cl. Mix them."])
    ['Damsons 500 g', 'sugar 250 g', 'gin 70 cl']
    >>> things_in_sentences(["You need: 250 g flour, 125 g sugar, 125 g butter. Knead it."])
    ['250 g flour', '125 g sugar', '125 g butter']
    >>> things_in_sentences(["Boil it for 2 hours, 3 at most. Then strain it."])
    []
    """
    for text in texts[:_FIRST]:
        for sentence in SENTENCE_ENDS.split(text[:_LONGEST]):
            for said in (sentence, sentence.partition(":")[2].strip()):
                if said and (things := things_of_line(said)):
                    return things
    return []


def _named_first(bare: str) -> list[str]:
    """Return the things of a list that names each before its amount; [] for any other line."""
    if len(bare) > _LONGEST:
        return []
    signs = _SEMICOLONS if ";" in bare else _COMMAS
    parts = [_WORDED.sub(", ", part.strip()) for part in signs.split(bare) if part.strip()]
    measured = [part for part in parts if _is_amount_behind(part)]
    most = len(measured) >= max(_LEAST, len(parts) - len(parts) // _LEAST)
    return parts if most and all(part in measured or names_a_food(part) for part in parts) else []


def _is_amount_behind(part: str) -> bool:
    if len(part.split()) > _MOST_WORDS:
        return False
    try:
        read = read_line(part)
    except Unreadable:
        return False
    behind = read.spans.get("amount", (0, 0))[0] > 0
    return behind and isinstance(read.amount, Amount) and find_staple(read.item) is not None


def _one_after_the_other(text: str) -> list[str]:
    """Return the parts of a line that lists things without a sign between them."""
    places = [one for one in _NEXT.finditer(text) if not _GOES_ON.search(text[: one.start()])]
    ends = [0, *(one.end() for one in places), len(text)]
    return [text[begin:end].strip(" ,") for begin, end in pairwise(ends)]


def _with_what_is_said(parts: list[str]) -> list[str]:
    """Return parts with "packed" and "or milk" behind the thing that they are said of."""
    found: list[str] = []
    for part in parts:
        said = found and not _FIGURE.match(part) and not _LOOSE.match(part)
        if said and (_BESIDE.match(part) or all_harmless(normal_form(part).split())):
            found[-1] = f"{found[-1]}, {part}"
        else:
            found.append(part)
    return found


def _goes_in(part: str) -> bool:
    """Whether a part is so much of something, or a food by its name."""
    if len(part.split()) > _MOST_WORDS or is_sentence(part):
        return False
    if names_a_food(_FOR_WHAT.sub("", part)) or _LOOSE.match(part):
        return True
    try:
        read = read_line(part)
    except Unreadable:
        return bool(_FIGURE.match(part)) and len(part.split()) > 1
    return isinstance(read.amount, Amount) and bool(read.item) and read.amount.unit not in _TIMES


_TIMES: Final = frozenset({"minute", "hour", "day", "week", "month", "year"})
