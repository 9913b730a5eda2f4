"""What can be read of a giving list that has problems: enough to say what else is wrong with it.

What could not be read is left out, or stands in by a mark that no word has, so that every line
keeps its place; whatever is said of a mark is nobody's fault and is not told.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from copy import deepcopy
from dataclasses import dataclass, field
from datetime import date
from typing import Any

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from stillroom.core.words.problems import Problem
from stillroom.giving.model import GivingList

MARK = "\ue000"
_TIMES = 6
_DAY = date(2100, 12, 24)
_ROWS: Mapping[str, Mapping[str, Any]] = {
    "households": {"name": MARK, "basket": {MARK: 1}},
    "makes": {"recipe": MARK},
    "prices": {"item": MARK, "packs": ["1 for 1"]},
    "posting": {"service": MARK},
    "batches": {"recipe": MARK, "started": _DAY},
    "made": {"recipe": MARK, "number": 1, "made on": _DAY},
}
_TOP: Mapping[str, Any] = {
    "giving list": MARK,
    "giving day": _DAY,
    "baskets": {MARK: {"eat": 1}},
    "makes": [_ROWS["makes"]],
    "households": [_ROWS["households"]],
}
_EMPTY = "holds nothing"  # of a basket in which a word could not be read, nothing is known
# what is said of these hangs on another part: not told where that part is broken
_HANGS_ON = {"baskets": ("kind of basket",), "makes": ("among the makes",),
             "posting": ("posting", "service", "last day", "go there"),
             "giving day": ("before it goes out",)}  # fmt: skip


@dataclass(frozen=True)
class HalfRead:
    """A list as far as it could be read, the line of each name, and which parts are broken.

    A part is "baskets", and "baskets/small" the one of them in which something is wrong.
    """

    file: str
    giving: GivingList
    lines: dict[str, int]
    broken: frozenset[str] = field(default_factory=frozenset)

    def of_what_was_read(self, problems: Iterable[Problem]) -> list[Problem]:
        """Return the problems that are of no mark and hang on no broken part."""
        hanging = [words for part in self.broken for words in _HANGS_ON.get(part, ())]
        return [
            one
            for one in problems
            if MARK not in f"{one.what} {one.mend}"
            and not any(h in one.what for h in hanging)
            and not (_EMPTY in one.what and "/".join(one.at) in self.broken)
        ]


def read_half(
    data: Mapping[str, Any],
    errors: Sequence[ErrorDetails],
    validate: Callable[[Any], GivingList],
) -> tuple[GivingList, frozenset[str]] | None:
    """Return what can be read of a list, and the names of its broken parts; None for nothing."""
    left, broken = deepcopy(dict(data)), set()
    for _ in range(_TIMES):
        for error in errors:
            # a list all of whose rows are wrong is not empty
            if error["type"] == "too_short" and error["input"]:
                continue
            path = [part for part in error["loc"] if part != "[key]"]
            broken |= {str(path[0]), "/".join(map(str, path[:2]))}
            _take_out(left, path)
        for key, mark in _TOP.items():
            if not left.get(key):
                left[key] = deepcopy(mark)
        try:
            return validate(left), frozenset(broken)
        except ValidationError as wrong:
            errors = wrong.errors()
    return None


def _take_out(data: dict[str, Any], path: Sequence[Any]) -> None:
    """Take what stands at a path out of the data; a row that needs it gets a mark instead."""
    row = _row_at(path)
    if row is not None:
        depth, part = row
        rows = _at(data, path[:depth])
        number = path[depth]
        if not isinstance(rows, list) or number >= len(rows):
            return
        needed = _ROWS[part]
        if not isinstance(rows[number], dict):
            rows[number] = {}
        if len(path) == depth + 1:
            rows[number] = deepcopy(dict(needed))
            return
        rows[number].pop(path[depth + 1], None)
        for key, mark in needed.items():
            rows[number].setdefault(key, deepcopy(mark))
        return
    holder = _at(data, path[:-1])
    if isinstance(holder, dict):
        holder.pop(path[-1], None)
    elif isinstance(holder, list) and isinstance(path[-1], int) and path[-1] < len(holder):
        del holder[path[-1]]
    elif path[:1]:
        data.pop(path[0], None)


def _row_at(path: Sequence[Any]) -> tuple[int, str] | None:
    """Return at which depth of a path a row of the list stands, and of which part it is."""
    for depth in (1, 2):
        if len(path) > depth and isinstance(path[depth], int) and path[depth - 1] in _ROWS:
            return depth, str(path[depth - 1])
    return None


def _at(data: Any, path: Sequence[Any]) -> Any:
    for part in path:
        try:
            data = data[part]
        except (KeyError, IndexError, TypeError):
            return None
    return data
