"""The demo book read once, and a way to look at a PDF as an outsider does."""

from __future__ import annotations

import io
import re
import shutil
import zipfile
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pdfplumber
import pytest
from PIL import Image

from letters import read_letters
from stillroom.core.book import Book, open_book
from stillroom.core.label.labelling import UsageCard, make_card
from stillroom.core.recipe.model import Recipe
from stillroom.looks.card_designs import choose_design
from stillroom.looks.card_pictures import card_picture
from stillroom.printing.cards import CardJob, SheetOptions, print_cards
from stillroom.printing.family_book import book_data, print_book

ROOT = Path(__file__).resolve().parents[2]
MM = 72 / 25.4
MADE_ON = date(2026, 11, 12)
TODAY = date(2026, 11, 25)
CHOSEN = ("quince-ratafia", "lavender-sugar", "quince-chutney", "rosemary-salt")
SETTINGS = """
      family_book:
        dedication: For whoever comes up the lane.
        handwriting: hand.png
        says: With love from the Lane
        photographs:
          - {picture: hut.jpg, shows: The hut above the landing}
          - {picture: tree.jpg, shows: The quince tree in May}
"""


@pytest.fixture(scope="session")
def book() -> Book:
    return open_book(ROOT / "mkdocs.yml")


@pytest.fixture(scope="session")
def recipes(book: Book) -> tuple[Recipe, ...]:
    return book.load()


@pytest.fixture(scope="session")
def data(book: Book, recipes: tuple[Recipe, ...]) -> dict[str, Any]:
    return book_data(book, recipes, TODAY)


@pytest.fixture(scope="session")
def printed(data: dict[str, Any], make_once: Callable[..., Path]) -> bytes:
    """Return the demo book, set once for all workers."""

    def set_book(folder: Path) -> None:
        (folder / "book.pdf").write_bytes(print_book(data))

    return (make_once("printed", set_book) / "book.pdf").read_bytes()


@pytest.fixture(scope="session")
def pages(printed: bytes) -> list[str]:
    """Return the words of each page of the demo book."""
    return [page.extract_text() for page in read_letters(printed).pages]


@pytest.fixture(scope="session")
def own_book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a book of four recipes, two by somebody, with a household's own pictures."""
    root = tmp_path_factory.mktemp("own")
    (root / "recipes").mkdir()
    pictures = root / "pages" / "pictures"
    pictures.mkdir(parents=True)
    for slug in CHOSEN:
        text = (ROOT / "recipes" / f"{slug}.md").read_text(encoding="utf-8")
        if slug.startswith("quince"):
            text = text.replace("---\n", "---\nauthor: Great-aunt Ottilie\ndate: 1987-10\n", 1)
        (root / "recipes" / f"{slug}.md").write_text(text, encoding="utf-8")
        shutil.copy(ROOT / "site_demo" / "pages" / "pictures" / f"{slug}.svg", pictures)
    Image.new("RGB", (1300, 400), "white").save(pictures / "hand.png")
    Image.new("RGB", (400, 300), "grey").save(pictures / "hut.jpg")
    Image.new("RGB", (1600, 1200), "green").save(pictures / "tree.jpg")
    config = (ROOT / "mkdocs.yml").read_text(encoding="utf-8")
    config = config.replace("docs_dir: site_demo/pages", "docs_dir: pages")
    config = re.sub(r"      family_book:.*\n(?: {8}.*\n)+", "", config)  # the demo's own
    config = config.replace("      pictures: pictures\n", f"      pictures: pictures{SETTINGS}")
    (root / "mkdocs.yml").write_text(config, encoding="utf-8")
    return root


@pytest.fixture(scope="session")
def sheet(jobs: list[CardJob]) -> bytes:
    """Return a card of every recipe on the usual paper, set once."""
    return print_cards(jobs, "90x65", SheetOptions())


@pytest.fixture(scope="session")
def card_of(book: Book) -> Callable[..., UsageCard]:
    def make(recipe: Recipe, **words: str) -> UsageCard:
        url = f"{book.settings.site_url.rstrip('/')}/r/{recipe.slug}/"
        return make_card(recipe, book.settings, MADE_ON, url=url, **words)

    return make


@pytest.fixture(scope="session")
def jobs(recipes: tuple[Recipe, ...], card_of: Callable[..., UsageCard]) -> list[CardJob]:
    return [CardJob(card_of(recipe), recipe) for recipe in recipes]


@pytest.fixture(scope="session")
def pictured(book: Book, jobs: list[CardJob]) -> list[CardJob]:
    """Return the same cards with their recipes' own pictures."""
    design = choose_design("own-drawing")
    return [replace(job, picture=card_picture(job.recipe, book, design)) for job in jobs]


def open_pdf(made: bytes) -> pdfplumber.PDF:
    return pdfplumber.open(io.BytesIO(made))


def words_of(made: bytes) -> str:
    """All words of a PDF in their own order, in one line, spaces and soft hyphens evened out."""
    reader = read_letters(made)
    text = " ".join(page.extract_text() for page in reader.pages)
    return " ".join(text.replace("\u00ad", "").split())


def epub_words(made: bytes, name: str) -> str:
    """Return the words of one page of an EPUB."""
    with zipfile.ZipFile(io.BytesIO(made)) as archive:
        root = ElementTree.fromstring(archive.read(name))
    return " ".join(root.itertext())
