"""A ratio in an ingredient line, "1:1 sugar and water", "1 part honey to 2 parts water": no amount.

One food that is named by its ratio stays a food: "2:1 Gelierzucker", "1:1 sugar syrup". Leaves out
parts of one food alone, and those to another ingredient: measured_to.py.
"""

from __future__ import annotations

import re

from stillroom.core.lines.sizes import has_figure
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

_RATIO = r"(?:\d{1,3}(?:\s?:\s?\d{1,3}){1,4}|(?:50\s?/\s?50|[1-9]0\s?/\s?[1-9]0))"
_AT_HEAD = late_regex(rf"^\W*(?P<said>{_RATIO})(?![\d:/.])\s*(?P<rest>[^\W\d].*)$")
_AT_END = late_regex(rf"(?<![\d:/.,])(?P<said>{_RATIO})\)?[\s.]*$")
_TWO = late_regex(
    r"[^\W\d]\s*(?:\s(?:and|to|und|zu|et|y|e|en|och)\s|[&+:/])\s*[^\W\d]|^(?:water|vinegar)\W*$",
    re.IGNORECASE,
)
# "1:1 sugar and water syrup" is one thing, and is called so
_ONE_NAME = late_regex(
    r"(?:syrup|brine|solution|mix|mixture|blend|paste|cordial|sirup|sirop|mischung|lake"
    r"|m[ée]lange|sciroppo|jarabe|siroop|sirap)\W*$|\b(?:mix|mixture|blend|solution|syrup)\s+of\b",
    re.IGNORECASE,
)
_PART = r"(?:parts?|teile?n?|part[ei]s?|de(?:e)?len|deel|del(?:ar|er|e)?|części|część|osaa?)"
_IN_PARTS = late_regex(
    rf"^\W*\d{{1,2}}(?:\s?[/½])?\s*{_PART}\s+(?P<first>[^\d,;]{{2,60}}?)\s*[,;+&/:]?\s*(?P<and>[^\W\d]{{1,5}}\s+)?\d{{1,2}}\s*{_PART}\s+[^\W\d]",
    re.IGNORECASE,
)


def refuse_ratio(text: str) -> None:
    """Raise Unreadable where a ratio of two foods stands where an amount should."""
    if _IN_PARTS.match(text):
        what = f'"{text.strip()}" is a ratio, and does not say how much there is of each.'
        raise Unreadable(what, 'Write a line for each: "250 g sugar", "250 ml water".')
    if ":" not in text and "/" not in text:
        return
    if found := _AT_HEAD.match(text):
        foods = found["rest"]
    elif (found := _AT_END.search(text)) and not has_figure(text[: found.start()]):
        foods = text[: found.start()]
    else:
        return
    named = foods.partition(",")[0]
    listed = foods.count(",") > 1 and found["said"].count(":") > 1  # "1:1:1 lemon, sugar, gin"
    if (_TWO.search(named) and not _ONE_NAME.search(named)) or listed:
        what = f'"{found["said"]}" is a ratio, and does not say how much there is of each.'
        raise Unreadable(what, 'Write a line for each: "250 g sugar", "250 ml water".')
