"""What was looked at for the safety box, and what was found: the why of every silence.

The questions are looked_at.yml. Three answers are kept apart: said above, not found, and could not
be told because a food is not known. Leaves out the cautions themselves: safety.py.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Any, Literal

from stillroom.core.allergens.of_foods import is_flavouring_in_spirit
from stillroom.core.care.safety_facts import SafetyFacts, Thing
from stillroom.core.care.unchecked import acidity_not_known
from stillroom.core.method.keeping_said import PLACE_WORDS
from stillroom.core.words.data_files import read_data

Answer = Literal["said above", "not found", "could not be told"]
_OPEN: Answer = "could not be told"
_AGAIN = "for the same reason"
# a longer list is no reading matter; the label names everything
_MOST_NAMED = 5


@dataclass(frozen=True)
class Look:
    """One question: what it asks, the answer, and what was found."""

    what: str
    answer: Answer
    found: str


@cache
def _questions() -> tuple[Mapping[str, Any], ...]:
    return tuple(read_data("looked_at.yml", "care"))


def look_at(facts: SafetyFacts, spoken: Mapping[str, str]) -> tuple[Look, ...]:
    """Return every question that is asked of such a recipe; `spoken` holds titles by their rule.

    A rule set aside by the maker has spoken too.
    """
    asked = (one for one in _questions() if facts.recipe.kind.eaten_by in one["of"])
    answers: list[Look] = []
    for one in asked:
        answer = _answer(one, facts, spoken)
        # what is not known is named once, and not at each question that it leaves open
        told = any(before.answer == answer.answer == _OPEN for before in answers)
        again = told and any(before.found == answer.found for before in answers)
        answers.append(replace(answer, found=_AGAIN) if again else answer)
    return tuple(answers)


def rules_looked_at() -> frozenset[str]:
    """Return every rule that a question names; a test holds them against the table."""
    return frozenset(rule for one in _questions() for rule in one["rules"])


def _answer(question: Mapping[str, Any], facts: SafetyFacts, spoken: Mapping[str, str]) -> Look:
    what = str(question["what"])
    said = [spoken[rule] for rule in question["rules"] if rule in spoken]
    if said:
        return Look(what, "said above", _join(said, "; "))
    unknown = [word for thing in facts.things for word in thing.unknown]
    of_jars = "low-acid-sealed" in question["rules"] and not unknown
    if doubted := acidity_not_known(facts.recipe) if of_jars else ():
        return Look(what, "could not be told", f"{_join(doubted)}: how sour is not known")
    if unknown:
        return Look(what, "could not be told", f"{_join(unknown)}: not known to the book")
    found = with_alcohol(facts) if "alcohol" in question["tags"] else facts.tagged(question["tags"])
    things = [thing.item for thing in found]
    keeps = facts.recipe.keeps.unopened
    fills = {
        "items": _join(things),
        "sour": _join([thing.item for thing in facts.tagged(["acid"])]) or "nothing",
        "where": PLACE_WORDS[facts.place],
        "keeps": str(keeps) if keeps else "A time that is not stated",
    }
    return Look(what, "not found", str(question["with" if things else "none"]).format_map(fills))


def with_alcohol(facts: SafetyFacts) -> tuple[Thing, ...]:
    """Return what holds alcohol, a flavouring that is made of spirit among it."""
    flavourings = [
        one for one in facts.things if one.staple and is_flavouring_in_spirit(one.staple)
    ]
    return tuple(dict.fromkeys((*facts.tagged(["alcohol"]), *flavourings)))


def _join(words: Collection[str], between: str = ", ") -> str:
    """Return the first few words of a list, each once, and how many more there are."""
    once = list(dict.fromkeys(words))
    more = len(once) - _MOST_NAMED
    return between.join(once[:_MOST_NAMED]) + (f" and {more} more" if more > 0 else "")
