"""The words of method_words.yml, and how a clause is held against them.

Leaves out which foods a method names: foods_in_method.py.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from typing import Any

from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import any_word, clause_regex, late_regex

# "like skin on milk", "smells of vinegar and apples"; "if you like, add honey" compares nothing
_LOOSELY = clause_regex(
    r"(?<!you )(?<!they )\blike (?:(?!add|stir|put|pour|mix|with)\w+ ){0,3}$"
    r"|\b(?:smell|taste)\w* (?:\w+ )?of (?:\w+ ){0,3}$"
    # "grandi come delle noci", "gros comme une noix", "groß wie Nüsse"
    r"|\b(?:grand[ei]|gross?[aei]s?|gros|grosses|groß|grandes?|stora?|store|groot|duż\w+|wielkie)"
    r" (?:come|comme|wie|como|som|als|quanto|jak) (?:[^\W\d]+ ){0,2}$",
    re.IGNORECASE,
)
_WORD = late_regex(r"[^\W\d_]+")
_NEAR = 200
"""Letters before a food that can make a comparison of it."""
_LEADS = r"(?:(?:then|and|now|next|gently|slowly|lightly|finally|first|meanwhile|generously)\s+)*"


@cache
def _table() -> dict[str, Any]:
    table: dict[str, Any] = read_data("method_words.yml", "method")
    return table


@cache
def method_words(name: str) -> frozenset[str]:
    """Return one list of the file."""
    return frozenset(_table()[name])


@cache
def no_food_in(language: str) -> frozenset[str]:
    """Return the words of a language that only look like a food; of most languages none is known.

    >>> "moule" in no_food_in("fr"), no_food_in("fi")
    (True, frozenset())
    """
    return frozenset(_table()["no_food_in"].get(language, ()))


@cache
def open_words(language: str) -> Mapping[str, str]:
    """Return what words of a language that may mean two foods bring in by a method.

    >>> open_words("es")["nueces"], dict(open_words("pt"))
    ('nut', {})
    """
    found: dict[str, str] = _table()["open_words"].get(language, {})
    return found


@cache
def _pattern(name: str) -> re.Pattern[str]:
    words: list[str] = _table()[name]
    return any_word(words)


def has_phrase(text: str, name: str) -> bool:
    """Whether a text holds one of the words of a list.

    >>> has_phrase("Serve it with cheese", "served"), has_phrase("Stir in the cheese", "served")
    (True, False)
    """
    return bool(_pattern(name).search(text))


def find_phrase(text: str, name: str) -> re.Match[str] | None:
    """Return where a text first holds one of the words of a list.

    >>> find_phrase("Stir and serve it", "served")[0]
    'serve'
    """
    return _pattern(name).search(text)


def is_elsewhere(sentence: str) -> bool:
    """Whether a sentence is in another language than English, by its smallest words.

    >>> is_elsewhere("Laat ze op een rooster afkoelen"), is_elsewhere("Roast the rooster")
    (True, False)
    """
    words = _WORD.findall(sentence.lower())
    if method_words("elsewhere").isdisjoint(words):
        return False
    other = sum(map(method_words("elsewhere").__contains__, words))
    return other >= 2 and other > sum(map(method_words("english").__contains__, words))


_SHARES_ITS_NOUN = clause_regex(
    r"(?:,\s+[\w-]+){0,3},?\s+or\s+[\w-]+\s+(?:yeasts?|vinegars?|bottles?|corks?|glasses)\b",
    re.IGNORECASE,
)
_SHARES_ITS_VESSEL = clause_regex(
    r"\s+or\s+[\w-]+\s+(?:jars|bottles|pots|tins|glasses)\b", re.IGNORECASE
)


def shares_its_noun(behind: str) -> bool:
    """Whether a drink's name goes with a later noun: "wine, champagne or mead yeast" is no wine.

    >>> shares_its_noun(", champagne or mead yeast"), shares_its_noun(", sugar and yeast")
    (True, False)
    """
    return bool(_SHARES_ITS_NOUN.match(behind))


def is_no_food(behind: str) -> bool:
    """Whether the words behind a food make it a tool, a shape or a colour.

    >>> is_no_food(" cups on the table"), is_no_food("-sized balls"), is_no_food(" and sugar")
    (True, True, False)
    """
    if _SHARES_ITS_VESSEL.match(behind):  # "old mustard or honey jars"
        return True
    return bool(re.match(r"^(?:['’]s)?[\s-]", behind)) and bool(
        _pattern("no_food_behind").match(re.sub(r"^(?:['’]s)?[\s-]+", "", behind))
    )


def is_a_vessel(word: str) -> bool:
    """Whether a word behind a counted food makes a vessel of it: "6 honey jars".

    >>> is_a_vessel("jars,"), is_a_vessel("slices")
    (True, False)
    """
    return word.casefold().strip(".,;:-'’\"”") in method_words("vessels")


def is_a_comparison(before: str) -> bool:
    """Whether the words before a food only compare.

    >>> is_a_comparison("roll into balls the size of a "), is_a_comparison("stir in a ")
    (True, False)
    >>> is_a_comparison("it wrinkles like skin on "), is_a_comparison("if you like add ")
    (True, False)
    """
    before = before[-_NEAR:]
    if _LOOSELY.search(before):
        return True
    found = list(_pattern("no_food_before").finditer(before))
    return bool(found) and not before[found[-1].end() :].strip(" -'’")


def heads_a_verb(clause: str, start: int, end: int, spoken: str) -> bool:
    """Whether a word at the head of a clause is what is done, and leaves nothing behind.

    >>> heads_a_verb("Cream the butter", 0, 5, "cream")
    True
    >>> heads_a_verb("Butter a tin", 0, 6, "butter")
    False
    """
    if " " in spoken or spoken in method_words("leaves_a_little"):
        return False
    if not re.fullmatch(rf"\W*{_LEADS}", clause[:start], re.IGNORECASE):
        return False
    behind = re.match(r"\s+(\w+)", clause[end:])
    return bool(behind) and behind[1].casefold() in method_words("done_to")  # type: ignore[index]
