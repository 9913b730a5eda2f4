"""What stands below the facts of a recipe file: a few words first, the method, other sections.

The method is found by its heading, whatever its size, by any of its usual names and with a slip of
the pen in it, or as the one numbered list there is. Ingredients may stand here too. Leaves out the
steps themselves: method.py reads them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Final

from stillroom.core.lines.sizes import has_figure
from stillroom.core.recipe.method import has_numbers, read_steps
from stillroom.core.recipe.model import MethodStep, Section
from stillroom.core.words.data_files import read_data
from stillroom.core.words.nearest import nearest
from stillroom.core.words.odd_figures import find_endless, find_no_measure
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Problem, Unreadable

_HEADING: Final = late_regex(r"(#{1,6})\s*(\S.*?)\s*#*$")
_BOLD: Final = late_regex(r"(?:\*\*|__)([^*_]+?):?(?:\*\*|__):?$")
_UNDERLINE: Final = late_regex(r"(=|-)\1{2,}$")
_ITEM: Final = late_regex(r"(?:[-*+–—•·‣▪]\s*(?:\[[ xX]?\]\s*)?|\d{1,2}[.)]\s+)(?=\S)")
_IN_BRACES: Final = late_regex(r"\{(?![:.#])([^{}=]{1,60})\}")
LONGEST: Final = 30_000
LONGEST_STEP: Final = 4_000
MOST_LINES: Final = 1_000
_MOST_OPEN: Final = 30
_SQUARE: Final = late_regex(r"[\[\]]")
"""Below the facts: no recipe has as much, and more of it takes seconds to look through."""
NO_METHOD: Final = 'The recipe has no "## Method".'
_NONE: Final = 'Add a heading "## Method" and below it the steps: "1. Wash the jar."'
_NO_TABLE: Final = 'Write one ingredient to a line: "- 250 g sugar".'
_SLIP: Final = 0.85
"""How like the usual name of a method a heading must be to be taken for it."""


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

    @property
    def text_line(self) -> int:
        """Return the line of the file on which its text begins."""
        blank = next((at for at, row in enumerate(self.rows) if row.strip()), 0)
        return self.line + 1 + blank


@dataclass(frozen=True, slots=True)
class Listed:
    """One line of a list of ingredients below the facts, and the heading that it is under."""

    text: str
    group: str
    line: int


@dataclass(frozen=True)
class Body:
    """The words below the facts: an introduction, the steps, and every other section.

    `listed` are ingredients that stand here and not among the facts, `has_table` whether some
    of them stand in a table, which is told.
    """

    intro: str = ""
    intro_line: int = 0
    method: tuple[MethodStep, ...] = ()
    sections: tuple[Section, ...] = ()
    listed: tuple[Listed, ...] = ()
    has_table: bool = False


def read_body(
    lines: Sequence[str],
    first_line: int,
    file: str,
    problems: list[Problem],
    with_list: bool = False,
) -> Body:
    """Read what stands below the facts; what is wrong with it is added to `problems`.

    `with_list` says that the ingredients are to be looked for here.
    """
    lines = _within(lines, first_line, file, problems)
    for line, row in enumerate(lines, start=first_line):
        what, mend = find_no_measure(row)
        if not what and not with_list:  # a list here is read line by line, and tells its own
            what, mend = find_endless(row)
        if what:
            problems.append(Problem(file, line, what, mend))
    parts = _parts(lines, first_line)
    listed: tuple[Listed, ...] = ()
    table: Listed | None = None
    if not with_list:
        problems.extend(_second_list(parts, file))
    if with_list:
        taken = _find_list(parts)
        listed = tuple(item for part in taken for item in _items(part, taken[0]))
        table = next((one for one in listed if one.text.startswith("|")), None)
        if table:
            what = "A table stands where a list should."
            problems.append(Problem(file, table.line, what, _NO_TABLE))
            listed = tuple(one for one in listed if not one.text.startswith("|"))
        parts = [part for part in parts if part not in taken]
    at = _find_method(parts)
    if at is None:
        line, what, mend = _why_none(parts, first_line + len(lines) - 1)
        problems.append(Problem(file, max(line, 1), what, mend))
        return Body(
            parts[0].text, parts[0].text_line, (), _sections(parts[1:]), listed, bool(table)
        )
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
    if long := next((step for step in steps if len(step.text) > LONGEST_STEP), None):
        # what is said in a step is sought word by word, and beside every other word of it
        what = f"This step has {len(long.text)} letters; {LONGEST_STEP} are the most."
        problems.append(Problem(file, long.line, what, "Divide it into several."))
        steps = tuple(replace(step, text=step.text[:LONGEST_STEP]) for step in steps)
    if method.heading and not _is_method(method.name):
        # a heading that is no word for a method says something of its own
        steps = tuple(replace(step, group=step.group or method.heading) for step in steps)
    others = [part for place, part in enumerate(parts) if place not in (0, at)]
    problems.extend(_left_out([intro, *others], file))
    return Body(intro.text, parts[0].text_line, steps, _sections(others), listed, bool(table))


def _left_out(parts: Sequence[_Part], file: str) -> Iterator[Problem]:
    """Find what a reader would miss: a second method, and names in braces outside of any."""
    for part in parts:
        if _is_method(part.name) and part.text:
            what = "The method stands here a second time."
            yield Problem(file, part.line, what, "Put all its steps under one heading.")
            continue
        for offset, row in enumerate(part.rows, start=1):
            if found := _IN_BRACES.search(row):
                what = f'"{found[0]}" stands outside the method, where no amount is put for it.'
                yield Problem(file, part.line + offset, what, f'Write "{found[1]}".')


def is_heading_below(line: str, above: str = "x", ended: bool = True) -> bool:
    """Whether a line is a heading that can only stand below the facts, not a note among them.

    >>> is_heading_below("## Notes"), is_heading_below("# Method"), is_heading_below("# try less")
    (True, True, False)

    A bare word for the method is one too, where the line above is blank: "Method", "Directions:".
    """
    if not above.strip() and ended and line[:1].isalpha() and not line[:1].islower():
        words = line.strip().rstrip(":")
        if _is_method(_Part(words, 0, 0).name) and len(words.split()) < 4:
            return True
    found = _HEADING.match(line.strip()) if line[:1] == "#" else _BOLD.match(line.strip())
    if not found:
        return False
    return line.startswith("## ") or _is_method(_Part(found[found.lastindex or 1], 0, 0).name)


def _find_list(parts: Sequence[_Part]) -> list[_Part]:
    """Return the part that lists the ingredients, with the deeper parts that follow it."""
    for place, part in enumerate(parts):
        if part.heading and part.name in _words("ingredients"):
            end = place + 1
            while end < len(parts) and parts[end].level > part.level:
                end += 1
            return [one for one in parts[place:end] if not _is_method(one.name)]
    return []


def _second_list(parts: Sequence[_Part], file: str) -> Iterator[Problem]:
    """Tell of ingredients that stand below beside those above: they would never be scaled."""
    for part in _find_list(parts)[:1]:
        first = next((one for one in _items(part, part) if has_figure(one.text)), None)
        if first:
            what = f'Ingredients stand under "{part.heading}" too, where no amount is put for them.'
            mend = f'Put each under "ingredients:" above: "- {first.text}".'
            yield Problem(file, first.line, what, mend)


def _items(part: _Part, top: _Part) -> Iterator[Listed]:
    group = "" if part is top else part.heading
    for offset, row in enumerate(part.rows, start=1):
        bare = row.strip()
        item = _ITEM.match(bare)
        heading = None if item else _BOLD.match(bare)
        if heading or (bare.endswith(":") and not item):
            group = heading[1] if heading else bare.rstrip(":")
        elif bare:
            yield Listed(bare[item.end() :] if item else bare, group, part.line + offset)


def _sections(parts: Sequence[_Part]) -> tuple[Section, ...]:
    return tuple(Section(part.heading, part.text, part.text_line) for part in parts)


@cache
def _words(which: str) -> frozenset[str]:
    return frozenset(read_data("recipe_words.yml")[which])


def _within(
    lines: Sequence[str], first_line: int, file: str, problems: list[Problem]
) -> Sequence[str]:
    """Return the lines that are looked at: all of them, but for what is too long for a recipe."""
    letters = depth = 0
    for place, line in enumerate(lines):
        letters += len(line)
        depth = 0 if not line.strip() else _deepest(line, depth)
        if depth > _MOST_OPEN:
            what = f'More than {_MOST_OPEN} "[" stand within each other here.'
            if not any(one.what == what for one in problems):
                problems.append(Problem(file, first_line + place, what, "Take them out."))
            lines, depth = [*lines[:place], "", *lines[place + 1 :]], 0
        if letters > LONGEST or place == MOST_LINES:
            many = f"{MOST_LINES} lines" if place == MOST_LINES else f"{LONGEST} letters"
            what = f"There are more than {many} below the facts."
            problems.append(Problem(file, first_line + place, what, "Divide the recipe."))
            return lines[:place]
    return lines


def _deepest(line: str, depth: int) -> int:
    """Return how many "[" are open behind a line, or within it where those are too many."""
    for sign in _SQUARE.findall(line):
        depth = max(0, depth + (1 if sign == "[" else -1))
        if depth > _MOST_OPEN:
            break
    return depth


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
    by_word = _is_method(plain) or plain in _words("ingredients")
    if by_word and (found or bare != words or bare[:1].isupper()):
        return 2, words, False
    return None


@cache
def _is_method(name: str) -> bool:
    """Whether a heading is the method's, with a slip of the pen at most."""
    known = name in _words("method") or name in _words("aside")
    return name in _words("method") if known else bool(nearest(name, _words("slips"), _SLIP))


def is_aside(heading: str) -> bool:
    """Whether a heading says that what stands below it is no method: "To serve", "Notes"."""
    return _Part(heading, 0, 0).name in _words("aside")


def _begins(part: _Part, before: _Part) -> bool:
    """Whether a heading begins a part of its own, and is none within the method before it."""
    if not _is_method(before.name) or part.level <= before.level:
        return True
    return part.name in _words("aside")


def _find_method(parts: Sequence[_Part]) -> int | None:
    """Return the place of the method: by its heading, or as the only part that has numbers."""
    exact = [place for place, part in enumerate(parts) if part.name in _words("method")]
    named = exact or [place for place, part in enumerate(parts) if _is_method(part.name)]
    if named:
        return next((place for place in named if parts[place].text), named[0])
    numbered = [
        place
        for place, part in enumerate(parts)
        if has_numbers(part.rows) and part.name not in _words("aside")
    ]
    return numbered[0] if len(numbered) == 1 else None


def _why_none(parts: Sequence[_Part], last_line: int) -> tuple[int, str, str]:
    """Return at which line to say that there is no method, and what to do about it."""
    headed = [part for part in parts if part.heading and part.name not in _words("aside")]
    numbered = [part for part in headed if has_numbers(part.rows)]
    likely = numbered or [part for part in headed if part.text]
    if not likely:
        return last_line, NO_METHOD, _NONE
    first = likely[0]
    if len(likely) == 1:
        mend = f'If "{first.heading}" is the method, write "## Method" in its place.'
        return first.line, NO_METHOD, mend
    what = f'It is not clear which is the method: "{first.heading}" or "{likely[1].heading}".'
    return first.line, what, 'Write "## Method" in the place of the one that is.'
