"""The number of a page or a chapter, and the head of a printed page, at a copied text's ends."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import Row

_LEAST_FACTS: Final = 3
_PAGE_NUMBER: Final = re.compile(r"[-–—\[(]?\s?\d{1,4}\s?[-–—\])]?")
# the head of a printed page, as it is copied with the page's number
_OF_A_BOOK: Final = re.compile(
    r"\b(?:cook\s?-?book|cookery|receipts|kochbuch|kookboek)\b", re.IGNORECASE
)
_CHAPTER: Final = re.compile(r"(?:chapter\s+)?(?:[IVXLC]{2,7}|[IVX])\.?")
_PAGE_END: Final = re.compile(r"\d{1,3}|[IVXLC]{2,7}\.?")


# "Licor de laranja editar", "Plum jam [edit]": what a common book sets behind each of its heads
_EDIT: Final = re.compile(
    r"\s+(?:\[\s?)?(?:edit(?:\s?\|\s?edit\ssource)?|editar(?:\s?\|\s?editar\s[^\W\d ]+)?"
    r"|bearbeiten(?:\s?\|\s?quelltext\sbearbeiten)?|modifier(?:\s?\|\s?modifier\sle\s\w+)?"
    r"|modifica(?:\s?\|\s?modifica\s\w+)?|bewerken(?:\s?\|\s?\w+\sbewerken)?"
    r"|redigera(?:\s?\|\s?redigera\s\w+)?|redig[eé]r(?:\s?\|\s?rediger\s\w+)?"
    r"|edytuj(?:\s?\|\s?edytuj\s\w+)?)(?:\s?\])?"
)
_LEAST_HEADS: Final = 2


def without_edit_marks(rows: Sequence[Row]) -> list[Row]:
    """Return rows without "edit" behind heads, where two or more have it.

    >>> wiki = [Row("Plum jam [edit]"), Row("1 kg plums"), Row("Method [edit]")]
    >>> [row.text for row in without_edit_marks(wiki)]
    ['Plum jam', '1 kg plums', 'Method']
    >>> [row.text for row in without_edit_marks([Row("What to edit"), Row("Boil it.")])]
    ['What to edit', 'Boil it.']
    """
    found = [
        next((one for one in _EDIT.finditer(row.text) if one.end() == len(row.text)), None)
        if row.shape in ("line", "heading")
        else None
        for row in rows
    ]
    if sum(one is not None for one in found) < _LEAST_HEADS:
        return list(rows)
    return [
        replace(row, text=row.text[: one.start()].rstrip(" :")) if one else row
        for row, one in zip(rows, found, strict=True)
    ]


def without_page_marks(rows: Sequence[Row]) -> list[Row]:
    """Return rows without the number of a page or a chapter at their beginning or end: "IV"."""
    kept = list(rows)
    if len(kept) > _LEAST_FACTS and _PAGE_NUMBER.fullmatch(kept[0].text.strip()):
        of_book = bool(_OF_A_BOOK.search(kept[1].text)) and kept[1].text.isupper()
        kept = kept[2:] if of_book else kept[1:] if kept[1].gap else kept
    while len(kept) > _LEAST_FACTS and kept[1].gap and _CHAPTER.fullmatch(kept[0].text.strip()):
        kept.pop(0)
    while len(kept) > _LEAST_FACTS and kept[-1].gap and _PAGE_END.fullmatch(kept[-1].text.strip()):
        kept.pop()
    return kept
