"""Numbers as cooks write them, read where they stand: "1½", "1 1/2", "half a", "1,5", "4- to 5-".

Each is exact. What could be two numbers is asked, never guessed: the marks of decimals and
thousands are those of the book's language. Leaves out units: line_measures.py.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from math import gcd

from stillroom.core.amounts.units import unit_words
from stillroom.core.lines.number_words import (
    read_and_part,
    read_dozen,
    read_half_behind,
    read_number_words,
)
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

MOST_DIGITS = 9  # a number of more digits is a slip of the pen, or worse
VULGAR = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒"
_DIGITS = late_regex(r"[0-9]+(?:[.,'’\u2009\u202f][0-9]+)*|(?<![0-9])\.[0-9]{1,3}(?![0-9])")
# "1 000 g" is a thousand; "1 400 g tin" is one tin, so that other figures are a thousand's only
# where the language parts thousands by a space
_SPACED = late_regex(
    r"[1-9][0-9]{0,2}(?P<groups>(?:[ \u00a0][0-9]{3})+)(?![0-9/⁄∕½⅓⅔¼¾⅛]|[.,][0-9])"
)
_SLASHED = late_regex(r"([0-9]+)\s?[/⁄∕]\s?([0-9]+)")
_JOINS_FRACTION = late_regex(r"(?:\s+(?:and|&)\s+|\s*-\s*|\s*)(?=[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒0-9])")
# what is a number of the food itself: "70% chocolate", "1 percent milk", "00 flour", "7-Up"
_FOODS_OWN = late_regex(
    r"\s*(?:[-–]\s*\d+\s*)?(?:%|per\s?cent\b|°|º)|-[A-Z]"
    r"|-(?:karat|carat|grain|year|day|hour|bean|spice|herb|seed|ply|bone)s?\b"
    r"|[\s-]+(?:épices?|spezie|especias|kruiden)\b"
)
# a thousand of these is more than a kitchen holds
_LARGE_UNIT = late_regex(
    r"(?:\s*(?:-|–|to|bis|à|a|tot)\s*[\d.,]+)?[\s-]*(?:kgs?|kilos?|kilogra\w+|l|lit(?:re|er)s?|litros?|litri"
    r"|lbs?|pounds?|ozs?|ounces?|fl\.?\s?oz|cups?|pints?|quarts?|gallons?|tbsps?|tsps?|tablespoons?|teaspoons?)\b",
    re.IGNORECASE,
)
# measures that scales and jugs show in decimals; "2.3 EL" may be two or three
_METRIC_UNIT = late_regex(
    r"[\s-]*(?:[kdh]?g|gr|dag|kilos?|kilogra\w+|gram\w*|[mcd]?l|lit(?:re|er)s?|lit(?:ro|ri|ros|ra|ry|rów)|quilos?|chil[io])\b",
    re.IGNORECASE,
)
_COOKS_PARTS = frozenset({2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 32, 64, 100})
_PARTS_OF_ONE = 3
_OF_ONE = late_regex(
    r"\s*(?:d[i'’]|[lL]\b|kg\b|litro|chilo|tazza|cucchiaio|cucchiaino|bicchiere|bustina)",
    re.IGNORECASE,
)
_SLIP = late_regex(r"[.,]{2}|[.,](?=\d)")
# what stands close behind a number and makes it none: "½½", "1/2/3"
_NO_NUMBER = late_regex(rf"[{VULGAR}]|[/⁄∕]\s?[0-9{VULGAR}]")
_POWER = late_regex(r"[eE][+-]?[0-9]+")
_BETWEEN = late_regex(r"(?P<unit>-?\s*)(?:-|–|—|to|or)\s*", re.IGNORECASE)
# "2 à 3", "2 bis 3", "2 o 3": as the book's language joins the ends of a range
_JOINED = {
    "de": "bis|oder|to",
    "fr": "à|ou",
    "es": "a|o",
    "it": "a|o",
    "nl": "tot|of|à",
    "sv": "till|eller|à",
    "da": "til|eller|à",
    "nb": "til|eller",
    "no": "til|eller",
    "pt": "a|ou",
    "pl": "do|lub|albo",
}
# what babel says of these; to ask it is to read all that it knows of a language
_AS_ENGLISH = frozenset({"en", "en_GB", "en_US"})
_HOW = 'Write "3", "2.5", "1/2" or "1 1/2".'


@dataclass(frozen=True)
class Marks:
    """How a language writes decimals and thousands: "." and "," in English."""

    decimal: str
    group: str
    language: str = "en"


@dataclass(frozen=True)
class Range:
    """A number or a range as it stands in a line: exact ends, and its characters."""

    low: Fraction
    high: Fraction
    start: int
    end: int


@cache
def marks_of(language: str) -> Marks:
    """Return a language's marks, by the Unicode locale data that babel carries.

    >>> marks_of("en_GB"), marks_of("de_DE").decimal
    (Marks(decimal='.', group=',', language='en'), ',')
    """
    if language in _AS_ENGLISH:
        return Marks(".", ",")
    from babel.numbers import get_decimal_symbol, get_group_symbol  # late: English needs neither

    return Marks(
        get_decimal_symbol(language), get_group_symbol(language), language.partition("_")[0]
    )


def fraction_of(sign: str) -> Fraction:
    """Return a vulgar fraction's value.

    >>> fraction_of("¾")
    Fraction(3, 4)
    """
    top, bottom = unicodedata.normalize("NFKC", sign).split("⁄")
    return Fraction(int(top), int(bottom))


def read_number(text: str, at: int, marks: Marks) -> tuple[Fraction, int] | None:
    """Read one number that begins at `at`; None where none does. Raises Unreadable for a doubt.

    >>> read_number("1 1/2 cups", 0, marks_of("en_GB"))
    (Fraction(3, 2), 5)
    """
    found = _number_at(text, at, marks)
    if found and (odd := _NO_NUMBER.match(text, found[1])) and not text[at].isalpha():
        raise Unreadable(f'"{text[at : odd.end()]}" is not a number.', _HOW)
    return found


def _number_at(text: str, at: int, marks: Marks) -> tuple[Fraction, int] | None:
    sign = text[at : at + 1]
    if sign and sign in VULGAR:
        return fraction_of(sign), at + 1
    slashed = _SLASHED.match(text, at)
    if slashed:
        _refuse_two_counts(slashed, text[slashed.end() :], marks)
        return _slashed(slashed), slashed.end()
    whole = _DIGITS.match(text, at)
    if whole is None:
        spoken = read_number_words(text, at, marks.language)
        part = _PART_OF_ONE.match(text, at) if spoken and spoken[0] == 1 else None
        return _number_at(text, part.end(), marks) if part else spoken
    spaced = _SPACED.match(text, at)
    if spaced and (marks.group.isspace() or spaced["groups"][1] == "0"):
        return Fraction(int("".join(spaced[0].split()))), spaced.end()
    if _FOODS_OWN.match(text, whole.end()) or re.fullmatch("0{2,}", whole[0]):
        return None
    if power := _POWER.match(text, whole.end()):
        what = f'"{text[at : power.end()]}" is a number as a calculator shows it.'
        raise Unreadable(what, "Write it out in figures.")
    if _SLIP.match(text, whole.end()):
        raise Unreadable(f'"{text[at : whole.end() + 4].strip()}" is not a number.', _HOW)
    value = _point_decimal(text, whole, marks)
    if value is None:
        value = _decimal(whole[0], marks, bool(_LARGE_UNIT.match(text, whole.end())))
    half = read_half_behind(text, whole.end(), marks.language) if value == 1 else None
    found = half or _with_fraction(text, whole.end(), value, marks)
    return found or (value, whole.end())


# "einer 1/2 Zitrone", "zest of a ½ lemon"; "a 1/2 inch piece" is a whole one of that size
_PART_OF_ONE = late_regex(
    r"(?:an?|ein(?:e[rmn]?)?|une?|una|een|en|ett|et|uma?)\s+"
    rf"(?=(?:[{VULGAR}]|1/[2-8]|[23]/[345])(?![\d/])"
    r"(?!\s?-?\s?(?:inch\w*|in\b|[cm]m\b|[\"”]|k?g\b|lbs?\b|pounds?\b|oz\b|ounces?\b|[dcm]?l\b|lit\w+"
    r"|pints?\b)))",
    re.IGNORECASE,
)


def _with_fraction(
    text: str, at: int, whole: Fraction, marks: Marks
) -> tuple[Fraction, int] | None:
    """Read the fraction after a whole number: "1½", "1 1/2", "1-1/2", "1 and ½", "2 et demi"."""
    spoken = read_and_part(text, at, marks.language)
    if spoken:  # "1 and three quarters"
        return whole + spoken[0], spoken[1]
    join = _JOINS_FRACTION.match(text, at)
    if join is None or whole.denominator != 1:
        return None
    sign = text[join.end() : join.end() + 1]
    if sign and sign in VULGAR:
        return whole + fraction_of(sign), join.end() + 1
    slashed = _SLASHED.match(text, join.end()) if join.end() > at else None
    if slashed and int(slashed[1][:MOST_DIGITS]) < int(slashed[2][:MOST_DIGITS]):
        return whole + _slashed(slashed, beside=True), slashed.end()
    return None


def _slashed(found: re.Match[str], beside: bool = False) -> Fraction:
    top, bottom = (_whole(part) for part in found.groups())
    if bottom == 0:
        raise Unreadable(f'"{found[0]}" divides by nothing.', 'Write a fraction such as "1/2".')
    lead, last = divmod(top, 10)
    if not beside and lead and 0 < last < bottom < 10:
        raise Unreadable(
            f'"{found[0]}" could be {lead} {last}/{bottom} or {top} divided by {bottom}.',
            f'Write "{lead} {last}/{bottom}", or the decimal.',
        )
    return Fraction(top, bottom)


def _measured(rest: str) -> bool:
    """Whether a unit stands next: "7/8 cup" is a part of one."""
    word = re.match(r"[\s-]*([^\W\d]+)", rest)
    return word is not None and word[1].lower() in unit_words("us")


def _refuse_two_counts(found: re.Match[str], rest: str, marks: Marks) -> None:
    """Ask about "6/8 limoni", "10/11 drops": no cook's fraction, and perhaps two counts."""
    top, bottom = (_whole(part) for part in found.groups())
    if not 0 < top < bottom or "⁄" in found[0]:
        return
    odd = gcd(top, bottom) > 1 or bottom not in _COOKS_PARTS
    # three quarters of one are common, four fifths of one are four to five of them
    many = top > _PARTS_OF_ONE and not _measured(rest)
    italian = marks.language == "it" and not _OF_ONE.match(rest)
    counts = (italian or many) and top + 1 == bottom
    if odd or (counts and top > 1):
        part = Fraction(top, bottom)
        raise Unreadable(
            f'"{found[0]}" could be {top} to {bottom}, or {top} divided by {bottom}.',
            f'Write "{top}-{bottom}", or "{part}" if it is a part of one.',
        )


def _whole(digits: str) -> int:
    if len(digits) > MOST_DIGITS:
        raise Unreadable(
            f'"{digits[:12]}..." is more than a kitchen holds.', "Write a number of fewer digits."
        )
    return int(digits)


_POINT = late_regex(r"(\d{1,3})\.(\d{1,2})|0\.\d{3}")


def _point_decimal(text: str, digits: re.Match[str], marks: Marks) -> Fraction | None:
    """Read "1.5 kg" and "0.250 kg" where a comma is the decimals' own sign: no thousands are so.

    None where there is a doubt: "2.3 Zwiebeln" may be two or three.
    """
    found = _POINT.fullmatch(digits[0]) if marks.decimal == "," else None
    if found is None:
        return None
    next_to_it = found[1] is not None and int(found[1]) + 1 == int(found[2])
    if next_to_it and not _METRIC_UNIT.match(text, digits.end()):
        return None
    return Fraction(digits[0])


def _decimal(digits: str, marks: Marks, large: bool = False) -> Fraction:
    """Read digits with the language's marks; what could be read in two ways is asked.

    `large` says that the unit is one of which no kitchen has a thousand: "1.575 kg" is no 1575.
    """
    if digits.startswith("."):
        return Fraction(f"0{digits}")
    pieces = re.split(r"[.,'’ \u00a0\u2009\u202f]", digits)
    for piece in pieces:
        _whole(piece)
    if len(pieces) == 1:
        return Fraction(int(digits))
    signs = re.sub(r"[0-9]", "", digits)
    grouped = all(len(piece) == 3 for piece in pieces[1:]) and 1 <= len(pieces[0]) <= 3
    decimal_last = signs[-1] == marks.decimal and marks.decimal not in signs[:-1]
    if len(signs) == 1 and decimal_last:
        if grouped and int(pieces[0]) and not large:
            _ask(digits, f"{pieces[0]}{marks.decimal}{pieces[1].rstrip('0') or '0'}", pieces)
        return Fraction(f"{pieces[0]}.{pieces[1]}")
    spaces = set(signs) <= set("'’ \u00a0\u2009\u202f")
    if large and grouped and len(signs) == 1 and signs == marks.group:
        _ask(digits, f"{pieces[0]}{marks.decimal}{pieces[1].rstrip('0') or '0'}", pieces)
    if grouped and (spaces or (set(signs) == {marks.group} and pieces[0] != "0")):
        return Fraction(int("".join(pieces)))
    if decimal_last and len(set(signs[:-1])) == 1:
        head = [piece for piece in pieces[1:-1]]
        if all(len(piece) == 3 for piece in head):
            return Fraction(f"{''.join(pieces[:-1])}.{pieces[-1]}")
    if len(signs) == 1 and signs in ".,":
        _ask(digits, f"{pieces[0]}{marks.decimal}{pieces[1]}", pieces)
    raise Unreadable(f'"{digits}" is not a number.', _HOW)


def _ask(digits: str, as_decimal: str, pieces: list[str]) -> None:
    if len(pieces[-1]) != 3:  # nobody parts thousands so
        raise Unreadable(f'"{digits}" has the wrong sign in it.', f'Write "{as_decimal}".')
    raise Unreadable(
        f'"{digits}" could be read in two ways.',
        f'Write "{as_decimal.rstrip(".,")}" or "{"".join(pieces).lstrip("0") or "0"}".',
    )


def joins_range(text: str, at: int, marks: Marks) -> int | None:
    """Return where the second end of a range begins: behind "à", "bis" or "to"; else None."""
    found = _joined(marks.language).match(text, at)
    return found.end() if found else None


@cache
def _joined(language: str) -> re.Pattern[str]:
    return re.compile(rf"\s+(?:{_JOINED.get(language, 'to')})\s+", re.IGNORECASE)


def read_range(text: str, at: int, marks: Marks) -> Range | None:
    """Read a number or a range that begins at `at`: "4-5", "4 to 5", "4- to 5-pound", "1 or 2".

    Raises Unreadable for a range that runs backwards and for what could be two numbers.
    """
    first = read_number(text, at, marks)
    if first is None:
        return None
    low, end = first
    dozen = read_dozen(text, end, low, marks.language) if low.denominator <= 2 else None
    if dozen:
        return Range(dozen[0], dozen[0], at, dozen[1])
    between = _BETWEEN.match(text, end) or _joined(marks.language).match(text, end)
    second = read_number(text, between.end(), marks) if between else None
    if (
        between is None
        or second is None
        or (not text[between.end()].isalnum() and text[between.end()] not in VULGAR)
    ):
        return Range(low, low, at, end)
    if text[between.end()].isalpha() and second[0] == 1:
        return Range(low, low, at, end)  # "2 or a few more"
    high, stop = second
    if high < low:
        written = text[at:stop]
        raise Unreadable(
            f'The range "{written}" runs backwards.', "Write the smaller number first."
        )
    return Range(low, high, at, stop)
