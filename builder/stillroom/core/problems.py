"""Problems a person can mend: file, line, what is wrong, what to write instead.

Leaves out how they are shown: the command prints them, the plugin logs them.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, order=True)
class Problem:
    """One thing wrong in a file, at a line counted from 1, with how to mend it.

    >>> print(Problem("recipes/a.md", 14, '"cupp" is not a unit.', 'Did you mean "cup"?'))
    recipes/a.md:14: "cupp" is not a unit. Did you mean "cup"?
    """

    file: str
    line: int
    what: str
    mend: str = ""

    def __str__(self) -> str:
        return f"{self.file}:{self.line}: {self.what} {self.mend}".rstrip()


class ProblemsFound(Exception):
    """Every problem of a run, gathered before anything fails."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(sorted(set(problems)))
        super().__init__("\n".join(str(problem) for problem in self.problems))


class Unreadable(ValueError):
    """A text of a recipe that cannot be read; it carries what to write instead.

    Raised by the small parsers and turned into a Problem by whoever knows file and line.
    """

    def __init__(self, what: str, mend: str = "") -> None:
        self.what = what
        self.mend = mend
        super().__init__(f"{what} {mend}".rstrip())


def nearest(word: str, known: Iterable[str], likeness: float = 0.6) -> str | None:
    """Return the known word most like `word` (1 is the same), or None when none is close.

    >>> nearest("cupp", ["cup", "clove"])
    'cup'
    """
    lowered = {candidate.lower(): candidate for candidate in known}
    found = difflib.get_close_matches(word.lower(), lowered, n=1, cutoff=likeness)
    return lowered[found[0]] if found else None


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """Say which known word was probably meant, or list what may be written if that is short.

    >>> did_you_mean("titel", ["title", "kind"])
    'Did you mean "title"?'
    >>> did_you_mean("xyzzy", ["title", "kind"])
    'It may be: kind, title.'
    """
    choices = sorted(known)
    match = nearest(word, choices)
    if match:
        return f'Did you mean "{match}"?'
    # A list longer than a glance helps nobody.
    return f"It may be: {', '.join(choices)}." if len(choices) <= 24 else ""
