"""The names and addresses of giving lists: what of them is not to be published.

What is sought: a name of two or more names ("Nell Tarrowby"), a household's whole name or what is
on its card when a name is in it, an address, a telephone number, an e-mail address. What is not
sought alone: one name or a plain word ("Rosemary", "The choir"), for it may be a herb or anybody;
three such of one list in one file are taken for the list. The maker's own name ("from") and
messages are not sought. Where they stand is found in seeking.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from stillroom.core.private.hidden_forms import letters, read_plain
from stillroom.core.private.list_names import Said, names_in_list
from stillroom.core.private.short_names import TITLES
from stillroom.core.words.patterns import CAPITAL, SMALL

_NAMES = ("name", "to", "given", "posted", "thanked", "gave back", "liked", "disliked")
"""Whom a list names, and a log that something was given to or came from."""
_PLACES = ("address", "street", "town", "postcode", "post code", "phone", "telephone", "mobile",
           "email", "e-mail")  # fmt: skip
_VALUE = re.compile(
    rf"(?:^|[\s{{,\"'#/*;>-])(?P<key>{'|'.join((*_NAMES, *_PLACES))})[\"']?[ \t]*[:=][ \t]*"
    r"(?:\"(?P<double>(?:[^\"\\\n]|\\.)*)\"|'(?P<single>[^'\n]*)'|(?P<bare>[^\n,}\]]*))",
    re.IGNORECASE | re.MULTILINE,
)
_WORD = re.compile(r"[^\W\d_]+(?:['’-][^\W\d_]+)*")
_LINKING = frozenset({
    "a", "and", "at", "by", "de", "der", "for", "from", "in", "la", "le", "of", "on", "the", "to",
    "van", "von", "with", "und", "et", "och", "og",
})  # fmt: skip
_PARTICLES = frozenset({
    "af", "av", "da", "de", "del", "den", "der", "di", "dos", "du", "la", "le", "ter", "van", "von",
    "zu", "zur",
})  # fmt: skip
"""What stands small in a surname of several words."""
_ANYBODY = frozenset({
    "all", "aunt", "auntie", "aunty", "boys", "brother", "children", "choir", "cousin", "crew",
    "dad", "daughter", "doctor", "dr", "everyone", "family", "father", "friends", "girls", "gran",
    "grandad", "grandfather", "grandma", "grandmother", "grandpa", "granny", "miss", "mother", "mr",
    "mrs", "ms", "mum", "mom", "nan", "nana", "neighbour", "neighbours", "sister", "son", "teacher",
    "team", "uncle",
})  # fmt: skip
"""Words that any family says: they name nobody."""
_LINKING_OR_ANYBODY = _LINKING | _ANYBODY
_TITLED = re.compile(rf"(?<!\w)((?i:{'|'.join(sorted(TITLES))})\.? {CAPITAL}[\w'’-]{{2,}})")
_OWN = re.compile(
    r"^(?:[^\S\n]|[{,\"'])*+(?:from|von|de(?: la part de| parte de)?|da|van|från|fra)[\"']?"
    r"[ \t]*[:=](.*)",
    re.IGNORECASE | re.MULTILINE,
)
# each word is gone through once, from where it begins: a name of twenty thousand letters, and no
# more names before the last "and" than a house has
_COUPLE = re.compile(rf"(?<![\w'’-])[{SMALL}\d_'’-]*+({CAPITAL}[\w'’-]++)"
                     rf"(?:, {CAPITAL}[\w'’-]++){{0,12}} (?:and|&|und|et|y|e|en|och|og) "
                     rf"{CAPITAL}[\w'’-]++ ({CAPITAL}[\w'’-]++)")  # fmt: skip
_NOTE = re.compile(r"(?<!\s)\s++#.*")
_HALVES = 4
"""A surname is written by one of its parts; what has more hyphens than these is none."""
_LEAST = 7
"""A shorter run of letters is in too many words to say anything."""


@dataclass(frozen=True)
class PrivateWord:
    """One thing not to be published, as it is compared, and where the list has it."""

    words: str
    file: str
    line: int
    alone: bool = True
    written: str = ""
    """As the list has it."""
    of_somebody: bool = True
    """Whether it is a person's name, not a place's."""


def list_private_words(data: bytes, file: str) -> Iterator[PrivateWord]:
    """Return what in a giving list names somebody or says where they live."""
    text = read_plain(data)
    for value, line, somebody in (*_by_key(text), *names_in_list(text)):
        for words, alone in _of_name(value) if somebody else _of_place(value):
            if compared := letters(words):
                yield PrivateWord(compared, file, line, alone, words, somebody)


def _by_key(text: str) -> Iterator[Said]:
    """Return what stands behind a key that names somebody, whatever the file is written in."""
    for found in _VALUE.finditer(text):
        value = (found["double"] or found["single"] or _bare(text, found)).strip()
        value = _NOTE.sub("", value).strip("\"' ")
        line = text.count("\n", 0, found.start("key")) + 1
        yield value, line, found["key"].lower() not in _PLACES


def list_own_words(data: bytes) -> frozenset[str]:
    """Return the words by which whoever gives signs: that family is named on its own pages."""
    return frozenset(letters(" ".join(_OWN.findall(read_plain(data)))).split())


def _bare(text: str, found: re.Match[str]) -> str:
    """Return what is said without quotation marks: to the line's end where the line is its own."""
    begin = text.rfind("\n", 0, found.start("key")) + 1
    bare = found["bare"] or ""
    if bare[:1] not in "[{" and not text[begin : found.start("key")].strip(" \t\r-#"):
        end = text.find("\n", found.start("bare"))
        return text[found.start("bare") : end if end >= 0 else None]
    return bare


def _of_name(value: str) -> Iterator[tuple[str, bool]]:
    """Return what of a name is sought, and whether it says enough alone."""
    telling = _telling(value)
    named = [word for word in telling if word[:1].isupper()]
    inside = len(named) >= 2 or (named and not value.startswith(named[0]))
    if len(telling) >= 2 and inside and len(value) >= _LEAST:
        yield value, True
    for words in _whole_names(value):
        titled = _TITLED.fullmatch(words) is not None
        if len(_telling(words)) >= 2 - titled and len(words) >= _LEAST:
            yield words, True
    if len(named) == 1 or len(value.split(",")) > 1 or " and " in value:
        for word in named:
            if len(word) >= 4:
                yield word, False


def names_written(value: str) -> list[str]:
    """Return the words of somebody's name as the list has them."""
    return _WORD.findall(value)


def is_whole_name(value: str) -> bool:
    """Say whether a value is one person's name in full: no title, nobody beside, no trade.

    >>> [is_whole_name(said) for said in ("Joris van der Berg", "Aunt Mary Bell", "Jo and Bob Lee")]
    [True, False, False]
    """
    words = value.split()
    anybody = _LINKING_OR_ANYBODY - _PARTICLES | TITLES
    said = all(word[:1].isupper() or word in _PARTICLES for word in words)
    return said and anybody.isdisjoint(word.lower().strip(".") for word in words)


def _telling(value: str) -> list[str]:
    said = _WORD.findall(value)
    return [word for word in said if _LINKING_OR_ANYBODY.isdisjoint(word.lower().split("-"))]


def _whole_names(value: str) -> Iterator[str]:
    """Return the whole names in a value, also without what stands between first and last.

    "Nell and Bob Tarrowby" are two of one name; "Nell J. Tarrowby" is often written without the J.
    """
    runs = [run for run in _runs(value) if run]
    for run in runs:
        yield " ".join(run)
        if len(run) > 1 and "-" in run[-1]:  # a surname of two is often written by one of them
            yield from (f"{' '.join(run[:-1])} {half}" for half in run[-1].split("-")[:_HALVES])
        named = [word for word in run if len(_telling(word)) and len(word) >= 3]
        if len(run) >= 3 and len(named) >= 2:
            yield f"{named[0]} {named[-1]}"
    yield from (said for said in _TITLED.findall(value) if said[:1].isupper())
    couple = _COUPLE.search(value)
    if couple and len(_telling(couple[0])) >= 3:
        yield f"{couple[1]} {couple[2]}"


def _runs(value: str) -> Iterator[list[str]]:
    """Return the runs of names in a value: "Nell Tarrowby" of "Nell Tarrowby and the allotment"."""
    run: list[str] = []
    for part in value.replace(",", " , ").split():
        word = _WORD.match(part)
        if word and part[:1].isupper() and word[0].lower() not in _LINKING:
            run.append(part.strip(".;:()"))
        else:
            yield run
            run = []
    yield run


def _of_place(value: str) -> Iterator[tuple[str, bool]]:
    words = _WORD.findall(value)
    telling = any(letter.isdigit() for letter in value) or "@" in value or len(words) >= 2
    if telling and len(value) >= 6:
        yield value, True
    parts = [part.strip() for part in value.split(",")]
    for part in parts if len(parts) > 1 else ():
        # a street with its number, a code of the post; a town alone is anybody's
        if len(part) >= 6 and re.search(r"\d", part) and re.search(r"[^\W\d_]", part):
            yield part, True
