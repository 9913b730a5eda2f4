"""Lengths of time as a cook says them: "40 minutes", "2-4 weeks", "about 3 weeks", "a month".

Months and years stay calendar months and years: they are added to a date as people mean it
(31 January plus a month is the last day of February), by python-dateutil's relativedelta.
What is not here: stages and their rhythm (stages.py) and the dates themselves (timeline.py).
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from fractions import Fraction
from functools import cache
from typing import Final

from dateutil.relativedelta import relativedelta

from stillroom.core.when.span_words import NUMBER, NUMBER_WORDS, UNIT, UNIT_WORDS, tidy
from stillroom.core.words.data_files import read_data
from stillroom.core.words.nearest import nearest
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable
from stillroom.core.words.said import Said

_say: Final = Said("stillroom.core.when", "spans")

DAY_UNITS: Final = ("day", "week", "month", "year")
__all__ = ["LOOSELY", "ORDINALS", "SPAN_PATTERN", "Span", "as_loosely", "parse_span", "tidy"]

LOOSELY: Final = "\x1f"
"""Stands behind a number that was put for words without one; a blank to every pattern."""

LONGEST_YEARS: Final = 100

ORDINALS: Final = {
    "first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7,
    "eighth": 8, "ninth": 9, "tenth": 10, "eleventh": 11, "twelfth": 12,
}  # fmt: skip
_VULGAR: Final[dict[str, Fraction]] = {
    "½": Fraction(1, 2),
    "¼": Fraction(1, 4),
    "¾": Fraction(3, 4),
}
# how many of the smaller unit make one of the larger, where that is a fixed number
_FINER: Final = {
    "hour": ("minute", 60),
    "day": ("hour", 24),
    "week": ("day", 7),
    "year": ("month", 12),
}

_ONE_SPAN: Final = rf"{NUMBER}(?:\s*(?:-|to|or)\s*{NUMBER})?\s*{UNIT}"
# one length, or several said together ("1 hour 30 minutes"); for use inside larger patterns
SPAN_PATTERN: Final = (
    rf"(?:(?:about|around|roughly|some)\s+)?{_ONE_SPAN}"
    rf"(?:(?:,?\s+plus\s+|\s+(?:and\s+)?){_ONE_SPAN})*(?:\s+and\s+a\s+half)?"
)
_PARTS: Final = late_regex(
    rf"(?P<low>{NUMBER})(?:\s*(?:-|to|or)\s*(?P<high>{NUMBER}))?\s*(?P<unit>{UNIT})"
)


@dataclass(frozen=True, slots=True)
class Span:
    """A length of time in one unit; `low` and `high` differ when it was given as a range.

    `loosely` is one of words that name no number, "several weeks": the least that they can mean.
    """

    low: int
    high: int
    unit: str
    about: bool = False
    loosely: bool = field(default=False, repr=False)

    @property
    def is_within_a_day(self) -> bool:
        """Whether it is counted in minutes or hours."""
        return self.unit in ("minute", "hour")

    def minutes(self, *, longest: bool = True) -> int:
        """Return its length in minutes; a month counts 30 days and a year 365, for drawing only."""
        per = {"minute": 1, "hour": 60, "day": 1440, "week": 10080, "month": 43200, "year": 525600}
        return (self.high if longest else self.low) * per[self.unit]

    def after(self, day: date, *, longest: bool = True, times: int = 1) -> date:
        """Return the day this much later, `times` over; a missing day becomes the month's last.

        Minutes and hours count as whole days only once they fill them.

        >>> Span(1, 1, "month").after(date(2027, 1, 31))
        datetime.date(2027, 2, 28)
        """
        count = (self.high if longest else self.low) * times
        if self.unit in ("minute", "hour"):
            return day + timedelta(minutes=count * (60 if self.unit == "hour" else 1))
        if self.unit in ("day", "week"):
            return day + timedelta(days=count * (7 if self.unit == "week" else 1))
        return day + relativedelta(months=count * (12 if self.unit == "year" else 1))

    @property
    def number(self) -> str:
        """Its number as it is shown: "2-4"."""
        return str(self.low) if self.low == self.high else f"{self.low}-{self.high}"

    def __str__(self) -> str:
        """Return it as a cook would write it: "about 2-4 weeks"."""
        said = _say(f"span_{self.unit}", count=self.high, number=self.number)
        return _say("about_span", span=said) if self.about else said


def as_loosely(span: Span, words: str) -> Span:
    """Return a length as one of loose words, where the words it was read from are marked so.

    >>> as_loosely(parse_span("3 weeks"), f"3{LOOSELY} weeks").loosely
    True
    """
    return replace(span, loosely=True) if LOOSELY in words else span


def parse_span(text: str) -> Span:
    """Read a length of time.

    Raises:
        Unreadable: (a ValueError) in plain words, naming what to write.

    >>> parse_span("about 2-4 weeks")
    Span(low=2, high=4, unit='week', about=True)
    >>> str(parse_span("a month"))
    '1 month'
    """
    words = tidy(text)
    ordinal = re.fullmatch(r"(?:the )?end of the (\w+) (day|week|month|year)", words)
    if ordinal and ordinal[1] in ORDINALS:
        count = ORDINALS[ordinal[1]]
        return Span(count, count, ordinal[2])
    if words == "overnight":
        return Span(1, 1, "day")
    if not re.fullmatch(SPAN_PATTERN, words):
        raise _why_not(text, words)
    about = bool(re.match(r"about|around|roughly|some", words))
    spans = [_one_span(match) for match in _PARTS.finditer(words)]
    if words.endswith(" and a half"):
        low, high, unit = spans[-1]
        spans[-1] = (low + Fraction(1, 2), high + Fraction(1, 2), unit)
    low, high, unit = spans[0]
    for more in spans[1:]:
        low, high, unit = _add(text, (low, high, unit), more)
    return _whole(text, low, high, unit, about)


def _one_span(match: re.Match[str]) -> tuple[Fraction, Fraction, str]:
    low = _number(match["low"])
    high = _number(match["high"]) if match["high"] else low
    unit = UNIT_WORDS[match["unit"]]
    return (low * 2, high * 2, "week") if unit == "fortnight" else (low, high, unit)


def _number(words: str) -> Fraction:
    if words in NUMBER_WORDS:
        return Fraction(NUMBER_WORDS[words])
    if words.startswith("half"):
        return Fraction(1, 2)
    for sign, part in _VULGAR.items():
        if words.endswith(sign):
            return Fraction(words[:-1] or 0) + part
    if re.search(r"/0+$", words):
        raise Unreadable(f'"{words}" divides by nothing.', 'Write a fraction such as "1/2".')
    return sum((Fraction(piece) for piece in words.split()), Fraction(0))


def _add(
    text: str, one: tuple[Fraction, Fraction, str], two: tuple[Fraction, Fraction, str]
) -> tuple[Fraction, Fraction, str]:
    finer = two[2]
    while one[2] != finer:
        if one[2] not in _FINER:
            raise Unreadable(f'"{text}" mixes lengths that do not add up.', "Write it in one unit.")
        unit, count = _FINER[one[2]]
        one = (one[0] * count, one[1] * count, unit)
    return one[0] + two[0], one[1] + two[1], finer


def _whole(text: str, low: Fraction, high: Fraction, unit: str, about: bool) -> Span:
    while (low.denominator, high.denominator) != (1, 1):
        if unit not in _FINER:
            mend = {"month": "6 weeks", "minute": "1 minute"}[unit]
            raise Unreadable(
                f'"{text}" is not a whole number of {unit}s.', f'Write it otherwise, e.g. "{mend}".'
            )
        unit, count = _FINER[unit]
        low, high = low * count, high * count
        if unit == "day" and (low.denominator, high.denominator) != (1, 1):
            raise Unreadable(f'"{text}" is not a whole number of days.', "Write whole days.")
    if low <= 0:
        raise Unreadable(f'"{text}" is no time at all.', f"Write at least 1 {unit}.")
    if high < low:
        raise Unreadable(f'"{text}" runs backwards.', "Write the shorter time first.")
    span = Span(int(low), int(high), unit, about)
    if span.minutes() > LONGEST_YEARS * 525600:
        raise Unreadable(f'"{text}" is longer than {LONGEST_YEARS} years.', "Write a shorter time.")
    return span


@cache
def _units_elsewhere() -> dict[str, str]:
    """Return the words of other languages for a unit of time, by the unit."""
    units: dict[str, list[str]] = read_data("waits_elsewhere.yml")["units"]
    return {form.lower(): unit for unit, forms in units.items() for form in forms}


def _why_not(text: str, words: str) -> Unreadable:
    if re.match(r"-\s*\d", words):
        return Unreadable(f'"{text}" is less than no time.', 'Write a length such as "2 weeks".')
    few = re.fullmatch(
        rf"(?:for )?(?:an?|some|the)?\s*(few|several|many|some) (?:more )?({UNIT})", words
    )
    if few:
        mend = f'Write a number: "3-4 {few[2]}".'
        return Unreadable(f'"{text}" does not say how many.', mend)
    counted = rf"(?:about )?{NUMBER}(?:\s*(?:-|to)\s*{NUMBER})?"
    said = re.fullmatch(rf"{counted}\s*([^\W\d_]+)", words)
    if said and said[1] == "m":
        return Unreadable(f'"{text}" may be minutes or months.', 'Write "min" or "months".')
    if said and (unit := _units_elsewhere().get(said[1])):
        number = words.removesuffix(said[1]).strip()
        counted_in = unit if number == "1" else f"{unit}s"
        return Unreadable(f'"{text}" is in another language.', f'Write "{number} {counted_in}".')
    if said:
        near = nearest(said[1], UNIT_WORDS)
        mend = f'Did you mean "{near}"?' if near else "Write minutes, hours, days, weeks or months."
        return Unreadable(f'"{said[1]}" is not a unit of time.', mend)
    if re.fullmatch(counted, words):
        return Unreadable(f'"{text}" has no unit.', f'Write what it counts, e.g. "{words} days".')
    mend = 'Write e.g. "40 minutes", "2 weeks" or "8 months".'
    return Unreadable(f'"{text}" is not a length of time.', mend)
