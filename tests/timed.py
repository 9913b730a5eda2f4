"""A recipe as the timeline engine sees it, made from plain lines; shared by the tests."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from stillroom.core.recipe.keeps import Keeping
from stillroom.core.when.spans import Span, parse_span
from stillroom.core.when.stages import Stage, parse_stage


@dataclass(frozen=True)
class TimedRecipe:
    slug: str
    title: str
    stages: tuple[Stage, ...]
    keeps: Keeping = field(default_factory=Keeping)
    season: tuple[int, ...] = ()

    @property
    def lasts(self) -> Span | None:
        return self.keeps.unopened


def timed(
    *lines: tuple[str, str] | list[str],
    keeps: str | None = None,
    slug: str = "a-thing",
    season: Iterable[int] = (),
) -> TimedRecipe:
    """Return a recipe of these (word, text) lines that keeps so long unopened."""
    return TimedRecipe(
        slug,
        slug.replace("-", " ").capitalize(),
        tuple(parse_stage(word, text) for word, text in lines),
        Keeping(unopened=parse_span(keeps) if keeps else None),
        tuple(season),
    )


INFUSION = timed(
    ("prepare", "40 minutes"),
    ("shake", "every day for 2 weeks"),
    ("shake", "every 3 days for 2 weeks"),
    ("shake", "every week for 4 weeks"),
    ("rest", "in the dark"),
    ("usable from", "2 months"),
    ("best from", "8 months"),
    ("strain and bottle", "45 minutes"),
    keeps="3 years",
    slug="an-infusion",
)
