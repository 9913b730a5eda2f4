"""What stands below the facts of a recipe file: a few words first, the method, other sections.

The method is found by its heading, whatever its size and by any of its usual names, or as the one
numbered list there is. Leaves out the steps themselves: method.py reads them.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Final

from stillroom.core.method import has_numbers, read_steps
from stillroom.core.problems import Problem, Unreadable
from stillroom.core.recipe import MethodStep, Section
from stillroom.core.units import read_data

_HEADING: Final = re.compile(r"(#{1,6})\s*(\S.*?)\s*#*$")
_BOLD: Final = re.compile(r"(?:\*\*|__)([^*_]+?):?(?:\*\*|__):?$")
_UNDERLINE: Final = re.compile(r"(=|-)\1{2,}$")
_NONE: Final = 'Add a heading "## Method" and below it the steps: "1. Wash the jar."'


@dataclass
class _Part:
    heading: str
    level: int
    line: int
    rows: list[str] = field(default_factory=list)

    @property
    def name(self) -> str:
        """Return the heading in small letters, without signs."""
        return " ".join(re.findall(r"[^\W_]+", self.heading.lower().replace("'", "")))

    @property
    def text(self) -> str:
        return "\n".join(self.rows).strip()


@dataclass(frozen=True)
class Body:
    """The words below the facts: an introduction, the steps, and every other section."""

    intro: str = ""
    method: tuple[MethodStep, ...] = ()
    sections: tuple[Section, ...] = ()


def read_body(lines: Sequence[str], first_line: int, file: str, problems: list[Problem]) -> Body:
    """Read what stands below the facts; what is wrong with it is added to `problems`."""
    parts = _parts(lines, first_line)
    at = _find_method(parts)
    if at is None:
        problems.append(Problem(file, first_line + len(lines), *_why_none(parts)))
        return Body(parts[0].text, (), _sections(parts[1:]))
    method = parts[at]
    if at == 0:  # steps without a heading: what stands before the first of them introduces them
        first = next(place for place, row in enumerate(method.rows) if has_numbers([row]))
        intro = _Part("", 0, first_line, method.rows[:first])
        method = _Part("", 0, first_line + first - 1, method.rows[first:])
    else:
        intro = parts[0]
    steps: tuple[MethodStep, ...] = ()
    try:
        steps = read_steps(method.rows, method.line + 1)
    except Unreadable as wrong:
        problems.append(Problem(file, max(method.line, 1), wrong.what, wrong.mend))
    if method.heading and method.name not in _words("method"):
        # a heading that is no word for a method says something of its own
        steps = tuple(replace(step, group=step.group or method.heading) for step in steps)
    others = [part for place, part in enumerate(parts) if place not in (0, at)]
    return Body(intro.text, steps, _sections(others))


def _sections(parts: Sequence[_Part]) -> tuple[Section, ...]:
    return tuple(Section(part.heading, part.text) for part in parts)


@cache
def _words(which: str) -> frozenset[str]:
    return frozenset(read_data("recipe_words.yml")[which])


def _parts(lines: Sequence[str], first_line: int) -> list[_Part]:
    """Divide the lines at their headings; a deeper heading of the method's stays within it."""
    parts = [_Part("", 0, first_line - 1)]
    fenced = False
    skip = False
    for offset, line in enumerate(lines):
        fenced ^= line.lstrip().startswith("```")
        if skip:
            skip = False
            continue
        below = lines[offset + 1].strip() if offset + 1 < len(lines) else ""
        found = None if fenced else _heading(line, below, lines[offset - 1] if offset else "")
        part = _Part(found[1], found[0], first_line + offset + found[2]) if found else None
        if part is None or not _begins(part, parts[-1]):
            parts[-1].rows.append(line)
        else:
            parts.append(part)
            skip = bool(part.line - first_line - offset)
    return parts


def _heading(line: str, below: str, above: str) -> tuple[int, str, bool] | None:
    """Return a heading's level, its words, and whether it is underlined; None for no heading."""
    bare = line.strip()
    if line[:4].strip() and (found := _HEADING.match(bare)):
        return len(found[1]), found[2].strip("*_ :"), False
    if not bare or above.strip():
        return None
    if (found := _UNDERLINE.match(below)) and not has_numbers([bare]):
        return (1 if found[1] == "=" else 2), bare, True
    found = _BOLD.match(bare)
    words = found[1] if found else bare.rstrip(":")
    plain = _Part(words, 0, 0).name
    # bold or bare, it is a heading only when it is one by its word
    if plain in _words("method") and (found or bare != words or bare.istitle()):
        return 2, words, False
    return None


def _begins(part: _Part, before: _Part) -> bool:
    """Whether a heading begins a part of its own, and is none within the method before it."""
    if before.name not in _words("method") or part.level <= before.level:
        return True
    return part.name in _words("aside")


def _find_method(parts: Sequence[_Part]) -> int | None:
    """Return the place of the method: by its heading, or as the only part that has numbers."""
    named = [place for place, part in enumerate(parts) if part.name in _words("method")]
    if named:
        return next((place for place in named if parts[place].text), named[0])
    numbered = [
        place
        for place, part in enumerate(parts)
        if has_numbers(part.rows) and part.name not in _words("aside")
    ]
    return numbered[0] if len(numbered) == 1 else None


def _why_none(parts: Sequence[_Part]) -> tuple[str, str]:
    numbered = [part.heading for part in parts if has_numbers(part.rows) and part.heading]
    if len(numbered) > 1:
        both = " and ".join(f'"{heading}"' for heading in numbered[:2])
        return f"It is not clear which is the method: {both}.", 'Write "## Method" above it.'
    return 'The recipe has no "## Method".', _NONE
