"""The built demo book, read once for every test of this folder."""

from __future__ import annotations

from pathlib import Path

import pytest
from bs4 import BeautifulSoup


@pytest.fixture(scope="session")
def pages(built_book: Path) -> dict[str, BeautifulSoup]:
    """Every page of the book by its path, read with BeautifulSoup."""
    return {
        path.relative_to(built_book).as_posix(): BeautifulSoup(
            path.read_text(encoding="utf-8"), "html.parser"
        )
        for path in sorted(built_book.rglob("*.html"))
    }


@pytest.fixture(scope="session")
def recipe_pages(pages: dict[str, BeautifulSoup]) -> dict[str, BeautifulSoup]:
    """Every recipe's page by its slug; pages that only lead on are left out."""
    return {
        path.split("/")[1]: page
        for path, page in pages.items()
        if path.startswith("r/") and page.find("meta", {"name": "robots"}) is None
    }
