"""A name that stands shortened or misspelt: "A. Thistle", "Mrs Thistle", "Ada Thisttle".

An initial with the surname, and a whole name with one slip of the pen, are that name. A form of
address with the surname, or the family's name, may be somebody else's: that is said and stops
nothing. Names in full, and how they are disguised, are sought in seeking.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from typing import Final

TITLES: Final = frozenset({
    "dr", "frau", "herr", "lady", "madame", "miss", "mme", "mr", "mrs", "ms", "mx", "prof", "rev",
    "senor", "senora", "sig", "signor", "signora", "sir", "sra", "mevrouw", "meneer",
})  # fmt: skip
_INITIAL: Final = r"(?P<initial>[^\W\d_a-z])\.[ ]?(?:[^\W\d_a-z]\.[ ]?)*"
# what may stand before a surname, up to it, and what behind it
_BEFORE: Final = re.compile(rf"(?:(?P<word>[^\W\d_]+)[ ])?(?<![\w.]){_INITIAL}$")
_SAID_TO: Final = frozenset({
    "an", "and", "by", "de", "dear", "di", "for", "from", "für", "love", "mit", "of", "para", "per",
    "pour", "thank", "thanks", "to", "und", "van", "von", "voor", "with",
})  # fmt: skip
"""What stands before somebody's initial; any other word with a capital there is the first name."""
_BEHIND: Final = re.compile(r",[ ]?(?P<initial>[^\W\d_a-z])\.")
_ADDRESSED: Final = re.compile(
    rf"(?<!\w)(?i:{'|'.join(sorted(TITLES))})\.?[ ](?:[^\W\d_a-z]\.[ ]?)*$"
)
_FAMILY_BEFORE: Final = re.compile(r"(?<!\w)(?:famil(?:y|ie|le|ia|je)|famiglia)[ ]$", re.IGNORECASE)
_FAMILY_BEHIND: Final = re.compile(r"[ ](?:family|household)(?!\w)", re.IGNORECASE)
_LEAST_SURNAME: Final = 4
_LEAST_SLIPPED: Final = 6
"""In a shorter word one other letter makes another name: Anna and Anne, Bell and Ball."""
_FAR: Final = 24


def is_shortened(names: Sequence[str], text: str) -> bool:
    """Return whether somebody's surname stands in a text with the initial of the first name.

    The text is one without marks over its letters; capitals count, or "a thistle" were somebody.

    >>> [is_shortened(["ada", "thistle"], said) for said in ("For A. Thistle", "Thistle, A.")]
    [True, True]
    >>> [is_shortened(["ada", "thistle"], said) for said in ("B. Thistle", "Jo A. Thistle")]
    [False, False]
    """
    initial = names[0][0].upper()
    for found in _surnames(names[-1]).finditer(text):
        before = _BEFORE.search(text[max(0, found.start() - _FAR) : found.start()])
        word = before["word"] if before else None
        if word and word[:1].isupper() and word.lower() not in _SAID_TO:
            before = None  # "David M. Jones" is no M. Jones
        behind = _BEHIND.match(text, found.end())
        if any(there and there["initial"] == initial for there in (before, behind)):
            return True
    return False


def is_addressed(surname: str, text: str) -> str:
    """Return how a text speaks of somebody of that surname, "" where it does not.

    >>> is_addressed("thistle", "Thank Mrs Thistle."), is_addressed("thistle", "a thistle")
    ('Mrs Thistle', '')
    >>> is_addressed("thistle", "From the Thistle family")
    'Thistle family'
    """
    for found in _surnames(surname).finditer(text):
        begin = max(0, found.start() - _FAR)
        for pattern in (_ADDRESSED, _FAMILY_BEFORE):
            if before := pattern.search(text[begin : found.start()]):
                return f"{before[0]}{found[0]}"
        if behind := _FAMILY_BEHIND.match(text, found.end()):
            return f"{found[0]}{behind[0]}"
    return ""


@lru_cache(maxsize=4096)
def _surnames(surname: str) -> re.Pattern[str]:
    """Return the pattern of a surname with a capital; no other word is one."""
    first = re.escape(surname[:1].upper())
    return re.compile(rf"(?<![^\W_]){first}(?i:{re.escape(surname[1:])})(?![^\W_])")


def is_long_enough(surname: str) -> bool:
    """Say whether a surname tells somebody at all where it stands shortened."""
    return len(surname) >= _LEAST_SURNAME


def slipped(names: Sequence[str], text: str) -> str:
    """Return a name as it stands in a compared text with one slip of the pen, else "".

    >>> slipped(["ada", "thistle"], "for ada thisttle"), slipped(["ada", "thistle"], "ada thistle")
    ('ada thisttle', '')
    >>> slipped(["zebedee", "quill"], "zebedea quill"), slipped(["ada", "quill"], "ida quill")
    ('zebedea quill', '')
    """
    first, last = names[0], names[-1]
    spaced = f" {text} "
    if len(last) >= _LEAST_SLIPPED:
        for at in _places(f" {first} ", spaced):
            word = spaced[at + len(first) + 2 :].partition(" ")[0]
            if one_slip(word, last):
                return f"{first} {word}"
    if len(first) >= _LEAST_SLIPPED:
        for at in _places(f" {last} ", spaced):
            word = spaced[max(0, at - _FAR) : at].rpartition(" ")[2]
            if one_slip(word, first):
                return f"{word} {last}"
    return ""


def _places(sought: str, text: str) -> list[int]:
    places, at = [], text.find(sought)
    while at >= 0:
        places.append(at)
        at = text.find(sought, at + 1)
    return places


def one_slip(word: str, name: str) -> bool:
    """Say whether a word is a name with one letter wrong, missing, too many, or two exchanged.

    >>> [one_slip(word, "thistle") for word in ("thistel", "thisle", "thisstle", "thustle")]
    [True, True, True, True]
    >>> [one_slip(word, "thistle") for word in ("thistle", "thistles", "whistle", "thimble")]
    [False, False, False, False]
    """
    # another first letter, or an end as of several, is another word
    if word == name or word[:1] != name[:1] or word in (f"{name}s", f"{name[:-1]}s"):
        return False
    if abs(len(word) - len(name)) > 1 or not word.isalpha():
        return False
    at = next((n for n, (a, b) in enumerate(zip(word, name, strict=False)) if a != b), len(word))
    rest, other = word[at:], name[at:]
    return (
        rest[1:] == other[1:]
        or rest[1:] == other
        or rest == other[1:]
        or (rest[:2] == other[1::-1] and rest[2:] == other[2:])
    )
