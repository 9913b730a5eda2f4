"""The things of a list each on its line: what is said of one set behind it, two glued ones parted.

"6 lb prepared vegetables. A mixture of marrow and beans." is one thing, "1 onion1 tsp salt" are
two. Leaves out lists that run on in one line: whole_list.py, one_line.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.sorting import begins_with_amount, is_ingredient, number_of
from stillroom.core.lines.staple_table import staples_named

_SAID_OF_A_THING: Final = re.compile(
    r"(?P<thing>(?:about\s)?(?:[\d½¼¾⅓⅔]|an?\s)[^.!?()]{3,60}(?:\([^()]*\))?)\.\s+(?P<rest>[A-Z][^()]{10,160})"
)
# "½ lb-1 lb sugar, depending on how sweet your plums are. We used one."
_THING_AND_WORDS: Final = re.compile(
    r"(?P<thing>\S[^,.;!?()]{3,70}?(?:\([^()]*\))?)(?:\s+[-–—]|[,;.])\s+(?P<rest>[^\W\d].*)",
    re.DOTALL,
)
# "... 40 g candied peel. Also needed: 1 loaf tin, baking paper"
_ALSO: Final = re.compile(
    r"(?<=\S)[.;]\s+(?=(?:also\s+needed|you(?:['’]ll|\s+will)\s+also\s+need|außerdem|ausserdem|zusätzlich|il\s+faut\s+aussi|inoltre|además|verder\s+nodig"
    r"|ook\s+nodig|dessutom)\s*:)",
    re.IGNORECASE,
)
# "per 2 l di alcool", "for 2 kg of plums": the first line of a list, said as what it is for
_FOR_SO_MUCH: Final = re.compile(
    r"(?:for|für|auf|pour|per|para|voor|op|till|til|do|na)\s+(?P<thing>[\d½¼¾][\d.,/½¼¾]*\s*"
    r"(?:k?g|gr|ml|cl|dl|lt?|litr\w*|liter\w*|kilo\w*|lbs?|pounds?|oz|pints?|cups?)\b\.?\s+(?P<food>\S.*))",
    re.IGNORECASE,
)
_HALF_STOPPED: Final = re.compile(r"^(?P<half>\d{0,2}\s?[½¼¾⅓⅔⅛])\.\s+(?=[^\W\d])")
# "75 g almonds.75 g sugar. 1 egg": a list run together by its stops
_STOPS: Final = re.compile(r"(?<=[^\W\d_]{2})\.\s{0,3}(?=[\d½¼¾⅓⅔])")
# "manteca.Una cucharadita de canela", in a row that is known to be one
_CLOSE_STOPS: Final = re.compile(r"(?<=[^\W\d_]{3})\.(?=[A-ZÀ-Ý][^\W\d_])")
_LEAST_STOPPED: Final = 3
_CELLS: Final = re.compile(r"([\d½¼¾⅓⅔.,/ -]{0,10});([^;\d]{0,12});([^;]{2,80})")
_LEAST_CELLS: Final = 3
_LONGEST: Final = 500
_GLUED: Final = re.compile(
    r"(?<=[a-zà-ÿ]{3})(?=(?:\d+(?:[./,]\d+)?|[½¼¾⅓⅔])\s*(?:tea|table)?(?:spoons?|tsps?|tbsps?|cups?|k?g|ml|cl|dl|oz|lbs?|pounds?|EL|TL|msk|tsk)\b)"
)


def with_things_apart(rows: Sequence[Row]) -> list[Row]:
    """Return rows with each thing of a list on a row of its own, what is said of it in brackets.

    >>> [row.text for row in with_things_apart([Row("2 tsp onion1 teaspoon parsley", "item")])]
    ['2 tsp onion', '1 teaspoon parsley']
    """
    told = _with_first_thing(_without_semicolons(rows))
    parted = [part for row in told for part in _parts(row)]
    found = list(parted)
    for place, row in enumerate(parted):
        if row.shape in ("line", "item") and not is_ingredient(row.text):
            found[place] = replace(row, text=_with_words_behind(parted, place))
    return found


def _with_first_thing(rows: list[Row]) -> list[Row]:
    """Return rows with "for 2 kg of plums" right above a list as a line of it; jam is made.

    >>> rows = [Row("für 2 kg Pflaumen"), Row("800 g Zucker")]
    >>> [row.text for row in _with_first_thing(rows)]
    ['2 kg Pflaumen', '800 g Zucker']
    >>> [row.text for row in _with_first_thing([Row("for 2 kg of plum jam"), *rows[1:]])]
    ['Makes 2 kg of plum jam', '800 g Zucker']
    """
    found = list(rows)
    for place, row in enumerate(rows[:-1]):
        said = _FOR_SO_MUCH.fullmatch(row.text.strip()) if row.shape in ("line", "item") else None
        below = rows[place + 1]
        close = not below.gap and is_ingredient(below.text) and begins_with_amount(below.text)
        if said and close and says_its_kind(said["food"]):
            found[place] = replace(row, text=f"Makes {said['thing']}")
        elif said and close and staples_named(said["thing"]):
            found[place] = replace(row, text=said["thing"])
    return found


def _without_semicolons(rows: Sequence[Row]) -> list[Row]:
    """Return rows with "3;EL;Zucker" as a line, where several stand so: as a table is saved.

    >>> rows = [Row("3;EL;Zucker"), Row("1;;Ei"), Row(";;Vanille")]
    >>> [row.text for row in _without_semicolons(rows)]
    ['3 EL Zucker', '1 Ei', 'Vanille']
    """
    cells = [_CELLS.fullmatch(row.text) if row.shape != "heading" else None for row in rows]
    if sum(one is not None for one in cells) < _LEAST_CELLS:
        return list(rows)
    return [
        replace(row, text=" ".join(filter(None, one.groups()))) if one else row
        for row, one in zip(rows, cells, strict=True)
    ]


def _parts(row: Row) -> list[Row]:
    if row.shape in ("line", "item"):
        row = replace(row, text=_HALF_STOPPED.sub(r"\g<half> ", row.text))
    if row.shape in ("line", "item") and (also := _ALSO.search(row.text)):
        head, _, rest = row.text[also.end() :].partition(":")
        things = [one.strip() for one in rest.strip(" .").split(",") if one.strip()]
        apart = [replace(row, text=row.text[: also.start()]), Row(f"{head}:", "heading", 6)]
        return [*apart, *(Row(one, "item") for one in things)]
    if row.shape == "line" and len(things := _STOPS.split(row.text.strip(" ."))) >= _LEAST_STOPPED:
        listed = all(is_ingredient(one) and begins_with_amount(one) for one in things)
        if listed and not number_of(row.text):
            things = [one for thing in things for one in _CLOSE_STOPS.split(thing)]
            return [Row(one, "item", 0, row.gap and not at) for at, one in enumerate(things)]
    if row.shape not in ("line", "item") or not _GLUED.search(row.text):
        return [row]
    parts = _GLUED.split(row.text)
    whole = all(is_ingredient(part) and begins_with_amount(part) for part in parts)
    return [replace(row, text=part) for part in parts] if whole else [row]


def _with_words_behind(rows: Sequence[Row], place: int) -> str:
    """Return a line of a list with the sentences that are said of it in brackets."""
    row = rows[place]
    beside = [
        one.shape == row.shape and is_ingredient(one.text)
        for one in (*rows[max(place - 1, 0) : place], *rows[place + 1 : place + 2])
    ]
    said = _SAID_OF_A_THING.fullmatch(row.text)
    if said and is_ingredient(said["thing"]) and any(beside[row.gap and place > 0 :]):
        return f"{said['thing']} ({said['rest'].rstrip('.')})"
    if len(beside) < 2 or not all(beside) or len(row.text) > _LONGEST or number_of(row.text):
        return row.text
    told = _THING_AND_WORDS.fullmatch(row.text) if begins_with_amount(row.text) else None
    if told is None or not is_ingredient(told["thing"]):
        return row.text
    rest = re.sub(r"\s*[()]\s*", ", ", told["rest"]).strip(" .,")
    return f"{told['thing']} ({rest})"
