"""A line while a plan is searched: how long, how good so far, how good at best.

On a terminal it stands in its place; for the desk, which reads on, each is a line of its own.
"""

from __future__ import annotations

import os
from typing import TextIO

from stillroom.giving.mip import Progress

_WIDTH = 20
LINES = "STILLROOM_PROGRESS_LINES"
"""Set where what is said is read line by line: progress is told without a terminal then."""
MARK = "planning: "


class Bar:
    """Shows a search on a terminal, and nothing where it is no terminal; never ends the search."""

    def __init__(self, out: TextIO, seconds: float) -> None:
        self.out, self.seconds = out, seconds
        self.shown = out.isatty()
        self.lines = not self.shown and bool(os.environ.get(LINES))
        self.told = -1

    def __call__(self, progress: Progress) -> bool:
        """Show how far it is, in place of what stood there."""
        if self.shown:
            self.out.write(f"\r\x1b[2K{say_progress(progress, self.seconds)}")
            self.out.flush()
        elif self.lines and int(progress.seconds) > self.told:
            self.told = int(progress.seconds)
            self.out.write(f"{MARK}{say_near(progress)}\n")
            self.out.flush()
        return True

    def clear(self) -> None:
        """Leave the line empty for what is said next."""
        if self.shown:
            self.out.write("\r\x1b[2K")
            self.out.flush()


def say_progress(progress: Progress, seconds: float) -> str:
    """Return the line of a search.

    >>> say_progress(Progress(5, 200, 190), 20)
    'planning #####............... 5 s, at most 5.0 % from the best (Ctrl-C keeps this plan)'
    >>> say_progress(Progress(0, float("inf"), 0), 20)
    'planning .................... 0 s, no plan yet'
    """
    done = min(_WIDTH, int(_WIDTH * progress.seconds / seconds)) if seconds else _WIDTH
    bar = "#" * done + "." * (_WIDTH - done)
    kept = "" if progress.gap is None else " (Ctrl-C keeps this plan)"
    return f"planning {bar} {progress.seconds:.0f} s, {say_near(progress)}{kept}"


def say_near(progress: Progress) -> str:
    """Return how near the best plan so far is to the best there could be.

    >>> say_near(Progress(5, 200, 190)), say_near(Progress(0, float("inf"), 0))
    ('at most 5.0 % from the best', 'no plan yet')
    """
    gap = progress.gap
    return "no plan yet" if gap is None else f"at most {100 * gap:.1f} % from the best"
