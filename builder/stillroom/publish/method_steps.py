"""The method as it stands on the page: numbered steps with the amounts in their sentences."""

from __future__ import annotations

import re
from dataclasses import dataclass

from markupsafe import Markup

from stillroom.core.method import Segment, split_step
from stillroom.core.quantities import Amount, show_amount
from stillroom.core.recipe import Recipe
from stillroom.core.units import convert
from stillroom.publish.templating import show_prose_line

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


def show_method(recipe: Recipe) -> tuple[StepGroup, ...]:
    """Return the method in its groups, every amount at the recipe's written scale."""
    groups: list[tuple[str, list[ShownStep]]] = []
    for number, step in enumerate(recipe.method, start=1):
        if not groups or groups[-1][0] != step.group:
            groups.append((step.group, []))
        segments = split_step(step.text, recipe.ingredients, recipe.system)
        groups[-1][1].append(_show_step(number, segments, recipe))
    return tuple(StepGroup(heading, tuple(steps)) for heading, steps in groups)


def _show_step(number: int, segments: tuple[Segment, ...], recipe: Recipe) -> ShownStep:
    marked = "".join(
        segment.text if segment.ingredient is None else f"\ue000{place}\ue000"
        for place, segment in enumerate(segments)
    )
    html = _PLACE.sub(
        lambda found: _show_amount(segments[int(found[1])], recipe), show_prose_line(marked)
    )
    words = "".join(_say(segment, recipe) for segment in segments)
    return ShownStep(number, Markup(html), words)


def _show_amount(segment: Segment, recipe: Recipe) -> str:
    """Return an amount and its name; the browser scales what carries `data-ingredient`."""
    amount = _written_amount(segment, recipe)
    if not amount:
        return str(Markup.escape(segment.text))
    share = _share_of_whole(segment, recipe)
    return str(
        Markup('<span class="amount" data-ingredient="{}" data-share="{}">{}</span> {}').format(
            segment.ingredient, share, amount, segment.text
        )
    )


def _written_amount(segment: Segment, recipe: Recipe) -> str:
    assert segment.ingredient is not None
    amount = segment.part or recipe.ingredients[segment.ingredient].amount
    return show_amount(amount) if isinstance(amount, Amount) else ""


def _share_of_whole(segment: Segment, recipe: Recipe) -> str:
    """Return the part of the ingredient that the step takes, as an exact fraction of the whole."""
    assert segment.ingredient is not None
    whole = recipe.ingredients[segment.ingredient].amount
    if segment.part is None or not isinstance(whole, Amount):
        return "1"
    part = convert(segment.part.middle, segment.part.unit, whole.unit)
    return str(part / whole.middle)


def _say(segment: Segment, recipe: Recipe) -> str:
    if segment.ingredient is None:
        return segment.text
    amount = _written_amount(segment, recipe)
    return f"{amount} {segment.text}" if amount else segment.text
