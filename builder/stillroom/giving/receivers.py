"""Whom a caution speaks of: read from its words as the card prints them, the maker's own as well.

"Not for children under five", "not in pregnancy", "never for a dog" keep a gift from whoever is
meant; "keep it from children" keeps it from small ones. Leaves out which cautions a recipe has:
the safety box.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from importlib.resources import files
from typing import Any

import yaml

from stillroom.giving.model import Household

SMALL_MONTHS = 60  # NHS, Start for Life: what can choke and what harms, to five years
ADULT_MONTHS = 216
# the drink is for the grown-ups of a house, and nobody's where there are none: rules.yml
_FOR_ADULTS = frozenset({"alcohol", "may-hold-alcohol", "alcohol-in-food", "alcohol-for-children"})
# how a thing is hung, lit or stood up, and no reason against giving it
_HOW_TO_KEEP = frozenset({"candle", "cords", "not-a-toy", "dry-decoration", "needle-tips"})
_CLAUSES = re.compile(r"[.;:](?:\s|$)|\s–\s")
_AGAINST = re.compile(
    r"\b(?:not|never|no)\b(?! (?:much|often|stand|leave|prick|taste|before driving))"
    r"|\bdo not give\b|\bcan (?:poison|kill|choke|harm)\b|\bunsuitable for\b|\bharms?\b"
    # who has to ask first has not asked yet
    r"|\bask (?:a|your|the) (?:doctor|midwife|pharmacist|vet)\b",
    re.IGNORECASE,
)
_KEEP_FROM = re.compile(
    r"\bkeep\b.*\b(?:from|away)\b|\bout of (?:the )?reach\b|\blocked away\b|\blet a child near\b",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class Receiver:
    """Somebody a caution is against: a child under so many months, a pregnancy, kinds of pets."""

    months: int = 0
    pregnant: bool = False
    pets: frozenset[str] = frozenset()

    def lives_with(self, household: Household) -> bool:
        """Whether a household has such a receiver."""
        young = any(age < self.months for age in household.children)
        return (
            young
            or (self.pregnant and bool(household.pregnant))
            or bool(self.pets & household.pets)
        )


@lru_cache(maxsize=4096)
def receivers_of(caution: str, rule: str = "") -> frozenset[Receiver]:
    """Return whom a caution keeps its thing from; `rule` is that of the safety box, if it has one.

    >>> sorted(one.months for one in receivers_of("Hard sweets. Not for children under five."))
    [60]
    >>> [sorted(one.pets) for one in receivers_of("Contains xylitol. Never for a dog.")]
    [['dog']]
    >>> receivers_of("Keep it cool and upright.")
    frozenset()
    """
    found: set[Receiver] = set()
    if rule == "pet-treat":  # it is for them
        return frozenset()
    for clause in _CLAUSES.split(caution):
        against = _AGAINST.search(clause)
        kept = _KEEP_FROM.search(clause)
        if not against and not kept:
            continue
        for one in _named_in(clause):
            if kept and rule in _HOW_TO_KEEP:
                continue
            if one.months == ADULT_MONTHS and rule in _FOR_ADULTS:
                continue
            grave = kept or (against and against[0].lower().startswith("can"))
            if one.months == ADULT_MONTHS and grave:
                one = replace(one, months=SMALL_MONTHS)
            found.add(one)
    return frozenset(found)


def pets_named(text: str) -> frozenset[str]:
    """Return the kinds of animals that words name, all of them for "pets".

    >>> sorted(pets_named("Biscuits for dogs"))
    ['dog']
    """
    return frozenset(kind for one in _named_in(text) for kind in one.pets)


def _named_in(clause: str) -> list[Receiver]:
    """Return everybody a clause names; what a narrower row has read is taken out of it."""
    left, found = clause, []
    for words, row in _rows():
        if not (match := words.search(left)):
            continue
        left = words.sub(" ", left)
        if row["who"] == "child under":
            years = match.groupdict().get("years")
            found.append(Receiver(months=12 * int(years) if years else row["months"]))
        elif row["who"] == "child":
            found.append(Receiver(months=ADULT_MONTHS))
        elif row["who"] == "pregnant":
            found.append(Receiver(pregnant=True))
        else:
            found.append(Receiver(pets=frozenset(row["kinds"])))
    return found


@cache
def _rows() -> tuple[tuple[re.Pattern[str], dict[str, Any]], ...]:
    text = (files("stillroom.giving") / "receivers.yml").read_text(encoding="utf-8")
    return tuple((re.compile(row["words"], re.IGNORECASE), row) for row in yaml.safe_load(text))
