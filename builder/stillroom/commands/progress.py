"""A line on the terminal while a plan is searched: how long, how good so far, how good at best."""

from __future__ import annotations

from typing import TextIO

from stillroom.giving.mip import Progress

_WIDTH = 20


class Bar:
    """Shows a search on a terminal, and nothing where it is no terminal; never ends the search."""

    def __init__(self, out: TextIO, seconds: float) -> None:
        self.out, self.seconds = out, seconds
        self.shown = out.isatty()

    def __call__(self, progress: Progress) -> bool:
        """Show how far it is, in place of what stood there."""
        if self.shown:
            self.out.write(f"\r\x1b[2K{say_progress(progress, self.seconds)}")
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
    gap = progress.gap
    near = (
        "no plan yet"
        if gap is None
        else f"at most {100 * gap:.1f} % from the best (Ctrl-C keeps this plan)"
    )
    return f"planning {bar} {progress.seconds:.0f} s, {near}"
