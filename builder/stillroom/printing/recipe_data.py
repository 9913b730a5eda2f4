"""One recipe as the sheet and the family book set it: amounts, method, stages, cautions.

Leaves out where it stands on a page (the templates) and the card (card_data).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date
from itertools import groupby
from typing import Any

from stillroom.core.care.safety import Caution, SafetyBox
from stillroom.core.recipe.kind_dates import dates_of_kind, ferments_untimed
from stillroom.core.recipe.method import split_step
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.ovens import heat_lines, show_degrees
from stillroom.core.size.scaling import ScaledBatch, ScaledLine
from stillroom.core.size.step_amounts import step_amount
from stillroom.core.when.stages import MILESTONES
from stillroom.core.when.timeline import Timeline
from stillroom.core.when.timeline_words import StageWords, describe_dates, describe_stages
from stillroom.core.words.day_words import say_day_short
from stillroom.printing.prose import to_runs


def recipe_data(
    recipe: Recipe,
    batch: ScaledBatch,
    box: SafetyBox,
    altitude_m: int,
    timeline: Timeline | None = None,
) -> dict[str, Any]:
    """Return a recipe at one scale as plain data; with a timeline its stages bear dates."""
    return {
        "slug": recipe.slug,
        "title": recipe.title,
        "kind": recipe.kind.spoken,
        "summary": recipe.summary,
        "makes": batch.makes,
        "contents_head": "What goes into it",
        "groups": _groups(batch.lines),
        "heats": [f"{line.name}: {line.text}" for line in heat_lines(recipe, altitude_m)],
        "vessels": "; ".join(vessel.words for vessel in recipe.vessels),
        "steps": [
            {"group": step.group, "runs": to_runs(_say_step(recipe, batch, step.text))}
            for step in recipe.method
        ],
        "stages": _stages(recipe, timeline),
        "of_kind": of_kind.text if (of_kind := dates_of_kind(recipe)) else "",
        "silence": box.silence,
        "cautions": [*_worked_out(box), *_unchecked(box), *_own(box)],
        "set_aside": _set_aside(box),
        "deference": box.deference,
    }


def _worked_out(box: SafetyBox) -> list[dict[str, str]]:
    """Return every caution with what it says to the receiver, each such sentence once."""
    told: set[str] = set()
    rows = [_caution(caution, told) for caution in (*box.refusals, *box.cautions)]
    return [row for row in rows if row["text"] or row["receiver"]]


def _set_aside(box: SafetyBox) -> list[dict[str, str]]:
    """Return the cautions the maker set aside, each in full with the maker's reason."""
    return [_caution(one.caution, set()) | {"why": one.why} for one in box.overrides]


def _caution(caution: Caution, told: set[str]) -> dict[str, str]:
    receiver = "" if caution.to_receiver in told else caution.to_receiver
    told.add(caution.to_receiver)
    return {
        "title": caution.title,
        "text": caution.to_maker,
        "receiver": receiver,
        "source": caution.source,
    }


def _unchecked(box: SafetyBox) -> list[dict[str, str]]:
    """Return what could not be checked, so that silence is never taken for an answer."""
    title = "Could not be checked"
    source = "the book's own larder"
    return [
        {"title": title, "text": said, "receiver": "", "source": source} for said in box.unchecked
    ]


def _own(box: SafetyBox) -> list[dict[str, str]]:
    """Return the maker's own cautions, which no rule can know."""
    title = "The maker adds"
    return [
        {"title": title, "text": words, "receiver": "", "source": "the maker's own"}
        for words in box.own
    ]


def short_day(day: date) -> str:
    """Return day and month: "13 Nov"."""
    return say_day_short(day).rsplit(" ", 1)[0]


def _groups(lines: Sequence[ScaledLine]) -> list[dict[str, Any]]:
    return [
        {"name": name, "lines": [_line(line) for line in members]}
        for name, members in groupby(lines, lambda line: line.group)
    ]


def _line(line: ScaledLine) -> dict[str, str]:
    notes = (line.aside, line.note, "if you like" if line.optional else "")
    return {
        "amount": line.amount_text,
        "item": line.item_text,
        "note": ", ".join(note for note in notes if note),
    }


def _say_step(recipe: Recipe, batch: ScaledBatch, text: str) -> str:
    segments = split_step(text, recipe.ingredients, recipe.system, recipe.language)
    return "".join(
        show_degrees(segment.text)
        if segment.ingredient is None
        else step_amount(recipe, batch, segment).text
        for segment in segments
    )


def _stages(recipe: Recipe, timeline: Timeline | None) -> list[dict[str, Any]]:
    if timeline:
        return _dated_stages(timeline)
    rows = list(zip(recipe.stages, describe_stages(recipe.stages), strict=True))
    if ferments_untimed(recipe):  # its kind's rest and ages are not its own
        rows = [row for row in rows if row[0].role not in ("rest", *MILESTONES)]
    # on paper a stage keeps all its maker wrote, such as "2-2.5 hours, 45 minutes hands-on"
    return [
        {"name": row.name, "dates": _show_span(row.when if stage.age else stage.text or row.when)}
        for stage, row in rows
    ]


def _dated_stages(timeline: Timeline) -> list[dict[str, Any]]:
    """Return the stages by date, each of tending with its days and the boxes to a day."""
    tended = [row for row in timeline.stages if row.role == "tend"]

    def ticks(words: StageWords) -> dict[str, Any]:
        name, first = words.name, words.iso_from
        row = next(one for one in tended if (one.name, one.first.isoformat()) == (name, first))
        tended.remove(row)
        return {"days": [short_day(day) for day in row.dates], "times": row.times}

    return [
        {
            "name": row.name,
            "dates": f"{row.when}, {row.hands_on} hands-on" if row.hands_on else row.when,
        }
        | (ticks(row) if row.role == "tend" else {})
        for row in describe_dates(timeline)
    ]


def _show_span(text: str) -> str:
    """Return a maker's length of time as it is set: "2-2.5 hours" as "2–2½ hours".

    >>> _show_span("2-2.5 hours, 45 minutes hands-on")
    '2–2½ hours, 45 minutes hands-on'
    """
    dashed = re.sub(r"(?<=\d)-(?=\d)", "–", text)
    return re.sub(r"(?<![\d.])(\d+)\.5(?!\d)", lambda half: f"{half[1].lstrip('0')}½", dashed)
