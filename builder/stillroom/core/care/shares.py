"""How much of a thing surely is of something that keeps it: sugar, acid, spirit.

Leaves out shares that speak of a danger: there what is not weighed counts as enough.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from fractions import Fraction

from stillroom.core.care.safety_facts import Thing

# what there is much of: where one of them cannot be weighed nothing is known of a share
_BULK = frozenset(
    {"fruit", "vegetable", "water", "low-acid", "borderline-acid", "beverage", "tea", "dairy"}
    | {"alcohol", "cooked-pulse", "nut", "seed"}
)


def sure_share(things: Sequence[Thing], tags: Collection[str]) -> Fraction | None:
    """Return the least percent by weight of things with any of the tags; None when not known.

    What is not weighed counts as none; fruit that is strained out leaves half its weight as juice.
    """
    rows = [one for one in things if not one.drained and "craft" not in one.tags]
    if any(one.grams is None and one.tags & _BULK and "acid" not in one.tags for one in rows):
        return None
    weights = [(one.grams or Fraction(0)) / (1 if one.stays else 2) for one in rows]
    whole = sum(weights, Fraction(0))
    wanted = set(tags)
    found = [grams for one, grams in zip(rows, weights, strict=True) if wanted & one.tags]
    return sum(found, Fraction(0)) * 100 / whole if whole else None
