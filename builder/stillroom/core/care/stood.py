"""How long a thing stands in the cold, steeping, before it is filled, for rules that count that.

What keeps four days in all, and steeps for one of them, has three left when it is bottled. Leaves
out the rules (hazards.yml, keeping.yml) and what stands warm (oil_left_warm.py), which is refused.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from stillroom.core.recipe.method_order import course_of
from stillroom.core.recipe.method_times import Said
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.spans import Span
from stillroom.core.words.patterns import clause_regex

_COLD: Final = clause_regex(
    r"(?i)\b(?:fridge|refrigerat|chill|kühlschrank|frigo|réfrigérateur|nevera|koelkast|kylskåp)"
)
_MINUTES: Final = 24 * 60


def days_stood(recipe: Recipe) -> int:
    """Return the days that it stands in the fridge before it is strained or bottled; 0 where none.

    A night counts as a day.
    """
    return sum(-(-span.minutes() // _MINUTES) for span in _waits(recipe))


def _waits(recipe: Recipe) -> Iterator[Span]:
    if recipe.timeline:
        for stage in recipe.timeline:
            if stage.role in ("strain", "bottle", "usable", "best"):
                return
            cold = _COLD.search(f"{stage.word} {stage.text}")
            if stage.role in ("rest", "tend") and stage.lasts and cold:
                yield stage.lasts
        return
    for one in course_of(recipe.method).events:
        if not isinstance(one, Said):
            return
        if one.role == "wait" and _COLD.search(one.words):
            yield one.span
