"""The method as it stands on the page: numbered steps with the amounts in their sentences."""

from __future__ import annotations

import re
from dataclasses import dataclass

from markupsafe import Markup, escape

from stillroom.core.amounts.quantities import Amount
from stillroom.core.recipe.method import Segment, split_step
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.ovens import show_degrees
from stillroom.core.size.scaling import ScaledBatch
from stillroom.core.size.step_amounts import step_amount
from stillroom.publish.templating import show_json, show_prose_line

_PLACE = re.compile("\ue000(\\d+)\ue000")
"""Private-use characters stand where an amount goes while Markdown reads the sentence."""


@dataclass(frozen=True)
class ShownStep:
    """One step: its number in the whole method, its HTML, its words alone."""

    number: int
    html: Markup
    words: str


@dataclass(frozen=True)
class StepGroup:
    """The steps under one sub-heading; the heading is empty when there is none."""

    heading: str
    steps: tuple[ShownStep, ...]


def show_method(recipe: Recipe, batch: ScaledBatch) -> tuple[StepGroup, ...]:
    """Return the method in its groups, with the amounts of a batch."""
    groups: list[tuple[str, list[ShownStep]]] = []
    for number, step in enumerate(recipe.method, start=1):
        if not groups or groups[-1][0] != step.group:
            groups.append((step.group, []))
        segments = split_step(step.text, recipe.ingredients, recipe.system, recipe.language)
        groups[-1][1].append(_show_step(number, segments, recipe, batch))
    return tuple(StepGroup(heading, tuple(steps)) for heading, steps in groups)


def _show_step(
    number: int, segments: tuple[Segment, ...], recipe: Recipe, batch: ScaledBatch
) -> ShownStep:
    marked = "".join(
        show_degrees(segment.text) if segment.ingredient is None else f"\ue000{place}\ue000"
        for place, segment in enumerate(segments)
    )
    html = _PLACE.sub(
        lambda found: _show_amount(recipe, batch, segments[int(found[1])]),
        show_prose_line(marked),
    )
    words = "".join(
        show_degrees(segment.text)
        if segment.ingredient is None
        else step_amount(recipe, batch, segment).text
        for segment in segments
    )
    return ShownStep(number, Markup(html), words)


def _show_amount(recipe: Recipe, batch: ScaledBatch, segment: Segment) -> str:
    """Return an amount and its name; the browser writes both anew when the scale changes."""
    said = step_amount(recipe, batch, segment)
    if not said.amount:
        return str(escape(said.name))
    return str(
        Markup(
            '<span class="step-amount" data-ingredient="{}" data-part="{}">'
            '<span class="amount">{}</span> <span class="step-name">{}</span></span>'
        ).format(segment.ingredient, _part_data(segment.part), said.amount, said.name)
    )


def _part_data(part: Amount | None) -> str:
    """Return a part for the browser's engine as JSON, its numbers exact fractions as text."""
    if part is None:
        return ""
    data = {"low": str(part.low), "high": str(part.high), "unit": part.unit, "about": part.about}
    return str(show_json(data))  # plain text again: it stands in an attribute, its quotes escaped
