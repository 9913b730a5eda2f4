"""How lengths of time are said, put into the few ways that spans.py reads.

"An hour or two", "at least three weeks", "1h30", "all night" mean a number and a unit; what says
no number ("a few days") stays as it is and is told. Leaves out the reckoning: spans.py.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache, lru_cache
from typing import Final

from stillroom.core.words.patterns import late_regex

_ONES: Final = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine"]
_TEENS: Final = (
    *("ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen"),
    *("sixteen", "seventeen", "eighteen", "nineteen"),
)
_TENS: Final = {"twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "ninety": 90}
NUMBER_WORDS: Final[dict[str, int]] = {
    "a": 1,
    "an": 1,
    **{word: number for number, word in enumerate(_ONES, 1)},
    **{word: number for number, word in enumerate(_TEENS, 10)},
    **_TENS,
    **{f"{ten}-{one}": of + n for ten, of in _TENS.items() for n, one in enumerate(_ONES, 1)},
}
UNIT_WORDS: Final = {
    "min": "minute", "mins": "minute", "minute": "minute", "minutes": "minute",
    "h": "hour", "hr": "hour", "hrs": "hour", "hour": "hour", "hours": "hour",
    "day": "day", "days": "day", "d": "day", "night": "day", "nights": "day",
    "week": "week", "weeks": "week", "wk": "week", "wks": "week",
    "fortnight": "fortnight", "fortnights": "fortnight",
    "month": "month", "months": "month", "mth": "month", "mths": "month", "mo": "month",
    "year": "year", "years": "year", "yr": "year", "yrs": "year",
    "twelvemonth": "year", "twelvemonths": "year",
}  # fmt: skip
UNIT: Final = r"(?:" + "|".join(sorted(UNIT_WORDS, key=len, reverse=True)) + r")\b"
_TEN: Final = rf"(?:{'|'.join(_TENS)})(?:-(?:{'|'.join(_ONES)}))?"  # the longer ones first
_WORDS: Final = rf"{_TEN}|{'|'.join(['a', 'an', *_ONES, *_TEENS][::-1])}"
NUMBER: Final = (
    r"(?:half\s+an?\b|(?:[0-9]{1,6}\s+)?[0-9]{1,4}/[0-9]{1,4}|[0-9]{1,6}[½¼¾]|[½¼¾]|[0-9]{1,6}\.[0-9]{1,4}|[0-9]{1,6}|"
    rf"(?:{_WORDS})\b)"
)
_ONE: Final = rf"{NUMBER}\s*{UNIT}"
_IN_MINUTES: Final = {"minute": 1, "hour": 60, "day": 1440, "week": 10080}
_AS_MINUTES: Final = {"month": 12, "year": 144}  # of a twelfth of a month: they mix with no days


def _mixed(found: re.Match[str]) -> str:
    """Turn "1 week to 10 days" into "7-10 days", where the one is a whole number of the other."""
    low, one, high, other = found[1], UNIT_WORDS[found[2]], found[3], UNIT_WORDS[found[4]]
    for sizes in (_IN_MINUTES, _AS_MINUTES):
        if one in sizes and other in sizes and one != other:
            finer = min(one, other, key=lambda unit: sizes[unit])
            counts = [
                _number(number) * sizes[unit] // sizes[finer]
                for number, unit in ((low, one), (high, other))
            ]
            return f"{counts[0]}-{counts[1]} {finer}s"
    return found[0]


def _number(words: str) -> int:
    return int(words) if words.isdecimal() else NUMBER_WORDS[words]


def _half(found: re.Match[str]) -> str:
    return f"{_number(found[1])} 1/2 {found[2]}"


_WHOLE: Final = rf"(\d{{1,6}}|{_WORDS})"
_Said = str | Callable[[re.Match[str]], str]
# what is said, the words of which it holds at least one, and what is written instead
_SAID: Final[tuple[tuple[str, tuple[str, ...], _Said], ...]] = (
    (r"\b(\d{1,3})\s*h(?:rs?)?\s*(\d{1,2})\s*m(?:ins?)?\b", ("h",), r"\1 hours \2 minutes"),
    (r"\b(\d{1,3})h(\d{2})\b", ("h",), r"\1 hours \2 minutes"),
    (r"\bthree[- ]quarters of an hour\b", ("quarters",), "45 minutes"),
    (r"\b(?:a )?quarter of an hour\b", ("quarter",), "15 minutes"),
    (r"\b(?:all|the whole|a whole|through the) night\b", ("night",), "overnight"),
    (r"\b(?:all|the whole|a whole) day\b", ("day",), "1 day"),
    (rf"\b(?:an?|one) ({UNIT}) or two\b", ("or two",), r"1-2 \1s"),
    (rf"\b(?:(?:a|the) )?couple(?: of)? (?={UNIT})", ("couple",), "2 "),
    (rf"\b{_WHOLE} and a half ({UNIT})", ("and a half",), _half),
    (rf"\bbetween ({NUMBER}) and ({NUMBER})(?=\s*{UNIT})", ("between",), r"\1-\2"),
    (rf"\bfrom ({NUMBER}) to ({NUMBER})(?=\s*{UNIT})", ("from",), r"\1-\2"),
    (rf"\b{_WHOLE}\s*({UNIT})\s*(?:-|to|or)\s*{_WHOLE}\s*({UNIT})", ("-", "to", "or"), _mixed),
    (r"\b(\d{1,6})\s*\+", ("+",), r"\1"),
    (rf"({NUMBER}) (?:full|whole|more|further|long|solid) (?={UNIT})",
     ("full", "whole", "more", "further", "long", "solid"), r"\1 "),
    (rf"\b(?:approx(?:imately)?|ca|circa|c)(?:\.\s*|\s+)(?={NUMBER}[\s-])",
     ("approx", "ca", "c.", "c "), "about "),
    (rf"~\s*(?={NUMBER})", ("~",), "about "),
    (rf"\b(?:for )?(?:at (?:the )?(?:least|most)|(?:a )?(?:minimum|maximum)(?: of)?|up to|"
     rf"no more than|not more than|no less than|a further|another|a good|a full|just|only|nearly|"
     rf"almost|more than)\s+(?={NUMBER}(?:\s*(?:-|to|or)\s*{NUMBER})?\s*{UNIT})",
     ("at", "minimum", "maximum", "up", "than", "further", "another", "good", "full", "just",
      "only", "nearly", "almost"), ""),
    (rf"^min\.\s*(?={NUMBER})", ("min.",), ""),
    (rf"({UNIT}) (?:at (?:the )?(?:least|most)|minimum|maximum|or (?:more|longer|less))\b",
     ("at", "minimum", "maximum", "or"), r"\1"),
    (rf"((?:{NUMBER}\s*(?:-|to|or)\s*)?{_ONE}) or so\b", ("or so",), r"about \1"),
    (rf"({UNIT})\s*&\s*(?={NUMBER})", ("&",), r"\1 "),
)  # fmt: skip


@cache  # only what some text needs: together they take as long to make as a recipe to read
def _rule(pattern: str) -> re.Pattern[str]:
    return late_regex(pattern)


@lru_cache(maxsize=4096)  # the same lengths stand in recipe after recipe
def tidy(text: str) -> str:
    """Return text in small letters with single blanks, plain hyphens and lengths plainly said.

    >>> tidy("At least three  weeks"), tidy("An hour or two"), tidy("1 week – 10 days")
    ('three weeks', '1-2 hours', '7-10 days')
    """
    words = re.sub(r"\s+", " ", re.sub("[–—‑−]", "-", text)).strip().lower()
    for pattern, hints, said in _SAID:
        if any(hint in words for hint in hints):
            words = _rule(pattern).sub(said, words)
    return words.strip()
