"""An answer that was pressed: which lines of which box it stands for, and what it puts there.

A button tells the lines that were asked about as well, since more may be typed between the question
and the press. Where they stand no longer as they were read, nothing is put in their place.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from typing import Final

_MOST_WORDS: Final = 100_000
"""What a button of ours never holds: a box takes 60,000 letters."""


def press_of(box: str, lines: Sequence[str], first: int, last: int, line: str) -> str:
    """Return what a button says: the lines of a box that it stands for, and what goes there."""
    was = "\n".join(lines[first : last + 1])
    return json.dumps({"box": box, "first": first, "was": was, "line": line}, ensure_ascii=False)


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
    if lines[first : first + len(asked)] != asked:
        return dict(form)
    lines[first : first + len(asked)] = [line]
    return {**form, box: "\n".join(lines)}


def _read(said: str) -> dict[str, object]:
    try:
        press = json.loads(said) if len(said) < _MOST_WORDS else None
    except (ValueError, RecursionError):
        return {}
    return press if isinstance(press, dict) else {}
