"""What the model refuses, in a cook's words and at the line where it stands."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Mapping, Sequence
from typing import Final

from pydantic import BaseModel
from pydantic_core import ErrorDetails

from stillroom.core.reading.written_facts import KNOWN_KEYS
from stillroom.core.recipe.kinds import all_kinds
from stillroom.core.recipe.model import Acidity, Card, Override
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.problems import Problem, Unreadable

_MENDS: Final = {
    "title": 'Write "title: Quince ratafia".',
    "kind": f'Write "kind:" and what it is: {", ".join(all_kinds())}.',
    "makes": 'Write "makes: 900 ml", "makes: 24 biscuits" or so.',
    "ingredients": 'Write "ingredients:" and under it lines such as "  - 250 g sugar".',
    "card": 'Write "card:" and under it a line such as "  use: A spoonful in hot milk."',
    "acidity": 'Write "acidity:" and under it "  ph: 3.4" and "  source: measured with a strip".',
    "overrides": 'Write "- rule: ..." and under it "why: ..." with the reason.',
    "timeline": 'Write "timeline:" and under it lines such as "  - rest: 4 weeks".',
}
_ONE_LINE: Final = "Write it as words on one line."
_WHY: Final = {
    "string_type": ("is not words on one line", _ONE_LINE),
    "string_too_short": ("is empty", "Write something there, or take the line out."),
    "model_type": ("wants lines of its own", "Write them below it, further in."),
    "dict_type": ("wants lines of its own", "Write them below it, further in."),
    "tuple_type": ("is not a list", "Write one to a line, each after a dash and a blank."),
}


def say_what_is_wrong(
    details: Sequence[ErrorDetails],
    file: str,
    lines: Mapping[str, int],
    doubtful: Collection[str] = (),
) -> Iterable[Problem]:
    """Return a problem for every mistake the model found, but for what was told already.

    `doubtful` are the facts whose lines did not read: such a fact is not missing.
    """
    within = {detail["loc"][0] for detail in details if len(detail["loc"]) > 1}
    told = [(name,) for name in doubtful]
    for detail in details:
        # lines that do not read leave their list short: the lines' own messages say it
        if detail["type"] == "too_short" and len(detail["loc"]) == 1 and detail["loc"][0] in within:
            continue
        if detail["type"] in ("missing", "too_short") and detail["loc"][:1] in told:
            continue
        yield _problem(detail, file, lines)


def nearest_line(place: Sequence[str], lines: Mapping[str, int]) -> int:
    """Return the line of a fact, or of the nearest thing above it."""
    for size in range(len(place), 0, -1):
        if line := lines.get("/".join(place[:size])):
            return line
    return 2


def _problem(detail: ErrorDetails, file: str, lines: Mapping[str, int]) -> Problem:
    place = [str(part) for part in detail["loc"]]
    key = place[0] if place else ""
    line = nearest_line(place, lines)
    wrong = detail.get("ctx", {}).get("error")
    if isinstance(wrong, Unreadable):
        return Problem(file, line, wrong.what, wrong.mend)
    where = " ".join(part if not part.isdecimal() else f"no. {int(part) + 1}" for part in place)
    mend = _MENDS.get(key, "")
    kind = detail["type"]
    if kind == "missing":
        return Problem(file, line, f'"{where}" is missing.', mend or f'Add "{place[-1]}:".')
    if kind == "extra_forbidden":
        mend = did_you_mean(place[-1], _keys_under(place[:-1]))
        return Problem(file, line, f'"{key}" has no "{place[-1]}:".', mend)
    if kind in ("string_too_short", "too_short") and key == "overrides" and place[-1] == "why":
        return Problem(
            file, line, "The reason for setting a rule aside is too short.", "Write a sentence."
        )
    if kind == "too_short":
        return Problem(file, line, f'"{where}" is empty.', mend or "Write something there.")
    if kind in ("string_too_long", "too_long"):
        most = detail["ctx"]["max_length"]
        what = f'"{where}" is longer than {most} letters.'
        return Problem(file, line, what, "Write it shorter; the summary can say the rest.")
    if kind == "literal_error":
        allowed = re.findall(r"'([^']+)'", detail["ctx"]["expected"])
        what = f'"{detail["input"]}" is not among the {where}.'
        return Problem(file, line, what, f"It may be: {', '.join(allowed)}.")
    why, usual = _WHY.get(kind, ("is not written as it should be", "See the page on writing."))
    return Problem(file, line, f'"{where}" {why}.', mend or usual)


def _keys_under(place: Sequence[str]) -> list[str]:
    models: dict[str, type[BaseModel]] = {"card": Card, "acidity": Acidity, "overrides": Override}
    model = models.get(place[0] if place else "")
    return list(model.model_fields) if model else list(KNOWN_KEYS)
