"""The number of a page or a chapter, and the head of a printed page, at a copied text's ends."""

from __future__ import annotations

import re
from collections.abc import Sequence
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
