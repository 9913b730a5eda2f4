"""What was asked when a recipe was brought in: rows "# ?" of its file, until they are answered.

Those that the boxes ask by themselves as long as they hold are not shown again beside them, and
are gone when the recipe is kept at the desk: what is mended in its box is not asked for ever.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Final

from stillroom.beginning.unanswered import ASKED_ROW, asked_in
from stillroom.bringing.doubted import named_in, quoted, without_named

ANSWERED: Final = "answered-"
"""Begins the name of a box that is ticked when a question is answered."""


def ticked_in(posted: Mapping[str, str]) -> set[str]:
    """Return the questions that were ticked."""
    return {words for name, words in posted.items() if name.startswith(ANSWERED)}


def named_lines(raw: str) -> set[str]:
    """Return how the question about lines of the method names those that are not answered yet."""
    return {one for words in asked_in(raw) for one in named_in(words)}


def with_lines_answered(raw: str, steps: Sequence[str], settled: str) -> str:
    """Return a file whose question names no line that is settled, or stands in the method no more.

    `settled` are lines that were said to be steps, as the question names them.
    """
    named = named_lines(raw)
    left = named & set(map(quoted, steps)) - set(settled.replace("\r\n", "\n").split("\n"))
    if named == left:
        return raw
    kept = []
    for line in raw.splitlines(keepends=True):
        found = ASKED_ROW.match(line.rstrip("\r\n"))
        if found and named_in(found["words"]):
            said = without_named(found["words"], named - left)
            kept += [line.replace(found["words"], said)] if said else []
        else:
            kept.append(line)
    return "".join(kept)


def without_asked(raw: str, gone: Collection[str]) -> str:
    """Return a file without some of its questions; every other line stays."""
    kept = []
    for line in raw.splitlines(keepends=True):
        found = ASKED_ROW.match(line.rstrip("\r\n"))
        if found is None or found["words"] not in gone:
            kept.append(line)
    return "".join(kept)
