"""Whether the template for which a page of the maker's own asks is one of the theme's.

MkDocs sets a page by the `template:` of its facts, and ends where there is none of that name.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Final

from jinja2 import Environment, FileSystemLoader
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.theme import Theme
from mkdocs.utils.meta import get_data

from stillroom.core.book import Book
from stillroom.core.reading.loading import short_name
from stillroom.core.words.nearest import nearest
from stillroom.core.words.problems import Problem
from stillroom.publish.templating import THEME

MARKDOWN: Final = frozenset({".md", ".markdown", ".mdown", ".mkd", ".mkdn"})
_NAMED: Final = re.compile(r"[ \"']{0,4}template[\"']?\s*:", re.IGNORECASE)
_MEND: Final = 'Write its name right, or take "template:" out of the page.'


def find_missing_templates(book: Book, config: MkDocsConfig) -> Iterator[Problem]:
    """Find each page among the maker's own that asks for a template which the theme lacks.

    What `exclude_docs` keeps off the site asks for nothing.
    """
    left_out = config.exclude_docs
    templates: Environment | None = None
    for path in sorted(book.docs_dir.rglob("*.m*")):
        if path.suffix.lower() not in MARKDOWN or not path.is_file():
            continue
        if left_out and left_out.match_file(path.relative_to(book.docs_dir).as_posix()):
            continue
        if "template" not in (text := _text_of(path)).lower():
            continue
        templates = templates or _templates_of(config.theme)
        yield from _missing_in(text, short_name(path, book.root), templates)


def _text_of(page: Path) -> str:
    return page.read_text(encoding="utf-8-sig", errors="replace")  # of another's letters is told


def _templates_of(theme: Theme) -> Environment:
    return Environment(loader=FileSystemLoader([*theme.dirs, str(THEME)]), autoescape=True)


def _missing_in(text: str, name: str, templates: Environment) -> Iterator[Problem]:
    meta: dict[str, Any] = get_data(text)[1]
    if "template" not in meta:
        return
    asked = meta["template"]
    if isinstance(asked, str) and asked and asked in templates.list_templates():
        return
    rows = text.splitlines()
    line = next((number for number, row in enumerate(rows, 1) if _NAMED.match(row)), 1)
    what = f'The template "{asked}", for which this page asks, is not there.'
    if not asked:
        what = 'This page asks for a "template:" and names none.'
    likely = nearest(str(asked), templates.list_templates(extensions=["html"]), 0.75)
    yield Problem(name, line, what, f'Did you mean "{likely}"? {_MEND}' if likely else _MEND)
