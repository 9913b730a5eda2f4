"""Every page that the plugin makes, in one list."""

from __future__ import annotations

from datetime import date

from stillroom.core.book import Book
from stillroom.publish.book_pages import BrowseLeaf, HomeLeaf
from stillroom.publish.library import Leaf, Library
from stillroom.publish.pages import RecipeLeaf


def open_library(book: Book, today: date) -> Library:
    """Read every recipe of a book; raises ProblemsFound with all problems."""
    return Library(book, book.load(), today)


def list_leaves(library: Library) -> dict[str, Leaf]:
    """Return the book's own pages and a page for each recipe, by the file each stands for."""
    own: tuple[Leaf, ...] = (HomeLeaf(), BrowseLeaf())
    recipes: tuple[Leaf, ...] = tuple(RecipeLeaf(recipe) for recipe in library.recipes)
    return {leaf.src_uri: leaf for leaf in (*own, *recipes)}
