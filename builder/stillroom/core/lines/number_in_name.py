"""A number that belongs to the name of a food: "five spice", "thousand island dressing".

Five of a thing called "spice" would lose what the blend holds. Leaves out figures, "00 flour"
(doubts.py), and "half cream", which may be half of a cream and is asked about.
"""

from __future__ import annotations

from typing import Final

from stillroom.core.lines.staple_table import find_staple
from stillroom.core.words.patterns import late_regex

_NUMBER_FIRST: Final = late_regex(
    r"(?:half|two|three|four|five|six|seven|eight|nine|ten|twelve|hundred|thousand)\b[\s-]+"
    r"(?!(?:and(?! half$)|or|to|dozen|hundred|thousand)\b)(?P<rest>[^,;(]+)"
)


def begins_in_its_name(text: str, at: int) -> bool:
    """Whether a line names a food from `at` that without its number is none.

    >>> begins_in_its_name("five spice, to taste", 0), begins_in_its_name("five eggs", 0)
    (True, False)
    >>> begins_in_its_name("two and a half pounds of plums", 0)
    False
    """
    found = _NUMBER_FIRST.match(text.lower(), at)
    if found is None or find_staple(found["rest"].strip()):
        return False
    return find_staple(found[0].strip()) is not None
