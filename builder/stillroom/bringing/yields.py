"""How much a recipe makes, where a cook says it in the steps ("It gives about 4 bottles").

Leaves out what stands on a line of its own or behind "makes": sorting.py.
"""

from __future__ import annotations

import re
from typing import Final

_NUMBER: Final = (
    r"(?:about\s+|around\s+|roughly\s+|approx\.?\s+|approximately\s+|at\s+least\s+|up\s+to\s+|nearly\s+|some\s+)?"
    r"(?:\d+\s+\d/\d|\d/\d|\d+(?:[.,]\d+)?\s*[½¼¾]?(?:\s*(?:-|–|to|or)\s*\d+)?|[½¼¾]|an?(?=\s+dozen)|one|two|three|four|five|six"
    r"|seven|eight|nine|ten|eleven|twelve)"
)
_HELD: Final = (
    r"(?:jars?|jarfuls?|bottles?|bottlefuls?|pots?|tins?|bags?|boxes|tubs?|packets?|demijohns?)"
)
_MADE: Final = (
    r"(?:dozen|biscuits?|cookies?|cakes?|buns?|pieces?|squares?|bars?|fingers?|slices?|balls?|truffles?|sweets?|loaf|loaves|muffins?"
    r"|scones?|pies|tarts?|candles?|soaps?|servings?|cups?|pints?|pts?|quarts?|gallons?|lit(?:re|er)s?|l|ml|lbs?|pounds?|kg|g"
    r"|oz|ounces?)"
)
_SIZE: Final = (
    r"(?:[^\W\d][\w'’-]*\s+|\d+\s?-?(?:ml|g|oz|lb|l|cl)\.?\s+"
    r"|\d[\d/]*\s*-?(?:pint|pound|ounce)\s+){0,3}?"
)
_SAYS: Final = re.compile(
    r"(?:^|(?<=[.!;)]\s)|(?<=[.!;)]\s\s)|(?<=\s[-–]\s))"
    r"(?:(?:it|this|that|these|they|we|i|you|mine|the\s+recipe|this\s+recipe|this\s+amount|the\s+lot|a\s+batch)\s+)?"
    r"(?:(?:should|will|would|usually|always|just|only|can)\s+){0,2}"
    r"(?:gives?|gave|made|makes?|fills?|filled|yields?|yielded|produces?|got|get|comes?\s+to|cuts?\s+into|divides?\s+into"
    r"|(?:is\s+)?enough\s+(?:for|to\s+fill)|(?:is\s+)?sufficient\s+for)\s+"
    r"(?:me\s+|us\s+|you\s+|enough\s+(?:for|to\s+fill)\s+)?"
    rf"(?P<said>{_NUMBER}\s+{_SIZE}(?:{_HELD}|{_MADE})\b)"
    r"(?!\s+(?:of|more|less|extra|each)\b(?!\s+(?:this|it|these|that|them)\b))",
    re.IGNORECASE,
)
# "Cuts into 8 petticoat tails.": whatever it is cut into is what is counted
_CUT: Final = re.compile(
    r"(?:^|[.!;]\s+)(?:it\s+|this\s+)?cuts\s+(?:up\s+)?into\s+(?P<said>(?:about\s+)?\d+\s+[^\W\d][\w'’-]*(?:\s[^\W\d][\w'’-]*){0,2}?)(?=[.,;!(]|$)",
    re.IGNORECASE,
)
# "Fill 4 jars": what is done
_ORDERS: Final = re.compile(
    r"\W*(?:give|make|fill|yield|produce|get|cut|divide|come)\s", re.IGNORECASE
)
_NO_YIELD: Final = re.compile(r"\b(?:more|less|extra|each|per|every|time|times)\b", re.IGNORECASE)


def yield_told(text: str) -> str:
    """Return how much the sentences of a step say is made; "" where they say nothing of it.

    >>> yield_told("Boil it. It gives about 4 bottles."), yield_told("We got 7 jars out of this.")
    ('about 4 bottles', '7 jars')
    >>> yield_told("Enough for 3 big jars."), yield_told("Makes 2-3 dozen.")
    ('3 big jars', '2-3 dozen')
    >>> yield_told("This gives 2 cups of juice."), yield_told("Fill 4 jars.")
    ('', '')
    """
    found = _CUT.search(text) or _SAYS.search(text)
    if found is None or _NO_YIELD.search(found["said"]):
        return ""
    if _ORDERS.match(found[0]):
        return ""
    return " ".join(found["said"].split())
