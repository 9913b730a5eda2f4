"""Where a line of a paper goes among notes or paragraphs: between those that stand beside it there.

Leaves out lines of lists and steps: lines_as_came.py.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from stillroom.desk.pressing import with_more

_HEADING = "#"


@dataclass(frozen=True)
class _Paragraph:
    """Lines of a box from one to another, the line of the paper that they came of, their heading.

    `came` is None where they came of none; `under` is "" above the first heading.
    """

    first: int
    last: int
    came: int | None
    under: str


def in_order(text: str, words: str, box: str, number: int, stands: Sequence[Sequence[int]]) -> str:
    r"""Return a box with a line of the paper as a paragraph more, in the paper's order.

    `number` is its place in the paper, `stands` at which lines of the box each line of it stands.
    Below the method it is a note; other headings keep what is theirs.

    >>> in_order("One.\n\nThree.", "Two.", "intro", 1, [[0], [], [2]])
    'One.\n\nTwo.\n\nThree.'
    >>> in_order("## Equipment\n\nA pan.", "It sets late.", "after", 1, [[2], []])
    '## Equipment\n\nA pan.\n\n## Notes\n\nIt sets late.'
    """
    rows = text.split("\n") if text.strip() else []
    if not rows:
        return words
    paragraphs = list(_paragraphs(rows, stands))
    notes = [one for one in paragraphs if box == "intro" or one.under in ("", "Notes")]
    if not notes:
        return _with_notes(rows, words, paragraphs, number)
    above = [one for one in notes if one.came is not None and one.came < number]
    below = [one for one in notes if one.came is not None and one.came > number]
    if above:
        at = above[-1].last + 1
        return "\n".join([*rows[:at], "", words, *rows[at:]])
    if below:
        at = below[0].first
        return "\n".join([*rows[:at], words, "", *rows[at:]])
    return f"{text}\n\n{words}".strip("\n") if box == "intro" else with_more(text, words, box)


def _with_notes(
    rows: Sequence[str], words: str, paragraphs: Sequence[_Paragraph], number: int
) -> str:
    """Return a box with notes begun in it, below what stands above them in the paper."""
    known = [one for one in paragraphs if one.came is not None and one.came < number]
    if not known:
        return with_more("\n".join(rows), words, "after")
    under = known[-1].under
    at = max(one.last for one in paragraphs if one.under == under) + 1
    more = ["", "## Notes", "", words]
    return "\n".join([*rows[:at], *more, *rows[at:]])


def _paragraphs(rows: Sequence[str], stands: Sequence[Sequence[int]]) -> Iterator[_Paragraph]:
    came = {at: line for line, places in enumerate(stands) for at in places}
    under, begin = "", -1
    for at, row in enumerate([*rows, ""]):
        is_end = not row.strip() or row.startswith(_HEADING)
        if is_end and begin >= 0:
            from_lines = [came[one] for one in range(begin, at) if one in came]
            yield _Paragraph(begin, at - 1, max(from_lines, default=None), under)
            begin = -1
        if row.startswith(_HEADING):
            under = row.lstrip("# ").strip()
        elif row.strip() and begin < 0:
            begin = at
