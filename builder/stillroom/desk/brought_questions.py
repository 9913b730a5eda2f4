"""What was asked when a recipe was brought in: rows "# ?" of its file, until they are answered.

Those that the boxes ask by themselves as long as they hold are not shown again beside them, and
are gone when the recipe is kept at the desk: what is mended in its box is not asked for ever.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from itertools import pairwise
from typing import Final

from stillroom.beginning.unanswered import ASKED_ROW, asked_in
from stillroom.bringing.doubted import ASKED_OF_METHOD, named_in, quoted, without_named
from stillroom.bringing.handed_on import NAMED_BESIDE
from stillroom.bringing.in_draft import LISTED_NOWHERE, boxes_of
from stillroom.bringing.overlap import words_in
from stillroom.bringing.told_beside import ASKED_BESIDE
from stillroom.bringing.whose_words import name_asked_about
from stillroom.desk.boxes import step_lines
from stillroom.desk.recipe_form import FIELDS

_HEADS: Final = (ASKED_OF_METHOD, ASKED_BESIDE, LISTED_NOWHERE, NAMED_BESIDE)
"""How the questions begin that name lines of the paper."""
_STANDS: Final = 0.6
"""Of a line's pairs of words so many stand where it does, though something was written into it."""
ANSWERED: Final = "answered-"
"""Begins the name of a box that is ticked when a question is answered."""


def ticked_in(posted: Mapping[str, str]) -> set[str]:
    """Return the questions that were ticked."""
    return {words for name, words in posted.items() if name.startswith(ANSWERED)}


def named_lines(raw: str) -> set[str]:
    """Return how the question about lines of the method names those that are not answered yet."""
    return {one for words in asked_in(raw) for one in named_in(words)}


def all_named(raw: str) -> set[str]:
    """Return how every question of a file that names lines names them."""
    return {one for words in asked_in(raw) for head in _HEADS for one in named_in(words, head)}


def settled_by(line: str, names: Iterable[str]) -> set[str]:
    """Return those names of lines that a line is, or has in it: it was put where it belongs.

    >>> settled_by("Our shop. Ring Ann!", ['"Ring Ann"', '"Boil it"'])
    {'"Ring Ann"'}
    """
    said = [one.said for one in words_in(line)]
    return {name for name in names if (own := _own_words(name)) and _share(own, said) == 1}


def with_lines_answered(raw: str, before: str, form: Mapping[str, str], settled: str) -> str:
    """Return a file whose questions name no line that was seen to in its box, or is settled.

    `before` is the file as it lies there, `form` what stands in the boxes now. Seen to is a line of
    the method that is none any more, one beside the recipe that was taken out, one that stood
    nowhere and does now. `settled` are lines that were put where they belong, or said to be steps,
    as a question names them.
    """
    steps = {quoted(one.text) for one in step_lines(form.get("method", "")) if not one.is_heading}
    done = set(settled.replace("\r\n", "\n").split("\n"))
    was = [one.said for text in boxes_of(before).values() for one in words_in(text)]
    now = [one.said for box in FIELDS for one in words_in(form.get(box, ""))]

    def is_seen_to(name: str, head: str) -> bool:
        if name in done:
            return True
        if head == ASKED_OF_METHOD:
            return name not in steps
        stood, stands = (_share(_own_words(name), words) >= _STANDS for words in (was, now))
        return stands and not stood if head == LISTED_NOWHERE else stood and not stands

    kept = []
    for line in raw.splitlines(keepends=True):
        found = ASKED_ROW.match(line.rstrip("\r\n"))
        words = found["words"] if found else ""
        name = name_asked_about(words)
        if name and name not in form.get("author", name):
            continue  # it was taken out, or another was written
        head = next((one for one in _HEADS if words.startswith(one)), "")
        gone = {name for name in named_in(words, head) if is_seen_to(name, head)} if head else set()
        said = without_named(words, gone, head) if gone else words
        kept += [line.replace(words, said) if gone else line] if said or not gone else []
    return "".join(kept)


def _own_words(name: str) -> list[str]:
    """Return the words of a line by its name; of one that was cut at an end, the whole ones."""
    return [one.said for one in words_in(name.strip('"').removeprefix("…").removesuffix("…"))]


def _share(own: Sequence[str], words: Sequence[str]) -> float:
    """Return how much of a line stands among words, by its pairs of words."""
    if len(own) == 1:
        return float(own[0] in words)
    pairs = set(pairwise(own))
    return len(pairs & set(pairwise(words))) / len(pairs) if pairs else 0


def without_asked(raw: str, gone: Collection[str]) -> str:
    """Return a file without some of its questions; every other line stays."""
    kept = []
    for line in raw.splitlines(keepends=True):
        found = ASKED_ROW.match(line.rstrip("\r\n"))
        if found is None or found["words"] not in gone:
            kept.append(line)
    return "".join(kept)
