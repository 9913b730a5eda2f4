"""Sentences as data: what a room says, for Python and the browser alike.

A room keeps its sentences in `said/<language>.yml` beside its modules: a group of names, and for
each name the words with named blanks in braces. What hangs on a number has a form for each plural
category that Unicode's CLDR names for the language, chosen by the blank `count`; "=2" is for
exactly two. A refusal is two sentences: what is wrong, and what to write instead. Another language
is another such file in each room.

The browser's js/words/said.js says the same from the same files.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from typing import Any, Final

from stillroom.core.words.plain_yaml import read_plain
from stillroom.core.words.problems import Unreadable

OWN: Final = "en"
"""The language in which every room can speak."""

_spoken: str = OWN


@dataclass(frozen=True)
class Said:
    """A group of the sentences of one room; the room is named by its package.

    >>> say = Said("stillroom.core.words", "words")
    >>> say("and", others="a, b", last="c")
    'a, b and c'
    """

    room: str
    group: str

    def __call__(self, name: str, /, **blanks: object) -> str:
        """Say a sentence with its blanks filled; a wrong name or a missing blank is an error."""
        phrase = read_group(self.room, self.group, _spoken)[name]
        if not isinstance(phrase, str):
            phrase = choose(phrase, blanks["count"], spoken())
        return fill(phrase, blanks)

    def refuse(self, name: str, /, **blanks: object) -> Unreadable:
        """Return the refusal of that name, to be raised."""
        what, mend = self.phrases[name]
        return Unreadable(fill(what, blanks), fill(mend, blanks))

    @property
    def phrases(self) -> Mapping[str, Any]:
        """Every sentence of the group as it stands in its file."""
        return read_group(self.room, self.group, spoken())


def fill(phrase: str, blanks: Mapping[str, object]) -> str:
    """Fill the blanks of a phrase.

    >>> fill("{count} of {size}", {"count": 3, "size": "50 ml"})
    '3 of 50 ml'
    """
    return phrase.format_map(blanks)


def choose(forms: Mapping[str, str], count: object, language: str) -> str:
    """Return the form for a number: that of the very number, else that of its plural category.

    >>> choose({"=2": "twice", "one": "once", "other": "often"}, 2, "en")
    'twice'
    """
    number = count if isinstance(count, (int, Fraction)) else Fraction(str(count))
    if f"={number}" in forms:
        return forms[f"={number}"]
    return forms.get(plural_category(number, language), forms["other"])


@cache
def plural_category(number: Fraction | int, language: str) -> str:
    """Return the plural category of a number in a language: "one", "few", "other".

    A part of one is said as one is: "½ cup".

    >>> [plural_category(Fraction(n), "en") for n in ("0", "1/2", "1", "3/2", "2")]
    ['other', 'one', 'one', 'other', 'other']
    """
    size = 1 if 0 < number < 1 else number
    if language == OWN:  # CLDR's rule of English; to ask babel is to read all that it knows of it
        return "one" if size == 1 else "other"
    from babel.core import Locale  # late: most sentences count nothing, or in English

    whole = size.denominator == 1
    return str(Locale.parse(language).plural_form(int(size) if whole else float(size)))


def spoken() -> str:
    """Return the language in which things are said now."""
    return _spoken


@cache
def read_group(room: str, group: str, language: str) -> Mapping[str, Any]:
    """Return every sentence of a group of a room in a language."""
    found: Mapping[str, Any] = read_room(room, language)[group]
    return found


@cache
def read_room(room: str, language: str) -> dict[str, Any]:
    """Return every group of sentences of a room in a language."""
    return dict(read_plain(said_file(room, language).read_text(encoding="utf-8")))


def said_file(room: str, language: str) -> Traversable:
    """Return the file of a room's sentences in a language, which may not be there."""
    return files(room) / "said" / f"{language}.yml"
