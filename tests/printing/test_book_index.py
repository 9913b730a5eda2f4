"""The indexes of the printed book with more under one head than a page holds, read from the PDF.

A book of short-lived presents has nearly all of it under December: thirty strangers' recipes, tried
on 29 November 2026, ran over one another at the foot of a page.
"""

from __future__ import annotations

from copy import deepcopy
from itertools import pairwise
from typing import Any

import pypdfium2
import pytest

from stillroom.printing.family_book import print_book

from .conftest import MM, open_pdf

LEAST_APART_PT = 9  # lines of the least type, 9 pt, whatever stands between them


def full_december(data: dict[str, Any], many: int) -> dict[str, Any]:
    swollen = deepcopy(data)
    slug = swollen["month_index"][0]["entries"][0]["slug"]
    swollen["month_index"] = [
        {"name": "April", "entries": swollen["month_index"][0]["entries"][:2]},
        {
            "name": "December",
            "entries": [
                {"title": f"Biscuit number {place:03}", "why": "by the 17th", "slug": slug}
                for place in range(many)
            ],
        },
    ]
    return swollen


def columns_of(made: bytes) -> list[list[list[dict[str, Any]]]]:
    """Return each page of the index by month as two columns of lines."""
    found = []
    # the other hundred pages are not read for their places: that is ten times the work
    words_of = [page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(made)]
    with open_pdf(made) as pdf:
        for page in (pdf.pages[at] for at, words in enumerate(words_of) if "Biscuit " in words):
            words = page.extract_words()
            if not any(word["text"] == "Biscuit" for word in words):
                continue
            note = [word["bottom"] for word in words if word["text"] == "Begin"]
            top = note[0] + 3 if note else 14 * MM  # below the running head
            foot = page.height - 14 * MM
            halves = ((0, page.width / 2), (page.width / 2, page.width))
            parts = [page.crop((left, top, right, foot)) for left, right in halves]
            found.append([part.extract_text_lines(return_chars=False) for part in parts])
    return found


@pytest.mark.parametrize("many", [12, 40, 110])
def test_a_month_longer_than_a_column_goes_on_under_its_head(
    data: dict[str, Any], many: int
) -> None:
    pages = columns_of(print_book(full_december(data, many)))
    assert len(pages) == (1 if many < 50 else 2)
    lines = [line for page in pages for column in page for line in column]
    said = " ".join(line["text"] for line in lines)
    for place in range(many):
        assert said.count(f"Biscuit number {place:03}") == 1
    columns = [column for page in pages for column in page if column]
    for column in columns:
        apart = [after["top"] - before["top"] for before, after in pairwise(column)]
        assert min(apart) >= LEAST_APART_PT
        # a head never stands at a foot, and no column goes on without one
        assert column[0]["text"].lower() in ("april", "december")
        assert "Biscuit" in column[-1]["text"]
        assert "Biscuit" in column[-2]["text"]
    # the two columns of the last page end alike, but for what stays together under one head
    ends = [column[-1]["bottom"] for column in pages[-1] if column]
    assert max(ends) - min(ends) <= 12 * MM
