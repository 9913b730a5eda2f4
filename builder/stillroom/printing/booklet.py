"""Imposes an A5 book on A4 sheets, to be printed on both sides, folded and sewn or stapled.

Pages are padded to whole sheets of four. The booklet is a picture of the book's pages: it keeps
their words but not their tags, since folded sheets are out of reading order.
"""

from __future__ import annotations

import re
import shutil
import tempfile
from pathlib import Path

from stillroom.printing.typesetting import TEMPLATES, typeset


def booklet_order(pages: int) -> list[tuple[int | None, int | None]]:
    """Return for each side of each sheet its left and right page; None is left blank.

    Sides are in printing order: front of the outermost sheet, its back, and so inwards. The
    sheets are turned on their short edge.

    >>> booklet_order(4)
    [(4, 1), (2, 3)]
    >>> booklet_order(5)
    [(None, 1), (2, None), (None, 3), (4, 5)]
    """
    total = -(-pages // 4) * 4
    sides: list[tuple[int, int]] = []
    for sheet in range(total // 4):
        first, last = 2 * sheet + 1, total - 2 * sheet
        sides += [(last, first), (first + 1, last - 1)]
    return [
        (left if left <= pages else None, right if right <= pages else None)
        for left, right in sides
    ]


def impose_booklet(book_pdf: bytes, pages: int, title: str, language: tuple[str, str]) -> bytes:
    """Return the A4 booklet of an A5 book of so many pages."""
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        (root / "book.pdf").write_bytes(book_pdf)
        for name in ("booklet.typ", "theme.typ"):
            shutil.copy(TEMPLATES / name, root / name)
        data = {
            "title": title,
            "language": language[0],
            "region": language[1],
            "sides": booklet_order(pages),
        }
        return typeset("booklet.typ", data, root=root, accessible=False).pdf


def count_pages(pdf: bytes) -> int:
    """Return how many pages a PDF of Typst's has: its page tree says so in plain bytes."""
    return max(int(found) for found in re.findall(rb"/Type\s*/Pages.*?/Count\s+(\d+)", pdf, re.S))
