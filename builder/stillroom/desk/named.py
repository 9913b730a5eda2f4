"""Countries, languages and money by their names, to be chosen from: no cook writes "en_GB"."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any, Final, cast

from babel import Locale, UnknownLocaleError
from babel.core import get_global
from babel.languages import get_official_languages

from stillroom.beginning.book import READ

_NONE: Final = ("EU", "EZ", "UN", "XA", "XB", "QO", "ZZ")
Choice = tuple[str, str]
"""What stands in the file, and what it is called."""


@dataclass(frozen=True)
class Languages:
    """Those whose numbers and foods the book reads, and those it only writes dates in."""

    read: tuple[Choice, ...]
    others: tuple[Choice, ...]

    def names(self, code: str) -> bool:
        """Whether a language is one of those offered."""
        return any(code == one for one, _ in (*self.read, *self.others))


@cache
def countries() -> tuple[Choice, ...]:
    """Return the code and the English name of every country, by name."""
    names = Locale("en").territories
    found = [
        (code, name)
        for code, name in names.items()
        if len(code) == 2 and code.isalpha() and code not in _NONE
    ]
    return tuple(sorted(found, key=_in_order))


def _in_order(choice: Choice) -> str:
    """Return a name as a dictionary orders it: "Åland" among the As.

    >>> sorted([("TR", "Türkiye"), ("TC", "Turks"), ("AX", "Åland")], key=_in_order)
    [('AX', 'Åland'), ('TR', 'Türkiye'), ('TC', 'Turks')]
    """
    parted = unicodedata.normalize("NFKD", choice[1])
    return "".join(letter for letter in parted if not unicodedata.combining(letter)).lower()


@cache
def languages() -> Languages:
    """Return the languages of every country, each with whose dates and numbers it has, by name."""
    found = sorted(_spoken(), key=_in_order)
    return Languages(
        tuple(row for row in found if row[0].partition("_")[0] in READ),
        tuple(row for row in found if row[0].partition("_")[0] not in READ),
    )


def _spoken() -> Iterator[Choice]:
    names = Locale("en").languages
    for country, name in countries():
        for spoken in get_official_languages(country, regional=False, de_facto=True):
            code = f"{spoken}_{country}"
            try:
                is_known = str(Locale.parse(code)) == code
            except (UnknownLocaleError, ValueError):
                continue
            if is_known and spoken in names:
                yield code, f"{names[spoken]}, as in {name}"


@cache
def currencies() -> tuple[Choice, ...]:
    """Return the code and the English name of everything that is paid with today, by name."""
    held = cast("dict[str, Any]", get_global("territory_currencies"))
    used = {
        money
        for rows in held.values()
        for money, _, end, is_tender in rows
        if is_tender and not end
    }
    names = Locale("en").currencies
    return tuple(sorted(((code, names[code]) for code in used), key=lambda row: row[1]))
