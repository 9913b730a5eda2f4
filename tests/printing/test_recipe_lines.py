"""No line of a recipe of the printed book is set over another, read from the PDF's own places.

A new book, tried on 29 November 2026, had the second line of a recipe's facts printed over its
introduction: where no picture stands between them, nothing kept them apart.
"""

from __future__ import annotations

from collections.abc import Iterator
from copy import deepcopy
from itertools import combinations, product
from typing import Any

import pytest

from letters import open_letters
from stillroom.core.book import Book
from stillroom.core.recipe.model import Recipe
from stillroom.printing.family_book import book_data, print_book

from .conftest import TODAY

Word = dict[str, Any]

ONE_LINE = [["Makes", "700 ml"], ["Hands-on", "1 h"]]
TWO_LINES = [
    *ONE_LINE,
    ["Usable from", "2 months"],
    ["Best from", "8 months"],
    ["Keeps", "2 years (the book’s own figure)"],
    ["Strength", "about 28 % vol"],
]
INTRODUCTIONS = {
    "paragraph": {"kind": "paragraph", "number": 0},
    "item": {"kind": "item", "number": 0},
    "numbered": {"kind": "item", "number": 1},
    "heading": {"kind": "heading", "number": 0},
}
CASES = [
    *product(("", "Worth the wait."), ("", "From Joan"), (ONE_LINE, TWO_LINES), ("paragraph",)),
    *product(("",), ("",), (TWO_LINES,), ("item", "numbered", "heading", "none")),
]
"""Summary, who wrote it, facts, and what the introduction begins with."""


@pytest.fixture(scope="module")
def tried(book: Book, recipes: tuple[Recipe, ...]) -> list[list[Word]]:
    """Return the words of the first page of each case, set in one book."""
    chosen = book_data(book, recipes[: len(CASES)], TODAY)
    swollen = deepcopy(chosen)
    set_recipes = [recipe for chapter in swollen["chapters"] for recipe in chapter["recipes"]]
    for number, (recipe, case) in enumerate(zip(set_recipes, CASES, strict=True)):
        summary, written, strip, begins = case
        words = f"Introduction{number} over and over, " + "long enough for a second line, " * 3
        intro = [INTRODUCTIONS[begins] | {"runs": [run_of(words)]}] if begins != "none" else []
        recipe |= {
            "title": f"Trial{number}",
            "summary": summary,
            "written": written,
            "strip": strip,
            "picture_svg": "",
            "intro": intro,
        }
    with open_letters(print_book(swollen)) as pdf:
        pages = [page.extract_words(extra_attrs=["size"]) for page in pdf.pages]
    return [
        next(page for page in pages if begins_with(page, f"Trial{n}")) for n in range(len(CASES))
    ]


def run_of(words: str) -> dict[str, Any]:
    return {"text": words, "em": False, "strong": False}


def begins_with(page: list[Word], title: str) -> bool:
    """Tell the page with the recipe's own title, 20 pt, from those that name it."""
    return any(word["text"] == title and round(word["size"]) == 20 for word in page)


def set_over(page: list[Word]) -> Iterator[tuple[str, str]]:
    """Yield pairs of words on different lines of which one stands on the other."""
    for one, other in combinations(page, 2):
        across = min(one["x1"], other["x1"]) - max(one["x0"], other["x0"])
        down = min(one["bottom"], other["bottom"]) - max(one["top"], other["top"])
        if across > 0.5 and down > 1:
            yield one["text"], other["text"]


@pytest.mark.parametrize("number", range(len(CASES)))
def test_no_line_of_a_recipe_stands_on_another(tried: list[list[Word]], number: int) -> None:
    summary, written, strip, begins = CASES[number]
    page = tried[number]
    text = " ".join(word["text"] for word in page)
    assert list(set_over(page)) == []
    assert (f"Introduction{number}" in text) == (begins != "none")
    assert ("Worth the wait." in text) == bool(summary)
    assert ("From Joan" in text) == bool(written)
    # the facts take as many lines as the case means
    tops = {round(word["top"]) for word in page if word["text"] in ("Makes", "Strength")}
    assert len(tops) == (1 if strip is ONE_LINE else 2)


def test_words_set_over_others_are_found() -> None:
    """The second line of facts and the introduction, at the places of the book that was tried."""
    facts = {"text": "Keeps", "x0": 37, "x1": 59, "top": 75.0, "bottom": 84.0}
    intro = {"text": "Gran's.", "x0": 37, "x1": 68, "top": 80.0, "bottom": 91.0}
    assert list(set_over([facts, intro])) == [("Keeps", "Gran's.")]
    assert list(set_over([facts, intro | {"top": 88.0, "bottom": 99.0}])) == []
