"""The book built and served from the terminal, its settings looked at first.

MkDocs reads mkdocs.yml before it asks any plugin. A pipe, settings that build on themselves, or a
list of plugins without this one would never come before the book's own checks, and the last would
be built without the wall. So the settings are read here as the check reads them; only then is
MkDocs asked, by its own command, so that both ways build the same.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import NoReturn

from stillroom.core.book import open_what_fits
from stillroom.core.words.problems import ProblemsFound
from stillroom.publish.agreeing import find_refused, find_unfit_pages


def check_settings(config_file: Path) -> None:
    """Raise ProblemsFound with all that is wrong in a book's mkdocs.yml and those it inherits."""
    book, wrong = open_what_fits(config_file)
    if book is not None and not wrong:
        wrong = (*find_refused(book), *find_unfit_pages(book))
    if wrong:
        raise ProblemsFound(wrong)


def run_checked(command: str, config_file: Path, options: Sequence[str]) -> NoReturn:
    """Run MkDocs' own `build` or `serve` for a book; leaves with its exit code.

    Raises ProblemsFound before anything is built when the settings are wrong.
    """
    check_settings(config_file)
    from mkdocs.__main__ import cli  # looks for every theme there is

    cli.main([command, "--config-file", str(config_file), *options], prog_name="stillroom")
    raise AssertionError("click's main leaves")
