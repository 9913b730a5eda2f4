"""The lists of ingredients in a paper, and the title that each stands under.

A list is found by its heading, or as a run of lines that begin with amounts. Leaves out what stands
around a list: dividing.py puts that in its place.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.heads import heads_tools, plain, section_of, words
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.one_line import foods_on, names_a_food
from stillroom.bringing.sorting import (
    begins_in_words,
    begins_with_amount,
    is_ingredient,
    is_only_makes,
    is_passed,
    is_sentence,
    is_title,
)
from stillroom.bringing.titles import titled, writer_of

_HOW_TO: Final = re.compile(
    r"(?:how\s+(?:to|i|we)\s+make|to\s+make|so\s+macht\s+man|cómo\s+(?:hacer|preparar|se\s+hace)|comment\s+(?:faire|préparer)"
    r"|come\s+(?:fare|preparare)|(?:hoe|zo)\s+maak\s+je|(?:preparing|making|using|feeding)\s+(?:the|your|it))"
    r"\s*(?:[^\W\d][\w'’-]*\s*){1,6}(?:,\s*(?:step\s+by\s+step|paso\s+a\s+paso|passo\s+(?:dopo|per)\s+passo"
    r"|étape\s+par\s+étape|stap\s+voor\s+stap))?:?",
    re.IGNORECASE,
)
# "A dry artist's brush for dusting inside the jar if needed", close below others
_A_THING: Final = re.compile(r"(?:an?|some|your)\s+[a-z]", re.IGNORECASE)
_MOST_OF_A_THING: Final = 14
# "Puderzucker, Zitronensaft und Perlen für die Verzierung"
_FOR_THE_END: Final = re.compile(
    r"\b(?:for\s+(?:decorati\w+|dusting|rolling|sprinkling|serving|coating)|to\s+(?:decorate|finish|dust|serve)"
    r"|(?:für\s+die|zur)\s+(?:Verzierung|Dekoration|Deko)|zum\s+(?:Bestäuben|Bestreuen|Verzieren|Wälzen|Garnieren|Dekorieren)"
    r"|pour\s+(?:la\s+)?(?:décor\w*|garnir|saupoudrer)|per\s+(?:la\s+)?(?:decora\w+|guarnire|spolverare)"
    r"|para\s+(?:decorar|espolvorear)|(?:ter|om\s+te)\s+(?:versier\w+|decoratie|garner\w+|bestrooien))$",
    re.IGNORECASE,
)
_SPOKEN: Final = re.compile(r"(?:an?|one|two|three|four|five|six|half|few|some)\s", re.IGNORECASE)
_IF_LIKED: Final = re.compile(
    r"(?:optional(?:ly|e)?|nach\s+belieben|facultatif|facoltativ\w|opcional|optioneel|evtl\.?)\b",
    re.IGNORECASE,
)
_FIGURE: Final = re.compile(r"[\d½⅓⅔¼¾]")
WIDE: Final = 55
"""From here on a line is taken for one that its writer's machine broke off."""


@dataclass
class List:
    """A list of ingredients: the row of its heading or of its first line, and the one behind.

    `later` are rows of amounts that stand further below, amid the method; `tools` what is needed
    beside, listed without an amount before the ingredients.
    """

    begin: int
    end: int
    named: bool
    rows: list[int] = field(default_factory=list)
    later: list[int] = field(default_factory=list)
    tools: list[int] = field(default_factory=list)


def is_head(row: Row) -> bool:
    """Whether a row heads a part of a recipe."""
    if row.shape == "item":  # "- Instructions", where a page made items of all its lines
        return plain(row.text) in words("ingredients") | words("method")
    return row.shape in ("heading", "line") and section_of(row.text) is not None


def heads_method(row: Row) -> bool:
    """Whether a row heads a method behind a list in words of its own: "How to make plum gin"."""
    return row.shape in ("heading", "line") and bool(_HOW_TO.fullmatch(row.text.strip()))


def find_lists(rows: Sequence[Row]) -> list[List]:
    """Find the lists: those with a heading, and runs of amounts where there is none."""
    lists: list[List] = []
    at = 0
    while at < len(rows):
        if is_head(rows[at]) and section_of(rows[at].text) == "ingredients":
            end = _named_end(rows, at)
            if end > at + 1:
                lists.append(List(at, end, True, list(range(at + 1, end))))
            at = max(end, at + 1)
            continue
        if (
            rows[at].shape in ("line", "item")
            and is_ingredient(rows[at].text)
            and not is_only_makes(rows[at].text)
            and not amid_a_sentence(rows, at)
        ):
            end = _run_end(rows, at)
            # "Salt scrub", "(Body polish)" is a title
            if end - at >= 2 and any(_says_how_much(row.text) for row in rows[at:end]):
                lists.append(List(at, end, False, list(range(at, end))))
                at = end
                continue
        at += 1
    return lists


def amid_a_sentence(rows: Sequence[Row], at: int) -> bool:
    """Whether a line that begins with a number goes on with a sentence broken off above it."""
    row = rows[at]
    if at == 0 or not row.wraps or row.gap or row.shape != "line":
        return False
    above = rows[at - 1].text
    goes_on = above[:1].islower() and len(above.split()) >= 3 and not is_ingredient(above)
    return goes_on and not re.search(r"[.!?:;]$", above)


def _says_how_much(text: str) -> bool:
    said = _FIGURE.search(text) or _SPOKEN.match(text)
    return bool(said) or begins_in_words(text)


def _named_end(rows: Sequence[Row], head: int) -> int:
    """Return the row behind a list that has a heading: the head of its method, where it has one."""
    level = rows[head].level or 9
    method = _method_ahead(rows, head)
    amounts = 0
    for at in range(head + 1, len(rows)):
        row = rows[at]
        if row.shape == "step" or is_head(row) or heads_method(row):
            return at
        if row.shape == "heading":
            listed = at + 1 < len(rows) and (
                is_ingredient(rows[at + 1].text) or rows[at + 1].shape == "item"
            )
            if row.level < level or not (listed or method):
                return at
            continue
        amounts += is_ingredient(row.text)
        if row.shape == "item" and amounts and _is_step(row.text):
            return at
        if method or row.shape != "line" or is_ingredient(row.text):
            continue
        if is_sentence(row.text) or _ends_the_list(rows, head, at):
            return at
        more = [one for one in rows[at + 1 : at + 3] if is_ingredient(one.text)]
        if row.gap and amounts and not more and not is_group(rows, at):
            return at
    return len(rows)


def _is_step(text: str) -> bool:
    """Whether an item among others says what is done: a sentence, no amount, no foods alone."""
    return is_sentence(text) and not begins_with_amount(text) and not foods_on(text)


def _ends_the_list(rows: Sequence[Row], head: int, at: int) -> bool:
    """Whether a short line without a food follows items, or alone among its like ends in a stop.

    "Stages of cooking" behind a list with bullets, "Cook the chutney." behind bare lines.
    """
    above = [row for row in rows[head + 1 : at] if row.shape != "heading"]
    if len(above) < 2 or is_group(rows, at) or names_a_food(rows[at].text):
        return False
    stopped = rows[at].text.endswith((".", "!")) and not any(
        row.text.endswith(".") for row in above
    )
    return stopped or all(row.shape == "item" for row in above)


def _method_ahead(rows: Sequence[Row], head: int) -> bool:
    """Whether the head of a method follows before another list's: all up to it is the list."""
    for at in range(head + 1, len(rows)):
        if is_head(rows[at]):
            return section_of(rows[at].text) == "method"
        if rows[at].shape == "step":
            return False
    return False


def _run_end(rows: Sequence[Row], begin: int) -> int:
    """Return the row behind a run of lines with amounts, headings within it passed over."""
    end = begin
    at = begin
    while at < len(rows):
        row = rows[at]
        if row.shape in ("line", "item") and is_ingredient(row.text) and not is_head(row):
            at += 1
            end = at
        elif _goes_on(rows, at, end) or is_group(rows, at):
            at += 1
        elif _short_one(rows, at, end):
            at += 1
            end = at
        else:
            break
    return end


def _short_one(rows: Sequence[Row], at: int, end: int) -> bool:
    """Whether a row is an ingredient without an amount, close below others: "salt and pepper"."""
    row = rows[at]
    if at != end or row.shape not in ("line", "item") or is_head(row) or heads_method(row):
        return False
    loose = _FOR_THE_END.search(row.text) or _IF_LIKED.match(row.text)
    if not row.gap and (len(foods_on(row.text)) > 1 or (loose and not is_sentence(row.text))):
        return True  # "icing sugar, lemon juice and sprinkles to decorate"
    listed = row.shape == "item" and rows[at - 1].shape == "item"
    most = _MOST_OF_A_THING if _A_THING.match(row.text) and not row.gap else 6
    short = len(row.text.split()) <= most and not re.search(r"[.!?:]$", row.text)
    if row.gap and not listed:  # a list with a blank line after each, as pages are saved
        below = rows[at + 1].text if at + 1 < len(rows) else ""
        known = names_a_food(row.text) or is_ingredient(below) or names_a_food(below)
        short = short and rows[at - 1].gap and known
    return (listed or short) and not is_sentence(row.text) and not is_only_makes(row.text)


def _goes_on(rows: Sequence[Row], at: int, end: int) -> bool:
    """Whether a row is the rest of a long line above it."""
    row = rows[at]
    return (
        at == end
        and row.wraps
        and not row.gap
        and row.shape == "line"
        and len(rows[at - 1].text) >= WIDE
        and row.text[:1].islower()
    )


def is_group(rows: Sequence[Row], at: int) -> bool:
    """Whether a row is a heading within a list: more amounts stand right below it."""
    row = rows[at]
    if at + 1 >= len(rows) or (rows[at + 1].gap and row.shape != "heading"):
        return False
    short = len(row.text) <= 60 and not is_sentence(row.text) and not is_ingredient(row.text)
    below = rows[at + 1]
    return (
        short
        and row.shape in ("heading", "line")
        and section_of(row.text) is None
        and not is_only_makes(row.text)
        and below.shape in ("line", "item")
        and is_ingredient(below.text)
        and (row.shape == "heading" or row.gap or row.text.endswith(":"))
    )


def join_lists(lists: list[List], rows: Sequence[Row]) -> list[List]:
    """Join lists that have no method between them: they are one recipe's."""
    joined: list[List] = []
    for one in lists:
        if joined and _tools_head(rows, joined[-1].end, one.begin):
            behind = range(one.end, len(rows))
            end = next((at for at in behind if is_head(rows[at]) or _told(rows[at])), len(rows))
            joined[-1].tools += [*one.rows, *range(one.end, end)]
            joined[-1].end = end
        elif joined and not _has_method(rows, joined[-1].end, one.begin):
            above = joined[-1]
            if (
                one.named
                and above.named
                and not any(_FIGURE.search(rows[at].text) for at in above.rows)
            ):
                above.tools, above.rows = above.rows, []
            above.rows += [*range(above.end, one.begin), *one.rows]
            joined[-1].end = one.end
        elif joined and not _begins_another(rows, joined, one):
            if not _in_aside(rows, joined[-1].end, one.begin):
                joined[-1].later += one.rows  # a second list amid the method of one recipe
        else:
            joined.append(one)
    return joined


def _told(row: Row) -> bool:
    return row.shape == "step" or is_sentence(row.text)


def _begins_another(rows: Sequence[Row], before: list[List], one: List) -> bool:
    """Whether a list that follows a method is another recipe's: a title of its own says so."""
    title = _title_above(rows, before[-1].end, one.begin)
    if title is None or one.named or rows[title].shape != "heading":
        return title is not None
    above = [
        rows[at].level
        for at in range(before[0].begin)
        if rows[at].shape == "heading" and not is_head(rows[at])
    ]
    return not above or rows[title].level <= above[-1]


def _in_aside(rows: Sequence[Row], begin: int, end: int) -> bool:
    """Whether what follows stands in notes or the like, after the method."""
    heads = [section_of(row.text) for row in rows[begin:end] if is_head(row)]
    return bool(heads) and heads[-1] == "aside"


def _tools_head(rows: Sequence[Row], begin: int, end: int) -> bool:
    """Whether "Equipment" heads what follows a list: tools, and no more of its foods."""
    heads = [row for row in rows[begin:end] if is_head(row)]
    return bool(heads) and heads_tools(heads[-1].text) and heads[-1] is rows[end - 1]


def _has_method(rows: Sequence[Row], begin: int, end: int) -> bool:
    between = rows[begin:end]
    return any(
        row.shape == "step"
        or is_sentence(row.text)
        or _is_short_step(row)
        or section_of(row.text) == "method"
        for row in between
    )


def _is_short_step(row: Row) -> bool:
    """Whether a few words that end as a sentence may be all of a method: "Boil until it sets."."""
    said = re.search(r"[^\W\d]{2}[.!]$", row.text) and len(row.text.split()) > 2
    return row.shape == "line" and bool(said) and not is_ingredient(row.text)


def list_begins(lists: list[List], rows: Sequence[Row]) -> list[int]:
    """Return the row at which each recipe begins: that of its title."""
    begins = [0]
    for above, one in pairwise(lists):
        title = _title_above(rows, above.end, one.begin)
        begins.append(one.begin if title is None else title)
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
    return _title_above(rows, 0, lists[0].begin)


def _told_above(rows: Sequence[Row], at: int) -> bool:
    """Whether a sentence ends right above a title: a story, or the last step of another recipe."""
    above = rows[at - 1].text
    ended = bool(re.search(r"[.!?][\"”’)]*$", above)) and len(above.split()) > 2
    return ended and (is_sentence(above) or says_its_kind(rows[at].text))


def _named_above(rows: Sequence[Row], first: int, at: int) -> bool:
    """Whether a title stands above a sentence that says it again: "To make sloe gin you need"."""
    if first == at or section_of(rows[at].text) is None or not is_title(rows[first].text):
        again = first < at and is_sentence(rows[at].text) and is_title(rows[first].text)
        if not again:
            return False
    said = set(re.findall(r"[^\W\d_]+", rows[at].text.lower()))
    return said.issuperset(re.findall(r"[^\W\d_]+", rows[first].text.lower()))


def _title_above(rows: Sequence[Row], behind: int, list_begin: int) -> int | None:
    """Return the row of the title of the list at `list_begin`, looked for down to `behind`."""
    span = range(behind, list_begin)
    for at in span:
        if titled(rows[at].text):
            return span.start if _named_above(rows, span.start, at) else at
    headings = [at for at in span if rows[at].shape == "heading" and not is_head(rows[at])]
    if headings:
        highest = min(rows[at].level for at in headings)
        return [at for at in headings if rows[at].level == highest][-1]
    found: int | None = None
    first = rows[behind] if behind == 0 and behind < list_begin else None
    for at in reversed(span):
        row = rows[at]
        told_above = at == list_begin - 1 and _told_above(rows, at)
        open_above = (
            row.gap
            or at == 0
            or told_above
            or (found is not None and at == found - 1)
            or at == behind
        )
        if row.shape == "line" and is_title(row.text) and open_above:
            found = at
        elif found is not None and not (writer_of(row.text) or is_passed(row.text)):
            break
    # typed without a capital, alone at the head of the page
    small = first is not None and first.shape == "line" and is_title(first.text.capitalize())
    return 0 if found is None and small and first and len(first.text.split()) <= 6 else found
