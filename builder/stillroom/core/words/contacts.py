"""Telephone numbers and addresses of e-mail in a text: what a book that everybody reads lacks.

Told by their form. An oven's heat, a weight, a day, a year and the number of a book are none.
Leaves out names and streets.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from stillroom.core.words.patterns import late_regex

_EMAIL: Final = late_regex(
    r"(?<![\w.+-])[\w.+-]{1,64}@(?:[\w-]{1,63}\.){1,4}"
    r"(?!(?:png|jpe?g|gif|webp|avif|svg)\b)[^\W\d_]{2,24}\b",
    re.IGNORECASE,
)
# as many figures, as near each other, as every number below has: most lines are told at a glance
_FIGURES: Final = late_regex(r"\d(?:[ ()./–-]{0,4}\d){6}")
_WEB: Final = late_regex(r"\b(?:https?://|www\.)\S+", re.IGNORECASE)
# the numbers of books and of goods, which are as long
_CATALOGUED: Final = late_regex(
    r"\b(?:ISBN|ISSN|EAN|GTIN|UPC|DOI|barcode)(?:-1[03])?\W{0,3}[\dX][\dX .–-]*", re.IGNORECASE
)
_PARTED: Final = r"[ ()./–-]{0,3}"
_UNIT: Final = r"(?!\w)(?!\s?(?:m[lg]|[ckd]?[gl]|oz|lbs?|cm|mm|cups?|[CF]|°|%)(?!\w))"
# +44 1326 555012; 0044 1326 555012
_ABROAD: Final = rf"(?:\+(?=[\d(])|(?<!\d)00(?=[1-9]))(?:{_PARTED}\d){{8,15}}"
# 07700 900123; (01326) 555 012; 06 12 34 56 78; 0171/1234567
_AT_HOME: Final = r"\(?0[1-9](?:[ )./–-]{0,3}\d){7,10}"
# (207) 555-0142; 207-555-0142; 1-207-555-0142
_AMERICAN: Final = (
    r"(?:1[ .-])?(?:\([2-9]\d\d\) ?|[2-9]\d\d(?P<by>[ .-]))[2-9]\d\d(?(by)(?P=by)|[ .-])\d{4}"
)
_TELEPHONE: Final = late_regex(
    rf"(?<![\w.,/+-])(?:{_ABROAD}|{_AT_HOME}|{_AMERICAN})(?![.,/-]?\d){_UNIT}"
)
# "Ring Margaret on 555 0123", "Tel. 612 345 678"
_LED: Final = late_regex(
    r"\b(?:tel|tél|phone|telephone|telefon|téléphone|telefono|teléfono|ring|call|text|mobile|mob"
    r"|whatsapp|handy|anrufen|móvil|cellulare)\b[^\d\n;!?]{0,30}?"
    rf"(?P<number>(?!\d{{4}}-\d\d-\d\d)\d(?:[ ()-]{{0,2}}\d){{6,12}})(?![.,/-]?\d){_UNIT}",
    re.IGNORECASE,
)


def find_contacts(text: str) -> Iterator[tuple[str, int]]:
    """Yield each telephone number and each address of e-mail in a text, and where it begins.

    >>> [found for found, _ in find_contacts("Ring Joan on 07700 900123, or joan@vane.example.")]
    ['07700 900123', 'joan@vane.example']
    >>> [*find_contacts("Bake at 180-200 C, 2027-12-18; ISBN 0-14-118276-5; 1000 g in 0.333333333")]
    []
    """
    if "@" not in text and not _FIGURES.search(text):
        return
    bare = _CATALOGUED.sub(_blank, _WEB.sub(_blank, text))
    found = {one.start(): one[0] for one in _EMAIL.finditer(text)}
    found |= {one.start(): one[0] for one in _TELEPHONE.finditer(bare)}
    bare = _TELEPHONE.sub(_blank, bare)
    found |= {one.start("number"): one["number"] for one in _LED.finditer(bare)}
    yield from ((said, at) for at, said in sorted(found.items()))


def holds_contact(text: str) -> bool:
    """Whether a telephone number or an address of e-mail stands in a text."""
    return next(find_contacts(text), None) is not None


def _blank(found: re.Match[str]) -> str:
    return " " * len(found[0])
