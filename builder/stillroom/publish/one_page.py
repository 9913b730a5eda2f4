"""One recipe's page by itself, for whoever writes it: as the whole book would show it.

A book of one plain recipe is built once, with the settings of the real one, and gives the frame and
all its files; into this frame goes each recipe as it is being written. Nothing of it is published.
"""

from __future__ import annotations

import contextlib
import io
import logging
import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any, Final

import yaml
from markupsafe import Markup, escape
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import MkDocsException

from stillroom.core.book import Book
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.publish.card_designs_page import CARD_PICTURES, list_design_files
from stillroom.publish.library import Library, address_path
from stillroom.publish.recipe_page import RecipeLeaf

_STAND_IN: Final = "stand-in"
_RECIPE: Final = """---
title: Stand-in
kind: craft
makes: 1 l
ingredients:
  - 1 l water
---
## Method
1. Pour it.
"""
# a card within the page is an article too: the last end is the page's own
_ARTICLE: Final = re.compile(r"(<article\b[^>]*>).*(</article>)", re.DOTALL)
_TITLE: Final = re.compile(r"<title>.*?</title>", re.DOTALL)
_ALONE: Final = "<style>.masthead, .colophon { display: none; }</style>"
"""Beside the boxes the page stands by itself, without the ways to pages that are not there."""
_DATA: Final = re.compile(r'\s*<script type="application/ld\+json">.*?</script>', re.DOTALL)


@dataclass(frozen=True)
class Frame:
    """The page around a recipe, and the folder in which all that it loads was built."""

    folder: Path
    html: str

    def around(self, body: str, title: str) -> str:
        """Return a whole page with this body."""
        page = _ARTICLE.sub(lambda found: f"{found[1]}{body}{found[2]}", self.html, count=1)
        page = _TITLE.sub(f"<title>{escape(title)}</title>{_ALONE}", page, count=1)
        return _DATA.sub("", page)


def build_frame(book: Book, folder: Path) -> Frame:
    """Build the stand-in of a book into an empty folder; raises ProblemsFound or OSError."""
    pages, recipes, site = folder / "pages", folder / "recipes", folder / "site"
    for made in (pages, recipes):
        made.mkdir(parents=True)
    (pages / "index.md").write_text("Stand-in.\n", encoding="utf-8")
    (recipes / f"{_STAND_IN}.md").write_text(_RECIPE, encoding="utf-8")
    config = folder / "mkdocs.yml"
    said = _settings(book)
    config.write_text(yaml.safe_dump(said, allow_unicode=True), encoding="utf-8")
    try:
        with _quietly():
            loaded = load_config(str(config))
            loaded.plugins.on_startup(command="build", dirty=False)
            build(loaded)
    except MkDocsException as wrong:
        what = f"A page of the book cannot be built: {wrong}."
        raise ProblemsFound([Problem(book.config.name, 1, what, "Look at Publish.")]) from None
    page = site / address_path(_STAND_IN) / "index.html"
    return Frame(site, page.read_text(encoding="utf-8"))


def _settings(book: Book) -> dict[str, Any]:
    said = book.settings
    theme: dict[str, Any] = {"name": "material", "font": False}
    theme["language"] = said.language.split("_")[0]
    if book.theme_dir:
        theme["custom_dir"] = str(book.theme_dir)
    own = {
        "recipes": "recipes",
        "country": said.country,
        "altitude_m": said.altitude_m,
        "language": said.language,
        "currency": said.currency,
    }
    settings = {
        "site_name": said.title,
        "docs_dir": "pages",
        "site_dir": "site",
        "theme": theme,
        "plugins": ["search", {"stillroom": own}],
        "markdown_extensions": ["attr_list", "def_list", "tables"],
    }
    return settings | ({"site_url": said.site_url} if said.site_url else {})


@contextlib.contextmanager
def _quietly() -> Iterator[None]:
    """Let MkDocs say nothing in the terminal of whoever writes a recipe."""
    log = logging.getLogger("mkdocs")
    before = log.level
    log.setLevel(logging.CRITICAL)
    try:
        with contextlib.redirect_stderr(io.StringIO()):
            yield
    finally:
        log.setLevel(before)


def show_recipe(book: Book, recipe: Recipe, today: date) -> str:
    """Return what stands in a recipe's page, by the code that builds the book."""
    library = Library(book, (recipe,), today)
    leaf = RecipeLeaf(recipe)
    return str(Markup(leaf.body(library, "", _link, library.address_of(recipe))))


def card_pictures(book: Book, recipe: Recipe, today: date) -> dict[str, str]:
    """Return the drawings that a recipe's page loads for its card, by their place in the book."""
    made = list_design_files(Library(book, (recipe,), today))
    return {place: svg for place, svg in made if place.startswith(CARD_PICTURES)}


def _link(uri: str) -> str:
    """Return the way from a recipe's page to another file of the book."""
    if uri == "index.md":
        return "../../"
    return f"../../{uri.removesuffix('.md')}/" if uri.endswith(".md") else f"../../{uri}"
