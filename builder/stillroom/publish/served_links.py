"""While a book is served: a file that is made as it lies in the good site aside is linked there.

To begin a file takes a system ten times as long as to name one a second time, and one changed
recipe of a thousand leaves three thousand files as they were. A file is linked only where its bytes
are seen to be the same; where the disk knows no links it is written as ever. Nobody writes into a
linked file but the same bytes: only a book that has its pages to itself is served so.
"""

from __future__ import annotations

import os
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from mkdocs.structure.pages import Page


def link_same(data: bytes, kept: Path, place: Path) -> bool:
    """Let a file of these bytes stand at a place too, and say whether it now does."""
    try:
        if kept.read_bytes() != data:
            return False
        place.parent.mkdir(parents=True, exist_ok=True)
        os.link(kept, place)
    except OSError:
        return False
    return True


def link_page(html: str, aside: Path | None, page: Page) -> None:
    """Link a page that MkDocs is about to write, where the site aside has it as it is."""
    if aside is not None:
        data, file = html.encode("utf-8", "xmlcharrefreplace"), page.file
        link_same(data, aside / file.dest_uri, Path(file.abs_dest_path))
