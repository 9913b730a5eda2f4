"""Where everything stands in a recipe's file: the lines of each fact, row and step.

Lines are counted from 0 here and keep their ends. Leaves out how a row is shown (recipe_form.py),
and how it is written anew (recipe_writing.py).
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final

from stillroom.core.reading.recipe_file import read_front
from stillroom.core.recipe.body import Body, read_body
from stillroom.core.words.frontmatter import Located

LISTS: Final = ("ingredients", "timeline", "vessels", "containers", "season", "cautions")
OTHER_NAMES: Final = {"materials": "ingredients", "vessel": "vessels"}
_BLANK_OR_NOTE: Final = re.compile(r"\s*(?:#.*)?$")
_STEP: Final = re.compile(r"\s*(?:\(?\d{1,3}[.):]\s+|[-*+•]\s+)?")
_ITEM: Final = re.compile(r"\s*(?:[-*+•·]\s*)?(?:\d{1,2}[.)]\s+)?")
_HEADING: Final = re.compile(r"\s*(?:#{1,6}\s|\*\*[^*]+\*\*:?\s*$)")


@dataclass(frozen=True)
class Row:
    """One row of a list: what was read there, its lines, and what stands before its words."""

    value: Any
    first: int
    last: int
    before: str
    depth: int = 0
    is_heading: bool = False


@dataclass(frozen=True)
class Fact:
    """One fact above the method: its value, its lines, and the rows if it is a list of them."""

    key: str
    value: Any
    first: int
    last: int
    rows: tuple[Row, ...] = ()


@dataclass(frozen=True)
class Laid:
    """A recipe's file with the place of everything in it."""

    lines: tuple[str, ...]
    facts: Mapping[str, Fact]
    front_end: int
    body: Body
    steps: tuple[Row, ...] = ()
    listed: tuple[Row, ...] = ()
    intro: tuple[int, int] = (0, 0)
    after: tuple[int, int] = (0, 0)
    end_of_line: str = "\n"
    data: Mapping[str, Any] = field(default_factory=dict)

    def ingredients(self) -> tuple[Row, ...]:
        """Return the rows of the ingredients, wherever in the file they stand."""
        fact = self.facts.get("ingredients")
        return fact.rows if fact else self.listed


def lay_out(raw: str, name: str) -> Laid:
    """Find everything in a recipe's file; raises ProblemsFound where it cannot be divided."""
    lines = tuple(raw.splitlines(keepends=True)) if "\r" not in raw.replace("\r\n", "") else ()
    lines = lines if len(lines) == raw.count("\n") + (not raw.endswith("\n")) else _by_line(raw)
    parts, located = read_front(raw, name)
    front_end = parts.first - 1 + len(parts.front)
    facts = {one.key: one for one in _facts(located, lines, front_end)}
    wants_list = "ingredients" not in facts
    body = read_body(parts.body, parts.body_line, name, [], wants_list)
    start = parts.body_line - 1
    steps = _steps(body, lines, start)
    listed = tuple(
        Row(one.text, one.line - 1, one.line, _before(lines[one.line - 1], _ITEM))
        for one in body.listed
    )
    return Laid(
        lines=lines,
        facts=facts,
        front_end=front_end,
        body=body,
        steps=steps,
        listed=listed,
        intro=_intro(body, lines, start),
        after=_after(steps, lines),
        end_of_line="\r\n" if raw.count("\r\n") * 2 > raw.count("\n") else "\n",
        data=located.data,
    )


def _by_line(raw: str) -> tuple[str, ...]:
    r"""Cut at "\\n" alone: other signs that some programs take for a line's end are none here."""
    pieces = raw.split("\n")
    whole = [f"{piece}\n" for piece in pieces[:-1]]
    return (*whole, pieces[-1]) if pieces[-1] else tuple(whole)


def _facts(located: Located, lines: Sequence[str], front_end: int) -> list[Fact]:
    tops = sorted(
        (line - 1, key)
        for key, line in located.lines.items()
        if "/" not in key and key in located.data
    )
    found = []
    for place, (first, key) in enumerate(tops):
        end = tops[place + 1][0] if place + 1 < len(tops) else front_end
        last = _trimmed(lines, first, end)
        name = OTHER_NAMES.get(key, key)
        rows = _rows(key, located, lines, last) if name in LISTS else ()
        found.append(Fact(name, located.data[key], first, last, rows))
    return found


def _rows(key: str, located: Located, lines: Sequence[str], last: int) -> tuple[Row, ...]:
    value = located.data[key]
    if not isinstance(value, list) or f"{key}/0" not in located.lines:
        return ()
    starts: list[tuple[int, Any, int, bool]] = []
    for place, item in enumerate(value):
        line = located.lines.get(f"{key}/{place}")
        if line is None:
            return ()
        heading = _heading_of(item)
        if heading is None:
            starts.append((line - 1, item, 0, False))
            continue
        starts.append((line - 1, heading, 0, True))
        for inner, child in enumerate(item[heading]):
            below = located.lines.get(f"{key}/{place}/{heading}/{inner}")
            if below is None:
                return ()
            starts.append((below - 1, child, 1, False))
    rows = []
    for place, (first, item, depth, is_heading) in enumerate(starts):
        end = starts[place + 1][0] if place + 1 < len(starts) else last
        if end <= first:  # two on one line: they are written anew together
            return ()
        before = _before(lines[first], _ITEM)
        rows.append(Row(item, first, _trimmed(lines, first, end), before, depth, is_heading))
    return tuple(rows)


def _heading_of(item: Any) -> str | None:
    """Return the heading of a group among the ingredients; None for an ingredient."""
    if isinstance(item, dict) and len(item) == 1:
        ((word, below),) = item.items()
        if isinstance(below, list) and word != "parts":
            return str(word)
    return None


def _trimmed(lines: Sequence[str], first: int, end: int) -> int:
    """Return where something ends, without the blank lines and the notes before what follows."""
    while end > first + 1 and _BLANK_OR_NOTE.match(lines[end - 1].rstrip("\r\n")):
        end -= 1
    return end


def _before(line: str, shape: re.Pattern[str]) -> str:
    found = shape.match(line.rstrip("\r\n"))
    return found[0] if found else ""


def _steps(body: Body, lines: Sequence[str], start: int) -> tuple[Row, ...]:
    rows: list[Row] = []
    group = ""
    firsts = [step.line - 1 for step in body.method]
    for place, step in enumerate(body.method):
        first = firsts[place]
        if step.group != group:
            group = step.group
            above = rows[-1].last if rows else start
            at = [i for i in range(above, first) if _HEADING.match(lines[i])]
            if at and group:
                rows.append(Row(group, at[-1], at[-1] + 1, "### ", 0, True))
        end = firsts[place + 1] if place + 1 < len(firsts) else len(lines)
        end = next((i for i in range(first + 1, end) if _HEADING.match(lines[i])), end)
        while end > first + 1 and not lines[end - 1].strip():
            end -= 1
        rows.append(Row(step.text, first, end, _before(lines[first], _STEP)))
    return tuple(rows)


def _intro(body: Body, lines: Sequence[str], start: int) -> tuple[int, int]:
    """Return the lines of the words that stand first below the facts."""
    if not body.intro:
        return start, start
    first = next(i for i in range(start, len(lines)) if lines[i].strip())
    for end in range(first + 1, len(lines) + 1):
        said = "".join(lines[first:end]).replace("\r\n", "\n").strip()
        if len(said) >= len(body.intro):
            return first, end
    return first, len(lines)


def _after(steps: Sequence[Row], lines: Sequence[str]) -> tuple[int, int]:
    """Return the lines below the method, from the next heading on."""
    if not steps:
        return len(lines), len(lines)
    first = next(
        (i for i in range(steps[-1].last, len(lines)) if lines[i].strip()),
        len(lines),
    )
    return first, len(lines)


def lines_between(laid: Laid, rows: Sequence[Row], row: Row, only_notes: bool = False) -> list[str]:
    """Return the notes and blank lines between a row and the one before it."""
    place = next(i for i, one in enumerate(rows) if one is row)
    start = rows[place - 1].last if place else row.first
    between = laid.lines[start : row.first]
    return [line for line in between if not only_notes or line.strip()]
