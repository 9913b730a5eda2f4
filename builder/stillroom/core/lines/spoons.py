"""A spoon that is called after a drink, and one spoon of which no number is said.

Spanish "cucharadita de café" is a coffee spoon, "cucharadita de café instantáneo" one of that.
Leaves out how spoons are read: measures.py.
"""

from __future__ import annotations

import re

from stillroom.core.words.patterns import late_regex

_SPOON_OR_DRINK = late_regex(r"\sde\s(?:caf[ée]|t[ée]|ch[áa])$", re.IGNORECASE)
_IS_THE_DRINK = late_regex(
    r"\s*$|\s+(?:instant[áâ]ne[oa]|solub?le|solúvel|molido|moído|descaf\w+|en\s+(?:polvo|grano)|em\s+(?:pó|grão)|fuerte|forte|negro"
    r"|preto|verde|rojo|vermelho|blanco|branco|frío|frio|caliente|quente|reci[ée]n|expres[os]o?|espresso|coado|matcha|chai)\b",
    re.IGNORECASE,
)
# "Teelöffel Salz", "łyżeczka soli": where no "of" stands behind a spoon, one of it
_ONE_SPOON = late_regex(
    r"(?:teaspoon|tablespoon|teelöffel|e[sß]{1,2}löffel|kaffeelöffel|theelepel|eetlepel|soeplepel|tesked|matsked|teske|spiseske"
    r"|teskje|spiseskje|łyżeczk[aę]|łyżk[aę]|lyzeczk[ae]|lyzk[ae])\s+"
    r"(?!(?:und|oder|en|of|och|eller|og|i|lub|albo|or|and)\b)(?=[^\W\d])",
    re.IGNORECASE,
)


def end_before_drink(text: str, at: int, end: int) -> int:
    """Return where a measure from `at` to `end` ends if it is one of a drink; 0 where it is not.

    >>> said = "2 cucharadas de café molido"
    >>> end_before_drink(said, 2, 20), end_before_drink("2 cucharadas de café de sal", 2, 20)
    (12, 0)
    """
    drink = _SPOON_OR_DRINK.search(text, at, end)
    return drink.start() if drink and _IS_THE_DRINK.match(text, end) else 0


def is_one_spoon(text: str, at: int) -> bool:
    """Whether one spoon of something begins at `at`, as "tesked salt" has it."""
    return _ONE_SPOON.match(text, at) is not None
