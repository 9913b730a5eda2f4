"""Whose cups and pints a recipe means: American ones by its other words, or nobody knows.

Leaves out the amounts themselves, and books that measure as America does: drafting.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from stillroom.bringing.found import Recipe
from stillroom.core.words.patterns import late_regex

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


# "1.8 litres (3 pints)", "3 pints / 1.7 l": the same in litres beside it
_BESIDE: Final = late_regex(
    r"(?P<count>\d+(?:[.,]\d+)?)\s?(?P<unit>pints?|pts?|quarts?|qts?|gallons?|gals?|fl\.?\s?oz|fluid\sounces?)\b",
    re.IGNORECASE,
)
_METRIC: Final = late_regex(
    r"(?P<count>\d+(?:[.,]\d+)?)\s?(?P<unit>ml|cl|dl|l|lit(?:re|er)s?)\b", re.IGNORECASE
)
_ML: Final = {"ml": 1.0, "cl": 10.0, "dl": 100.0, "l": 1000.0}
_IMPERIAL: Final = {"p": 568.26, "q": 1136.5, "g": 4546.1, "f": 28.413}
_US: Final = {"p": 473.18, "q": 946.35, "g": 3785.4, "f": 29.574}
_NEAR: Final = 0.08
"""How far a figure that was rounded for the kitchen may stand from the exact one."""


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
    told = {row: _said_in_litres(row) for _, row in recipe.ingredients}
    listed = " ".join(row for row, beside in told.items() if beside != "imperial")
    measures = _CUPS.search(listed)
    if not measures:
        return None
    beside = (row for _, rows in recipe.notes for row in rows)
    text = " ".join([listed, recipe.makes, *(row for _, row in recipe.steps), *beside])
    american = next((row for row, beside in told.items() if beside == "us"), "")
    if american:
        what = f'"{measures[0].strip()}" is read as American, as its litres say: "{american}".'
        return Measures(True, what, 'If it is not, take out "units: us".')
    sign = _AMERICAN.search(text)
    if sign and not _BRITISH.search(text):
        what = f'"{measures[0].strip()}" is read as American, since it says "{sign[0].strip()}".'
        return Measures(True, what, 'If it is not, take out "units: us".')
    what = (
        f'"{measures[0].strip()}" is read as this book reads it, which is not the American measure.'
    )
    return Measures(False, what, 'If the recipe is American, write "units: us".')


# "colher de café", "koffielepel": a smaller spoon in one kitchen, a teaspoon in the next
_COFFEE_SPOON: Final = late_regex(
    r"\b(?:colher(?:es)?\s*\(?\s*(?:de\s+)?caf[eé]|koffielepels?|coffee[\s-]?spoon(?:ful)?s?)\b",
    re.IGNORECASE,
)


def coffee_spoons(recipe: Recipe) -> tuple[str, str] | None:
    """Return what is asked about coffee spoons, whose size is not agreed; None where none stand.

    >>> coffee_spoons(Recipe(ingredients=[("", "1 colher (café) de canela")]))[0][:16]
    '"colher (café" h'
    """
    said = next(filter(None, (_COFFEE_SPOON.search(row) for _, row in recipe.ingredients)), None)
    if said is None:
        return None
    what = (
        f'"{said[0].strip()}" holds 2 ml to 5 ml, as the cook has it: it is counted, not measured.'
    )
    return what, 'If you know how much it holds, write that: "2 ml", or "1 tsp" if it is 5 ml.'


def _said_in_litres(row: str) -> str:
    """Return whose measure a line's is by the litres beside it: "imperial", "us", or "".

    >>> _said_in_litres("1.8 litres (3 pints) vinegar"), _said_in_litres("2 quarts (1.9 l) water")
    ('imperial', 'us')
    >>> _said_in_litres("3 pints vinegar"), _said_in_litres("1 fl oz (30 ml) rum")
    ('', 'imperial')
    """
    measured, metric = _BESIDE.search(row), _METRIC.search(row)
    if not measured or not metric:
        return ""
    ml = _figure(metric["count"]) * _ML[metric["unit"].lower() if len(metric["unit"]) == 2 else "l"]
    first, count = measured["unit"][0].lower(), _figure(measured["count"])
    far = [abs(ml / (count * of[first]) - 1) if count else 1.0 for of in (_IMPERIAL, _US)]
    if min(far) > _NEAR:
        return ""
    return "us" if far[1] < far[0] and far[0] > _NEAR else "imperial"


def _figure(said: str) -> float:
    return float(said.replace(",", "."))
