"""What one open desk knows: its place, the book as last read, the frame of a page.

All of it can be made again from the folder; nothing is lost when the desk is closed.
"""

from __future__ import annotations

import threading
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Final

from stillroom.beginning.unanswered import asked_in
from stillroom.bringing.still_asked import asked_by_boxes, still_asked
from stillroom.core.book import Book
from stillroom.core.larder.shelves import Larder
from stillroom.core.reading.loading import gather_recipes
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.desk.keeping import keep_unsaved, sum_of
from stillroom.desk.looking import Look, look_at, plainly
from stillroom.desk.once import Once
from stillroom.desk.place import FileNow, Place, read_now
from stillroom.desk.reading_back import Ways
from stillroom.desk.recipe_rows import lay_out
from stillroom.desk.running import Running

if TYPE_CHECKING:
    from stillroom.publish.one_page import Frame


_MOST_SHOWN: Final = 200


@dataclass(frozen=True)
class Shown:
    """A page as it was when its recipe last read right, and the drawings of its card by place."""

    title: str
    body: str
    drawings: Mapping[str, str]


@dataclass
class Desk:
    """One open desk. `aside` is a folder that goes when it is closed, `close` closes it."""

    place: Place
    aside: Path
    close: Callable[[], None]
    pages: dict[str, Shown] = field(default_factory=dict)
    # what is to be mended before a recipe's page can be shown at all
    hindered: dict[str, int] = field(default_factory=dict)
    # what the pages are set with is not made for two at once
    at_work: threading.RLock = field(default_factory=threading.RLock)
    plan: Running | None = None
    going_out: Running | None = None
    # pages whose words are kept: what they still send of them comes too late
    kept_visits: set[str] = field(default_factory=set)
    once: Once = field(default_factory=Once)
    _building: threading.Thread | None = None
    _book: tuple[tuple[int, ...], Book, Larder] | None = None
    _frame: tuple[tuple[int, ...], Frame] | None = None
    _looks: dict[Path, tuple[tuple[int, ...], Look]] = field(default_factory=dict)
    _titles: dict[Path, tuple[int, str]] = field(default_factory=dict)
    _recipes: tuple[tuple[int, ...], dict[str, Recipe]] | None = None
    _boxed: dict[tuple[int, ...], frozenset[str]] = field(default_factory=dict)
    _shown: dict[str, str] = field(default_factory=dict)

    def book(self) -> Book:
        """Return the book as its files say now; raises ProblemsFound."""
        return self._opened()[1]

    def larder(self) -> Larder:
        """Return what the book knows of foods; its own larder only where that one reads."""
        return self._opened()[2]

    def ways(self) -> Ways:
        """Return how the book reads lines."""
        said = self.book().settings
        return Ways(said.units, said.language, self.larder())

    def _opened(self) -> tuple[tuple[int, ...], Book, Larder]:
        state = _state(self.place.config, self._book[1].larder_file if self._book else None)
        if self._book is None or self._book[0] != state:
            book = self.place.book()
            try:
                larder = book.own_larder().larder
            except ProblemsFound:  # told on the page of the book; recipes are read all the same
                larder = Larder(language=book.settings.language)
            self._book = (_state(self.place.config, book.larder_file), book, larder)
        return self._book

    def frame(self) -> Frame:
        """Return the page around a recipe, built anew where the settings have changed."""
        from stillroom.publish.one_page import build_frame  # slow to load, and needed here alone

        with self.at_work:
            state = _state(self.place.config)
            if self._frame is None or self._frame[0] != state:
                number = len(list(self.aside.iterdir()))
                self._frame = (state, build_frame(self.book(), self.aside / f"frame-{number}"))
            return self._frame[1]

    def begin_frame(self) -> None:
        """Build the frame while the list of recipes is looked at."""

        def build() -> None:
            with suppress(ProblemsFound, OSError):  # told on the page that asks for it
                self.frame()

        if self.place.has_book:
            self._building = threading.Thread(target=build, daemon=True)
            self._building.start()

    def end(self) -> None:
        """Wait for what is still being built: it lies in a folder that goes now."""
        if self._building is not None:
            self._building.join()

    def other_titles(self, slug: str) -> dict[str, str]:
        """Return the titles of the book's other recipes in small letters, with their files."""
        return {
            title: path.name
            for title, paths in self.titles().items()
            for path in paths
            if title and path.stem != slug
        }

    def names(self) -> dict[str, str]:
        """Return the title of every recipe of the book by its file's name, the name for want."""
        files = self.book().recipe_files()
        return {path.stem: self.title_of(path) or path.stem for path in files}

    def title_of(self, path: Path) -> str:
        """Return the title that a file says; "" where it says none."""
        changed = path.stat().st_mtime_ns
        had = self._titles.get(path)
        if had is None or had[0] != changed:
            try:
                data = lay_out(read_now(path, path.name).raw, path.name).data
                had = (changed, str(data.get("title") or ""))
            except ProblemsFound:
                had = (changed, "")
            self._titles[path] = had
        return had[1]

    def look(self, ident: str, slug: str, raw: str) -> Look:
        """Look at words that are being typed, and keep them from being lost."""
        path = keep_unsaved(self.place, ident, raw)
        return look_at(self.book(), self.larder(), raw, slug, path, self.other_titles(slug))

    def recipes(self) -> dict[str, Recipe]:
        """Return the recipes that read, by their names: read anew where one of them has changed."""
        book, larder = self._opened()[1:]
        files = book.recipe_files()
        state = (*self._opened()[0], *_state(*files), hash(tuple(files)))
        if self._recipes is None or self._recipes[0] != state:
            said = book.settings
            read = gather_recipes(
                files, book.root, said.units, larder=larder, language=said.language
            )[0]
            self._recipes = (state, {recipe.slug: recipe for recipe in read})
        return self._recipes[1]

    def remember(self, words: str) -> str:
        """Keep what boxes were made of, and return by what name it is had again."""
        name = sum_of(words.encode())
        self._shown.pop(name, None)
        self._shown[name] = words
        for oldest in list(self._shown)[:-_MOST_SHOWN]:
            del self._shown[oldest]
        return name

    def remembered(self, name: str) -> str:
        """Return what was kept under a name; nothing where that is long ago."""
        return self._shown.get(name, "")

    def boxed(self, raw: str) -> frozenset[str]:
        """Return what a file was asked when it was brought in, and its boxes ask by themselves."""
        if not asked_in(raw):
            return frozenset()
        state = (*self._opened()[0], hash(raw))
        if state not in self._boxed:
            boxed = asked_by_boxes(raw, self.book().settings, self.larder())
            self._boxed[state] = frozenset(boxed)
            for oldest in list(self._boxed)[:-_MOST_SHOWN]:
                del self._boxed[oldest]
        return self._boxed[state]

    def still_asked(self, raw: str) -> int:
        """Return how many questions of a file, as it lies there, wait for an answer."""
        return still_asked(raw, self.boxed(raw))

    def waiting(self, raw: str) -> tuple[str, ...]:
        """Return the questions of a file, as it lies there, that wait for an answer."""
        boxed = self.boxed(raw)
        return tuple(plainly(words) for words in asked_in(raw) if words not in boxed)

    def titles(self) -> dict[str, list[Path]]:
        """Return every title of the book in small letters, with the files that bear it."""
        found: dict[str, list[Path]] = {}
        for path in self.book().recipe_files():
            found.setdefault(self.title_of(path).lower(), []).append(path)
        return found

    def look_again(
        self, slug: str, now: FileNow, titles: dict[str, list[Path]], *, only_known: bool = False
    ) -> Look | None:
        """Look at a file as it is; one that has not changed was looked at before.

        None where it was not, and `only_known` is asked.
        """
        title = self.title_of(now.path).lower()
        twins = [one.name for one in titles.get(title, []) if title and one.stem != slug]
        others = {title: twins[0]} if twins else {}
        state = (*self._opened()[0], hash(now.sum), hash(tuple(twins)))
        had = self._looks.get(now.path)
        if had is None or had[0] != state:
            if only_known:
                return None
            look = look_at(self.book(), self.larder(), now.raw, slug, now.path, others)
            had = self._looks[now.path] = (state, look)
        return had[1]

    def show(self, ident: str, recipe: Recipe) -> Shown:
        """Return the page of a recipe that reads right, and remember it."""
        from stillroom.publish.one_page import card_pictures, show_recipe

        book, today = self.book(), date.today()
        body, drawings = show_recipe(book, recipe, today), card_pictures(book, recipe, today)
        shown = Shown(recipe.title, body, drawings)
        self.pages[ident] = shown
        return shown

    def faults(self) -> tuple[Problem, ...]:
        """Return what keeps the book itself from being opened."""
        try:
            self._opened()
        except ProblemsFound as found:
            return found.problems
        return ()


def _state(*paths: Path | None) -> tuple[int, ...]:
    return tuple(path.stat().st_mtime_ns if path and path.exists() else 0 for path in paths)
