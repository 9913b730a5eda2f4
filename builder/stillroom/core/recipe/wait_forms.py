"""The words of waits_elsewhere.yml as patterns: lengths, units, numbers, verbs and rhythms.

Leaves out what a sentence of them says: waits_elsewhere.py.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Any

from stillroom.core.lines.number_words import whole_numbers_elsewhere
from stillroom.core.when.spans import Span, as_loosely, parse_span
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import any_word, late_regex
from stillroom.core.words.problems import Unreadable


@cache
def wait_words() -> dict[str, Any]:
    """Return waits_elsewhere.yml."""
    words: dict[str, Any] = read_data("waits_elsewhere.yml")
    return words


@cache
def span_words() -> re.Pattern[str]:
    """Return the pattern of a number or two and a unit, or of a night."""
    units = "|".join(sorted((re.escape(one) for one in unit_forms()), key=len, reverse=True))
    words = "|".join(sorted(map(re.escape, number_forms()), key=len, reverse=True))
    number = rf"(?:\d{{1,3}}|{words})"
    return late_regex(
        rf"\b(?P<low>{number})(?:(?:\s*[-–/]\s*|\s+(?:bis|à|ou|a|o|oder|tot|of|till?|eller|do|lub)\s+)(?P<high>{number}))?(?:(?<=\d)\s*|\s+)"
        rf"(?P<unit>{units})\b|(?P<night>{'|'.join(map(re.escape, words_of('overnight')))})",
        re.IGNORECASE,
    )


def span_of(found: re.Match[str]) -> Span | None:
    """Return the length that span_words found; None for one that is no length of a timeline."""
    if found["night"]:
        return parse_span("1 day")
    low, high = (
        number_forms().get((found[end] or "").lower(), found[end]) for end in ("low", "high")
    )
    count = f"{low}-{high}" if high else str(low)
    try:
        return as_loosely(parse_span(f"{count} {unit_forms()[found['unit'].lower()]}s"), found[0])
    except Unreadable:
        return None


@cache
def unit_forms() -> dict[str, str]:
    """Return every form of a unit of time, to the unit."""
    return {form.lower(): unit for unit, forms in wait_words()["units"].items() for form in forms}


@cache
def number_forms() -> dict[str, str]:
    """Return every number in words, to its figures."""
    more = {form: count for count, forms in wait_words()["numbers"].items() for form in forms}
    return {form: str(count) for form, count in (whole_numbers_elsewhere() | more).items()}


def words_of(name: str) -> list[str]:
    """Return one list of waits_elsewhere.yml."""
    return list(wait_words()[name])


@cache
def any_of(name: str) -> re.Pattern[str]:
    """Return the pattern of words that begin with one of a list."""
    return any_word(f"{word}*" for word in words_of(name))


@cache
def whole(name: str) -> re.Pattern[str]:
    """Return the pattern of the whole words of a list."""
    return any_word(words_of(name))
