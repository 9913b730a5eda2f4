"""Names that stand alone below the titles of a club's or a parish's book: whose recipe it is.

"DILL PICKLES", "Mrs. W. T. Vane", and below them the recipe. Told by a form of address, or by a
title in capitals above a bare name. Leaves out names in any other place: credits.py, titles.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.afterwords import is_name
from stillroom.bringing.found import Row
from stillroom.bringing.heads import section_of
from stillroom.bringing.naming import says_its_kind, without_column
from stillroom.bringing.sorting import is_ingredient, is_sentence, is_title
from stillroom.bringing.titles import unstopped, writer_of

_FORM: Final = (
    r"(?:mrs?|miss|ms|mme|mlle|madame|dr|rev|sister|frau|fräulein|frl|herr|sra|srta|sr"
    r"|sig(?:\.ra|nora)?|mevr(?:ouw)?|mej|fru|frk|pani)\.?"
)
_ADDRESSED: Final = re.compile(
    rf"(?:{_FORM}\s)?{_FORM}"  # "MRS. DR. FISHER"
    r"(?-i:(?:\s(?:[A-ZÀ-Ý]\.?|[A-ZÀ-Ý][^\W\d]*(?:['’-][A-ZÀ-Ý]?[^\W\d]+)?|(?:von|van|de|du|di))){1,5})\.?",
    re.IGNORECASE,
)
_MOST_OF_A_TITLE: Final = 8
_LONGEST: Final = 120
# "Soup in a jar, by Lin H.", "Pflaumenmus - von Anna Berg"
_BY_WHOM: Final = re.compile(
    r"(?P<title>[^\W\d].{2,70}?)(?:,?\s+by|(?:,|\s[-–—])\s+(?:von|par|av|af|door|por|przez))\s+"
    rf"(?P<who>(?:(?i:{_FORM})\s)?[A-ZÀ-Ý][^\W\d]*\.?(?:['’-][A-ZÀ-Ý]?[^\W\d]+)?"
    r"(?:\s(?:[A-ZÀ-Ý]\.?|[A-ZÀ-Ý][^\W\d]+(?:['’-][A-ZÀ-Ý]?[^\W\d]+)?|von|van|de|du|di)){0,3})\.?"
)


def with_bylines_told(rows: Sequence[Row]) -> list[Row]:
    """Return rows with a name below a title as "By …", and that title as the heading it is.

    >>> page = ["DILL PICKLES", "Mrs. W. T. Vane", "Wash and scrub the small green cucumbers well."]
    >>> [(row.text, row.shape) for row in with_bylines_told([Row(one) for one in page])][:2]
    [('DILL PICKLES', 'heading'), ('By Mrs. W. T. Vane', 'line')]
    >>> card = [Row("Plum jam"), Row("Ann Berg"), Row("1 kg plums")]
    >>> with_bylines_told(card) == card
    True
    """
    rows = _with_name_apart(rows)
    found = list(rows)
    for at in range(1, len(rows) - 1):
        if _is_byline(rows, at):
            found[at - 1] = replace(rows[at - 1], shape="heading", level=1, gap=True)
            found[at] = replace(rows[at], text=f"By {rows[at].text.strip()}")
    return found


def _with_name_apart(rows: Sequence[Row]) -> list[Row]:
    """Return rows with the name behind the title at the head of a paper on a row of its own.

    >>> page = [Row("Recipe of the week: Soup in a jar, by Lin H."), Row("1 cup lentils")]
    >>> [row.text for row in _with_name_apart(page)]
    ['Soup in a jar', 'By Lin H', '1 cup lentils']
    >>> [row.text for row in _with_name_apart([Row("Fudge Step by Step"), Row("1 lb sugar")])]
    ['Fudge Step by Step', '1 lb sugar']
    """
    first = rows[0] if rows else None
    if first is None or first.shape not in ("line", "heading") or len(first.text) > _LONGEST:
        return list(rows)
    text = without_column(first.text.strip())
    said = _BY_WHOM.fullmatch(text)
    title = said["title"].strip() if said else ""
    named = len(title.split()) > 1 or says_its_kind(title)
    if not said or not named or not is_title(title):
        return list(rows)
    if title.split()[-1].lower() == said["who"].split()[0].lower():
        return list(rows)  # "step by step"
    name = said["who"].rstrip(" .")
    return [replace(first, text=title), Row(f"By {name}", wraps=first.wraps), *rows[1:]]


def is_addressed(text: str) -> bool:
    """Whether words are somebody's name with how she is addressed: "MISS CLINT.", "Mrs. Vane"."""
    return _ADDRESSED.fullmatch(text.strip()) is not None


def first_told(rows: Sequence[Row], at: int) -> int:
    """Return the row at which what a title heads begins: behind whose it is."""
    below = at + 1
    named = below + 1 < len(rows) and bool(writer_of(rows[below].text))
    return below + 1 if named and rows[below].text.startswith("By ") else below


def _is_byline(rows: Sequence[Row], at: int) -> bool:
    above, row, below = rows[at - 1], rows[at], rows[at + 1]
    if row.shape != "line" or above.shape not in ("line", "heading") or row.text[:3] == "By ":
        return False
    title = unstopped(above.text.strip())
    few = len(title.split()) <= _MOST_OF_A_TITLE and is_title(title) and not is_sentence(above.text)
    if not few or section_of(above.text) is not None or is_addressed(above.text):
        return False
    if not (is_sentence(below.text) or is_ingredient(below.text) or ";" in below.text):
        return False
    addressed = is_addressed(row.text)
    return addressed or (title.isupper() and not row.text.isupper() and is_name(row.text.strip()))
