"""Several lists, each with its title and "Ingredients" over it, and one method for them all.

"Taco seasoning", "Cajun seasoning", "Pie spice" are a recipe each; "Sponge" and "Icing" are parts
of one. Leaves out lists that no head of their own stands over: list_titles.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from stillroom.bringing.found import Recipe, Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.heads import plain, section_of, words
from stillroom.bringing.naming import kind_of_title, says_its_kind
from stillroom.bringing.sorting import is_ingredient, is_sentence, is_title

_PAIR: Final = 2
_OF_A_RECIPE: Final = 5
_OF_A_PART: Final = 6
_MOST: Final = 8
_FIGURE: Final = re.compile(r"[\d½⅓⅔¼¾]")


def with_titles_over_lists(rows: Sequence[Row]) -> list[Row]:
    """Return rows with the titles right above "Ingredients", twice and oftener, as headings.

    Where they are parts, what stands at the head of the page is the title of all, or else the first
    of them is.

    >>> text = ("Curry mix", "Ingredients", "1 tsp mace", "Pie spice", "Ingredients", "1 tsp salt")
    >>> rows = with_titles_over_lists([Row(one, gap=True) for one in text])
    >>> [row.text for row in rows if row.shape == "heading"]
    ['Curry mix', 'Pie spice']
    """
    heads = [at for at in range(1, len(rows)) if _lists_under_a_title(rows, at)]
    runs = [[heads[0]]] if heads else []
    for above, one in pairwise(heads):
        if _only_things(rows[above + 1 : one - 1]):
            runs[-1].append(one)
        else:
            runs.append([one])
    found = list(rows)
    for run in (run for run in runs if len(run) >= _PAIR):
        titles = [at - 1 for at in run]
        recipes = _are_recipes(rows, titles)
        whole = not recipes and titles[0] > 1 and rows[0].shape == "line" and is_title(rows[0].text)
        level = _OF_A_RECIPE if recipes else _OF_A_PART
        for at in titles if recipes or whole else titles[1:]:
            found[at] = replace(rows[at], shape="heading", level=rows[at].level or level)
        if whole:
            found[0] = replace(rows[0], shape="heading", level=1)
    return found


def are_siblings(rows: Sequence[Row], first: int, second: int) -> bool:
    """Whether two lists, by the rows at which they begin, are recipes with one method below."""
    over = [at - 1 for at in (first, second)]
    bare = min(over) >= 0 and not is_head(rows[first]) and not is_head(rows[second])
    if bare and all(rows[at].shape == "heading" and not is_head(rows[at]) for at in over):
        return _are_of_one_kind(rows, over) and _only_things(rows[first : over[1]])
    if min(over) < 0 or not all(_lists_under_a_title(rows, at + 1) for at in over):
        return False
    seen = all(rows[at].shape == "heading" and rows[at].level == _OF_A_RECIPE for at in over)
    return _only_things(rows[first + 1 : over[1]]) and (seen or _are_recipes(rows, over))


def heads_a_sibling(rows: Sequence[Row], begin: int, at: int) -> bool:
    """Whether a heading amid a run of things is the title of another recipe, like the one above."""
    over = begin - 1
    named = over >= 0 and rows[over].shape == rows[at].shape == "heading"
    return named and not is_head(rows[over]) and _are_of_one_kind(rows, (over, at))


def share_method(recipes: Sequence[Recipe]) -> None:
    """Give the method of the last of such recipes to those above it that have none, and say so."""
    owner = ""
    for above, below in reversed(list(pairwise(recipes))):
        if not above.steps and below.steps and above.ingredients:
            above.steps = list(below.steps)
            owner = owner or below.title
            what = f'Its method is that of "{owner}", which stands below several lists.'
            above.doubt("title", what, "Look whether it is that of this one too.")
        else:
            owner = ""


def _lists_under_a_title(rows: Sequence[Row], at: int) -> bool:
    """Whether "Ingredients" stands alone at a row, right below a few words that may be a title."""
    head, over = rows[at], rows[at - 1]
    if (
        not is_head(head)
        or section_of(head.text) != "ingredients"
        or len(plain(head.text).split()) > 1
    ):
        return False
    few = over.shape in ("line", "heading") and len(over.text.split()) <= _MOST
    return few and not is_head(over) and is_title(over.text) and not _FIGURE.search(over.text)


def _only_things(rows: Sequence[Row]) -> bool:
    """Whether rows are nothing but things with amounts, for the most part, and no method."""
    things = sum(is_ingredient(row.text) for row in rows)
    told = any(row.shape == "step" or is_head(row) or is_sentence(row.text) for row in rows)
    return things >= 1 and things * 2 >= len(rows) and not told


def _are_of_one_kind(rows: Sequence[Row], titles: Sequence[int]) -> bool:
    """Whether headings right above lists say one kind, and are of one level: two seasonings."""
    kinds = {kind_of_title(rows[at].text).word for at in titles}
    alike = len({rows[at].level for at in titles}) == 1
    return alike and len(kinds) == 1 and "" not in kinds and _are_recipes(rows, titles)


def _are_recipes(rows: Sequence[Row], titles: Sequence[int]) -> bool:
    """Whether the titles of lists are those of recipes: longer than a word, and no part's name."""
    said = [plain(rows[at].text).split() for at in titles]
    parts = any(
        one[-1] in words("parts") or any(one[-1].endswith(end) for end in words("part_ends"))
        for one in said
        if one
    )
    named = any(says_its_kind(rows[at].text) for at in titles)
    return named and not parts and all(len(one) > 1 for one in said)
