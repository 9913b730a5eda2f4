"""Heads of a giving list with nothing below or behind them yet: they say nothing, and are right.

Needs are left as they are: whether "pregnant:" alone means yes is asked about.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from stillroom.giving.named_small import with_names

_PARTS: Final[Mapping[str, Any]] = {
    **{part: [] for part in ("makes", "households", "prices", "posting", "batches")},
    **{part: {} for part in ("baskets", "stock", "hours")},
}
_OF_HOUSEHOLD: Final = ("adults", "children", "pets", "by post", "budget", "message")


def filled_parts(found: Mapping[str, Any]) -> dict[str, Any]:
    """Return a list whose empty parts hold nothing.

    >>> filled_parts({"prices": None, "makes": ["fudge"]})
    {'prices': [], 'makes': ['fudge']}
    """
    return {part: _PARTS.get(part) if said is None else said for part, said in found.items()}


def said_of(household: Mapping[str, Any]) -> dict[str, Any]:
    """Return a household without the facts that nothing is said of, its people by its own names.

    >>> said_of({"name": "Wren", "children": None, "pregnant": None})
    {'name': 'Wren', 'pregnant': None}
    """
    return with_names(
        {key: one for key, one in household.items() if one is not None or key not in _OF_HOUSEHOLD}
    )
