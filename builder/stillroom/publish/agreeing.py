"""What would keep MkDocs from building the book, told by the check too.

MkDocs is asked itself, so that what is checked and what is built cannot differ. Leaves out the
book's own settings: core/recipe/settings.py.
"""

from __future__ import annotations

import logging
import os
import re
from collections.abc import Iterator
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import ConfigurationError
from mkdocs.utils.yaml import get_yaml_loader, yaml_load

from stillroom.core.book import Book
from stillroom.core.reading.loading import short_name
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.problems import Problem
from stillroom.core.words.text_files import CHOOSE, TWO_VERSIONS, find_two_versions

_MEND = "Mend it there, or begin anew from the demo book's mkdocs.yml."

_DEEPEST = 40  # a folder that points to itself has no end either
_WRITTEN = frozenset({".html", ".markdown", ".md"})
_PAGES = "Make it and put a first page into it, or write the name of the right one."


def find_refused(book: Book) -> Iterator[Problem]:
    """Return what MkDocs refuses in a book's mkdocs.yml, each at the line of its setting."""
    config = MkDocsConfig(config_file_path=str(book.config))
    log = logging.getLogger("mkdocs")
    level = log.level
    log.setLevel(logging.CRITICAL + 1)  # what it would say is said here
    try:
        with book.config.open("rb") as file:
            config.load_dict(yaml_load(file, loader=get_yaml_loader(config=config)))
        errors, warned = config.validate()
    except ConfigurationError as wrong:
        errors, warned = [("INHERIT", wrong)], []
    finally:
        log.setLevel(level)
    lines = book.config.read_text(encoding="utf-8-sig").splitlines()
    for key, error in errors:
        if key == "docs_dir" and not book.docs_dir.is_dir():
            what = (
                f'The folder of pages that "docs_dir" names, "{book.docs_dir.name}", is not there.'
            )
            yield Problem(book.config.name, _line_of(key, lines), what, _PAGES)
            continue
        said = " ".join(str(error).split())
        what = f'MkDocs, which sets the pages, does not take "{key}": {said}'
        yield Problem(book.config.name, _line_of(key, lines), what, _MEND)
    for key, warning in warned:  # a book that is built strictly does not pass with one
        yield Problem(book.config.name, _line_of(key, lines), *_of_warning(key, str(warning)))


def _of_warning(key: str, warning: str) -> tuple[str, str]:
    if "Unrecognised configuration name" in warning:
        known = [name for name, _ in MkDocsConfig._schema]
        return f'A book has no setting "{key}".', did_you_mean(key, known) or "Take the line out."
    return f'MkDocs, which sets the pages, warns of "{key}": {" ".join(warning.split())}', _MEND


def find_unfit_pages(book: Book) -> Iterator[Problem]:
    """Find what lies among the pages and cannot be read to its end, or nobody made one page of."""
    for folder in filter(None, (book.docs_dir, book.theme_dir)):
        for here, folders, names in os.walk(folder, followlinks=True):
            folders[:] = [name for name in folders if not name.startswith(".")]
            if len(Path(here).relative_to(folder).parts) > _DEEPEST:
                folders.clear()
            for name in sorted(names):
                path = Path(here, name)
                if name.startswith("."):
                    continue
                if not path.is_file():
                    what = "The file is not there: what points to it leads nowhere."
                    if path.exists():
                        what = "This is no file that can be read to its end."
                    yield Problem(short_name(path, book.root), 1, what, "Take it away.")
                elif path.suffix.lower() in _WRITTEN and (line := _two_versions_in(path)):
                    yield Problem(short_name(path, book.root), line, TWO_VERSIONS, CHOOSE)


def _two_versions_in(page: Path) -> int:
    return find_two_versions(page.read_text(encoding="utf-8-sig", errors="replace"))


def _line_of(key: str, lines: list[str]) -> int:
    pattern = re.compile(rf"{re.escape(key)}\s*:")
    return next((number for number, line in enumerate(lines, 1) if pattern.match(line)), 1)
