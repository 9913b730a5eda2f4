"""The amounts that stand in a step of the method, at the scale of the batch.

A step in braces holds a whole ingredient or a part of one; both are scaled and rounded like the
list of ingredients. The page, the sheet and the browser all take their words from here (the browser
through the same engine in scale.js).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from stillroom.core.amounts.quantities import Amount, show_amount
from stillroom.core.amounts.units import size_of
from stillroom.core.recipe.method import Segment
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scalable import Scalable, ScaleLine, scalable_of
from stillroom.core.size.scaled_lines import scale_line
from stillroom.core.size.scaling import ScaledBatch


@dataclass(frozen=True)
class StepAmount:
    """What a brace says: the amount ("" when it is left to the cook) and the name after it."""

    amount: str
    name: str

    @property
    def text(self) -> str:
        """Both together: "250 ml vodka"."""
        return f"{self.amount} {self.name}".strip()


def step_amount(recipe: Recipe, batch: ScaledBatch, segment: Segment) -> StepAmount:
    """Return what stands in the step for one segment that names an ingredient.

    Of something for each container it is the amount for one of them. Raises ValueError for a
    segment of plain words.
    """
    if segment.ingredient is None:
        raise ValueError("A segment of plain words has no amount.")
    scalable = scalable_of(recipe)
    line = scalable.lines[segment.ingredient]
    if line.form == "words":
        return StepAmount("", segment.text)
    if line.scales == "per container":
        return StepAmount(line.written, line.one)
    if segment.part is None:
        shown = batch.lines[segment.ingredient]
        return StepAmount(shown.amount_text, shown.item_text)
    return StepAmount(part_text(scalable, batch, line, segment.part), segment.text)


def part_text(scalable: Scalable, batch: ScaledBatch, line: ScaleLine, part: Amount) -> str:
    """Return a part of an ingredient at the batch's scale, in the reader's measures."""
    part_line = replace(
        line,
        form="amount",
        written=show_amount(part),
        low=part.low,
        high=part.high,
        unit=part.unit,
        about=part.about,
        spooned=size_of(part.unit) == "volume" and line.spooned,
        per_low=Fraction(1),
        per_high=Fraction(1),
        of=None,
    )
    return scale_line(
        scalable, part_line, batch.factor, batch.containers, batch.measures
    ).amount_text
