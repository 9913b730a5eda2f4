"""An answer that was pressed: which lines of which box it stands for, and what it puts there.

A button tells the lines that were asked about as well, since more may be typed between the question
and the press. Where they stand no longer as they were read, nothing is put in their place.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from typing import Final

_MOST_WORDS: Final = 100_000
"""What a button of ours never holds: a box takes 60,000 letters."""


SETTLED: Final = "settled"
"""The box, unseen, of the lines that were said to be steps."""
_NOTES: Final = re.compile(r"^## Notes[ \t]*\n+", re.MULTILINE)
_HEADING: Final = re.compile(r"^#{1,6}\s", re.MULTILINE)


def press_of(
    box: str,
    lines: Sequence[str],
    first: int,
    last: int,
    line: str,
    *,
    to: str = "",
    more: str = "",
) -> str:
    """Return what a button says: the lines of a box that it stands for, and what goes there.

    `more` goes into the box `to` besides: a line of the method among the notes.
    """
    was = "\n".join(lines[first : last + 1])
    said = {"box": box, "first": first, "was": was, "line": line}
    return json.dumps(said | ({"to": to, "more": more} if to else {}), ensure_ascii=False)


def pressed_in(form: Mapping[str, str], said: str) -> dict[str, str]:
    """Return the boxes with the answer in its lines; as they were where its lines have changed."""
    press = _read(said)
    box, was, first = press.get("box"), press.get("was"), press.get("first")
    line = press.get("line")
    if not (isinstance(was, str) and isinstance(first, int) and isinstance(line, str)):
        return dict(form)
    if not isinstance(box, str) or box not in form:
        return dict(form)
    lines, asked = form[box].split("\n"), was.split("\n")
    at = _place_of(asked, lines, first)
    if at < 0:
        return dict(form)
    lines[at : at + len(asked)] = [line] if line else []  # what goes elsewhere leaves no gap
    found = {**form, box: "\n".join(lines)}
    to, more = press.get("to"), press.get("more")
    if to in (SETTLED, "after") and isinstance(more, str):
        found[to] = with_more(found.get(to, ""), more, to)
    return found


def _place_of(asked: Sequence[str], lines: Sequence[str], first: int) -> int:
    """Return where lines stand that were asked about at `first`; -1 where it is not sure.

    An answer above them that took a line out has moved them.
    """
    size = len(asked)
    if lines[first : first + size] == asked:
        return first
    places = [at for at in range(len(lines)) if lines[at : at + size] == asked]
    return places[0] if len(places) == 1 else -1


def with_more(text: str, more: str, box: str) -> str:
    r"""Return what stands in a box with a line more: behind the last note, or the last line.

    >>> with_more("## Notes\n\nIt sets late.\n\n## Source\n\nNan", "Photograph: Ann", "after")
    '## Notes\n\nIt sets late.\n\nPhotograph: Ann\n\n## Source\n\nNan'
    >>> with_more("## Source\n\nNan", "Ann", "after"), with_more("", "Ann", "after")
    ('## Notes\n\nAnn\n\n## Source\n\nNan', 'Ann')
    """
    if box == SETTLED or not text.strip():
        return f"{text}\n{more}".strip("\n")
    if not _HEADING.match(text):  # words without a heading are notes
        text = f"## Notes\n\n{text}"
    if not (found := _NOTES.search(text)):
        return f"## Notes\n\n{more}\n\n{text}"
    below = _HEADING.search(text, found.end())
    end = below.start() if below else len(text)
    return f"{text[:end].rstrip()}\n\n{more}\n\n{text[end:]}".rstrip("\n")


def _read(said: str) -> dict[str, object]:
    try:
        press = json.loads(said) if len(said) < _MOST_WORDS else None
    except (ValueError, RecursionError):
        return {}
    return press if isinstance(press, dict) else {}
