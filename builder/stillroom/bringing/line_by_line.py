"""A paper line by line, with what each line became in the draft that was made of it.

Told from the words themselves, not from how the paper was read: a line is where its words stand.
So it holds however a draft is changed, and however wrongly its paper was read. A line of which
nothing stands anywhere is left out, and said to be.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import islice, pairwise
from typing import Final

from stillroom.bringing.box_words import FEW, MOST_LIKE, BoxWords, by_word, part_of
from stillroom.bringing.doubted import quoted, some_of
from stillroom.bringing.heads import STEP_WORD, section_of
from stillroom.bringing.overlap import Word, untaken, words_in

LEFT_OUT: Final = ""
HEAD: Final = "head"
"""What a line became that heads a part, as "Ingredients" does: it stands as the part itself."""
PARTS: Final = {
    "title": "what it is called",
    "makes": "how much it makes",
    "ingredients": "what goes in",
    "method": "what you do",
    "intro": "why it is worth making",
    "after": "below the recipe",
    "keeps": "how it keeps",
    "author": "whose recipe it is",
    "season": "the months of its produce",
    "timeline": "when",
    HEAD: "heads a part",
    LEFT_OUT: "left out",
}
"""What a line became, in a cook's words."""
HEADS: Final = {
    "ingredients": "heads a part of what goes in",
    "method": "heads a part of what you do",
    "after": "a heading below the recipe",
}
"""What a heading within a box is."""
_LEAST_SHARE: Final = 0.34
"""Of the words of a line, so many stand in what it became; fewer stand there by chance."""
_MOST_OF_IT: Final = 0.6
"""Of the words of a line, so many in one run are the line said twice."""
_LEAST_LEFT: Final = 2
_A_WORD: Final = 4
"""Letters of one word that is told as left out when it stands alone."""
_MOST_OF_A_HEAD: Final = 6
_MOST_AROUND: Final = 12
"""Words of a line around a fact of a word or two that is found in it."""
_WRITTEN: Final = ("title", "makes", "ingredients")
"""Boxes that may be written from a line which stands elsewhere as it is."""
_FACTS: Final = frozenset({"title", "makes", "author", "season", "keeps", "timeline"})
"""What is said behind a word for it: "Makes 4 jars", "By Nan"."""
_NUMBER: Final = re.compile(
    rf"\W*(?:{STEP_WORD}\W*\d|\d{{1,3}}(?:[.):]\s|(?=[^\W\d_]{{4}})))", re.I
)


@dataclass(frozen=True)
class Piece:
    """Words of a box that came of a line: the box, and from which letter to which."""

    box: str
    first: int
    last: int


@dataclass(frozen=True)
class Became:
    """One line of a paper: its words, the box that it stands in, what of it stands nowhere.

    `box` is "" for a line left out and "head" for one that heads a part. `again` says that its
    words stand there once for this line and for another; `also` is what was written of it besides.
    `heads` says that it is a heading within its box, `under` below which it stands there.
    """

    words: str
    box: str
    left: str = ""
    again: bool = False
    pieces: tuple[Piece, ...] = ()
    also: tuple[Piece, ...] = ()
    heads: bool = False
    under: str = ""

    @property
    def as_what(self) -> str:
        """What it is within its box; "" for one of its lines."""
        if self.heads:
            return HEADS[part_of(self.box)]
        return f"under “{self.under}”, {PARTS[part_of(self.box)]}" if self.under else ""

    @property
    def also_in(self) -> tuple[str, ...]:
        """The boxes that hold words of it besides, each once."""
        return tuple(dict.fromkeys(piece.box for piece in self.also))

    @property
    def said(self) -> str:
        """What it became, in a cook's words."""
        own = self.as_what or PARTS.get(self.box, self.box)
        return ", and ".join((own, *(PARTS.get(box, box) for box in self.also_in)))


def say_left_out(lines: Iterable[Became], most: int) -> str:
    """Return what of some lines stands nowhere, so much of it and how much more; "" for none.

    >>> say_left_out([Became("Dear Jo,", "", "Dear Jo,"), Became("1 egg", "ingredients")], 3)
    '"Dear Jo,"'
    """
    return some_of([quoted(one.left) for one in lines if one.left], most)


def what_became(rows: Sequence[str], texts: Mapping[str, str]) -> list[Became]:
    """Return what each line of a paper became; `texts` is what stands in each box of its draft.

    Of several drafts each box has the number of its own before its name.

    >>> texts = {"title": "Plum gin", "ingredients": "500 g plums", "method": "Prick the plums."}
    >>> rows = ["Plum gin", "Send to a friend", "500 g plums", "1. Prick the plums. Lovely!"]
    >>> [(one.box, one.left) for one in what_became(rows, texts)]
    [('title', ''), ('', 'Send to a friend'), ('ingredients', ''), ('method', 'Lovely')]
    """
    boxes = BoxWords.of(texts)
    lines = [[one.said for one in words_in(row)] for row in rows]
    rows_with = by_word(enumerate(lines))
    stands = _standing(lines, rows_with, boxes)
    also = _said_besides(lines, rows_with, boxes, stands)
    again = _standing_again(lines, boxes, stands)
    told = (
        _told(row, stands[at] or again.get(at, {}), boxes, again=at in again)
        for at, row in enumerate(rows)
    )
    return [
        replace(one, also=tuple(piece for piece in also[at] if piece.box != one.box))
        for at, one in enumerate(told)
    ]


def _said_besides(
    lines: Sequence[Sequence[str]],
    rows_with: Mapping[str, list[int]],
    boxes: BoxWords,
    stands: list[dict[int, int]],
) -> list[list[Piece]]:
    """Return of each line the lines of other boxes that were written from it besides its own.

    A list told in a sentence, a title that the story says, a yield put otherwise ("environ 40" is
    "about 40"). What stands as nothing yet stands as that.
    """
    besides: list[list[Piece]] = [[] for _ in lines]
    used = {place for one in stands for place in one.values()}
    for line in boxes.lines:
        if part_of(boxes.boxes[line.start]) not in _WRITTEN or any(one in used for one in line):
            continue
        said = Counter(boxes.said[line.start : line.stop])
        figures = {word for word in said if word.isdigit()}
        near = sorted({at for word in said for at in rows_with.get(word, ())[:MOST_LIKE]})
        shares = {
            at: (said & Counter(lines[at])).total() / said.total()
            for at in near
            if figures <= set(lines[at])
        }
        at = max(shares, key=shares.__getitem__, default=-1)
        if at < 0 or shares[at] < _MOST_OF_IT:
            continue
        if stands[at]:
            first, last = boxes.words[line.start].first, boxes.words[line.stop - 1].last
            besides[at].append(Piece(boxes.boxes[line.start], first, last))
        else:
            stands[at] = boxes.matched(lines[at], line)
    return besides


def _standing(
    lines: Sequence[Sequence[str]], rows_with: Mapping[str, list[int]], boxes: BoxWords
) -> list[dict[int, int]]:
    """Return of each line which of its words stands as which word of the boxes, no word twice."""
    where = [(at, place) for at, words in enumerate(lines) for place in range(len(words))]
    stands: list[dict[int, int]] = [{} for _ in lines]
    used: set[int] = set()
    for run in boxes.text.runs_apart([one for words in lines for one in words]):
        for number in range(run.length):
            at, place = where[run.ours + number]
            stands[at][place] = run.theirs + number
            used.add(run.theirs + number)
    near = 0
    for at, words in enumerate(lines):
        if not stands[at] and words:
            whole = boxes.line_like(words, used, near)
            stands[at] = boxes.matched(words, whole) if whole else {}
            used.update(stands[at].values())
        near = max(stands[at].values(), default=near)
    for short in boxes.short_lines():
        if not any(one in used for one in short):
            said = boxes.said[short.start : short.stop]
            longest = len(said) + (
                _MOST_AROUND if part_of(boxes.boxes[short.start]) in _FACTS else FEW
            )
            found_in = (at for at in rows_with.get(said[0], ()) if len(lines[at]) <= longest)
            for at in islice(found_in, MOST_LIKE):
                if span := _free_span(lines[at], said, stands[at]):
                    stands[at].update(zip(span, short, strict=True))
                    break
    return stands


def _free_span(words: Sequence[str], said: Sequence[str], stands: Mapping[int, int]) -> range:
    """Return where some words stand in a line as nothing else yet; an empty range for nowhere."""
    for place in range(len(words) - len(said) + 1):
        span = range(place, place + len(said))
        if words[place : span.stop] == said and not any(one in stands for one in span):
            return span
    return range(0)


def _standing_again(
    lines: Sequence[Sequence[str]], boxes: BoxWords, stands: Sequence[Mapping[int, int]]
) -> dict[int, dict[int, int]]:
    """Return of lines that stand nowhere for themselves where their words stand for another."""
    found: dict[int, dict[int, int]] = {}
    for at, words in enumerate(lines):
        if stands[at] or not words:
            continue
        longest = max(boxes.text.runs(words), key=lambda run: run.length, default=None)
        if longest and longest.length >= _MOST_OF_IT * len(words):
            span = range(longest.length)
            found[at] = {longest.ours + one: longest.theirs + one for one in span}
        elif whole := boxes.line_like(words, frozenset(), 0):
            found[at] = boxes.matched(words, whole)
    return found


def _told(row: str, stands: Mapping[int, int], boxes: BoxWords, *, again: bool) -> Became:
    words = words_in(row)
    counted = Counter(boxes.boxes[place] for place in stands.values())
    box = counted.most_common(1)[0][0] if counted else LEFT_OUT
    if len(stands) < _LEAST_SHARE * len(words) and part_of(box) not in _FACTS:
        box = LEFT_OUT
    if box == LEFT_OUT:
        is_head = section_of(row) in ("ingredients", "method") and not stands
        return Became(row, HEAD if is_head else LEFT_OUT, "" if is_head else row.strip())
    left = " … ".join(_left(row, words, stands, part_of(box)))
    pieces = () if again else tuple(_pieces(stands, boxes))
    first = min(place for place in stands.values() if boxes.boxes[place] == box)
    heads, under = _within(boxes.texts[box], boxes.words[first].first, part_of(box))
    return Became(row, box, left, again, pieces, heads=heads, under=under)


def _within(text: str, at: int, part: str) -> tuple[bool, str]:
    """Return whether a place of a box is in a heading, and below which note's heading it stands."""
    if part not in HEADS:
        return False, ""
    begin = text.rfind("\n", 0, at) + 1
    row = text[begin:].partition("\n")[0].strip()
    if row.startswith("#"):
        return True, ""
    if part != "after":
        return row.endswith(":") and len(row.split()) <= _MOST_OF_A_HEAD, ""
    above = [one for one in text[:begin].split("\n") if one.startswith("## ")]
    under = above[-1].lstrip("# ").strip() if above else ""
    return False, "" if under == "Notes" else under


def _pieces(stands: Mapping[int, int], boxes: BoxWords) -> Iterator[Piece]:
    """Yield the letters of the boxes at which a line stands, its words in one as far as may be."""
    places = sorted(stands.values())
    begin = places[0]
    for before, place in pairwise([*places, -1]):
        if place != before + 1 or place in boxes.breaks:
            first, last = boxes.words[begin].first, boxes.words[before].last
            yield Piece(boxes.boxes[begin], first, last)
            begin = place


def _left(row: str, words: Sequence[Word], stands: Mapping[int, int], box: str) -> Iterator[str]:
    """Yield the words of a line that stand nowhere, but for its number and what labels a fact.

    A figure counts for as much as words do: "2 kg" that has become "kg" is not whole.
    """
    for begin, end in untaken([at in stands for at in range(len(words))]):
        said = row[words[begin].first : words[end - 1].last]
        inner = words[begin:end]
        figure = any(one.said.isdigit() for one in inner)
        told = figure or (len(inner) >= _LEAST_LEFT or len(inner[0].said) >= _A_WORD)
        if box == "makes":  # the rest of a sentence that says so: "These amounts are enough for"
            told = figure
        if told and not (begin == 0 and _is_label(row, said, end, box)):
            yield said


def _is_label(row: str, said: str, size: int, box: str) -> bool:
    """Whether the first words of a line only number it, or say what is told behind them."""
    if box in _FACTS and size <= FEW and not re.search(r"\d", said):
        return True
    numbers = size <= FEW and (_NUMBER.match(row) or (box == "method" and said.isdigit()))
    return bool(numbers or section_of(said))
