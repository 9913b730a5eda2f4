"""What can be wrong with a timeline as a whole, when each of its lines reads well.

What is not here: the words of one line (stages.py); file and line numbers (loading.py).
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from typing import Final

from stillroom.core.when.spans import Span
from stillroom.core.when.stage_dates import lay_out
from stillroom.core.when.stages import MILESTONES, Stage
from stillroom.core.words.problems import Unreadable

# Any start will do to compare lengths; this one has a leap day near and no month end.
_A_START: Final = date(2027, 2, 1)


def check_timeline(
    stages: tuple[Stage, ...], unopened: Span | None = None
) -> Iterator[tuple[int, Unreadable]]:
    """Yield what is wrong with a timeline, each with the index of its line."""
    yield from _said_twice(stages)
    yield from _ages(stages)
    yield from _over_before_begun(stages)
    yield from _keeping(stages, unopened)


def _said_twice(stages: tuple[Stage, ...]) -> Iterator[tuple[int, Unreadable]]:
    for role in MILESTONES:
        lines = [index for index, stage in enumerate(stages) if stage.role == role]
        for index in lines[1:]:
            what = f'"{stages[index].word}" is said twice.'
            yield index, Unreadable(what, "Take one of the two lines out.")


def _ages(stages: tuple[Stage, ...]) -> Iterator[tuple[int, Unreadable]]:
    laid = lay_out(stages, _A_START)
    roles = {stage.role: index for index, stage in enumerate(stages) if stage.age}
    best = roles.get("best")
    if best is None or "usable" not in roles:
        return
    usable, stage = stages[roles["usable"]], stages[best]
    same_base = usable.age_from == stage.age_from
    if same_base and stage.age and usable.age and laid.best == laid.usable:
        from_best, from_usable = (age.after(_A_START) for age in (stage.age, usable.age))
        if from_best < from_usable:
            what = f"It is best from {stage.age} but usable only from {usable.age}."
            yield best, Unreadable(what, 'Write the longer age at "best from".')


def _over_before_begun(stages: tuple[Stage, ...]) -> Iterator[tuple[int, Unreadable]]:
    """Find tending that should end at an age the batch has already passed."""
    for index, stage in enumerate(stages):
        if stage.role != "tend" or not stage.until or stage.after:
            continue
        reached = lay_out(stages[:index], _A_START).ready
        if stage.until.after(_A_START) <= reached:
            what = f'"{stage.word}: {stage.text}" is over before it begins.'
            yield index, Unreadable(what, "Write a later end, or shorten the lines above it.")


def _keeping(stages: tuple[Stage, ...], unopened: Span | None) -> Iterator[tuple[int, Unreadable]]:
    """Find a product that no longer keeps by the time it is usable."""
    if unopened is None:
        return
    laid = lay_out(stages, _A_START)
    until = unopened.after(laid.made)
    if until < laid.usable:
        at = next((i for i, stage in enumerate(stages) if stage.role == "usable"), 0)
        what = f"It keeps {unopened} once made, and is past that before it is usable."
        yield at, Unreadable(what, 'Write a longer "keeps:", or an earlier "usable from".')
