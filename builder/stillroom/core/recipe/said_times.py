"""A length of time that a method names, and what for.

Leaves out how it is read: method_times.py.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from stillroom.core.when.spans import Span

Role = Literal["wait", "usable", "best"]


@dataclass(frozen=True, slots=True)
class Said:
    """A length of time a method names: what for, as a timeline's word, in which step and line.

    `place` is the number of its sentence among all of them.
    """

    role: Role
    word: str
    span: Span
    words: str
    step: int
    line: int
    every: str = ""
    place: int = 0
    after_bottling: bool = False

    @property
    def as_written(self) -> str:
        """Return it as a line of a timeline: "shake: every day for 3 weeks"."""
        if self.role != "wait":
            since = " after bottling" if self.after_bottling else ""
            return f"{'usable from' if self.role == 'usable' else 'best from'}: {self.span}{since}"
        return (
            f"{self.word}: {self.every} for {self.span}"
            if self.every
            else f"{self.word}: {self.span}"
        )
