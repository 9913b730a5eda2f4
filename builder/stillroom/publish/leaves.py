"""Every page that the plugin makes, in one list."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

from stillroom.core.book import Book
from stillroom.core.checking import check_book
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.publish.book_pages import BrowseLeaf, HomeLeaf
from stillroom.publish.keeping_work import AtHand, open_shelf
from stillroom.publish.library import Leaf, Library
from stillroom.publish.listed import warnings
from stillroom.publish.print_room import MOST_ON_PAGE, PrintRoomLeaf
from stillroom.publish.recipe_page import RecipeLeaf
from stillroom.publish.send_page import SendLeaf
from stillroom.publish.set_aside import Aside
from stillroom.publish.whole_book import list_wholes
from stillroom.publish.workers import work_out_all
from stillroom.publish.working import Worked, WorkedLeaf
from stillroom.publish.year_page import YearLeaf
from stillroom.saving.kept_patterns import keep_patterns, take_patterns


def open_library(book: Book, today: date, at_hand: AtHand | None = None) -> Library:
    """Read every recipe of a book and work it out; raises ProblemsFound with all problems.

    A recipe that cannot be published as safe is a problem like any other. What was worked out
    before and has not changed is taken from where it was kept, or from what is at hand of the build
    before this one.
    """
    take_patterns()
    library = Library(book, (), today)
    try:
        larder = book.own_larder().larder
    except ProblemsFound:
        return replace(library, recipes=check_book(book))  # and all that is wrong besides
    shelf = open_shelf(library, larder, at_hand)
    aside = Aside() if at_hand is None and library.files_counted > MOST_ON_PAGE else None
    paths = book.recipe_files()
    found = {path: _laid(shelf.take(path), aside) for path in paths}
    missing = [path for path, worked in found.items() if worked is None]
    done = work_out_all(missing, library, larder)
    for path, (worked, packed) in zip(missing, done, strict=True):
        if worked is not None:
            shelf.put(path, worked, packed)
        found[path] = _laid(worked, aside)
    keep_patterns()
    sound = [worked for worked in found.values() if worked is not None]
    others = check_book(book, [worked.shared for worked in sound])
    if others:  # what was wrong with them is no longer
        return open_library(book, today, at_hand)
    shelf.clear(paths)
    recipes = sorted((one.recipe for one in sound), key=lambda recipe: recipe.title.lower())
    worked_out = {worked.recipe.slug: worked for worked in sound}
    return replace(library, recipes=tuple(recipes), worked=worked_out)


def _laid(worked: Worked | None, aside: Aside | None) -> Worked | None:
    """Lay aside what a recipe came to, where its book is long and nobody builds it again."""
    if worked is not None and aside is not None:
        worked.lay_aside(aside)
    return worked


def list_warnings(library: Library) -> Iterator[Problem]:
    """Return where a method differs from its kind's dates, and where a telephone number stands."""
    for recipe in library.recipes:
        yield from warnings(recipe, library)


def find_unpublished(library: Library, site: Path) -> Iterator[Problem]:
    """Find every recipe that was read and has no page in a site just made; there ought to be none.

    What was found on disk, what was read and what is published are thus one number.
    """
    for recipe in library.recipes:
        pages = (site / "r" / recipe.slug / "index.html", site / "r" / f"{recipe.slug}.html")
        if not any(page.is_file() for page in pages):
            what = "This recipe was read, and no page was made of it."
            mend = 'Look whether another page, or another under "plugins:", takes its place.'
            yield Problem(recipe.file, 1, what, mend)


def list_leaves(library: Library) -> dict[str, Leaf]:
    """Return the book's own pages and a page for each recipe, by the file each stands for."""
    own: tuple[Leaf, ...] = (HomeLeaf(), BrowseLeaf(), YearLeaf(), PrintRoomLeaf())
    own += (SendLeaf(),) if library.settings.send_us else ()
    own += list_wholes(library)
    recipes: tuple[Leaf, ...] = tuple(_leaf_of(library, recipe) for recipe in library.recipes)
    return {leaf.src_uri: leaf for leaf in (*own, *recipes)}


def _leaf_of(library: Library, recipe: Recipe) -> Leaf:
    worked = library.worked.get(recipe.slug)
    return RecipeLeaf(recipe) if worked is None else WorkedLeaf(worked)
