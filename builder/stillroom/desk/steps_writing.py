"""The steps of a method back into the file: those that stay keep their lines, all a number.

Used by recipe_writing.py alone.
"""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterator, Sequence
from difflib import SequenceMatcher
from typing import Final

from stillroom.desk.boxes import Line
from stillroom.desk.recipe_form import braced
from stillroom.desk.recipe_rows import Laid, lines_between

_STEP_NUMBER: Final = re.compile(r"(\s*\(?)(\d{1,3})([.):].*)", re.DOTALL)
_WIDEST: Final = 110


def steps_anew(laid: Laid, lines: Sequence[Line]) -> Iterator[str]:
    """Yield the lines of a method as its box says it now."""
    rows = laid.steps
    signs = {bool(re.search(r"\d", row.before)) for row in rows if not row.is_heading}
    if len(signs) != 1 or not all(row.before.strip() for row in rows if not row.is_heading):
        yield from new_steps(
            lines
        )  # lettered, or with no sign at all: one more would be unlike them
        return
    width = _width(laid)
    sample = next((row.before for row in rows if not row.is_heading), "1. ")
    numbered = bool(re.search(r"\d", sample)) or not sample.strip()
    old = [(str(row.value), row.is_heading) for row in rows]
    new = [(braced(line.text), line.is_heading) for line in lines]
    number = 0
    for way, i1, _, j1, j2 in SequenceMatcher(a=old, b=new, autojunk=False).get_opcodes():
        for place in range(j1, j2):
            words, is_heading_line = new[place]
            row = rows[i1 + place - j1] if way == "equal" else None
            number += not is_heading_line
            if row is not None:
                yield from lines_between(laid, rows, row)
                yield from _numbered(laid.lines[row.first : row.last], number, is_heading_line)
            elif is_heading_line:
                yield from ("", f"### {words}", "")
            else:
                before = re.sub(r"\d+", str(number), sample, count=1) if sample.strip() else "1. "
                yield from _wrapped(words, before if numbered else sample, width)


def _width(laid: Laid) -> int:
    """Return how wide the steps of a file are set; 0 where each stands on one line."""
    rows = [row for row in laid.steps if not row.is_heading]
    if all(row.last == row.first + 1 for row in rows):
        return 0
    lines = [line for row in rows for line in laid.lines[row.first : row.last]]
    return min(max(len(line.rstrip()) for line in lines), _WIDEST)


def _numbered(own: Sequence[str], number: int, is_heading_line: bool) -> Iterator[str]:
    """Yield a step's own lines under its number now."""
    found = _STEP_NUMBER.match(own[0])
    if is_heading_line or not found or int(found[2]) == number:
        yield from own
    else:
        yield f"{found[1]}{number}{found[3]}"
        yield from own[1:]


def _wrapped(words: str, before: str, width: int) -> list[str]:
    if not width:
        return [f"{before}{words}"]
    further = " " * len(before)
    lines = textwrap.wrap(
        words,
        width,
        initial_indent=before,
        subsequent_indent=further,
        break_long_words=False,
        break_on_hyphens=False,
    )
    # a line that begins with a number, a dash or a "#" would be read as something of its own
    safe = all(not re.match(r"\s*(?:\d+[.):]|[-*+•#])", line) for line in lines[1:])
    return lines if safe else [f"{before}{words}"]


def new_steps(lines: Sequence[Line]) -> Iterator[str]:
    """Yield the lines of steps that are all new."""
    number = 0
    for place, line in enumerate(lines):
        if line.is_heading:
            yield from (["", f"### {line.text}", ""] if place else [f"### {line.text}", ""])
        else:
            number += 1
            yield f"{number}. {braced(line.text)}"
