"""What stands in the boxes of a draft, and which lines of its paper belong beside it.

Read from the draft's own lines, so that one that does not read as a recipe yet has its boxes too.
Leaves out what each line became: line_by_line.py.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Mapping, Sequence, Set
from functools import lru_cache, reduce
from itertools import pairwise
from typing import Final

from stillroom.bringing.doubted import quoted, some_of
from stillroom.bringing.found import BroughtRecipe, Paper, Recipe
from stillroom.bringing.joining import together
from stillroom.bringing.known_work import words_of
from stillroom.bringing.line_by_line import LEFT_OUT, Became, what_became
from stillroom.bringing.said_to_one import names_food
from stillroom.bringing.sorting import is_ingredient
from stillroom.bringing.whole_lines import begin_of_each

LISTED_NOWHERE: Final = "May be of what goes in, and stands nowhere:"
"""How the question begins that names lines of a list."""
MOST_BESIDE: Final = 60
"""Lines of a paper that are shown above the first that stands in a draft, and behind the last."""
_MOST_NAMED: Final = 6
OURS: Final = frozenset({"kind", "units"})
"""Boxes that hold no words of a paper."""
_RULE: Final = "---"
_KEY: Final = re.compile(r"([a-z_]+):(?:\s|$)")
_STEP_NUMBER: Final = re.compile(r"\d+\.\s")
_OF_LIST: Final = {"materials": "ingredients", "vessel": "vessels"}


def boxes_of(raw: str) -> dict[str, str]:
    r"""Return the words of a draft by the box they stand in, without what is asked there.

    >>> boxes_of("---\n# ? Why?\ntitle: Gin\nkind: infusion\n---\nNice.\n## Method\n1. Cut.")
    {'title': ' Gin', 'intro': 'Nice.', 'method': '\nCut.'}
    """
    found: dict[str, list[str]] = {}
    rows = raw.split("\n")
    end = next((at for at, row in enumerate(rows[1:], 1) if row.rstrip() == _RULE), 0)
    box = ""
    for row in rows[1:end]:
        if row.lstrip().startswith(("#", "source:")):
            continue
        if key := _KEY.match(row):
            box = _OF_LIST.get(key[1], key[1])
            row = row.partition(":")[2]
        found.setdefault(box, []).append(row)
    box = "intro"
    for row in rows[end + 1 :]:
        if row.startswith("## "):
            box = "after" if "method" in found else "method"
        if box == "method":
            row = "" if row.startswith("## ") else _STEP_NUMBER.sub("", row)
        found.setdefault(box, []).append(row)
    return {name: "\n".join(lines) for name, lines in found.items() if name not in OURS}


def lines_of(paper: Paper, recipes: Sequence[Recipe]) -> tuple[list[str], frozenset[int]]:
    """Return what a paper says, line by line: its own title, its rows, what it states besides.

    An empty line stays one, but for the first. Beside them the places of those that may go on with
    the line above, as typed lines do and paragraphs do not.
    """
    title = _on_one_line(paper.origin.title)
    shown = title in (_on_one_line(row.text) for row in paper.rows)
    lines: list[str] = [title] if title and not shown else []
    may_go_on: set[int] = set()
    for row in paper.rows:
        if not (line := _on_one_line(row.text)):
            continue
        if row.gap and lines:
            lines.append("")
        elif row.wraps and row.shape == "line":
            may_go_on.add(len(lines))
        lines.append(line)
    known = set(lines)
    for recipe in recipes if paper.stated else ():
        for said in map(_on_one_line, recipe.texts()):
            if said and said not in known:
                known.add(said)
                lines.append(said)
    return lines, frozenset(may_go_on)


def _on_one_line(text: str) -> str:
    return " ".join(text.split())


def paper_of_each(
    lines: Sequence[str], drafts: Sequence[str], may_go_on: Set[int] = frozenset()
) -> list[tuple[str, ...]]:
    """Return the lines of a paper that belong beside each of its drafts, in their order.

    Those are all from the draft before it to the one behind: what stands between two belongs beside
    both. Of what stands far above the first and below the last it is told how much there is. What
    is one sentence over lines that `may_go_on` is one line.
    """
    texts = {
        f"{number} {box}": said
        for number, raw in enumerate(drafts)
        for box, said in boxes_of(raw).items()
    }
    became = what_became(lines, texts)
    begins = begin_of_each(may_go_on, became, texts)
    whole = [reduce(together, lines[begin:end]) for begin, end in pairwise([*begins, len(lines)])]
    stand: dict[int, list[int]] = {}
    for at, line in enumerate(became):
        number, _, box = line.box.partition(" ")
        if box and not line.again:
            stand.setdefault(int(number), []).append(bisect_right(begins, at) - 1)
    return [_around(number, whole, stand) for number in range(len(drafts))]


def became_of(drafted: BroughtRecipe) -> tuple[Became, ...]:
    """Return what each line of a draft's paper became in it; reckoned once for the same words."""
    return _became(drafted.came, tuple(boxes_of(drafted.text).items()))


@lru_cache(maxsize=256)  # as many drafts as one file holds at once
def _became(came: tuple[str, ...], boxes: tuple[tuple[str, str], ...]) -> tuple[Became, ...]:
    return tuple(what_became(came, dict(boxes)))


def listed_nowhere(came: Sequence[str], drafted: BroughtRecipe) -> tuple[str, str] | None:
    """Return what is asked about lines of a list that stand nowhere in the draft; None for none.

    Lines that a question names are asked about already, and one of which every word stands in the
    draft was put otherwise ("1 tsp each of cloves and mace" is two lines).
    """
    asked = " ".join(one.what for one in drafted.questions)
    boxes = boxes_of(drafted.text)
    known = set(words_of(" ".join(boxes.values())))
    lost = [
        one.words
        for one in _became(tuple(came), tuple(boxes.items()))
        if one.box == LEFT_OUT
        and is_ingredient(one.words)
        and names_food(one.words)
        and not set(words_of(one.words)) <= known
        and quoted(one.words) not in asked
    ]
    if not lost:
        return None
    named = some_of(list(map(quoted, lost)), _MOST_NAMED)
    return (
        f"{LISTED_NOWHERE} {named}.",
        "Write what belongs to it there.",
    )


def _around(
    number: int, lines: Sequence[str], stand: Mapping[int, Sequence[int]]
) -> tuple[str, ...]:
    own = stand.get(number, [0])
    others = [at for other, places in stand.items() if other != number for at in places]
    first = max((at + 1 for at in others if at < own[0]), default=0)
    last = min((at for at in others if at > own[-1]), default=len(lines))
    begin, end = max(first, own[0] - MOST_BESIDE), min(last, own[-1] + 1 + MOST_BESIDE)
    above = [f"… {begin - first} lines more above"] if begin > first else []
    below = [f"… {last - end} lines more below"] if end < last else []
    while begin < end and not lines[begin]:
        begin += 1
    while begin < end and not lines[end - 1]:
        end -= 1
    return (*above, *lines[begin:end], *below)
