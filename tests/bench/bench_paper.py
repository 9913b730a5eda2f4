"""How long 100 cards, the whole book and its booklet take to print, and how large they become.

Run: python tests/bench/bench_paper.py. Prints figures and asserts nothing: times belong to a
machine. Cold is a new process that must load Python, the book and Typst, as a person who types
the command waits for; warm is the same printed again in one process that has done it once.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from datetime import date
from pathlib import Path

from stillroom.core.book import open_book
from stillroom.core.label.labelling import make_card
from stillroom.printing.booklet import count_pages, impose_booklet
from stillroom.printing.cards import CardJob, SheetOptions, print_cards
from stillroom.printing.epub_book import make_epub
from stillroom.printing.family_book import book_data, print_book

ROOT = Path(__file__).resolve().parents[2]
DAY = date(2026, 11, 12)
COPIES = 5
"""Of each of the demo book's twenty recipes: a hundred cards."""


def card_jobs() -> list[CardJob]:
    """Return a card of every recipe, so many copies of each."""
    book = open_book(ROOT / "mkdocs.yml")
    return [
        CardJob(make_card(one, book.settings, DAY, url="https://b.example/r/x/"), one, COPIES)
        for one in book.load()
    ]


def cards() -> bytes:
    """Print the hundred cards."""
    return print_cards(card_jobs(), "90x65", SheetOptions(title="Cards"))


def family_book() -> bytes:
    """Print the whole book, A5."""
    book = open_book(ROOT / "mkdocs.yml")
    return print_book(book_data(book, book.load(), DAY))


def booklet() -> bytes:
    """Print the whole book and impose it on A4."""
    made = family_book()
    return impose_booklet(made, count_pages(made), "Booklet", ("en", "GB"))


def epub() -> bytes:
    """Write the whole book as an EPUB."""
    book = open_book(ROOT / "mkdocs.yml")
    return make_epub(book_data(book, book.load(), DAY))


COMMANDS: dict[str, tuple[Callable[[], bytes], list[str]]] = {
    "cards": (cards, ["cards", "--count", str(COPIES)]),
    "book": (family_book, ["book"]),
    "booklet": (booklet, ["book", "--booklet"]),
    "epub": (epub, ["epub"]),
}


def measure(name: str) -> str:
    """Print one thing cold and warm; return the figures as one line."""
    make, words = COMMANDS[name]
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "made"
        begun = time.perf_counter()
        subprocess.run(
            [sys.executable, "-m", "stillroom.cli", "print", *words, "--out", str(out)],
            cwd=ROOT, check=True, stdout=subprocess.DEVNULL,
        )  # fmt: skip
        cold = time.perf_counter() - begun
        size = out.stat().st_size
    make()
    begun = time.perf_counter()
    made = make()
    warm = time.perf_counter() - begun
    pages = f"{count_pages(made):4d} pages" if made.startswith(b"%PDF") else " " * 10
    return f"{name:8}{pages} cold {cold:5.1f} s, warm {warm:5.1f} s, {size / 1000:6.0f} kB"


if __name__ == "__main__":
    print(f"{sum(job.copies for job in card_jobs())} cards of {len(card_jobs())} recipes")
    for wanted in sys.argv[1:] or list(COMMANDS):
        print(measure(wanted), flush=True)
