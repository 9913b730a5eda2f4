"""A recipe file divided into its facts and what stands below them, by its lines of three dashes.

A line of dashes that is missing or stands too early is told, and the rest is read all the same
where it is plain what belongs above. Leaves out what either part says.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from stillroom.core.reading.pasted import draft_facts, refuse_other_papers
from stillroom.core.reading.written_facts import KNOWN_KEYS
from stillroom.core.recipe.body import is_heading_below
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Problem, ProblemsFound

# three dashes, however a word processor has set them
_DASHES: Final = late_regex(r"(?:-{3,}|[–—][-–—]*|-[–—]+)")
_NAME: Final = late_regex(r"([A-Za-z][A-Za-z _-]{1,20}):(?:\s|$)")
_NEEDED: Final = ("title", "kind", "makes", "ingredients", "materials")
_NO_END: Final = "The second line of three dashes, below the facts, is missing."
_THEN: Final = "Then check again: the rest cannot be read until it is so."


@dataclass(frozen=True)
class Divided:
    """The lines of the facts and those below, each with the number of its first line."""

    front: tuple[str, ...]
    first: int
    body: tuple[str, ...]
    body_line: int
    problems: tuple[Problem, ...] = ()
    has_facts: bool = True


def divide(text: str, name: str) -> Divided:
    """Divide a recipe file; raises ProblemsFound where it is not plain what stands above."""
    lines = text.removesuffix("\n").split("\n")
    begin = next((place for place, line in enumerate(lines) if line.strip()), len(lines))
    if begin == len(lines):
        what, mend = "The file is empty.", 'Write a recipe as the page "Write a recipe" shows.'
        raise ProblemsFound([Problem(name, 1, what, mend)])
    refuse_other_papers(lines, begin, name)
    problems = []
    if _is_fence(lines[begin]):
        what = "The recipe stands between lines of three marks, as if it were a piece of a program."
        problems.append(Problem(name, begin + 1, what, f'Take out the lines "{lines[begin]}".'))
        lines = ["" if _is_fence(line) else line for line in lines]
        begin = next((place for place, line in enumerate(lines) if line.strip()), begin)
    if not _is_rule(lines[begin]):
        what = "The recipe does not begin with a line of three dashes."
        if not _name_of(lines[begin]):
            mend = f"Begin with the lines {draft_facts(lines)}."
            if _end(lines, begin) is None:
                raise ProblemsFound([*problems, Problem(name, begin + 1, what, f"{mend} {_THEN}")])
            told = (*problems, Problem(name, begin + 1, what, mend))
            return Divided((), 1, tuple(lines), 1, told, has_facts=False)
        problems.append(Problem(name, begin + 1, what, 'Put a line "---" above this one.'))
        begin -= 1
    end = _end(lines, begin + 1)
    if end is None:
        mend = f'Put a line "---" below the last of them. {_THEN}'
        raise ProblemsFound([*problems, Problem(name, max(begin, 0) + 1, _NO_END, mend)])
    if _is_rule(lines[end]) or lines[end] == "...":
        front, body = lines[begin + 1 : end], end + 1
        after = _end(lines, end + 1)
        if after and _is_rule(lines[after]) and _are_facts(lines[end + 1 : after]):
            front, body = [*front, "", *lines[end + 1 : after]], after + 1
    else:
        front, body = lines[begin + 1 : end], end
        problems.append(Problem(name, end + 1, _NO_END, 'Put a line "---" above this heading.'))
    return Divided(tuple(front), begin + 2, tuple(lines[body:]), body + 1, tuple(problems))


def _is_rule(line: str) -> bool:
    return bool(_DASHES.fullmatch(line.strip()))


def _end(lines: Sequence[str], start: int) -> int | None:
    """Return where facts end: at a line of dashes, or before a heading that stands below them."""
    goes_on = -1  # the last line that is one of the facts or ends them; looked for when asked
    for place in range(start, len(lines)):
        above = lines[place - 1] if place else "x"
        if _is_rule(lines[place]) or lines[place] == "...":
            return place
        # only below a blank line does it matter whether the facts go on
        ended = False
        if not above.strip():
            goes_on = _last_of_facts(lines) if goes_on < 0 else goes_on
            ended = goes_on <= place
        if is_heading_below(lines[place], above, ended):
            return place
    return None


def _last_of_facts(lines: Sequence[str]) -> int:
    """Return the last line of dashes, or with a fact at its margin: down to it the facts go on."""
    for place in range(len(lines) - 1, 0, -1):
        line = lines[place]
        if not line[:1].isspace() and (_is_rule(line) or _name_of(line[:24])):
            return place
    return 0


def _is_fence(line: str) -> bool:
    return bool(re.fullmatch(r"\s*(?:```|~~~)\s*[a-z]*\s*", line))


def _name_of(line: str) -> str:
    """Return the fact that a line states, if it is one of a recipe's."""
    found = _NAME.match(line.strip())
    word = found[1].lower().replace(" ", "_") if found else ""
    return word if word in KNOWN_KEYS else ""


def _are_facts(lines: Sequence[str]) -> bool:
    """Whether lines below the facts' end are facts too: the first is one, and one is needed."""
    written = [line for line in lines if line.strip()]
    return bool(
        written
        and _name_of(written[0])
        and any(_name_of(line) in _NEEDED for line in written if not line[0].isspace())
    )
