"""The book built and served from the terminal, its settings looked at first.

MkDocs reads mkdocs.yml before it asks any plugin. A pipe, settings that build on themselves, or a
list of plugins without this one would never come before the book's own checks, and the last would
be built without the wall. So the settings are read here as the check reads them; only then is
MkDocs asked, by its own command, so that both ways build the same.
"""

from __future__ import annotations

import atexit
import gc
import logging
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Final
from urllib.parse import urlsplit

from stillroom.core.book import Book, open_book, open_what_fits, place_book
from stillroom.core.words.problems import ProblemsFound
from stillroom.looks.card_designs import OWN
from stillroom.publish.agreeing import find_refused, find_unfit_pages

if TYPE_CHECKING:
    from mkdocs.config.defaults import MkDocsConfig


SELDOM: Final = (20_000, 20, 20)
"""How often Python looks for what may go: all that is read stays until the site is written."""


def let_all_stay() -> None:
    """Have Python look seldom for what may go, and not once more when the process ends.

    All of a long book is there until then: to look through it took a tenth of building it again.
    """
    gc.set_threshold(*SELDOM)
    atexit.register(gc.freeze)


def check_settings(config_file: Path) -> None:
    """Raise ProblemsFound with all that is wrong in a book's mkdocs.yml and those it inherits."""
    book, wrong = open_what_fits(config_file)
    if book is not None and not wrong:
        wrong = (*find_refused(book), *find_unfit_pages(book))
    if wrong:
        raise ProblemsFound(wrong)


def open_for_mkdocs(config: MkDocsConfig) -> Book:
    """Open the book as the command does; where it is built and served MkDocs knows better."""
    book = open_book(Path(config.config_file_path or "mkdocs.yml"))
    # while it is served MkDocs names this computer, which is no address to print on a card
    here = urlsplit(config.site_url or "").hostname in ("127.0.0.1", "localhost", "0.0.0.0", "::1")
    address = "" if here and not book.settings.site_url else config.site_url or ""
    settings = book.settings.model_copy(update={"site_url": address})
    placed = place_book(book.root, settings, config.docs_dir, config.site_dir)
    return replace(placed, config=book.config, places=book.places, theme_dir=book.theme_dir)


def run_checked(command: str, config_file: Path, options: Sequence[str], *, quiet: bool) -> int:
    """Run MkDocs' own `build` or `serve` for a book, and return its exit code.

    A `quiet` one says what is wrong or doubtful and nothing else; MkDocs' own would not count what
    it does not say, and so not stop at it. Raises ProblemsFound before anything is built when the
    settings are wrong.
    """
    check_settings(config_file)
    from mkdocs.__main__ import State, cli  # looks for every theme there is

    said = State(level=logging.WARNING if quiet else logging.INFO)  # type: ignore[no-untyped-call]
    arguments = [command, "--config-file", str(config_file), *options]
    with _unsaid("Building documentation to directory"):  # which is one aside
        try:
            cli.main(arguments, prog_name="stillroom", obj=said)
        except SystemExit as left:
            return left.code if isinstance(left.code, int) else int(left.code is not None)
    raise AssertionError("click's main leaves")


def list_watched(settings: Path, book: Book | None) -> Iterator[Path]:
    """Return what MkDocs is to watch besides the settings and the pages, which it watches itself.

    Of a book that could not be opened its usual folder of recipes is watched, or where that would
    stand.
    """
    if book is None:
        usual = settings.parent / "recipes"
        yield usual if usual.is_dir() else settings.parent
        return
    yield book.recipes_dir
    yield from (place for place in (book.root / OWN, book.larder_file) if place.exists())


@contextmanager
def _unsaid(begins: str) -> Iterator[None]:
    """Leave out what MkDocs says with these first words."""
    log = logging.getLogger("mkdocs.commands.build")

    def is_said(record: logging.LogRecord) -> bool:
        return not record.getMessage().startswith(begins)

    log.addFilter(is_said)
    try:
        yield
    finally:
        log.removeFilter(is_said)


def warnings_counted() -> Iterator[bool]:
    """Say of each count that MkDocs keeps for a strict build whether it has counted any."""
    from mkdocs.utils import CountHandler  # a check waits for no MkDocs

    for handler in logging.getLogger("mkdocs").handlers:
        if isinstance(handler, CountHandler):
            yield bool(handler.get_counts())
