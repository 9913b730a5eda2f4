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
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.core.words.text_files import CHOOSE, TWO_VERSIONS, decode, find_two_versions
from stillroom.publish.page_templates import MARKDOWN, find_missing_templates

_MEND = "Mend it there, or begin anew from the demo book's mkdocs.yml."

_LANGUAGE = 'Write the two letters of one that it speaks: "  language: en".'
_WRONG_TYPE = re.compile(r"Expected type: <class '([\w.]+)'> but received: <class '([\w.]+)'>")
_TYPES = {
    "str": "words", "bool": "yes or no", "int": "a number", "float": "a number", "list": "a list",
    "dict": "lines with colons", "NoneType": "nothing", "datetime.date": "a day",
}  # fmt: skip
_FIRST = frozenset({"index", "readme"})
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
    except Exception as wrong:  # a hook is a program of anybody's, and may end in anything
        ended = ConfigurationError(f"it ends in {type(wrong).__name__} ({wrong}).")
        errors, warned = [("hooks", ended)], []
    finally:
        log.setLevel(level)
    lines = book.config.read_text(encoding="utf-8-sig").splitlines()
    if not errors and (spoken := _unknown_language(config)):
        what = f'The theme speaks no language "{spoken}".'
        yield Problem(book.config.name, _line_of("theme", lines), what, _LANGUAGE)
    if not errors:
        yield from find_missing_templates(book, config)
    for key, error in errors:
        if key == "docs_dir" and not book.docs_dir.is_dir():
            what = (
                f'The folder of pages that "docs_dir" names, "{book.docs_dir.name}", is not there.'
            )
            yield Problem(book.config.name, _line_of(key, lines), what, _PAGES)
            continue
        said = _in_plain_words(" ".join(str(error).split()))
        what = f'MkDocs, which sets the pages, does not take "{key}": {said}'
        yield Problem(book.config.name, _line_of(key, lines), what, _MEND)
    for key, warning in warned:  # a book that is built strictly does not pass with one
        yield Problem(book.config.name, _line_of(key, lines), *_of_warning(key, str(warning)))


def _unknown_language(config: MkDocsConfig) -> str:
    """Return the language that the theme has no words for; "" where it has."""
    spoken = str(config.theme.get("language", "en"))
    words = [Path(folder, "partials", "languages") for folder in config.theme.dirs]
    known = any((folder / f"{spoken}.html").is_file() for folder in words)
    return "" if known or not any(folder.is_dir() for folder in words) else spoken


def _in_plain_words(said: str) -> str:
    """Return what MkDocs says without the words of the language that it is written in.

    >>> _in_plain_words("Expected type: <class 'str'> but received: <class 'list'>")
    'it wants words, and a list stands there.'
    """
    found = _WRONG_TYPE.fullmatch(said)
    if found is None:
        return said
    wanted, got = (_TYPES.get(name, "something else") for name in found.groups())
    return f"it wants {wanted}, and {got} stands there."


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
                    continue
                if slug := _recipe_displaced(path, book):
                    what = f'This page would stand where the recipe "{slug}" is published.'
                    yield Problem(short_name(path, book.root), 1, what, "Give it another name.")
                yield from _wrong_in(path, short_name(path, book.root))


def _recipe_displaced(path: Path, book: Book) -> str:
    """Return the recipe at whose address a page of the maker's own would stand; "" for none."""
    parts = path.relative_to(book.docs_dir).parts if path.is_relative_to(book.docs_dir) else ()
    if len(parts) < 2 or parts[0] != "r" or path.suffix.lower() not in (*MARKDOWN, ".html"):
        return ""
    is_first = path.stem.lower() in _FIRST and len(parts) > 2
    slug = parts[1] if is_first and len(parts) == 3 else path.stem if len(parts) == 2 else ""
    return slug if slug in {one.stem for one in book.recipe_files()} else ""


def _wrong_in(page: Path, name: str) -> Iterator[Problem]:
    """Find a page that is not written in UTF-8, which MkDocs reads and no other, or is two."""
    if page.suffix.lower() in MARKDOWN:
        written = page.read_bytes()
        try:
            written.decode("utf-8-sig")
        except UnicodeDecodeError:
            yield from _foreign(written, name)
            return
    if page.suffix.lower() in _WRITTEN and (line := _two_versions_in(page)):
        yield Problem(name, line, TWO_VERSIONS, CHOOSE)


def _foreign(written: bytes, name: str) -> Iterator[Problem]:
    try:
        decode(written, name)
    except ProblemsFound as found:
        yield from found.problems


def _two_versions_in(page: Path) -> int:
    return find_two_versions(page.read_text(encoding="utf-8-sig", errors="replace"))


def _line_of(key: str, lines: list[str]) -> int:
    pattern = re.compile(rf"{re.escape(key)}\s*:")
    return next((number for number, line in enumerate(lines, 1) if pattern.match(line)), 1)
