"""Which questions of a file, asked when it was brought in, wait for an answer: one number of them.

Those that the book's own check asks as long as they hold are left out: it tells them itself.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence

from stillroom.beginning.unanswered import ASKED_ROW, asked_in
from stillroom.bringing.checked import STAND_IN, checked, place_of
from stillroom.bringing.doubted import named_in, without_named
from stillroom.bringing.drafting import question_line
from stillroom.core.larder.shelves import Larder
from stillroom.core.recipe.settings import BookSettings


def asked_by_boxes(raw: str, settings: BookSettings, larder: Larder) -> set[str]:
    """Return those questions of a file that its boxes ask by themselves, as the file lies there."""
    rows: list[str] = []
    asked: list[tuple[str, int]] = []
    for line in raw.splitlines():
        if found := ASKED_ROW.match(line):
            asked.append((found["words"], len(rows)))
        else:
            rows.append(line)
    if not asked or not rows:
        return set()
    said: set[str] = set()
    stated: set[int] = {place for place, row in enumerate(rows) if row in STAND_IN}
    for problem in checked(rows, "it", settings, larder):
        said.add(question_line(problem.what, problem.mend))
        place, is_stated = place_of(problem, rows)
        if is_stated:
            stated.add(place)
    return {words for words, place in asked if words in said or place in stated}


def asked_of_lines(asked: Sequence[str]) -> set[str]:
    """Return those questions that are asked at each line which they name, and of no other."""
    return {
        words for words in asked if named_in(words) and not without_named(words, named_in(words))
    }


def still_asked(raw: str, boxed: Collection[str]) -> int:
    """Return how many questions of a file wait for an answer; `boxed` are those of its boxes.

    One that names lines of the method is asked at each of them.
    """
    waiting = [words for words in asked_in(raw) if words not in boxed]
    lines = asked_of_lines(waiting)
    return len(waiting) - len(lines) + sum(len(named_in(words)) for words in lines)
