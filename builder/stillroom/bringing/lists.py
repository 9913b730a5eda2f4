"""The lists of ingredients in a paper, and the title that each stands under.

A list is found by its heading, or as a run of lines that begin with amounts. Leaves out what stands
around a list: dividing.py puts that in its place.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.found import FARTHEST, List, Row
from stillroom.bringing.head_rows import heads_method, is_a_recipe_head, is_head, list_behind
from stillroom.bringing.heads import heads_tools, plain, section_of, words
from stillroom.bringing.known_work import is_plainly_work
from stillroom.bringing.labelled_things import is_for_the_end
from stillroom.bringing.list_parts import (
    MOST_OF_A_THING,
    closes_a_list,
    further_end,
    heads_bare_foods,
    heads_last_items,
    heads_stage,
    is_bare_food,
    is_between_items,
    is_group,
    items_up_to_a_head,
    loose_part_end,
    says_much,
)
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.one_line import foods_named, foods_on, names_a_food
from stillroom.bringing.shared_method import heads_a_sibling
from stillroom.bringing.sorting import (
    begins_in_words,
    begins_with_amount,
    is_ingredient,
    is_sentence,
    is_told,
)
from stillroom.bringing.tools import is_tool

# "A dry artist's brush for dusting inside the jar if needed", close below others
_A_THING: Final = re.compile(r"(?:an?|some|your)\s+[a-z]", re.IGNORECASE)
_LEAST_OF_A_STEP: Final = 3
_FEW_WORDS: Final = 3
_MOST_ABOVE: Final = 2
_MOST_BARE: Final = 8
_ENDS_OPEN: Final = re.compile(r"\s(?:or|and|oder|und|ou|et|of|en|eller|och|&)$")
_SPOKEN: Final = re.compile(
    r"(?i:an?|one|two|three|four|five|six|half|few|some|szklank[ai]|łyż(?:ecz)?k[ai]|lžíce|lžička|hrnek|tasse|taza|xícara|kopp|kopje)\s"
)
_IN_BRACKETS: Final = re.compile(r"\s*\([^()]*\)")
# "mint extract to taste", "fragrance oil as desired"
_AS_LIKED: Final = re.compile(
    r"\b(?:to\s+taste|optional|as\s+(?:desired|needed|liked)|if\s+(?:desired|liked|needed|you\s+like)|nach\s+(?:belieben|geschmack)"
    r"|facultatif|facoltativ\w|opcional|al\s+gusto|à\s+volonté|naar\s+smaak)\.?$",
    re.IGNORECASE,
)
_FIGURE: Final = re.compile(r"[\d½⅓⅔¼¾]")
# "Yeast food - 9.4g, 3.7g per dose.": a dash, and how much
_SO_MUCH_BEHIND: Final = re.compile(
    r"[^\W\d][^\d.!?:]{1,40}?\s*[-–—:]\s*[\d½⅓⅔¼¾][\d.,/½⅓⅔¼¾]*\s?[^\W\d]"
)
_LEAST_TOLD: Final = 5
"""Words of an item from which on it may tell what is done, though it ends as no sentence."""
WIDE: Final = 55
"""From here on a line is taken for one that its writer's machine broke off."""


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
        if not lists and (behind := list_behind(rows, at)) > at:
            at = behind
            continue
        if (
            rows[at].shape in ("line", "item")
            and is_ingredient(rows[at].text)
            and not is_only_makes(rows[at].text)
            and not amid_a_sentence(rows, at)
            and not _is_below_tools(rows, at)
        ):
            end = _run_end(rows, at)
            at = _with_items_above(rows, at)
            # "Salt scrub", "(Body polish)" is a title; one thing alone may be all of a part
            least = 1 if lists and _is_all_of_a_part(rows, at) else 2
            if end - at >= least and any(_says_how_much(row.text) for row in rows[at:end]):
                lists.append(List(at, end, False, list(range(at, end))))
                at = end
                continue
        at += 1
    return lists


def _is_below_tools(rows: Sequence[Row], at: int) -> bool:
    """Whether what stands right below "Equipment" is no food: "a big pan"."""
    text = rows[at].text
    headed = at > 0 and heads_tools(rows[at - 1].text)
    return headed and (is_tool(text) or not foods_named(text))


def _is_all_of_a_part(rows: Sequence[Row], at: int) -> bool:
    """Whether one thing stands alone below "Day 4", or below "Topping" and above numbered steps."""
    above, below = rows[at - 1 : at], rows[at + 1 : at + 2]
    if above and heads_stage(above[0]):
        return names_a_food(rows[at].text)
    headed = bool(above) and above[0].shape == "heading" and rows[at].shape == "item"
    return headed and bool(below) and below[0].shape == "step" and names_a_food(rows[at].text)


def _with_items_above(rows: Sequence[Row], at: int) -> int:
    """Return the row at which the items begin that a list's first amount stands among."""
    begin = at
    while (
        begin > 0
        and at - begin < _MOST_ABOVE
        and rows[begin - 1].shape == rows[at].shape == "item"
        and rows[begin - 1].indent == rows[at].indent
        and not is_sentence(rows[begin - 1].text)
        and not is_head(rows[begin - 1])
        and len(rows[begin - 1].text.split()) <= MOST_OF_A_THING
    ):
        begin -= 1
    return at if begin > 0 and rows[begin - 1].shape == "item" else begin


def amid_a_sentence(rows: Sequence[Row], at: int) -> bool:
    """Whether a line that begins with a number goes on with a sentence broken off above it."""
    row = rows[at]
    if at == 0 or not row.wraps or row.gap or row.shape != "line":
        return False
    if all(is_ingredient(one.text) and foods_named(one.text) for one in rows[at : at + 2]):
        return at + 1 >= len(rows)  # "it makes many", and below it the list
    above = rows[at - 1].text
    goes_on = above[:1].islower() and len(above.split()) >= 3 and not is_ingredient(above)
    goes_on = goes_on and not is_only_makes(above)
    return goes_on and not re.search(r"[.!?:;)]$", above)


def _says_how_much(text: str) -> bool:
    said = _FIGURE.search(text) or _SPOKEN.match(text)
    return bool(said) or begins_in_words(text)


def _named_end(rows: Sequence[Row], head: int) -> int:
    """Return the row behind a list that has a heading: the head of its method, where it has one."""
    level = rows[head].level or 9
    method = _method_ahead(rows, head)
    amounts, further, bare = 0, 0, False
    for at in range(head + 1, len(rows)):
        row = rows[at]
        if row.shape == "step" or is_head(row) or heads_method(row):
            return at
        if amounts and _heads_steps(rows, at):
            return at
        if is_a_recipe_head(row.text) and amounts:
            return at
        if at < further:
            continue
        further = further_end(rows, at) if amounts else at
        if further > at:
            continue
        if row.shape == "heading":
            listed = at + 1 < len(rows) and (
                is_ingredient(rows[at + 1].text) or rows[at + 1].shape == "item"
            )
            if row.level < level or not (listed or method):
                return at
            continue
        amounts += is_ingredient(row.text)
        told = row.shape == "item" and amounts and (_is_step(row.text) or is_told(row.text))
        if told and not (method and items_up_to_a_head(rows, at)):
            return at
        if method or row.shape != "line" or is_ingredient(row.text):
            continue
        bare = (amounts > 0 and heads_bare_foods(rows, at)) or (bare and is_bare_food(row.text))
        if bare or _beside_items(rows, at):
            continue
        if amounts and not row.gap and is_for_the_end(row.text):
            continue
        if is_sentence(row.text) and not amounts and _items_follow(rows, at):
            continue  # "Here is all that you need for the biscuits."
        told = amounts > 0 and is_told(row.text)
        if is_sentence(_thing_of(row.text)) or told or _ends_the_list(rows, head, at):
            return at
        more = [one for one in rows[at + 1 : at + 3] if is_ingredient(one.text)]
        if row.gap and amounts and not more and not is_group(rows, at):
            few = names_a_food(row.text) and len(row.text.split()) <= _FEW_WORDS
            if few or _bare_up_to_told(rows, at):
                continue
            return at
    return len(rows)


def _bare_up_to_told(rows: Sequence[Row], at: int) -> bool:
    """Whether things without an amount stand between a row and the first sentence below a list."""
    end = next((p for p in range(at, len(rows[: at + FARTHEST])) if is_sentence(rows[p].text)), at)
    lines = [row.text for row in rows[at:end]]
    shapes = all(row.shape == "line" for row in rows[at:end])
    bare = all(len(one.split()) <= _MOST_BARE and not re.search(r"[.!?:]$", one) for one in lines)
    known = sum(is_ingredient(one) or bool(foods_named(one)) for one in lines)
    named = known * 2 > len(lines) and bool(foods_named(lines[0]))
    # what is done begins with a capital: "en lille strimmel skræl", "vand"
    small = bool(lines) and all(one[:1].islower() or one[:1].isdigit() for one in lines)
    return shapes and bare and (named or small)


def _heads_steps(rows: Sequence[Row], at: int) -> bool:
    """Whether a bare line parts the items of a list from numbered steps: "Must preparation"."""
    row, below = rows[at], rows[at + 1 : at + 2]
    parts = row.shape == "line" and rows[at - 1].shape == "item" and bool(below)
    return parts and below[0].shape == "step" and not is_ingredient(row.text)


def _items_follow(rows: Sequence[Row], at: int) -> bool:
    """Whether two items that begin with amounts stand right below a row."""
    below = rows[at + 1 : at + 3]
    return len(below) == 2 and all(row.shape == "item" and is_ingredient(row.text) for row in below)


def _beside_items(rows: Sequence[Row], at: int) -> bool:
    """Whether a sentence between two items of a list says something of the one above it."""
    if not 0 < at < len(rows) - 1 or rows[at].shape != "line" or not is_sentence(rows[at].text):
        return False
    above, below = rows[at - 1], rows[at + 1]
    beside = above.shape == below.shape == "item" and is_ingredient(below.text)
    return beside and not says_much(rows[at].text)


def _is_step(text: str) -> bool:
    """Whether an item among others says what is done: a sentence, no amount, no foods alone."""
    if begins_with_amount(text) or foods_on(text) or _SO_MUCH_BEHIND.match(text):
        return False
    if not is_sentence(text):
        return len(text.split()) >= _LEAST_TOLD and is_plainly_work(text)
    if _thing_of(text) != text:
        return False
    first = re.split(r"\s*[(—]", text, maxsplit=1)[0]  # "Sugar to dust (optional) — for the look."
    return first == text or not names_a_food(first)


def _thing_of(text: str) -> str:
    """Return a line of a list without what is said in brackets behind its food; else the line.

    "ground pepper to taste (Please use fresh pepper. That of jars is a shadow of it.)"
    """
    first = text.partition("(")[0].strip()
    few = 0 < len(first.split()) <= MOST_OF_A_THING and text.rstrip(" .").endswith(")")
    done = plain(first).split(" ")[0] in words("told_first")
    done = done or (is_plainly_work(first) and not _AS_LIKED.search(first))
    return first if few and foods_named(first) and not done else text


def _ends_the_list(rows: Sequence[Row], head: int, at: int) -> bool:
    """Whether a short line without a food follows items, or alone among its like ends in a stop.

    "Stages of cooking" behind a list with bullets, "Cook the chutney." behind bare lines.
    """
    above = [row for row in rows[max(head + 1, at - FARTHEST) : at] if row.shape != "heading"]
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
        elif _goes_on(rows, at, end):
            at += 1
            end = at if ends_open(rows[at - 2].text) else end
        elif (further := further_end(rows, at)) > at:
            at = end = further
        elif heads_a_sibling(rows, begin, at):
            break
        elif is_group(rows, at):
            at += 1
        elif rows[at].shape == "row" and at == end:
            at += 1
            end = at
        elif row.shape == "item" and _is_step(row.text):
            break
        elif heads_last_items(rows, at):
            at += 1
            while at < len(rows) and rows[at].shape == "item":
                at += 1
            end = at
        elif (loose := loose_part_end(rows, at)) > at or _beside_an_item(rows, at):
            at = max(loose, at + 1)
            end = at
        elif (
            _short_one(rows, at, end)
            or _amid_amounts(rows, at, end)
            or (at == end and closes_a_list(rows, at))
        ):
            at += 1
            end = at
        else:
            break
    return end


def _amid_amounts(rows: Sequence[Row], at: int, end: int) -> bool:
    """Whether a row that counts something stands close between amounts: "Add 3 cauliflowers"."""
    row = rows[at]
    if at != end or at + 1 >= len(rows) or row.gap or rows[at + 1].gap or row.shape != "line":
        return False
    counts = bool(_FIGURE.search(row.text)) and not is_sentence(row.text)
    return counts and not is_only_makes(row.text) and is_ingredient(rows[at + 1].text)


def _beside_an_item(rows: Sequence[Row], at: int) -> bool:
    """Whether a sentence is set in below an item of a list, as what is said of it alone."""
    row = rows[at]
    within = at > 0 and rows[at - 1].shape == "item" and row.indent > rows[at - 1].indent
    return row.shape == "line" and not row.gap and within and is_sentence(row.text)


def _turns_to_steps(rows: Sequence[Row], at: int) -> bool:
    """Whether items begin below bare lines that are measured: what they say is done."""
    row, above = rows[at], rows[at - 1] if at else rows[at]
    turned = row.shape == "item" and above.shape == "line" and is_ingredient(above.text)
    return turned and not names_a_food(row.text) and len(row.text.split()) >= _LEAST_OF_A_STEP


def _steps_end_items(rows: Sequence[Row], at: int) -> bool:
    """Whether nothing but items stands between a row and numbered steps: it is of the list."""
    shapes = (row.shape for row in rows[at : at + FARTHEST])
    return next((one for one in shapes if one not in ("item", "row")), "") == "step"


def _short_one(rows: Sequence[Row], at: int, end: int) -> bool:
    """Whether a row is an ingredient without an amount, close below others: "salt and pepper"."""
    row = rows[at]
    if at != end or row.shape not in ("line", "item") or is_head(row) or heads_method(row):
        return False
    if is_between_items(rows, at) or _turns_to_steps(rows, at) or is_a_recipe_head(row.text):
        return False
    if _heads_steps(rows, at):
        return False
    if not row.gap and (len(foods_on(row.text)) > 1 or is_for_the_end(row.text)):
        return True  # "icing sugar, lemon juice and sprinkles to decorate"
    listed = row.shape == "item" and rows[at - 1].shape in ("item", "row")
    if listed and _steps_end_items(rows, at):
        return True
    bare = _IN_BRACKETS.sub("", row.text).strip()
    bare = bare.rstrip(".") if _AS_LIKED.search(bare) else bare
    most = MOST_OF_A_THING if _A_THING.match(row.text) and not row.gap else 6
    most = most + 2 if _AS_LIKED.search(bare) else most
    short = len(bare.split()) <= most and not re.search(r"[.!?:]$", bare)
    if is_told(row.text):
        return False
    if row.gap and not listed:  # a list with a blank line after each, as pages are saved
        below = rows[at + 1].text if at + 1 < len(rows) else ""
        known = names_a_food(bare) or is_ingredient(below) or names_a_food(below)
        short = short and rows[at - 1].gap and known
    return (
        (listed or short) and not is_sentence(_thing_of(row.text)) and not is_only_makes(row.text)
    )


def _goes_on(rows: Sequence[Row], at: int, end: int) -> bool:
    """Whether a row is the rest of a long line above it."""
    row, above = rows[at], rows[at - 1].text
    close = at == end and row.wraps and not row.gap and row.shape == "line"
    return close and (ends_open(above) or (len(above) >= WIDE and row.text[:1].islower()))


def ends_open(text: str) -> bool:
    """Whether a line of a list goes on in the next: "Chocolate fondant or"."""
    return len(text) < WIDE and bool(_ENDS_OPEN.search(text[-5:]))
