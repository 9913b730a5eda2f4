"""Every page that the plugin makes, in one list."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

from stillroom.core.book import Book
from stillroom.core.checking import check_book
from stillroom.core.recipe.kind_dates import warn_of_dates
from stillroom.core.words.problems import Problem
from stillroom.publish.book_pages import BrowseLeaf, HomeLeaf
from stillroom.publish.library import Leaf, Library
from stillroom.publish.print_room import PrintRoomLeaf
from stillroom.publish.recipe_page import RecipeLeaf
from stillroom.publish.year_page import YearLeaf


def open_library(book: Book, today: date) -> Library:
    """Read every recipe of a book; raises ProblemsFound with all problems.

    A recipe that cannot be published as safe is a problem like any other.
    """
    return Library(book, check_book(book), today)


def list_warnings(library: Library) -> Iterator[Problem]:
    """Return where a method differs from the dates of its kind."""
    for recipe in library.recipes:
        yield from warn_of_dates(recipe)


def find_unpublished(library: Library, site: Path) -> Iterator[Problem]:
    """Find every recipe that was read and has no page in a site just made; there ought to be none.

    What was found on disk, what was read and what is published are thus one number.
    """
    for recipe in library.recipes:
        pages = (site / "r" / recipe.slug / "index.html", site / "r" / f"{recipe.slug}.html")
        if not any(page.is_file() for page in pages):
            what = "This recipe was read, and no page was made of it."
            mend = "Look whether another page or another plugin takes its place."
            yield Problem(recipe.file, 1, what, mend)


def list_leaves(library: Library) -> dict[str, Leaf]:
    """Return the book's own pages and a page for each recipe, by the file each stands for."""
    own: tuple[Leaf, ...] = (HomeLeaf(), BrowseLeaf(), YearLeaf(), PrintRoomLeaf())
    recipes: tuple[Leaf, ...] = tuple(RecipeLeaf(recipe) for recipe in library.recipes)
    return {leaf.src_uri: leaf for leaf in (*own, *recipes)}
