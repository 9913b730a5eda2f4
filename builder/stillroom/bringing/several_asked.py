"""Whether a draft may hold more than one recipe, or be none of its own: a question by name.

A recipe that runs into the one above takes its foods, its spirit and its allergens there, so what
may begin another is named wherever the paper was not parted at it; the maker parts it. Leaves out
where papers are parted: series.py, list_titles.py, told.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.doubted import quoted, some_of
from stillroom.bringing.found import Recipe, Row
from stillroom.bringing.heads import counts_stage, plain, section_of, words
from stillroom.bringing.known_work import is_plainly_work
from stillroom.bringing.list_parts import FOR_A_PART
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.naming import says_its_kind, says_kind_or_doubt
from stillroom.bringing.one_line import foods_named
from stillroom.bringing.outside import is_one_of_foods
from stillroom.bringing.prose import measured_in_prose
from stillroom.bringing.series_heads import below_other_ways
from stillroom.bringing.sorting import begins_with_amount, is_ingredient, is_passed
from stillroom.bringing.tails import begins_to_bid
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.words.patterns import late_regex

_MOST_WORDS: Final = 7
_LONGEST: Final = 120
_LEAST_TOLD: Final = 12
_LEAST_LISTED: Final = 2
_LOOKED_AT: Final = 60
"""Rows below a line, in which what it may head is told."""
_MOST_NAMED: Final = 8
_MOST_ALIKE: Final = 9
_RUN: Final = 3
"""Words of the line below, by which a line is known where it was run on into that."""
_SIGNS: Final = re.compile(r"[.?!,;|\d]")
_TO_MAKE: Final = late_regex(r"^to\s+make\s+(?:an?\s+)?(?=\w)", re.IGNORECASE)
SEVERAL: Final = "More than one recipe may stand here:"
"""How the question begins that names what may begin another."""
HOW_TO_PART: Final = (
    'If it does, choose "another recipe begins here" at that line, or bring that one by itself.'
)


def ask_of_several(recipes: Sequence[Recipe], rows: Sequence[Row]) -> None:
    """Ask about lines amid each recipe that may head another, and about drafts that may be none.

    `rows` are those of the paper, made ready, in order.
    """
    titles = {plain(one.title) for one in recipes}
    alike = _alike(rows) if any(one.told or not _lists_foods(one) for one in recipes) else set()
    ways = below_other_ways(rows)
    heads = [at for at in range(len(rows) - 1) if at in alike or _may_head(rows, at)]
    heads = [at for at in heads if at not in ways and _is_below_another(rows, at)]
    named = [at for at in heads if plain(_bare(rows[at].text)) not in titles]
    asked: set[int] = set()  # a method of several recipes stands in each of them
    for recipe in recipes:
        had = " | ".join(plain(text) for text in recipe.texts() if text)
        at_these = [at for at in named if at not in asked and _is_in(rows, at, had)]
        asked.update(at_these)
        within = [rows[at].text for at in at_these]
        if within:
            one = len(within) == 1
            what = f"{SEVERAL} {some_of(_quotes(within), _MOST_NAMED)}"
            recipe.doubt("title", f"{what} may {'' if one else 'each '}begin another.", HOW_TO_PART)
    if len(recipes) > 1:
        _ask_of_none(recipes)


def _quotes(lines: Sequence[str]) -> list[str]:
    return [quoted(line) for line in lines]


def _bare(text: str) -> str:
    return _TO_MAKE.sub("", text.strip().rstrip(" .:"))


def _may_head(rows: Sequence[Row], at: int) -> bool:
    """Whether a line by itself names what is made, and below it something is listed or done."""
    text = _bare(rows[at].text)
    short = len(text) <= _LONGEST and 0 < len(text.split()) <= _MOST_WORDS
    may_be = short and rows[at].shape in ("line", "heading", "item")
    if not may_be or _SIGNS.search(text) or not says_kind_or_doubt(text):
        return False
    if find_staple(text) is not None and not (rows[at].gap and says_its_kind(text)):
        return False  # "Vegetable oil for greasing", "Almond oil" amid other lines
    above = rows[at - 1].text if at else ""
    if section_of(above) == "ingredients" and rows[at].text.endswith(":"):
        return False  # "Sponge:", the first part of a list
    if not rows[at].gap and is_ingredient(above):
        return False  # "Essence of vanilla", amid a list
    if (
        section_of(text.split()[0])
        or section_of(text)
        or is_passed(text)
        or is_only_makes(text)
        or FOR_A_PART.match(text)
    ):
        return False
    bids = is_plainly_work(text) or begins_to_bid(text) or begins_with_amount(text)
    last = plain(text).split(" ")[-1]
    part = last in words("parts") or any(map(last.endswith, words("part_ends")))
    return not (bids or part or is_one_of_foods(rows, at)) and _tells(rows, at)


def _is_below_another(rows: Sequence[Row], at: int) -> bool:
    """Whether above a line something was listed or told: else it is of the page's own head."""
    above = [row.text for row in rows[max(0, at - _LOOKED_AT) : at]]
    told = any(len(text.split()) >= _LEAST_TOLD for text in above)
    return told or sum(map(is_ingredient, above)) >= _LEAST_LISTED


def _tells(rows: Sequence[Row], at: int) -> bool:
    """Whether below a line things are listed or measured, up to the next line like it."""
    texts = [row.text for row in rows[at + 1 : at + _LOOKED_AT]]
    listed = sum(map(is_ingredient, texts[: _LEAST_LISTED + 1])) >= _LEAST_LISTED
    said = next((text for text in texts if len(text.split()) >= _LEAST_TOLD), "")
    near = bool(said) and said in texts[:2]
    return listed or (near and (is_plainly_work(said) or bool(measured_in_prose([said]))))


def _alike(rows: Sequence[Row]) -> set[int]:
    """Return short lines between two gaps, below each of which a paragraph measures what it takes.

    One of them is a title or a part's name; two are recipes that are told one after another.
    """
    found = [at for at in range(len(rows) - 1) if _is_over_paragraph(rows, at)]
    return set(found) if len(found) >= _LEAST_LISTED else set()


def _is_over_paragraph(rows: Sequence[Row], at: int) -> bool:
    row, below = rows[at], rows[at + 1]
    text = _bare(row.text)
    apart = row.gap and below.gap and row.shape in ("line", "heading")
    few = 0 < len(text.split()) <= _MOST_ALIKE and not _SIGNS.search(text)
    if not (apart and few and text[:1].isupper()) or section_of(text) or is_passed(text):
        return False
    part = FOR_A_PART.match(text) or counts_stage(text)
    if part or is_plainly_work(text) or begins_to_bid(text):
        return False
    paragraph = [below.text]
    for one in rows[at + 2 : at + _LOOKED_AT]:
        if one.gap:
            break
        paragraph.append(one.text)
    said = " ".join(paragraph)
    return len(said.split()) >= _LEAST_TOLD and bool(measured_in_prose([said]))


def _is_in(rows: Sequence[Row], at: int, had: str) -> bool:
    """Whether a line stands in a draft: by itself, or run on into the line below it."""
    text = plain(rows[at].text)
    alone = f"| {text} |" in f"| {had} |"
    below = " ".join(plain(rows[at + 1].text).split()[:_RUN])
    return alone or f"{text} {below}" in had


def _lists_foods(recipe: Recipe, least: int = _LEAST_LISTED) -> bool:
    return sum(bool(foods_named(line)) for _, line in recipe.ingredients) >= least


def _ask_of_none(recipes: Sequence[Recipe]) -> None:
    """Ask about a draft beside others that lists and measures no food, or that has no method."""
    for at, one in enumerate(recipes):
        measured = one.told and measured_in_prose(text for _, text in one.steps)
        if one.steps and (_lists_foods(one, 1) or measured):
            continue
        if (one.ingredients or one.steps) and says_kind_or_doubt(one.title):
            continue
        other = recipes[at - 1] if at else recipes[1]
        beside = f'"{other.title}"' if other.title else "the one beside it"
        what = f"This may be no recipe of its own, but a part of {beside}, or told of it."
        one.doubt("title", what, "If so, put there what belongs to it, and take this draft out.")
