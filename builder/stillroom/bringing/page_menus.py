"""The rows of a site's menu, as a page is pasted: one word to a line, or all of them on one.

By the words of words.yml. Leaves out what else leads elsewhere: outside_recipe.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.heads import plain, words
from stillroom.core.words.patterns import late_regex

_MOST_WORDS: Final = 16
_LONGEST_ENTRY: Final = 4
_LEAST_ENTRIES: Final = 3
_WORD: Final = late_regex(r"[^\W_]+")
_HOME: Final = frozenset(
    {"home", "homepage", "start", "startseite", "startsida", "startside", "inicio", "início"}
    | {"accueil", "hem", "hjem", "forside", "domů"}
)


def rows_of_menus(rows: Sequence[Row]) -> set[int]:
    """Return the rows of a site's menu: its words on end, or one that only a page says.

    >>> said = ("Startseite", "Rezepte", "Suche", "Plum jam", "Hopp til innhold", "Jam", "Recipes")
    >>> sorted(rows_of_menus([Row(text) for text in said]))
    [0, 1, 2, 4]
    """
    single = {at for at, row in enumerate(rows) if _is_of(row, "menu_alone") or _is_wide(row)}
    listed = {at for at, row in enumerate(rows) if _is_of(row, "menu")}
    either = single | listed
    return single | {at for at in listed if either & {at - 1, at + 1}}


def _is_of(row: Row, name: str) -> bool:
    return row.shape != "step" and plain(row.text) in words(name)


def _is_wide(row: Row) -> bool:
    """Whether a row is a whole menu: its words, or the site's first page and others behind it.

    >>> _is_wide(Row("Home Recipes About Contact")), _is_wide(Row("HOME BLOG BOOKS EVENTS"))
    (True, True)
    >>> _is_wide(Row("Home made recipes")), _is_wide(Row("Home About my jam and its fruit"))
    (False, False)
    """
    said = _WORD.findall(row.text)
    if row.shape == "step" or not _LEAST_ENTRIES <= len(said) <= _MOST_WORDS:
        return False
    if re.search(r"[.!?;:]$|\d\s?(?:g|kg|ml|l|cups?)\b", row.text.strip()):
        return False
    entries, left = _entries(said)
    alike = row.text.isupper() or all(word[:1].isupper() for word in said)
    from_home = said[0].lower() in _HOME and alike and len(left) <= entries
    return (entries >= _LEAST_ENTRIES and not left) or (from_home and entries >= _LEAST_ENTRIES - 1)


def _entries(said: Sequence[str]) -> tuple[int, list[str]]:
    """Return how many entries of a menu stand in words, the longest first, and what is none."""
    at, entries = 0, 0
    left: list[str] = []
    while at < len(said):
        many = next(
            (
                many
                for many in range(_LONGEST_ENTRY, 0, -1)
                if plain(" ".join(said[at : at + many])) in words("menu") | words("menu_alone")
            ),
            0,
        )
        entries += bool(many)
        left += [] if many else [said[at]]
        at += many or 1
    return entries, left


# "[edit]", "[bewerken | brontekst bewerken]", behind the headings of a common encyclopedia's pages
_EDIT_MARK: Final = late_regex(
    r"\s*\[\s*(?:edit|bearbeiten|bewerken|modifier|modifica|editar|redigera|rediger|edytuj|upravit)\b[^\]]{0,60}\]\s*$",
    re.IGNORECASE,
)


def without_edit_marks(rows: Sequence[Row]) -> list[Row]:
    """Return rows without what leads to where each of a page's parts is written.

    >>> [row.text for row in without_edit_marks([Row("Ingredients [edit]"), Row("Pot it [hot]")])]
    ['Ingredients', 'Pot it [hot]']
    """
    return [
        replace(row, text=bare) if (bare := _EDIT_MARK.sub("", row.text)) != row.text else row
        for row in rows
        if _EDIT_MARK.sub("", row.text)
    ]
