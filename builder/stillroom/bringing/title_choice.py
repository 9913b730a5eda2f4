"""Another line above a list that names the recipe, where the one taken for its title does not.

A site's name, the head of a page's part, a word of its menu: of such, nothing is in the list or its
method. Leaves out which line is the title by where it stands: list_titles.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.found import Recipe, Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.heads import plain
from stillroom.bringing.list_parts import is_part_alone
from stillroom.bringing.naming import says_its_kind, says_kind_or_doubt
from stillroom.bringing.sorting import (
    begins_with_amount,
    is_counted_title,
    is_passed,
    is_sentence,
    is_title,
    is_told,
)
from stillroom.bringing.titles import writer_of
from stillroom.core.lines.staple_table import staples_named
from stillroom.core.words.patterns import late_regex

# "Recipes from the Heart", "Diwali Sweets - Recipes": what is over several
_OF_SEVERAL: Final = late_regex(
    r"\b(?:recipes|rezepte|recettes|ricette|recetas|receitas|recepten|opskrifter|oppskrifter|przepisy)\b",
    re.IGNORECASE,
)
# how a thing is before anything is made of it
_AS_GOT: Final = late_regex(
    r"(?:picked|gathered|foraged|ripe|fresh|raw|the|my|our|some|frisch|reif|fra[iî]ch|m[uû]r|fresc|matur"
    r"|fersk|f[aä]rsk|frisk|vers|rijp|[sś]wie[zż])\w{0,3}"
)
_DAY_ALONE: Final = late_regex(
    r"(?:[^\W\d]+\s){0,2}(?:[^\W\d]+,?\s)?(?:\d{1,2}(?:st|nd|rd|th|\.|er)?\s(?:de\s|of\s)?[^\W\d]+\.?,?\s(?:de\s)?|[^\W\d]+\.?\s\d{1,2}(?:st|nd|rd|th)?,?\s)"
    r"(?:19|20)\d\d(?:\W.{0,40})?|\d{1,4}[./-]\d{1,2}[./-]\d{1,4}"
)
_MOST_LOOKED: Final = 60
_MOST_WORDS: Final = 8
_LEAST_STEM: Final = 5
_STEM: Final = 6
_SURELY: Final = 2
"""What is said again weighs as much as a kind and a food together."""
# "Butter for the tin": a thing without an amount
_FOR_THAT: Final = late_regex(
    r"\b(?:for|für|pour|per|para|voor|till|til)\s+(?:the|d(?:ie|as|en)|l[ae]|il|el|de|het|dusting|greasing|rolling|brushing)\b",
    re.IGNORECASE,
)
_NUMBER: Final = late_regex(r"^(?:#\s?)?\d{1,2}\s?[.):#]\s+")
# "7 classic Norwegian biscuits": what is over several
_SO_MANY: Final = late_regex(r"\d{1,2}\s+(?:[^\W\d]+\s+){0,4}[^\W\d]{4,}")
_WORD: Final = late_regex(r"[^\W\d_]+")
# "Vin de noix aux épices : recette traditionnelle": a sign parts what it is called from the rest
_TAIL: Final = late_regex(r"\s+[:|]\s+.*$")


def title_taken(
    recipe: Recipe, rows: Sequence[Row], title: int, span: tuple[int, int, int]
) -> tuple[int, int | None]:
    """Return the row of a recipe's title, and the one that gave way to it, with a doubt of both.

    `span` are where the recipe begins, where its list or method does, and where it ends.
    """
    begin, below, end = span
    better = named_better(rows, begin, title, below, end)
    if better is None:
        if other := _beside(rows, title, range(begin, below), end):
            what = f'"{rows[title].text}" is taken for the title, and names nothing that goes in.'
            recipe.doubt("title", what, f'If "{other}" is what it is called, write that.')
        elif rival := _rival(rows, title, below):
            what = f'"{rows[title].text}" is taken for the title, and "{rival}" may be what it is.'
            recipe.doubt("title", what, "If that is what it is called, write it.")
        elif _DAY_ALONE.fullmatch(rows[title].text.strip()):
            what = f'"{rows[title].text}" is taken for the title, and is a day.'
            recipe.doubt("title", what, "Write what it is called.")
        elif _goes_in(rows[title].text, rows[below:end]):
            what = f'"{rows[title].text}" is taken for the title, and names what goes in alone.'
            recipe.doubt("title", what, "If that stood at a picture, write what it is called.")
        return title, None
    what = f'"{rows[better].text}" is taken for the title; "{rows[title].text}" is left out.'
    recipe.doubt("title", what, "If that is what it is called, write it.")
    return better, title


def _goes_in(title: str, below: Sequence[Row]) -> bool:
    """Whether a title without a kind says no more than one line of the list: "Picked sloes"."""
    said = {word for word in _WORD.findall(plain(title)) if not _AS_GOT.fullmatch(word)}
    return (
        bool(said)
        and not says_its_kind(title)
        and any(
            said <= set(_WORD.findall(plain(row.text)))
            for row in below
            if begins_with_amount(row.text) and len(row.text.split()) <= _MOST_WORDS
        )
    )


def named_better(
    rows: Sequence[Row], begin: int, title: int, list_begin: int, end: int
) -> int | None:
    """Return the row above a list that names the recipe where its title names nothing of it.

    >>> text = ("Around my stove", "Quince jelly", "2 lb quinces", "1 lb sugar", "Boil them.")
    >>> named_better([Row(one) for one in text], 0, 0, 2, 5)
    1
    >>> text = ("Aunt Ann's best", "Quince jelly", "2 lb damsons", "Boil it.", "Her best.")
    >>> named_better([Row(one) for one in text], 0, 0, 2, 5) is None
    True
    """
    below = " ".join(
        row.text for row in rows[list_begin:end] if not (writer_of(row.text) or is_passed(row.text))
    ).lower()
    said = rows[title].text
    several = _OF_SEVERAL.search(said) or _SO_MANY.fullmatch(said.strip())
    told = is_told(said) or (several is not None and not is_counted_title(said))
    if not told and _names(rows[title].text, below):
        return None
    span = range(begin, list_begin)[:_MOST_LOOKED]
    others = [
        at
        for at in span
        if at != title
        and _may_be_title(rows[at])
        and (_names(rows[at].text, below) >= _least(rows, at, list_begin))
    ]
    named = max(others, key=lambda at: (_names(rows[at].text, below), -at), default=None)
    return _below_its_day(rows, title, span) if named is None else named


def _least(rows: Sequence[Row], at: int, list_begin: int) -> int:
    """Return how surely a row must name what is made: the nearer it stands over its list, the less.

    Apart from the list a kind is enough ("Lip Balm", of beeswax); close above it a row may be its
    first thing: "Pasta sauce".
    """
    if at != list_begin - 1:
        return _SURELY
    if rows[list_begin].gap:
        return 1 if says_its_kind(rows[at].text) else _SURELY
    return _SURELY + 1


def named_first(rows: Sequence[Row], end: int) -> int | None:
    """Return the first row above what is told that plainly names it, where none stands as title."""
    below = _said_below(rows, end, len(rows))
    named = (at for at in range(end)[:_MOST_LOOKED] if _may_be_title(rows[at]))
    return next((at for at in named if _names(rows[at].text, below) >= _SURELY), None)


def _beside(rows: Sequence[Row], title: int, span: range, end: int) -> str:
    """Return the first other line that may be a title, where the one taken names nothing of it."""
    if _names(rows[title].text, _said_below(rows, span.stop, end)):
        return ""
    said = plain(rows[title].text)
    others = [at for at in span[:_MOST_LOOKED] if _may_be_title(rows[at])]
    return next((rows[at].text for at in others if plain(rows[at].text) != said), "")


def _rival(rows: Sequence[Row], title: int, list_begin: int) -> str:
    """Return another line below the title that a recipe may be called by as well: "" for none.

    Of a title without kind or food any line that has one ("Dabbler in the evening" is a blog);
    else the one close above the list, which no longer says the title's last word again: "Great
    Mixed Drinks", "Original Irish Cream".
    """
    span = range(title + 1, list_begin)[:_MOST_LOOKED]
    if _says_what(rows[title].text):
        at = list_begin - 1
        while at > title and is_head(rows[at]):
            at -= 1
        near = at > title and (rows[at].gap or at == title + 1)
        span = range(at, at + 1) if near else range(0)
    last = plain(_TAIL.sub("", rows[title].text)).split()[-1:] or [""]
    return next(
        (
            rows[at].text
            for at in span
            if _may_be_title(rows[at])
            and _says_what(rows[at].text)
            and "," not in rows[at].text  # "Food, family and a very big spoon"
            and last[0] not in plain(rows[at].text).split()
        ),
        "",
    )


def _said_below(rows: Sequence[Row], begin: int, end: int) -> str:
    """Return the words of a list and its method in small letters, without whose they are."""
    said = (row.text for row in rows[begin:end])
    return " ".join(one for one in said if not (writer_of(one) or is_passed(one))).lower()


def _below_its_day(rows: Sequence[Row], title: int, span: range) -> int | None:
    """Return the row right below the day on which a page was posted, behind the blog's own name."""
    days = [at for at in span if at > title and _DAY_ALONE.fullmatch(rows[at].text.strip())]
    below = days[0] + 1 if days else len(rows)
    return below if below in span and _may_be_title(rows[below]) else None


def _may_be_title(row: Row) -> bool:
    bare = _TAIL.sub("", _NUMBER.sub("", row.text))
    few = len(bare.split()) <= _MOST_WORDS and (
        row.shape in ("line", "heading") or (row.shape == "step" and bare.isupper())
    )
    few = few and not _FOR_THAT.search(bare)
    return few and is_title(bare) and not (is_head(row) or is_part_alone(row) or is_sentence(bare))


def _names(text: str, below: str) -> int:
    """Return how surely a line names what is made: by its kind, a food, what is said below it."""
    bare = _TAIL.sub("", text)
    stems = [one.lower()[:_STEM] for one in _WORD.findall(bare) if len(one) >= _LEAST_STEM]
    again = any(re.search(rf"(?<!\w){stem}", below) for stem in stems)
    return _SURELY * again + _says_what(text)


def _says_what(text: str) -> int:
    """Return how much of the two a line says: its kind, and a food."""
    bare = _TAIL.sub("", text)
    return says_kind_or_doubt(bare) + bool(staples_named(bare))
