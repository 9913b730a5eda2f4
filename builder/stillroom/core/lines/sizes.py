"""What stands before or beside a thing as its amount or size, read as an ingredient line is.

For what a recipe makes, its vessels and containers, and an ingredient's own amount: the same
numbers, units, sums and pairs as line_amounts.py. Leaves out a line with its food: line_reader.py.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass, replace

from stillroom.core.amounts.quantities import UNMEASURED, Amount, Ratio, Unmeasured, parse_amount
from stillroom.core.amounts.units import System, counted_nouns, find_unit
from stillroom.core.lines.amounts import Measured, read_measured
from stillroom.core.lines.measures import read_measure
from stillroom.core.lines.numbers import marks_of
from stillroom.core.lines.pairs import compare
from stillroom.core.lines.parts_of_line import vague_words
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

# a comma between figures is a decimal or a thousand, and no end of a part
_COMMA = late_regex(r"\s*(?:(?<!\d),|,(?!\d))\s*")
_NAMED = late_regex(
    r"(?P<name>.*?[^\s\d,(])(?:,?\s+(?:of|holding|à|mit|de|di|da|van|von)\b|,|\s*\(\s*(?:à\s)?|\s)\s*"
    r"(?=(?:about\s+|ca?\.?\s*)?[\d½¼¾⅓⅔⅛.])",
    re.IGNORECASE,
)
_FIGURE = late_regex(r"\d|[½⅓⅔¼¾⅛]")
_PER = late_regex(r"\bper\b|\bfor (?:each|every)\b|\bto each\b")
_BEGINS_IN_FIGURES = late_regex(
    r"(?:(?:about|roughly|around|c\.)\s*)?[\d½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]", re.IGNORECASE
)
_TWO_FIGURES = late_regex(r"(?:\D*\s)?\d{1,3}[ \u00a0]\d{3}\s?[a-z]", re.IGNORECASE)
_HOW_TO_WRITE = 'Write a number and a unit, such as "250 g", "1 1/2 tsp", "4-5" or "to taste".'


@dataclass(frozen=True)
class Sized:
    """An amount at the head of a text, what was said with it, and the words after it."""

    amount: Amount
    rest: str
    said: str = ""
    each: Amount | None = None
    also: tuple[Amount, ...] = ()


def comma_parts(text: str, most: int = 0) -> list[str]:
    """Split at commas, but never inside a number.

    >>> comma_parts("jar, 0,5 l, clip-top")
    ['jar', '0,5 l', 'clip-top']
    """
    return [part.strip() for part in _COMMA.split(text, maxsplit=most)]


def bare_words(text: str) -> str:
    """Return a text with single spaces; a narrow one between figures is a thousand's and stays."""
    if not text.isascii():  # the digits of other scripts
        text = "".join(
            str(unicodedata.decimal(sign)) if sign.isdecimal() else sign for sign in text
        )
    return re.sub(r"(?:(?![\u2009\u202f](?<=\d.)\d{3})\s)+", " ", text).strip()


def read_leading(text: str, system: System, language: str = "en_GB") -> Sized | None:
    """Read the amount at the head of a text; None where there is none. Raises Unreadable."""
    bare = bare_words(text)
    found = read_measured(bare, 0, system, marks_of(language))
    if found is None or vague_words().match(bare):
        return None
    compare(found.each or found.amount, found.also)
    rest = bare[found.end :].strip()
    _refuse_number_behind(bare, rest, found)
    return Sized(found.amount, rest, found.fullness, found.each, found.also)


def read_first(
    text: str, system: System, language: str = "en_GB", in_words: bool = False
) -> tuple[Amount | None, str]:
    """Split a text into its first amount and all that follows, sizes of packs among it.

    A number in words is no amount here unless `in_words`. Raises Unreadable.
    """
    bare = bare_words(text)
    if not in_words and not _BEGINS_IN_FIGURES.match(bare):
        return None, bare
    marks = marks_of(language)
    whole = read_measured(bare, 0, system, marks)
    if whole and whole.each is None and not whole.fullness:
        return whole.amount, bare[whole.end :].strip()
    first = read_measure(bare, 0, system, marks)
    if first is None:
        return None, bare
    rest = bare[first.end :].strip()
    if not first.fullness:
        return first.amount, rest
    noun = counted_nouns()[first.amount.noun][first.amount.high > 1] if first.amount.noun else ""
    words = " ".join(word for word in (first.fullness, noun, rest) if word)
    return replace(first.amount, noun=""), words


def _refuse_number_behind(text: str, rest: str, found: Measured) -> None:
    """Ask where a number stands behind a number: "1 500 ml" is two sizes, or one."""
    behind = re.match(r"[-/]?\s?[\d½⅓⅔¼¾⅛]+", rest) and not found.amount.noun
    if behind or (found.each and _TWO_FIGURES.match(text)):
        raise Unreadable(
            f'"{text}" could be read in two ways.',
            'Write one number with its unit: "1500 g", or "1 x 500 g".',
        )


def find_size(text: str, system: System, language: str = "en_GB") -> tuple[str, Sized] | None:
    """Find the size in words such as "jar of 200 ml" or "jar (200 ml)": its name and the size."""
    named = _NAMED.match(text)
    sized = read_leading(text[named.end() :], system, language) if named else None
    if named is None or sized is None or not sized.amount.unit:
        return None
    return named["name"].strip(), replace(sized, rest=sized.rest.strip(" )"))


def has_figure(text: str) -> bool:
    """Whether a number is written in figures anywhere in a text."""
    return bool(_FIGURE.search(text))


def read_amount(text: str, system: System, language: str = "en_GB") -> Sized | Ratio | Unmeasured:
    """Read a whole amount with all that was said of it; raises Unreadable for what is left over.

    >>> said = read_amount("225g/8oz", "metric")
    >>> str(said.amount.low), said.also[0].unit
    ('225', 'oz')
    """
    bare = bare_words(str(text))
    if bare.lower() in UNMEASURED or _PER.search(bare):
        other = parse_amount(bare, system)
        assert not isinstance(other, Amount)
        return other
    sized = read_leading(bare, system, language)
    if sized is None:
        raise Unreadable(f'"{bare}" is not an amount.', _HOW_TO_WRITE)
    if sized.amount.low <= 0:
        raise Unreadable(f'"{bare}" is nothing at all.', "Write an amount above 0.")
    if sized.rest:
        find_unit(sized.rest, system)
        raise Unreadable(f'"{sized.rest}" is left over after the amount.', _HOW_TO_WRITE)
    return sized
