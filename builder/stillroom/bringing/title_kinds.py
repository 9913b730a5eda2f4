"""What a title says of its kind in other languages than English: by names, endings and beginnings.

Each leads to an everyday word of the kinds, which may be one that is asked about. The words are
title_kinds.yml. Leaves out English, whose titles end with what is made: naming.py.
"""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import Any, Final

import yaml

_COMPOUND: Final = re.compile(r"[^\W\d_-]{4,}")
_OF_IT: Final = re.compile(r"\s+(?:d['’]|de\s|di\s|aux?\s|à\s|al(?:la)?\s)", re.IGNORECASE)
_LEAST_BEFORE: Final = 2
"""Letters that stand at least before the end of a word that is joined of two."""


@cache
def _table() -> dict[str, Any]:
    text = (Path(__file__).parent / "title_kinds.yml").read_text(encoding="utf-8")
    table: dict[str, Any] = yaml.safe_load(text)
    return table


@cache
def _not_eaten() -> tuple[tuple[str, re.Pattern[str]], ...]:
    """Return what is not eaten with its patterns, as they stand anywhere between whole words."""
    return tuple(
        (word, re.compile(rf"(?<!\w)(?:[\w-]*-)?(?:{'|'.join(said)})(?!\w)", re.IGNORECASE))
        for word, said in _table()["not_eaten"].items()
    )


@cache
def _named() -> tuple[tuple[str, re.Pattern[str]], ...]:
    """Return the names with their patterns, as they end what a title names."""
    behind = "|".join(_table()["behind"])
    return tuple(
        (word, re.compile(rf"(?<!\w)(?:{'|'.join(said)})(?:\s+(?:{behind}))?$", re.IGNORECASE))
        for word, said in _table()["named"].items()
    )


@cache
def _cut_at() -> re.Pattern[str]:
    return re.compile(rf"\s+(?:{'|'.join(_table()['cut_at'])})\s|\s?[(:,–—|]", re.IGNORECASE)


@cache
def _behind() -> re.Pattern[str]:
    return re.compile(rf"\s+(?:{'|'.join(_table()['behind'])})$", re.IGNORECASE)


@cache
def _before() -> re.Pattern[str]:
    return re.compile(rf"^(?:(?:{'|'.join(_table()['before'])})(?:\s+|(?<=['’])))+", re.IGNORECASE)


def _what_it_names(title: str) -> str:
    """Return a title up to what goes with it: "Inlagda rödbetor med pepparrot"."""
    return _cut_at().split(title.strip(), maxsplit=1)[0].strip()


@cache
def _except(name: str) -> re.Pattern[str]:
    return re.compile(rf"(?:{'|'.join(_table()[name])})", re.IGNORECASE)


@cache
def _words_by(name: str) -> dict[str, str]:
    return {word: called for called, words in _table()[name].items() for word in words}


def named_elsewhere(title: str) -> str:
    """Return the everyday word of a name that stands before all that single words say; "" for none.

    >>> named_elsewhere("Badesalz mit Rosen"), named_elsewhere("Confit d'oignons rouges")
    ('bath salt', 'preserve')
    >>> named_elsewhere("Inlagd sill"), named_elsewhere("Dulce de leche pie")
    ('pickled herring', '')
    """
    for word, pattern in _not_eaten():
        if pattern.search(title):
            return word
    named = _what_it_names(title)
    return next((word for word, pattern in _named() if pattern.search(named)), "")


def begun_elsewhere(title: str) -> str:
    """Return the everyday word of what a title begins with; "" for none.

    >>> begun_elsewhere("Geleia de morango"), begun_elsewhere("Sel"), begun_elsewhere("Pan-fried")
    ('jelly', '', '')
    >>> begun_elsewhere("Świąteczne pierniczki"), begun_elsewhere("La torta")
    ('biscuits', 'cake')
    """
    title = _before().sub("", title.strip()) or title
    first = title.lower().split(" ")[0]
    if _except("begins_not").match(title.strip()):
        return ""
    if first in _table()["begins_of"] and _OF_IT.match(title[len(first) :]):
        return first
    return _words_by("begins").get(first, "")


def _ended(named: str, ends: dict[str, str]) -> bool:
    last = named.split(" ")[-1]
    return any(last[at:] in ends for at in range(_LEAST_BEFORE, len(last)))


def by_its_ending(title: str, *, as_title: bool = False) -> str:
    """Return the everyday word for what a compound names; "" for none.

    `as_title` leaves out what is as often a line of a list as a title: "Apfelessig".

    >>> by_its_ending("Quittenlikör"), by_its_ending("Eierlikör"), by_its_ending("Hummus")
    ('liqueur', 'egg liqueur', '')
    >>> by_its_ending("Solbærsyltetøj"), by_its_ending("Pandekager"), by_its_ending("Knäck")
    ('jam', '', 'caramel')
    """
    ends = _words_by("ends")
    whole = _what_it_names(title.lower())
    named = _behind().sub("", whole)
    if not _ended(named, ends) and _ended(whole, ends):
        named = whole  # "Frisk hjemmelaget ripsgelé": such a word stands before it too
    found = _COMPOUND.findall(named.replace("-", ""))
    for place, word in enumerate(found, 1):
        if _except("ends_not").fullmatch(word):
            continue
        for at in range(len(word)):
            called = ends.get(word[at:])
            # "Pesto lasagne" is no pesto: a whole word stands last; "Salz" alone is a thing
            alone = at == 0 and place == len(found) and called not in _table()["never_alone"]
            if called and (at >= _LEAST_BEFORE or alone):
                return "" if as_title and called in _table()["also_in_lists"] else called
    return ""
