"""Every page that the plugin makes, in one list."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from stillroom.core.book import Book
from stillroom.core.checking import check_book
from stillroom.core.kind_dates import warn_of_dates
from stillroom.core.problems import Problem
from stillroom.publish.book_pages import BrowseLeaf, HomeLeaf
from stillroom.publish.library import Leaf, Library
from stillroom.publish.pages import RecipeLeaf
from stillroom.publish.print_room import PrintRoomLeaf
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


def list_leaves(library: Library) -> dict[str, Leaf]:
    """Return the book's own pages and a page for each recipe, by the file each stands for."""
    own: tuple[Leaf, ...] = (HomeLeaf(), BrowseLeaf(), YearLeaf(), PrintRoomLeaf())
    recipes: tuple[Leaf, ...] = tuple(RecipeLeaf(recipe) for recipe in library.recipes)
    return {leaf.src_uri: leaf for leaf in (*own, *recipes)}
