"""Problems a person can mend: file, line, what is wrong, what to write instead.

Leaves out how they are shown: the command prints them, the plugin logs them.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from stillroom.core.words.patterns import late_regex


@dataclass(frozen=True, order=True)
class Problem:
    r"""One thing wrong in a file, at a line counted from 1, with how to mend it.

    `at` is where in what the file says it stands, name by name, where whoever tells it knows.

    >>> print(Problem("recipes/a.md", 14, '"cupp" is not a unit.', 'Did you mean "cup"?'))
    recipes/a.md:14: "cupp" is not a unit. Did you mean "cup"?
    >>> print(Problem("recipes/a\nb.md", 1, "A file may be called anything."))
    recipes/a?b.md:1: A file may be called anything.
    >>> print(Problem("recipes", 0, "There is no recipe here."))
    recipes: There is no recipe here.
    """

    file: str
    line: int
    what: str
    mend: str = ""
    at: tuple[str, ...] = field(default=(), compare=False)

    def __post_init__(self) -> None:
        """Keep each message to one line of a length that is read, whatever it quotes."""
        object.__setattr__(self, "what", in_short(self.what))
        object.__setattr__(self, "mend", in_short(self.mend, _LONG_LIST))

    def __str__(self) -> str:
        file = "".join(sign if sign.isprintable() else "?" for sign in self.file)
        place = f"{file}:{self.line}" if self.line else file
        return f"{place}: {self.what} {self.mend}".rstrip()


class ProblemsFound(Exception):
    """Every problem of a run, gathered before anything fails.

    `draft` is what could be read of a recipe that has problems: enough to say what else is wrong
    with it, never to be published.
    """

    def __init__(self, problems: Iterable[Problem], draft: object = None) -> None:
        self.problems = tuple(sorted(set(problems)))
        self.draft = draft
        super().__init__("\n".join(str(problem) for problem in self.problems))


class Unreadable(ValueError):
    """A text of a recipe that cannot be read; it carries what to write instead.

    Raised by the small parsers and turned into a Problem by whoever knows file and line.
    """

    def __init__(self, what: str, mend: str = "") -> None:
        self.what = in_short(what)
        self.mend = in_short(mend, _LONG_LIST)
        super().__init__(f"{self.what} {self.mend}".rstrip())


# what is quoted of a file may be a whole page long, and so may a word
_LONG_QUOTE = late_regex(r'"([^"]{60})[^"]{60,}"')
_LONG_LIST = late_regex(r'"([^"]{240})[^"]{60,}"')  # of a list that is to be written, all
_LONG_WORD = late_regex(r"(\S{60})\S{20,}")
_LONGEST_MESSAGE = 600


# lines further in, where words are wanted: as the program holds them they say nothing to a cook
_HELD = late_regex(
    r"""(?P<begins>\A)?"(?:\{(?:'|\d+: )|\[['\[{]|\[(?:\d|None|True|False)\b|b'|set\(|\(')[^"]*"?"""
)
_AS_HELD = ('"{', '"[', '"(', "\"b'", '"set(', '"True"', '"False"', '"None"')


def _said_of_lines(found: re.Match[str]) -> str:
    return "A list" if found["begins"] is not None else "a list"


def in_short(message: str, too_long: re.Pattern[str] = _LONG_QUOTE) -> str:
    r"""Return a message on one line, with what it quotes cut to what shows where to look.

    >>> in_short('"two\nlines" is no name.')
    '"two lines" is no name.'
    >>> in_short("\"{'quince-': None}\" is not a kind.")
    'A list is not a kind.'
    """
    line = " ".join(message.split()) if "\n" in message or "\r" in message else message
    if any(held in line for held in _AS_HELD):
        line = _HELD.sub(_said_of_lines, line)
        for held, said in (('"True"', '"yes"'), ('"False"', '"no"'), ('"None"', "nothing")):
            line = line.replace(held, said)
    if len(line) < 80:
        return line
    line = _LONG_WORD.sub(r"\1…", too_long.sub(r'"\1…"', line))
    return line if len(line) <= _LONGEST_MESSAGE else f"{line[:_LONGEST_MESSAGE]}…"


def say_written(value: object) -> str:
    """Return what stands in a file as a message may quote it: nothing and lists in words.

    >>> say_written(None), say_written(3), say_written(["a"])
    ('nothing', '"3"', 'a list')
    """
    if value is None:
        return "nothing"
    if isinstance(value, bool):
        return '"yes"' if value else '"no"'
    if isinstance(value, dict | list | tuple):
        return "a list"
    return f'"{value}"'
