"""The lines that a recipe came as: what each became in its boxes, and putting it elsewhere.

Told anew from the boxes as they stand each time, so that it holds for what was changed since.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence, Set
from dataclasses import dataclass
from typing import Final

from stillroom.beginning.questions import questions
from stillroom.bringing.line_by_line import LEFT_OUT, PARTS, Became, Piece, what_became
from stillroom.desk.boxes import bullet_off
from stillroom.desk.notes_order import in_order
from stillroom.desk.place import Place, read_now
from stillroom.desk.recipe_form import FIELDS

_PUT: Final = "put"
"""Begins the name of the box in which it is chosen what a line is to be: "put-3-method"."""
MOST_LINES: Final = 400
MOST_BOXES: Final = 100 + MOST_LINES
"""The boxes of a recipe's page, with one to each line that it came as."""
ANOTHER: Final = "another"
"""What a line is chosen to be with which another recipe begins."""
CHOICES: Final = ("title", "makes", "ingredients", "method", "intro", "after", LEFT_OUT)
"""What a line may be made into by choosing it."""
_NOT_OF_A_PAPER: Final = frozenset({"kind", "units", "keeps_source", "picture", "picture_focus"})
_LISTS: Final = ("ingredients", "method")
_NUMBERED: Final = re.compile(r"\d{1,3}\.\s")
_NAME: Final = re.compile(rf"{_PUT}-(\d{{1,5}})-(\w*)")
_GOES_ON: Final = re.compile(r"\w[ \t]*$")
_STOP: Final = re.compile(r"[.!?;:,]+")
_LETTER: Final = re.compile(r"[^\W\d_]")
_LEFT_BEHIND: Final = re.compile(r"\s+(?=[.,;:)])|^[\s,;.:]+|[ \t]+$|(?<=\s)[ \t]+", re.MULTILINE)


@dataclass(frozen=True)
class Line:
    """One line as it is shown: its number, its words, what it became, what else it may be made."""

    number: int
    words: str
    box: str
    said: str
    left: str
    choices: tuple[tuple[str, str], ...]
    also: str = ""

    @property
    def name(self) -> str:
        """The name of the box in which it is chosen what it is to be."""
        return f"{_PUT}-{self.number}-{self.box}"

    @property
    def is_missed(self) -> bool:
        """Whether some of it stands nowhere."""
        return bool(self.left)


def came(place: Place, slug: str) -> tuple[str, ...]:
    """Return the lines that a recipe was brought in as; none where it was not."""
    path = place.came_path(slug)
    raw = read_now(path, path.name).raw
    return tuple(raw.split("\n")) if raw else ()


def around(place: Place, slug: str) -> tuple[str, ...]:
    """Return the lines that the web page of a recipe showed around it; none for any other paper."""
    path = place.around_path(slug)
    raw = read_now(path, path.name).raw
    return tuple(raw.split("\n")) if raw else ()


def shown(lines: Sequence[str], form: Mapping[str, str]) -> tuple[Line, ...]:
    """Return what stands beside each line that a recipe came as, by what its boxes say now.

    Those are so many as a page can ask about; that there are more is said in a line of its own.
    """
    found = tuple(
        Line(
            number,
            one.words,
            one.box,
            one.as_what or _called(one.box),
            one.left,
            _choices(one),
            ", ".join(map(_called, one.also_in)),
        )
        for number, one in enumerate(_became(lines, form))
        if one.words
    )
    if len(found) <= MOST_LINES:
        return found
    last = f"… {len(found) - MOST_LINES} lines more, which are not shown here"
    return (*found[:MOST_LINES], Line(len(lines), last, LEFT_OUT, "", last, ()))


def _became(lines: Sequence[str], form: Mapping[str, str]) -> list[Became]:
    texts = {box: form[box] for box in FIELDS if form.get(box) and box not in _NOT_OF_A_PAPER}
    return what_became(lines, texts)


def _called(box: str) -> str:
    """Return how a box is called among the parts of a recipe, else what is asked at it."""
    return PARTS.get(box) or questions()[box].words


def _choices(line: Became) -> tuple[tuple[str, str], ...]:
    names = CHOICES if line.box in CHOICES else (line.box, *CHOICES)
    called = {name: _called(name) for name in names}
    if line.as_what:
        called[line.box] = line.as_what
    return (*called.items(), (ANOTHER, "another recipe begins here"))


def put_in(
    lines: Sequence[str], form: Mapping[str, str], posted: Mapping[str, str]
) -> dict[str, str]:
    """Return the boxes with each line where it was chosen to be; others stay where they are.

    A line is taken from wherever its words stand, and stands among those beside it in the paper.
    """
    found = dict(form)
    for name, chosen in posted.items():
        said = _NAME.fullmatch(name)
        if said is None or chosen == said[2] or chosen not in CHOICES:
            continue
        number = int(said[1])
        if number < len(lines):
            found = _without(found, _of_a_line(_became(lines, found)[number]))
            found = _with(found, lines, number, chosen)
    return found


def put_elsewhere(lines: Sequence[str], posted: Mapping[str, str]) -> list[str]:
    """Return the lines that were chosen to be something else."""
    named = ((_NAME.fullmatch(name), chosen) for name, chosen in posted.items())
    return [
        lines[int(said[1])]
        for said, chosen in named
        if said and chosen in CHOICES and chosen != said[2] and int(said[1]) < len(lines)
    ]


def _of_a_line(line: Became) -> tuple[Piece, ...]:
    """Return what goes with a line that is put elsewhere: its amounts in the list as well.

    What it is called and how much it makes stay, though they were said there too.
    """
    return (*line.pieces, *(piece for piece in line.also if piece.box in _LISTS))


def gave_way(before: Mapping[str, str], now: Mapping[str, str]) -> list[str]:
    """Return what stood in a box of one line and stands there no more, as a line took its place."""
    return [
        before[box]
        for box in ("title", "makes")
        if before.get(box) and now.get(box) and before[box] != now[box]
    ]


def begins_another(lines: Sequence[str], posted: Mapping[str, str]) -> int | None:
    """Return the line at which another recipe was said to begin; None where none was."""
    places = [
        int(said[1])
        for name, chosen in posted.items()
        if chosen == ANOTHER and (said := _NAME.fullmatch(name))
    ]
    return min((place for place in places if place < len(lines)), default=None)


def without_lines(lines: Sequence[str], form: Mapping[str, str], behind: int) -> dict[str, str]:
    """Return the boxes without what came of the lines from one on."""
    pieces = [piece for one in _became(lines, form)[behind:] for piece in _of_a_line(one)]
    return _without(form, pieces)


def _without(form: Mapping[str, str], pieces: Iterable[Piece]) -> dict[str, str]:
    """Return the boxes without some of their words, and without the lines that held no other."""
    gone: dict[str, set[int]] = defaultdict(set)
    for piece in pieces:
        last = piece.last
        if not _GOES_ON.search(form[piece.box][: piece.first]) and (
            stop := _STOP.match(form[piece.box], last)
        ):
            last = stop.end()  # a whole sentence goes with its stop
        gone[piece.box].update(range(piece.first, last))
    return {**form, **{box: _text_without(form[box], places) for box, places in gone.items()}}


def _text_without(text: str, gone: Set[int]) -> str:
    kept: list[str] = []
    start = 0
    for line in text.split("\n"):
        rest = "".join(sign for at, sign in enumerate(line, start) if at not in gone)
        if rest == line:
            kept.append(line)
        elif _LETTER.search(rest):
            kept.append(_LEFT_BEHIND.sub("", rest))
        start += len(line) + 1
    return "\n".join(kept)


def _with(form: Mapping[str, str], lines: Sequence[str], number: int, box: str) -> dict[str, str]:
    """Return the boxes with a line in one of them."""
    words = bullet_off(lines[number].strip())
    if box == LEFT_OUT:
        return dict(form)
    text = form.get(box, "")
    if box in ("after", "intro"):
        return {**form, box: in_order(text, words, box, number, _standing_in(form, lines, box))}
    if box in _LISTS:
        rows = text.split("\n") if text else []
        at = _place(form, lines, number, box)
        is_numbered = any(map(_NUMBERED.match, rows))
        rows.insert(at, f"{at + 1}. {words}" if is_numbered else words)
        words = "\n".join(rows)
    return {**form, box: words}


def _standing_in(form: Mapping[str, str], lines: Sequence[str], box: str) -> list[list[int]]:
    """Return for each line of the paper at which lines of a box it stands."""
    return [
        [form[box].count("\n", 0, piece.last) for piece in one.pieces if piece.box == box]
        for one in _became(lines, form)
    ]


def _place(form: Mapping[str, str], lines: Sequence[str], number: int, box: str) -> int:
    """Return the line of a box at which a line of the paper belongs: by those beside it there."""
    stands = _standing_in(form, lines, box)
    if above := next(filter(None, reversed(stands[:number])), None):
        return max(above) + 1
    below = next(filter(None, stands[number + 1 :]), None)
    return min(below) if below else len(form.get(box, "").split("\n"))
