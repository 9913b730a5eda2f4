"""Settings and giving lists changed in their files with the smallest change.

The file is read and written by a library that keeps notes and order (ruamel.yaml). What it would
set otherwise all the same, a long line or a way to set in, is taken from the file as it was: only
the lines that a change made different are put into it.
"""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Iterator, Sequence
from difflib import SequenceMatcher
from typing import Any, Final

from ruamel.yaml import YAML
from ruamel.yaml.error import YAMLError
from ruamel.yaml.scalarstring import DoubleQuotedScalarString, ScalarString
from ruamel.yaml.tokens import CommentToken

from stillroom.core.words.problems import Problem, ProblemsFound

Change = Callable[[Any], None]
_WIDEST: Final = 100_000
_FIRST_ROW: Final = re.compile(
    r"^( *)(?![ #-])[^\n]*:[ \t]*(?:#[^\n]*)?\n(?:[ \t]*(?:#[^\n]*)?\n)*\1( {0,8})- ", re.MULTILINE
)
"""The first row of a list and how far it is set in from its key: not at all, as programs do it."""


def _reader(text: str) -> YAML:
    """Return what reads a file and sets its rows in as far as the file does."""
    yaml = YAML()
    yaml.preserve_quotes = True
    yaml.width = _WIDEST
    first = _FIRST_ROW.search(text)
    offset = len(first[2]) if first else 2
    yaml.indent(mapping=2, sequence=offset + 2, offset=offset)
    return yaml


def read_yaml_file(text: str, name: str) -> Any:
    """Return what a file says, with all that is needed to write it again; raises ProblemsFound."""
    try:
        return _reader(text).load(text.replace("\r\n", "\n"))
    except YAMLError as error:
        line = getattr(getattr(error, "problem_mark", None), "line", 0) + 1
        what = "The file is not set as such a file is, so it cannot be changed here."
        mend = "Mend this line in a text editor, or go back to an earlier version."
        raise ProblemsFound([Problem(name, line, what, mend)]) from None


def change_yaml(text: str, name: str, change: Change) -> str:
    """Return a file's words after `change` was done to what it says; raises ProblemsFound."""
    plain = text.replace("\r\n", "\n")
    said = read_yaml_file(plain, name)
    before = _written(said, plain)
    change(said)
    after = _written(said, plain)
    merged = _merged(plain, before, after)
    if not _says_the_same(merged, after, name):
        merged = after  # it could not be put between the lines as they were: set anew as a whole
    crlf = text.count("\r\n") * 2 > text.count("\n")
    return str(merged.replace("\n", "\r\n") if crlf else merged)


def _written(said: Any, own: str) -> str:
    out = io.StringIO()
    _reader(own).dump(said, out)
    return out.getvalue()


def _says_the_same(merged: str, after: str, name: str) -> bool:
    try:
        return bool(
            plain_data(read_yaml_file(merged, name)) == plain_data(read_yaml_file(after, name))
        )
    except ProblemsFound:  # rows set in by one way stand among rows set in by another
        return False


def plain_data(said: Any) -> Any:
    """Return what a file says without its notes and quotes, every name as words."""
    if isinstance(said, dict):
        return {str(key): plain_data(value) for key, value in said.items()}
    if isinstance(said, list):
        return [plain_data(value) for value in said]
    return str(said) if isinstance(said, str) else said


def _merged(own: str, before: str, after: str) -> str:
    """Return the file's own lines with those that differ between the two that were written."""
    lines, old, new = (text.splitlines(keepends=True) for text in (own, before, after))
    back = SequenceMatcher(a=old, b=lines, autojunk=False).get_opcodes()
    out: list[str] = []
    done = 0
    for i1, i2, j1, j2 in _changes(old, new):
        first, start, lead = _place(back, i1, old, at_end=False)
        last, end, tail = _place(back, i2, old, at_end=True)
        if start < done:
            return after
        out += [*lines[done:start], *old[first : first + lead], *new[j1:j2]]
        out += old[last - tail : last]
        done = end
    return "".join([*out, *lines[done:]])


def _changes(old: Sequence[str], new: Sequence[str]) -> Iterator[tuple[int, int, int, int]]:
    """Yield which lines become which; what is put in stands above notes that are not of its part.

    The library keeps the notes below a list with the last word of its last row, and would put what
    is new in that row, or a new row, below the notes that stand over what comes next.
    """
    for way, i1, i2, j1, j2 in SequenceMatcher(a=old, b=new, autojunk=False).get_opcodes():
        if way == "equal":
            continue
        if way != "insert":
            yield i1, i2, j1, j2
            continue
        least, at, begun = _WIDEST, i1, j1
        for j in range(j1, j2):
            if new[j].strip() and (far := _set_in(new[j])) < least:
                place = _above_notes(old, i1, far)
                if place != at and j > begun:
                    yield at, at, begun, j
                    begun = j
                least, at = far, place
        yield at, at, begun, j2


def _above_notes(old: Sequence[str], at: int, far: int) -> int:
    """Return where lines set in so far stand above the notes that are set in less than they are."""
    place = at
    while place and far:
        above = old[place - 1]
        if above.strip() and not (above.lstrip().startswith("#") and _set_in(above) < far):
            break
        place -= 1
    return place


def _set_in(line: str) -> int:
    return len(line) - len(line.lstrip(" "))


def _place(
    back: Sequence[tuple[str, int, int, int, int]], at: int, old: Sequence[str], *, at_end: bool
) -> tuple[int, int, int]:
    """Return where a line stands in the file itself, and how many lines around it go along.

    A line that the file sets otherwise is taken as written, with all that was set otherwise there.
    """
    for way, i1, i2, j1, j2 in back:
        inside = i1 < at <= i2 if at_end else i1 <= at < i2
        if not inside:
            continue
        if way == "equal":
            return at, j1 + at - i1, 0
        return (i2, j2, i2 - at) if at_end else (i1, j1, at - i1)
    return at, back[-1][4] if back else 0, 0


def put(said: Any, path: Sequence[str | int], value: Any) -> None:
    """Put a value at a place, in the quotes in which the one before it stood; None takes it out."""
    for key in path[:-1]:
        said = said[key] if not isinstance(said, dict) else said.setdefault(key, {})
    key = path[-1]
    if value is None:
        if isinstance(said, dict):
            said.pop(key, None)
        return
    had = said.get(key) if isinstance(said, dict) else None
    if isinstance(value, str) and isinstance(had, ScalarString):
        value = type(had)(value)
    if isinstance(value, list) and isinstance(had, list):
        if list(had) != value:
            _put_rows(had, value)
    elif had != value or type(had) is not type(value):
        said[key] = value


def _put_rows(had: Any, value: list[Any]) -> None:
    """Put rows in the place of others; it stays set on one line, or one to a line, as it was.

    The note beside a row that stays goes with it. What stands below the last row is kept with that
    row by the library, and belongs to what comes next: it stays below.
    """
    old, notes = list(had), dict(getattr(getattr(had, "ca", None), "items", {}))
    had[:] = value
    if not notes or not value:
        return
    had.ca.items.clear()
    below, kept = "", notes.get(len(old) - 1)
    if kept and kept[0]:
        beside, _, below = kept[0].value.partition("\n")
        notes[len(old) - 1] = _note(f"{beside}\n", kept[0]) if beside.strip() else None
    same = [
        (block.a + k, block.b + k)
        for block in SequenceMatcher(
            a=list(map(str, old)), b=list(map(str, value))
        ).get_matching_blocks()
        for k in range(block.size)
    ]
    for a, b in same:
        if notes.get(a):
            had.ca.items[b] = notes[a]
    if kept and below.strip():
        last = len(value) - 1
        beside = had.ca.items[last][0].value if last in had.ca.items else "\n"
        had.ca.items[last] = _note(f"{beside}{below}", kept[0])


def _note(text: str, was: CommentToken) -> list[Any]:
    """Return a note as far from the margin as the one that it was."""
    return [CommentToken(text, was.start_mark, None), None]


def in_quotes(text: str) -> Any:
    """Return words that stand in quotes whatever they are: NO is a country."""
    return DoubleQuotedScalarString(text)
