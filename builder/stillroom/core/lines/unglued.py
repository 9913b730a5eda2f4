"""A measure that a page lost the blank behind: "175gcurrants", "2tbspsugar", "3eggs".

Parted where one unit alone leaves the name of a known food; else the line stays as it is, and is
asked about as what it is. Leaves out amounts: measures.py.
"""

from __future__ import annotations

from functools import lru_cache

from stillroom.core.amounts.units import System, plain_nouns, unit_words
from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.words.patterns import late_regex

_GLUED = late_regex(r"(?<![A-Za-z])[\d½⅓⅔¼¾⅛](?P<word>[A-Za-zÀ-ÿ]{4,})")
# "1æg", "3egg": a short word that is no unit
_SHORT = late_regex(r"(?<![A-Za-z\d.,/])\d{1,2}(?P<word>[A-Za-zÀ-ÿ]{2,3})\b")
_REST = late_regex(r"[^,;(]*")
_SIZES = frozenset(
    {"small", "medium", "large", "whole", "fresh", "ripe", "medium-sized", "heaped", "level"}
)
_CAPITAL_WITHIN = late_regex(r"(?:small|medium|large|whole|fresh|ripe)(?=[A-Z])")
_LONE = frozenset({"g", "l"})
"""Units of one letter that pages glue; other letters begin too many words."""


def parted_from_its_food(text: str, system: System, language: str = "en") -> str:
    """Return a line with a blank between a unit, or a count, and the food behind it.

    >>> parted_from_its_food("175gcurrants", "metric"), parted_from_its_food("3eggs", "metric")
    ('175g currants', '3 eggs')
    >>> parted_from_its_food("1æg", "metric", "da"), parted_from_its_food("5ml rum", "metric")
    ('1 æg', '5ml rum')
    >>> parted_from_its_food("2tbspfoo", "metric"), parted_from_its_food("500grams", "metric")
    ('2tbspfoo', '500grams')
    """
    short = _SHORT.match(text.lstrip())
    if short and not _is_unit(short["word"], system) and _is_food(short["word"], language):
        bare = text.lstrip()
        return f"{bare[: short.start('word')]} {bare[short.start('word') :]}"
    found = _GLUED.search(text)
    word = found["word"] if found else ""
    if found is None or _is_unit(word, system) or word in plain_nouns():
        return text
    rest = _REST.match(text, found.end())
    behind = rest[0] if rest else ""
    if word.lower() in _SIZES:  # "1small apple"
        place = found.start("word")
        return f"{text[:place]} {text[place:]}"
    capital = _CAPITAL_WITHIN.match(word)  # "8wholeCloves"
    if capital and find_staple(word[capital.end() :] + behind):
        place = found.start("word")
        return f"{text[:place]} {capital[0]} {text[place + capital.end() :]}"
    splits = [
        at
        for at in range(len(word) - 2)
        if (at == 0 or _is_unit(word[:at], system)) and find_staple(word[at:] + behind)
    ]
    if splits[:1] == [0]:  # "2green peppers": no gram of "een peppers"
        splits = [0]
    if len(splits) != 1:
        return text
    place = found.start("word") + splits[0]
    return f"{text[:place]} {text[place:]}"


@lru_cache(maxsize=256)
def _is_food(word: str, language: str) -> bool:
    return read_food(word, Larder(language=language)).food is not None


def _is_unit(word: str, system: System) -> bool:
    known = word.lower() in unit_words(system) or word in unit_words(system)
    return known and (len(word) > 1 or word in _LONE)
