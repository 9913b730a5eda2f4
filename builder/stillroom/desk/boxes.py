"""What stands in the boxes of a recipe, line by line, and words as a file takes them.

Pasted text is as welcome as typed: bullets and numbers are taken off, a step that runs over lines
is one step.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import zip_longest
from typing import Final

import yaml

from stillroom.core.recipe.method import steps_in_line

_BULLET: Final = re.compile(
    r"^(?:[-*+•·‣▪–—]\s+|\(?\d{1,2}[.)]\s+|step\s+\d+[.:]?\s+)+", re.IGNORECASE
)
_NUMBER: Final = re.compile(r"\(?\d{1,2}[.)]\s|step\s+\d", re.IGNORECASE)
_LONGEST_HEADING: Final = 60
_IN_FILE: Final = re.compile(r"## (?P<words>[^\n]{1,60}?)[ \t]*:?[ \t]*")
_MOST_WORDS: Final = 6
"""Of a heading among steps: a step may end with a colon too."""


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


def headings_shown(after: str) -> str:
    r"""Return words below the method with their headings as a cook writes them.

    >>> headings_shown("## Notes\n\nIt sets late.\n\n### Small\n")
    'Notes:\n\nIt sets late.\n\n### Small\n'
    """
    found = ((line, _IN_FILE.fullmatch(line)) for line in after.split("\n"))
    return "\n".join(f"{head['words']}:" if head else line for line, head in found)


def headings_meant(after: str) -> str:
    r"""Return words below the method with their headings as a file has them.

    A heading is a few words and a colon, alone on a line, with something below them.

    >>> headings_meant("Notes:\n\nIt sets late.\n\nServe with:\n- cheese")
    '## Notes\n\nIt sets late.\n\n## Serve with\n\n- cheese'
    >>> headings_meant("It sets late.\nServe with:"), headings_meant("Take:")
    ('It sets late.\nServe with:', 'Take:')
    """
    lines = after.split("\n")
    found: list[str] = []
    for at, line in enumerate(lines):
        words = line.strip()
        apart = at == 0 or not lines[at - 1].strip()
        below = lines[at + 1 :]
        if apart and is_heading(words) and any(one.strip() for one in below):
            found.append(f"## {words[:-1].strip()}")
            found += [""] if below[0].strip() else []
        else:
            found.append(line)
    return "\n".join(found)


def step_lines(text: str) -> list[Line]:
    r"""Return the steps of a box as a file would have them.

    A line that goes on in the next is one step, and several with their numbers in one line are
    several. A heading under which nothing stands is a step, and so is whatever has a number.

    >>> [line.text for line in step_lines("1. Wash the\njar.\n2. Fill it. 3. Shake.")]
    ['Wash the jar.', 'Fill it.', 'Shake.']
    >>> [line.text for line in step_lines("For the icing:\nStir.\nServe with:") if line.is_heading]
    ['For the icing']
    """
    found: list[Line] = []
    for place, raw in enumerate(text.replace("\r\n", "\n").split("\n")):
        for bare in steps_in_line(" ".join(raw.split())):
            if words := bullet_off(bare):
                _add_step(found, words, bare, place)
    return list(_numbered_apart(_headings_of_some(found)))


def bullet_off(line: str) -> str:
    """Return a line without the bullet or the number that it begins with."""
    return _BULLET.sub("", line)


def _add_step(found: list[Line], words: str, bare: str, place: int) -> None:
    goes_on = words == bare and found and not found[-1].is_heading
    ended = not goes_on or re.search(r"[.!?:]$", found[-1].text)
    if not ended and words[:1].islower():
        found[-1] = Line(f"{found[-1].text} {words}", at=(found[-1].at[0], place))
    elif not _NUMBER.match(bare) and is_heading(words) and len(words.split()) <= _MOST_WORDS:
        found.append(Line(words[:-1].strip(), True, at=(place, place)))
    else:
        found.append(Line(words, at=(place, place)))


def _headings_of_some(lines: Sequence[Line]) -> Iterator[Line]:
    """Yield the lines; a heading with no step below it is a step, or a file would lose it."""
    for line, below in zip_longest(lines, lines[1:]):
        if line.is_heading and (below is None or below.is_heading):
            line = replace(line, text=f"{line.text}:", is_heading=False)
        yield line


def _numbered_apart(lines: Iterable[Line]) -> Iterator[Line]:
    """Yield the lines; one that a file would part at a number within it, in its parts."""
    number = 1
    for line in lines:
        if line.is_heading:
            yield line
            continue
        for part in steps_in_line(f"{number}. {line.text}"):
            yield replace(line, text=bullet_off(part.removeprefix(f"{number}. ")))
            number += 1


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
