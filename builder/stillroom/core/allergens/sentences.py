"""A whole sentence of what somebody must not have: "EoE - no milk, wheat (incl. semolina)".

Its clauses are read one by one, and every one has to be understood: as something left out, as a
reason with what is left out behind it, as something allowed again, or as words that say nothing.
What is allowed again is left out all the same, and kept so that it can be told. A clause that is
none of these makes the sentence one that is asked about. Leaves out what a few words mean:
avoiding.py.
"""

from __future__ import annotations

from functools import lru_cache

from stillroom.core.allergens.avoided import Avoided
from stillroom.core.allergens.avoiding import (
    family_names,
    is_why,
    known,
    read_phrase,
    says_of_somebody,
    sought_by_name,
)
from stillroom.core.allergens.clauses import (
    BECAUSE,
    Clause,
    allowed_again,
    clauses,
    is_a_heading,
    is_a_reason,
    is_an_exception,
    lists_what_not,
    says_nothing,
    without_what_is_allowed,
)
from stillroom.core.larder.nearest import nearest_foods
from stillroom.core.larder.shelves import common_larder
from stillroom.core.words.nearest import nearest

_A_SLIP = 0.82
_LONGEST_NEED = 400  # letters
_LONGEST = 3  # words of a name
_SHORTEST = 4  # letters of a word that may be a slip of another


@lru_cache(maxsize=1024)
def read_avoided(word: str) -> Avoided | None:
    """Return what somebody means by words, or None where they are not understood.

    >>> [one.word for one in read_avoided("EoE - no milk or wheat (incl. semolina)").of]
    ['no milk or wheat', 'semolina']
    >>> read_avoided("cashew, but other nuts are fine").allowed
    ('but other nuts are fine',)
    >>> read_avoided("Jain: no eggs").ask != "", read_avoided("anything but nuts")
    (True, None)
    """
    if len(word) > _LONGEST_NEED:
        return None  # a page of text is no need: it is asked about
    found = read_phrase(word)
    if found and not found.ask:
        return found
    return _by_clauses(word) or found


def avoided_by_name(word: str) -> Avoided:
    """Return what words mean; a thing that nobody knows is sought by its name alone."""
    found = read_avoided(word)
    return found if found and not found.ask else sought_by_name(word)


def _by_clauses(word: str) -> Avoided | None:
    read: list[Avoided] = []
    allowed: list[str] = []
    parts = clauses(word)
    left_out = False  # whether the clause before leaves something out
    for place, clause in enumerate(parts):
        rest = parts[place + 1 :]
        if says_nothing(clause.text) or (rest and is_a_heading(clause)):
            continue
        if left_out and is_an_exception(clause.text):  # of "everything" it would be the contrary
            allowed.append(clause.text)
            continue
        left_out = False
        if allowed_again(clause.text) and not says_of_somebody(clause.text):
            allowed.append(clause.text)
            continue
        found = _of_clause(clause.text, allowed)
        if found and found.foods and clause.ends_with == ":" and clause.text.istitle():
            return None  # "Rosemary: eggs" is somebody, or two things left out
        if found:
            read.append(found)
            left_out = True
        elif not _is_only_why(parts, place):
            return None
    if not parts or not (read or allowed or all(says_nothing(clause.text) for clause in parts)):
        return None
    return Avoided(word, of=tuple(read), allowed=tuple(allowed))


def _of_clause(text: str, allowed: list[str]) -> Avoided | None:
    """Return what one clause leaves out; what it allows again is put to what is allowed."""
    if (found := read_phrase(text)) and not found.ask:
        return found
    bare, again, more = without_what_is_allowed(text)
    if not bare:
        return None
    found = read_phrase(bare)
    if found is None or found.ask:
        return None
    if not more:
        allowed.append(again)
        return found
    other = read_phrase(again)  # "vegetarian but no eggs": one thing more
    return Avoided(text, of=(found, other)) if other and not other.ask else None


def _is_only_why(parts: list[Clause], place: int) -> bool:
    """Whether a clause is the reason for the others: what they list behind it, or before it."""
    clause = parts[place]
    if place and parts[place - 1].ends_with in BECAUSE:
        return not (says_of_somebody(clause.text) or _may_be_food(clause.text))
    return place + 1 < len(parts) and _is_its_reason(clause, parts[place + 1])


def _is_its_reason(clause: Clause, next_one: Clause) -> bool:
    """Whether a clause is the reason for what is listed behind it, and no food itself."""
    words = clause.text.lower().split()
    known_reason = any(is_why(word) for word in (clause.text.lower(), *words))
    listed = known_reason or clause.ends_with != "-" or lists_what_not(next_one.text)
    if not (listed and is_a_reason(clause)):
        return False
    return not says_of_somebody(clause.text) and not _may_be_food(clause.text)


def _may_be_food(text: str) -> bool:
    """Whether something in words is known, or a slip of what is: then it is no mere reason."""
    words = text.lower().split()
    for length in range(1, _LONGEST + 1):
        for start in range(len(words) - length + 1):
            name = " ".join(words[start : start + length]).strip("'’.,")
            if is_why(name):
                continue
            if known(name) or name in family_names():
                return True
            foods = nearest_foods(name, common_larder()) if len(name) > _SHORTEST else ()
            if foods and nearest(name, [*family_names(), *foods], _A_SLIP):
                return True
    return False
