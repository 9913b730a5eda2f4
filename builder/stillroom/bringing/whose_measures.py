"""Whose cups and pints a recipe means: American ones by its other words, or nobody knows.

Leaves out the amounts themselves, and books that measure as America does: drafting.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from stillroom.bringing.found import Recipe

_CUPS: Final = re.compile(
    r"\b(?:cups?|pints?|quarts?|gallons?|fl\.? ?oz|fluid ounces?)\b"
    # "1.5 QT water", "2 c. sugar"; "1 c. à soupe" is a spoon
    r"|(?<=[\d½¼¾⅓⅔⅛])\s?(?:qts?|pts?|gals?)\b"
    r"|(?<=[\d½¼¾⅓⅔⅛])\s?c(?=\.?\s(?!à|a\s|de\s|d['’]|[sc]\b)[^\W\d_]{2})",
    re.IGNORECASE,
)
_AMERICAN: Final = re.compile(
    r"\d+\s*(?:°|º|degrees?)?\s*F\b|\ball[- ]purpose|\bsticks?\b[^.]{0,20}\bbutter|"
    r"\bbutter[^.]{0,20}\bsticks?\b|\bconfectioner|\bhalf[- ]?and[- ]?half|\bhalf-pint|"
    r"\bkosher salt|\bheavy cream|\bmolasses\b|\bcornstarch|\bcanning jar|"
    # spelled as in America alone
    r"\b(?:un)?flavor(?:ed|ing|s)?\b|\bcolor(?:ed|ing|s)?\b|\bliters?\b|\bfiber\b|"
    r"\bcookie sheet|\bmason jar|\bwax(?:ed)? paper",
    re.IGNORECASE,
)
# said in Britain alone: a page that says both was put into one from the other
_BRITISH: Final = re.compile(
    r"\bcaster sugar|\bicing sugar|\bmalt vinegar|\btreacle\b|\bgas (?:mark )?\d|\bbramleys?\b|"
    r"\bcooking apples?\b|\bbicarbonate of soda|\bplain flour|\bself[- ]raising|\b(?:un)?flavour|"
    r"\bcolour|\blitres?\b|\bsultanas?\b",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class Measures:
    """What is asked about a recipe's measures, and whether they are read as American."""

    american: bool
    what: str
    mend: str


def whose_measures(recipe: Recipe) -> Measures | None:
    """Return what is to be asked of a recipe's cups and pints; None where it has none.

    >>> whose_measures(Recipe(ingredients=[("", "2 cups all-purpose flour")])).american
    True
    >>> whose_measures(Recipe(ingredients=[("", "2 cups flour")])).american
    False
    """
    listed = " ".join(row for _, row in recipe.ingredients)
    measures = _CUPS.search(listed)
    if not measures:
        return None
    beside = (row for _, rows in recipe.notes for row in rows)
    text = " ".join([listed, recipe.makes, *(row for _, row in recipe.steps), *beside])
    sign = _AMERICAN.search(text)
    if sign and not _BRITISH.search(text):
        what = f'"{measures[0].strip()}" is read as American, since it says "{sign[0].strip()}".'
        return Measures(True, what, 'If it is not, take out "units: us".')
    what = (
        f'"{measures[0].strip()}" is read as this book reads it, which is not the American measure.'
    )
    return Measures(False, what, 'If the recipe is American, write "units: us".')
