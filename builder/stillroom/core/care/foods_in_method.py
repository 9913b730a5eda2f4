"""Foods that only the method names: they lie in the jar as surely as those of the list.

Only those that a rule would speak of are looked for. A word counts as the food it stands for: not
in a denial, not where it is taken out, not as a shape, a colour or a size. Leaves out their weight,
which nobody says.
"""

from __future__ import annotations

import re
from functools import cache

from stillroom.core.care.sentences import affirmed_clauses, split_sentences
from stillroom.core.recipe import Recipe
from stillroom.core.staple_table import Staple, find_staple, staples_tagged

_SOUGHT = (
    "garlic",
    "honey",
    "xylitol",
    "essential-oil",
    "cyanide-kernel",
    "raw-elder",
    "unpasteurised",
)
_TAKEN_OUT = re.compile(
    r"\b(?:discard|remove|throw|compost|pick out|take out|lift out|cut (?:off|out)|bin"
    r"|strip off)\w*\b",
    re.IGNORECASE,
)
_NO_FOOD_BEHIND = re.compile(
    r"^(?:[- ](?:colou?red|shaped?|sized?|scented|press|crusher|jars?|dippers?|spoons?"
    r"|gold|cutters?|bread|salt"
    r"|powder|granules|brown|like))",
    re.IGNORECASE,
)
_STONES = re.compile(
    r"\b(?:cherry|apricot|peach|plum|damson|sloe) (?:stones?|kernels?|pits?)\b"
    r"|\bkernels? (?:of|from) (?:the )?"
    r"(?:stones?|cherr\w+|apricots?|peach\w*|plums?)\b"
    r"|\bcrack(?:ed|ing)? (?:\w+ ){0,4}(?:stones?|kernels?|pits)\b",
    re.IGNORECASE,
)


def foods_in_method(recipe: Recipe) -> tuple[tuple[Staple, str], ...]:
    """Return each food that only the method names, with the clause that brings it in."""
    listed = " ".join(f"{one.item} {one.note}" for one in recipe.ingredients).lower()
    found: dict[str, tuple[Staple, str]] = {}
    for step in recipe.method:
        for sentence in split_sentences(step.text):
            for clause in affirmed_clauses(sentence):
                if _TAKEN_OUT.search(clause):
                    continue
                for staple in _of_clause(clause, listed):
                    found.setdefault(staple.name, (staple, clause.strip()))
    return tuple(found.values())


def _of_clause(clause: str, listed: str) -> list[Staple]:
    named = []
    for hit in _pattern().finditer(clause):
        staple = _by_word(hit[1].lower())
        own = hit[1].lower().removesuffix("s")
        if own not in listed and not _NO_FOOD_BEHIND.match(clause[hit.end() :]):
            named.append(staple)
    if _STONES.search(clause) and "stone" not in listed:
        named += [one for one in staples_tagged("cyanide-kernel")][:1]
    return named


@cache
def _words() -> dict[str, Staple]:
    return {
        word.lower(): staple
        for tag in _SOUGHT
        for staple in staples_tagged(tag)
        for word in (staple.name, *staple.also)
    }


def _by_word(word: str) -> Staple:
    table = _words()
    found = table.get(word) or table.get(word.removesuffix("s")) or find_staple(word)
    assert found is not None
    return found


@cache
def _pattern() -> re.Pattern[str]:
    either = "|".join(sorted(map(re.escape, _words()), key=len, reverse=True))
    return re.compile(rf"\b((?:{either})s?)\b", re.IGNORECASE)
