"""A whole sentence of what somebody must not have: "EoE - no milk, wheat (incl. semolina)".

Its clauses are read one by one, and every one has to be understood: as something left out, as a
reason with what is left out behind it, as something allowed again, or as words that say nothing.
What is allowed again is left out all the same, and kept so that it can be told. A clause that is
none of these makes the sentence one that is asked about. Leaves out what a few words mean:
avoiding.py.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from functools import lru_cache

from stillroom.core.allergens.allowing import (
    all_that_is_not,
    allowed_again,
    allowed_so_far,
    exception_in,
    speaks_of_all,
    tells_a_need,
    was_once,
    without_but,
    without_what_is_allowed,
)
from stillroom.core.allergens.avoided import Avoided
from stillroom.core.allergens.avoiding import (
    asked_in,
    family_names,
    is_of_the_body,
    is_why,
    known,
    read_phrase,
    said_of,
    says_of_somebody,
    sought_by_name,
)
from stillroom.core.allergens.clauses import (
    BECAUSE,
    SPECIMENS,
    Clause,
    clauses,
    is_a_heading,
    is_a_reason,
    lists_what_not,
    says_nothing,
    tells_what_it_does,
)
from stillroom.core.allergens.covering import also_named
from stillroom.core.allergens.near import named_in, only_names
from stillroom.core.allergens.phrases import allows_again, in_plain_words
from stillroom.core.allergens.plainly import is_plain, named_plainly, only_eaten
from stillroom.core.allergens.symbols import in_words
from stillroom.core.larder.nearest import nearest_foods
from stillroom.core.larder.shelves import common_larder
from stillroom.core.words.nearest import nearest

ANY_ALLERGY = "allergies"  # "she is allergic": it asks to what, and a name tells it
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
    if (said := in_words(word)) is None:
        return None  # a picture that nobody knows
    plain = in_plain_words(said)
    found = _read_plain(plain)
    # whoever reads why a present is kept back reads the list's own words
    return found if found is None or plain == said else replace(found, word=said)


def _read_plain(plain: str) -> Avoided | None:
    """Return what somebody means by plain words, or None where they are not understood."""
    if only_eaten(plain) and not allows_again(plain):
        return None  # "mag Nüsse": they like them
    found = read_phrase(plain)
    if found is None or found.ask:
        found = _by_clauses(plain) or found
    if found is None or found.ask or not (more := also_named(plain, found)):
        return found
    return Avoided(plain, of=(found, *more), allowed=found.allowed)


def avoided_by_name(word: str) -> Avoided:
    """Return what words mean; a thing that nobody knows is sought by its name alone."""
    found = read_avoided(word)
    return found if found and not found.ask else sought_by_name(word)


@dataclass
class _Said:
    """What the clauses read so far leave out, and what they allow again."""

    read: list[Avoided] = field(default_factory=list)
    allowed: list[str] = field(default_factory=list)
    left_out: bool = False  # whether the clause before leaves something out

    def allows(self, text: str) -> bool:
        """Take a clause that allows something; what is allowed only so far is left out."""
        past = was_once(text)
        if (self.left_out and exception_in(text)) or (
            allowed_again(text) and (past or not tells_a_need(text))
        ):
            self.allowed.append(text)
            return True
        named = [one for name in named_in(text) if (one := read_phrase(name)) and not one.ask]
        if not allowed_so_far(text) or not (named or self.read) or tells_a_need(text):
            return False
        self.allowed.append(text)
        self.read += named
        return True

    def leaves_out(self, clause: Clause, specimen: bool) -> Avoided | None:
        """Take a clause that leaves something out, and return what."""
        text = without_but(clause.text)
        every = (
            _of_clause(text, self.allowed)
            or _several_of(text, only_names(text))
            or (None if _asks_more(text) else _several_of(text, named_plainly(said_of(text))))
        )
        if every is None and specimen and self.read:  # "nothing boozy, incl. rum balls"
            every = _several_of(text, named_in(text))
        if every:
            self.read.append(every)
        return every


def _asks_more(text: str) -> bool:
    """Whether something in words leaves out more than what is named: no "after a heart attack"."""
    return any(not (one.why or one.meant == ANY_ALLERGY) for one in asked_in(text))


def _by_clauses(word: str) -> Avoided | None:
    said = _Said()
    parts = clauses(word)
    for place, clause in enumerate(parts):
        rest = parts[place + 1 :]
        if says_nothing(clause.text) or (rest and is_a_heading(clause)):
            continue
        before = parts[place - 1] if place else None
        if before and speaks_of_all(before.text) and (but := exception_in(clause.text)):
            clause = Clause(
                but, clause.ends_with
            )  # of "eats everything" it is all that is left out
        elif said.allows(clause.text):
            continue
        found = said.leaves_out(clause, bool(before and before.ends_with.strip(". ") in SPECIMENS))
        if found and found.foods and clause.ends_with == ":" and clause.text.istitle():
            return None  # "Rosemary: eggs" is somebody, or two things left out
        said.left_out = bool(found)
        if not found and not _is_only_why(parts, place, bool(said.read)):
            return None
    nothing = all(says_nothing(clause.text) for clause in parts)
    if not parts or not (said.read or said.allowed or nothing):
        return None
    return Avoided(word, of=tuple(dict.fromkeys(said.read)), allowed=tuple(said.allowed))


def _several_of(text: str, names: Iterable[str]) -> Avoided | None:
    """Return what several names mean together, None where one of them is asked about."""
    each = [read_phrase(name) for name in names]
    whole = tuple(one for one in each if one and not one.ask)
    # "diabetic type 2" is one thing in two words
    once = {(one.meant or one.word, one.of): one for one in reversed(whole)}
    if not whole or len(whole) != len(each):
        return None
    return Avoided(text, of=tuple(reversed(once.values())))


def _of_clause(text: str, allowed: list[str]) -> Avoided | None:
    """Return what one clause leaves out; what it allows again is put to what is allowed."""
    if (found := read_phrase(text)) and not found.ask:
        return found
    if behind := all_that_is_not(text):  # "eats everything except pork"
        found = read_phrase(behind)
        return found if found and not found.ask else None
    bare, again, more = without_what_is_allowed(text)
    if not bare:
        return None
    found = read_phrase(bare)
    if found is None or found.ask:
        return None
    if not more:
        allowed.append(again)
        return found
    if allowed_so_far(again):  # "veggie but will eat fish if it's offered"
        other = _several_of(again, named_in(again))
        allowed.append(again)
    else:
        other = read_phrase(again)  # "vegetarian but no eggs": one thing more
    return Avoided(text, of=(found, other)) if other and not other.ask else None


def _is_only_why(parts: list[Clause], place: int, read: bool) -> bool:
    """Whether a clause is the reason for the others: what they list behind it, or before it."""
    clause = parts[place]
    if is_plain(clause.text) or (
        read and tells_what_it_does(clause.text) and not _may_be_food(clause.text)
    ):
        return True
    if place and parts[place - 1].ends_with in BECAUSE:
        if read and is_of_the_body(clause.text):
            return True
        return not (says_of_somebody(clause.text) or _may_be_food(clause.text))
    return place + 1 < len(parts) and _is_its_reason(clause, parts[place + 1])


def _is_its_reason(clause: Clause, next_one: Clause) -> bool:
    """Whether a clause is the reason for what is listed behind it, and no food itself."""
    words = clause.text.lower().split()
    known_reason = any(is_why(word) for word in (clause.text.lower(), *words))
    listed = known_reason or clause.ends_with != "-" or lists_what_not(next_one.text)
    if not (listed and is_a_reason(clause, known=is_why(clause.text.lower()))):
        return False
    return not says_of_somebody(clause.text) and not _may_be_food(clause.text)


def _may_be_food(text: str) -> bool:
    """Whether something in words is known, or a slip of what is: then it is no mere reason."""
    if is_why(text.lower()):
        return False
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
