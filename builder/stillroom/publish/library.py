"""The recipes and settings of one build, and what every page asks of them.

Knows no MkDocs: another generator could be put under the book from here.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, Protocol

from stillroom.core.book import Book, BookSettings
from stillroom.core.label.labelling import Label, label_recipe
from stillroom.core.recipe.kinds import Kind
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.giving_days import find_day
from stillroom.core.words.text_files import is_file_at
from stillroom.looks.card_designs import Design, designs_of
from stillroom.looks.link_previews import preview_size
from stillroom.looks.photographs import PHOTOGRAPHS, open_pillow
from stillroom.publish.pictures import Drawing, describe_drawing, describe_emblem
from stillroom.publish.templating import say_day

if TYPE_CHECKING:
    from stillroom.publish.working import Worked

PREVIEWS: Final = "assets/stillroom/previews"
"""Where the pieces of photographs lie that are shown with a link to a page."""

Link = Callable[[str], str]
"""From a file of the book, as "browse.md" or "pictures/quince.svg", to a relative address."""


class Leaf(Protocol):
    """One page that the book makes. `src_uri` is the Markdown file it stands for."""

    @property
    def src_uri(self) -> str:
        """Return the Markdown file that the page stands for."""

    @property
    def in_nav(self) -> bool:
        """Return whether the page belongs in the navigation."""

    def head(self, library: Library, url: str) -> Mapping[str, Any]:
        """Return the page's title, description and other facts for its head."""

    def body(self, library: Library, prose: str, link: Link, url: str) -> str:
        """Return the page's HTML around the prose its file may hold."""


@dataclass(frozen=True)
class ComingDay:
    """A giving day that is still to come: its name, its date, and both in words."""

    name: str
    day: date
    words: str


@dataclass(frozen=True)
class Library:
    """Every recipe of a book on the day it is built."""

    book: Book
    recipes: tuple[Recipe, ...]
    today: date
    worked: Mapping[str, Worked] = field(default_factory=dict, repr=False, compare=False)
    """What recipes came to, by their names in addresses, where they were worked out before."""

    @property
    def settings(self) -> BookSettings:
        """The book's settings."""
        return self.book.settings

    @cached_property
    def files_counted(self) -> int:
        """How many recipe files the book has, whether or not they are sound."""
        return len(self.book.recipe_files())

    def label_of(self, recipe: Recipe) -> Label:
        """Return a recipe's label for no day in particular."""
        return label_recipe(recipe, self.settings)

    @cached_property
    def coming_days(self) -> tuple[ComingDay, ...]:
        """The next two occurrences of each giving day, soonest first."""
        found = []
        for rule in self.settings.giving_days:
            first = find_day(rule.day, self.today, self.settings.country)
            second = find_day(rule.day, first + timedelta(days=1), self.settings.country)
            found += [ComingDay(rule.name, day, self.say_day(day)) for day in (first, second)]
        return tuple(sorted(found, key=lambda coming: coming.day))

    @cached_property
    def designs(self) -> Mapping[str, Design]:
        """Every design of cards and tags, the book's own among them."""
        return designs_of(self.book)

    def say_day(self, day: date) -> str:
        """Return a date in the book's language, with its day of the week."""
        return say_day(day, self.settings.language, "EEEE d MMMM y")

    def after(self, coming: ComingDay) -> ComingDay:
        """Return the next occurrence of the same giving day."""
        return next(
            later
            for later in self.coming_days
            if later.name == coming.name and later.day > coming.day
        )

    def address_of(self, recipe: Recipe) -> str:
        """Return the whole address of a recipe's page, which never changes."""
        return f"{self.settings.site_url.rstrip('/')}/{address_path(recipe.slug)}"

    def lasting_address(self, recipe: Recipe) -> str:
        """Return the address that may stand on paper; "" where the book has none yet.

        A square of "/r/quince-ratafia/" would lead whoever is given it nowhere.
        """
        return self.address_of(recipe) if self.settings.site_url else ""

    def absolute(self, path: str) -> str:
        """Return the whole address of a file of the book, or "" for no file."""
        return f"{self.settings.site_url.rstrip('/')}/{path}" if path else ""

    def picture_of(self, recipe: Recipe) -> str:
        """Return the path of a recipe's picture for whoever shows no drawing, "" without one."""
        return self.preview_of_picture(picture_name(recipe))

    def preview_of(self, recipe: Recipe) -> str:
        """Return the path of the picture that previews of a link show, or "" when there is none."""
        is_cut = self.photograph_of(recipe) is not None and open_pillow() is not None
        return f"{PREVIEWS}/{recipe.slug}.jpg" if is_cut else self.picture_of(recipe)

    def photograph_of(self, recipe: Recipe) -> Path | None:
        """Return the photograph of a recipe that has no picture made for previews by hand."""
        path = self.picture_of(recipe)
        file = self.book.docs_dir / path
        return file if path and "/previews/" not in path and is_file_at(file) else None

    def size_of_preview(self, recipe: Recipe) -> tuple[int, int] | None:
        """Return the size of a photograph's preview; None for one drawn to measure."""
        file = self.photograph_of(recipe)
        if file is None:
            return None
        if open_pillow() is not None:
            return preview_size(file)
        drawing = describe_drawing(file, file.name, "")
        return drawing.width, drawing.height

    def preview_of_picture(self, picture: str) -> str:
        """Return the path of the preview of a drawing, or "" when there is none.

        Previews take no SVG: beside "quince.svg" lies "previews/quince.png". A photograph is its
        own.
        """
        name = f"previews/{Path(picture).stem}.png"
        has_one = is_file_at(self.book.pictures_dir / name)
        if has_one:
            return f"{self.settings.pictures}/{name}"
        own = Path(picture).suffix.lower() in PHOTOGRAPHS
        there = own and is_file_at(self.book.pictures_dir / picture)
        return f"{self.settings.pictures}/{picture}" if there else ""


def show_picture(library: Library, recipe: Recipe, link: Link) -> Drawing:
    """Return a recipe's picture, or the drawing of its kind when it has none."""
    alt = recipe.picture_alt or recipe.title
    found = find_drawing(library, picture_name(recipe), alt, link)
    if found is None:
        return describe_emblem(link(kind_drawing(recipe.kind)))
    return replace(found, focus=recipe.picture_focus)


def kind_drawing(kind: Kind) -> str:
    """Return where a kind's drawing lies in the published book."""
    return f"assets/stillroom/drawings/kind-{kind.slug}.svg"


def picture_name(recipe: Recipe) -> str:
    """Return the file of a recipe's drawing: the one it names, or else one named like it."""
    return recipe.picture or f"{recipe.slug}.svg"


def find_drawing(library: Library, name: str, alt: str, link: Link) -> Drawing | None:
    """Return a drawing among the book's pictures, or None when it is not there."""
    path = library.book.pictures_dir / name
    if not is_file_at(path):
        return None
    return describe_drawing(path, link(f"{library.settings.pictures}/{name}"), alt)


def address_path(slug: str) -> str:
    """Return the path of a recipe's page below the book's own address.

    >>> address_path("quince-ratafia")
    'r/quince-ratafia/'
    """
    return f"r/{slug}/"
