"""The clauses of a sentence about what somebody must not have, and what sort each is.

What is left out, why, what is allowed again, what says nothing: by how it is put, whatever the
food. Leaves out what the words mean (avoiding.py) and what comes of them together (sentences.py).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache

from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex

# where one clause ends and another begins; a list in brackets is clauses as well
_CLAUSE = late_regex(
    r"\s*(?P<mark>[:;,()\[\]]|(?<=\s)[-–—](?=\s)|\.(?=\s|$)|[&+](?=\s)"
    r"|\b(?:incl(?:uding|udes)?\b\.?|inc\.|such as|e\.?g\.?(?=\s)|i\.?e\.?(?=\s)|especially"
    r"|particularly|watch(?: out)?(?: for)?|and also|as well as|plus|so|because of|because|due to)"
    r"(?=\s))\s*",
    re.IGNORECASE,
)
# what is said of foods, and never of a reason alone
_OF_FOOD = late_regex(
    r"allerg|intoler|sensitiv|react|\bfree\b|avoid|\bnot?\b|n't\b|without|never|\bonly\b"
    r"|cannot|\bcan\b|\bmay\b|\beats?\b|\bdrinks?\b|\bhates?\b|\blikes?\b",
    re.IGNORECASE,
)
_LISTS = late_regex(
    r"^(?:no|not|avoids?|avoiding|without|nothing|never|can.?t|cannot|must.?n.?t|won.?t|does.?n.?t"
    r"|do.?n.?t|off|free (?:from|of)|nil|needs? to avoid|keine?n?|ohne|sans|pas de|sin|senza"
    r"|geen)\b",
    re.IGNORECASE,
)
_HEADING = late_regex(
    r"(?:(?:the|our|my|his|her|their) )?(?:(?:food|known|special|dietary) )?(?:allerg(?:y|ies)"
    r"|needs|intolerances?|requirements|diet|avoids?|avoid|must not have|kids?|children|boys?"
    r"|girls?|baby|babies|toddlers?|grown-?ups|adults|everyone|everybody|all of them|family"
    r"|household)",
    re.IGNORECASE,
)
# "X is fine", "can have X", "eats X": allowed, unless anything in it takes something back again
_FINE = late_regex(
    r"^(?:.+ (?:is|are|.s) (?:all |absolutely |quite )?"
    r"(?:fine|ok|okay|alright|all right|allowed|safe|no problem)(?: .*)?"
    r"|(?:(?:she|he|they|we|i) )?(?:can (?:have|eat|drink|tolerate|manage)|(?:does|do) eat|eats"
    r"|tolerates?|copes with|(?:is|are) (?:fine|ok|okay) with) .+|.+ (?:ok|okay|fine|allowed))$",
    re.IGNORECASE,
)
# "(except coconut)", in a clause of its own
_EXCEPT = late_regex(
    r"^(?:except(?:ing)?(?: for)?|apart from|other than|bar|save for|unless) (?P<what>.+)$",
    re.IGNORECASE,
)
_BUT = late_regex(r"^(?:but|though|although|however) ", re.IGNORECASE)
_TAKEN_BACK = late_regex(
    r"\b(?:not?|never|only|without|nothing|avoid\w*|except\w*|but|free|decaf|alternatives?"
    r"|substitutes?|bar|apart|other than|unless|besides|if|when|neither|nor|hardly|allerg\w*"
    r"|react\w*|sensitiv\w*|intoler\w*|ill|sick|problems? with|small|little|tiny)\b"
    r"|n't\b|\bcannot\b",
    re.IGNORECASE,
)
_AGAIN = late_regex(
    r"^(?P<bare>.+?),?\s+(?P<again>(?:but|except(?:ing)?(?: for)?|bar|apart from|other than|unless"
    r"|save for|though|although)\s+(?P<what>.+))$",
    re.IGNORECASE,
)
# "anything but nuts" leaves the nuts out, and nothing else
_ALL = late_regex(r"\b(?:anything|everything|nothing|whatever|all (?:foods?|sorts|else))\b")
BECAUSE = frozenset({"because", "because of", "due to"})
_AND = late_regex(r"^(?:and|or|also|und|et|y|e|en) ", re.IGNORECASE)
_MOST_OF_A_REASON = 5


@dataclass(frozen=True)
class Clause:
    """A clause of a sentence, and the mark it ends with: "" at the end, "-" for any dash."""

    text: str
    ends_with: str


def clauses(sentence: str) -> list[Clause]:
    """Return a sentence's clauses, those in brackets as well.

    >>> [(one.text, one.ends_with) for one in clauses("EoE - no milk (incl. butter), wheat")]
    [('EoE', '-'), ('no milk', '('), ('butter', ')'), ('wheat', '')]
    """
    found, place = [], 0
    plain = " ".join(sentence.replace("’", "'").split())
    for mark in [*_CLAUSE.finditer(plain), None]:
        text = _AND.sub("", plain[place : mark.start() if mark else None].strip(" \"'!*“”"))
        ends = mark["mark"].lower() if mark else ""
        if text:
            found.append(Clause(text, "-" if ends in "–—" and ends else ends))
        place = mark.end() if mark else place
    return found


def says_nothing(text: str) -> bool:
    """Whether a clause says nothing more of what is left out: "raw or cooked", "until Easter"."""
    return bool(_nothing().fullmatch(text.lower().strip(" .!")))


def allowed_again(text: str) -> bool:
    """Whether a clause only allows something: "other nuts are fine", "but can have oats".

    >>> [allowed_again(one) for one in ("but spelt is fine", "coconut is ok", "can have oats")]
    [True, True, True]
    >>> [allowed_again(one) for one in ("eats no egg", "milk but butter is ok", "decaf is fine")]
    [False, False, False]
    """
    plain = _BUT.sub("", text)
    return bool(_FINE.match(plain)) and not _TAKEN_BACK.search(plain)


def is_an_exception(text: str) -> bool:
    """Whether a clause takes something out of what the one before it leaves out.

    >>> is_an_exception("except coconut"), is_an_exception("unless it is not cooked")
    (True, False)
    """
    found = _EXCEPT.match(text)
    return found is not None and not _TAKEN_BACK.search(found["what"])


def without_what_is_allowed(text: str) -> tuple[str, str, bool]:
    """Return what a clause leaves out, what it puts behind "but", and whether that is one more.

    >>> without_what_is_allowed("vegan but eats honey")
    ('vegan', 'but eats honey', False)
    >>> without_what_is_allowed("vegetarian but no eggs")
    ('vegetarian', 'no eggs', True)
    >>> without_what_is_allowed("anything but nuts")
    ('', '', False)
    """
    found = _AGAIN.match(text)
    if found is None or _ALL.search(found["bare"].lower()) or _AGAIN.match(found["what"]):
        return "", "", False
    if _TAKEN_BACK.search(found["what"]):
        return found["bare"], found["what"], True
    return found["bare"], found["again"], False


def is_a_heading(clause: Clause) -> bool:
    """Whether a clause only says that, or for whom, a list comes: "allergies:", "the kids:"."""
    return clause.ends_with in (":", "-", "(") and bool(_HEADING.fullmatch(clause.text))


def is_a_reason(clause: Clause) -> bool:
    """Whether a clause can be the reason of what is listed behind it: "Wilson's disease: …"."""
    if _ALL.search(clause.text.lower()):
        return False
    short = len(clause.text.split()) <= _MOST_OF_A_REASON
    return clause.ends_with in (":", "-", "(", "so") and short and not _OF_FOOD.search(clause.text)


def lists_what_not(text: str) -> bool:
    """Whether a clause begins to list what must not be: "no milk", "avoids wheat"."""
    return bool(_LISTS.match(text))


@cache
def _nothing() -> re.Pattern[str]:
    rows = read_data("phrases.yml", "allergens")
    return re.compile(rf"(?:{rows['nothing']}|{rows['brackets']})", re.IGNORECASE)
