"""A day as it is said and typed in haste, in the words that rules of days are written in.

"xmas", "24 dec", "the week before Christmas", "mothers day". Leaves out what the rules mean:
giving_days.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from stillroom.core.when.spans import ORDINALS, tidy
from stillroom.core.words.day_words import DAY_NAMES, MONTH_NAMES
from stillroom.core.words.patterns import late_regex

_MONTHS: Final = {name[:3].lower(): name.lower() for name in MONTH_NAMES} | {"sept": "september"}
_DAYS: Final = {name[:3].lower(): name.lower() for name in DAY_NAMES} | {
    "tues": "tuesday",
    "weds": "wednesday",
    "thur": "thursday",
    "thurs": "thursday",
}
_SHORT_MONTH: Final = late_regex(rf"\b({'|'.join(sorted(_MONTHS, key=len, reverse=True))})\b\.?")
_SHORT_DAY: Final = late_regex(
    rf"\b({'|'.join(sorted(_DAYS, key=len, reverse=True))})\b\.?"
    r"(?= (?:before|after|on|nearest|in|of)\b)"
)
_NTH: Final = late_regex(rf"\b([1-5])(?:st|nd|rd|th) (?={'|'.join(set(_DAYS.values()))})")
_NUMBERS: Final = late_regex(r"(\d{1,2})[./](\d{1,2})\.?")
_ORDINAL: Final = late_regex(rf"({'|'.join(ORDINALS)}) (?:of )?({'|'.join(_MONTHS.values())})")


def spoken(rule: str) -> str:
    """Return a rule in the words that rules are read in.

    >>> spoken("Week before X-mas"), spoken("Dec. 24th"), spoken("sat before christmas")
    ('1 week before christmas', 'december 24th', 'saturday before christmas')
    >>> spoken("24/12"), spoken("5/6")
    ('24 december', '5/6')
    """
    words = re.sub(r"^the ", "", tidy(rule)).replace("st. ", "st ")
    words = re.sub(r"\bx[- ]?mas\b", "christmas", words)
    words = re.sub(r"\ba couple of (?=\w)", "2 ", words)
    words = re.sub(r"^(?:an? |the )?(?=(?:day|week|fortnight) (?:before|after) )", "1 ", words)
    words = _SHORT_DAY.sub(lambda found: _DAYS[found[1]], words)
    words = _NTH.sub(lambda found: f"{[*ORDINALS][int(found[1]) - 1]} ", words)
    if re.search(r"\d| (?:in|of) ", words):
        words = _SHORT_MONTH.sub(lambda found: _MONTHS[found[1]], words)
    if said := _ORDINAL.fullmatch(words):
        words = f"{ORDINALS[said[1]]} {said[2]}"
    return _numbered(words)


def _numbered(words: str) -> str:
    """Return "24/12" and "12/24" as "24 december"; what may be two days is left as it is."""
    found = _NUMBERS.fullmatch(words)
    if not found:
        return words
    one, two = int(found[1]), int(found[2])
    if one > 12 >= two > 0:
        return f"{one} {MONTH_NAMES[two - 1].lower()}"
    return f"{two} {MONTH_NAMES[one - 1].lower()}" if two > 12 >= one > 0 else words


def plain_name(name: str) -> str:
    """Return the name of a day without what is left out in haste: "mothers day".

    >>> plain_name("Mother's Day"), plain_name("Xmas")
    ('mothers day', 'christmas')
    """
    return re.sub("[\u2019']", "", spoken(name))


def own_rule(said: str, own: Iterable[tuple[str, str]]) -> str:
    """Return the rule of the book's own day of that name; what names none of them as it is.

    >>> own_rule("xmas", [("Christmas", "the Saturday before Christmas")])
    'the Saturday before Christmas'
    >>> own_rule("Christmas Day", [("Christmas", "the Saturday before Christmas")])
    'Christmas Day'
    """
    rules = {plain_name(name): rule for name, rule in own}
    return rules.get(plain_name(said), said)
