"""The clauses of a sentence about what somebody must not have, and what sort each is.

What is left out, why, what is allowed again, what says nothing: by how it is put, whatever the
food. Leaves out what the words mean (avoiding.py) and what comes of them together (sentences.py).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache

from stillroom.core.allergens.avoiding import says_of_somebody
from stillroom.core.allergens.near import is_name, named_in
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex

# where one clause ends and another begins; a list in brackets is clauses as well
_CLAUSE = late_regex(
    r"\s*(?P<mark>[:;,()\[\]]|(?<=\s)[-–—](?=\s)|\.(?=\s|$)|[&+](?=\s)"
    r"|\b(?:incl(?:uding|udes)?\b\.?|inc\b\.?|such as|e\.?g\.?(?=\s)|i\.?e\.?(?=\s)|especially"
    r"|particularly|esp\.?|watch(?: out)?(?: for)?|and also|as well as"
    r"|plus(?!\s(?:d.|du|des|l[ea]s?|jamais|rien|allergi\w+|intol\w+)\b)|so"
    r"|because of|because|due to)"
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
# "A but is still allergic to B" are two clauses, "no A no B" as well
_SPLIT = late_regex(
    r",?\s+but\s+(?=(?:(?:she|he|they|we|i|it) )?(?:is|are|.s|still|has|have|no|not|can.?t|cannot"
    r"|does.?n.?t|do.?n.?t|won.?t|avoids?|nothing|never|now|allergic|reacts?)\b)",
    re.IGNORECASE,
)
_NO_NO = late_regex(
    r"\s+(?=(?:no|kein|keine|sans|pas de|sin|senza|geen|zonder|ohne|niente)\s)", re.IGNORECASE
)
_NO_FIRST = late_regex(
    r"^(?:no|kein|keine|sans|pas de|sin|senza|geen|zonder|ohne|niente)\s", re.IGNORECASE
)
# "keine Milch aber auch | keine Eier"
_TIE_BEHIND = late_regex(
    r",?\s+(?:aber|mais|pero|però|maar|but)(?:\s+(?:auch|aussi|también|anche|ook|also))?$", re.I
)
SPECIMENS = frozenset(
    {"incl", "including", "includes", "inc", "such as", "e.g", "eg", "especially", "esp"}
)
_ITS_DOING = late_regex(
    r"^(?:and )?(?:it|they|this|that|these|those|which)(?:'ll| will| just| really| always| both)* "
    r"(?!is|are|was|has|have|can|may|contains?|includes?|means?)[a-z]+ ",
    re.IGNORECASE,
)
# "anything but nuts" leaves the nuts out, and nothing else
_ALL = late_regex(r"\b(?:anything|everything|nothing|whatever|all (?:foods?|sorts|else))\b")
_EVEN_IN = late_regex(r"^(?:not )?even in (?:an? |the )?")  # where it hides: "even in chocolate"
# how far somebody is with it, and since when: no need of its own
_HOW_FAR = late_regex(r"\b(?:(?:milk|egg) ladder|after (?:an?|his|her|their|the) stroke)\b")
_OF_AN_ANSWER = late_regex(r"\s*[,;:.!()]\s*|\s+[-–—]\s+")
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
    found: list[Clause] = []
    place = 0
    plain = " ".join(sentence.replace("’", "'").split())
    for mark in [*_CLAUSE.finditer(plain), None]:
        text = _AND.sub("", plain[place : mark.start() if mark else None].strip(" \"'!*“”"))
        ends = mark["mark"].lower() if mark else ""
        if not text and found and found[-1].ends_with == ",":  # ", incl."
            found[-1] = Clause(found[-1].text, ends)
        *before, last = _within(text)
        found += [Clause(one, ",") for one in before]
        if last:
            found.append(Clause(last, "-" if ends in "–—" and ends else ends))
        place = mark.end() if mark else place
    return found


def _within(text: str) -> list[str]:
    """Return the clauses that no mark parts: "outgrew egg but is allergic to nuts", "no A no B"."""
    parts = _SPLIT.split(text)
    return [
        _TIE_BEHIND.sub("", one)
        for part in parts
        for one in (_NO_NO.split(part) if _NO_FIRST.match(part) else [part])
    ]


def says_nothing(text: str) -> bool:
    """Whether a clause says nothing more of what is left out: "raw or cooked", "until Easter"."""
    said = text.lower().strip(" .!")
    if not _nothing().fullmatch(said):
        return False
    # it may go on with a need: "please no nuts", "hospitalised by peanuts"
    hidden = _EVEN_IN.match(said)
    rest = said[hidden.end() :] if hidden else _HOW_FAR.sub("", said)
    return not says_of_somebody(rest) and (bool(hidden and is_name(rest)) or not named_in(rest))


def says_none(text: str) -> bool:
    """Whether an answer says that there is nothing to leave out, and no more than that.

    >>> [says_none(one) for one in ("no food allergies", "nothing - they eat anything", "sin")]
    [True, True, True]
    >>> [says_none(one) for one in ("nothing with nuts", "no milk", "fine with nuts")]
    [False, False, False]
    """
    parts = [part for part in _OF_AN_ANSWER.split(text.strip(" .!")) if part.strip()]
    none = [bool(_none().fullmatch(part.strip().replace("’", "'"))) for part in parts]
    each = (said or says_nothing(part) for part, said in zip(parts, none, strict=True))
    return any(none) and all(each)


def tells_what_it_does(text: str) -> bool:
    """Whether a clause tells what a thing does to somebody: "they send him loopy"."""
    return bool(_ITS_DOING.match(text)) and not _OF_FOOD.search(text)


def is_a_heading(clause: Clause) -> bool:
    """Whether a clause only says that, or for whom, a list comes: "allergies:", "the kids:"."""
    return clause.ends_with in (":", "-", "(") and bool(_HEADING.fullmatch(clause.text))


def is_a_reason(clause: Clause, known: bool = False) -> bool:
    """Whether a clause can be the reason of what is listed behind it: "Wilson's disease: …".

    `known` is whether its words are those of a reason in the table.
    """
    if _ALL.search(clause.text.lower()):
        return False
    short = len(clause.text.split()) <= _MOST_OF_A_REASON
    if known:  # "latex allergy, no kiwi"
        return short and bool(clause.ends_with)
    return clause.ends_with in (":", "-", "(", "so") and short and not _OF_FOOD.search(clause.text)


def lists_what_not(text: str) -> bool:
    """Whether a clause begins to list what must not be: "no milk", "avoids wheat"."""
    return bool(_LISTS.match(text))


@cache
def _nothing() -> re.Pattern[str]:
    rows = read_data("phrases.yml", "allergens")
    return re.compile(rf"(?:{rows['nothing']}|{rows['brackets']})", re.IGNORECASE)


@cache
def _none() -> re.Pattern[str]:
    return re.compile(read_data("phrases.yml", "allergens")["none"], re.IGNORECASE)
