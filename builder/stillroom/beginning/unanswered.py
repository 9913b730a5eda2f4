"""What was asked when a recipe was brought in and stands in its file still: the rows "# ?".

Nothing is wrong with such a recipe, and it can be published. But whoever brought it in was asked
something, and nobody has said yet that she saw to it.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import Final

from stillroom.core.words.plurals import counted
from stillroom.core.words.problems import Problem
from stillroom.core.words.text_files import read_text

ASKED: Final = "# ?"
"""How a question begins where it stands in a draft; the book's reader passes over such lines."""
ASKED_ROW: Final = re.compile(r"^\s*#\s*\?\s*(?P<words>.*?)\s*$", re.MULTILINE)
_SHOWN: Final = 120
_MEND: Final = "See to each, then take its line out: the recipe is published as it stands."


def asked_in(raw: str) -> list[str]:
    r"""Return the questions that stand in a file.

    >>> asked_in("---\n# ? How much is \"some\"?\ntitle: A\n---\n")
    ['How much is "some"?']
    """
    return [found["words"] for found in ASKED_ROW.finditer(raw)]


def find_unanswered(
    files: Iterable[Path], root: Path, waiting: Callable[[str], int]
) -> Iterator[Problem]:
    """Yield each recipe in which questions stand, at the line of the first, with their number.

    `waiting` counts those of a file that wait for an answer, as every other place counts them.
    """
    for path in files:
        name = str(path.relative_to(root)) if path.is_relative_to(root) else str(path)
        raw = read_text(path, name)
        if (found := ASKED_ROW.search(raw)) and (count := waiting(raw)):
            line = raw.count("\n", 0, found.start("words")) + 1
            first = found["words"][:_SHOWN]
            what = (
                f"{counted(count, 'question')} from when this was brought in "
                f"{'is' if count == 1 else 'are'} not answered yet: {first}"
            )
            yield Problem(name, line, what, _MEND)
