"""What each command reads first, read once for all its copies: the larder, the words, the patterns.

Nothing of a book stays: what is kept of a file is known by its words, and the demo book is read as
any test reads it. See loaded.py.
"""

from __future__ import annotations

from pathlib import Path

from stillroom.core.book import open_book
from stillroom.core.checking import find_unsafe

_BOOK = open_book(Path(__file__).resolve().parents[1] / "mkdocs.yml")
for _recipe in _BOOK.load():
    find_unsafe(_recipe, _BOOK.settings)
