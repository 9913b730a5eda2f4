"""A pack told before its size: "1 tin of 400 g tomatoes", "2 Dosen à 400 g Tomaten".

Put in the order in which packs are read: "2 x 400 g Dosen Tomaten". Leaves out reading them
(amounts.py), and a size behind the food, "2 Dosen Tomaten à 400 g" (behind.py).
"""

from __future__ import annotations

from typing import Final

from stillroom.core.amounts.units import counted_nouns
from stillroom.core.words.patterns import late_regex

_ONE: Final = r"an?|one|eine?[nr]?|une?|un[oa]|een|en|ett"
_HALF: Final = (
    r"(?:an?\s+|eine?[nr]?\s+|une?[\s-]+|een\s+|ett?\s+|en\s+)?"
    r"(?:half|halbe[ns]?|halve?|halvt|halva|demie?|mezz[oa]|medi[oa]|mei[oa]|pół)"
)
_PACK_FIRST = late_regex(
    rf"\s*(?P<count>\d+(?:[.,]\d+)?|\d/\d|[½⅓⅔¼¾]|(?P<half>{_HALF})|{_ONE})[\s-]+(?P<noun>[^\W\d_]+)\s+"
    r"(?:of|at|à|a|zu(?:\s+je)?|je|mit|von|de|da|di|van|på|av|con)\s+"
    r"(?P<size>(?:\d+(?:[.,]\d+)?|[½⅓⅔¼¾])\s?(?:kg|g|gr|ml|mL|cl|cL|dl|dL|l|L|oz|lb)\b\.?)"
    r"(?:\s+(?:of|de|del|della|di|van|av|aux?)|\s+d['’])?\s*(?P<food>[^\W\d_]\S.*)",
)


def size_before_pack(text: str) -> str:
    """Return a line with a pack's size before the pack.

    >>> size_before_pack("1 tin of 400 g tomatoes, drained")
    '1 x 400 g tin tomatoes, drained'
    >>> size_before_pack("1 boîte de 400 g de tomates"), size_before_pack("2 kg of 20 g eggs")
    ('1 x 400 g boîte tomates', '2 kg of 20 g eggs')
    >>> size_before_pack("une demi-boîte de 400 g de tomates")
    '1/2 x 400 g boîte tomates'
    """
    found = _PACK_FIRST.fullmatch(text)
    if found is None or found["noun"] not in counted_nouns():
        return text
    spoken = "1/2" if found["half"] else "1"
    count = found["count"] if found["count"][0].isnumeric() else spoken
    return f"{count} x {found['size']} {found['noun']} {found['food']}"
