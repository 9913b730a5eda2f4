"""A scaled batch in words for the terminal, and as the JSON document of `stillroom scale`."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.amounts.units import all_units
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.finished import facts_of_batch
from stillroom.core.size.scaling import ScaledBatch
from stillroom.core.size.targets import LeftOver
from stillroom.core.words.plurals import plural, singular
from stillroom.core.words.said import Said

_say = Said("stillroom.core.size", "size")


def scaling_document(batch: ScaledBatch, recipe: Recipe, country: str = "GB") -> dict[str, Any]:
    """Return the batch as plain data: fractions as text, None where nothing is measured."""
    return {
        "recipe": batch.slug,
        "factor": str(batch.factor),
        "makes": batch.makes_in_full,
        "ingredients": [
            {
                "item": line.item,
                "amount": line.amount_text,
                "exact": _text(line.exact),
                "unit": line.unit,
                "low": _text(line.low),
                "high": _text(line.high),
                "holds": line.holds,
            }
            for line in batch.lines
        ],
        "warnings": list(batch.warnings),
        "notes": list(batch.notes),
        "comes_to": [
            {"name": fact.name, "text": fact.text, "how": fact.how}
            for fact in facts_of_batch(recipe, batch, country)
        ],
    }


def scaling_table(batch: ScaledBatch, recipe: Recipe, country: str = "GB") -> str:
    """Return the batch as a table; below it, as on the page, what it comes to and what to heed."""
    rows = [(line.amount_text, _item(line.item_text, line.aside, line.why)) for line in batch.lines]
    width = max(len(amount) for amount, _item_text in rows)
    head = [f"{batch.title}, {show_factor(batch.factor)}: makes {batch.makes_in_full}"]
    body = [f"  {amount:>{width}}  {item}" for amount, item in rows]
    tail = [
        f"{fact.name}: {fact.text}" for fact in facts_of_batch(recipe, batch, country) if fact.brief
    ]
    tail += [f"! {warning}" for warning in batch.warnings]
    if batch.scarcest:
        tail.append(_say("runs_short", item=batch.scarcest))
    tail += [_say("left_over", left=say_left(left)) for left in batch.left]
    if batch.fit and batch.fit_makes:
        times = show_decimal(batch.fit.factor)
        tail.append(_say("comes_out_whole", makes=batch.fit_makes, times=times))
    tail += [f"- {note}" for note in batch.notes]
    return "\n".join([*head, *body, *tail])


def show_factor(factor: Fraction) -> str:
    """Say a factor as a cook would: "as written", "2½ times", "0.76 of it".

    >>> show_factor(Fraction(1)), show_factor(Fraction(3)), show_factor(Fraction(34, 45))
    ('as written', '3 times as much', '0.76 times as much')
    """
    return "as written" if factor == 1 else f"{show_decimal(factor)} times as much"


def say_left(left: LeftOver) -> str:
    """Say what remains of an ingredient on hand: "250 g of sugar", "10 cinnamon sticks".

    Of counted things only whole ones remain.
    """
    if left.unit:
        unit = all_units()[left.unit].shown
        return _say("left_measured", amount=show_decimal(left.amount), unit=unit, item=left.item)
    whole = left.amount.__floor__()
    item = singular(left.item) if whole == 1 else plural(left.item)
    return _say("left_counted", count=whole, item=item)


def _item(item: str, aside: str, why: str) -> str:
    more = "; ".join(words for words in (aside, why) if words)
    return f"{item} ({more})" if more else item


def _text(value: Fraction | None) -> str | None:
    return None if value is None else str(value)
