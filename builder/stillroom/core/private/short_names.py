"""A name that stands shortened or misspelt: "A. Thistle", "Mrs Thistle", "Ada Thisttle".

An initial with the surname, and a whole name with one slip of the pen, are that name. A form of
address with the surname, or the family's name, may be somebody else's: that is said and stops
nothing. Names in full, and how they are disguised, are sought in seeking.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence, Set
from functools import lru_cache
from typing import Final

from stillroom.core.words.patterns import CAPITAL

TITLES: Final = frozenset({
    "dr", "frau", "herr", "lady", "madame", "miss", "mme", "mr", "mrs", "ms", "mx", "prof", "rev",
    "senor", "senora", "sig", "signor", "signora", "sir", "sra", "mevrouw", "meneer",
})  # fmt: skip
# "A Rose" begins a sentence, so of a letter that is a word the point is wanted
_INITIAL: Final = rf"(?P<initial>{CAPITAL}(?:\.[ ]?|(?<![AIO])[ ]))(?:{CAPITAL}(?:\.[ ]?|[ ]))*"
# what may stand before a surname, up to it, and what behind it
_BEFORE: Final = re.compile(rf"(?:(?P<word>[^\W\d_]+)[ ])?(?<![\w.]){_INITIAL}$")
_SAID_TO: Final = frozenset({
    "an", "and", "by", "de", "dear", "di", "for", "from", "für", "love", "mit", "of", "para", "per",
    "pour", "thank", "thanks", "to", "und", "van", "von", "voor", "with",
})  # fmt: skip
_BEFORE_INITIAL: Final = _SAID_TO | TITLES
"""What stands before somebody's initial; any other word with a capital there is the first name."""
_BEHIND: Final = re.compile(
    rf"(?:,?[ ]|,)(?P<initial>{CAPITAL})\.(?!\w)"
    rf"|,[ ]?(?P<field>{CAPITAL})(?=[ ]*(?:[;|\t<\r\n\"]|$))"
)
# the same in two fields of a table, whichever stands first
_FIELD: Final = r"[\"' ]*[,;\t|][\"' ]*"
_FIELD_BEHIND: Final = re.compile(rf"{_FIELD}(?P<initial>{CAPITAL})\.?[\"' ]*(?=[,;\t|\r\n]|$)")
_FIELD_BEFORE: Final = re.compile(rf"(?:^|[,;\t|\r\n])[\"' ]*(?P<initial>{CAPITAL})\.?{_FIELD}$")
_BOX: Final = re.compile(r"[^\W_][\w.+-]*$")
_FIRST_BEHIND: Final = re.compile(
    rf"[ ](?P<initial>{CAPITAL})\.(?=[ ]*(?:[a-z,;:!?)<\"'–—-]|\r?\n|$))"
)
"""An initial behind a first name, and nothing that makes another surname of it."""
_ADDRESSED: Final = re.compile(
    rf"(?<!\w)(?i:{'|'.join(sorted(TITLES))})\.?[ ](?:{CAPITAL}\.[ ]?)*$"
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
    >>> [is_shortened(["mo", "thistle"], said) for said in ("M Thistle", "Thistle,M", "M|Thistle")]
    [True, True, True]
    >>> [is_shortened(["jo", "van der berg"], said) for said in ("J. van der Berg", "a van der b")]
    [True, False]
    >>> [is_shortened(["ada", "thistle"], said) for said in ("B. Thistle", "Jo A. Thistle")]
    [False, False]
    """
    initial = names[0][0].upper()
    for found in _surnames(names[-1]).finditer(text):
        before = _BEFORE.search(text[max(0, found.start() - _FAR) : found.start()])
        word = before["word"] if before else None
        if word and word[:1].isupper() and word.lower() not in _BEFORE_INITIAL:
            before = None  # "David M. Jones" is no M. Jones
        near = (
            before,
            _BEHIND.match(text, found.end()),
            _FIELD_BEHIND.match(text, found.end()),
            _FIELD_BEFORE.search(text[max(0, found.start() - _FAR) : found.start()]),
        )
        if any(there and _letter_of(there) == initial for there in near):
            return True
    return False


def _letter_of(found: re.Match[str]) -> str:
    said = found.groupdict()
    return (said["initial"] or said["field"] or "")[0]


def is_signed(names: Sequence[str], text: str) -> bool:
    """Return whether somebody's first name stands in a text with the initial of the surname.

    >>> [is_signed(["ada", "thistle"], said) for said in ("Love, Ada T.", "Ada T. Finch", "Ada T")]
    [True, False, False]
    """
    initial = names[-1][0].upper()
    return any(
        (behind := _FIRST_BEHIND.match(text, found.end())) and behind["initial"] == initial
        for found in _surnames(names[0]).finditer(text)
    )


def mail_boxes(text: str) -> set[str]:
    """Return what stands before the "@" of each address of mail in a text, without its signs.

    >>> sorted(mail_boxes("to a.thistle@post.example, B_Thistle7@post.example; @nobody"))
    ['athistle', 'bthistle']
    """
    if "@" not in text:
        return set()
    befores = (_BOX.search(part[-_FAR * 2 :]) for part in text.split("@")[:-1])
    return {re.sub(r"[\W\d_]", "", found[0]).lower() for found in befores if found}


def in_address(names: Sequence[str], boxes: Set[str]) -> bool:
    """Return whether an address of mail is made of a name and the other's initial.

    >>> [in_address(["ada", "thistle"], {box}) for box in ("athistle", "thistlea", "adat", "ada")]
    [True, True, True, False]
    """
    first, last = names[0], names[-1]
    pairs = (f"{first[0]}{last}", f"{last}{first[0]}", f"{first}{last[0]}", f"{last[0]}{first}")
    return not boxes.isdisjoint(pairs)


def is_addressed(surname: str, text: str, *, plain: bool = False) -> str:
    """Return how a text speaks of somebody of that surname, "" where it does not.

    Of a surname that is a plain word too "the Berries" are nobody, and "the bean family" is none.

    >>> is_addressed("thistle", "Thank Mrs Thistle."), is_addressed("thistle", "a thistle")
    ('Mrs Thistle', '')
    >>> is_addressed("thistle", "From the Thistle family"), is_addressed("thistle", "the Thistles")
    ('Thistle family', 'the Thistles')
    >>> [is_addressed("bean", said, plain=True) for said in ("the Beans", "Dear Mrs Bean")]
    ['', 'Mrs Bean']
    """
    if not plain and (several := _several(surname).search(text)):
        return several[0]
    for found in _surnames(surname).finditer(text):
        begin = max(0, found.start() - _FAR)
        for pattern in (_ADDRESSED,) if plain else (_ADDRESSED, _FAMILY_BEFORE):
            if before := pattern.search(text[begin : found.start()]):
                return f"{before[0]}{found[0]}"
        if plain:
            continue
        if behind := _FAMILY_BEHIND.match(text, found.end()):
            return f"{found[0]}{behind[0]}"
    return ""


@lru_cache(maxsize=4096)
def _surnames(surname: str) -> re.Pattern[str]:
    """Return the pattern of a surname with a capital; no other word is one.

    Of several words the first may be small: "van der Berg".
    """
    small = surname[0] if " " in surname else ""
    first = f"[{surname[:1].upper()}{small}]"
    rest = r"[\W_]{1,2}".join(map(re.escape, surname[1:].split(" ")))
    return re.compile(rf"(?<![^\W_]){first}(?i:{rest})(?![^\W_])")


@lru_cache(maxsize=4096)
def _several(surname: str) -> re.Pattern[str]:
    """Return the pattern of a family by its name: "the Thistles", "all of the Finches"."""
    first = re.escape(surname[:1].upper())
    return re.compile(
        rf"(?<!\w)(?i:the|all|to|for|dear) {first}(?i:{re.escape(surname[1:])}e?s)(?!\w)"
    )


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
