"""What stands in the boxes of a recipe, line by line, and words as a file takes them.

Pasted text is as welcome as typed: bullets and numbers are taken off, a step that runs over lines
is one step.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Final

import yaml

_BULLET: Final = re.compile(
    r"^(?:[-*+•·‣▪–—]\s+|\(?\d{1,2}[.)]\s+|step\s+\d+[.:]?\s+)+", re.IGNORECASE
)
_LONGEST_HEADING: Final = 60


@dataclass(frozen=True)
class Line:
    """One line of a box: its words, whether it is a heading, how deep it stands.

    `at` are the first and last of the box's own lines that it is made of.
    """

    text: str
    is_heading: bool = False
    depth: int = 0
    at: tuple[int, int] = field(default=(-1, -1), compare=False)


def box_lines(text: str, with_groups: bool = True) -> list[Line]:
    r"""Return the lines of a list's box, without bullets; a blank line ends a heading's group.

    >>> [(line.text, line.depth) for line in box_lines("For the icing:\n- 100 g sugar\n\n1 egg")]
    [('For the icing', 0), ('100 g sugar', 1), ('1 egg', 0)]
    """
    found: list[Line] = []
    grouped = False
    for raw in text.replace("\r\n", "\n").split("\n"):
        words = _BULLET.sub("", " ".join(raw.split()))
        if not words:
            grouped = grouped and bool(found) and found[-1].is_heading
        elif with_groups and is_heading(words):
            grouped = True
            found.append(Line(words[:-1].strip(), True))
        else:
            found.append(Line(words, depth=int(grouped)))
    return found


def is_heading(words: str) -> bool:
    """Whether a line of a box is a heading: a few words and a colon."""
    return words.endswith(":") and len(words) <= _LONGEST_HEADING


def step_lines(text: str) -> list[Line]:
    r"""Return the steps of a box; a line that goes on in the next is one step.

    >>> [line.text for line in step_lines("1. Wash the\njar.\n2. Fill it.")]
    ['Wash the jar.', 'Fill it.']
    """
    found: list[Line] = []
    for place, raw in enumerate(text.replace("\r\n", "\n").split("\n")):
        bare = " ".join(raw.split())
        words = _BULLET.sub("", bare)
        if not words:
            continue
        goes_on = words == bare and found and not found[-1].is_heading
        ended = not goes_on or re.search(r"[.!?:]$", found[-1].text)
        if not ended and words[:1].islower():
            joined = f"{found[-1].text} {words}"
            found[-1] = Line(joined, at=(found[-1].at[0], place))
        elif is_heading(words) and len(words.split()) <= 6:
            found.append(Line(words[:-1].strip(), True, at=(place, place)))
        else:
            found.append(Line(words, at=(place, place)))
    return found


def quoted(words: str, before: str = "x: ") -> str:
    r"""Return words so that every reader of such files takes them for these very words.

    >>> quoted("Bright, bittersweet drops."), quoted('Plum: "old"'), quoted("")
    ('Bright, bittersweet drops.', '"Plum: \\"old\\""', '')
    """
    try:
        read = yaml.safe_load(f"{before}{words}")
    except yaml.YAMLError:
        read = None
    value = read[0] if isinstance(read, list) and read else None
    value = next(iter(read.values()), None) if isinstance(read, dict) and len(read) == 1 else value
    plain = not isinstance(value, dict | list | str) and value is not None
    if not words or value == words or (plain and not re.search(r"[#\[\]{}\"']", words)):
        return words
    return '"{}"'.format(words.replace("\\", "\\\\").replace('"', '\\"'))
