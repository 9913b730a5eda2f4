"""What stops a build: every problem told, then one exception that counts them and keeps them.

Leaves out how they are shown while a book is served: served_faults.py.
"""

from __future__ import annotations

from collections.abc import Iterable

from mkdocs.exceptions import PluginError
from mkdocs.plugins import get_plugin_logger

from stillroom.core.words.problems import Problem

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
