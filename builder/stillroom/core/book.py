"""A book: where it lies, its settings and its recipe files.

The command and the plugin open it here, so that both see the same. Leaves out what the settings
are (settings.py, offered here too) and how their file is read (settings_file.py).
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from pathlib import Path

from stillroom.core.larder.shelves import Larder, OwnLarder
from stillroom.core.reading.loading import load_recipes, short_name
from stillroom.core.reading.recipes_folder import recipe_files
from stillroom.core.recipe.model import Recipe
from stillroom.core.recipe.settings import (
    BookSettings,
    GivingDay,
    Places,
    place_of,
    read_settings,
    read_what_fits,
)
from stillroom.core.recipe.settings_file import read_settings_file
from stillroom.core.words.problems import Problem, ProblemsFound

__all__ = [
    "Book",
    "BookSettings",
    "GivingDay",
    "find_book",
    "open_book",
    "open_what_fits",
    "place_book",
    "read_settings",
]

LARDER = "larder.yml"


@dataclass(frozen=True)
class Book:
    """Where a book lies, its settings, and the folders of its recipes and pictures."""

    root: Path
    settings: BookSettings
    recipes_dir: Path
    pictures_dir: Path
    site_dir: Path
    docs_dir: Path
    config: Path = Path("mkdocs.yml")
    places: Places = field(default_factory=dict)
    theme_dir: Path | None = None

    def recipe_files(self) -> list[Path]:
        """Every recipe file of the book, in order."""
        return recipe_files(self.recipes_dir)

    def require_recipes(self) -> None:
        """Raise ProblemsFound when the folder of recipes holds none."""
        if not self.recipe_files():
            what = f'There are no recipes in "{self.settings.recipes}".'
            mend = 'Put recipe files (".md") there, or set "recipes:" to their folder.'
            place = place_of(("recipes",), self.places, self.config.name)
            raise ProblemsFound([Problem(*place, what, mend)])

    def load(self) -> tuple[Recipe, ...]:
        """Read every recipe; raises ProblemsFound with all problems of the book."""
        self.require_recipes()
        return load_recipes(
            self.recipe_files(),
            self.root,
            self.settings.units,
            self.pictures_dir,
            self.own_larder().larder,
            self.settings.language,
        )

    @property
    def larder_file(self) -> Path:
        """Where the book says what its own foods are: larder.yml beside the folder of recipes."""
        if self.settings.larder:
            return self.root / self.settings.larder
        return self.recipes_dir.parent / LARDER

    def own_larder(self) -> OwnLarder:
        """Read the book's own larder; raises ProblemsFound. One that is not there says nothing."""
        if not self.settings.larder and not self.larder_file.exists():
            return OwnLarder(Larder(language=self.settings.language))
        from stillroom.core.larder.own import load_own_larder  # late: few books have one

        name = short_name(self.larder_file, self.root)
        said = self.settings
        return load_own_larder(self.larder_file, name, said.language, said.units, said.currency)


def find_book(start: Path) -> Path | None:
    """Return the nearest mkdocs.yml in `start` or above it."""
    folder = start.resolve()
    for candidate in (folder, *folder.parents):
        settings = candidate / "mkdocs.yml"
        if settings.exists() and not settings.is_dir():  # of a pipe its reader tells
            return settings
    return None


def open_book(config_file: Path) -> Book:
    """Open the book whose mkdocs.yml this is; raises ProblemsFound."""
    book, problems = open_what_fits(config_file)
    if problems or book is None:
        raise ProblemsFound(problems)
    return book


def open_what_fits(config_file: Path) -> tuple[Book | None, tuple[Problem, ...]]:
    """Open a book as far as its settings are right, with what is wrong of the others.

    Its recipes can be read so, and be told of in the same run. Raises ProblemsFound where the
    file is no book's at all.
    """
    name = config_file.name
    written = read_settings_file(config_file)
    said = {
        "title": written.site.get("site_name"),
        "site_url": written.site.get("site_url") or "",
    }
    settings, wrong = read_what_fits(said | dict(written.options), name, written.places)
    problems = (*written.problems, *wrong)
    if settings is None:
        return None, problems
    book = place_book(
        config_file.resolve().parent,
        settings,
        docs_dir=written.site.get("docs_dir", "docs"),
        site_dir=written.site.get("site_dir", "site"),
    )
    theme = written.site.get("theme_dir")
    theme_dir = book.root / theme if theme else None
    whole = replace(book, config=config_file, places=written.places, theme_dir=theme_dir)
    return whole, problems


def place_book(root: Path, settings: BookSettings, docs_dir: str, site_dir: str) -> Book:
    """Put settings and folders together; the folders are relative to `root`."""
    docs = root / docs_dir
    return Book(
        root=root,
        settings=settings,
        recipes_dir=root / settings.recipes,
        pictures_dir=docs / settings.pictures,
        site_dir=root / site_dir,
        docs_dir=docs,
    )
