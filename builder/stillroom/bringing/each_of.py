"""A line for each of several foods of which one amount is said: "1 tsp each of mace and cloves".

The words for it are those of core/lines/each.py, which asks about such a line elsewhere; the amount
stands before the foods or behind. Leaves out other lines of several things: one_line.py.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final

from stillroom.core.lines.each import EACH_OF
from stillroom.core.words.patterns import OUTSIDE_BRACKETS

_PAIR: Final = 2
# "½ teaspoon each of nutmeg, mace and cloves", "100 g each: figs, dates", "je 1 TL Zimt, Nelken"
_SO_MUCH: Final = (
    r"[\d½¼¾⅓⅔⅛][\d\s./,½¼¾⅓⅔⅛-]*\s*(?:c\.\s?à\s?(?:café|soupe|[cs]\.?)"
    r"|(?:colher(?:es)?|cucharad\w+)\sde\s(?:sopa|chá|café|té|postre)|[^\W\d]*\.?)"
)
_EACH: Final = re.compile(
    rf"(?:(?P<amount>{_SO_MUCH})\s+\(?{EACH_OF}\)?|(?:{EACH_OF}|po)\s+(?P<first>{_SO_MUCH}))"
    r"(?:\s*,\s*(?P<how>[^\W\d]+(?:\s[^\W\d]+)?)\s*,)?\s*(?:of\b|:|-)?\s+(?P<foods>[^\d]+)",
    re.IGNORECASE,
)
_EACH_BEHIND: Final = re.compile(
    rf"(?:(?P<amount>{_SO_MUCH})\s+(?P<foods>[^\d]+?),?\s+{EACH_OF}"
    rf"|(?P<named>[^\d]+?)(?:,|\s[-–—])\s+(?P<behind>{_SO_MUCH})\s+(?:of\s+)?{EACH_OF})",
    re.IGNORECASE,
)
EACH_BELOW: Final = re.compile(
    rf"\b{EACH_OF}\s+(?:of\s+)?(?P<last>{_SO_MUCH})$"
    rf"|(?P<first>{_SO_MUCH})\s+(?:of\s+)?{EACH_OF}(?![^\W\d_])",
    re.IGNORECASE,
)
"""One amount said for all the foods of a part of a list: "½ tsp of each:", "jeweils ½ TL"."""
_JOINTS: Final = re.compile(
    rf",\s*(?:and\s+)?{OUTSIDE_BRACKETS}|\s+(?:and|&|und|et|y|e|en|och|og|i|oraz|ja)\s+{OUTSIDE_BRACKETS}"
)
_HOW_MADE: Final = re.compile(
    r"(?:ground|dried|chopped|grated|powdered|getrocknete[rsn]?|gemahlene[rsn]?|moulue?s?)\s",
    re.IGNORECASE,
)
_MADE_ALREADY: Final = re.compile(
    r"\b(?:ground|grated|powder(?:ed)?|whole|fresh|dried|chopped|juice|oil|seeds?|gemahlen\w*|getrocknet\w*|\w+körner)\b",
    re.IGNORECASE,
)
_COLOURS: Final = re.compile(
    r"white|brown|red|green|yellow|black|golden|dark|light|sweet|hot|rote|grüne|gelbe|weiße", re.I
)


def lines_of_each(row: str, is_food: Callable[[str], bool]) -> list[str]:
    """Return a line for each of the foods that one amount is said of; [] for any other line.

    `is_food` says whether words name a food that is known.

    >>> lines_of_each("1 tsp each, dried, of thyme, basil and sage", str.islower)
    ['1 tsp dried thyme', '1 tsp dried basil', '1 tsp dried sage']
    >>> lines_of_each("1 cup each white and brown sugar", str.islower)
    ['1 cup white sugar', '1 cup brown sugar']
    >>> lines_of_each("2 apples, 100 g each", str.islower)
    []
    """
    bare = row.strip().rstrip(".")
    found = _EACH.fullmatch(bare) or _EACH_BEHIND.fullmatch(bare)
    if found is None:
        return []
    said = found.groupdict()
    foods = said["foods"] or said.get("named") or ""
    parts = _whole_names([part.strip() for part in _JOINTS.split(foods) if part.strip()])
    made = _HOW_MADE.match(parts[0]) if parts else None
    how = made[0] if made else f"{said['how']} " if said.get("how") else ""
    parts = [
        part if not how or _MADE_ALREADY.search(part) else f"{how.lower()}{part}" for part in parts
    ]
    amount = said["amount"] or said.get("first") or said.get("behind") or ""
    whole = len(parts) >= _PAIR and all(map(is_food, parts))
    return [f"{amount.strip()} {part}" for part in parts] if whole else []


def _whole_names(parts: list[str]) -> list[str]:
    """Return names with the word that only the last of them bears: "white and brown sugar"."""
    last = parts[-1].split() if parts else []
    shared = last[-1] if len(last) > 1 and _COLOURS.fullmatch(last[0]) else ""
    return [f"{one} {shared}" if shared and _COLOURS.fullmatch(one) else one for one in parts]
