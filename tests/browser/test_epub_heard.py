"""The EPUB's pages held against axe in Chromium, as checkers of EPUBs do."""

from __future__ import annotations

import io
import zipfile
from datetime import date
from pathlib import Path

import pytest
from playwright.sync_api import Page

from sampling import share
from stillroom.core.book import open_book
from stillroom.printing.epub_book import make_epub
from stillroom.printing.family_book import book_data

from .looking import Looker

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.sampled
def test_axe_finds_nothing_on_any_page_of_the_epub(page: Page, tmp_path: Path) -> None:
    book = open_book(ROOT / "mkdocs.yml")
    made = make_epub(book_data(book, book.load(), date(2026, 11, 28), whom="the Hollins"))
    with zipfile.ZipFile(io.BytesIO(made)) as packed:
        packed.extractall(tmp_path)
    files = sorted((tmp_path / "OEBPS").glob("*.xhtml"))
    assert len(files) >= 20
    # a page of an EPUB is a part of one whole, which its checkers ask no landmark of its own for
    rules = {"resultTypes": ["violations"], "rules": {"landmark-one-main": {"enabled": False}}}
    found = {}
    looker = Looker(page.goto, page.evaluate)
    for file in files[:: share(3, 1)]:  # two templates make nearly all
        page.goto(file.as_uri())
        found[file.name] = looker.told_by_axe(rules)
    assert {name: wrong for name, wrong in found.items() if wrong} == {}
