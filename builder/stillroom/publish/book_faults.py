"""What stops a build: every problem told, then one exception that counts them and keeps them.

Leaves out how they are shown while a book is served: served_faults.py.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from jinja2 import TemplateNotFound
from mkdocs.exceptions import PluginError
from mkdocs.plugins import get_plugin_logger

from stillroom.core.words.problems import Problem
from stillroom.saving.whole import explain

log = get_plugin_logger(__name__)


class BookFaults(PluginError):
    """What is wrong with the book, told already; `said` is each of it in words."""

    def __init__(self, said: tuple[str, ...]) -> None:
        """Say how many there are, as MkDocs shows it last."""
        count = len(said)
        super().__init__(f"The book has {count} problem{'s' if count > 1 else ''}: see above.")
        self.said = said


def stop_at(problems: Iterable[Problem]) -> None:
    """Log every problem, then stop the build once with their number; BookFaults is raised."""
    gathered = tuple(str(problem) for problem in problems)
    for said in gathered:
        log.error(said)
    if gathered:
        raise BookFaults(gathered)


def stop_at_error(error: Exception, place: Path) -> None:
    """Stop the build in words at what a disk would not take, or a template that is not there."""
    if isinstance(error, TemplateNotFound):  # which is an OSError too
        what = f'The template "{error.name}", for which a page or the theme asks, is not there.'
        mend = 'Write its name right, or take "template:" out of the page.'
        stop_at([Problem("mkdocs.yml", 1, what, mend)])
    elif isinstance(error, OSError):
        stop_at([explain(error, place)])
