"""How much salt a ferment of vegetables holds, and how that stands to what guidance asks.

Leaves out meat and fish (curing.py) and what is pickled in vinegar (acid.py).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from stillroom.core.care.acid import Weighed

# USDA, Complete Guide to Home Canning, 2015 revision, Guide 6: 3 tablespoons to 5 lb of cabbage
_LEAST_ASKED = Fraction(9, 4)
# a spoon of salt is no finer than this
_SLACK = Fraction(1, 20)
# from here on a hundredth decides nothing
_FAR_ABOVE = 3
_BULK = frozenset({"vegetable", "low-acid-vegetable", "fruit", "water", "pulse", "cooked-pulse"})


def salt_percent(rows: Sequence[Weighed]) -> Fraction | None:
    """Return the salt to a hundred grams of vegetables and water together; None when not known."""
    kept = [row for row in rows if "craft" not in row.tags]
    salt = [row.grams for row in kept if "salt" in row.tags]
    bulk = [row.grams for row in kept if _BULK & row.tags and "salt" not in row.tags]
    if not bulk or any(grams is None for grams in (*salt, *bulk)):
        return None
    weight = sum((grams or Fraction(0) for grams in bulk), Fraction(0))
    return sum((grams or Fraction(0) for grams in salt), Fraction(0)) * 100 / weight


def say_salt(rows: Sequence[Weighed]) -> str:
    """Say how much salt it is, and that it is less than guidance asks where it is."""
    percent = salt_percent(rows)
    if percent is None:
        return "How much it is here could not be reckoned."
    if not percent:
        return "Here no salt is weighed."
    shown = f"{float(percent):.{1 if percent >= _FAR_ABOVE else 2}f}".rstrip("0").rstrip(".")
    less = ", which is less" if percent < _LEAST_ASKED - _SLACK else ""
    return f"Here it is about {shown} %{less}."
