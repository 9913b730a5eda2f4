"""What the browser's engine needs to give the same dates as Python: one JSON-able dict a recipe."""

from __future__ import annotations

from typing import Any, Protocol

from stillroom.core.when.spans import Span
from stillroom.core.when.stages import Stage
from stillroom.core.when.timeline import Timed


class Titled(Timed, Protocol):
    """A recipe with its name."""

    @property
    def slug(self) -> str:
        """The name of its file."""

    @property
    def title(self) -> str:
        """What it is called."""

    @property
    def season(self) -> tuple[int, ...]:
        """The months, from 1, in which its main produce is to be had."""


def timeline_data(recipe: Titled) -> dict[str, Any]:
    """Return the recipe's timeline for publish/assets/js/when/timeline.js."""
    return {
        "slug": recipe.slug,
        "title": recipe.title,
        "stages": [stage_data(stage) for stage in recipe.stages],
        "keep": span_data(recipe.lasts),
        "season": list(recipe.season),
        "opened": str(recipe.keeps.opened) if recipe.keeps.opened else None,
    }


def stage_data(stage: Stage) -> dict[str, Any]:
    """Return one stage without what is empty, its spans as [low, high, unit]."""
    row: dict[str, Any] = {
        "name": stage.say,
        "word": stage.word,
        "role": stage.role,
        "minutes": stage.hands_on_minutes,
        "lasts": span_data(stage.lasts),
        "every": span_data(stage.every),
        "times": stage.times,
        "until": span_data(stage.until),
        "after": span_data(stage.after),
        "before_giving": stage.before_giving,
        "age": span_data(stage.age),
        "age_from": stage.age_from,
        "condition": stage.condition,
        "where": stage.where,
    }
    return {key: value for key, value in row.items() if value not in (None, "")}


def span_data(span: Span | None) -> list[int | str] | None:
    """Return a span as [low, high, unit]."""
    return [span.low, span.high, span.unit] if span else None
